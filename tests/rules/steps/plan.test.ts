import { describe, expect, it } from "vitest";
import { phrases, readStep, spell, type Step } from "../../../language/vocabulary/verbs.js";
import { apply, judge, run } from "../../../rules/steps/machine.js";
import { arrived, holds, plan } from "../../../rules/steps/plan.js";
import type { StepSetup } from "../../../rules/steps/setup.js";
import { foundAfter, start, type State } from "../../../rules/steps/state.js";
import { findings, firstWeek, mirrored, steps, usual, usualSetup } from "./usual.js";

const toChair = { direction: "to-chair" } as const;
const alone = { helped: false, belt: false } as const;
const planned = (setup: StepSetup) => {
  const found = plan(setup, usual(setup));
  expect(found.reason).toBeUndefined();
  return found.steps!;
};
const words = (order: readonly Step[] | undefined) => (order ?? []).map(spell).join("; ");

const households: [string, Partial<StepSetup>][] = [
  ["into bed, helped", {}],
  ["into bed, helped, bed on the right", { side: "right" }],
  ["into bed, alone", alone],
  ["into bed without a board", { board: false }],
  ["into bed with lines and castors", { lines: true, castors: "unlocked" }],
  [
    "into bed, armrests flip back, leg rests only lift off",
    {
      armrests: { left: "flip-back", right: "flip-back" },
      legrests: { left: "removable", right: "removable" },
    },
  ],
  ["into bed, footplates fixed", { footplates: "fixed" }],
  ["out of bed, helped", toChair],
  ["out of bed, helped, bed on the right", { ...toChair, side: "right" }],
  ["out of bed, alone, the chair left beside the bed", { ...toChair, ...alone }],
  ["out of bed, helped, with lines and castors", { ...toChair, lines: true, castors: "unlocked" }],
  [
    "onto a toilet, helped",
    { surface: { name: "wc", kind: "toilet" }, surfaceArms: { left: "none", right: "none" } },
  ],
];

describe("A planned order", () => {
  it.each(households)("%s: is possible, breaks no rule, and is whole at the end", (_, changed) => {
    const setup = usualSetup(changed);
    const order = planned(setup);
    expect(findings(order, setup)).toEqual([]);
    expect(holds(order, setup, usual(setup))).toBe(true);
    expect(run(order, setup).changes.every(Boolean)).toBe(true);
  });

  it.each(households)("%s: has no step that could be left out", (_, changed) => {
    const setup = usualSetup(changed);
    const order = planned(setup);
    order.forEach((step, i) => {
      const shorter = order.filter((_, j) => j !== i);
      expect(holds(shorter, setup, usual(setup)), `without ${i + 1} ${spell(step)}`).toBe(false);
    });
  });

  it("for the first week is the order the consultant wrote", () => {
    expect(words(planned(usualSetup()))).toBe(words(steps(firstWeek)));
  });

  it("on the mirrored setup is the mirrored order", () => {
    const right = planned(usualSetup({ side: "right" }));
    expect(words(right)).toBe(words(mirrored(planned(usualSetup()))));
  });

  it("is the same every time it is asked for", () => {
    const setup = usualSetup({ ...toChair, castors: "unlocked" });
    expect(words(planned(setup))).toBe(words(planned(setup)));
  });

  it("takes up the chair as the way there left it", () => {
    const there = run(planned(usualSetup(alone)), usualSetup(alone));
    const setup = usualSetup({ ...toChair, ...alone, found: foundAfter(there.end) });
    const order = planned(setup);
    expect(findings(order, setup)).toEqual([]);
    expect(words(order)).not.toContain("remove legrest");
    expect(words(order)).toContain("refit legrest left");
  });

  it("lifts both leg rests off where the plates are fixed", () => {
    const order = words(planned(usualSetup({ footplates: "fixed" })));
    expect(order).toContain("remove legrest left; remove legrest right");
    expect(order).not.toContain("footplates up");
  });

  it("follows rules it was never told of", () => {
    const setup = usualSetup({ adjusts: true });
    const rule = (says: string, verb: string, fact: string, is: string) => ({
      says,
      at: (f: (n: string) => string | undefined) => f("step.verb") === verb,
      needs: (f: (n: string) => string | undefined) => f(fact) === is,
    });
    const beltFirst = plan(
      setup,
      usual(setup, [rule("belt before approach", "approach", "step.belt", "on")]),
    );
    expect(words(beltFirst.steps)).toMatch(/belt on;.*approach bed/);
    const inFront = plan(setup, usual(setup, [rule("helper in front", "slide", "step.helper", "in-front")]));
    expect(words(inFront.steps)).toContain("helper in-front");
    const behind = plan(setup, usual(setup, [rule("helper behind", "slide", "step.helper", "behind")]));
    expect(words(behind.steps)).toContain("helper behind");
    const stool = plan(setup, usual(setup, [rule("feet on a stool", "slide", "step.feet", "supported")]));
    expect(words(stool.steps)).toContain("feet supported");
    const height = plan(setup, usual(setup, [rule("height set", "slide", "step.height", "set")]));
    expect(words(height.steps)).toContain("set-height bed");
  });

  it("leaves out preparing steps that no rule asks for", () => {
    const setup = usualSetup({ lines: true, castors: "unlocked" });
    const found = plan(setup, usual(setup, [], ["lines", "castors"]));
    expect(words(found.steps)).not.toMatch(/lines|castors/);
    expect(found.steps).toHaveLength(20);
  });

  it("is found among fewer states where the facts that rules ask are named", () => {
    const setup = usualSetup({ lines: true, castors: "unlocked" });
    const reads = new Set([
      ...["step.lean", "step.belt", "step.scooted", "step.bearing-checked", "step.brakes-checked"],
      ...["step.castors", "step.lines"],
    ]);
    const all = plan(setup, usual(setup));
    const fewer = plan(setup, usual(setup), { reads });
    expect(words(fewer.steps)).toBe(words(all.steps));
    expect(fewer.states).toBeLessThan(all.states);
  });

  it("is as short as the shortest that a plain search through every step finds", () => {
    const setup = usualSetup({
      ...toChair,
      ...alone,
      board: false,
      legrests: { left: "removable", right: "none" },
      armrests: { left: "flip-back", right: "none" },
    });
    const allowed = usual(setup, [], ["whole again"]);
    const every = phrases("bed").map(({ text }) => readStep(text.split(" ")).step!);
    const seen = new Set([JSON.stringify(start(setup))]);
    let level = [start(setup)];
    let length = 0;
    let reached = false;
    while (level.length > 0 && !reached) {
      length++;
      const next: State[] = [];
      for (const before of level) {
        for (const step of every) {
          if (!judge(before, step, setup).ok) continue;
          const after = apply(before, step, setup);
          if (arrived(after, setup) && allowed(before, step, after, true) === true) reached = true;
          if (allowed(before, step, after, false) !== true || seen.has(JSON.stringify(after))) continue;
          seen.add(JSON.stringify(after));
          next.push(after);
        }
      }
      level = next;
    }
    expect(reached).toBe(true);
    expect(plan(setup, allowed).steps).toHaveLength(length);
    expect(seen.size).toBeGreaterThan(100); // else the search was no test
  });
});

describe("Where no order exists, the reason is said", () => {
  it.each<[string, Partial<StepSetup>, RegExp]>([
    [
      "a fixed armrest on the side of the bed",
      { armrests: { left: "fixed", right: "fixed" } },
      /`place board`: the near armrest is away/,
    ],
    [
      "a fixed leg rest on the side of the bed",
      { legrests: { left: "fixed", right: "fixed" } },
      /`approach`: the near leg rest is away/,
    ],
    ["a chair without brakes", { brakes: "none" }, /`approach`|`place board`|brakes/],
    [
      "a chair out of reach of somebody alone",
      { ...toChair, ...alone, found: { chair: "away" } },
      /`approach`: nobody is there/,
    ],
    ["a side that nobody wrote", { side: undefined }, /on which side/],
    [
      "an armrest of a kind that nobody wrote",
      { armrests: {} },
      /the kind of the left armrest must be known first/,
    ],
  ])("%s", (_, changed, reason) => {
    const setup = usualSetup(changed);
    const found = plan(setup, usual(setup));
    expect(found.steps).toBeUndefined();
    expect(found.reason).toMatch(reason);
  });

  it("rules that contradict each other end the search at its limit or before", () => {
    const setup = usualSetup();
    const found = plan(setup, () => "refused", { limit: 500 });
    expect(found.steps).toBeUndefined();
    expect(found.reason).toContain("refused");
    const wide = plan(setup, (_, __, ___, isEnd) => !isEnd, { limit: 300 });
    expect(wide.reason).toBe("no order was found within 300 states of the search");
    expect(wide.states).toBeLessThan(400);
  });
});
