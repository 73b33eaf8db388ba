import fc from "fast-check";
import { describe, expect, it } from "vitest";
import sets from "virtual:rule-sets";
import { createChecker, type CheckResult } from "../../../rules/engine/check.js";
import { FactTable } from "../../../rules/engine/fact-table.js";
import { loadRuleSet } from "../../../rules/engine/load.js";
import { quantities } from "../../../rules/quantities/index.js";
import { read } from "./meaning.js";
import { generatedSetup } from "./setups.js";
import { patience, runs, samples, spoiltSample } from "./texts.js";

const table = new FactTable(quantities);
const set = loadRuleSet(sets[sets.length - 1]!.files, table).partial;
const day = "2026-03-02";

/** Findings as a reader would list them. */
const listed = (r: CheckResult): string[] =>
  r.findings.map(
    (f) => `${f.rule} ${f.subject} ${f.verdict} ${f.levels.best}-${f.levels.worst} ${f.message}`,
  );
/** The samples take their equipment from another file; here everything stands in one. */
const pool = samples
  .find((s) => s.path.endsWith("loan-pool.span"))!
  .text.replace(/^(setup|visited|rules) .*$/gm, "");
const whole = (text: string): string => `${text.replace(/^from .*$/gm, "")}\n${pool}`;

describe("Whatever a plan holds, it is judged", () => {
  it(
    "the same findings in the same order, with nothing that is no number or no word",
    { timeout: patience },
    () => {
      fc.assert(
        fc.property(fc.oneof(spoiltSample.map(whole), generatedSetup), (text) => {
          const first = createChecker(set, quantities, table).check(read(text), day);
          const again = createChecker(set, quantities, table).check(read(text), day);
          expect(listed(again)).toEqual(listed(first));
          for (const line of listed(first)) expect(line).not.toMatch(/undefined|NaN|\[object/);
        }),
        { numRuns: runs(2) },
      );
    },
  );

  it("after an edit as anew", { timeout: patience }, () => {
    fc.assert(
      fc.property(spoiltSample.map(whole), spoiltSample.map(whole), (old, text) => {
        const checker = createChecker(set, quantities, table);
        const before = read(old);
        checker.check(before, day);
        const kept = checker.check(read(text, before.tree), day);
        expect(listed(kept)).toEqual(listed(createChecker(set, quantities, table).check(read(text), day)));
      }),
      { numRuns: runs(1) },
    );
  });
});
