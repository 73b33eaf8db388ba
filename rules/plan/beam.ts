/**
 * A board as a beam on two simple supports with one load in the middle, the worst place. Newtons, metres, pascals. A rectangle
 * of one thickness: I = b h^3 / 12. Every measure stands once in each formula, so its bounds are those of the measures.
 */
import type { Interval } from "../../language/quantity/interval.js";

/** A thickness of next to nothing has no number for its stress. */
const finite = (i: Interval): Interval | undefined =>
  [i.low, i.nominal, i.high].every((x) => Number.isFinite(x)) ? i : undefined;

const positive = (...all: readonly Interval[]): boolean => all.every((x) => x.low > 0);

/** Greatest stress, P L / 4 over b h^2 / 6. Undefined where width or thickness may be nothing. */
export function bendingStress(
  load: Interval,
  run: Interval,
  width: Interval,
  thickness: Interval,
): Interval | undefined {
  if (!positive(width, thickness) || load.low < 0 || run.low < 0) return undefined;
  const at = (p: number, l: number, b: number, h: number) => (1.5 * p * l) / (b * h * h);
  return finite({
    low: at(load.low, run.low, width.high, thickness.high),
    nominal: at(load.nominal, run.nominal, width.nominal, thickness.nominal),
    high: at(load.high, run.high, width.low, thickness.low),
  });
}

/** Sag in the middle, P L^3 / (48 E I). Undefined where width, thickness or stiffness may be nothing. */
export function deflection(
  load: Interval,
  run: Interval,
  width: Interval,
  thickness: Interval,
  stiffness: Interval,
): Interval | undefined {
  if (!positive(width, thickness, stiffness) || load.low < 0 || run.low < 0) return undefined;
  const at = (p: number, l: number, b: number, h: number, e: number) => (p * l ** 3) / (4 * e * b * h ** 3);
  return finite({
    low: at(load.low, run.low, width.high, thickness.high, stiffness.high),
    nominal: at(load.nominal, run.nominal, width.nominal, thickness.nominal, stiffness.nominal),
    high: at(load.high, run.high, width.low, thickness.low, stiffness.low),
  });
}

/** How far the far end jumps when the load passes the higher edge: run x sin(slope), with tan(slope) = rise / run. */
export function seesaw(rise: Interval, run: Interval): Interval {
  const at = (r: number, l: number) => {
    const whole = Math.hypot(r, l);
    return whole === 0 || l <= 0 ? 0 : (l * Math.abs(r)) / whole;
  };
  const least = rise.low > 0 ? rise.low : rise.high < 0 ? -rise.high : 0;
  return {
    low: at(least, run.low),
    nominal: at(rise.nominal, run.nominal),
    high: at(Math.max(-rise.low, rise.high), run.high),
  };
}
