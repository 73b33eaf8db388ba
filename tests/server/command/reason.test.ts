/** `spanwise reason NAME PLAN` for every quantity on every sample: its arithmetic line by line, or what is not known. */
import { readdirSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { quantities } from "../../../rules/quantities/index.js";
import { checkPlans } from "../../../server/command/checked.js";
import { explanation, onPlan } from "../../../server/command/explanation.js";
import { planWord } from "../../../server/command/plan-word.js";
import { plainTerminal } from "../../../server/command/terminal.js";
import { root } from "./program.js";

const samples = readdirSync(`${root}/samples`, { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map((entry) => `samples/${entry.name}/home.span`);

/** One line again of what was wrapped. */
const unwrapped = (text: string): string => text.replaceAll(/\s+/g, " ");

describe.each(samples)("every quantity on %s", (sample) => {
  const checked = checkPlans({ paths: [sample], cwd: root, on: "2026-03-02" });
  const plan = checked.files[0]!;
  const results = plan.snapshot.result!.quantities;

  test("has its sentence, its formula and where that comes from", () => {
    for (const q of quantities) {
      const text = unwrapped(explanation(q.name, plan.snapshot.ruleSet!.partial, plainTerminal)!);
      expect(text, q.name).toContain(q.formula);
      expect(text.toLowerCase(), q.name).toContain(q.source.toLowerCase());
    }
  });
  test("has its arithmetic where it is known, and else what is missing or why it does not apply", () => {
    for (const q of quantities) {
      const text = unwrapped(onPlan(q.name, plan, checked, plainTerminal));
      expect(text, q.name).not.toMatch(/undefined|NaN|Infinity|\[object/);
      for (const { quantity } of results.filter((r) => r.quantity.name === q.name)) {
        if (quantity.value) expect(text, q.name).toContain(`so: ${q.formula}`);
        else if (quantity.without !== undefined)
          expect(text, q.name).toContain(`does not apply: ${unwrapped(quantity.without)}`);
        else {
          expect(quantity.missing.length, q.name).toBeGreaterThan(0);
          for (const { what } of quantity.missing) expect(text, q.name).toContain(unwrapped(what));
        }
        // Whatever was written is told with its line, whatever was assumed by the name of its default.
        for (const term of quantity.trace) {
          if (term.default !== undefined) expect(text, q.name).toMatch(/a (default|limit) of the rule set, /);
          if (term.place && quantity.value) expect(text, q.name).toMatch(/line \d+/);
        }
      }
    }
  });
});

test("a part of stature is told as finely as the rule set writes it", () => {
  const checked = checkPlans({ paths: ["samples/first-week/home.span"], cwd: root, on: "2026-03-02" });
  const text = unwrapped(onPlan("landing.target", checked.files[0]!, checked, plainTerminal));
  expect(text).toContain("hip fraction = 48.3 % (44.5 to 52 %); a default of the rule set");
});

test("what is the same there and back is told once", () => {
  const checked = checkPlans({ paths: ["samples/first-week/home.span"], cwd: root, on: "2026-03-02" });
  const text = onPlan("gap.corner", checked.files[0]!, checked, plainTerminal);
  expect(text).toContain("into-bed, out-of-bed");
  expect(text.match(/gap\.corner = /g)).toHaveLength(1);
  expect(unwrapped(text)).toContain("gap.corner-computed = 3/4 in (1/4 to 1 5/8 in); worked out by itself");
});

test.each([
  [
    "head-to-hip",
    /^It is a key of plans: in client, from the top of the head .*the default hip-fraction\)\.$/,
  ],
  ["client.mass", /^It is a key of plans: in client, [^;]+\.$/],
  ["mass", /in client, .*; in wheelchair, /],
])("who asks of a rule set what %s is hears what it means in a plan", (name, says) => {
  expect(planWord(name)).toMatch(says);
});
test.each(["client.top", "height/rise", "constructor", "", "."])("%j is no key of plans", (name) => {
  expect(planWord(name)).toBeUndefined();
});
