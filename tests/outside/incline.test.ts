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

describe("printed answers for a force that pulls away from the slope at an angle a, least at the angle of friction", () => {
  // It presses less: P cos a = W sin t + mu (W cos t - P sin a), so that P is the push along the slope over cos a + mu sin a; and
  // that is the push along a slope steeper by all that is left to a right angle, sin (90 - a) + mu cos (90 - a).
  const pull = (weight: number, mu: number, degrees: number, aside: number) =>
    push(weight, mu, degrees) / push(1, mu, 90 - aside);
  /** Holding back a body that would slide: friction helps, so mu is taken the other way round. */
  const hold = (weight: number, mu: number, degrees: number, aside: number) =>
    push(weight, mu, -degrees) / push(1, mu, aside - 90);
  /** Over all angles the divisor is greatest at its crest, which is the angle of friction off the slope. */
  const least = (weight: number, mu: number, degrees: number) =>
    push(weight, mu, degrees) / pushRatio(exactly(mu), between(0, 90 * degree)).high;
  const frictionAngle = (mu: number) => slidingMargin(exactly(mu), exactly(0)).nominal / degree;

  test("60 lb up 20 degrees, friction 0.30: least 35.9 lb, 36.7 degrees above the horizontal (statics text, quoted at brainmass.com 6136)", () => {
    const aside = frictionAngle(0.3);
    expect(20 + aside).toBeCloseTo(36.7, 1);
    expect(least(60, 0.3, 20)).toBeCloseTo(35.9, 1);
    expect(pull(60, 0.3, 20, aside)).toBeCloseTo(35.9, 1);
    for (const other of [0, aside - 2, aside + 2, 40])
      expect(pull(60, 0.3, 20, other)).toBeGreaterThan(least(60, 0.3, 20));
  });
  test("60 lb up 30 degrees, friction 0.25: 41.7 lb in the best direction (the book's answer, physics forum 100581)", () => {
    expect(least(60, 0.25, 30)).toBeCloseTo(41.7, 1);
    expect(pull(60, 0.25, 30, frictionAngle(0.25))).toBeCloseTo(41.7, 1);
  });
  test("75.0 N on 25 degrees, friction 0.363: 8.05 N at 40 degrees to the horizontal keep it from sliding down (college physics text, physics forum 535689)", () => {
    expect(hold(75, 0.363, 25, 40 - 25)).toBeCloseTo(8.05, 2);
    // As if it pressed the body on, by a wrong sign, less would do.
    expect(hold(75, 0.363, 25, 25 - 40)).toBeLessThan(7);
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
