import { describe, expect, it } from "vitest";
import fc from "fast-check";
import { phrases, readStep, stepPhrases, type Step } from "../../../language/vocabulary/verbs.js";
import { actions } from "../../../rules/steps/actions.js";
import { facts, meansNoStep, stepFacts, stepIs, verbChoice } from "../../../rules/steps/facts.js";
import { effectOf, equipmentAt, run } from "../../../rules/steps/machine.js";
import type { StepSetup } from "../../../rules/steps/setup.js";
import {
  countOfStates,
  foundAfter,
  keyAfter,
  keyOf,
  start,
  stateChoices,
  type State,
} from "../../../rules/steps/state.js";
import { findings, firstWeek, mirrored, steps, usualSetup } from "./usual.js";

const toChair = (more: Partial<StepSetup> = {}) => usualSetup({ direction: "to-chair", ...more });
/** Why steps cannot be done, by the step's number. */
const impossible = (text: string, setup: StepSetup) =>
  run(steps(text), setup).possible.flatMap((p, i) => (p.ok ? [] : [`${i + 1}: ${p.because}`]));

const outOfBed = `
  approach bed; lock brakes; swing-away armrest left; sit on-edge; feet on floor; belt on; lean left; place board
  sit upright; check bearing; footplates up; check brakes; slide; lean right; withdraw board; position in-chair`;

describe("The first week's twenty steps", () => {
  it("run through without a finding", () => {
    const order = steps(firstWeek);
    expect(order).toHaveLength(20);
    expect(findings(order, usualSetup())).toEqual([]);
    expect(run(order, usualSetup()).changes.every(Boolean)).toBe(true);
  });

  it("run through on the mirrored setup once every left is a right", () => {
    const right = usualSetup({ side: "right" });
    expect(findings(mirrored(steps(firstWeek)), right)).toEqual([]);
    expect(findings(steps(firstWeek), right)).toContain(
      "4 approach bed: the near leg rest is away before the chair comes up",
    );
  });

  it("leave the client in bed, and the chair beside it as it was slid from", () => {
    expect(run(steps(firstWeek), usualSetup()).end).toMatchObject({
      client: "on-to",
      posture: "lying",
      feet: "supported",
      brakes: "locked",
      board: "stowed",
      legrestLeft: "removed",
      armrestLeft: "away",
      positioned: "yes",
    });
  });

  const order = steps(firstWeek);
  const without = (text: string) => order.filter((_, i) => i !== order.findIndex((s) => s.verb === text));
  it.each([
    ["remove legrest", "3 approach bed: the near leg rest is away before the chair comes up"],
    ["unlock brakes", "3 approach bed: the brakes are locked"],
    ["approach", "9 place board: the chair is not at the bed yet"],
    ["swing-away armrest", "9 place board: the near armrest is away before the board is placed"],
    ["belt on", "15 slide: the belt is on before a helper helps across"],
    ["scoot forward", "9 place board: the hips are forward before the board is placed"],
    ["lean", "9 place board: the client leans away while the board is placed or withdrawn"],
    ["place board", "11 check bearing: the board is not under the client yet"],
    ["sit upright", "15 slide: the client slides upright"],
    ["check bearing", "15 slide: the bearing is checked before the slide"],
    ["feet on floor", "13 footplates up: the feet are on the footplates"],
    ["footplates up", "15 slide: the plates are up before the slide"],
    ["check brakes", "15 slide: the brakes are checked again before the slide"],
    ["slide", "18 position in-bed: the client is not on the bed"],
    ["withdraw board", "18 position in-bed: the board is out before the client is settled"],
    ["belt off", "end: the belt is off at the end"],
  ])("without %s: %s", (verb, finding) => expect(findings(without(verb), usualSetup())).toContain(finding));
});

describe("What cannot be done is said with its reason", () => {
  const cases: [string, string, StepSetup, string[]][] = [
    [
      "an approach with locked brakes",
      "lock brakes; approach bed",
      usualSetup(),
      ["2: the brakes are locked"],
    ],
    [
      "a slide with no board laid",
      "approach bed; slide",
      usualSetup(),
      ["2: the board is not under the client yet"],
    ],
    ["a slide to a bed that is not there yet", "slide", usualSetup(), ["1: the chair is not at the bed yet"]],
    [
      "a second slide",
      "approach bed; place board; slide; slide",
      usualSetup(),
      ["4: the client is already across"],
    ],
    [
      "a board nobody has",
      "approach bed; place board",
      usualSetup({ board: false }),
      ["2: no board is written for this transfer"],
    ],
    [
      "a board under a client who lies",
      "approach bed; place board",
      toChair(),
      ["2: the client is still lying"],
    ],
    ["a slide without a board where none is used", "approach bed; slide", usualSetup({ board: false }), []],
    ["plates up under the feet", "footplates up", usualSetup(), ["1: the feet are on the footplates"]],
    [
      "fixed plates",
      "feet on floor; footplates up",
      usualSetup({ footplates: "fixed" }),
      ["2: the footplates do not turn up"],
    ],
    [
      "a belt nobody has",
      "belt on",
      usualSetup({ belt: false }),
      ["1: no belt is written for this transfer"],
    ],
    [
      "a helper who is not there",
      "helper in-front",
      usualSetup({ helped: false }),
      ["1: no helper is written for this transfer"],
    ],
    ["castors that the bed lacks", "lock castors", usualSetup(), ["1: the bed has no castors"]],
    [
      "lines that nobody has",
      "move lines",
      usualSetup(),
      ["1: no lines or tubes are written for the client"],
    ],
    ["a bed that does not adjust", "set-height bed", usualSetup(), ["1: the bed does not adjust"]],
    [
      "brakes that the chair lacks",
      "lock brakes",
      usualSetup({ brakes: "none" }),
      ["1: the chair has no brakes"],
    ],
    ["a check of open brakes", "check brakes", usualSetup(), ["1: the brakes are open"]],
    [
      "a fixed armrest",
      "flip-back armrest left",
      usualSetup({ armrests: { left: "fixed" } }),
      ["1: the left armrest is written as fixed: it does not flip back"],
    ],
    [
      "the wrong way to clear an armrest",
      "remove armrest left",
      usualSetup(),
      ["1: the left armrest is written as swing-away: it does not lift out"],
    ],
    [
      "a leg rest that only lifts off",
      "swing-away legrest left",
      usualSetup({ legrests: { left: "removable" } }),
      ["1: the left leg rest is written as removable: it does not swing away"],
    ],
    [
      "a leg rest of a kind nobody wrote",
      "swing-away legrest left; remove legrest left",
      usualSetup({ legrests: {} }),
      [],
    ],
    [
      "the armrest back over the board",
      "approach bed; place board; restore armrest left",
      usualSetup(),
      ["3: the board lies where the armrest goes"],
    ],
    [
      "the far armrest while the board lies",
      "approach bed; place board; restore armrest right",
      usualSetup(),
      [],
    ],
    [
      "rolling away with the board laid",
      "approach bed; place board; back-away",
      usualSetup(),
      ["3: the board is still placed: it would fall or be dragged"],
    ],
    [
      "the board out half-way",
      "approach bed; place board; slide part-way; withdraw board",
      usualSetup(),
      ["4: the client is on the board, between the surfaces"],
    ],
    ["lying down in the chair", "position in-bed", usualSetup(), ["1: the client is not on the bed"]],
    [
      "feet on plates from the bed",
      "sit on-edge; feet on plates",
      toChair(),
      ["2: the client is not in the chair"],
    ],
    ["feet on the floor while lying", "feet on floor", toChair(), ["1: the client is still lying"]],
    [
      "another bed than the transfer's",
      "approach bath",
      usualSetup(),
      ["1: this transfer is with bed, not with bath"],
    ],
    [
      "a chair out of reach",
      "lock brakes",
      toChair({ helped: false, found: { chair: "away" } }),
      ["1: nobody is there to reach the chair: the client is alone and lying"],
    ],
    [
      "a chair that nobody can bring",
      "sit on-edge; approach bed",
      toChair({ helped: false, found: { chair: "away" } }),
      ["2: nobody is there to move the chair: the client is alone and not in it"],
    ],
    ["a chair within reach from the edge", "sit on-edge; lock brakes", toChair({ helped: false }), []],
  ];
  it.each(cases)("%s", (_, text, setup, expected) => expect(impossible(text, setup)).toEqual(expected));

  it("does not let one missing step make the later ones impossible", () => {
    expect(impossible("approach bed; slide; withdraw board; position in-bed", usualSetup())).toEqual([
      "2: the board is not under the client yet",
      "3: the board is not placed",
    ]);
  });

  it("does not count a check that could not be made", () => {
    const done = run(steps("check brakes; check bearing"), usualSetup());
    expect(done.end).toMatchObject({ brakesChecked: "no", bearingChecked: "no" });
  });
});

describe("Checks lapse", () => {
  const before = "lock brakes; check brakes;";
  it.each([
    ["when the board is placed", `approach bed; ${before} place board`, "brakesChecked"],
    ["when the brakes are opened", `${before} unlock brakes; lock brakes`, "brakesChecked"],
    [
      "when the client moves on the seat",
      "approach bed; place board; check bearing; scoot forward",
      "bearingChecked",
    ],
    [
      "when the board is placed anew",
      "approach bed; place board; check bearing; withdraw board; place board",
      "bearingChecked",
    ],
  ])("%s", (_, text, field) => expect(run(steps(text), usualSetup()).end[field as keyof State]).toBe("no"));

  it("and hold otherwise", () => {
    const text = `approach bed; lock brakes; place board; check bearing; check brakes; feet on floor; belt on; sit upright`;
    expect(run(steps(text), usualSetup()).end).toMatchObject({ brakesChecked: "yes", bearingChecked: "yes" });
  });
});

describe("Feet", () => {
  it("stay on the plates while one leg rest is in place, and hang when both are away", () => {
    expect(run(steps("remove legrest left"), usualSetup()).end.feet).toBe("plates");
    expect(run(steps("remove legrest left; swing-away legrest right"), usualSetup()).end.feet).toBe(
      "hanging",
    );
  });
  it("hang when the client comes up to the edge of the bed", () => {
    expect(run(steps("sit on-edge"), toChair()).end.feet).toBe("hanging");
  });
  it("have no plates in the way once both leg rests are away", () => {
    const done = run(steps("remove legrest left; remove legrest right"), usualSetup());
    expect(facts(done.end, done.setup)("step.footplates")).toBe("up");
  });
});

describe("The side decides what is near and what is away", () => {
  it.each([
    ["leaving the chair, bed on the left", usualSetup(), "lean right", "away"],
    ["leaving the chair, bed on the right", usualSetup({ side: "right" }), "lean right", "towards"],
    ["leaving the bed, bed on the chair's left", toChair(), "sit on-edge; lean left", "away"],
    [
      "leaving the bed, bed on the chair's right",
      toChair({ side: "right" }),
      "sit on-edge; lean left",
      "towards",
    ],
    ["arrived in the bed on the left", usualSetup(), "approach bed; place board; slide; lean left", "away"],
    [
      "arrived in the chair from the left",
      toChair(),
      "approach bed; sit on-edge; place board; slide; lean left",
      "towards",
    ],
  ])("%s: %s", (_, setup, text, lean) => {
    expect(facts(run(steps(text), setup).end, setup)("step.lean")).toBe(lean);
  });

  it("gives the near leg rest and armrest both ways", () => {
    for (const direction of ["from-chair", "to-chair"] as const) {
      const setup = usualSetup({ direction, side: "right" });
      const f = facts(run(steps("remove legrest right; swing-away armrest left"), setup).end, setup);
      expect(["near", "far"].map((n) => f(`step.legrest-${n}`))).toEqual(["removed", "in-place"]);
      expect(["near", "far"].map((n) => f(`step.armrest-${n}`))).toEqual(["in-place", "away"]);
    }
  });

  it("leaves unknown what the side decides where nobody said it", () => {
    const setup = usualSetup({ side: undefined });
    const f = facts(run(steps("remove legrest left; lean left"), setup).end, setup);
    expect(f("step.legrest-near")).toBeUndefined();
    expect(f("step.lean")).toBeUndefined();
    expect(f("step.armrest-near")).toBe("in-place");
  });

  it("leaves castors and lines unknown where nobody looked", () => {
    const setup = usualSetup({ castors: undefined, lines: undefined });
    const f = facts(start(setup), setup);
    expect(f("step.castors")).toBeUndefined();
    expect(f("step.lines")).toBeUndefined();
  });
});

describe("The words of a rule mean a step", () => {
  it("by its words, or by the first of them", () => {
    expect(stepIs({ verb: "slide part-way" }, "slide")).toBe(true);
    expect(stepIs({ verb: "scoot back" }, "scoot")).toBe(true);
    expect(stepIs({ verb: "remove armrest", side: "left" }, "remove legrest")).toBe(false);
    expect(stepIs({ verb: "lean", side: "left" }, "le")).toBe(false);
  });
  it("or none, when misspelt", () => {
    expect(meansNoStep("place bord")).toBe(true);
    expect(meansNoStep("position")).toBe(false);
  });
});

describe("Geometry sees the chair as it stands when the board is placed", () => {
  it("in the first week", () => {
    expect(equipmentAt(run(steps(firstWeek), usualSetup()))).toEqual({
      legrests: { left: "removed", right: "in-place" },
      armrests: { left: "away", right: "in-place" },
      scooted: true,
    });
  });
  it("at the slide where there is no board, at the end where there is neither, at the start where nothing is written", () => {
    const setup = usualSetup({ board: false });
    const at = (text: string) => equipmentAt(run(steps(text), setup)).legrests.left;
    expect(at("swing-away legrest left; approach bed; slide; refit legrest left")).toBe("swung");
    expect(at("remove legrest left")).toBe("removed");
    expect(at("")).toBe("in-place");
  });
  it("counts the hips as forward on a chair that is arrived at", () => {
    expect(equipmentAt(run(steps(outOfBed), toChair())).scooted).toBe(true);
  });
});

describe("The way out of bed", () => {
  it("can be done helped", () => expect(impossible(outOfBed, toChair())).toEqual([]));

  it("starts from the chair as the way there left it", () => {
    const there = run(steps(firstWeek), usualSetup());
    const back = start(toChair({ found: foundAfter(there.end) }));
    expect(back).toMatchObject({
      chair: "at",
      brakes: "locked",
      legrestLeft: "removed",
      armrestLeft: "away",
    });
    expect(back).toMatchObject({ client: "on-from", posture: "lying", feet: "supported" });
  });
});

describe("Whatever is written", () => {
  const anyStep: fc.Arbitrary<Step> = fc
    .constantFrom(...phrases("bed"), ...phrases("bath"))
    .map(({ text }) => readStep(text.split(" ")).step!);
  const kindOfLegrest = fc.constantFrom(
    undefined,
    "fixed",
    "swing-away",
    "removable",
    "none",
  ) as fc.Arbitrary<"fixed">;
  const kindOfArmrest = fc.constantFrom(
    undefined,
    "fixed",
    "flip-back",
    "removable",
    "none",
  ) as fc.Arbitrary<"fixed">;
  const kindOfSurfaceArm = fc.constantFrom(undefined, "fixed", "flip-up", "none") as fc.Arbitrary<"fixed">;
  const anySetup: fc.Arbitrary<StepSetup> = fc.record({
    direction: fc.constantFrom("from-chair" as const, "to-chair" as const),
    side: fc.constantFrom("left" as const, "right" as const, undefined),
    surfaceSide: fc.constantFrom("left" as const, "right" as const, undefined),
    surface: fc.constantFrom(
      ...stepFacts
        .get("step.surface-kind")!
        .choices!.map((kind) => ({ name: kind === "bed" ? "bed" : "bath", kind })),
    ),
    chair: fc.constantFrom(undefined, { name: "pot", kind: "commode" as const }),
    surfaceArms: fc.record({ left: kindOfSurfaceArm, right: kindOfSurfaceArm }),
    legrests: fc.record({ left: kindOfLegrest, right: kindOfLegrest }),
    armrests: fc.record({ left: kindOfArmrest, right: kindOfArmrest }),
    footplates: fc.constantFrom("fixed" as const, "flip-up" as const, undefined),
    brakes: fc.constantFrom(
      "both" as const,
      "left" as const,
      "none" as const,
      "no-wheels" as const,
      undefined,
    ),
    helped: fc.boolean(),
    helpers: fc.constantFrom(undefined, 2),
    lift: fc.boolean(),
    sling: fc.constantFrom(undefined, false),
    sheet: fc.boolean(),
    wet: fc.constantFrom(true, false, undefined),
    skinCovered: fc.constantFrom(true, false, undefined),
    adjustable: fc.constantFrom(undefined, ["bath"]),
    belt: fc.boolean(),
    board: fc.boolean(),
    lines: fc.constantFrom(true, false, undefined),
    castors: fc.constantFrom("none" as const, "unlocked" as const, undefined),
    adjusts: fc.constantFrom(true, false, undefined),
  });

  it("every list of steps runs, every state has its parts, every fact is one of its choices", () => {
    fc.assert(
      fc.property(fc.array(anyStep, { maxLength: 40 }), anySetup, (order, setup) => {
        const done = run(order, setup);
        expect(done.after).toHaveLength(order.length);
        order.forEach((step, i) => {
          const f = facts(done.before[i]!, setup, step);
          for (const { name, choices } of stepFacts.values()) {
            const answer = f(name);
            if (answer !== undefined && choices) expect(choices, name).toContain(answer);
          }
          expect(done.possible[i]!.ok).toBe(f("step.possible") === "yes");
          expect(f("step.because")).toBe(done.possible[i]!.because ?? "");
          expect(Object.isFrozen(done.after[i])).toBe(true);
          expect(done.changes[i]).toBe(keyOf(done.after[i]!) !== keyOf(done.before[i]!));
        });
        equipmentAt(done);
      }),
      { numRuns: 300 },
    );
  });

  it("every possible step is in the vocabulary and has its action", () => {
    expect(Object.keys(actions).sort()).toEqual(stepPhrases.map((p) => p.verb).sort());
    expect(stepFacts.get("step.verb")!.choices).toContain(verbChoice("remove legrest"));
  });

  it("the key of a change is the key of the state that it leads to", () => {
    fc.assert(
      fc.property(fc.array(anyStep, { maxLength: 30 }), anySetup, (order, setup) => {
        const done = run(order, setup);
        order.forEach((step, i) => {
          const patch = effectOf(done.before[i]!, step, setup);
          expect(keyAfter(done.before[i]!, patch)).toBe(keyOf({ ...done.before[i]!, ...patch }));
        });
      }),
    );
  });

  it("two states have the same key only if they are alike", () => {
    expect(Number.isSafeInteger(countOfStates)).toBe(true);
    const anyState = fc.record(
      Object.fromEntries(Object.entries(stateChoices).map(([f, c]) => [f, fc.constantFrom(...c)])),
    ) as unknown as fc.Arbitrary<State>;
    fc.assert(
      fc.property(anyState, anyState, fc.constantFrom(...Object.keys(stateChoices)), (a, b, field) => {
        expect(keyOf({ ...a })).toBe(keyOf(a));
        const one = { ...a, [field]: b[field as keyof State] };
        expect(keyOf(one) === keyOf(a)).toBe(one[field as keyof State] === a[field as keyof State]);
        expect(Number.isSafeInteger(keyOf(a))).toBe(true);
      }),
    );
  });
});
