/** A chair that turns a corner between two corridors, against figures worked out without the project's code. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { plusMinus } from "../../../language/quantity/interval.js";
import { cornerLeft, leftAtCorner } from "../../../rules/plan/turn.js";
import { around, draws, sound, tight } from "./sampling.js";

describe("what is left at a corner", () => {
  // A rectangle 1050 long and 620 wide; closed form and tightest angle worked out by hand, in mm.
  test.each([
    [1000, 1000, 111.512],
    [1000, 1200, 164.68],
    [900, 1100, 106.503],
  ])("corridors of %d and %d", (before, after, left) => {
    const at = leftAtCorner({ before: before / 1000, after: after / 1000, length: 1.05, width: 0.62 });
    expect(at * 1000).toBeCloseTo(left, 2);
  });
  test("a chair that is as long as it is wide has what the narrower corridor leaves, or less", () => {
    const at = leftAtCorner({ before: 1, after: 1, length: 0.6, width: 0.6 });
    expect(at).toBeLessThanOrEqual(0.2 + 1e-12);
  });
  test("is below zero for a chair that does not get round, though it drives along both corridors", () => {
    expect(leftAtCorner({ before: 0.7, after: 0.7, length: 1.3, width: 0.65 })).toBeLessThan(0);
  });
});

test("the least over all angles is found: no angle leaves less", () => {
  fc.assert(
    fc.property(
      ...([
        [0.5, 2],
        [0.5, 2],
        [0.5, 1.6],
        [0.4, 1],
      ].map(([min, max]) => fc.double({ min: min!, max: max!, noNaN: true })) as [
        fc.Arbitrary<number>,
        fc.Arbitrary<number>,
        fc.Arbitrary<number>,
        fc.Arbitrary<number>,
      ]),
      (before, after, length, width) => {
        const found = leftAtCorner({ before, after, length, width });
        for (let n = 0; n <= 2000; n++) {
          const t = (n * Math.PI) / 4000;
          const [s, c] = [Math.sin(t), Math.cos(t)];
          expect((before * s + after * c - length * s * c - width) / (1 + s + c)).toBeGreaterThan(
            found - 1e-6,
          );
        }
      },
    ),
    { numRuns: 100 },
  );
});

test("over tolerances it holds every true value and is not needlessly wide: 1,000 draws and more", () => {
  const random = draws(72);
  for (let n = 0; n < 20; n++) {
    const i = {
      before: around(random, 0.8, 1.2, 0.02),
      after: around(random, 0.8, 1.2, 0.02),
      length: around(random, 0.9, 1.2, 0.02),
      width: around(random, 0.55, 0.7, 0.02),
    };
    const value = cornerLeft(i.before, i.after, i.length, i.width);
    tight(value, sound(value, i, leftAtCorner, random, 100));
  }
  expect(cornerLeft(plusMinus(1, 0), plusMinus(1, 0), plusMinus(1, 0), plusMinus(0.6, 0)).low).not.toBeNaN();
});
