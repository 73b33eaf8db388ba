import { describe, expect, test } from "vitest";
import { between, exactly, type Interval } from "../../../language/quantity/interval.js";
import {
  floorHold,
  forwardMargin,
  lockHold,
  overCorners,
  partOf,
  sideMargin,
  type Across,
  type Along,
} from "../../../rules/plan/tipping.js";
import { holdsTightly } from "./corners.js";
import { around, draws, type Exact } from "./sampling.js";

type Setup = Record<
  "depth" | "axle" | "castor" | "centre" | "part" | "ahead" | "half" | "outside" | "track" | "aside",
  Interval
>;
const setup = (random: () => number): Setup => ({
  depth: around(random, 0.38, 0.48, 0.01),
  axle: around(random, -0.06, 0.05, 0.02),
  castor: around(random, -0.12, -0.03, 0.03),
  centre: around(random, 0.02, 0.12, 0.04),
  part: around(random, 0.55, 0.85, 0.08),
  ahead: around(random, -0.15, 0.0, 0.03),
  half: around(random, 0.2, 0.25, 0.01),
  outside: around(random, -0.02, 0.03, 0.02),
  track: around(random, 0.26, 0.31, 0.02),
  aside: around(random, -0.2, 0.02, 0.04),
});
const alongOf = (s: Setup, ofDepth: number): Along => ({
  depth: s.depth,
  axle: s.axle,
  castor: s.castor,
  centre: s.centre,
  part: s.part,
  ahead: s.ahead,
  ofDepth: exactly(ofDepth),
});
const acrossOf = (s: Setup, ofHalf: 0 | 1): Across => ({
  half: s.half,
  outside: s.outside,
  track: s.track,
  aside: s.aside,
  ofHalf,
});

/** By moments about the drive wheels, without the intervals: what the castors and each side carry of a load of 1. */
function centreOf(x: Exact<Setup>, ofDepth: number, ofHalf: number) {
  const own = { x: x.ahead + ofDepth * x.depth - x.axle, y: x.aside + ofHalf * x.half, weight: x.part };
  const chair = { x: x.centre, y: 0, weight: 1 - x.part };
  const all = [own, chair];
  const moment = (f: (p: typeof own) => number) => all.reduce((sum, p) => sum + p.weight * f(p), 0);
  return { x: moment((p) => p.x), y: moment((p) => p.y) };
}

describe("how far a load stays inside the wheels", () => {
  test("1,000 draws a setup: forward to the castors, and straight sideways to either line through the wheels", () => {
    const random = draws(31);
    for (let n = 0; n < 24; n++) {
      const s = setup(random);
      const ofDepth = n % 2;
      const ofHalf = ((n >> 1) % 2) as 0 | 1;
      const base = (x: Exact<Setup>) => x.depth + x.castor - x.axle;
      holdsTightly(
        forwardMargin(alongOf(s, ofDepth))!,
        s,
        (x) => base(x) - centreOf(x, ofDepth, ofHalf).x,
        random,
        1000,
      );
      for (const side of ["near", "far"] as const)
        holdsTightly(
          sideMargin(alongOf(s, ofDepth), acrossOf(s, ofHalf), side)!,
          s,
          (x) => {
            const p = centreOf(x, ofDepth, ofHalf);
            const line = x.track + ((x.half + x.outside - x.track) * p.x) / base(x);
            return side === "near" ? line - p.y : line + p.y;
          },
          random,
          1000,
        );
    }
  });
  test("the chair's part and the client's part make up the whole, 1,000 draws a setup", () => {
    const random = draws(32);
    for (let n = 0; n < 40; n++) {
      const inputs = { mass: around(random, 40, 120, 20), chair: around(random, 10, 30, 8) };
      holdsTightly(
        partOf(inputs.mass, inputs.chair)!,
        inputs,
        (x) => x.mass / (x.mass + x.chair),
        random,
        1000,
      );
    }
    expect(partOf(exactly(0), exactly(0))).toBeUndefined();
    expect(partOf(exactly(-1), exactly(20))).toBeUndefined();
  });
});

describe("what holds a locked chair", () => {
  test("1,000 draws a setup", () => {
    const random = draws(33);
    for (let n = 0; n < 12; n++) {
      const s = setup(random);
      const h = {
        body: around(random, 500, 900, 60),
        share: around(random, 0.4, 0.9, 0.02),
        chair: around(random, 120, 200, 40),
        away: around(random, 0.05, 0.15, 0.05),
        floor: around(random, 0.5, 0.7, 0.15),
      };
      const { depth, axle, castor, centre, ahead } = s;
      const along = { depth, axle, castor, centre, ahead, ofDepth: exactly(1) };
      const inputs = { depth, axle, castor, centre, ahead, ...h };
      holdsTightly(
        floorHold({ ...along, ...h })!,
        inputs,
        (x) => {
          // Moments about the castors give what stands on the drive wheels.
          const base = x.depth + x.castor - x.axle;
          const own = x.body * x.share;
          const fromCastors = (place: number) => base - place;
          const wheels =
            (own * fromCastors(x.ahead + x.depth - x.axle) + x.chair * fromCastors(x.centre)) / base;
          return x.floor * wheels - own * x.away;
        },
        random,
        1000,
      );
      const slope = around(random, 0.13, 0.18, 0.05);
      holdsTightly(
        lockHold({ ...h, slope })!,
        { body: h.body, share: h.share, chair: h.chair, away: h.away, slope },
        (x) => (x.body + x.chair) * Math.sin(x.slope) - x.body * x.share * x.away,
        random,
        1000,
      );
    }
  });
});

test("bounds from corners hold one variable at a time, and a corner without a value gives none", () => {
  expect(overCorners({ a: between(-1, 2), b: between(3, 4) }, (x) => x.a * x.b)).toMatchObject({
    low: -4,
    high: 8,
  });
  expect(overCorners({ a: between(0, 2) }, (x) => 1 / x.a)).toBeUndefined();
});
