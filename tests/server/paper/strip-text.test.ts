/** The strip of a rule as a terminal shows it, beside what else is said of the rule. */
import sets from "virtual:rule-sets";
import { describe, expect, it } from "vitest";
import { loadRuleSet } from "../../../rules/engine/load.js";
import { plainTerminal } from "../../../server/command/terminal.js";
import { stripText } from "../../../server/paper/strip-text.js";
import { surroundings } from "../../../server/workspace/rule-sets.js";

describe.each(sets.map((s) => [s.name, s.version, s.files] as const))("%s %s", (_, __, files) => {
  const set = loadRuleSet(files, surroundings).partial;
  it("every rule with bands over a value has a strip of at most 80 columns; no other rule has one", () => {
    for (const rule of set.rules) {
      const text = stripText(rule, set, plainTerminal);
      const banded = rule.judged.is === "bands" && rule.judged.bands.length > 0;
      expect(text !== "", rule.id).toBe(banded);
      for (const line of text.split("\n")) expect([...line].length, line).toBeLessThanOrEqual(80);
      if (banded) expect(text).toContain("on a line");
    }
  });
});
