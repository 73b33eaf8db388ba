/** Whether a change asks for less: by bands, and by how a condition follows a limit. */
import { describe, expect, it } from "vitest";
import { follows, looserBy, milderSomewhere } from "../../../rules/engine/overlay-compare.js";
import type { Expr } from "../../../rules/engine/expression.js";
import type { Rule } from "../../../rules/engine/types.js";
import { head, load, said } from "./sets.js";

/** The requirement of a rule, with a limit `l` of one inch. */
function rule(require: string, when = ""): Rule {
  const text = `${head}limit l 1 in { title "L"; common-practice "c" }
rule a/b { title "t"; for each transfer; ${when}
  require ${require} else caution; ${said}
  examples { EXAMPLES } }`;
  // The examples are not what is looked at here: the set is read, whether or not it may be used.
  return read(text.replace("EXAMPLES", "unknown: unknown"));
}
const read = (text: string): Rule => load(text).partial.rules[0]!;
const exprOf = (r: Rule): Expr => r.judged.expr;

describe("how a condition follows a limit", () => {
  it.each([
    ["board.length at least l", "down"],
    ["board.length more than l", "down"],
    ["board.length at most l", "up"],
    ["board.length less than l", "up"],
    ["l at least board.length", "up"],
    ["board.length at least 2 * l", "down"],
    ["board.length at least l + 3 in", "down"],
    ["board.length at least 30 in - l", "up"],
    ["board.length - l at most 3 in", "up"],
    ["board.length at least larger of (l, 3 in)", "down"],
    ["not board.length at least l", "up"],
    ["board.length at least l and chair.brakes is both", "down"],
    ["board.length at least l or board.width at most l", "unclear"],
    ["board.length at least l * board.width / 1 in", "unclear"],
    ["board.length at least 3 in", "not"],
  ])("%s: %s", (text, expected) => {
    expect(follows(exprOf(rule(text)), "l")).toBe(expected);
  });
});

describe("a limit that moves lets a rule ask for less", () => {
  it.each([
    ["board.length at least l", "", "down"],
    ["board.length at most l", "", "up"],
    ["chair.brakes is both", "when board.length at least l", "up"],
    ["chair.brakes is both", "when board.length at most l", "down"],
  ] as const)("%s %s: when it goes %s, and not the other way", (require, when, way) => {
    const r = rule(require, when);
    expect(looserBy(r, "l", way)).toBe(true);
    expect(looserBy(r, "l", way === "up" ? "down" : "up")).toBe(false);
  });
  it("either way where one cannot tell", () => {
    const r = rule("board.length at least l or board.width at most l");
    expect([looserBy(r, "l", "up"), looserBy(r, "l", "down")]).toEqual([true, true]);
  });
});

describe("bands beside bands", () => {
  const bands = (text: string) => {
    const r = read(
      `${head}rule a/b { title "t"; for each transfer; judge height.rise; bands { ${text} } ${said}\n examples { unknown: unknown } }`,
    );
    return r.judged.is === "bands" ? r.judged.bands : [];
  };
  const from = "less than 3 in holds; 3 in to 6 in caution; more than 6 in stop";
  it.each([
    ["the same", from, false],
    ["graver from 2 in", "less than 2 in holds; 2 in to 6 in caution; more than 6 in stop", false],
    ["milder to 4 in", "less than 4 in holds; 4 in to 6 in caution; more than 6 in stop", true],
    ["milder only past 6 in", "less than 1 in holds; 1 in to 7 in caution; more than 7 in stop", true],
    ["milder by a hair", "less than 3.001 in holds; 3.001 in to 6 in caution; more than 6 in stop", true],
    ["another grade in the middle", "less than 3 in holds; 3 in to 6 in advice; more than 6 in stop", true],
    [
      "cut in more parts",
      "less than 1 in holds; 1 in to 3 in holds; 3 in to 6 in caution; more than 6 in stop",
      false,
    ],
  ])("%s", (_, text, milder) => {
    expect(milderSomewhere(bands(from), bands(text))).toBe(milder);
  });
});
