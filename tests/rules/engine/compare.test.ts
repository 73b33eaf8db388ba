/** Two rule sets as texts, and two checks by their verdicts. */
import { describe, expect, it } from "vitest";
import { compareSets } from "../../../rules/engine/compare.js";
import { gravestAfter, transferChanges, verdictChanges } from "../../../rules/engine/compare-verdicts.js";
import type { RuleSet } from "../../../rules/engine/types.js";
import { Bench, good, head, home } from "./sets.js";

const text = `${head}
source study { kind study; title "S"; by "A"; read 2026-01-01; extent abstract }
limit near 3 in { title "Near"; published study at "p. 1" says "3 in" takes "3 in" }
rule height/rise { title "Climb"; for each transfer; judge height.rise
  bands { less than near holds; more than near caution "far" } because "b"; common-practice "c"
  examples { 3 in: holds; 3 1/8 in: caution } }
rule bed/rails { title "Rails up"; for each transfer; require surface.rails is none else caution "m"; because "b"; common-practice "c"
  examples { surface.rails none: holds; surface.rails both: fails } }
`;
const before = good(text);
const later = (change: (t: string) => string): RuleSet => good(change(text));
const changes = (after: RuleSet): string[] =>
  compareSets(before, after).flatMap((c) => [
    `${c.is} ${c.what} ${c.name}${c.reasons.map((r) => ` (${r})`).join("")}`,
    ...c.parts.map((p) => `  ${p.part}: ${p.before ?? "-"} > ${p.after ?? "-"}`),
  ]);

describe("as texts", () => {
  it("a set says the same as itself, wherever its lines stand", () => {
    expect(changes(before)).toEqual([]);
    expect(
      changes(
        later((t) => t.replace("rule height", "\n\n# moved\nrule height").replace("  bands", "    bands")),
      ),
    ).toEqual([]);
  });
  it("a limit with another value changes itself and the bands of its rules, each with the reason of the newer set", () => {
    const after = later(
      (t) =>
        `${t.replace("limit near 3 in", "limit near 2 in").replace("3 in: holds; 3 1/8", "2 in: holds; 2 1/8")}changes { near "Stricter: why" }\n`,
    );
    expect(changes(after)).toEqual([
      "changed rule height/rise",
      "  band at most 3 in: holds > -",
      "  band at least 3 in: caution: far > -",
      "  example: 3 in: holds: 3 in: holds > -",
      "  example: 3 1/8 in: caution: 3 1/8 in: caution > -",
      "  band at most 2 in: - > holds",
      "  band at least 2 in: - > caution: far",
      "  example: 2 in: holds: - > 2 in: holds",
      "  example: 2 1/8 in: caution: - > 2 1/8 in: caution",
      "changed limit near (Stricter: why)",
      "  value: 3 in > 2 in",
    ]);
  });
  it.each([
    ["a level", "else caution", "else stop", ["changed rule bed/rails", "  if not: caution: m > stop: m"]],
    ["a title", "Rails up", "Rail up", ["changed rule bed/rails", "  title: Rails up > Rail up"]],
    ["a source", "extent abstract", "extent whole", ["changed source study", "  extent: abstract > whole"]],
    [
      "a basis",
      'takes "3 in"',
      'takes "three"',
      [
        "changed limit near",
        "  rests on: study, p. 1: 3 in; taken: 3 in: study, p. 1: 3 in; taken: 3 in > -",
        "  rests on: study, p. 1: 3 in; taken: three: - > study, p. 1: 3 in; taken: three",
      ],
    ],
  ])("%s", (_, from, to, expected) => {
    expect(changes(later((t) => t.replace(from, to)))).toEqual(expected);
  });
  it("a rule that came and one that went", () => {
    const after = later((t) => t.replaceAll("bed/rails", "bed/rail-up"));
    expect(changes(after)).toEqual(["removed rule bed/rails", "added rule bed/rail-up"]);
  });
});

describe("by effect", () => {
  const tried = `${home}trial into-bed on 2026-03-01 { by "therapist"; outcome done }\n`;
  const check = (set: RuleSet, plan: string) => new Bench(set).check(plan);
  const stricter = later((t) => t.replace("else caution", "else stop"));

  it("a plan that gets the same verdicts shows nothing", () => {
    const [a, b] = [check(before, tried), check(stricter, tried)];
    expect(verdictChanges(a, b)).toEqual([]);
    expect(transferChanges(a, b)).toEqual([]);
  });
  it("a verdict that becomes graver is shown for each direction, with both levels", () => {
    const plan = tried.replace("rails none", "rails left");
    const found = verdictChanges(check(before, plan), check(stricter, plan));
    expect(
      found.map((c) => `${c.rule} ${c.subject} ${c.before!.levels.worst} > ${c.after!.levels.worst}`),
    ).toEqual(["bed/rails into-bed caution > stop", "bed/rails out-of-bed caution > stop"]);
    expect(gravestAfter(found)).toBe("stop");
  });
  it("a rule that is gone, and a transfer that is cleared without it", () => {
    const without = { ...before, rules: before.rules.filter((r) => r.id !== "bed/rails") };
    const plan = tried.replace("rails none", "rails left");
    const [a, b] = [check(before, plan), check(without, plan)];
    const found = verdictChanges(a, b);
    expect(found.every((c) => c.rule === "bed/rails" && c.after === undefined)).toBe(true);
    expect(gravestAfter(found)).toBe("holds");
    expect(transferChanges(a, b)).toEqual([{ name: "into-bed", before: false, after: true }]);
  });
});
