/** For which values of one input something holds: sampled over what is plausible, the ends found by halving. */

export interface Range {
  readonly low: number;
  readonly high: number;
}

/** How many values are tried at most before the ends are looked for. */
export const mostSamples = 64;

/**
 * The stretches of `[low, high]` in which `holds`, rounded inwards to `step`. What is narrower than the distance between two
 * samples can be missed; `at` (the value as written) is always among them.
 */
export function holdingRanges(
  low: number,
  high: number,
  step: number,
  at: number | undefined,
  holds: (x: number) => boolean,
): readonly Range[] {
  if (!(high > low) || !(step > 0)) return [];
  const stride = step * Math.max(1, Math.ceil((high - low) / step / mostSamples));
  const points: number[] = [];
  for (let i = 0; low + i * stride <= high + step / 1000; i++) points.push(low + i * stride);
  if (at !== undefined && at > low && at < high && !points.some((p) => Math.abs(p - at) < step / 1000))
    points.push(at);
  points.sort((a, b) => a - b);
  const good = points.map(holds);
  const found: Range[] = [];
  for (let i = 0; i < points.length; i++) {
    if (!good[i]) continue;
    const from = i;
    while (good[i + 1]) i++;
    const start = from === 0 ? points[from]! : edge(points[from]!, points[from - 1]!, step / 32, holds);
    const end = i === points.length - 1 ? points[i]! : edge(points[i]!, points[i + 1]!, step / 32, holds);
    const inwards = {
      low: Math.ceil(start / step - 1 / 16) * step,
      high: Math.floor(end / step + 1 / 16) * step,
    };
    if (inwards.high >= inwards.low - step / 1000) found.push(inwards);
  }
  return found;
}

/** The last value towards `bad` at which it still holds, to within `tolerance`. */
function edge(good: number, bad: number, tolerance: number, holds: (x: number) => boolean): number {
  let [a, b] = [good, bad];
  while (Math.abs(b - a) > tolerance) {
    const middle = (a + b) / 2;
    if (holds(middle)) a = middle;
    else b = middle;
  }
  return a;
}

/** The value of the ranges that lies nearest to `x`, and its range. */
export function nearestIn(
  ranges: readonly Range[],
  x: number,
): { readonly value: number; readonly range: Range } | undefined {
  let best: { value: number; range: Range } | undefined;
  for (const range of ranges) {
    const value = Math.min(range.high, Math.max(range.low, x));
    if (!best || Math.abs(value - x) < Math.abs(best.value - x)) best = { value, range };
  }
  return best;
}
