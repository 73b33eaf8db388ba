import { describe, expect, test } from "vitest";
import { households, inCar } from "./everything-home.js";
import { drawnHeld } from "./families.js";
import { soundOver } from "./sound.js";

/** Only who arrives on a bed lands on it. */
const notBack = ["landing.hips", "landing.scoot"];
const all = Object.entries(households);

describe("a true value within all tolerances lies inside what is computed, on the way back", () => {
  const seen = new Set<string>();
  test.each(all)("in the household %s", { timeout: 60_000 }, (_title, text) => {
    const seed = 200 + all.findIndex(([, t]) => t === text);
    for (const name of soundOver(text, "out-of-bed", drawnHeld, 100, seed)) seen.add(name);
  });
  test("out of a car", () => {
    for (const name of soundOver(inCar, "out-of-car", drawnHeld, 1000, 220)) seen.add(name);
    expect(seen).toContain("door.past-knees");
  });
  test("no quantity of the way back was left out", () => {
    expect(drawnHeld.filter((name) => !seen.has(name) && !notBack.includes(name))).toEqual([]);
  });
});
