/** A beam on two supports with a load in its middle: worked examples of texts, and the bending line integrated twice. */
import { evaluate } from "mathjs";
import { describe, expect, test } from "vitest";
import { exactly } from "../../language/quantity/interval.js";
import { bendingStress, deflection } from "../../rules/plan/beam.js";
import { defaultsWith } from "../rules/scene-for.js";

const sag = (load: number, run: number, width: number, thickness: number, stiffness: number) =>
  deflection(exactly(load), exactly(run), exactly(width), exactly(thickness), exactly(stiffness))!.nominal;
const stress = (load: number, run: number, width: number, thickness: number) =>
  bendingStress(exactly(load), exactly(run), exactly(width), exactly(thickness))!.nominal;
/** Width of a rectangle of unit thickness with that second moment of area. */
const widthOf = (moment: number, thickness: number) => (12 * moment) / thickness ** 3;

describe("printed answers", () => {
  test("6 m, 50 kN in the middle, I 78e6 mm4, E 2.1e5 N/mm2: 13.736 mm (strength of materials text, example 12.1)", () => {
    expect(sag(50e3, 6000, widthOf(78e6, 200), 200, 2.1e5)).toBeCloseTo(13.736, 3);
  });
  test("24 ft, 16 kip in the middle, E 29 000 ksi, I 1330 in4: 0.206 in (University of Oregon, structures course, lecture 40)", () => {
    expect(sag(16, 24 * 12, widthOf(1330, 21), 21, 29000)).toBeCloseTo(0.206, 3);
  });
  test("a moment of 4500 lb ft in 2 by 4 in stresses it to 10 125 psi (Singer, problem 504): 1500 lb in the middle of 12 ft", () => {
    // The problem's load of 2000 lb stands at 3 ft; 1500 lb in the middle gives the same moment, 1500 x 12 / 4.
    expect(stress(1500, 144, 2, 4)).toBeCloseTo(10125, 6);
  });
  test("a square oak beam of 7.5 m under 1.5 kN/m, 32 MPa allowed: 10.55 kN m, so 125.52 mm, 130 mm taken (Hibbeler, Mechanics of Materials, problem 11-02)", () => {
    // Spread over the whole length a load bends the middle as half of it does there: w L^2 / 8 = (w L / 2) L / 4.
    const half = (1500 * 7.5) / 2;
    const side = 0.12552;
    expect(stress(half, 7.5, side, side) / 1e6).toBeCloseTo(32, 1);
    expect((stress(half, 7.5, side, side) * side ** 3) / 6 / 1e3).toBeCloseTo(10.55, 2);
    expect(stress(half, 7.5, 0.13, 0.13) / 1e6).toBeLessThan(32);
    expect(stress(half, 7.5, 0.125, 0.125) / 1e6).toBeGreaterThan(32);
  });
});

describe("integrated beforehand over 400 001 points, 764.9187 N, 230 mm wide", () => {
  test("300 mm, 18 mm thick, E 11 900 N/mm2: 4.6191 N/mm2 and 0.3235 mm", () => {
    expect(stress(764.9187, 300, 230, 18)).toBeCloseTo(4.6191, 4);
    expect(sag(764.9187, 300, 230, 18, 11900)).toBeCloseTo(0.3235, 4);
  });
  test("300 mm, 20 mm thick, E 1000 N/mm2: 3.7415 N/mm2 and 2.8061 mm", () => {
    expect(stress(764.9187, 300, 230, 20)).toBeCloseTo(3.7415, 4);
    expect(sag(764.9187, 300, 230, 20, 1000)).toBeCloseTo(2.8061, 4);
  });
  test("the middle is the worst place: the same load a third along, or shared in two, stresses it less (4.1058, 3.0794)", () => {
    const middle = stress(764.9187, 300, 230, 18);
    expect(middle).toBeGreaterThan(4.1058);
    expect(middle).toBeGreaterThan(3.0794);
  });
  test("and sags most there: 5 kN at 3 m of 5 m, E 2e5 N/mm2, I 1e8 mm4, sag 0.61734 mm at most (strength of materials text, example 12.4)", () => {
    expect(sag(5e3, 5000, widthOf(1e8, 200), 200, 2e5)).toBeGreaterThan(0.61734);
    expect(sag(5e3, 5000, widthOf(1e8, 200), 200, 2e5)).toBeLessThan(0.66);
  });
});

test("the work of the load is the energy stored in bending, by a sum over mathjs", () => {
  // P sag / 2 is the integral of M^2 / (2 E I) over the beam, M = P x / 2 up to the middle.
  const [load, run, width, thickness, stiffness] = [700, 0.5, 0.2, 0.019, 8.75e9];
  const stored = evaluate(
    `2 * (${load} / 2)^2 * (${run} / 2)^3 / 3 / (2 * ${stiffness} * ${width} * ${thickness}^3 / 12)`,
  ) as number;
  expect((load * sag(load, run, width, thickness, stiffness)) / 2).toBeCloseTo(stored, 9);
});

describe("the rule set's materials hold what handbooks print", () => {
  const of = (name: string) => defaultsWith().get(name)!.interval;
  test.each([
    ["wood", "American beech, 12 % moisture (Wood Handbook, as quoted)", 102.8, 11.86],
    ["wood", "sugar maple", 109.0, 12.6],
    ["wood", "bur oak", 71.0, 7.1],
    ["plywood", "five layups, least (Wood J. 53(4) 429, Table 3)", 37.6, 6.86],
    ["plywood", "five layups, most", 65.7, 8.979],
  ])("%s: %s, %d N/mm2 and %d thousand", (material, _what, strength, stiffness) => {
    expect(of(`strength-${material}`).low).toBeLessThanOrEqual(strength);
    expect(of(`strength-${material}`).high).toBeGreaterThanOrEqual(strength);
    expect(of(`stiffness-${material}`).low).toBeLessThanOrEqual(stiffness);
    expect(of(`stiffness-${material}`).high).toBeGreaterThanOrEqual(stiffness);
  });
});
