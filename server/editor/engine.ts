/** What the features ask of the rules beyond the findings: the numbers of a transfer, and what steps the rules let be taken. */
import type { Household } from "../../language/model/household.js";
import { createChecker, type CheckResult, type StepRules } from "../../rules/engine/check.js";
import type { RuleSet } from "../../rules/engine/types.js";
import { quantities } from "../../rules/quantities/index.js";
import type { Scene } from "../../rules/scene.js";
import type { Computed } from "../../rules/types.js";
import { surroundings } from "../workspace/rule-sets.js";

/** The derived quantities of one transfer; none where no rule set could be used. */
export const quantitiesOf = (result: CheckResult | undefined, scene: Scene): readonly Computed[] =>
  (result?.quantities ?? []).filter((q) => q.subject === scene.name).map((q) => q.quantity);

const kept = new WeakMap<
  Scene,
  { readonly set: RuleSet; readonly today: string; readonly rules: StepRules }
>();

/**
 * The rules on steps for one transfer. A checker of its own answers, so that asking about a household that is only tried out
 * does not disturb what is kept for the one being edited.
 */
export function stepRulesOf(set: RuleSet, household: Household, scene: Scene, today: string): StepRules {
  const before = kept.get(scene);
  if (before && before.set === set && before.today === today) return before.rules;
  const rules = createChecker(set, quantities, surroundings).stepRules(household, scene, today);
  kept.set(scene, { set, today, rules });
  return rules;
}
