import { describe, expect, it } from "vitest";
import type { Library } from "../../../language/model/household.js";
import { readSetup } from "../../../language/model/household.js";
import type { Quantity } from "../../../language/quantity/types.js";
import { findings, fixed, household } from "../form.js";

const inch = 0.0254;
const bedTop = (text: string): Quantity =>
  household(`bed { top ${text} }`).things.get("bed")!.values["top"] as Quantity;

describe("What people type is read", () => {
  it.each([
    ["19 1/2 in", 19.5 * inch],
    ["19-1/2 in", 19.5 * inch],
    ["19½ in", 19.5 * inch],
    ['19.5"', 19.5 * inch],
    ["19 1/2 inches", 19.5 * inch],
    ["1 ft 7 1/2 in", 19.5 * inch],
    [`1'7"`, 19 * inch],
    ["49.5 cm", 0.495],
    ["495 mm", 0.495],
    ["0.495 m", 0.495],
    ["19\u00a01/2 in", 19.5 * inch],
  ])("reads %s", (text, si) => expect(bedTop(text).nominal).toBeCloseTo(si, 12));

  it("reads a tolerance on both sides, on one side, and a range of doubt", () => {
    for (const sign of ["±", "+/-"])
      expect(bedTop(`23 in ${sign} 1/4 in`)).toMatchObject({
        low: expect.closeTo(22.75 * inch, 12),
        high: expect.closeTo(23.25 * inch, 12),
        toleranceGiven: true,
      });
    expect(bedTop("23 in + 1/2 in - 0 in")).toMatchObject({
      low: expect.closeTo(23 * inch, 12),
      high: expect.closeTo(23.5 * inch, 12),
    });
    const about = bedTop("about 22 to 24 in");
    expect(about.shape).toBe("about");
    expect([about.low, about.high].map((x) => x / inch)).toEqual([
      expect.closeTo(22, 9),
      expect.closeTo(24, 9),
    ]);
  });

  it("reads how a value is known, by whom and when", () => {
    expect(bedTop('23 in judged by "therapist" on 2026-03-02')).toMatchObject({
      known: "judged",
      by: "therapist",
      on: "2026-03-02",
    });
  });

  it("reads the heights between which a bed adjusts", () => {
    const home = findings("bed { adjusts 15 in to 26 in }", {});
    const adjusts = home.things.get("bed")!.values["adjusts"] as Quantity;
    expect(adjusts).toMatchObject({
      shape: "adjusts",
      low: expect.closeTo(15 * inch, 12),
      high: expect.closeTo(26 * inch, 12),
    });
    expect(findings("bed { adjusts no }", {}).things.get("bed")!.values["adjusts"]).toBe("no");
  });

  it("keeps the newer of two values that carry dates", () => {
    const home = findings(`bed {\n top 23 in on 2026-03-01\n top 22 in on 2026-03-02\n}`, {});
    expect((home.things.get("bed")!.values["top"] as Quantity).nominal).toBeCloseTo(22 * inch, 12);
  });
});

describe("What a person at the bedside gets wrong is said at its place, and nothing is guessed", () => {
  it.each([
    ["a number without a unit", "client { mass ⟦182⟧a }", "form/no-unit"],
    ["a pound sign", "client { mass 182⟦#⟧a }", "form/pounds-sign"],
    ["an improper fraction", "bed { top ⟦61/2 in⟧a }", "form/improper-fraction"],
    ["twelve inches or more after feet", "bed { top ⟦1 ft 42 in⟧a }", "form/inches-over-a-foot"],
    ["a decimal comma", "bed { top ⟦1,2⟧a m }", "form/decimal-comma"],
    ["a range that says nothing of why", "bed { top ⟦22 in to 24 in⟧a }", "form/range-without-reason"],
    ["a date that can be read twice", "visited ⟦3/4/2026⟧a", "form/date-written-otherwise"],
    ["a day that does not exist", "visited ⟦2026-02-30⟧a", "form/date-impossible"],
    ["the wrong kind of quantity", "bed { top ⟦23 lb⟧a }", "form/wrong-dimension"],
    ["a key misspelt", "bed { ⟦topp⟧a 23 in }", "form/unknown-word"],
    ["a choice misspelt", "bed { edge ⟦firn⟧a }", "form/unknown-choice"],
    ["a kind misspelt", "⟦bedd⟧a bed { top 23 in }", "form/unknown-word"],
    ["a pull stated by a person", "helper daughter { safe-pull 30 lbf ⟦stated⟧a }", "form/stated-by-nobody"],
    ["a pull judged by nobody", "helper daughter { safe-pull 30 lbf ⟦judged⟧a }", "form/who-judged"],
    ["a bed wider than long", "bed { size ⟦80 in by 39 in⟧a }", "form/longer-across"],
    ["something left over", "bed { edge firm ⟦soft⟧a }", "form/left-over"],
    ["a text that is not closed", 'client { note ⟦"tired in the evening }⟧a', "form/text-not-closed"],
    ["a step misspelt", "transfer t {\n steps {\n  ⟦lok brakes⟧a\n }\n}", "form/unknown-step"],
    ["a name that is a unit", "board ⟦in⟧a { length 30 in }", "form/name-not-allowed"],
    ["a stray brace", "⟦}⟧a", "form/brace-without-block"],
    ["an invisible character", "bed { top 23⟦\u200b⟧a in }", "form/invisible-character"],
    ["a value less than nothing", "bed { top ⟦-23 in⟧a }", "form/negative"],
    ["a person's name", 'client { note ⟦"see Mrs Miller"⟧a }', "form/personal-data"],
    ["a bed at the height of a table", "bed { top ⟦60 in⟧a }", "form/hardly-plausible"],
  ])("%s", (_title, text, rule) => {
    const closed = rule === "form/text-not-closed" ? `${text}\n}` : text;
    findings(closed, { a: rule });
  });

  it("spoils only the line that is wrong", () => {
    const home = findings(`bed {\n  top ⟦23⟧a\n  edge firm\n}\nclient {\n  mass 182 lb\n}`, {
      a: "form/no-unit",
    });
    expect(home.things.get("bed")!.values).toMatchObject({ edge: "firm" });
    expect(home.things.get("bed")!.values["top"]).toBeUndefined();
    expect(home.client!.values["mass"]).toBeDefined();
  });

  it("takes neither of two values that cannot both be right", () => {
    const home = findings(`bed {\n  top 23 in\n  ⟦top 22 in⟧a\n}`, { a: "form/given-twice" });
    expect(home.things.get("bed")!.values["top"]).toEqual({ type: "unknown" });
  });

  it("closes every open block at the next kind that stands only at top level, with one finding at the open block", () => {
    const home = findings(`room r {\n  ⟦door hall⟧a {\n    clear 31 in\nclient {\n  mass 182 lb\n}`, {
      a: "form/block-not-closed",
    });
    expect(home.client!.values["mass"]).toBeDefined();
  });

  it("names both lines where bed side, facing and steps contradict each other", () => {
    const text = `wheelchair c { armrests swing-away }\nbed bed { edge firm }\ntransfer t {\n  from c to bed\n  bed-side left\n  facing head\n  steps {\n    ⟦swing-away armrest right⟧a\n  }\n}`;
    const home = findings(text, { a: "form/side-contradicts" });
    expect(home.problems.find((p) => p.rule === "form/side-contradicts")!.message).toContain("line 6");
  });

  it("reports a name that nobody declared, and offers the near one", () => {
    const home = findings(`wheelchair chair-18 { }\nbed bed { }\ntransfer t { from ⟦chair-81⟧a to bed }`, {
      a: "form/unknown-name",
    });
    expect(home.problems.find((p) => p.rule === "form/unknown-name")!.fixes![0]!.text).toBe("chair-18");
  });

  it.each(["constructor", "__proto__", "toString", "hasownproperty"])(
    "takes %s for a word like any other",
    (word) => {
      expect(
        household(`${word} { ${word} 3 in }\nbed ${word} { ${word} 2 }\nbed { ${word} 3 in }`).problems
          .length,
      ).toBeGreaterThan(1);
    },
  );
});

describe("A fix does what its title says", () => {
  it.each([
    ["client { mass 182 }", "form/no-unit", /lb/, "client { mass 182 lb }"],
    ["client { mass 182 }", "form/no-unit", /182 kg/, "client { mass 182 kg }"],
    ["client { mass 182# }", "form/pounds-sign", /lb/, "client { mass 182 lb }"],
    ["bed { top 61/2 in }", "form/improper-fraction", /6 1\/2 in/, "bed { top 6 1/2 in }"],
    ["bed { size 80 in by 39 in }", "form/longer-across", /Swap/, "bed { size 39 in by 80 in }"],
    ["bed { edge firn }", "form/unknown-choice", /firm/, "bed { edge firm }"],
    ["visited 3/4/2026", "form/date-written-otherwise", /3 April 2026/, "visited 2026-04-03"],
    ["bed { top 22 to 24 in }", "form/range-without-reason", /about/, "bed { top about 22 in to 24 in }"],
    ["bed { top 1,2 m }", "form/decimal-comma", /1\.2/, "bed { top 1.2 m }"],
    [
      "helper d { safe-pull 30 lbf stated }",
      "form/stated-by-nobody",
      /judged/,
      'helper d { safe-pull 30 lbf judged by "" }',
    ],
  ])("%s", (before, rule, title, after) => {
    expect(fixed(before, rule, title)).toBe(
      title.source === "lb" && rule === "form/no-unit" ? after : after.replaceAll("\u00a0", " "),
    );
  });
});

describe("Things of other files", () => {
  const library = (files: { [path: string]: string }): Library => ({
    open: (path) =>
      path in files
        ? { path, tree: readSetup(files[path]!) }
        : { problem: path.startsWith("../..") ? "outside" : "not-found" },
  });
  const pool = { "pool.span": "board board-30 { length 30 in; width 8 in }" };

  it("takes what is declared there", () => {
    const home = findings(`from "pool.span" use board-30`, {}, library(pool));
    expect(home.things.get("board-30")!.kind).toBe("board");
    expect(home.locate(home.things.get("board-30")!.entry)).toEqual({ path: "pool.span", line: 0 });
  });
  it.each([
    [`⟦from "pol.span" use board-30⟧a`, "form/file-not-found"],
    [`⟦from "../../etc" use board-30⟧a`, "form/file-outside"],
    [`⟦from "pool.span" use board-31⟧a`, "form/nothing-called"],
    [`board board-30 { length 36 in; width 8 in }\n⟦from "pool.span" use board-30⟧a`, "form/name-used-twice"],
  ])("%s", (text, rule) => {
    findings(text, { a: rule }, library(pool));
  });
  it("refuses a circle", () => {
    findings(
      `⟦from "pool.span" use x⟧a`,
      { a: "form/file-circular" },
      library({ "pool.span": 'from "home.span" use y', "home.span": 'from "pool.span" use x' }),
    );
  });
});
