/** What a person at the bedside gets wrong, and should see: one row each, the first ones by form, the others by the released rules. */
import sets from "virtual:rule-sets";
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { emptyLibrary, householdOf, readSetup } from "../../../language/model/household.js";
import { createChecker } from "../../../rules/engine/check.js";
import { FactTable } from "../../../rules/engine/fact-table.js";
import { loadRuleSet } from "../../../rules/engine/load.js";
import { quantities } from "../../../rules/quantities/index.js";
import { findings, fixed } from "../form.js";

const read = (path: string): string =>
  readFileSync(new URL(`../../../samples/${path}`, import.meta.url), "utf8");

describe("Said by form, at the words at fault", () => {
  it.each([
    [
      "measured the sling in the middle",
      "wheelchair w { ⟦sling-middle 17 in⟧a }",
      "form/measure-both",
      "A board rests on the side rail, the client sits lower. Measure both.",
      "wheelchair w { sling-middle 17 in; rail-height unknown }",
    ],
    [
      "wrote the longer side first",
      "bed { size ⟦80 in by 39 in⟧a }",
      "form/longer-across",
      "Size is width by length.",
      "bed { size 39 in by 80 in }",
    ],
    [
      "left the unit out",
      "client { mass ⟦182⟧a }",
      "form/no-unit",
      "182 lb or 182 kg?",
      "client { mass 182 lb }",
    ],
    [
      "gave a person a label",
      "helper daughter { safe-pull 30 lbf ⟦stated⟧a }",
      "form/stated-by-nobody",
      "A person has no label.",
      'helper daughter { safe-pull 30 lbf judged by "" }',
    ],
    [
      "wrote pounds with a sign",
      "client {\n  mass 182⟦#⟧a\n}",
      "form/pounds-sign",
      "# starts a comment. Pounds are lb.",
      "client {\n  mass 182 lb\n}",
    ],
  ])("%s", (_title, marked, rule, words, mended) => {
    const home = findings(marked, { a: rule });
    expect(home.problems.find((p) => p.rule === rule)!.message).toContain(words);
    const text = marked.replace(/⟦([^⟧]*)⟧a/, "$1");
    expect(fixed(text, rule, /./).replaceAll("\u00a0", " ")).toBe(mended);
  });

  it("took the length of a board for its width", () => {
    findings("board b { length ⟦8 in⟧a; width ⟦30 in⟧b }", {
      a: "form/hardly-plausible",
      b: "form/hardly-plausible",
    });
  });

  it("measured the bed empty: what is missing can be written as unknown", () => {
    const bed = "bed {\n  top 23 in\n  size 39 in by 80 in\n  edge firm\n}";
    expect(fixed(bed, "form/key-missing", /top-loaded unknown/)).toContain("{\n  top-loaded unknown\n");
  });
});

describe("Said by the released rules", () => {
  const pool = read("loan-pool.span").replace(/^(?:setup|rules|visited).*$/gm, "");
  const home = read("first-week/home.span").replace(/^from .*$/m, "");
  const { name, files } = sets[0]!;
  const table = new FactTable(quantities);
  const checker = createChecker(loadRuleSet(files, table).partial, quantities, table);
  const check = (text: string) => {
    const household = householdOf("home.span", readSetup(`${text}\n${pool}`), emptyLibrary);
    return checker.check(household, "2026-03-02").findings;
  };

  it(`there is a rule set: ${name}`, () => expect(files.length).toBeGreaterThan(0));

  it("measured the bed empty", () => {
    const rule = "record/bed-height-empty-only";
    expect(check(home).some((f) => f.rule === rule)).toBe(false);
    const found = check(home.replace(/^ {2}top-loaded .*\n/m, "")).find((f) => f.rule === rule)!;
    expect(found.verdict).toBe("fails");
    expect(found.message).toContain("sink 1 to 3 in (from memory)");
    expect(found.place.entry.lines[found.place.line]!.text).toMatch(/^ {2}top 23 in/);
  });

  it("left the near leg rest on", () => {
    const text = home.replace(/^ {4}remove legrest left\n/m, "");
    const found = check(text).find((f) => f.rule === "steps/leg-rest-in-the-way")!;
    expect(found.message).toContain("leg rest on the side of the bed is still in place");
    expect(found.place.entry.lines[found.place.line]!.text).toContain("approach bed");
    const edits = found.remedies.flatMap((r) => r.edits ?? []);
    expect(edits.map((e) => e.text.trim().split("\n")[0])).toContain("remove legrest left");
  });
});
