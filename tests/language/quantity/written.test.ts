/** Every line of "what people type is read, the formatter writes one spelling" and of "nothing is guessed". */
import { describe, expect, it } from "vitest";
import type { Quantity } from "../../../language/quantity/types.js";
import { formatText } from "../../../language/text/format.js";
import { findings, fixed, household, unmark } from "../form.js";

const inch = 0.0254;
const valueOf = (kind: string, key: string, text: string): Quantity =>
  household(`${kind} ${kind === "client" ? "" : "x "}{ ${key} ${text} }`).all[0]!.values[key] as Quantity;

describe("What people type is read, and the formatter writes one spelling", () => {
  it.each([
    ["bed { top 19-1/2 in }", "bed { top 19 1/2 in }"],
    ["bed { top 19½ in }", "bed { top 19 1/2 in }"],
    ["bed { top 19⅜ in }", "bed { top 19 3/8 in }"],
    ["bed { top 19 1⁄2 in }", "bed { top 19 1/2 in }"],
    ['bed { top 30" }', "bed { top 30 in }"],
    ["bed { top 30″ }", "bed { top 30 in }"],
    ["bed { top 30” }", "bed { top 30 in }"],
    [`bed { top 1'9" }`, "bed { top 1 ft 9 in }"],
    [`bed { top 1′ 9½″ }`, "bed { top 1 ft 9 1/2 in }"],
    ["bed { top 1’9” }", "bed { top 1 ft 9 in }"],
    ["bed { top 30 inches }", "bed { top 30 in }"],
    ["bed { top 2 feet 3 inches }", "bed { top 2 ft 3 in }"],
    ["bed { top 1m }", "bed { top 1 m }"],
    ["bed { top 1 m 5 cm }", "bed { top 1 m 5 cm }"],
    ["bed { top .5 m }", "bed { top 0.5 m }"],
    ["client { mass 182 lbs }", "client { mass 182 lb }"],
    ["client { mass 182 Pounds }", "client { mass 182 lb }"],
    ["client { mass 83 kilos }", "client { mass 83 kg }"],
    ["client { mass 13 st 4 lb }", "client { mass 13 st 4 lb }"],
    ["bed { size 54 x 75 in }", "bed { size 54 by 75 in }"],
    ["bed { size 54x75 in }", "bed { size 54 by 75 in }"],
    ["bed { size 54 X 75 in }", "bed { size 54 by 75 in }"],
    ["bed { size 54 × 75 in }", "bed { size 54 by 75 in }"],
    [`bed { size 39"x80" }`, "bed { size 39 in by 80 in }"],
    ["bed { top 23 in +/- 1/4 in }", "bed { top 23 in ± 1/4 in }"],
    ["bed { top 23 in + / - 1/4 in }", "bed { top 23 in ± 1/4 in }"],
    ["bed { top 23 in ±1/4 in }", "bed { top 23 in ± 1/4 in }"],
    ["client { note “tired at night” }", 'client { note "tired at night" }'],
    ["bed { top\u00a019\u20091/2\u202fin }", "bed { top 19 1/2 in }"],
    ["BED { Top 23 IN; Edge FIRM }", "bed { top 23 in; edge firm }"],
    ["bed { top loaded 21 1/2 in }", "bed { top-loaded 21 1/2 in }"],
    ["bed{top 23in;edge firm}", "bed { top 23 in; edge firm }"],
    ["client { code C-07 }", "client { code C-07 }"],
  ])("%s", (typed, written) => {
    expect(findings(typed, {}).problems.filter((p) => p.level === "caution")).toEqual([]);
    expect(formatText(typed)).toBe(`${written}\n`);
    const says = (t: string): unknown => household(t).all.map((x) => x.values);
    expect(says(written)).toEqual(says(typed));
  });

  it("a side before its leg rest, in steps", () => {
    expect(formatText("transfer t { steps { remove left legrest } }")).toBe(
      "transfer t { steps { remove legrest left } }\n",
    );
  });
});

describe("Nothing is guessed: the likely readings are offered in words", () => {
  it.each<[string, string, string, readonly string[]]>([
    ["a bare number", "client { mass ⟦182⟧a }", "form/no-unit", ["182 lb (82.6 kg)", "182 kg (401.2 lb)"]],
    [
      "an improper fraction",
      "bed { top ⟦61/2 in⟧a }",
      "form/improper-fraction",
      ["6 1/2 in", "61 divided by 2: 30 1/2 in"],
    ],
    [
      "the same with an inch mark",
      'bed { top ⟦61/2"⟧a }',
      "form/improper-fraction",
      ["6 1/2 in", "61 divided by 2: 30 1/2 in"],
    ],
    [
      "twelve inches or more after feet",
      "bed { top ⟦5 ft 42 in⟧a }",
      "form/inches-over-a-foot",
      ["Two of them: 5 ft, 42 in", "5 ft alone", "42 in alone"],
    ],
    [
      "sixteen ounces or more after pounds",
      "client { mass ⟦9 lb 20 oz⟧a }",
      "form/inches-over-a-foot",
      ["Two of them: 9 lb, 20 oz", "9 lb alone", "20 oz alone"],
    ],
    [
      "inches without a unit behind feet",
      "bed { top ⟦5'9⟧a }",
      "form/inches-without-unit",
      ["5 ft 9 in", "5 ft alone, without the 9"],
    ],
    [
      "the same in words",
      "bed { top ⟦5 ft 9 1/2⟧a }",
      "form/inches-without-unit",
      ["5 ft 9 1/2 in", "5 ft alone, without the 9 1/2"],
    ],
    [
      "a decimal comma",
      "bed { top ⟦1,2⟧a m }",
      "form/decimal-comma",
      ["The number 1.2", "Two numbers, 1 and 2"],
    ],
    [
      "a comma that may part the thousands",
      "bed { top ⟦1,200⟧a mm }",
      "form/decimal-comma",
      ["The number 1.200", "The number 1200, its thousands parted", "Two numbers, 1 and 200"],
    ],
    [
      "a range without a reason",
      "bed { top ⟦22 in to 24 in⟧a }",
      "form/range-without-reason",
      ["It is not known better: about 22 in to 24 in", "It can be adjusted: adjusts 22 in to 24 in"],
    ],
    [
      "a date that can be read as two days",
      "visited ⟦3/4/2026⟧a",
      "form/date-written-otherwise",
      ["4 March 2026", "3 April 2026"],
    ],
    [
      "a date that can be read as one day only",
      "visited ⟦13.4.2026⟧a",
      "form/date-written-otherwise",
      ["13 April 2026"],
    ],
    ["a date that no calendar has", "visited ⟦31/31/2026⟧a", "form/date-written-otherwise", []],
    ["a pound sign", "client { mass 182 1/2⟦#⟧a }", "form/pounds-sign", ["182 1/2 lb"]],
    ["a fraction of nothing", "bed { top ⟦1/0 in⟧a }", "form/fraction-of-nothing", []],
    ["more digits than any tape has", "bed { top ⟦1234567890123 in⟧a }", "form/number-too-large", []],
    ["characters that mean nothing, once for a run of them", "bed { top 2⟦€€⟧a3 in }", "form/character", []],
    ["an equals sign", "bed { top ⟦=⟧a 23 in }", "form/character", ["Leave it out"]],
  ])("%s", (_title, marked, rule, titles) => {
    const home = findings(marked, { a: rule });
    const problem = home.problems.find((p) => p.rule === rule)!;
    expect((problem.fixes ?? []).map((f) => f.title)).toEqual(titles);
    // Nothing was understood where the mistake stands.
    for (const thing of home.all) expect(thing.values["top"] ?? thing.values["mass"]).toBeUndefined();
    // And every reading that is offered is read once it is taken, but for a text that has two values in it.
    const { text } = unmark(marked);
    for (const title of titles.filter((t) => !t.startsWith("Two ")))
      expect(
        household(
          fixed(text, rule, new RegExp(`^${title.replace(/[.*+?^${}()|[\]\\]/g, "\\$&")}$`)),
        ).problems.filter((p) => p.level === "caution"),
        title,
      ).toEqual([]);
  });

  it.each([
    ['client { note "tired }', 'client { note "tired }"'],
    ["client { note “tired }", "client { note “tired }”"],
    ['client { note "tired \\', 'client { note "tired \\\\"'],
  ])("a text that is not closed is closed: %s", (typed, after) => {
    expect(fixed(`${typed}\n}`, "form/text-not-closed", /Close/)).toBe(`${after}\n}`);
    expect(household(`${after}\n}`).problems.some((p) => p.rule === "form/text-not-closed")).toBe(false);
  });

  it("a mistake spoils its statement, and its neighbours on the line are read", () => {
    expect(household("bed { top 2€3 in; edge firm }").all[0]!.values).toEqual({ edge: "firm" });
  });
});

describe("Every quantity can carry its doubt, how it is known, by whom and when", () => {
  it.each<[string, number, number, number]>([
    ["21 in ± 1/4 in", 20.75, 21, 21.25],
    ["21 in ± 1/4", 20.75, 21, 21.25],
    ["21 in ± 5 mm", 21 - 5 / 25.4, 21, 21 + 5 / 25.4],
    ["21 in + 1/2 in - 0 in", 21, 21, 21.5],
    ["21 in - 1/2 in", 20.5, 21, 21],
    ["21 in + 1/4 in - 1/2 in", 20.5, 21, 21.25],
    ["21 in - 1 cm + 1/4 in", 21 - 10 / 25.4, 21, 21.25],
    ["about 20 in to 22 in", 20, 21, 22],
    ["about 20 to 22 in", 20, 21, 22],
    ["about 50 cm to 22 in", 50 / 2.54, (50 / 2.54 + 22) / 2, 22],
  ])("%s", (text, low, nominal, high) => {
    const q = valueOf("bed", "top", text);
    expect([q.low, q.nominal, q.high].map((x) => x / inch)).toEqual(
      [low, nominal, high].map((x) => expect.closeTo(x, 9)),
    );
    expect(q.toleranceGiven).toBe(true);
  });

  it.each([
    ["21 in", { known: "measured", knownGiven: false }],
    ["21 in measured", { known: "measured", knownGiven: true }],
    ["21 in stated", { known: "stated" }],
    ["21 in estimated on 2026-03-02", { known: "estimated", on: "2026-03-02" }],
    [
      '21 in ± 1/4 in judged by "therapist" on 2026-03-02',
      { known: "judged", by: "therapist", on: "2026-03-02" },
    ],
  ])("%s", (text, expected) => expect(valueOf("bed", "top", text)).toMatchObject(expected));

  it.each<[string, string, string, string]>([
    ["a mass where a length belongs", "bed", "top", "23 lb"],
    ["an angle where a length belongs", "bed", "top", "23 deg"],
    ["a force where a mass belongs", "client", "mass", "180 lbf"],
    ["a mass where a force belongs", "helper", "safe-pull", "30 lb"],
    ["a pressure where a length belongs", "bed", "top", "20 psi"],
    ["a moment where a force belongs", "helper", "safe-pull", "20 N-m"],
    ["a tolerance of another kind", "bed", "top", "23 in ± 1 lb"],
    ["a time where a length belongs", "bed", "top", "20 min"],
  ])("%s is said at its place", (_title, kind, key, text) => {
    const source = `${kind} ${kind === "client" ? "" : "x "}{ ${key} ${text} }`;
    const found = household(source).problems.filter((p) => p.rule === "form/wrong-dimension");
    expect(found).toHaveLength(1);
    const wrong = text.replace(/^23 in ± /, "");
    expect(source.slice(found[0]!.start, found[0]!.end)).toBe(wrong);
    expect(found[0]!.message).not.toContain("undefined");
  });
});
