/**
 * Reading, text to model: beside a parser library's syntax tree, its grammar that builds nothing, and JSON with its schema; how it grows with the text; and
 * what one edited line costs.
 */
import Ajv from "ajv";
import { emptyLibrary, householdOf, readSetup, type Household } from "../../language/model/household.js";
import type { Tree } from "../../language/text/types.js";
import { parseTree, recognise } from "./grammar.js";
import { jsonOf, schemaOf, setupOf } from "./household.js";
import { ms, sideBySide, times, type Times } from "./measure.js";

const read = (text: string, before?: Tree): Household =>
  householdOf("home.span", readSetup(text, before), emptyLibrary);

/** A setup of so many lines, hardly any two of them alike: equal lines are read once. */
function longSetup(lines: number): string {
  // A way back whose steps are left to be planned has no steps that JSON could list.
  const out = setupOf(Math.min(lines, 240))
    .split("\n")
    .filter((line) => !line.startsWith("way-back"));
  for (let i = 0; out.length + 6 <= lines; i++)
    out.push(
      `furniture chest-${i} {`,
      `  size ${18 + (i % 40)} ${1 + 2 * (i % 8)}/16 in by ${300 + (i % 997)} mm`,
      `  height ${20 + (i % 61)}.${i} in measured on 2026-03-02  # the one called ${i}`,
      `  movable yes`,
      `  note "stands in the way of number ${i}"`,
      "}",
    );
  while (out.length < lines) out.push(`# line ${out.length}`);
  return out.slice(0, lines).join("\n");
}

function print(
  title: string,
  characters: number,
  ours: Times,
  theirs: Times,
  name: string,
  theirCharacters: number,
): void {
  const speed = (n: number, t: Times): string => `${(n / 1e3 / t.median).toFixed(2)} MB/s`;
  console.log(title);
  console.log(`  spanwise              median ${ms(ours.median)}   ${speed(characters, ours)}`);
  console.log(`  ${name.padEnd(20)}  median ${ms(theirs.median)}   ${speed(theirCharacters, theirs)}`);
  console.log(`  ratio of times        ${(ours.median / theirs.median).toFixed(2)}`);
}

/** Slope of the straight line through the logarithms: the exponent with which time grows with length. */
export function exponent(points: readonly (readonly [lines: number, ms: number])[]): number {
  const xs = points.map(([n]) => Math.log(n));
  const ys = points.map(([, t]) => Math.log(t));
  const mean = (v: readonly number[]): number => v.reduce((a, b) => a + b, 0) / v.length;
  const [x, y] = [mean(xs), mean(ys)];
  const over = xs.reduce((sum, a, i) => sum + (a - x) * (ys[i]! - y), 0);
  return over / xs.reduce((sum, a) => sum + (a - x) ** 2, 0);
}

function timed(work: () => unknown): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

export async function reading(): Promise<void> {
  const lines = 5_000;
  const text = longSetup(lines);
  const json = jsonOf(text);
  const validate = new Ajv({ strict: false }).compile(schemaOf());
  console.log(
    `setup of ${lines} lines, ${text.length} characters; the grammar takes it: ${recognise(text) ? "yes" : "no"}; ` +
      `as JSON ${json.length} characters, valid: ${validate(JSON.parse(json)) ? "yes" : "no"}`,
  );
  const [ours, grammar] = await sideBySide(
    30,
    10,
    () => read(text),
    () => recognise(text),
  );
  print(
    "Reading a file anew, beside a grammar that builds nothing",
    text.length,
    ours,
    grammar,
    "bare grammar",
    text.length,
  );
  const [treeOurs, tree] = await sideBySide(
    30,
    10,
    () => read(text),
    () => parseTree(text),
  );
  print(
    "Reading a file anew, beside the same grammar's syntax tree",
    text.length,
    treeOurs,
    tree,
    "plain parse",
    text.length,
  );
  const [again, ajv] = await sideBySide(
    30,
    5,
    () => read(text),
    () => validate(JSON.parse(json)),
  );
  print(
    "Reading a file anew, beside JSON.parse and its schema",
    text.length,
    again,
    ajv,
    "JSON and ajv",
    json.length,
  );

  const points = [100, 316, 1_000, 3_162, 10_000, 31_623, 100_000].map((n): [number, number] => {
    const long = longSetup(n);
    const rounds = n <= 1_000 ? 30 : n <= 10_000 ? 7 : 3;
    return [n, Math.min(...Array.from({ length: rounds }, () => timed(() => read(long))))];
  });
  console.log("Growth with the number of lines");
  for (const [n, t] of points) console.log(`  ${String(n).padStart(7)} lines  ${ms(t)}`);
  console.log(
    `  exponent of the time in the number of lines: ${exponent(points).toFixed(2)} (1 is in proportion)`,
  );

  let edited = readSetup(text);
  const edits = Array.from({ length: 40 }, (_, i) => text.replace('number 400"', `number 400, ${i}"`));
  const kept: number[] = [];
  for (let round = 0; round < 120; round++) {
    const next = edits[round % edits.length]!;
    const took = timed(() => {
      edited = readSetup(next, edited);
      householdOf("home.span", edited, emptyLibrary);
    });
    if (round >= 40) kept.push(took);
  }
  const edit = times(kept);
  console.log(
    `One edited line of ${lines}: median ${ms(edit.median)}, ${((100 * edit.median) / ours.median).toFixed(1)} % of reading the file anew`,
  );
}
