/**
 * Units against the figures that define them and against general-purpose libraries.
 * Sources: international yard and pound agreement of 1959 (1 yd = 0.9144 m, 1 lb = 0.45359237 kg); NIST SP 811, App. B.8
 * (standard gravity 9.80665 m/s²; lbf 4.448 222 N); 16 CFR 500.19 (1 in = 2.54 cm exactly).
 */
import Fraction from "fraction.js";
import fc from "fast-check";
import Qty from "js-quantities";
import { create, all } from "mathjs";
import { describe, expect, it } from "vitest";
import { parseLine } from "../../language/text/line.js";
import { fromSi, unitOf, units as unitTable } from "../../language/quantity/units.js";
import type { Measure } from "../../language/text/types.js";

const math = create(all!);
const measure = (text: string): Measure => {
  const item = parseLine(`top ${text}`).items[0]!;
  const atom = item.type === "statement" ? item.atoms[1] : undefined;
  if (atom?.type !== "measure") throw new Error(`${text} was not read as a measure`);
  return atom;
};

describe("Published conversion factors", () => {
  it.each([
    ["1 in", 0.0254, "16 CFR 500.19: 1 in = 2.54 cm, exactly"],
    ["3 ft", 0.9144, "yard and pound agreement 1959: 1 yd = 0.9144 m"],
    ["1 lb", 0.45359237, "yard and pound agreement 1959"],
    ["1 lbf", 4.4482216152605, "0.45359237 kg x 9.80665 m/s², NIST SP 811 App. B.8: 4.448 222 N"],
    ["180 deg", Math.PI, "NIST SP 811 App. B.8: degree 1.745 329 E-02 rad"],
    ["16 3/8 in", 0.415925, "exact: 131/8 x 254/10000 m"],
    ["6 ft 4 in", 1.9304, "exact: 76 in"],
    ["170 lb", 77.1107029, "exact"],
    ["300 lbf", 1334.46648457815, "exact product"],
    ["1 kg", 1, "SI"],
    ["14 lb", 6.35029318, "14 x 0.45359237 kg, exact"],
    ["1 st", 6.35029318, "a stone is 14 lb: exact product"],
    ["16 oz", 0.45359237, "16 ounces are a pound: exact"],
    ["1 lbf-ft", 1.3558179483314, "4.4482216152605 N x 0.3048 m, exact product"],
    ["12 lbf-in", 1.3558179483314, "12 in are a foot"],
    ["1 N-m", 1, "SI"],
    ["24 hour", 1, "a day has 24 hours; durations count in days"],
    ["1440 min", 1, "a day has 1440 minutes"],
    ["1 week", 7, "a week has 7 days"],
    ["8 %", 0.08, "hundredths"],
  ])("%s is %d in SI (%s)", (text, si) => expect(measure(text).value).toBeCloseTo(si, 12));

  it.each([
    ["1 psi", 6894.757293168361, "exact quotient lbf / (0.0254 m)²; NIST SP 811 App. B.8: 6.894 757 E+03 Pa"],
    ["14900 psi", 102.7318837e6, "exact product, printed to 0.1 Pa"],
    ["1 kPa", 1e3, "SI"],
    ["1 MPa", 1e6, "SI"],
  ])("%s is %d Pa (%s)", (text, si) => expect(measure(text).value / si).toBeCloseTo(1, 9));

  it("prints 2.20462 lb for a kilogram, as the chart of 16 CFR 500.19 does", () => {
    expect(fromSi(1, unitOf("lb")).toFixed(5)).toBe("2.20462");
  });
});

describe("Independent libraries agree on random amounts", () => {
  const units: readonly (readonly [ours: string, mathjs: string, qty: string, si: string])[] = [
    ["in", "inch", "in", "m"],
    ["ft", "ft", "ft", "m"],
    ["mm", "mm", "mm", "m"],
    ["cm", "cm", "cm", "m"],
    ["lb", "lbm", "lb", "kg"],
    ["kg", "kg", "kg", "kg"],
    ["m", "m", "m", "m"],
    ["oz", "oz", "oz", "kg"],
    ["st", "stone", "stone", "kg"],
    ["deg", "deg", "deg", "rad"],
    ["lbf", "lbf", "lbf", "N"],
    ["N", "N", "N", "N"],
    ["psi", "psi", "psi", "Pa"],
    ["kPa", "kPa", "kPa", "Pa"],
    ["MPa", "MPa", "MPa", "Pa"],
    ["lbf-ft", "lbf ft", "lbf*ft", "N m"],
    ["lbf-in", "lbf in", "lbf*in", "N m"],
    ["N-m", "N m", "N*m", "N m"],
  ];
  it.each(units)("%s, by mathjs and js-quantities", (ours, theirs, qty, si) => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 99_999 }), (n) => {
        const text = (n / 100).toString();
        const value = measure(`${text} ${ours}`).value;
        // These libraries carry some factors rounded: mathjs the psi to eleven digits, js-quantities others to seven.
        expect(value / math.unit(Number(text), theirs).toNumber(si)).toBeCloseTo(1, 9);
        expect(value / Qty(Number(text), qty).to(si.replace(" ", "*")).scalar).toBeCloseTo(1, 6);
      }),
      { numRuns: 200 },
    );
  });
  it("every unit of the table stands in one of these tables", () => {
    const checked = new Set([...units.map(([ours]) => ours), "min", "hour", "day", "week", "%"]);
    expect(unitTable.map((u) => u.symbol).filter((s) => !checked.has(s))).toEqual([]);
  });

  it("fractions of an inch, by exact fractions rounded once", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 99 }),
        fc.constantFrom(2, 4, 8, 16, 32, 64),
        fc.nat(),
        (whole, bottom, n) => {
          const top = (n % (bottom - 1)) + 1;
          const exact = new Fraction(top, bottom).add(whole).mul(254).div(10_000).valueOf();
          expect(measure(`${whole === 0 ? "" : `${whole} `}${top}/${bottom} in`).value).toBe(exact);
        },
      ),
    );
  });
});
