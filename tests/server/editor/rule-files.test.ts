import { describe, expect, test } from "vitest";
import sets from "virtual:rule-sets";
import { readTree } from "../../../language/text/tree.js";
import { loadRuleSet } from "../../../rules/engine/load.js";
import { ruleShape } from "../../../rules/engine/read.js";
import { surroundings } from "../../../server/workspace/rule-sets.js";
import { formatting } from "../../../server/editor/formatting.js";
import { folding, outline } from "../../../server/editor/outline.js";
import { applyChanges } from "../../../server/editor/page.js";

const released = sets.map((s) => [`${s.name} ${s.version}`, s] as const);

describe.each(released)("the released rule set %s", (_, set) => {
  const formatted = set.files.map((f) => ({
    path: f.path,
    text: applyChanges(f.text, formatting(f.text, ruleShape.topOnly)),
  }));

  test("says the same once it is formatted", () => {
    const before = loadRuleSet(set.files, surroundings);
    const after = loadRuleSet(formatted, surroundings);
    expect(after.problems.map((p) => p.message)).toEqual(before.problems.map((p) => p.message));
    const gist = (s: typeof before): unknown =>
      s.partial.rules.map((r) => [r.id, r.title, r.because, r.examples.map((e) => e.verdict), r.bases]);
    expect(gist(after)).toEqual(gist(before));
  });

  test("does not change any more when it is formatted twice", () => {
    for (const f of formatted) expect(formatting(f.text, ruleShape.topOnly), f.path).toEqual([]);
  });

  test("every rule is in the outline and can be folded", () => {
    for (const f of set.files) {
      const tree = readTree(f.text, ruleShape);
      const names = outline(tree).map((s) => s.name);
      expect(names).toHaveLength(tree.entries.length);
      expect(folding(tree).length).toBeGreaterThan(0);
    }
  });
});
