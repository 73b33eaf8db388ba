/**
 * A body on an inclined board. Angles in radians, at most a quarter turn either way; above zero the board climbs in the
 * direction of motion.
 */
import { between, type Interval } from "../../language/quantity/interval.js";

/**
 * Slope with its sign, from a rise and the length over which it rises; the length may differ up and down, since a rigid board
 * touches the lower surface with its end. Undefined where a length may be nothing: such a board does not lie across.
 */
export function inclineOf(rise: Interval, runUp: Interval, runDown: Interval): Interval | undefined {
  if ((rise.high > 0 && runUp.low <= 0) || (rise.low < 0 && runDown.low <= 0)) return undefined;
  const at = (r: number, up: number, down: number) => (r === 0 ? 0 : Math.atan(r / (r > 0 ? up : down)));
  // A climb is steepest over the shortest length, a drop too; the gentler bound of either takes the longest.
  const low = at(rise.low, runUp.high, runDown.low);
  const high = at(rise.high, runUp.low, runDown.high);
  const nominal = at(rise.nominal, runUp.nominal, runDown.nominal);
  return between(low, high, Number.isFinite(nominal) ? nominal : (low + high) / 2);
}

/**
 * What it takes to move a body along the board as a part of the weight on it: sin t + mu cos t. Below zero it slides by itself
 * and has to be held back.
 */
export function pushRatio(mu: Interval, t: Interval): Interval {
  const at = (m: number, x: number) => Math.sin(x) + m * Math.cos(x);
  // On a quarter turn either way the sum grows up to tan t = 1 / mu and falls after it: least at an end, greatest perhaps there.
  const crest = Math.PI / 2 - Math.atan(mu.high);
  const inside = t.low < crest && crest < t.high;
  return {
    low: Math.min(at(mu.low, t.low), at(mu.low, t.high)),
    nominal: at(mu.nominal, t.nominal),
    high: Math.max(at(mu.high, t.low), at(mu.high, t.high), inside ? Math.hypot(1, mu.high) : -Infinity),
  };
}

/** Friction of a sitting area of which the part `left` still rests on upholstery and the rest on the board. */
export function mixedFriction(board: Interval, upholstery: Interval, left: Interval): Interval {
  const at = (b: number, u: number, l: number) => b + l * (u - b);
  // Straight in the part, and growing in both frictions while the part lies between none and all.
  return {
    low: Math.min(at(board.low, upholstery.low, left.low), at(board.low, upholstery.low, left.high)),
    nominal: at(board.nominal, upholstery.nominal, left.nominal),
    high: Math.max(at(board.high, upholstery.high, left.low), at(board.high, upholstery.high, left.high)),
  };
}

/** Friction from the slope at which something starts to slide; undefined at a quarter turn and beyond. */
export function frictionOf(slidesAt: Interval): Interval | undefined {
  if (slidesAt.high >= Math.PI / 2) return undefined;
  const tan = (x: number) => Math.tan(Math.max(0, x));
  return { low: tan(slidesAt.low), nominal: tan(slidesAt.nominal), high: tan(slidesAt.high) };
}

/** How far the slope at which something starts to slide lies above the slope of the board. */
export const slidingMargin = (mu: Interval, slope: Interval): Interval => ({
  low: Math.atan(Math.max(0, mu.low)) - slope.high,
  nominal: Math.atan(Math.max(0, mu.nominal)) - slope.nominal,
  high: Math.atan(Math.max(0, mu.high)) - slope.low,
});

/** What has to be given beyond a sum of pulls, as a part of the push; none where the pulls suffice. */
export function beyond(push: Interval, pulls: Interval): Interval {
  const at = (p: number, f: number) => (p <= f || p <= 0 ? 0 : 1 - f / p);
  return {
    low: at(push.low, pulls.high),
    nominal: at(push.nominal, pulls.nominal),
    high: at(push.high, pulls.low),
  };
}
