/** The rule set's part of stature from the crown to the hip joint, against printed body proportions. */
import { expect, test } from "vitest";
import { contains } from "../../language/quantity/interval.js";
import { defaultsWith, home, sceneFor } from "../rules/scene-for.js";

const fraction = defaultsWith().get("hip-fraction")!.interval;

test("holds 1 - .530, hip height by Drillis and Contini as printed by Winter, Figure 4.1", () => {
  expect(contains(fraction, 1 - 0.53)).toBe(true);
});

test("is the hip joint, not the base of the buttocks (.485 of stature high; head and trunk .520 long)", () => {
  expect(contains(fraction, 1 - 0.485)).toBe(false);
  expect(contains(fraction, 0.52)).toBe(false);
});

test("agrees with thigh and shank from the same table: .245 and .246 above an ankle at .039", () => {
  expect(0.245 + 0.246 + 0.039).toBeCloseTo(0.53, 9);
  expect(contains(fraction, 1 - (0.245 + 0.246 + 0.039))).toBe(true);
});

test("somebody of 5 ft 5 in lands with the hip joint at .470 of stature below the top of the head", () => {
  const inch = 0.0254;
  const target = sceneFor(
    home.replace("5 ft 9 in", "5 ft 5 in"),
    "into-bed",
    defaultsWith({ "pillow-allowance": { low: 4 * inch, nominal: 4 * inch, high: 4 * inch } }),
  ).get("landing.target");
  expect(contains(target.value!, 34.55 * inch)).toBe(true);
  expect(target.value!.nominal / inch).toBeCloseTo(34.55, 2);
});
