import { describe, expect, test } from "vitest";
import { between, exactly } from "../../../language/quantity/interval.js";
import { bendingStress, deflection, seesaw } from "../../../rules/plan/beam.js";
import { holdsTightly } from "./corners.js";
import { around, draws } from "./sampling.js";

describe("a board as a beam", () => {
  test("1,000 draws a setup", () => {
    const random = draws(21);
    for (let n = 0; n < 40; n++) {
      const inputs = {
        // Meganewtons and megapascals, so that stresses are small numbers.
        load: around(random, 400e-6, 1200e-6, 200e-6),
        run: around(random, 0.2, 0.6, 0.1),
        width: around(random, 0.15, 0.25, 0.02),
        thickness: around(random, 0.012, 0.025, 0.003),
        stiffness: around(random, 1e3, 12e3, 500),
      };
      holdsTightly(
        bendingStress(inputs.load, inputs.run, inputs.width, inputs.thickness)!,
        inputs,
        (x) => ((x.load * x.run) / 4 / ((x.width * x.thickness ** 3) / 12)) * (x.thickness / 2),
        random,
        1000,
      );
      holdsTightly(
        deflection(inputs.load, inputs.run, inputs.width, inputs.thickness, inputs.stiffness)!,
        inputs,
        (x) => (x.load * x.run ** 3) / (48 * x.stiffness * ((x.width * x.thickness ** 3) / 12)),
        random,
        1000,
      );
    }
  });
  test("without width, thickness or stiffness there is no beam", () => {
    expect(bendingStress(exactly(1), exactly(1), exactly(0), exactly(1))).toBeUndefined();
    expect(bendingStress(exactly(1), exactly(1), exactly(1), between(-1, 1))).toBeUndefined();
    expect(deflection(exactly(1), exactly(1), exactly(1), exactly(1), exactly(0))).toBeUndefined();
  });
  test("with no free length nothing bends", () => {
    expect(bendingStress(exactly(500), exactly(0), exactly(0.2), exactly(0.02))!.nominal).toBe(0);
  });
});

describe("a board that tips over its higher edge", () => {
  test("3 in over 4 in along the floor: the end lifts by 4 x 3/5 in", () => {
    expect(seesaw(exactly(3), exactly(4)).nominal).toBeCloseTo(2.4, 12);
    expect(seesaw(exactly(-3), exactly(4)).nominal).toBeCloseTo(2.4, 12);
  });
  test("a board that may lie level may not tip at all", () => {
    expect(seesaw(between(-1, 2), exactly(20)).low).toBe(0);
    expect(seesaw(exactly(1), exactly(0))).toEqual(exactly(0));
  });
  test("1,000 draws a setup", () => {
    const random = draws(22);
    for (let n = 0; n < 40; n++) {
      const inputs = { rise: around(random, 0.03, 0.15, 0.02), run: around(random, 0.2, 0.6, 0.1) };
      holdsTightly(
        seesaw(inputs.rise, inputs.run),
        inputs,
        (x) => x.run * Math.sin(Math.atan(x.rise / x.run)),
        random,
        1000,
      );
    }
  });
});
