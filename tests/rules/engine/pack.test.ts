import { expect, it } from "vitest";
import sets from "virtual:rule-sets";
import { FactTable } from "../../../rules/engine/fact-table.js";
import { loadRuleSet } from "../../../rules/engine/load.js";
import { packRuleSet, unpackRuleSet } from "../../../rules/engine/pack.js";
import { quantities } from "../../../rules/quantities/index.js";

it.each(sets.map((s) => [`${s.name} ${s.version}`, s.files] as const))(
  "%s comes out of the program as it went in, infinite bounds and the order of its lists included",
  (_, files) => {
    const { set } = loadRuleSet(files, new FactTable(quantities));
    const back = unpackRuleSet(packRuleSet(set!));
    expect(back).toEqual(set);
    expect([...back.limits.keys()]).toEqual([...set!.limits.keys()]);
    expect(
      set!.rules.some(
        (r) => r.judged.is === "bands" && r.judged.bands.some((b) => b.high.value === Infinity),
      ),
    ).toBe(true);
  },
);
