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
import { fromSi, unitOf } from "../../language/quantity/units.js";
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
  ])("%s is %d in SI (%s)", (text, si) => expect(measure(text).value).toBeCloseTo(si, 12));

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
  ];
  it.each(units)("%s, by mathjs and js-quantities", (ours, theirs, qty, si) => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 99_999 }), (n) => {
        const text = (n / 100).toString();
        const value = measure(`${text} ${ours}`).value;
        expect(value).toBeCloseTo(math.unit(Number(text), theirs).toNumber(si), 9);
        expect(value).toBeCloseTo(Qty(Number(text), qty).to(si).scalar, 9);
      }),
      { numRuns: 200 },
    );
  });
  it("lbf, by mathjs", () =>
    expect(measure("35 lbf").value).toBeCloseTo(math.unit(35, "lbf").toNumber("N"), 9));

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
