import { beforeAll, describe, expect, test } from "vitest";
import type { IGrammar } from "vscode-textmate";
import { units } from "../../language/quantity/units.js";
import { grammar, scopesOf } from "./scopes.js";

const UNIT = "keyword.other.unit.span";
const NUMBER = "constant.numeric.span";
const KEY = "variable.other.property.span";
const KIND = "storage.type.block.span";
const NAME = "entity.name.type.span";
const STEP = "entity.name.function.step.span";

describe("the colours of a setup without a server", () => {
  let span: IGrammar;
  beforeAll(async () => {
    span = await grammar("source.span");
  });

  test("a block shows its kind, its name and its keys", () => {
    expect(scopesOf(span, "bed bed {\n  top 23 in measured\n  edge firm\n}")).toEqual([
      ["bed", KIND],
      ["bed", NAME],
      ["{", "punctuation.section.block.begin.span"],
      ["top", KEY],
      ["23", NUMBER],
      ["in", UNIT],
      ["measured", "storage.modifier.span"],
      ["edge", KEY],
      ["firm", "support.constant.property-value.span"],
      ["}", "punctuation.section.block.end.span"],
    ]);
  });

  test("several statements on one line each have a key", () => {
    const keys = scopesOf(span, 'helper daughter { trained yes; safe-pull 30 lbf judged by "therapist" }')
      .filter(([, scope]) => scope === KEY)
      .map(([piece]) => piece);
    expect(keys).toEqual(["trained", "safe-pull"]);
  });

  test.each([
    ["19 1/2 in", "19 1/2", "in"],
    ["19-1/2 in", "19-1/2", "in"],
    ["19½ in", "19½", "in"],
    ["21 ½ in", "21 ½", "in"],
    ['30"', "30", '"'],
    ["1.2 m", "1.2", "m"],
    ["8 %", "8", "%"],
    ["45°", "45", "°"],
    ["182 LB", "182", "LB"],
  ])("%s is a number with its unit", (written, number, unit) => {
    const found = scopesOf(span, `  top ${written}`);
    expect(found.slice(1)).toEqual([
      [number, NUMBER],
      [unit, UNIT],
    ]);
  });

  test("feet and inches with marks are two measures, and no text begins", () => {
    expect(scopesOf(span, `  stature 5'9"`).slice(1)).toEqual([
      ["5", NUMBER],
      ["'", UNIT],
      ["9", NUMBER],
      ['"', UNIT],
    ]);
  });

  test("every spelling of the unit table is coloured as a unit", () => {
    const missed = units
      .flatMap((unit) => unit.spellings)
      .filter((spelling) => {
        const found = scopesOf(span, `  top 7 ${spelling}`);
        return found.at(-1)?.[0] !== spelling || found.at(-1)?.[1] !== UNIT;
      });
    expect(missed).toEqual([]);
  });

  test("a word that joins two values is not their unit", () => {
    expect(scopesOf(span, "  top 17 to 23 in").slice(1)).toEqual([
      ["17", NUMBER],
      ["to", "keyword.other.joiner.span"],
      ["23", NUMBER],
      ["in", UNIT],
    ]);
  });

  test("a number that begins a name stays part of the name", () => {
    expect(scopesOf(span, "  with board-30, belt-2")).toEqual([
      ["with", KEY],
      ["board-30", "support.constant.property-value.span"],
      [",", "punctuation.separator.span"],
      ["belt-2", "support.constant.property-value.span"],
    ]);
  });

  test("the steps of a transfer stand out, and the block after them is a block again", () => {
    const found = scopesOf(
      span,
      'transfer into-bed {\n  steps {\n    lock brakes\n    remove legrest left; slide\n  }\n  if-not { stop "pain" }\n}',
    );
    expect(found.filter(([, scope]) => scope === STEP).map(([piece]) => piece)).toEqual([
      "lock",
      "remove",
      "slide",
    ]);
    expect(found.filter(([, scope]) => scope === KIND).map(([piece]) => piece)).toEqual([
      "transfer",
      "steps",
      "if-not",
    ]);
    expect(found).toContainEqual(["left", "constant.language.span"]);
  });

  test("free text keeps its quotes, its escapes and its braces to itself", () => {
    const found = scopesOf(span, '  stop "says \\"no\\" { # ; }"\n  top 3 in');
    expect(found.filter(([, scope]) => scope.startsWith("constant.character.escape"))).toHaveLength(2);
    expect(
      found.some(([, scope]) => scope.startsWith("comment") || scope.startsWith("punctuation.section")),
    ).toBe(false);
    expect(found).toContainEqual(["top", KEY]);
  });

  test("a text that is never closed ends with its line", () => {
    expect(scopesOf(span, '  stop "pain\n  top 3 in')).toContainEqual(["top", KEY]);
  });

  test("a remark runs to the end of its line, after a number as well", () => {
    expect(scopesOf(span, "  mass 182# pounds").slice(-2)).toEqual([
      ["#", "punctuation.definition.comment.span"],
      ["pounds", "comment.line.number-sign.span"],
    ]);
  });

  test("a day is a day, not a sum", () => {
    expect(scopesOf(span, "visited 2026-03-02")).toEqual([
      ["visited", KEY],
      ["2026-03-02", "constant.numeric.date.span"],
    ]);
  });
});

describe("the colours of a rule set without a server", () => {
  let rules: IGrammar;
  beforeAll(async () => {
    rules = await grammar("source.spanrules");
  });

  test("a rule shows its name, what it judges, its bands and their levels", () => {
    const found = scopesOf(
      rules,
      'rule height/rise {\n  judge height.rise\n  bands {\n    up 1 in to 2 in caution "Up {value}"\n    up more than 2 in stop\n  }\n}',
    );
    expect(found).toContainEqual(["height/rise", "entity.name.type.spanrules"]);
    expect(found).toContainEqual(["judge", "keyword.control.spanrules"]);
    expect(found).toContainEqual(["height.rise", "variable.other.member.spanrules"]);
    expect(found).toContainEqual(["caution", "constant.language.verdict.spanrules"]);
    expect(found).toContainEqual(["{value}", "constant.other.placeholder.spanrules"]);
    expect(found).toContainEqual(["more than", "keyword.operator.comparison.spanrules"]);
    expect(found).toContainEqual(["in", UNIT]);
  });

  test("a condition shows its comparison and its connecting words", () => {
    const found = scopesOf(
      rules,
      '  require board.length at least gap.corner + firm-bearing and not board.used is no else stop "x"',
    );
    expect(found.filter(([, scope]) => scope.startsWith("keyword.operator"))).toEqual([
      ["at least", "keyword.operator.comparison.spanrules"],
      ["+", "keyword.operator.arithmetic.spanrules"],
      ["and", "keyword.operator.logical.spanrules"],
      ["not", "keyword.operator.logical.spanrules"],
      ["is", "keyword.operator.comparison.spanrules"],
      ["else", "keyword.operator.logical.spanrules"],
    ]);
  });

  test.each(["published", "derived", "common-practice", "from-memory", "project-choice"])(
    "%s is marked as what a rule rests on",
    (basis) => {
      expect(scopesOf(rules, `  ${basis} "a reason"`)[0]).toEqual([
        basis,
        "storage.modifier.basis.spanrules",
      ]);
    },
  );

  test("an example shows the verdict that it expects", () => {
    const found = scopesOf(
      rules,
      '  examples {\n    up 1 in: holds\n    unknown: unknown\n  }\n  covers "adults"',
    );
    expect(found.filter(([, scope]) => scope.startsWith("constant.language.verdict"))).toHaveLength(3);
    expect(found).toContainEqual(["covers", KEY]);
  });
});
