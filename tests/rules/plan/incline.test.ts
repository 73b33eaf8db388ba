import { describe, expect, test } from "vitest";
import { between, exactly } from "../../../language/quantity/interval.js";
import {
  beyond,
  frictionOf,
  inclineOf,
  mixedFriction,
  pushRatio,
  slidingMargin,
} from "../../../rules/plan/incline.js";
import { holdsTightly } from "./corners.js";
import { around, degree, draws } from "./sampling.js";

const rounds = 40;

describe("slope with its sign", () => {
  test("up 2 in over 20 in climbs by atan 1/10, down 2 in drops by as much over the other length", () => {
    expect(inclineOf(exactly(2), exactly(20), exactly(25))!.nominal).toBeCloseTo(Math.atan(0.1), 12);
    expect(inclineOf(exactly(-2), exactly(20), exactly(25))!.nominal).toBeCloseTo(-Math.atan(0.08), 12);
  });
  test("a board that does not reach beyond the higher edge has none", () => {
    expect(inclineOf(between(0, 1), exactly(0), exactly(1))).toBeUndefined();
    expect(inclineOf(between(-1, 1), exactly(1), between(-1, 1))).toBeUndefined();
    expect(inclineOf(exactly(0), exactly(0), exactly(0))!.nominal).toBe(0);
  });
  test("1,000 draws a setup", () => {
    const random = draws(7);
    for (let n = 0; n < rounds; n++) {
      const inputs = {
        rise: around(random, -0.15, 0.15, 0.05),
        up: around(random, 0.3, 0.7, 0.1),
        down: around(random, 0.3, 0.7, 0.1),
      };
      const truth = (x: { rise: number; up: number; down: number }) =>
        Math.atan2(x.rise, x.rise > 0 ? x.up : x.down);
      holdsTightly(inclineOf(inputs.rise, inputs.up, inputs.down)!, inputs, truth, random, 1000);
    }
  });
});

describe("the push along a board as a part of the weight on it", () => {
  test("level it is the friction, on a steep drop it is below zero", () => {
    expect(pushRatio(exactly(0.3), exactly(0)).nominal).toBeCloseTo(0.3, 12);
    expect(pushRatio(exactly(0.2), exactly(-15 * degree)).nominal).toBeLessThan(0);
  });
  test("1,000 draws a setup, steep boards and the crest of the sum among them", () => {
    const random = draws(8);
    for (let n = 0; n < rounds; n++) {
      const inputs = { mu: around(random, 0.1, 1.2, 0.1), t: around(random, -1.4, 1.4, n % 2 ? 0.1 : 0.6) };
      const t = {
        ...inputs.t,
        low: Math.max(-Math.PI / 2, inputs.t.low),
        high: Math.min(Math.PI / 2, inputs.t.high),
      };
      const value = pushRatio(inputs.mu, t);
      // Where the crest lies inside, no corner finds it: the draws come close.
      holdsTightly(value, { mu: inputs.mu, t }, (x) => Math.sin(x.t) + x.mu * Math.cos(x.t), random, 2000);
    }
  });
  test("friction shared between board and upholstery, 1,000 draws a setup", () => {
    const random = draws(9);
    for (let n = 0; n < rounds; n++) {
      const inputs = {
        board: around(random, 0.15, 0.6, 0.15),
        cloth: around(random, 0.3, 0.6, 0.15),
        left: around(random, 0.3, 0.7, 0.3),
      };
      holdsTightly(
        mixedFriction(inputs.board, inputs.cloth, inputs.left),
        inputs,
        (x) => x.left * x.cloth + (1 - x.left) * x.board,
        random,
        1000,
      );
    }
  });
});

describe("sliding unpushed, and what is left to the client", () => {
  test("friction .3 slides from 16.7 degrees: on a board of 6 degrees 10.7 are left", () => {
    expect(slidingMargin(exactly(0.3), exactly(6 * degree)).nominal / degree).toBeCloseTo(10.7, 1);
  });
  test("a board tried at 17 degrees has a friction of .306; a quarter turn tells nothing", () => {
    expect(frictionOf(exactly(17 * degree))!.nominal).toBeCloseTo(0.3057, 4);
    expect(frictionOf(between(80 * degree, 95 * degree))).toBeUndefined();
  });
  test("helpers who pull 60 of 100 leave two fifths, who pull 120 leave nothing", () => {
    expect(beyond(exactly(100), exactly(60)).nominal).toBeCloseTo(0.4, 12);
    expect(beyond(exactly(100), exactly(120)).nominal).toBe(0);
    expect(beyond(between(-50, 50), exactly(0))).toEqual({ low: 0, nominal: 0, high: 1 });
  });
  test("1,000 draws a setup", () => {
    const random = draws(10);
    for (let n = 0; n < rounds; n++) {
      const push = around(random, 50, 300, 60);
      const pulls = around(random, 0, 200, 60);
      const inputs = {
        push,
        pulls: { ...pulls, low: Math.max(0, pulls.low), nominal: Math.max(0, pulls.nominal) },
      };
      holdsTightly(
        beyond(inputs.push, inputs.pulls),
        inputs,
        (x) => Math.max(0, x.push <= 0 ? 0 : 1 - x.pulls / x.push),
        random,
        1000,
      );
      const m = { mu: around(random, 0.2, 0.5, 0.1), slope: around(random, 0, 0.3, 0.1) };
      holdsTightly(slidingMargin(m.mu, m.slope), m, (x) => Math.atan(x.mu) - x.slope, random, 1000);
    }
  });
});
