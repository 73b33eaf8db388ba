/** The rules on steps as the planner asks them: may this step be taken in this state, and may the order end here? */
import type { Step } from "../../language/vocabulary/verbs.js";
import { spell } from "../../language/vocabulary/verbs.js";
import type { Scene } from "../scene.js";
import type { Allowed } from "../steps/plan.js";
import { keyOf, type State } from "../steps/state.js";
import { rank } from "./bands.js";
import { namesIn } from "./expression.js";
import type { FactReader } from "./facts.js";
import { judge } from "./judge.js";
import type { Facts } from "./slots.js";
import type { RulesByScope } from "./subjects.js";
import type { Rule, RuleSet } from "./types.js";

/**
 * Whether a step breaks no rule of level stop or caution that is certain to fail. What cannot be known of a hypothetical state
 * is no reason to refuse it: it is found again when the steps are written.
 */
export function allowedBy(
  set: RuleSet,
  rules: RulesByScope,
  scene: Facts,
  reader: FactReader,
  of: Scene,
): Allowed {
  const answers = new Map<string, string | true>();
  const limit = (name: string) => set.limits.get(name);
  const asked = (list: readonly Rule[], state: State, step: Step | undefined): string | true => {
    const facts = reader.ofStep(scene, state, of.setup, step);
    for (const rule of list) {
      const j = judge(rule, { fact: (n) => facts.read(n), limit });
      if (j.verdict === "fails" && rank(j.worst) >= rank("caution")) return `${rule.title} (${rule.id})`;
    }
    return true;
  };
  const kept = (key: string, ask: () => string | true): string | true => {
    let found = answers.get(key);
    if (found === undefined) answers.set(key, (found = ask()));
    return found;
  };
  return (before, step, after, isEnd) => {
    const phrase = spell(step);
    const taken = kept(`${keyOf(before)} ${phrase}`, () => asked(rules.steps(phrase), before, step));
    if (taken !== true || !isEnd) return taken;
    return kept(`${keyOf(after)} end`, () => asked(rules.end, after, undefined));
  };
}

/** Names of the facts `step.*` that any rule reads: the planner leaves out what serves none of them. */
export function factsOfSteps(set: RuleSet): ReadonlySet<string> {
  const found = new Set<string>();
  for (const r of set.rules)
    for (const e of [...r.when.map((w) => w.expr), r.judged.expr])
      for (const name of namesIn(e)) if (name.startsWith("step.")) found.add(name);
  return found;
}
