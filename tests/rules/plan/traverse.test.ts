/** A room walked with a tape: whether it closes, and where its corners may be. */
import { describe, expect, test } from "vitest";
import { exactly, plusMinus, type Interval } from "../../../language/quantity/interval.js";
import { area, closure, corners, wallLeg } from "../../../rules/plan/traverse.js";
import { draws } from "./sampling.js";

const ways = { E: "east", N: "north", W: "west", S: "south" } as const;
/** `12 E 10 N 12 W 10 S`: legs in metres, each with a tolerance. */
const legs = (text: string, tolerance = 0) =>
  [...text.matchAll(/([\d.]+) ([ENWS])/g)].map((m) =>
    wallLeg(plusMinus(Number(m[1]), tolerance), ways[m[2] as "E"]),
  );

describe("a walk that closes", () => {
  test("misses nothing, and its corners stand where the walls meet", () => {
    const room = legs("4 E 3 N 4 W 3 S");
    expect(closure(room).error).toEqual(exactly(0));
    expect(closure(room).perimeter.nominal).toBe(14);
    expect(corners(room).map((c) => [c.x.nominal, c.y.nominal])).toEqual([
      [0, 0],
      [4, 0],
      [4, 3],
      [0, 3],
    ]);
  });
  test("with tolerances it may still miss by a little, never by less than nothing", () => {
    const { error } = closure(legs("4 E 3 N 4 W 3 S", 0.01));
    expect(error.low).toBe(0);
    expect(error.high).toBeCloseTo(Math.hypot(0.02, 0.02), 12);
  });
});

describe("a walk that does not close", () => {
  test("shares the error among the walls that run that way, and keeps them square", () => {
    // Walked 5 mm short to the east and 5 mm long to the north: the published independent table, case "rect".
    const room = legs("3.65 E 2.74 N 3.655 W 2.735 S", 0.01);
    const { error, perimeter } = closure(room);
    expect(error.nominal * 1000).toBeCloseTo(7.0711, 3);
    expect(perimeter.nominal * 1000).toBeCloseTo(12780, 6);
    const at = corners(room).map((c) => ({ x: c.x.nominal, y: c.y.nominal }));
    expect(at[1]!.x * 1000).toBeCloseTo(3652.5, 1);
    expect(at[2]!.y * 1000).toBeCloseTo(2737.5, 1);
    expect(at[1]!.y).toBe(0);
    expect(at[2]!.x).toBe(at[1]!.x);
    // The compass rule, which tilts walls by a millimetre, gave 9.998712 m² there.
    expect(area(at)).toBeCloseTo(9.9987, 3);
  });
  test("the raw walk ends where independent sums put it", () => {
    const l = closure(legs("4 E 1.5 N 1.51 W 1.6 N 2.48 W 3.095 S"));
    expect(l.error.nominal * 1000).toBeCloseTo(11.1803, 3);
    expect(l.east.nominal * 1000).toBeCloseTo(10, 6);
    expect(l.north.nominal * 1000).toBeCloseTo(5, 6);
  });
  test("a wall taken a foot too long may stand anywhere from one walk to the other", () => {
    const at = corners(legs("4.3 E 3 N 4 W 3 S", 0.005));
    expect(at[1]!.x.low).toBeCloseTo(3.995, 9);
    expect(at[1]!.x.high).toBeCloseTo(4.305, 9);
  });
});

test("every room whose walls lie within their tolerances has its corners within theirs, and each bound is reached", () => {
  const random = draws(71);
  for (let n = 0; n < 60; n++) {
    const t = 0.002 + 0.02 * random();
    const [w1, d1, w2, d2] = [3 + random(), 2 + random(), 1 + random(), 1 + random()];
    // An L: east w1, north d1, west w2, north d2, west w1 - w2, south d1 + d2, each read off by less than its tolerance.
    const exact = [w1, d1, w2, d2, w1 - w2, d1 + d2];
    const order = ["east", "north", "west", "north", "west", "south"] as const;
    const read = exact.map((l): Interval => plusMinus(l + (random() - 0.5) * t, t));
    const at = corners(read.map((l, k) => wallLeg(l, order[k]!)));
    const found = at.map(() => ({ x: [Infinity, -Infinity], y: [Infinity, -Infinity] }));
    // Of three lengths of which one is the sum of two others, two stand at an end where anything is greatest or least.
    const drawn = (k: number, one: Interval, two: Interval, sum: Interval): [number, number] | undefined => {
      const end = (i: Interval, bit: number) =>
        k >= 12 ? i.low + random() * (i.high - i.low) : k & (1 << bit) ? i.high : i.low;
      const which = k >= 12 ? k % 3 : Math.floor(k / 4);
      const [x, y] = [end(which === 0 ? two : one, 0), end(which === 2 ? two : sum, 1)];
      const pair: [number, number] = which === 0 ? [y - x, x] : which === 1 ? [x, y - x] : [x, y];
      const ok = [one, two, sum].every((i, m) => {
        const l = [pair[0], pair[1], pair[0] + pair[1]][m]!;
        return l >= i.low - 1e-12 && l <= i.high + 1e-12;
      });
      return ok ? pair : undefined;
    };
    for (let k = 0; k < 60; k++) {
      const ce = drawn(k, read[2]!, read[4]!, read[0]!) ?? [w2, w1 - w2];
      const bd = drawn(k, read[1]!, read[3]!, read[5]!) ?? [d1, d2];
      const [c, e] = ce;
      const [b, d] = bd;
      const a = c + e;
      const true_ = [
        [0, 0],
        [a, 0],
        [a, b],
        [a - c, b],
        [a - c, b + d],
        [0, b + d],
      ];
      true_.forEach(([x, y], m) => {
        expect(x).toBeGreaterThanOrEqual(at[m]!.x.low - 1e-9);
        expect(x).toBeLessThanOrEqual(at[m]!.x.high + 1e-9);
        expect(y).toBeGreaterThanOrEqual(at[m]!.y.low - 1e-9);
        expect(y).toBeLessThanOrEqual(at[m]!.y.high + 1e-9);
        found[m]!.x = [Math.min(found[m]!.x[0]!, x!), Math.max(found[m]!.x[1]!, x!)];
        found[m]!.y = [Math.min(found[m]!.y[0]!, y!), Math.max(found[m]!.y[1]!, y!)];
      });
    }
    at.forEach((c, m) => {
      expect(c.x.high - c.x.low).toBeLessThanOrEqual(1.25 * (found[m]!.x[1]! - found[m]!.x[0]!) + 1e-6);
      expect(c.y.high - c.y.low).toBeLessThanOrEqual(1.25 * (found[m]!.y[1]! - found[m]!.y[0]!) + 1e-6);
    });
  }
});
