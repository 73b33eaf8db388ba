/**
 * How quantities are shown: in the units in which they were written, rounded to what the tape supports, never to more digits than are known.
 */
import type { Interval } from "./interval.js";
import type { Dimension, ShownUnit } from "./types.js";
import { fromSi, unitOf, type Unit } from "./units.js";

const siUnit: Record<Dimension, string> = {
  length: "m",
  mass: "kg",
  angle: "deg",
  force: "N",
  ratio: "%",
  duration: "day",
  number: "",
};
const otherUnit: Record<string, string> = {
  in: "mm",
  ft: "m",
  mm: "in",
  cm: "in",
  m: "in",
  lb: "kg",
  kg: "lb",
  lbf: "N",
  N: "lbf",
  st: "kg",
  oz: "kg",
};

/** A single value: `3 1/2 in`, `5 ft 9 in`, `89 mm`, `12.4 deg`, `1.25`. */
export function showValue(value: number, dimension: Dimension, shown: ShownUnit): string {
  if (value === Infinity) return "no upper bound";
  if (value === -Infinity) return "no lower bound";
  const u = fittingUnit(dimension, shown);
  if (!u) return trim(value, 2);
  const amount = fromSi(value, u);
  if (u.symbol === "ft" || (u.symbol === "in" && shown.compound))
    return feetAndInches(value, shown.denominator ?? 8);
  if (u.symbol === "in") return `${fraction(amount, shown.denominator ?? 8)} in`;
  return `${trim(amount, decimals[u.symbol] ?? 1)}${u.symbol === "%" ? " %" : ` ${u.symbol}`}`;
}

/** An interval: one value where its ends read the same, else `between A and B`. */
export function show(value: Interval, dimension: Dimension, shown: ShownUnit): string {
  const low = showValue(value.low, dimension, shown);
  const high = showValue(value.high, dimension, shown);
  if (low === high) return low;
  if (value.low === -Infinity) return `at most ${high}`;
  if (value.high === Infinity) return `at least ${low}`;
  return `${withoutUnit(low, high)} to ${high}`;
}

/** The nominal value with its doubt behind it where the doubt shows: `3 1/2 in (3 1/4 to 3 3/4 in)`. */
export function showWithDoubt(value: Interval, dimension: Dimension, shown: ShownUnit): string {
  const nominal = showValue(value.nominal, dimension, shown);
  const doubt = show(value, dimension, shown);
  return nominal === doubt ? nominal : `${nominal} (${doubt})`;
}

/** A height difference: `up 3 1/2 in`, `down 2 in`, `level`. */
export function showSigned(value: number, dimension: Dimension, shown: ShownUnit): string {
  const size = showValue(Math.abs(value), dimension, shown);
  if (size === showValue(0, dimension, shown)) return "level";
  return `${value > 0 ? "up" : "down"} ${size}`;
}

/** The same value in the other system, for reports and hovers: `3 1/2 in` beside `89 mm`. Empty where there is none. */
export function inOtherSystem(value: number, dimension: Dimension, shown: ShownUnit): string {
  const other = otherUnit[shown.unit];
  return other ? showValue(value, dimension, { unit: other, denominator: 8 }) : "";
}

const decimals: Record<string, number> = {
  mm: 0,
  cm: 1,
  m: 3,
  kg: 1,
  lb: 1,
  oz: 1,
  st: 2,
  deg: 1,
  N: 0,
  lbf: 1,
  "%": 0,
  day: 0,
  week: 1,
};

function fittingUnit(dimension: Dimension, shown: ShownUnit): Unit | undefined {
  if (dimension === "number" || shown.unit === "1")
    return dimension === "ratio" && shown.unit === "%" ? unitOf("%") : undefined;
  const u = shown.unit === "" ? undefined : unitOf(shown.unit);
  if (u?.dimension === dimension) return u;
  const plain = siUnit[dimension];
  return plain ? unitOf(plain) : undefined;
}

function trim(x: number, places: number): string {
  const text = x.toFixed(places);
  const short = text.includes(".") ? text.replace(/\.?0+$/, "") : text;
  return short === "-0" ? "0" : short;
}

/** To the nearest part that a tape in this fraction supports: at least eighths, so that a computed sum is not coarser than its parts. */
function fraction(amount: number, denominator: number): string {
  const parts = Math.max(8, denominator);
  const whole = Math.round(Math.abs(amount) * parts);
  const sign = amount < 0 && whole > 0 ? "-" : "";
  const inches = Math.floor(whole / parts);
  let top = whole % parts;
  let bottom = parts;
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  if (top === 0) return `${sign}${inches}`;
  return inches === 0 ? `${sign}${top}/${bottom}` : `${sign}${inches} ${top}/${bottom}`;
}

function feetAndInches(value: number, denominator: number): string {
  const parts = Math.max(8, denominator);
  const total = Math.round((Math.abs(value) / 0.0254) * parts) / parts;
  const feet = Math.floor(total / 12);
  const inches = total - feet * 12;
  const sign = value < 0 && total > 0 ? "-" : "";
  if (feet === 0) return `${sign}${fraction(inches, parts)} in`;
  return inches === 0 ? `${sign}${feet} ft` : `${sign}${feet} ft ${fraction(inches, parts)} in`;
}

function withoutUnit(low: string, high: string): string {
  const unit = high.match(/ ([^ \d]+)$/)?.[0];
  return unit && low.endsWith(unit) && !low.includes(" ft ") ? low.slice(0, -unit.length) : low;
}
