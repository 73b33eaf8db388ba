/** The rule set's part of stature from the crown to the hip joint, against printed body proportions. */
import { expect, test } from "vitest";
import { contains } from "../../language/quantity/interval.js";
import { defaultsWith, home, sceneFor } from "../rules/scene-for.js";

const fraction = defaultsWith().get("hip-fraction")!.interval;

test("holds 1 - .530, hip height by Drillis and Contini as printed by Winter, Figure 4.1", () => {
  expect(contains(fraction, 1 - 0.53)).toBe(true);
});

test("is the hip joint, not the base of the buttocks: its middle lies nearer to measured hips than .515 and .520 do", () => {
  // 4082 men and 1986 women of the 2012 survey: half have the top of the thigh bone no higher than .512 and .519 of stature.
  for (const hip of [1 - 0.512, 1 - 0.519])
    for (const buttocks of [1 - 0.485, 0.52])
      expect(Math.abs(fraction.nominal - hip)).toBeLessThan(Math.abs(fraction.nominal - buttocks) / 2);
});

test("agrees with thigh and shank from the same table: .245 and .246 above an ankle at .039", () => {
  expect(0.245 + 0.246 + 0.039).toBeCloseTo(0.53, 9);
  expect(contains(fraction, 1 - (0.245 + 0.246 + 0.039))).toBe(true);
});

test("somebody of 5 ft 5 in whose hips are measured 30.55 in below the crown lands with the hip joint at .470 of stature", () => {
  const inch = 0.0254;
  const target = sceneFor(
    home.replace("stature 5 ft 9 in", "stature 5 ft 5 in\n  head-to-hip 30.55 in ± 0 in"),
    "into-bed",
    defaultsWith({ "pillow-allowance": { low: 4 * inch, nominal: 4 * inch, high: 4 * inch } }),
  ).get("landing.target");
  expect(target.value!.nominal / inch).toBeCloseTo(4 + 0.47 * 65, 9);
  expect(target.value!.high - target.value!.low).toBeCloseTo(0, 9);
});
