/** Pushes along an incline: worked examples of statics texts, forces solved beforehand by bisection, and a balance of energy. */
import { evaluate } from "mathjs";
import { describe, expect, test } from "vitest";
import { between, exactly, multiply, scale } from "../../language/quantity/interval.js";
import { frictionOf, inclineOf, pushRatio, slidingMargin } from "../../rules/plan/incline.js";

const degree = Math.PI / 180;
const push = (weight: number, mu: number, degrees: number) =>
  weight * pushRatio(exactly(mu), exactly(degrees * degree)).nominal;

describe("printed answers", () => {
  test("60 lb up 30 degrees, friction 0.25, pushed along the slope: 42.99 lb (physics forum 100581; the book's 41.7 is for the best direction)", () => {
    expect(push(60, 0.25, 30)).toBeCloseTo(42.99, 2);
  });
  test("200 N just holds and 300 N just moves 500 N on 30 degrees, friction 0.115 (engineering mechanics text, example 5.3)", () => {
    expect(push(500, 0.11547, 30)).toBeCloseTo(300, 2);
    expect(-push(500, 0.11547, -30)).toBeCloseTo(200, 2);
  });
  test("a body with friction 0.34 starts to slide at 18.8 degrees (mechanics exercise)", () => {
    expect(slidingMargin(exactly(0.34), exactly(18.8 * degree)).nominal / degree).toBeCloseTo(0, 1);
  });
  test("a load that slides on a truck's bed tipped to 25 degrees: friction 0.466 (Hibbeler, Statics, example 8.2)", () => {
    expect(frictionOf(exactly(25 * degree))!.nominal).toBeCloseTo(0.466, 3);
  });
  test("a printed friction of 0.5 that holds 280 N on 30 degrees is known to be wrong: it would slide", () => {
    expect(slidingMargin(exactly(0.5), exactly(30 * degree)).nominal).toBeLessThan(0);
    expect(slidingMargin(exactly(Math.tan(30 * degree)), exactly(30 * degree)).nominal).toBeCloseTo(0, 9);
  });
});

describe("forces solved by bisection beforehand, 78 kg (764.9187 N)", () => {
  test.each([
    [0.25, 0, 191.2297, 191.2297],
    [0.25, 5, 257.169, 123.8349],
    [0.25, 10, 321.1512, 55.4977],
    [0.4, 5, 371.4702, 238.1361],
    [0.25, 14.0362, 371.0395, 0.0006],
    [0.25, 20, 441.3147, -81.9205],
  ])("friction %d on %d degrees: up %d N, down %d N", (mu, degrees, up, down) => {
    expect(push(764.9187, mu, degrees)).toBeCloseTo(up, 3);
    expect(push(764.9187, mu, -degrees)).toBeCloseTo(down, 3);
  });
  test("70 to 86 kg, friction .20 to .45, -2 to 6 degrees: is the true range of a grid, narrower than a product of intervals (112.58 to 467.67)", () => {
    const force = multiply(
      scale(between(70, 86), 9.80665),
      pushRatio(between(0.2, 0.45), between(-2 * degree, 6 * degree)),
    );
    expect(force.low).toBeCloseTo(113.2522, 3);
    expect(force.high).toBeCloseTo(465.5947, 3);
  });
});

test.each([
  [0.35, 275, 351, 195],
  [0.2, 157, 234, 78],
  [0.5, 392, 468, 312],
])(
  "80 kg over 20 in, friction %d: level %d N, 2 in up %d N, 2 in down %d N (worked beforehand)",
  (mu, level, up, down) => {
    const at = (rise: number) => {
      const t = inclineOf(exactly(rise), exactly(20), exactly(20))!;
      return 80 * 9.80665 * pushRatio(exactly(mu), t).nominal;
    };
    expect(Math.abs(at(0) - level)).toBeLessThan(1);
    expect(Math.abs(at(2) - up)).toBeLessThan(2);
    expect(Math.abs(at(-2) - down)).toBeLessThan(2);
  },
);

test("the work of the push over a way is what the body gains in height and what friction takes, by mathjs with units", () => {
  for (const degrees of [-8, -3, 0, 4, 11]) {
    const work = evaluate(
      `number(78 kg * 9.80665 m/s^2 * (0.3 m * sin(${degrees} deg) + 0.28 * cos(${degrees} deg) * 0.3 m), J)`,
    ) as number;
    expect(push(78 * 9.80665, 0.28, degrees) * 0.3).toBeCloseTo(work, 6);
  }
});
