/** Tipping: worked examples of statics texts, a chair worked out beforehand, and reactions solved as a set of equations. */
import { lusolve, type Matrix } from "mathjs";
import { describe, expect, test } from "vitest";
import { exactly } from "../../language/quantity/interval.js";
import { floorHold, forwardMargin, sideMargin, type Along } from "../../rules/plan/tipping.js";

const at = (x: Readonly<Record<keyof Omit<Along, symbol>, number>>): Along =>
  Object.fromEntries(Object.entries(x).map(([n, v]) => [n, exactly(v as number)])) as unknown as Along;

describe("printed answers", () => {
  /** A block that stands on an edge to the front and one to the rear; the load's own part is all there is. */
  const block = (half: number, ahead: number) =>
    forwardMargin(at({ depth: half, axle: 0, castor: 0, centre: 0, part: 1, ahead, ofDepth: 0 }))!.nominal;

  test("a crate of 20 kg, 80 N at 30 degrees down, .2 m up: the floor's push lies 9.08 mm on the near side (Hibbeler, Statics, example 8.1)", () => {
    const weight = 20 * 9.81;
    const along = 80 * Math.cos(Math.PI / 6);
    const down = 80 * Math.sin(Math.PI / 6);
    const load = weight + down;
    const ahead = (0.2 * along - 0.4 * down) / load;
    expect(0.4 - block(0.4, ahead)).toBeCloseTo(-0.00908, 5);
  });
  test("250 lb, 32 in wide, 60 lb at 60 in: does not tip (Mississippi State University, statics, friction example 1)", () => {
    expect(block(16, (60 * 60) / 250)).toBeCloseTo(1.6, 9);
  });
  /** All of the block bears where friction acts, as a chair's load does whose middle is over its drive wheels. */
  const holdsBack = (weight: number, friction: number, pushed: number) =>
    floorHold({
      ...(at({ depth: 1, axle: 0, castor: 0, centre: 0, part: 1, ahead: 0, ofDepth: 0 }) as Omit<
        Along,
        "part"
      >),
      body: exactly(weight),
      share: exactly(1),
      chair: exactly(0),
      away: exactly(pushed / weight),
      floor: exactly(friction),
    })!.nominal;
  test("nor does it slide: friction 0.3 holds 75 lb (the same example); with 0.4 it holds 100 lb, and tips before that (example 3)", () => {
    expect(holdsBack(250, 0.3, 60)).toBeCloseTo(75 - 60, 9);
    expect(holdsBack(250, 0.4, 60.606)).toBeCloseTo(100 - 60.606, 9);
  });
  test("the crate of 20 kg does not slide: 69.3 N along the floor, which holds 70.9 N (Hibbeler, Statics, example 8.1)", () => {
    const load = 20 * 9.81 + 80 * Math.sin(Math.PI / 6);
    expect(load).toBeCloseTo(236.2, 1);
    expect(holdsBack(load, 0.3, 80 * Math.cos(Math.PI / 6))).toBeCloseTo(70.86 - 69.282, 2);
  });
  test("the same pushed at 66 in tips from 60.606 lb (example 3)", () => {
    expect(block(16, (66 * 60.606) / 250)).toBeCloseTo(0, 3);
    expect(block(16, (66 * 61) / 250)).toBeLessThan(0);
  });
});

describe("a chair of 15 kg and a person of 78 kg, worked out beforehand", () => {
  // Drive wheels at (0, +-280), castors at (420, +-230), chair's mass 60 ahead, person 120 ahead: millimetres.
  const part = 78 / 93;
  const chair = { depth: 420, axle: 0, castor: 0, centre: 60, part, ofDepth: 0 };
  /** The printed margins are square to the edge of the four points; ours run straight sideways. */
  const slant = 420 / Math.hypot(420, 50);
  const across = (aside: number) => ({
    half: exactly(230),
    outside: exactly(0),
    track: exactly(280),
    aside: exactly(aside),
    ofHalf: 0 as const,
  });

  test.each([
    [200, 98.4294],
    [280, 31.8031],
    [350, -26.4949],
    [450, -109.7778],
  ])("the person %d mm to the side leaves %d mm", (aside, printed) => {
    expect(sideMargin(at({ ...chair, ahead: 120 }), across(aside), "near")!.nominal * slant).toBeCloseTo(
      printed,
      3,
    );
    expect(sideMargin(at({ ...chair, ahead: 120 }), across(-aside), "far")!.nominal * slant).toBeCloseTo(
      printed,
      3,
    );
  });
  test("it tips from 318.1868 mm to the side", () => {
    expect(sideMargin(at({ ...chair, ahead: 120 }), across(318.1868), "near")!.nominal).toBeCloseTo(0, 3);
  });
  test.each([
    [450, 32.9032],
    [600, -92.9032],
    [750, -218.7097],
  ])("the person %d mm ahead leaves %d mm to the castors", (ahead, printed) => {
    expect(forwardMargin(at({ ...chair, ahead }))!.nominal).toBeCloseTo(printed, 3);
  });
});

describe("reactions of the floor, solved as equations", () => {
  // Two drive wheels and the middle between the castors: three reactions from one balance of forces and two of moments.
  const solve = (
    weights: readonly { at: readonly [number, number]; load: number }[],
    base: number,
    track: number,
  ) => {
    const sum = (f: (w: (typeof weights)[number]) => number) => weights.reduce((s, w) => s + f(w), 0);
    const solved = lusolve(
      [
        [1, 1, 1],
        [0, 0, base],
        [track, -track, 0],
      ],
      [sum((w) => w.load), sum((w) => w.load * w.at[0]), sum((w) => w.load * w.at[1])],
    ) as unknown as number[][] | Matrix;
    return (Array.isArray(solved) ? solved : (solved.toArray() as number[][])).map((r) => r[0]!);
  };

  test("the load on the drive wheels is the forward margin's part of the wheelbase", () => {
    for (const ahead of [0.1, 0.25, 0.38, 0.5]) {
      const own = 600;
      const chair = 170;
      const [near, far] = solve(
        [
          { at: [ahead, 0.1], load: own },
          { at: [0.08, 0], load: chair },
        ],
        0.4,
        0.28,
      );
      const margin = forwardMargin(
        at({ depth: 0.4, axle: 0, castor: 0, centre: 0.08, part: own / (own + chair), ahead, ofDepth: 0 }),
      )!.nominal;
      expect(((own + chair) * margin) / 0.4).toBeCloseTo(near! + far!, 6);
      const hold = floorHold({
        ...(at({ depth: 0.4, axle: 0, castor: 0, centre: 0.08, part: 1, ahead, ofDepth: 0 }) as Omit<
          Along,
          "part"
        >),
        body: exactly(own / 0.88),
        share: exactly(0.88),
        chair: exactly(chair),
        away: exactly(0.1),
        floor: exactly(0.6),
      })!.nominal;
      expect(hold).toBeCloseTo(0.6 * (near! + far!) - 0.1 * own, 6);
    }
  });
});
