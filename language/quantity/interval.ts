/**
 * Intervals: what is known of a real number. Every value a rule judges is one.
 *
 * All bounds are in SI units. `nominal` is the value that was written (or computed from what was written) and lies between
 * `low` and `high`. Unbounded ends are ±Infinity. No operation returns NaN: where a result is undefined (division by an
 * interval that holds zero, a root of a negative number) it returns the widest interval that is still true.
 *
 * Rounding of binary numbers is not widened here; comparisons (`compare.ts`) treat differences below a nanometre, or its
 * like in another unit, as equal, which is far above any rounding and far below any tape.
 */
export interface Interval {
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
}

export const entire: Interval = { low: -Infinity, nominal: 0, high: Infinity };

/** An interval of one point. */
export const exactly = (x: number): Interval => ({ low: x, nominal: x, high: x });

/** An interval from its bounds; the nominal value is the middle unless given. Bounds may come in either order. */
export function between(a: number, b: number, nominal: number = (a + b) / 2): Interval {
  const low = Math.min(a, b);
  const high = Math.max(a, b);
  const middle = Number.isFinite(nominal)
    ? Math.min(high, Math.max(low, nominal))
    : Number.isFinite(low)
      ? low
      : Number.isFinite(high)
        ? high
        : 0;
  return { low, nominal: middle, high };
}

/** `x` with a symmetric tolerance. */
export const plusMinus = (x: number, tolerance: number): Interval => ({
  low: x - Math.abs(tolerance),
  nominal: x,
  high: x + Math.abs(tolerance),
});

export const width = (a: Interval): number => a.high - a.low;
export const contains = (a: Interval, x: number): boolean => a.low <= x && x <= a.high;

export const add = (a: Interval, b: Interval): Interval => ({
  low: a.low + b.low,
  nominal: a.nominal + b.nominal,
  high: a.high + b.high,
});

export const negate = (a: Interval): Interval => ({ low: -a.high, nominal: -a.nominal, high: -a.low });

export const subtract = (a: Interval, b: Interval): Interval => ({
  low: a.low - b.high,
  nominal: a.nominal - b.nominal,
  high: a.high - b.low,
});

/** 0 × ∞ is 0: an unbounded factor says nothing of a product with nothing. */
const times = (x: number, y: number): number => (x === 0 || y === 0 ? 0 : x * y);

export function multiply(a: Interval, b: Interval): Interval {
  const p = times(a.low, b.low);
  const q = times(a.low, b.high);
  const r = times(a.high, b.low);
  const s = times(a.high, b.high);
  return { low: Math.min(p, q, r, s), nominal: times(a.nominal, b.nominal), high: Math.max(p, q, r, s) };
}

/** Entire where the divisor holds zero strictly inside or is zero; half-unbounded where zero is an end of it. */
export function divide(a: Interval, b: Interval): Interval {
  if ((b.low < 0 && b.high > 0) || (b.low === 0 && b.high === 0)) return entire;
  const inverse: Interval = {
    low: b.high === 0 ? -Infinity : 1 / b.high,
    nominal: b.nominal === 0 ? 0 : 1 / b.nominal,
    high: b.low === 0 ? Infinity : 1 / b.low,
  };
  const { low, high } = multiply(a, inverse);
  return between(low, high, b.nominal === 0 ? (low + high) / 2 : a.nominal / b.nominal);
}

export const scale = (a: Interval, k: number): Interval =>
  k >= 0
    ? { low: times(a.low, k), nominal: a.nominal * k, high: times(a.high, k) }
    : { low: times(a.high, k), nominal: a.nominal * k, high: times(a.low, k) };

export const shift = (a: Interval, d: number): Interval => ({
  low: a.low + d,
  nominal: a.nominal + d,
  high: a.high + d,
});

export const smaller = (a: Interval, b: Interval): Interval => ({
  low: Math.min(a.low, b.low),
  nominal: Math.min(a.nominal, b.nominal),
  high: Math.min(a.high, b.high),
});

export const larger = (a: Interval, b: Interval): Interval => ({
  low: Math.max(a.low, b.low),
  nominal: Math.max(a.nominal, b.nominal),
  high: Math.max(a.high, b.high),
});

export function absolute(a: Interval): Interval {
  if (a.low >= 0) return a;
  if (a.high <= 0) return negate(a);
  return { low: 0, nominal: Math.abs(a.nominal), high: Math.max(-a.low, a.high) };
}

/** The square of one value (not the product of two that happen to be equal): [-2, 3] gives [0, 9]. */
export function square(a: Interval): Interval {
  const b = absolute(a);
  return { low: b.low * b.low, nominal: b.nominal * b.nominal, high: b.high * b.high };
}

/** Root of the part of `a` that is not negative. */
export const root = (a: Interval): Interval => ({
  low: Math.sqrt(Math.max(0, a.low)),
  nominal: Math.sqrt(Math.max(0, a.nominal)),
  high: Math.sqrt(Math.max(0, a.high)),
});

/** Sine and cosine over an interval of radians, extremes inside included. */
export function sine(a: Interval): Interval {
  return wave(a, Math.sin, Math.PI / 2);
}
export function cosine(a: Interval): Interval {
  return wave(a, Math.cos, 0);
}
function wave(a: Interval, f: (x: number) => number, crest: number): Interval {
  const nominal = f(a.nominal);
  if (!(a.high - a.low < 2 * Math.PI)) return { low: -1, nominal, high: 1 };
  const holds = (x: number) => Math.ceil((a.low - x) / (2 * Math.PI)) * 2 * Math.PI + x <= a.high;
  const ends = [f(a.low), f(a.high)];
  return {
    low: holds(crest + Math.PI) ? -1 : Math.min(...ends),
    nominal,
    high: holds(crest) ? 1 : Math.max(...ends),
  };
}
