/** Reads `examples { ... }`: values, a colon, and the verdict they give. */
import type { Atom, Node } from "../../language/text/types.js";
import type { Grade, VerdictKind } from "../types.js";
import { atomText } from "../../language/text/atom.js";
import { isGrade } from "./bands.js";
import { readInterval } from "./read-values.js";
import type { Page } from "./statements.js";
import type { Example, ExampleValue } from "./types.js";

const verdicts: readonly VerdictKind[] = ["holds", "fails", "unsettled", "unknown", "not-applicable"];

export function readExamples(page: Page, node: Node): readonly Example[] {
  const found: Example[] = [];
  for (const s of node.children ?? []) {
    const atoms = s.statement.atoms;
    if (atoms.length === 0) continue;
    const colon = atoms.findIndex((a) => a.type === "mark" && a.mark === ":");
    const verdict = colon < 0 ? undefined : readVerdict(atoms.slice(colon + 1));
    if (colon < 0 || !verdict) {
      const span = colon < 0 ? undefined : atoms[colon + 1];
      page.problem(
        "rules/example",
        s,
        "An example is written VALUES: VERDICT, with holds, advice, caution, stop, fails, unsettled, unknown, not-applicable, or two grades joined by to.",
        span ?? s.statement,
      );
      continue;
    }
    const given = parts(atoms, colon);
    const values = given.map(readExampleValue);
    for (const [i, value] of values.entries()) {
      if (typeof value !== "string") continue;
      const part = given[i]!;
      const span = part[0] ? { start: part[0].start, end: part[part.length - 1]!.end } : s.statement;
      page.problem("rules/example", s, value, span);
    }
    if (areValues(values)) found.push({ values, text: textOf(atoms), ...verdict, at: page.place(s) });
  }
  return found;
}

const areValues = (read: readonly (ExampleValue | string)[]): read is readonly ExampleValue[] =>
  read.every((v) => typeof v !== "string");

/** As written, commas and colons directly behind what is before them, a minus sign directly before its amount. */
function textOf(atoms: readonly Atom[]): string {
  const words: string[] = [];
  let minus = false;
  for (const a of atoms) {
    const glued = minus || (a.type === "mark" && (a.mark === "," || a.mark === ":"));
    minus = a.type === "mark" && a.mark === "-";
    if (glued && words.length > 0) words[words.length - 1] += atomText(a);
    else words.push(atomText(a));
  }
  return words.join(" ");
}

/** What stands between the commas, up to the colon. */
function parts(atoms: readonly Atom[], colon: number): readonly (readonly Atom[])[] {
  if (colon === 0) return [];
  const found: (readonly Atom[])[] = [];
  let from = 0;
  for (let i = 0; i <= colon; i++) {
    const a = atoms[i]!;
    if (i < colon && !(a.type === "mark" && a.mark === ",")) continue;
    found.push(atoms.slice(from, i));
    from = i + 1;
  }
  return found;
}

/** `up 1 in ± 1/4 in`, `unknown`, `board.length 30 in`, `step.brakes locked`, `board.length assumed 28 in to 30 in`, `gap.hips without`. */
function readExampleValue(part: readonly Atom[]): ExampleValue | string {
  const first = part[0];
  if (!first) return "A value is missing beside the comma.";
  const fact = first.type === "word" && first.word.includes(".") ? first.word : undefined;
  const from = fact === undefined ? 0 : 1;
  const lead = part[from];
  if (!lead) return `${atomText(first)}: its value is missing.`;
  if (lead.type === "word" && part.length === from + 1) {
    if (lead.word === "unknown") return { fact, unknown: true };
    if (lead.word === "without") return { fact, without: true };
    return { fact, choice: lead.word };
  }
  const assumed = lead.type === "word" && lead.word === "assumed" ? true : undefined;
  const rest = part.slice(assumed ? from + 1 : from);
  const read = readInterval(rest, "number");
  if (typeof read === "string")
    return assumed && rest.length === 1 && rest[0]!.type === "word"
      ? { fact, choice: rest[0]!.word, assumed }
      : read;
  return { fact, interval: read.interval, dimension: read.dimension, assumed };
}

function readVerdict(
  atoms: readonly Atom[],
): { verdict: VerdictKind; best?: Grade; worst?: Grade } | undefined {
  if (atoms.length === 0 || atoms.length > 3) return undefined;
  const [first, to, last] = atoms.map((a) => (a.type === "word" ? a.word : "")) as [string, string?, string?];
  if (atoms.length === 1) {
    if (first === "holds") return { verdict: "holds", best: "holds", worst: "holds" };
    if ((verdicts as readonly string[]).includes(first)) return { verdict: first as VerdictKind };
    return isGrade(first) ? { verdict: "fails", best: first as Grade, worst: first as Grade } : undefined;
  }
  if (atoms.length === 3 && to === "to" && isGrade(first) && isGrade(last!))
    return { verdict: first === "holds" ? "unsettled" : "fails", best: first as Grade, worst: last as Grade };
  return undefined;
}
