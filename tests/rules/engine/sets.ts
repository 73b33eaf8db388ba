/** Rule sets as text for tests. Marks `⟦...⟧a` in a text show where a problem is expected. */
import { expect } from "vitest";
import { householdOf, readSetup, emptyLibrary, type Household } from "../../../language/model/household.js";
import type { Thing } from "../../../language/model/types.js";
import type { Tree } from "../../../language/text/types.js";
import { createChecker, type Checker, type CheckResult } from "../../../rules/engine/check.js";
import { FactTable } from "../../../rules/engine/fact-table.js";
import { loadRuleSet } from "../../../rules/engine/load.js";
import type { ReadSet, RuleSet } from "../../../rules/engine/types.js";
import { quantity, type QuantityRule } from "../../../rules/quantity.js";
import { subtract } from "../../../language/quantity/interval.js";
import type { Finding } from "../../../rules/types.js";

const sat = (t: Thing | undefined): string => (t?.kind === "bed" ? "top-loaded" : "seat-loaded");

/** Two small quantities, so that the engine's tests do not depend on the geometry. */
export const rise: QuantityRule = quantity({
  name: "height.rise",
  dimension: "length",
  says: "how far the body climbs",
  formula: "where the client comes to, sat on - where the client leaves, sat on",
  source: "plane geometry",
  inputs: (s, of) => ({ to: of.written(s.to, sat(s.to)), from: of.written(s.from, sat(s.from)) }),
  compute: ({ to, from }) => subtract(to, from),
});
/** Rests on a default that a tape could measure, unless the stub is written. */
export const stub: QuantityRule = quantity({
  name: "chair.stub",
  dimension: "length",
  says: "what stays in front of the seat",
  formula: "as written, else assumed",
  source: "plane geometry",
  inputs: (s, of) => ({
    stub:
      s.chair?.values["hanger-stub"] === undefined ? of.default("stub") : of.written(s.chair, "hanger-stub"),
  }),
  compute: ({ stub }) => stub,
});
export const small: readonly QuantityRule[] = [rise, stub];

export const table = new FactTable(small);

export const head = `ruleset trial 1 { title "A set for tests"; caution "Try it with a therapist." }\n`;

/** The least that a rule must say beside what it judges. */
export const said = `because "b"; common-practice "c"; message "m"`;

const mark = /⟦([^⟧]*)⟧([a-z])/g;

export const load = (text: string, around = table): ReadSet =>
  loadRuleSet([{ path: "trial.spanrules", text }], around);

export function good(text: string): RuleSet {
  const read = load(text);
  expect(read.problems.map((p) => `${p.line + 1}: ${p.rule} ${p.message}`)).toEqual([]);
  return read.set!;
}

/** The set is refused with these problems at the marks, and with no others. */
export function refused(marked: string, expected: { readonly [mark: string]: string }): ReadSet {
  const spots = new Map<string, { line: number; start: number; end: number }>();
  const text = marked
    .split("\n")
    .map((line, n) => {
      let shift = 0;
      return line.replace(mark, (all, inner: string, name: string, at: number) => {
        spots.set(name, { line: n, start: at - shift, end: at - shift + inner.length });
        shift += all.length - inner.length;
        return inner;
      });
    })
    .join("\n");
  const read = load(text);
  const found = read.problems.map((p) => {
    const name = [...spots].find(([, s]) => s.line === p.line && s.start === p.start && s.end === p.end)?.[0];
    return `${name ?? `line ${p.line + 1}, ${p.start} to ${p.end}`}: ${p.rule} (${p.message})`;
  });
  const wanted = Object.entries(expected).map(([name, rule]) => `${name}: ${rule}`);
  expect(found.map((f) => f.replace(/ \(.*/s, "")).sort(), found.join("\n")).toEqual(wanted.sort());
  expect(read.set).toBeUndefined();
  return read;
}

export const home = `setup "A test"
client { code c-1; mass 180 lb ± 0 lb; limit weight-bearing both none review 2026-01-10 }
helper daughter { trained yes }
wheelchair chair {
  seat-loaded 19 in ± 1/8 in
  armrests flip-back
  legrests swing-away
  brakes both
  cushion { kind foam }
}
bed bed {
  top 20 in ± 0 in
  top-loaded 19 1/2 in ± 1/8 in
  rails none
}
board board-30 { length 30 in ± 0 in; width 8 in }
transfer into-bed {
  from chair to bed
  with board-30, daughter
  bed-side left
  facing head
  turned 30 deg towards
  steps {
    lock brakes
    approach bed
    place board
    slide
  }
}
way-back out-of-bed of into-bed { steps planned }
`;

/** Checks texts one after the other, as an editor does. */
export class Bench {
  readonly checker: Checker;
  private tree: Tree | undefined;
  household!: Household;
  constructor(
    readonly set: RuleSet,
    readonly today = "2026-03-02",
  ) {
    this.checker = createChecker(set, small, table);
  }
  check(text: string): CheckResult {
    this.tree = readSetup(text, this.tree);
    this.household = householdOf("home.span", this.tree, emptyLibrary);
    return this.checker.check(this.household, this.today);
  }
  /** The line of a finding's place, as text. */
  lineOf(f: Finding): string {
    const { line } = this.household.locate(f.place.entry)!;
    return this.tree!.lines[line + f.place.line]!.text.trim();
  }
}

export const summary = (r: CheckResult): string[] =>
  r.findings.map((f) => `${f.rule} ${f.subject} ${f.verdict} ${f.levels.best}-${f.levels.worst}`);

/** The text with the edits of a remedy applied. */
export function applied(text: string, bench: Bench, f: Finding, remedy = 0): string {
  const lines = text.split("\n");
  const edits = [...(f.remedies[remedy]?.edits ?? [])].map((e) => ({
    line: bench.household.locate(e.place.entry)!.line + e.place.line,
    start: e.place.start,
    end: e.place.end,
    text: e.text,
  }));
  for (const e of edits.sort((a, b) => b.line - a.line || b.start - a.start))
    lines[e.line] = lines[e.line]!.slice(0, e.start) + e.text + lines[e.line]!.slice(e.end);
  return lines.join("\n");
}
