/**
 * Where the hips must lie: hip joint at .530 of stature, torso base at .520 below the crown (segment fractions of Drillis and
 * Contini, as printed by Winter), so .470 and .520 of stature from the top of the head, plus what the pillow takes.
 */
import { expect, test } from "vitest";
import { between, exactly, scale } from "../../language/quantity/interval.js";
import { arrival, target } from "../../rules/plan/landing.js";

test("65 in tall, top of the head 4 in down: hip joint 34.6 in, base of the buttocks 37.8 in from the head end", () => {
  expect(target(exactly(4), scale(exactly(65), 1 - 0.53)).nominal).toBeCloseTo(34.55, 9);
  expect(target(exactly(4), scale(exactly(65), 0.52)).nominal).toBeCloseTo(37.8, 9);
});

test("a board square to the bed carries nobody along it", () => {
  expect(arrival(exactly(40), exactly(0), exactly(20), "head").nominal).toBe(40);
});

test("an askew board carries the hips along the edge by the tangent of its angle", () => {
  const angle = exactly(Math.atan(0.25));
  expect(arrival(exactly(40), angle, exactly(20), "head").nominal).toBeCloseTo(35, 12);
  expect(arrival(exactly(40), angle, exactly(20), "foot").nominal).toBeCloseTo(45, 12);
  const doubtful = arrival(exactly(40), between(-0.1, 0.2), between(15, 20), "head");
  expect(doubtful.low).toBeCloseTo(40 - 20 * Math.tan(0.2), 12);
  expect(doubtful.high).toBeCloseTo(40 + 20 * Math.tan(0.1), 12);
});
