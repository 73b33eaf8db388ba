/**
 * Interval arithmetic against printed cases (IEEE Std 1788-2015 test suite ITF1788, libieeep1788 elementary and numeric
 * tables; the Xcas/Giac manual, 5.40.5) and against the `interval-arithmetic` package, which widens each result outward by one
 * unit in the last place: ours lies inside it.
 */
import fc from "fast-check";
import * as interval from "interval-arithmetic";
import { describe, expect, test } from "vitest";
import {
  absolute,
  add,
  between,
  contains,
  cosine,
  divide,
  exactly,
  multiply,
  root,
  scale,
  sine,
  square,
  subtract,
  width,
  type Interval,
} from "../../language/quantity/interval.js";

type Pair = readonly [number, number];
const of = ([low, high]: Pair) => between(low, high);
const ends = (i: Interval) => [i.low, i.high].map((x) => x + 0);

describe("printed cases", () => {
  test.each<[string, Pair, Pair, typeof add, Pair]>([
    ["[1,2] + [3,4]", [1, 2], [3, 4], add, [4, 6]],
    ["[1,2] - [3,4]", [1, 2], [3, 4], subtract, [-3, -1]],
    ["[1,3] - [2,4]", [1, 3], [2, 4], subtract, [-3, 1]],
    ["[1,5] x [-5,3]", [1, 5], [-5, 3], multiply, [-25, 15]],
    ["[-1,5] x [-5,3]", [-1, 5], [-5, 3], multiply, [-25, 15]],
    ["[-10,2] x [-5,3]", [-10, 2], [-5, 3], multiply, [-30, 50]],
    ["[-1,5] x [-1,10]", [-1, 5], [-1, 10], multiply, [-10, 50]],
    ["[-2,2] x [-5,3]", [-2, 2], [-5, 3], multiply, [-10, 10]],
    ["[-10,-5] x [-5,-1]", [-10, -5], [-5, -1], multiply, [5, 50]],
    ["[1,4] x [2,3]", [1, 4], [2, 3], multiply, [2, 12]],
    ["[-2,4] x [3,5]", [-2, 4], [3, 5], multiply, [-10, 20]],
    ["entire x [0,0]", [-Infinity, Infinity], [0, 0], multiply, [0, 0]],
    ["[15,30] / [3,5]", [15, 30], [3, 5], divide, [3, 10]],
    ["[-30,15] / [-5,-3]", [-30, 15], [-5, -3], divide, [-5, 10]],
    ["[15,30] / [0,3]", [15, 30], [0, 3], divide, [5, Infinity]],
    ["[15,30] / [-3,0]", [15, 30], [-3, 0], divide, [-Infinity, -5]],
    ["[15,30] / [-3,3]", [15, 30], [-3, 3], divide, [-Infinity, Infinity]],
    ["[1,3] / [2,4]", [1, 3], [2, 4], divide, [0.25, 1.5]],
  ])("%s", (_title, a, b, op, printed) => {
    expect(ends(op(of(a), of(b)))).toEqual([...printed]);
  });

  test("division by zero is empty in the standard; here it says nothing, which holds it", () => {
    expect(ends(divide(of([15, 30]), exactly(0)))).toEqual([-Infinity, Infinity]);
  });
  test("middle, width and magnitude", () => {
    expect(between(-2, 2).nominal).toBe(0);
    expect(width(between(1, 2))).toBe(1);
    expect(absolute(between(-4, 2)).high).toBe(4);
    expect(absolute(between(-4, -2)).low).toBe(2);
    expect(absolute(between(-4, 2)).low).toBe(0);
  });
  test("the square of one value is not the product of two: [-2,3] gives [0,9], not [-6,9]", () => {
    const x = between(-2, 3);
    expect(ends(square(x))).toEqual([0, 9]);
    expect(ends(multiply(x, x))).toEqual([-6, 9]);
  });
});

test("board, gap and height difference (independent grid of 101 x 101 points): span 180 to 222.036, bearing 237.982 to 261", () => {
  const span = root(add(square(between(180, 220)), square(between(-30, 20))));
  expect(span.low).toBeCloseTo(180, 9);
  expect(span.high).toBeCloseTo(222.036, 4);
  const bearing = scale(subtract(between(698, 702), span), 0.5);
  expect(bearing.low).toBeCloseTo(237.982, 4);
  expect(bearing.high).toBeCloseTo(261, 9);
  // As a product of two the height difference would widen it below what is true.
  const h = between(-30, 20);
  expect(root(add(square(between(180, 220)), multiply(h, h))).low).toBeCloseTo(178.3255, 4);
});

describe("inside the package's outward-rounded results", () => {
  const bound = fc.double({ min: -1e6, max: 1e6, noNaN: true });
  const any = fc.tuple(bound, bound).map(([a, b]) => between(a, b));
  const theirs = (i: Interval) => new interval.Interval(i.low, i.high);
  const inside = (ours: Interval, other: { lo: number; hi: number }) => {
    expect(ours.low).toBeGreaterThanOrEqual(other.lo);
    expect(ours.high).toBeLessThanOrEqual(other.hi);
    // And not narrower than theirs but for the outward rounding.
    const slack = 1e-9 * Math.max(1, Math.abs(other.lo), Math.abs(other.hi));
    expect(ours.low - other.lo).toBeLessThan(slack);
    expect(other.hi - ours.high).toBeLessThan(slack);
  };
  test.each([
    ["sum", add, interval.add],
    ["difference", subtract, interval.sub],
    ["product", multiply, interval.mul],
  ] as const)("%s", (_name, ours, other) => {
    fc.assert(
      fc.property(any, any, (a, b) => inside(ours(a, b), other(theirs(a), theirs(b)))),
      { numRuns: 500 },
    );
  });
  test("quotient by what does not hold zero", () => {
    const positive = fc
      .tuple(fc.double({ min: 0.01, max: 1e4, noNaN: true }), fc.double({ min: 0.01, max: 1e4, noNaN: true }))
      .map(([a, b]) => between(a, b));
    fc.assert(
      fc.property(any, positive, (a, b) => inside(divide(a, b), interval.div(theirs(a), theirs(b)))),
      { numRuns: 500 },
    );
  });
  test("sine and cosine", () => {
    const angle = fc
      .tuple(fc.double({ min: -4, max: 4, noNaN: true }), fc.double({ min: 0, max: 3, noNaN: true }))
      .map(([a, w]) => between(a, a + w));
    fc.assert(
      fc.property(angle, (a) => {
        for (const [ours, other] of [
          [sine(a), interval.sin(theirs(a))],
          [cosine(a), interval.cos(theirs(a))],
        ] as const) {
          expect(Math.abs(ours.low - other.lo)).toBeLessThan(1e-9);
          expect(Math.abs(ours.high - other.hi)).toBeLessThan(1e-9);
        }
      }),
      { numRuns: 500 },
    );
  });
  test("a product spread over a sum holds the product of the sum (subdistributivity)", () => {
    fc.assert(
      fc.property(any, any, any, (x, y, z) => {
        const whole = multiply(x, add(y, z));
        const spread = add(multiply(x, y), multiply(x, z));
        const slack = 1e-6 * Math.max(1, Math.abs(spread.low), Math.abs(spread.high));
        expect(contains({ ...spread, low: spread.low - slack, high: spread.high + slack }, whole.low)).toBe(
          true,
        );
        expect(whole.high).toBeLessThanOrEqual(spread.high + slack);
      }),
      { numRuns: 300 },
    );
  });
});
