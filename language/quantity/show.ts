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
  moment: "N-m",
  pressure: "kPa",
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
  "lbf-in": "N-m",
  "lbf-ft": "N-m",
  "N-m": "lbf-ft",
  psi: "MPa",
  kPa: "psi",
  MPa: "psi",
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
  if (u.symbol === "in" && !inDecimals(amount, shown))
    return `${fraction(amount, shown.denominator ?? 8)} in`;
  return `${trim(amount, Math.max(placesOf(u.symbol, amount), Math.min(shown.decimals ?? 0, 4)))} ${u.symbol}`;
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

/**
 * The nominal value of something worked out, to no finer a step than its doubt supports: of `3 3/8 in` within 1/4 in either
 * way, `3 1/4 in` or `3 1/2 in` says all that is known, and of 83.27 kg within 2 kg, 83 kg. Steps are those of the tape (1, 1/2,
 * 1/4, 1/8 in) or of the scale (powers of ten). What somebody wrote is shown as it was written, with `showValue`.
 */
export function showSupported(value: Interval, dimension: Dimension, shown: ShownUnit): string {
  const u = fittingUnit(dimension, shown);
  const doubt = Math.max(value.high - value.nominal, value.nominal - value.low);
  if (!u || !(doubt > 0) || !Number.isFinite(doubt)) return showValue(value.nominal, dimension, shown);
  const own = unitOf(u.symbol === "ft" ? "in" : u.symbol);
  const step = supportedStep(fromSi(doubt, own), own.symbol === "in");
  const rounded = Math.round(fromSi(value.nominal, own) / step) * step;
  return showValue(rounded * (own.times ?? own.factor.valueOf()), dimension, shown);
}

/** The largest step of the tape or scale that is not larger than the doubt; at most a whole inch. */
function supportedStep(doubt: number, inches: boolean): number {
  if (!inches) return 10 ** Math.floor(Math.log10(doubt) + 1e-9);
  return [1, 1 / 2, 1 / 4].find((step) => step <= doubt + 1e-9) ?? 1 / 8;
}

/** An interval in its writer's units with the other system in brackets: `23 1/4 in (591 mm)`; alone where there is no other. */
export function showBoth(value: Interval, dimension: Dimension, shown: ShownUnit): string {
  const own = show(value, dimension, shown);
  const other = otherUnit[shown.unit];
  return other === undefined ? own : `${own} (${show(value, dimension, { unit: other, denominator: 8 })})`;
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
  "N-m": 1,
  "lbf-in": 0,
  "lbf-ft": 1,
  kPa: 1,
  MPa: 1,
  psi: 0,
  "%": 0,
  min: 0,
  hour: 1,
  day: 0,
  week: 1,
};

/** Slopes turn on less than a hundredth: 1 in 12 is 8.3 %. Shares, which are larger, are not known that closely. */
const placesOf = (symbol: string, amount: number): number =>
  symbol === "%" && Math.abs(amount) < 20 ? 1 : (decimals[symbol] ?? 1);

function fittingUnit(dimension: Dimension, shown: ShownUnit): Unit | undefined {
  if (dimension === "number" || shown.unit === "1")
    return dimension === "ratio" && shown.unit === "%" ? unitOf("%") : undefined;
  const u = shown.unit === "" ? undefined : unitOf(shown.unit);
  if (u?.dimension === dimension) return u;
  const plain = siUnit[dimension];
  return plain ? unitOf(plain) : undefined;
}

/** Whether inches were written as decimals that no tape in sixteenths has, such as `19.3 in`. */
const inDecimals = (inches: number, shown: ShownUnit): boolean =>
  (shown.decimals ?? 0) > 0 && Math.abs(inches * 16 - Math.round(inches * 16)) > 1e-6;

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
