/** For which values of one input something holds: looked for over what is plausible, the ends found exactly. */

export interface Range {
  readonly low: number;
  readonly high: number;
}

/** How a rule judges one value. */
export interface Tried {
  readonly holds: boolean;
  /** Signed distance to the nearest bound of `holds`, less the doubt: below zero it misses by that. Undefined where there is no number. */
  readonly slack: number | undefined;
}

/** How many values are tried before what lies between them is looked at. */
export const samples = 16;
/** How many, where the rule gives no number by which to tell how near a value comes. */
export const samplesWithoutSlack = 64;

interface Point extends Tried {
  readonly x: number;
}

/**
 * The stretches of `[low, high]` in which it holds, rounded inwards to `step` (a sixteenth of it counts as nothing). Between two values that fail, the one that misses
 * least is looked for; `at` (the value as written) is always among the values tried.
 */
export function holdingRanges(
  low: number,
  high: number,
  step: number,
  at: number | undefined,
  attempt: (x: number) => Tried,
): readonly Range[] {
  if (!(high > low) || !(step > 0)) return [];
  const tries = new Map<number, Point>();
  const probe = (x: number): Point => {
    let found = tries.get(x);
    if (!found) tries.set(x, (found = { x, ...attempt(x) }));
    return found;
  };
  let points = spread(low, high, step, samples, at).map(probe);
  if (points.every((p) => p.slack === undefined))
    points = spread(low, high, step, samplesWithoutSlack, at).map(probe);
  points = withPeaks(points, step, probe);
  const found: Range[] = [];
  for (let i = 0; i < points.length; i++) {
    if (!points[i]!.holds) continue;
    const from = i;
    while (points[i + 1]?.holds) i++;
    const start = from === 0 ? points[from]!.x : edge(points[from]!, points[from - 1]!, step / 32, probe);
    const end = i === points.length - 1 ? points[i]!.x : edge(points[i]!, points[i + 1]!, step / 32, probe);
    const inwards = {
      low: (Math.ceil(start / step - 1 / 16) || 0) * step,
      high: Math.floor(end / step + 1 / 16) * step,
    };
    if (inwards.high >= inwards.low - step / 1000) found.push(inwards);
  }
  return found;
}

/** Values over the whole range, on multiples of the step from its low end, and the value as written. */
function spread(low: number, high: number, step: number, most: number, at: number | undefined): number[] {
  const stride = step * Math.max(1, Math.ceil((high - low) / step / most));
  const xs: number[] = [];
  for (let i = 0; low + i * stride <= high + step / 1000; i++) xs.push(low + i * stride);
  if (at !== undefined && at > low && at < high && !xs.some((p) => Math.abs(p - at) < step / 1000))
    xs.push(at);
  return xs.sort((a, b) => a - b);
}

/** The points, and between neighbours that all fail the values that come nearest to holding. */
function withPeaks(points: readonly Point[], step: number, probe: (x: number) => Point): Point[] {
  const slack = (p: Point | undefined): number => p?.slack ?? -Infinity;
  const more: Point[] = [];
  points.forEach((p, i) => {
    if (p.holds || p.slack === undefined) return;
    const [left, right] = [points[i - 1], points[i + 1]];
    if (left?.holds || right?.holds || slack(left) > slack(p) || slack(right) > slack(p)) return;
    const top = climb(left ?? p, p, right ?? p, step, probe);
    if (top.holds) more.push(top);
  });
  return [...points, ...more].sort((a, b) => a.x - b.x);
}

/** The highest point between two neighbours of a point that is higher than both, to within a step. */
function climb(left: Point, middle: Point, right: Point, step: number, probe: (x: number) => Point): Point {
  let [a, m, b] = [left, middle, right];
  while (b.x - a.x > step && !m.holds) {
    // The wider side is halved.
    const x = m.x - a.x > b.x - m.x ? (a.x + m.x) / 2 : (m.x + b.x) / 2;
    const p = probe(x);
    if (p.holds) return p;
    const higher = (p.slack ?? -Infinity) > (m.slack ?? -Infinity);
    if (x < m.x) [a, m, b] = higher ? [a, p, m] : [p, m, b];
    else [a, m, b] = higher ? [m, p, b] : [a, m, p];
  }
  return m;
}

/** The last value towards `bad` at which it still holds, to within `tolerance`. */
function edge(good: Point, bad: Point, tolerance: number, probe: (x: number) => Point): number {
  let [a, b] = [good, bad];
  for (let turn = 0; Math.abs(b.x - a.x) > tolerance; turn++) {
    const p = probe(between(a, b, tolerance, turn));
    if (p.holds) a = p;
    else b = p;
  }
  return a.x;
}

/**
 * Where the slack comes to nothing on the line through both, a little to either side in turn, so that one bound moves close to the
 * other; every third time the middle, so that it always ends.
 */
function between(a: Point, b: Point, tolerance: number, turn: number): number {
  const middle = (a.x + b.x) / 2;
  if (turn % 3 === 2 || a.slack === undefined || b.slack === undefined) return middle;
  if (!(a.slack >= 0) || !(b.slack < 0)) return middle;
  const way = Math.sign(b.x - a.x);
  const zero = a.x + ((b.x - a.x) * a.slack) / (a.slack - b.slack);
  const x = zero + (turn % 3 === 0 ? -way : way) * (tolerance / 2);
  const inside = way > 0 ? x > a.x && x < b.x : x < a.x && x > b.x;
  return inside ? x : middle;
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
