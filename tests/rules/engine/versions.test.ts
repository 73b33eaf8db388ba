/** Released versions beside each other: nothing differs without a reason, and no reason is given for what does not differ. */
import embedded from "virtual:rule-sets";
import { describe, expect, it } from "vitest";
import { compareSets } from "../../../rules/engine/compare.js";
import { FactTable } from "../../../rules/engine/fact-table.js";
import { loadRuleSet } from "../../../rules/engine/load.js";
import { quantities } from "../../../rules/quantities/index.js";

const table = new FactTable(quantities);
const sets = embedded.map((s) => loadRuleSet(s.files, table).partial);
const pairs = sets.flatMap((after, i) => {
  const before = sets[i - 1];
  return before?.name === after.name
    ? [[`${before.name} ${before.version}`, after.version, before, after] as const]
    : [];
});

it("there are versions to be compared", () => expect(pairs.length).toBeGreaterThan(0));

describe.each(pairs)("%s and %s", (_, __, before, after) => {
  const changes = compareSets(before, after);

  it("differ", () => expect(changes.length).toBeGreaterThan(0));

  it.each(changes.map((c) => [c.what, c.name, c.is, c] as const))(
    "the %s %s is %s for a reason that the newer one gives",
    (_what, _name, _is, c) => {
      expect(c.reasons.length).toBeGreaterThan(0);
      for (const r of c.reasons) expect(r).toMatch(/^[A-Z].*[.]$/);
    },
  );

  it.each(after.changes.map((c) => [c.rule, c] as const))(
    "the reason given for %s has a difference",
    (name) => {
      expect(changes.map((c) => c.name)).toContain(name);
    },
  );
});
