/** Whatever is written, the mechanics give numbers or say that they have none: they never give NaN and never throw. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { between, type Interval } from "../../../language/quantity/interval.js";
import { bendingStress, deflection, seesaw } from "../../../rules/plan/beam.js";
import {
  beyond,
  frictionOf,
  inclineOf,
  mixedFriction,
  pushRatio,
  slidingMargin,
} from "../../../rules/plan/incline.js";
import { floorHold, forwardMargin, lockHold, partOf, sideMargin } from "../../../rules/plan/tipping.js";

/** Lengths, masses and ratios that a slip of the pen can give: zero, negative, a hundred. */
const number = fc.oneof(fc.constantFrom(0, -0.0254, 1e-12, 100), fc.double({ min: -1, max: 2, noNaN: true }));
const interval = fc.tuple(number, number).map(([a, b]) => between(a, b));
const angle = fc
  .tuple(
    fc.oneof(
      fc.constantFrom(0, Math.PI / 2, -Math.PI / 2),
      fc.double({ min: -1.57, max: 1.57, noNaN: true }),
    ),
    fc.double({ min: 0, max: 0.2, noNaN: true }),
  )
  .map(([a, t]) => between(Math.max(-Math.PI / 2, a - t), Math.min(Math.PI / 2, a + t)));

const good = (i: Interval | undefined): void => {
  if (!i) return;
  for (const x of [i.low, i.nominal, i.high]) expect(x).not.toBeNaN();
  expect(i.low).toBeLessThanOrEqual(i.nominal + 1e-9 * Math.abs(i.nominal) + 1e-9);
  expect(i.nominal).toBeLessThanOrEqual(i.high + 1e-9 * Math.abs(i.high) + 1e-9);
};

test("inclines and pushes", () => {
  fc.assert(
    fc.property(interval, interval, interval, angle, (a, b, c, t) => {
      good(inclineOf(a, b, c));
      const mu = between(Math.abs(b.low), Math.abs(b.high));
      good(pushRatio(mu, t));
      good(slidingMargin(mu, t));
      good(frictionOf(t));
      good(beyond(a, between(Math.abs(c.low), Math.abs(c.high))));
      good(mixedFriction(mu, mu, between(0, 1)));
    }),
    { numRuns: 1500 },
  );
});

test("beams", () => {
  fc.assert(
    fc.property(interval, interval, interval, interval, interval, (a, b, c, d, e) => {
      good(bendingStress(a, b, c, d));
      good(deflection(a, b, c, d, e));
      good(seesaw(a, between(Math.abs(b.low), Math.abs(b.high))));
    }),
    { numRuns: 1500 },
  );
});

test("a chair on its wheels", () => {
  const along = fc.record({
    depth: interval,
    axle: interval,
    castor: interval,
    centre: interval,
    part: interval,
    ahead: interval,
    ofDepth: fc.constantFrom(between(0, 0), between(1, 1)),
  });
  const across = fc.record({
    half: interval,
    outside: interval,
    track: interval,
    aside: interval,
    ofHalf: fc.constantFrom<0 | 1>(0, 1),
  });
  const finite = (i: Interval | undefined) => {
    for (const x of i ? [i.low, i.nominal, i.high] : []) expect(Number.isFinite(x)).toBe(true);
  };
  fc.assert(
    fc.property(along, across, interval, interval, angle, (x, y, m, c, slope) => {
      finite(forwardMargin(x));
      finite(sideMargin(x, y, "near"));
      finite(sideMargin(x, y, "far"));
      finite(partOf(m, c));
      const weights = { body: m, share: c, chair: m, away: c };
      const { part: _part, ...stands } = x;
      finite(floorHold({ ...stands, ...weights, floor: c }));
      finite(lockHold({ ...weights, slope }));
    }),
    { numRuns: 400 },
  );
});
