/** What a text says, without where it says it, so that two texts can be compared. */
import { emptyLibrary, householdOf, readSetup, type Household } from "../../../language/model/household.js";
import type { Thing } from "../../../language/model/types.js";
import type { Tree } from "../../../language/text/types.js";

export const read = (text: string, before?: Tree): Household =>
  householdOf("home.span", readSetup(text, before), emptyLibrary);

const thingSays = (t: Thing): unknown => ({
  kind: t.kind,
  name: t.name,
  values: t.values,
  inner: Object.entries(t.inner).map(([kind, things]) => [kind, things!.map(thingSays)]),
  steps: t.steps?.map((s) => s.step),
});

/** Everything that is understood. A quantity's unit of display is part of it. */
export const saysOf = (h: Household): unknown => ({
  title: h.title,
  visited: h.visited,
  rules: h.pin && `${h.pin.name} ${h.pin.version}`,
  things: h.all.map(thingSays),
  accepts: h.accepts.map((a) => a.value),
  expects: h.expects.map((a) => a.value),
});

/** Findings of form with their places, as a person would see them. */
export const findingsOf = (h: Household): string[] =>
  h.problems.map((p) => `${p.line}:${p.start}-${p.end} ${p.rule} ${p.level} ${p.message}`);

/** Findings of form without their places, which the formatter may move. */
export const rulesOf = (h: Household): string[] => h.problems.map((p) => p.rule).sort();
