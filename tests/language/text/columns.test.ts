import { describe, expect, it } from "vitest";
import { formatText } from "../../../language/text/format.js";
import { ruleShape } from "../../../rules/engine/read.js";

describe("What a writer set below one another stays so", () => {
  it.each<[string, string, string]>([
    [
      "values behind keys, one blank behind the longest key",
      "bed {\ntop        19½ in\ntop-loaded 18 in\nedge       firm\n}",
      "bed {\n  top        19 1/2 in\n  top-loaded 18 in\n  edge       firm\n}\n",
    ],
    [
      "as far behind the longest as the writer chose",
      "bed {\n  top          19 in\n  top-loaded   18 in\n}",
      "bed {\n  top          19 in\n  top-loaded   18 in\n}\n",
    ],
    [
      "blanks that set nothing below anything are one blank",
      "bed {\n  top    19 in\n  edge     firm\n  size 39 in  by 80 in\n}",
      "bed {\n  top 19 in\n  edge firm\n  size 39 in by 80 in\n}\n",
    ],
    [
      "blocks on one line",
      "furniture chest     { height 30 in;   movable no }\nfurniture nightstand { height 24 in;  movable yes }".replace(
        "chest     ",
        "chest      ",
      ),
      "furniture chest      { height 30 in; movable no }\nfurniture nightstand { height 24 in; movable yes }\n",
    ],
    [
      "a blank line or another margin ends the rows",
      "bed {\n  top        19 in\n\n  top-loaded 18 in\n}",
      "bed {\n  top 19 in\n\n  top-loaded 18 in\n}\n",
    ],
    [
      "steps are sentences and no rows",
      "transfer t {\n  steps {\n    lock        brakes\n    approach    bed\n  }\n}",
      "transfer t {\n  steps {\n    lock brakes\n    approach bed\n  }\n}\n",
    ],
  ])("%s", (_title, typed, written) => {
    expect(formatText(typed)).toBe(written);
    expect(formatText(written)).toBe(written);
  });

  it("the bands of a rule, over a row that has fewer columns", () => {
    const bands = [
      "rule a/b {",
      "  bands {",
      '    less than 1/2 in     advice   "Low."',
      "    1/2 in to 1 1/2 in   holds",
      '    more than 1 1/2 in   caution  "High."',
      "  }",
      "}",
      "",
    ].join("\n");
    expect(formatText(bands, ruleShape.topOnly)).toBe(bands);
    const typed = bands
      .replaceAll("1 1/2", "1½")
      .replace("1/2 in     adv", "1/2 in    adv")
      .replace("in to 1½ in  ", "in to 1½ in ");
    expect(formatText(typed.replace("1½ in   caution", "1½ in    caution"), ruleShape.topOnly)).not.toContain(
      "½",
    );
  });
});

describe("A sign stands directly in front of the value to which it belongs", () => {
  it.each([
    ["a fact, - 6 in: holds", "a fact, -6 in: holds"],
    ["a fact, -6 in: holds", "a fact, -6 in: holds"],
    ["- 1/8 in: advice", "-1/8 in: advice"],
    ["a fact,- 4, 3: holds", "a fact, -4, 3: holds"],
    ["judge larger of (- 1 in, a.b - 2 in)", "judge larger of (-1 in, a.b - 2 in)"],
    ["judge a.b -2 in", "judge a.b -2 in"],
    ["judge a.b - 2 in", "judge a.b - 2 in"],
    ["judge (a.b) -2 in", "judge (a.b) - 2 in"],
    ["less than -far   holds", "less than -far holds"],
  ])("%s", (typed, written) => {
    expect(formatText(`rule a/b {\n${typed}\n}`, ruleShape.topOnly)).toBe(`rule a/b {\n  ${written}\n}\n`);
    expect(formatText(`rule a/b {\n  ${written}\n}\n`, ruleShape.topOnly)).toBe(
      `rule a/b {\n  ${written}\n}\n`,
    );
  });
});

describe("Comments behind neighbouring lines stand in one column", () => {
  it.each<[string, string, string]>([
    [
      "typed just behind",
      "bed {\ntop 23 in # empty\ntop-loaded 21 in # sat on\n}",
      "bed {\n  top 23 in        # empty\n  top-loaded 21 in # sat on\n}\n",
    ],
    [
      "set in a column by hand",
      "bed {\n  top 23 in           # empty\n  top-loaded 21 in    # sat on\n}",
      "bed {\n  top 23 in           # empty\n  top-loaded 21 in    # sat on\n}\n",
    ],
    [
      "one alone keeps its place",
      "bed {\n  top 23 in      # empty\n}",
      "bed {\n  top 23 in      # empty\n}\n",
    ],
    [
      "a line without one ends the column",
      "bed {\n  top 23 in # empty\n  edge firm\n  top-loaded 21 in # sat on\n}",
      "bed {\n  top 23 in # empty\n  edge firm\n  top-loaded 21 in # sat on\n}\n",
    ],
    [
      "a long line does not push its neighbours out of sight",
      `client {\n  mass 182 lb # weighed\n  note "${"a long note ".repeat(6)}" # said\n}`,
      `client {\n  mass 182 lb # weighed\n  note "${"a long note ".repeat(6)}" # said\n}\n`,
    ],
    [
      "a comment on a line of its own keeps to the margin",
      "bed {\n# about the bed\ntop 23 in # empty\n}",
      "bed {\n  # about the bed\n  top 23 in # empty\n}\n",
    ],
    [
      "behind a line that cannot be read",
      "bed {\n  top 23€ in    # what?\n}",
      "bed {\n  top 23€ in    # what?\n}\n",
    ],
  ])("%s", (_title, typed, written) => {
    expect(formatText(typed)).toBe(written);
    expect(formatText(written)).toBe(written);
  });
});

describe("What may not be lost in a line", () => {
  it.each([
    ["a comment with a line separator that nobody sees", "top 23 in # a\u2028b\n"],
    ["a time of day", "08:30\n"],
    ["a minus sign of its value", "axle -1 in\n"],
  ])("%s", (_title, text) => expect(formatText(text)).toBe(text));
});
