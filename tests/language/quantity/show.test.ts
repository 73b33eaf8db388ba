import { describe, expect, it } from "vitest";
import { between, exactly } from "../../../language/quantity/interval.js";
import {
  show,
  showBoth,
  showSigned,
  showSupported,
  showValue,
  showWithDoubt,
} from "../../../language/quantity/show.js";
import type { Dimension, ShownUnit } from "../../../language/quantity/types.js";
import { unitOf } from "../../../language/quantity/units.js";
import { parseLine } from "../../../language/text/line.js";
import type { Measure } from "../../../language/text/types.js";

const inch = 0.0254;
const measure = (text: string): Measure => {
  const item = parseLine(`top ${text}`).items[0];
  const atom = item?.type === "statement" ? item.atoms[1] : undefined;
  if (atom?.type !== "measure") throw new Error(`${text} was not read as a measure`);
  return atom;
};
const inches: ShownUnit = { unit: "in" };

describe("A value is shown back as it was written", () => {
  it.each([
    "19 1/2 in",
    "3/8 in",
    "16 5/16 in",
    "5 ft 9 in",
    "6 ft",
    "12 ft 1 1/2 in",
    "480 mm",
    "18.5 mm",
    "49.5 cm",
    "1.205 m",
    "19.3 in",
    "182 lb",
    "182.4 lb",
    "83 kg",
    "13 st",
    "30 deg",
    "12.5 deg",
    "35 lbf",
    "160 N",
    "12.5 N-m",
    "20 lbf-ft",
    "90 lbf-in",
    "14900 psi",
    "102.7 MPa",
    "8 %",
    "8.5 %",
    "20 min",
    "2 hour",
    "14 day",
    "6 week",
  ])("%s", (text) => {
    const m = measure(text);
    expect(showValue(m.value, m.dimension, m.unit)).toBe(text);
    expect(m.spelling).toBe(text);
  });

  it("a whole number of eighths written in decimals is shown as a tape shows it", () => {
    const m = measure("19.5 in");
    expect(showValue(m.value, m.dimension, m.unit)).toBe("19 1/2 in");
  });
});

describe("What is worked out is shown no finer than its doubt supports", () => {
  it.each<[string, number, number, Dimension, ShownUnit, string]>([
    ["within an eighth, to the eighth", 3.375 * inch, inch / 8, "length", inches, "3 3/8 in"],
    ["within a quarter, to the quarter", 3.4 * inch, inch / 4, "length", inches, "3 1/2 in"],
    ["within half an inch, to the half", 3.4 * inch, inch / 2, "length", inches, "3 1/2 in"],
    ["within an inch and a half, to the inch", 3.4 * inch, 1.5 * inch, "length", inches, "3 in"],
    ["within a sixteenth, still to the eighth", 3.4 * inch, inch / 16, "length", inches, "3 3/8 in"],
    [
      "feet and inches within an inch",
      69.4 * inch,
      inch,
      "length",
      { unit: "ft", compound: true },
      "5 ft 9 in",
    ],
    ["a mass within 2 kg, to the kilogram", 83.27, 2, "mass", { unit: "kg" }, "83 kg"],
    ["a mass within 12 kg, to ten", 83.27, 12, "mass", { unit: "kg" }, "80 kg"],
    ["millimetres within 30, to ten", 0.5137, 0.03, "length", { unit: "mm" }, "510 mm"],
    [
      "an angle within half a degree",
      (12.34 * Math.PI) / 180,
      (0.5 * Math.PI) / 180,
      "angle",
      { unit: "deg" },
      "12.3 deg",
    ],
    ["a force within 30 N", 167, 30, "force", { unit: "N" }, "170 N"],
    ["without doubt, as it is", 3.375 * inch, 0, "length", inches, "3 3/8 in"],
    ["with no bound on one side, as it is", 3.375 * inch, Infinity, "length", inches, "3 3/8 in"],
    ["a number without unit, as it is", 1.25, 0.5, "number", { unit: "1" }, "1.25"],
  ])("%s", (_title, nominal, doubt, dimension, unit, text) => {
    expect(showSupported(between(nominal - doubt, nominal + doubt, nominal), dimension, unit)).toBe(text);
  });
});

describe("Both systems on request", () => {
  it.each<[number, Dimension, ShownUnit, string]>([
    [23.25 * inch, "length", inches, "23 1/4 in (591 mm)"],
    [0.48, "length", { unit: "mm" }, "480 mm (18 7/8 in)"],
    [69 * inch, "length", { unit: "ft", compound: true }, "5 ft 9 in (1.753 m)"],
    [83, "mass", { unit: "kg" }, "83 kg (183 lb)"],
    [160, "force", { unit: "N" }, "160 N (36 lbf)"],
    [20 * 1.3558179483314, "moment", { unit: "lbf-ft" }, "20 lbf-ft (27.1 N-m)"],
    [102.7318837e6, "pressure", { unit: "MPa" }, "102.7 MPa (14900 psi)"],
    [0.08, "ratio", { unit: "%" }, "8 %"],
    [Math.PI / 6, "angle", { unit: "deg" }, "30 deg"],
  ])("%d of a %s in %j", (value, dimension, unit, text) =>
    expect(showBoth(exactly(value), dimension, unit)).toBe(text),
  );

  it("a range has both its ends in both", () => {
    expect(showBoth(between(23 * inch, 24 * inch), "length", inches)).toBe("23 to 24 in (584 to 610 mm)");
    expect(showBoth(between(23 * inch, Infinity), "length", inches)).toBe("at least 23 in (at least 584 mm)");
  });
});

describe("Ranges, doubt and rises", () => {
  it.each<[string, string]>([
    [show(between(22 * inch, 24 * inch), "length", inches), "22 to 24 in"],
    [show(between(-Infinity, 24 * inch), "length", inches), "at most 24 in"],
    [show(exactly(24 * inch), "length", inches), "24 in"],
    [showWithDoubt(between(22.75 * inch, 23.25 * inch), "length", inches), "23 in (22 3/4 to 23 1/4 in)"],
    [showSigned(3.5 * inch, "length", inches), "up 3 1/2 in"],
    [showSigned(-2 * inch, "length", inches), "down 2 in"],
    [showSigned(inch / 32, "length", inches), "level"],
    [showValue(-0.2 * inch, "length", inches), "-1/4 in"],
    [showValue(-0.01 * inch, "length", inches), "0 in"],
    [showValue(11.99 * inch, "length", { unit: "ft", compound: true }), "1 ft"],
  ])("%s", (shown, text) => expect(shown).toBe(text));
});

describe("The unit table", () => {
  it("knows no unit by a symbol that is not in it, such as a word that every object has", () => {
    for (const word of ["constructor", "__proto__", "furlong"]) expect(() => unitOf(word)).toThrow(word);
  });
});
