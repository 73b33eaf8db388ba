/** Inclines: worked examples of statics texts, a published ramp limit, and forces solved beforehand by bisection. */
import { describe, expect, test } from "vitest";
import {
  add,
  between,
  contains,
  cosine,
  exactly,
  multiply,
  scale,
  sine,
} from "../../language/quantity/interval.js";
import { slope } from "../../rules/plan/heights.js";

const degree = Math.PI / 180;
const angle = (rise: number, run: number) =>
  slope(exactly(rise), exactly(run), exactly(run)).nominal / degree;

describe("slope from rise and run", () => {
  test("1 in 12 (1991 ADA Standards 4.8.2: 30 in over 360 in) is 4.7636 degrees", () => {
    expect(angle(30, 360)).toBeCloseTo(4.7636, 4);
  });
  test("50 mm over a gap of 220 mm (independent computation) is 12.8043 degrees", () => {
    expect(angle(50, 220)).toBeCloseTo(12.8043, 4);
  });
  test("angle of repose at a friction of 0.34 (mechanics exercise, printed 18.8)", () => {
    expect(angle(0.34, 1)).toBeCloseTo(18.8, 1);
  });
  test("friction of 0.25 and 0.40 (independent computation): 14.0362 and 21.8014 degrees", () => {
    expect(angle(0.25, 1)).toBeCloseTo(14.0362, 4);
    expect(angle(0.4, 1)).toBeCloseTo(21.8014, 4);
  });
  test("two blocks on an incline, friction 1/3 on both faces (engineering mechanics text, example 5.2): atan 5/9, printed whole as 29", () => {
    expect(Math.trunc(angle(5, 9))).toBe(29);
  });
  test("a truck bed on which a machine slides at 25 degrees (Hibbeler, Statics, example 8.2): friction 0.466", () => {
    expect(angle(0.4663, 1)).toBeCloseTo(25, 2);
  });
  test("a printed answer known to be wrong is not met: 30 degrees needs 0.577, not 0.5", () => {
    expect(Math.abs(angle(0.5, 1) - 30)).toBeGreaterThan(3);
  });
  test("a board that may rise or fall is at least level", () => {
    const s = slope(between(-0.02, 0.05), exactly(0.5), exactly(0.4));
    expect(s.low).toBe(0);
    expect(s.high).toBeCloseTo(Math.atan(0.1), 12);
  });
});

describe("forces along an incline, by sine and cosine of intervals", () => {
  const weight = 764.9187;
  /** W (sin t + mu cos t): up; W (mu cos t - sin t): down. */
  const up = (mu: number, t: number) =>
    scale(add(sine(exactly(t * degree)), multiply(exactly(mu), cosine(exactly(t * degree)))), weight);
  const down = (mu: number, t: number) =>
    scale(
      add(scale(sine(exactly(t * degree)), -1), multiply(exactly(mu), cosine(exactly(t * degree)))),
      weight,
    );

  test.each([
    [0.25, 0, 191.2297, 191.2297],
    [0.25, 5, 257.169, 123.8349],
    [0.25, 10, 321.1512, 55.4977],
    [0.4, 5, 371.4702, 238.1361],
    [0.25, 14.0362, 371.0395, 0.0006],
    [0.25, 20, 441.3147, -81.9205],
  ])("friction %d, %d degrees (independent computation, 78 kg)", (mu, t, printedUp, printedDown) => {
    expect(up(mu, t).nominal).toBeCloseTo(printedUp, 3);
    expect(down(mu, t).nominal).toBeCloseTo(printedDown, 3);
  });

  test("200 N just holds and 300 N just moves 500 N (engineering mechanics text, example 5.3): 30 degrees, 0.115", () => {
    const s = Math.asin((300 + 200) / (2 * 500)) / degree;
    const mu = (300 - 200) / (2 * 500 * Math.cos(s * degree));
    expect(s).toBeCloseTo(30, 6);
    expect(mu).toBeCloseTo(0.115, 3);
    expect((up(mu, s).nominal * 500) / weight).toBeCloseTo(300, 6);
    expect((down(mu, s).nominal * 500) / weight).toBeCloseTo(-200, 6);
  });

  test("mass 70 to 86 kg, friction 0.20 to 0.45, angle -2 to 6 degrees (independent grid of 101 x 101 points)", () => {
    const t = between(-2 * degree, 6 * degree);
    const push = multiply(
      scale(between(70, 86), 9.80665),
      add(sine(t), multiply(between(0.2, 0.45), cosine(t))),
    );
    expect(contains(push, 113.2522)).toBe(true);
    expect(contains(push, 465.5947)).toBe(true);
    // Not wider than the product of independent intervals.
    expect(push.low).toBeGreaterThan(112.5836);
    expect(push.high).toBeLessThan(467.6738);
  });
});
