/**
 * Amounts written with fractions against a path of their own: the text is taken apart here, summed with fraction.js as rational
 * numbers of inches (1 in = 254/10000 m, exactly: 16 CFR 500.19), and turned into a number once, at the end.
 */
import Fraction from "fraction.js";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseLine } from "../../language/text/line.js";
import type { Measure } from "../../language/text/types.js";

const measure = (text: string): Measure => {
  const item = parseLine(`top ${text}`).items[0];
  const atom = item?.type === "statement" && item.atoms.length === 2 ? item.atoms[1] : undefined;
  if (atom?.type !== "measure") throw new Error(`${text} was not read as one measure`);
  return atom;
};

const vulgar: Readonly<Record<string, readonly [number, number]>> = {
  "½": [1, 2],
  "¼": [1, 4],
  "¾": [3, 4],
  "⅓": [1, 3],
  "⅔": [2, 3],
  "⅕": [1, 5],
  "⅖": [2, 5],
  "⅗": [3, 5],
  "⅘": [4, 5],
  "⅙": [1, 6],
  "⅚": [5, 6],
  "⅐": [1, 7],
  "⅛": [1, 8],
  "⅜": [3, 8],
  "⅝": [5, 8],
  "⅞": [7, 8],
  "⅑": [1, 9],
  "⅒": [1, 10],
};
/** Whole thousandths of a millimetre would not do: thirds and sevenths have no end in decimals. */
const metresPerInch = new Fraction(254, 10_000);

/** One amount as people write it, with its value as a rational number. */
const amount: fc.Arbitrary<{ text: string; value: Fraction }> = fc.oneof(
  fc.nat({ max: 999 }).map((n) => ({ text: `${n}`, value: new Fraction(n) })),
  fc.tuple(fc.nat({ max: 999 }), fc.integer({ min: 1, max: 9999 })).map(([n, d]) => {
    const digits = `${d}`;
    return { text: `${n}.${digits}`, value: new Fraction(n).add(new Fraction(d, 10 ** digits.length)) };
  }),
  fc
    .tuple(fc.nat({ max: 99 }), fc.integer({ min: 2, max: 128 }), fc.nat(), fc.constantFrom(" ", "-"))
    .map(([whole, bottom, n, joint]) => {
      const top = (n % (bottom - 1)) + 1;
      return {
        text: whole === 0 ? `${top}/${bottom}` : `${whole}${joint}${top}/${bottom}`,
        value: new Fraction(whole).add(new Fraction(top, bottom)),
      };
    }),
  fc
    .tuple(fc.integer({ min: 1, max: 99 }), fc.constantFrom(...Object.keys(vulgar)), fc.constantFrom("", " "))
    .map(([whole, sign, gap]) => ({
      text: `${whole}${gap}${sign}`,
      value: new Fraction(whole).add(new Fraction(...(vulgar[sign] as [number, number]))),
    })),
);

describe("Fractions stay exact until they become metres", () => {
  it("inches, in every way of writing them", () => {
    fc.assert(
      fc.property(amount, fc.constantFrom(" in", " inches", '"', "″"), ({ text, value }, unit) => {
        expect(measure(text + unit).value).toBe(value.mul(metresPerInch).valueOf());
      }),
      { numRuns: 2000 },
    );
  });

  it("feet and inches, summed before they are rounded", () => {
    const inches = amount.filter(({ value }) => value.compare(12) < 0);
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 40 }),
        inches,
        fc.constantFrom([" ft ", " in"], ["'", '"'], ["′ ", "″"]),
        (feet, i, [foot, inch]) => {
          const exact = new Fraction(feet).mul(12).add(i.value).mul(metresPerInch).valueOf();
          expect(measure(`${feet}${foot}${i.text}${inch}`).value).toBe(exact);
        },
      ),
      { numRuns: 1000 },
    );
  });

  it("pounds and ounces, stones and pounds", () => {
    const poundInKg = new Fraction("0.45359237");
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 400 }),
        fc.nat({ max: 15 }),
        fc.nat({ max: 13 }),
        (a, ounces, pounds) => {
          expect(measure(`${a} lb ${ounces} oz`).value).toBe(
            new Fraction(a).add(new Fraction(ounces, 16)).mul(poundInKg).valueOf(),
          );
          expect(measure(`${a} st ${pounds} lb`).value).toBe(
            new Fraction(a).mul(14).add(pounds).mul(poundInKg).valueOf(),
          );
        },
      ),
      { numRuns: 300 },
    );
  });

  it("the spelling that the formatter writes has the same value", () => {
    fc.assert(
      fc.property(amount, ({ text }) => {
        const read = measure(`${text} in`);
        expect(measure(read.spelling).value).toBe(read.value);
        expect(measure(read.spelling).spelling).toBe(read.spelling);
      }),
      { numRuns: 500 },
    );
  });
});
