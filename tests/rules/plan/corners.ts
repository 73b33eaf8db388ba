/** All corners of a box of inputs and draws besides, to test that a computed interval is sound and not needlessly wide. */
import { expect } from "vitest";
import { between, type Interval } from "../../../language/quantity/interval.js";
import { sound, tight, type Exact, type Inputs } from "./sampling.js";

/** Range of `truth` over every corner; each must lie inside what was computed. Up to twelve inputs that vary. */
function overAllCorners<I extends Inputs>(
  computed: Interval,
  inputs: I,
  truth: (x: Exact<I>) => number,
): Interval {
  const names = Object.keys(inputs).filter((n) => inputs[n]!.low !== inputs[n]!.high);
  let low = Infinity;
  let high = -Infinity;
  for (let k = 0; k < 2 ** names.length; k++) {
    const x: Record<string, number> = Object.fromEntries(
      Object.entries(inputs).map(([n, i]) => [n, i.nominal]),
    );
    names.forEach((n, i) => (x[n] = (k >> i) & 1 ? inputs[n]!.high : inputs[n]!.low));
    const y = truth(x as Exact<I>);
    low = Math.min(low, y);
    high = Math.max(high, y);
    if (!(y >= computed.low - 1e-9 && y <= computed.high + 1e-9))
      expect.fail(`${y} lies outside ${computed.low} to ${computed.high} for ${JSON.stringify(x)}`);
  }
  return between(low, high);
}

/**
 * That the computed interval holds the truth at every corner and in `count` draws, that it is at most a quarter wider than what
 * they found, and that its nominal value is the truth at nominal inputs.
 */
export function holdsTightly<I extends Inputs>(
  computed: Interval,
  inputs: I,
  truth: (x: Exact<I>) => number,
  random: () => number,
  count: number,
): void {
  const corners = overAllCorners(computed, inputs, truth);
  const drawn = sound(computed, inputs, truth, random, count);
  tight(computed, between(Math.min(corners.low, drawn.low), Math.max(corners.high, drawn.high)));
  const nominal = Object.fromEntries(Object.entries(inputs).map(([n, i]) => [n, i.nominal]));
  const expected = truth(nominal as Exact<I>);
  expect(Math.abs(computed.nominal - expected)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(expected)));
}
