import { describe, expect, test } from "vitest";
import { Drawing } from "./drawing.js";
import * as households from "./everything-home.js";
import { extremes } from "./extremes.js";
import { drawn, held } from "./families.js";

/** At most a quarter wider than what its inputs reach. */
const most = 1.25;

/** A value that is known to a nanometre, or its like, has no width to speak of. */
const point = 1e-9;

/** Each quantity is taken in the first household in which it has a value. */
const places = [
  ["everything", "into-bed"],
  ["taped", "into-bed"],
  ["inPlace", "into-bed"],
  ["misread", "into-bed"],
  ["inCar", "into-car"],
] as const;

describe("no interval is needlessly wide", () => {
  const taken = new Map<string, (typeof places)[number]>();
  for (const place of places) {
    const drawing = new Drawing(households[place[0]], place[1], place[0] !== "taped");
    for (const name of drawn) if (!taken.has(name) && drawing.computed(name).value) taken.set(name, place);
  }
  test("each quantity has a household in which it is looked at", () => {
    expect(drawn.filter((name) => !taken.has(name))).toEqual([]);
  });
  test.each(places)("in the household %s, %s", { timeout: 120_000 }, (home, transfer) => {
    const drawing = new Drawing(households[home], transfer, home !== "taped");
    const names = drawn.filter((name) => taken.get(name)?.[0] === home);
    const found = extremes(drawing, names, held);
    for (const name of names) {
      const { low, high } = drawing.computed(name).value!;
      if (high - low <= point) continue;
      const reached = found.get(name)!;
      expect((high - low) / (reached.high - reached.low), name).toBeLessThanOrEqual(most);
    }
  });
});
