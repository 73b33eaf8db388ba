import { describe, expect, test } from "vitest";
import { households, inCar, inPlace, taped } from "./everything-home.js";
import { drawnHeld } from "./families.js";
import { soundOver } from "./sound.js";

/** A hundred draws in each of twelve households; what has a value in one of them only is drawn a thousand times there. */
const each = 100;
const all = Object.entries(households);
const once: readonly (readonly [title: string, text: string, names: readonly string[], transfer: string])[] =
  [
    [
      "what was taped differs from what follows",
      taped,
      ["gap.disagreement", "board.bearing-seat-disagreement", "board.bearing-landing-disagreement"],
      "into-bed",
    ],
    ["the near leg rest is still on", inPlace, ["gap.without-legrest"], "into-bed"],
    ["the surface is a car seat", inCar, ["door.past-knees"], "into-car"],
  ];

describe("a true value within all tolerances lies inside what is computed, on the way there", () => {
  const count = new Map<string, number>();
  const take = (names: readonly string[], draws: number): void =>
    names.forEach((name) => count.set(name, (count.get(name) ?? 0) + draws));
  test.each(all)("in the household %s", { timeout: 60_000 }, (_title, text) => {
    const seed = 100 + all.findIndex(([, t]) => t === text);
    take(soundOver(text, "into-bed", drawnHeld, each, seed), each);
  });
  test.each(once)("where %s", { timeout: 60_000 }, (_title, text, names, transfer) => {
    take(soundOver(text, transfer, names, 1000, 300), 1000);
  });
  test("each quantity was drawn a thousand times in all", () => {
    expect(drawnHeld.filter((name) => (count.get(name) ?? 0) < 1000)).toEqual([]);
  });
});
