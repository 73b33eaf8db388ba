/**
 * Ramps of published standards: run = rise x 12 at 1:12 (2010 ADA Standards 405.2, 405.6; 1991 Standards 4.8.2), existing sites 1:10 up
 * to 6 in and 1:8 up to 3 in (Table 405.2). Whole setups go in; slopes, runs and what the rules say of them come out.
 */
import { describe, expect, test } from "vitest";
import { home, sceneFor } from "../rules/scene-for.js";

const inch = 0.0254;
const withRamp = (rise: string, run: string) =>
  sceneFor(`${home}
ramp porch { rise ${rise} ± 0 in; run ${run} ± 0 in; width 36 in }
route in { from "the street"; to bedroom; ramp porch }
`);

describe("level length for a rise", () => {
  test.each([
    ["3/4 in", 9],
    ["6 in", 72],
    ["6 1/4 in", 75],
    ["7 in", 84],
    ["24 in", 288],
    ["30 in", 360],
  ])("%s asks for %d in at 1:12", (rise, run) => {
    const c = withRamp(rise, `${run} in`);
    expect(c.get("ramp.run").value!.nominal / inch).toBeCloseTo(run, 9);
    expect(c.get("ramp.slope").value!.nominal).toBeCloseTo(1 / 12, 12);
  });
});

describe("slopes", () => {
  test.each([
    ["3 in", "24 in", 8],
    ["3 1/8 in", "25 in", 8],
    ["6 in", "60 in", 10],
    ["30 in", "360 in", 12],
  ])("%s over %s is 1 in %d", (rise, run, n) => {
    const slope = withRamp(rise, run).get("ramp.slope").value!.nominal;
    expect(1 / slope).toBeCloseTo(n, 9);
    if (n === 12) expect((Math.atan(slope) * 180) / Math.PI).toBeCloseTo(4.7636, 4);
  });
  test("a board of 72 in under a rise of 6 in is steeper than 1:12 by a hair: its length is not its run", () => {
    const run = Math.sqrt(72 ** 2 - 6 ** 2);
    expect(run).toBeCloseTo(71.75, 2);
    const slope = withRamp("6 in", `${run.toFixed(6)} in`).get("ramp.slope").value!.nominal;
    expect(1 / slope).toBeCloseTo(11.96, 2);
    expect(slope).toBeGreaterThan(1 / 12);
  });
});
