import { describe, expect, test } from "vitest";
import { away, everything, misread } from "./everything-home.js";
import { drawnOfRoom } from "./families.js";
import { soundOver } from "./sound.js";

describe("a true value within all tolerances lies inside what is computed of the room", () => {
  test.each([
    ["as it was walked, a thousand draws", everything, 1000],
    ["of which one wall was read a foot short", misread, 150],
    ["with the chair turned away from the bed", away, 150],
  ] as const)("%s", { timeout: 60_000 }, (_title, text, count) => {
    expect(soundOver(text, "into-bed", drawnOfRoom, count, 400)).toEqual(drawnOfRoom);
  });
});
