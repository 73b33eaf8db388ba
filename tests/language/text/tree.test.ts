import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { householdOf, emptyLibrary, readSetup } from "../../../language/model/household.js";
import { formatText } from "../../../language/text/format.js";
import { parseLine, parseLines } from "../../../language/text/line.js";

const text = `setup "x"
bed {
  top 23 in
  edge firm
}
client {
  mass 182 lb
}
`;

describe("What did not change stays the same object", () => {
  it("keeps every other entry when one is edited", () => {
    const before = readSetup(text);
    const after = readSetup(text.replace("182", "183"), before);
    expect(after.entries[1]!.entry).toBe(before.entries[1]!.entry);
    expect(after.entries[2]!.entry).not.toBe(before.entries[2]!.entry);
  });
  it("keeps an entry that only moved", () => {
    const before = readSetup(text);
    const after = readSetup(`# a comment\n\n${text}`, before);
    expect(after.entries[1]).toEqual({ entry: before.entries[1]!.entry, line: before.entries[1]!.line + 2 });
  });
  it("keeps the values of the lines that did not change in a block that did", () => {
    const value = (t: ReturnType<typeof readSetup>) =>
      householdOf("a", t, emptyLibrary).things.get("bed")!.values["top"];
    const before = readSetup(text);
    const after = readSetup(text.replace("edge firm", "edge soft"), before);
    expect(value(after)).toBe(value(before));
  });
  it("gives the same household read anew as read after an edit", () => {
    const pieces = fc.constantFrom(
      "bed {",
      "}",
      "top 23 in",
      "client {",
      "mass 182",
      "room r {",
      'note "a',
      "",
      "# c",
      "steps {",
      "slide; }",
    );
    fc.assert(
      fc.property(fc.array(pieces, { maxLength: 30 }), fc.array(pieces, { maxLength: 30 }), (a, b) => {
        const anew = householdOf("a", readSetup(b.join("\n")), emptyLibrary);
        const kept = householdOf("a", readSetup(b.join("\n"), readSetup(a.join("\n"))), emptyLibrary);
        expect(kept.problems).toEqual(anew.problems);
      }),
      { numRuns: 300 },
    );
  });
});

describe("No text whatever crashes the reader", () => {
  it("reads any characters", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 200 }), (s) => {
        householdOf("a", readSetup(s), emptyLibrary);
      }),
      { numRuns: 500 },
    );
  });
  it("reads blocks nested ten thousand deep", () => {
    const home = householdOf("a", readSetup("bed {".repeat(10_000)), emptyLibrary);
    expect(home.problems.some((p) => p.rule === "form/nested-too-deep")).toBe(true);
  });
  it("reads every cut of a setup", () => {
    for (let i = 0; i < text.length; i++) householdOf("a", readSetup(text.slice(0, i)), emptyLibrary);
  });
});

describe("The formatter", () => {
  it.each([
    ["bed  bed{top 23in;edge firm}", "bed bed { top 23 in; edge firm }\n"],
    ["bed {\ntop 19½ in\n}", "bed {\n  top 19 1/2 in\n}\n"],
    ["bed {\n  size 39 x 80 in   # a\n}", "bed {\n  size 39 by 80 in  # a\n}\n"],
    [
      "transfer t {\n steps {\n  lock the brakes\n  remove left leg rest\n }\n}",
      "transfer t {\n  steps {\n    lock brakes\n    remove legrest left\n  }\n}\n",
    ],
    ['bed { top 23 in +/- 1/4" }', "bed { top 23 in ± 1/4 in }\n"],
    ["bed { Top 23 }", "bed { top 23 }\n"],
    ["bed { top 61/2 in }", "bed { top 61/2 in }\n"],
    ["wheelchair c { drive-wheel { axle -1 in } }", "wheelchair c { drive-wheel { axle -1 in } }\n"],
    ["", ""],
  ])("writes %s in one spelling", (before, after) => expect(formatText(before)).toBe(after));

  const lines = fc.constantFrom(
    "bed {",
    "}",
    "top 23in",
    "edge  firm",
    "client { mass 182 }",
    "# note",
    "",
    "room r {",
    "walk 12 ft 1 in east,10 ft north",
    "steps { slide;lock brakes }",
    'note "a \\" b"',
    "top 61/2 in",
    "size 39 x 80 in # c",
    "}}",
    "{",
    "axle -1 in",
    "a ; ; b",
  );
  it("gives the same text the second time", () => {
    fc.assert(
      fc.property(
        fc.array(lines, { maxLength: 20 }),
        (l) => void expect(formatText(formatText(l.join("\n")))).toBe(formatText(l.join("\n"))),
      ),
      { numRuns: 500 },
    );
  });
  it("never changes what a text means", () => {
    const meaning = (t: string) => {
      const h = householdOf("a", readSetup(t), emptyLibrary);
      return JSON.stringify({
        things: h.all.map((x) => [
          x.kind,
          x.name,
          x.values,
          Object.values(x.inner).map((i) => i!.map((y) => [y.kind, y.values])),
        ]),
        problems: h.problems.map((p) => p.rule),
      });
    };
    fc.assert(
      fc.property(
        fc.array(lines, { maxLength: 20 }),
        (l) => void expect(meaning(formatText(l.join("\n")))).toBe(meaning(l.join("\n"))),
      ),
      { numRuns: 500 },
    );
  });
});

it("reads a line among others as it reads it alone", () => {
  // What stands at the end or at the start of a line could run into its neighbour, or be told by what stands beside it.
  const pieces = fc.constantFrom(
    "top 23",
    " in",
    "5 ft",
    "9 in",
    "1",
    "/2",
    "54",
    "x",
    "75",
    "+",
    "/-",
    "±",
    '"',
    "“",
    "”",
    "\\",
    "#",
    "'",
    "{",
    "}",
    ";",
    "§",
    "\u200b",
    "2026-",
    "03-02",
    "a.",
    "b",
    " ",
  );
  const line = fc.array(pieces, { maxLength: 6 }).map((p) => p.join(""));
  fc.assert(
    fc.property(fc.array(line, { minLength: 1, maxLength: 6 }), (texts) => {
      expect(parseLines(texts)).toEqual(texts.map(parseLine));
    }),
    { numRuns: 500 },
  );
});
