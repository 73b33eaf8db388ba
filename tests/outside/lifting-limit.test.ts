/**
 * The published limit of 35 lb for each helper, with the examples that were published with it, worked through the released rule
 * set: its limit in the rule language, and its rule on lifting a leg.
 */
import { describe, expect, it } from "vitest";
import embedded from "virtual:rule-sets";
import { exactly } from "../../language/quantity/interval.js";
import { fromSi, unitOf } from "../../language/quantity/units.js";
import { FactTable } from "../../rules/engine/fact-table.js";
import { runExample } from "../../rules/engine/examples.js";
import type { Judgement } from "../../rules/engine/judge.js";
import { loadRuleSet } from "../../rules/engine/load.js";
import type { ExampleValue, Rule } from "../../rules/engine/types.js";
import { quantities } from "../../rules/quantities/index.js";

const { files } = embedded.find((s) => s.name === "home-transfer" && s.version === "2026.1")!;
/** The examples count helpers, of which the rule set has no rule for lifting; this one says the published arithmetic, with its limit. */
const arithmetic = {
  path: "home-transfer/2026.1/zz-lifting.spanrules",
  text: `rule load/published-lifting {
  title "What each helper lifts of somebody who lifts half of themselves"
  for each transfer
  require client.mass / 2 / helpers.count at most lift-by-hand else stop "Too much for each."
  because "As published."
  published waters-2007 at "abstract and opening" says "35 lb for each helper, for a cooperative person who is unlikely to move suddenly" takes "35 lb"
  examples {
    client.mass 180 lb, helpers.count 2: stop
    client.mass 180 lb, helpers.count 3: holds
    client.mass 140 lb, helpers.count 2: holds
    client.mass 141 lb, helpers.count 2: stop
  }
}
`,
};
const { partial: set, problems } = loadRuleSet([...files, arithmetic], new FactTable(quantities));
const rule = (id: string): Rule => set.rules.find((r) => r.id === id)!;
const pounds = (x: number): number => x * 0.45359237;
const inPounds = (si: number): number => fromSi(si, unitOf("lb"));

function judged(id: string, ...values: readonly ExampleValue[]): Judgement {
  const [example] = rule(id).examples;
  return runExample(rule(id), { ...example!, values }, set.limits);
}
const mass = (lb: number): ExampleValue => ({
  fact: "client.mass",
  interval: exactly(pounds(lb)),
  dimension: "mass",
});
const helpers = (n: number): ExampleValue => ({
  fact: "helpers.count",
  interval: exactly(n),
  dimension: "number",
});

it("the arithmetic can be said in the rule language, and its examples give what was published", () => {
  expect(problems.filter((p) => p.path === arithmetic.path)).toEqual([]);
});

describe("somebody of 180 lb who lifts half of themselves leaves 90 lb to helpers", () => {
  it.each([
    [1, 90, "fails"],
    [2, 45, "fails"],
    [3, 30, "holds"],
  ] as const)("%d helpers lift %d lb each: %s", (n, each, verdict) => {
    const j = judged("load/published-lifting", mass(180), helpers(n));
    expect(j.verdict).toBe(verdict);
    expect(inPounds(j.value!.interval.nominal)).toBeCloseTo(each, 9);
    expect(inPounds(j.margin!)).toBeCloseTo(35 - each, 9);
  });

  it("so three helpers are needed: 90 lb over 35 lb, rounded up", () => {
    const enough = [1, 2, 3, 4].find(
      (n) => judged("load/published-lifting", mass(180), helpers(n)).verdict === "holds",
    );
    expect(enough).toBe(Math.ceil(90 / 35));
  });
});

describe("lifting one leg", () => {
  const legs = "load/legs-too-heavy-to-lift";

  it("of somebody of 250 lb is over the limit: 39 lb as printed, and no less in the rule set", () => {
    const j = judged(legs, mass(250));
    expect([j.verdict, j.worst]).toEqual(["fails", "caution"]);
    expect(inPounds(j.value!.interval.nominal)).toBeGreaterThanOrEqual(39);
    expect(j.limit!.name).toBe("lift-by-hand");
    expect(inPounds(j.limit!.interval.nominal)).toBeCloseTo(35, 9);
  });

  // Fractions of body mass that others print for a leg: two handling guides, a textbook, a segment table for men.
  it.each([0.157, 0.16, 0.161, 0.199])(
    "is never taken for lighter than by the published fraction %d",
    (fraction) => {
      const heaviest = 35 / fraction;
      for (const lb of [heaviest, heaviest + 0.1, 1.2 * heaviest]) {
        const j = judged(legs, mass(lb));
        expect(j.verdict, `${lb} lb`).toBe("fails");
        expect(inPounds(j.value!.interval.nominal)).toBeGreaterThan(fraction * lb);
      }
    },
  );

  it("of somebody of 141 lb may be lifted by one helper each: the mass up to which a handling guide lets two do it", () => {
    expect(judged(legs, mass(141)).verdict).toBe("holds");
    // That guide holds a leg to 22 lb at .157 of body mass.
    expect(22 / 0.157).toBeCloseTo(140.1, 1);
  });

  it("turns at 35 lb over .209 of body mass", () => {
    expect(judged(legs, mass(35 / 0.209)).verdict).toBe("holds");
    expect(judged(legs, mass(35 / 0.209 + 0.1)).verdict).toBe("fails");
  });
});

describe("the limit on people", () => {
  it("is 35 lb, 15.9 kg, and cites the study", () => {
    const limit = set.limits.get("lift-by-hand")!;
    expect(inPounds(limit.interval.nominal)).toBeCloseTo(35, 9);
    expect(limit.interval.nominal).toBeCloseTo(15.9, 1);
    expect(limit.bases.map((b) => b.citation?.id)).toContain("waters-2007");
  });

  it("lets nobody be carried by two between a chair and a bed, whatever they weigh", () => {
    const carried = rule("steps/lift-by-hand");
    const bed = runExample(
      carried,
      { ...carried.examples[0]!, values: [{ fact: "step.surface-kind", choice: "bed" }] },
      set.limits,
    );
    expect([bed.verdict, bed.worst]).toEqual(["fails", "stop"]);
  });
});
