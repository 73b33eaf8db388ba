/**
 * A chair turning a corner: a rectangle between two corridors that meet at a right angle. Metres.
 *
 * The chair is taken as its outer length by its outer width. At every angle t from 0 to 90 degrees its outer corners touch the outer
 * walls moved in by c and its inner side the inner corner moved out by c, which leaves
 *     c(t) = (a sin t + b cos t - l sin t cos t - w) / (1 + sin t + cos t).
 * What is left on the whole way is the least of it; at its ends it is half of what the corridors are wider than the chair.
 */
import type { Interval } from "../../language/quantity/interval.js";

export interface Corner {
  /** Clear width before and after the turn. */
  readonly before: number;
  readonly after: number;
  readonly length: number;
  readonly width: number;
}

const left = (c: Corner, t: number): number => {
  const sin = Math.sin(t);
  const cos = Math.cos(t);
  return (c.before * sin + c.after * cos - c.length * sin * cos - c.width) / (1 + sin + cos);
};

const steps = 90;

/** What is left on both sides at the tightest angle; below zero the chair is too large by as much on each side. */
export function leftAtCorner(c: Corner): number {
  let best = 0;
  let least = Infinity;
  for (let n = 0; n <= steps; n++) {
    const t = (n * Math.PI) / 2 / steps;
    const at = left(c, t);
    if (at < least) {
      least = at;
      best = t;
    }
  }
  // Near its least place the function has one trough: it is closed in from both sides.
  const step = Math.PI / 2 / steps;
  let from = Math.max(0, best - step);
  let to = Math.min(Math.PI / 2, best + step);
  while (to - from > 1e-6) {
    const third = (to - from) / 3;
    if (left(c, from + third) < left(c, to - third)) to -= third;
    else from += third;
  }
  return Math.min(least, left(c, (from + to) / 2));
}

/** The same over intervals: what is left grows with both widths and shrinks with the chair. */
export function cornerLeft(before: Interval, after: Interval, length: Interval, width: Interval): Interval {
  return {
    low: leftAtCorner({ before: before.low, after: after.low, length: length.high, width: width.high }),
    nominal: leftAtCorner({
      before: before.nominal,
      after: after.nominal,
      length: length.nominal,
      width: width.nominal,
    }),
    high: leftAtCorner({ before: before.high, after: after.high, length: length.low, width: width.low }),
  };
}
