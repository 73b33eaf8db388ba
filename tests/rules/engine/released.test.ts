import sets from "virtual:rule-sets";
import { describe, expect, it } from "vitest";
import { quantities } from "../../../rules/quantities/index.js";
import { explain, explanationLines } from "../../../rules/engine/explain.js";
import { exampleFault, runExample } from "../../../rules/engine/examples.js";
import { FactTable } from "../../../rules/engine/fact-table.js";
import { loadRuleSet } from "../../../rules/engine/load.js";

const table = new FactTable(quantities);

describe.each(sets.map((s) => [s.name, s.version, s.files] as const))(
  "the released rule set %s %s",
  (_, __, files) => {
    const { problems, partial: set } = loadRuleSet(files, table);

    it("has nothing to be said against it", () => {
      expect(problems.map((p) => `${p.path}:${p.line + 1} ${p.message}`)).toEqual([]);
    });

    it.each(set.rules.map((r) => [r.id, r] as const))(
      "%s: every example gives what it says, and the rule can be explained",
      (id, rule) => {
        for (const e of rule.examples)
          expect(exampleFault(rule, e, runExample(rule, e, set.limits)), e.text).toBeUndefined();
        const lines = explanationLines(explain(id, set, table)!);
        expect(lines[0]).toBe(`${rule.title} (${id})`);
        expect(lines.join("\n")).not.toMatch(/undefined|NaN|\[object/);
      },
    );

    it("explains every limit, default and source, and says which rules use it", () => {
      for (const name of [...set.limits.keys(), ...set.defaults.keys(), ...set.sources.keys()]) {
        const e = explain(name, set, table)!;
        expect(explanationLines(e).join("\n"), name).not.toMatch(/undefined|NaN|\[object/);
        if (e.is === "source") expect(e.usedBy.length, name).toBeGreaterThan(0);
      }
    });
  },
);
