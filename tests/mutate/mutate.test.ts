import { describe, expect, it } from "vitest";
import embedded from "virtual:rule-sets";
import { FactTable } from "../../rules/engine/fact-table.js";
import { loadRuleSet } from "../../rules/engine/load.js";
import { quantities } from "../../rules/quantities/index.js";
import { good, head, said, table } from "../rules/engine/sets.js";
import { mutantsOf } from "./mutants.js";
import { notAsPrinted, runDefaults } from "./published.js";
import { runMutants } from "./run.js";

const unprinted = (): boolean => false;
const survivors = (text: string): string[] =>
  runMutants(good(head + text), table, unprinted, []).survivors.map((m) => `${m.kind}: ${m.said}`);
const rule = (what: string, examples: string): string =>
  `rule a/b { title "t"; for each transfer\n  ${what}\n  examples { ${examples} }\n  ${said} }\n`;
const bands = "judge height.rise; bands { less than 1 in holds; more than 1 in stop }";

describe("a change of a rule set goes unnoticed where no example speaks of it", () => {
  it.each<[title: string, text: string, unnoticed: string[]]>([
    ["examples close to the boundary on both sides", rule(bands, "1 in: holds; 1 1/16 in: stop"), []],
    [
      "no example close above the boundary",
      rule(bands, "1 in: holds; 1 1/8 in: stop"),
      ["band end: 1 in -> 1.1 in"],
    ],
    [
      "a limit that is not shown exactly",
      `limit close 3 in { title "t"; common-practice "c" }\n` +
        rule(
          "require height.rise at most close else stop",
          "height.rise 2 in: holds; height.rise 3 1/16 in: stop",
        ),
      ["limit: 3 in -> 2.7 in", "boundary: at most -> less than"],
    ],
    [
      "a level that no example names",
      rule(
        "require height.rise at most 1 in else caution",
        "height.rise 1 in: holds; height.rise 1 1/16 in: fails",
      ),
      ["required level: caution -> advice", "required level: caution -> stop"],
    ],
    [
      "a condition that no example fails to meet",
      rule(
        "when board.used is yes\n  require height.rise at most 1 in else caution",
        "board.used yes, height.rise 1 in: holds; height.rise 1 1/16 in: caution",
      ),
      ["condition: left out"],
    ],
    [
      "alternatives of which only one is shown",
      rule(
        "require height.rise at most 1 in or board.used is yes else caution",
        "height.rise 1 in, board.used no: holds; height.rise 1 1/16 in, board.used no: caution",
      ),
      [],
    ],
    [
      "a word of a list that is not shown",
      rule(
        "when chair.cushion-kind is one of foam, gel\n  require height.rise at most 1 in else caution",
        "chair.cushion-kind foam, height.rise 1 in: holds; chair.cushion-kind foam, height.rise 1 1/16 in: caution; chair.cushion-kind air, height.rise 2 in: not-applicable",
      ),
      ["word: without gel"],
    ],
    [
      "arithmetic that examples leap over",
      rule(
        "judge height.rise - chair.stub; bands { less than 1 in holds; more than 1 in stop }",
        "1 in: holds; 1 1/16 in: stop",
      ),
      ["sign: - -> +"],
    ],
    [
      "nothing beside zero",
      rule(
        "judge height.rise; bands { less than 0 in holds; more than 0 in stop }",
        "0 in: holds; 1 in: stop",
      ),
      ["band end: 0 in -> 0.125 in"],
    ],
  ])("%s", (_, text, unnoticed) => {
    expect(survivors(text)).toEqual(unnoticed);
  });

  it("counts change by one, for they have no tenths", () => {
    const set = good(
      head +
        rule("require helpers.count at least 2 else stop", "helpers.count 2: holds; helpers.count 1: stop"),
    );
    expect([...mutantsOf(set, table)].filter((m) => m.kind === "number").map((m) => m.said)).toEqual([
      "2 -> 3",
      "2 -> 1",
    ]);
  });

  it("a limit is told by what its source prints where no example does", () => {
    const set = good(
      `${head}limit close-gap 3 in { title "t"; common-practice "c" }\n` +
        rule(
          "require height.rise at most close-gap else stop",
          "height.rise 1 in: holds; height.rise 9 in: stop",
        ),
    );
    const kinds = (printed: ReturnType<typeof notAsPrinted>): string[] =>
      runMutants(set, table, printed, []).survivors.map((m) => m.kind);
    expect(kinds(unprinted)).toContain("limit");
    expect(kinds(notAsPrinted("2026.1"))).not.toContain("limit");
  });

  it("an entry in the list of equal meanings that nothing needs is reported", () => {
    const set = good(head + rule(bands, "1 in: holds; 1 1/16 in: stop"));
    const entry = { of: "a/b", kind: "band end", said: "1 in -> 1.1 in", reason: "none" } as const;
    expect(runMutants(set, table, unprinted, [entry]).needless).toEqual([entry]);
  });
});

describe.each(embedded.map((s) => [s.name, s.version, s.files] as const))(
  "the rule set %s %s",
  (_, __, files) => {
    const around = new FactTable(quantities);
    const { partial: set } = loadRuleSet(files, around);

    it("has an example, or a printed figure, for each number, comparison, condition and level", () => {
      const { mutants, survivors: left, needless } = runMutants(set, around, notAsPrinted(set.version));
      expect(mutants).toBeGreaterThan(1000);
      expect(left.map((m) => `${m.of}: ${m.kind}, ${m.said}`)).toEqual([]);
      expect(needless).toEqual([]);
    });

    it("has defaults that are what their citation takes, where it takes a figure", () => {
      const { counted, unnoticed } = runDefaults(set);
      expect(counted).toBeGreaterThan(10);
      expect(unnoticed).toEqual([]);
    });
  },
);
