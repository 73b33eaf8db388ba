import { describe, expect, it } from "vitest";
import fc from "fast-check";
import { holdingRanges, nearestIn, type Tried } from "../../../rules/engine/ranges.js";

/** Holds where the slack is not below zero. */
const by =
  (slack: (x: number) => number) =>
  (x: number): Tried => ({ holds: slack(x) >= 0, slack: slack(x) });

describe("the values for which a rule holds", () => {
  it.each<[string, (x: number) => Tried, readonly (readonly [number, number])[]]>([
    ["everywhere", by(() => 1), [[0, 48]]],
    ["nowhere", by(() => -1), []],
    ["from a value on", by((x) => x - 17.3), [[17.5, 48]]],
    ["up to a value", by((x) => 17.3 - x), [[0, 17.25]]],
    ["exactly on a step", by((x) => x - 17.25), [[17.25, 48]]],
    ["between two values, wide", by((x) => 5 - Math.abs(x - 20)), [[15, 25]]],
    [
      "between two values that lie closer together than what is tried at first",
      by((x) => 0.6 - Math.abs(x - 19.4)),
      [[19, 20]],
    ],
    [
      "in two stretches",
      by((x) => Math.max(2 - Math.abs(x - 10), 3 - Math.abs(x - 30))),
      [
        [8, 12],
        [27, 33],
      ],
    ],
    ["up to a jump", (x) => ({ holds: x < 11.1, slack: x < 11.1 ? 3 : -5 }), [[0, 11]]],
    ["told by yes and no only", (x) => ({ holds: x > 30 && x < 40, slack: undefined }), [[30, 40]]],
    [
      "never, though the number is good: it rests on what a tape could measure",
      () => ({ holds: false, slack: 2 }),
      [],
    ],
  ])("%s", (_, attempt, expected) => {
    const found = holdingRanges(0, 48, 0.25, undefined, attempt);
    expect(found.map((r) => [r.low, r.high])).toEqual(expected);
  });

  it("holds at both ends of every stretch that is given, and not a step beyond", () => {
    const line = fc.record({
      from: fc.double({ min: 0, max: 40, noNaN: true }),
      wide: fc.double({ min: 1, max: 20, noNaN: true }),
      steep: fc.double({ min: 0.1, max: 9, noNaN: true }),
    });
    fc.assert(
      fc.property(
        line,
        fc.option(fc.double({ min: 1, max: 47, noNaN: true }), { nil: undefined }),
        ({ from, wide, steep }, at) => {
          const attempt = by((x) => steep * Math.min(x - from, from + wide - x));
          for (const r of holdingRanges(0, 48, 0.25, at, attempt)) {
            expect(attempt(r.low + 1 / 64).holds && attempt(r.high - 1 / 64).holds).toBe(true);
            if (r.low > 0.25) expect(attempt(r.low - 0.26).holds).toBe(false);
            if (r.high < 47.75) expect(attempt(r.high + 0.26).holds).toBe(false);
          }
          expect(holdingRanges(0, 48, 0.25, at, attempt)).toHaveLength(1);
        },
      ),
    );
  });

  it("tries few values where the numbers show the way", () => {
    let tried = 0;
    holdingRanges(0, 48, 0.25, 23, (x) => (tried++, by((y) => 0.9 - Math.abs(y - 19.4))(x)));
    expect(tried).toBeLessThan(40);
  });

  it("the nearest of several stretches is chosen, and in it the nearest value", () => {
    const ranges = [
      { low: 8, high: 12 },
      { low: 27, high: 33 },
    ];
    expect(nearestIn(ranges, 20)).toEqual({ value: 27, range: ranges[1] });
    expect(nearestIn(ranges, 9)).toEqual({ value: 9, range: ranges[0] });
    expect(nearestIn([], 9)).toBeUndefined();
  });
});
