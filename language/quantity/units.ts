/**
 * The unit table. Factors are exact by definition: the international yard and pound agreement of 1959 (1 yd = 0.9144 m,
 * 1 lb = 0.45359237 kg) and standard gravity 9.80665 m/s² (NIST SP 811, App. B.8); those of moments and pressures are their
 * products and quotients (1 lbf = 0.45359237 kg × 9.80665 m/s²; 1 psi = 1 lbf / (0.0254 m)²).
 *
 * SI inside: m, kg, rad, N, N m, Pa, and 1 for ratios; a duration counts in days, since reviews and deliveries do.
 */
import Fraction from "fraction.js";
import type { Dimension } from "./types.js";

export interface Unit {
  readonly symbol: string;
  readonly dimension: Dimension;
  /** SI units in one of this, as an exact fraction; the degree is the one factor that is irrational. */
  readonly factor: Fraction;
  readonly times?: number;
  readonly system: "inch" | "metric" | "both";
  /** What people type for it. */
  readonly spellings: readonly string[];
  /** A smaller unit that may follow it, and how many make one: `5 ft 9 in`. */
  readonly then?: { readonly unit: string; readonly count: number };
}

const unit = (
  symbol: string,
  dimension: Dimension,
  factor: string,
  system: Unit["system"],
  spellings: string,
  more: Partial<Unit> = {},
): Unit => ({
  symbol,
  dimension,
  factor: new Fraction(factor),
  system,
  spellings: spellings.split(" ").filter(Boolean),
  ...more,
});

export const units: readonly Unit[] = [
  unit("in", "length", "0.0254", "inch", `in inch inches " ″ ” ''`),
  unit("ft", "length", "0.3048", "inch", "ft foot feet ' ′ ’", { then: { unit: "in", count: 12 } }),
  unit("mm", "length", "0.001", "metric", "mm millimetre millimetres millimeter millimeters"),
  unit("cm", "length", "0.01", "metric", "cm centimetre centimetres centimeter centimeters"),
  unit("m", "length", "1", "metric", "m metre metres meter meters", { then: { unit: "cm", count: 100 } }),
  unit("lb", "mass", "0.45359237", "inch", "lb lbs pound pounds", { then: { unit: "oz", count: 16 } }),
  unit("oz", "mass", "0.028349523125", "inch", "oz ounce ounces"),
  unit("kg", "mass", "1", "metric", "kg kgs kilo kilos kilogram kilograms"),
  unit("st", "mass", "6.35029318", "inch", "st stone", { then: { unit: "lb", count: 14 } }),
  unit("deg", "angle", "1", "both", "deg degree degrees °", { times: Math.PI / 180 }),
  unit("lbf", "force", "4.4482216152605", "inch", "lbf"),
  unit("N", "force", "1", "metric", "n newton newtons"),
  unit("N-m", "moment", "1", "metric", "n-m nm newton-metre newton-metres newton-meter newton-meters"),
  unit("lbf-in", "moment", "0.1129848290276167", "inch", "lbf-in in-lbf"),
  unit("lbf-ft", "moment", "1.3558179483314004", "inch", "lbf-ft ft-lbf"),
  unit("kPa", "pressure", "1000", "metric", "kpa kilopascal kilopascals"),
  unit("MPa", "pressure", "1000000", "metric", "mpa megapascal megapascals n/mm2"),
  unit("psi", "pressure", "44482216152605/6451600000", "inch", "psi"),
  unit("%", "ratio", "0.01", "both", "% percent"),
  unit("min", "duration", "1/1440", "both", "min mins minute minutes"),
  unit("hour", "duration", "1/24", "both", "hour hours hr hrs", { then: { unit: "min", count: 60 } }),
  unit("day", "duration", "1", "both", "day days"),
  unit("week", "duration", "7", "both", "week weeks"),
];

const bySpelling = new Map<string, Unit>();
const bySymbol = new Map<string, Unit>();
for (const u of units) {
  bySymbol.set(u.symbol, u);
  for (const s of u.spellings) bySpelling.set(s, u);
}

/** The unit that this spelling stands for, in capitals or small letters. */
export const unitNamed = (spelling: string): Unit | undefined =>
  bySpelling.get(spelling) ?? bySpelling.get(spelling.toLowerCase());
/** The unit with this symbol; throws for a symbol that is not in the table. */
export function unitOf(symbol: string): Unit {
  const found = bySymbol.get(symbol);
  if (!found) throw new Error(`No unit ${symbol}`);
  return found;
}
export const unitsOf = (dimension: Dimension): readonly Unit[] =>
  units.filter((u) => u.dimension === dimension);

/** An exact amount of a unit in SI, rounded once, at the end. */
export const toSi = (amount: Fraction, u: Unit): number =>
  u.times === undefined ? amount.mul(u.factor).valueOf() : amount.valueOf() * u.times;
/** The same for a ratio of whole numbers: where all products are exact as they are, one division rounds once and no fraction is made. */
export function ratioToSi(top: number, bottom: number, u: Unit): number {
  if (u.times !== undefined) return (top / bottom) * u.times;
  const [n, d] = wholeFactor(u);
  const [above, below] = [top * n, bottom * d];
  return above <= Number.MAX_SAFE_INTEGER && below <= Number.MAX_SAFE_INTEGER
    ? above / below
    : toSi(new Fraction(top).div(bottom), u);
}
const wholeFactors = new Map<Unit, readonly [number, number]>();
function wholeFactor(u: Unit): readonly [number, number] {
  let found = wholeFactors.get(u);
  if (!found) wholeFactors.set(u, (found = [Number(u.factor.n), Number(u.factor.d)]));
  return found;
}

/** How many of a unit an SI value is. */
export const fromSi = (value: number, u: Unit): number => value / (u.times ?? u.factor.valueOf());
