/** Orders for every kind of surface, both directions, against the released rules: written by the tool, and written by hand. */
import { describe, expect, it } from "vitest";
import { spell, type Step } from "../../../language/vocabulary/verbs.js";
import { run } from "../../../rules/steps/machine.js";
import { arrived, plan } from "../../../rules/steps/plan.js";
import type { StepSetup } from "../../../rules/steps/setup.js";
import { foundAfter } from "../../../rules/steps/state.js";
import { reads, releasedRules, troubles } from "./released.js";
import { steps, usualSetup } from "./usual.js";

const bath = ["tub", "tub-bench", "shower-seat"];
const withArms = ["toilet", "commode", "armchair", "shower-seat"];

const setupFor = (kind: string, more: Partial<StepSetup> = {}): StepSetup =>
  usualSetup({
    surface: { name: "place", kind },
    ...(kind !== "bed" && { surfaceSide: "right" }),
    surfaceArms: withArms.includes(kind)
      ? { left: "swing-away", right: "flip-up" }
      : { left: "none", right: "none" },
    ...(bath.includes(kind) && { wet: true }),
    ...more,
  });
const words = (order: readonly Step[] | undefined): string => (order ?? []).map(spell).join("; ");

const alone = { helped: false, belt: false } as const;
const lifted = { lift: true, board: false, belt: false } as const;
const toChair = { direction: "to-chair" } as const;

/** Greatest numbers of states looked at, so that a change that makes the search slow is seen. */
const most = { board: 3200, "no board": 1300, lift: 1600, together: 250 } as const;

const seats = ["bed", "toilet", "commode", "shower-seat", "tub", "tub-bench", "armchair", "car-seat"];
const ways: [string, keyof typeof most, Partial<StepSetup>][] = [
  ["helped", "board", {}],
  ["alone", "board", alone],
  ["two helpers, lines", "board", { helpers: 2, lines: true }],
  ["helped, without a board", "no board", { board: false }],
  ["helped, with a slide sheet", "board", { sheet: true }],
  ["lifted", "lift", { ...lifted, helpers: 2 }],
];
const cases = [
  ...seats.flatMap((kind) => ways.map(([name, way, more]) => [kind, name, way, more] as const)),
  ["floor-place", "lifted", "lift", { ...lifted, lines: true }] as const,
  ["floor-place", "two helpers", "together", { helpers: 2 }] as const,
];

describe("An order written for any surface and equipment, there and back", () => {
  it.each(cases)(
    "%s, %s: can be done, breaks no rule, wastes no step",
    { timeout: 60_000 },
    (kind, _, way, more) => {
      let found: StepSetup["found"];
      for (const direction of ["from-chair", "to-chair"] as const) {
        // Alone the way back starts from where the way there left the chair.
        const setup = setupFor(kind, {
          direction,
          ...more,
          ...(found && !(more.helped ?? true) && { found }),
        });
        const made = plan(setup, releasedRules(setup), { reads });
        expect(made.reason).toBeUndefined();
        expect(troubles(made.steps!, setup)).toEqual([]);
        const done = run(made.steps!, setup);
        expect(done.changes.every(Boolean)).toBe(true);
        expect(arrived(done.end, setup)).toBe(true);
        expect(made.states, words(made.steps)).toBeLessThan(most[way]);
        found = foundAfter(done.end);
      }
    },
  );

  it("between a bed and a commode on castors, which has the chair's part", { timeout: 60_000 }, () => {
    for (const direction of ["from-chair", "to-chair"] as const)
      for (const brakes of ["both", "no-wheels"] as const) {
        const setup = setupFor("bed", {
          direction,
          brakes,
          chair: { name: "commode", kind: "commode" },
          legrests: { left: "none", right: "none" },
          footplates: undefined,
          castors: "unlocked",
        });
        const made = plan(setup, releasedRules(setup), { reads });
        expect(made.reason).toBeUndefined();
        expect(troubles(made.steps!, setup)).toEqual([]);
        expect(words(made.steps)).toContain(direction === "from-chair" ? "clothing up" : "clothing down");
        expect(words(made.steps).includes("lock brakes")).toBe(brakes === "both");
      }
  });

  const contains: [string, StepSetup, RegExp][] = [
    [
      "the arm of the toilet is away before the board and back before the end",
      setupFor("toilet"),
      /clear arm-of place right;.*place board;.*restore arm-of place right$/,
    ],
    ["clothing comes down on the toilet", setupFor("toilet"), /slide;.*clothing down/],
    ["and up before the way back", setupFor("toilet", toChair), /^clothing up;.*place board/],
    [
      "out of the bath the bench and the skin are dried and the board is covered",
      setupFor("tub-bench", toChair),
      /wipe-dry place; dry skin; cover board;.*place board/,
    ],
    [
      "onto a bench: across first, then the legs, one at a time, then along",
      setupFor("tub-bench"),
      /slide;.*withdraw board; leg in left; leg in right; move-along in/,
    ],
    [
      "off a bench: along, the legs out, then across",
      setupFor("tub-bench", toChair),
      /move-along out; leg out right; leg out left;.*slide/,
    ],
    [
      "into a car: the door first, the head down at the slide",
      setupFor("car-seat"),
      /^open door;.*duck head; slide/,
    ],
    ["lines first, and looked at last", setupFor("armchair", { lines: true }), /^move lines;.*check lines$/],
    [
      "a sling is checked twice and taken out",
      setupFor("bed", { ...lifted, castors: "unlocked" }),
      /^lock castors;.*attach sling; check loops; raise sling; check lifted; turn lift; lower sling; detach sling; lift away; sling out/,
    ],
    [
      "from the floor two lift together, both in place",
      setupFor("floor-place", { ...toChair, helpers: 2 }),
      /helper-two behind; lift together/,
    ],
  ];
  it.each(contains)("%s", { timeout: 60_000 }, (_, setup, order) => {
    expect(words(plan(setup, releasedRules(setup), { reads }).steps)).toMatch(order);
  });
});

describe("Where no order exists, the need that cannot be met is said", () => {
  it.each<[string, StepSetup, RegExp]>([
    [
      "the floor with one helper and no lift",
      setupFor("floor-place"),
      /`lift together`: a second helper is not written/,
    ],
    ["a lift with nobody to work it", setupFor("bed", { ...lifted, ...alone }), /no helper is written/],
    [
      "a lift whose sling is missing",
      setupFor("bed", { ...lifted, sling: false }),
      /`sling under`: no sling is written/,
    ],
    [
      "a toilet of whose arms nothing is known",
      setupFor("toilet", { surfaceArms: {} }),
      /whether place has an arm on its right/,
    ],
    ["a side that nobody wrote", setupFor("toilet", { side: undefined }), /write `facing` and `side`/],
    [
      "a chair without brakes in a lift's order",
      setupFor("bed", { ...lifted, brakes: "none" }),
      /`raise sling`: steps\/lift-chair-rolls/,
    ],
  ])("%s", { timeout: 60_000 }, (_, setup, reason) => {
    const made = plan(setup, releasedRules(setup), { reads });
    expect(made.steps).toBeUndefined();
    expect(made.reason).toMatch(reason);
  });
});

const toToilet = `
  clear arm-of wc right; lock brakes; remove legrest left; unlock brakes; approach wc; lock brakes; swing-away armrest left
  belt on; helper in-front; scoot forward; lean right; place board; sit upright; check bearing; feet on floor; footplates up; check brakes
  slide; lean left; withdraw board; position on-surface; belt off; clothing down; restore arm-of wc right`;
const outOfBath = `
  wipe-dry bench; dry skin; lock brakes; remove legrest left; unlock brakes; approach bench; lock brakes; swing-away armrest left
  move-along out; leg out right; leg out left; belt on; helper in-front; cover board; lean left; place board; sit upright; check bearing
  feet on floor; footplates up; check brakes; slide; lean right; withdraw board; position in-chair; belt off; restore armrest left`;
const intoCar = `
  open door; seat rearward; lock brakes; remove legrest left; unlock brakes; approach car; lock brakes; swing-away armrest left
  belt on; helper in-front; scoot forward; lean right; place board; sit upright; check bearing; feet on floor; footplates up; check brakes
  duck head; slide; lean left; withdraw board; leg in left; leg in right; position on-surface; belt off`;
const inSling = `
  move lines; lock castors; lock brakes; sling under; open base; bring lift; attach sling; check loops; raise sling; check lifted
  turn lift; lower sling; detach sling; lift away; sling out; position in-bed; check lines`;
const offTheFloor = `
  lock brakes; remove legrest left; unlock brakes; approach floor; lock brakes
  helper behind; helper-two in-front; lift together; feet on floor; position in-chair; refit legrest left`;
const toilet = setupFor("toilet", { surface: { name: "wc", kind: "toilet" } });
const bench = setupFor("tub-bench", { ...toChair, surface: { name: "bench", kind: "tub-bench" } });
const car = setupFor("car-seat", { surface: { name: "car", kind: "car-seat" } });
const sling = setupFor("bed", { ...lifted, helpers: 2, castors: "unlocked", lines: true });
const floor = setupFor("floor-place", {
  ...toChair,
  surface: { name: "floor", kind: "floor-place" },
  helpers: 2,
});

describe("A right order written by hand runs without trouble", () => {
  it.each<[string, string, StepSetup]>([
    ["onto a toilet", toToilet, toilet],
    ["out of the bath over a bench", outOfBath, bench],
    ["into a car", intoCar, car],
    ["in a sling into bed", inSling, sling],
  ])("%s", (_, text, setup) => expect(troubles(steps(text), setup, "advice")).toEqual([]));

  it("off the floor by two, with the advice to ask for a lift", () => {
    expect(troubles(steps(offTheFloor), floor)).toEqual([]);
    expect(troubles(steps(offTheFloor), floor, "advice")).toEqual(["8 lift together: floor-by-hand"]);
  });
});

/** The order without its first step that is spelled so. */
const without = (text: string, left: string): Step[] => {
  const order = steps(text);
  const at = order.findIndex((s) => spell(s) === left);
  expect(at, left).toBeGreaterThanOrEqual(0);
  return order.filter((_, i) => i !== at);
};

describe("A wrong order names the step at fault and the one that is missing", () => {
  it.each<[string, string, StepSetup, string]>([
    ["clear arm-of wc right", toToilet, toilet, "11 place board: surface-arm-in-the-way"],
    ["restore arm-of wc right", toToilet, toilet, "end: surface-arm-left-away"],
    ["wipe-dry bench", outOfBath, bench, "15 place board: wet-surface, insert wipe-dry"],
    ["dry skin", outOfBath, bench, "21 slide: wet-skin, insert dry skin"],
    ["cover board", outOfBath, bench, "15 place board: bare-on-board, insert cover board or clothing up"],
    [
      "move-along out",
      outOfBath,
      bench,
      "15 place board: the client sits inside the rim, out of reach of the chair",
    ],
    ["leg out left", outOfBath, bench, "21 slide: legs-not-out"],
    ["open door", intoCar, car, "5 approach car: car-door-not-open, insert open door"],
    ["duck head", intoCar, car, "19 slide: head-not-ducked, insert duck head"],
    ["leg in right", intoCar, car, "end: legs-left-outside"],
    ["move lines", inSling, sling, "8 raise sling: lines-not-moved, insert move lines"],
    ["lock castors", inSling, sling, "8 raise sling: lift-surface-rolls, insert lock castors"],
    ["lock brakes", inSling, sling, "8 raise sling: lift-chair-rolls, insert lock brakes"],
    ["sling under", inSling, sling, "6 attach sling: the sling is not under the client yet"],
    ["open base", inSling, sling, "8 raise sling: base-not-open, insert open base"],
    ["bring lift", inSling, sling, "6 attach sling: the lift does not stand over the client"],
    ["attach sling", inSling, sling, "7 check loops: the sling is not attached yet"],
    ["check loops", inSling, sling, "8 raise sling: loops-not-checked, insert check loops"],
    ["raise sling", inSling, sling, "9 check lifted: the client does not hang in the sling"],
    ["check lifted", inSling, sling, "10 turn lift: not-checked-in-the-air, insert check lifted"],
    ["turn lift", inSling, sling, "end: not-arrived"],
    ["lower sling", inSling, sling, "12 detach sling: the client hangs in the sling"],
    ["detach sling", inSling, sling, "13 lift away: the sling is still hooked to it"],
    ["lift away", inSling, sling, "end: lift-left-standing, insert lift away"],
    ["check lines", inSling, sling, "end: lines-not-checked, insert check lines"],
    [
      "helper-two in-front",
      offTheFloor,
      floor,
      "7 lift together: second-helper-not-placed, insert helper-two behind",
    ],
    ["approach floor", offTheFloor, floor, "7 lift together: the chair is not at the floor place yet"],
  ])("without %s", (left, text, setup, trouble) => {
    expect(troubles(without(text, left), setup)).toContain(trouble);
  });

  it("astride the rim nobody moves along the bench", () => {
    const order = steps(outOfBath.replace("move-along out; leg out right", "leg out right; move-along out"));
    expect(troubles(order, bench)).toEqual(["10 move-along out: astride-along"]);
  });
  it("nobody is carried by hand to a bed, nor slid down to the floor", () => {
    const bed = setupFor("bed", { helpers: 2 });
    expect(troubles(steps("approach bed; lift together"), bed).join()).toContain(
      "2 lift together: lift-by-hand",
    );
    expect(
      troubles(steps("approach floor; slide"), setupFor("floor-place", { surface: floor.surface })).join(),
    ).toContain("2 slide: the floor is too far down");
  });
  it("what is not there cannot be used", () => {
    expect(
      troubles(
        steps("leg in left; move-along in; duck head; sheet in; bring lift; helper-two behind"),
        toilet,
      ).slice(0, 6),
    ).toEqual([
      "1 leg in left: the toilet has no rim or sill to lift a leg over",
      "2 move-along in: there is no bench over a rim to move along",
      "3 duck head: this transfer has no car",
      "4 sheet in: no slide sheet is written for this transfer",
      "5 bring lift: no lift is written for this transfer",
      "6 helper-two behind: a second helper is not written for this transfer",
    ]);
  });
});
