/** Acceptances and expected verdicts beside the usual cases: what is not known, what stands twice, what a check in haste leaves open. */
import { describe, expect, it } from "vitest";
import { emptyLibrary, householdOf, readSetup } from "../../../language/model/household.js";
import { createChecker } from "../../../rules/engine/check.js";
import { FactTable } from "../../../rules/engine/fact-table.js";
import { loadRuleSet } from "../../../rules/engine/load.js";
import { Bench, good, head, home, rise, said, stub, summary } from "./sets.js";

const set = good(`${head}
rule bed/rails { title "Rails up"; for each transfer; require surface.rails is none else caution "Rails of {surface} are up"; because "b"; common-practice "c"
  examples { surface.rails none: holds; surface.rails both: fails; surface.rails unknown: unknown } }
rule height/rise { title "Climb"; for each transfer; judge height.rise
  bands { less than 1 in holds; more than 1 in caution "far" } because "b"; common-practice "c"
  examples { 1 in: holds; 1 1/8 in: caution } }`);
const rails = home.replace("rails none", "rails left");
const because = 'because "Let down before each transfer"';
const ofForm = (text: string): string[] =>
  summary(new Bench(set).check(text))
    .filter((s) => s.startsWith("form/"))
    .map((s) => s.split(" ")[0]!);
const line = `accept bed/rails at into-bed until 2026-03-16 ${because}\n`;

describe("an acceptance", () => {
  it("of what is not known accepts nothing: it must be found out first", () => {
    expect(ofForm(home.replace("  rails none\n", "") + line)).toEqual(["form/acceptance-of-doubt"]);
  });
  it("of what is not settled accepts nothing: it must be measured first", () => {
    const doubtful = home.replace("top-loaded 19 1/2 in ± 1/8 in", "top-loaded 20 in ± 1/2 in");
    const text = `${doubtful}accept height/rise at into-bed until 2026-03-16 ${because}\n`;
    const r = new Bench(set).check(text);
    expect(summary(r).filter((s) => s.includes("into-bed"))).toContainEqual(
      "height/rise into-bed unsettled holds-caution",
    );
    expect(ofForm(text)).toEqual(["form/acceptance-of-doubt"]);
    expect(r.transfers[0]!.cleared).toBe(false);
  });
  it("that stands twice is pointed out, and the first one counts", () => {
    const text = `${rails}${line}${line.replace("2026-03-16", "2026-03-20")}`;
    const r = new Bench(set).check(text);
    expect(ofForm(text)).toEqual(["form/acceptance-given-twice"]);
    expect(r.findings.find((f) => f.rule === "bed/rails" && f.subject === "into-bed")!.accepted!.until).toBe(
      "2026-03-16",
    );
  });
  it("holds on its last day and not on the next", () => {
    expect(ofForm(rails + line.replace("2026-03-16", "2026-03-02"))).toEqual([]);
    expect(ofForm(rails + line.replace("2026-03-16", "2026-03-01"))).toEqual(["form/acceptance-expired"]);
  });
  it("at one transfer leaves the way back as it is", () => {
    const r = new Bench(set).check(rails + line);
    expect(
      r.findings.filter((f) => f.rule === "bed/rails").map((f) => [f.subject, f.accepted !== undefined]),
    ).toEqual([
      ["into-bed", true],
      ["out-of-bed", false],
    ]);
  });
});

describe("a check in haste", () => {
  const slow = [{ ...rise, slow: true as const }, stub];
  const table = new FactTable(slow);
  const checker = createChecker(
    loadRuleSet(
      [
        {
          path: "t.spanrules",
          text: `${head}rule height/rise { title "Climb"; for each transfer; judge height.rise
  bands { less than 1 in holds; more than 1 in caution "far" } ${said}
  examples { 1 in: holds; 1 1/8 in: caution } }`,
        },
      ],
      table,
    ).set!,
    slow,
    table,
  );
  const found = (haste: boolean): string[] => {
    const far = home.replace("top-loaded 19 1/2 in", "top-loaded 22 1/2 in");
    const text = `${far}accept height/rise at into-bed until 2026-03-16 ${because}\nexpect height/rise holds for out-of-bed\n`;
    const household = householdOf("home.span", readSetup(text), emptyLibrary);
    return checker
      .check(household, "2026-03-02", haste)
      .findings.flatMap((f) => (f.rule.startsWith("form/") ? [f.rule] : []));
  };
  it("holds nothing against an acceptance or an expected verdict that is only not worked out yet", () => {
    expect(found(true)).toEqual([]);
    expect(found(false)).toEqual([]);
  });
});
