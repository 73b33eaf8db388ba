import { describe, expect, test } from "vitest";
import type { Dimension } from "../../../language/quantity/types.js";
import { quantities } from "../../../rules/quantities/index.js";
import { sceneFor } from "../scene-for.js";
import { byHand } from "./by-hand.js";

/** One of each unit in which the hand works, in SI. */
const units: Partial<Record<Dimension, number>> = {
  length: 0.0254,
  mass: 0.45359237,
  force: 4.4482216152605,
  angle: Math.PI / 180,
};

describe("every quantity is what somebody works out by hand", () => {
  test("none is left out of the table, and none is in it that is not there", () => {
    expect(Object.keys(byHand).sort()).toEqual(quantities.map((q) => q.name).sort());
  });
  test.each(quantities.map((q) => [q.name, q.dimension] as const))("%s", (name, dimension) => {
    const row = byHand[name];
    expect(row, `${name} has no value by hand`).toBeDefined();
    const { text, transfer, value, within } = row!;
    const got = sceneFor(text, transfer).get(name);
    expect(got.value, got.without ?? got.missing.map((m) => m.what).join(", ")).toBeDefined();
    const shown = got.value!.nominal / (units[dimension] ?? 1);
    expect(Math.abs(shown - value), `${shown} by program, ${value} by hand`).toBeLessThanOrEqual(
      within ?? 1e-6 * Math.max(1, Math.abs(value)),
    );
    expect(got.value!.low).toBeLessThanOrEqual(got.value!.nominal);
    expect(got.value!.high).toBeGreaterThanOrEqual(got.value!.nominal);
  });
});
