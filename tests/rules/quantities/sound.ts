/** That a quantity's interval holds every true value, over draws of everything that it rests on. */
import { expect } from "vitest";
import { draws } from "../plan/sampling.js";
import { Drawing } from "./drawing.js";
import { held } from "./families.js";

/**
 * Draws `count` times, half of them at the ends of the inputs; gives the names that had a value and were drawn. A gap that was
 * taped was taken with the chair as it stood: there it is not parked anew.
 */
export function soundOver(
  text: string,
  transfer: string,
  names: readonly string[],
  count: number,
  seed: number,
): readonly string[] {
  const drawing = new Drawing(text, transfer, !text.includes("measured { gap"));
  const known = names.filter((name) => drawing.computed(name).value);
  const random = draws(seed);
  for (let k = 0; k < count; k++) {
    const values = drawing.pick(random, k % 2 === 0);
    const chosen = known.some(held) ? drawing.at(values) : undefined;
    const anew = known.every(held) ? undefined : drawing.at(values, false);
    for (const name of known) {
      const computed = drawing.computed(name).value!;
      const { value: truth, missing, without } = (held(name) ? chosen! : anew!)(name);
      if (!truth) expect.fail(`${name}: ${without ?? missing.map((m) => m.what).join(", ")}`);
      const off = 1e-9 * Math.max(1, Math.abs(computed.low), Math.abs(computed.high));
      if (!(truth.low >= computed.low - off && truth.high <= computed.high + off))
        expect.fail(
          `${name}: ${truth.low} to ${truth.high} lies outside ${computed.low} to ${computed.high} for ${JSON.stringify(
            Object.fromEntries(drawing.leaves.map((l, n) => [l.name, values[n]])),
          )}`,
        );
    }
  }
  return known;
}
