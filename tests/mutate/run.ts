/** Which mutants of a rule set no example and no published figure tells from it. */
import { bandFaults } from "../../rules/engine/bands.js";
import { exampleFault, runExample } from "../../rules/engine/examples.js";
import type { LimitValue, Rule, RuleSet } from "../../rules/engine/types.js";
import type { Surroundings } from "../../rules/engine/verify.js";
import { equivalents, type Equivalent } from "./equivalent.js";
import { mutantsOf, type Mutant } from "./mutants.js";

export interface Outcome {
  readonly mutants: number;
  readonly told: number;
  readonly survivors: readonly Mutant[];
  /** Mutants that mean the same, with the reason. */
  readonly same: readonly { readonly mutant: Mutant; readonly reason: string }[];
  /** Entries of the list of equivalent mutants that no survivor needs. */
  readonly needless: readonly Equivalent[];
}

/** Whether a rule gives another result than one of its examples says, or would be refused. */
function tells(rule: Rule, limits: ReadonlyMap<string, LimitValue>): boolean {
  if (rule.judged.is === "bands" && bandFaults(rule.judged.bands, () => "").length > 0) return true;
  return rule.examples.some((e) => exampleFault(rule, e, runExample(rule, e, limits)) !== undefined);
}

/** `published`: whether a limit with this value contradicts what its source prints. */
export function runMutants(
  set: RuleSet,
  around: Surroundings,
  published: (limit: LimitValue) => boolean,
  list: readonly Equivalent[] = equivalents,
): Outcome {
  let mutants = 0;
  let told = 0;
  const survivors: Mutant[] = [];
  const same: { mutant: Mutant; reason: string }[] = [];
  const needed = new Set<Equivalent>();
  for (const m of mutantsOf(set, around)) {
    mutants++;
    const limit = m.kind === "limit" ? m.limits.get(m.of) : undefined;
    if (m.rules.some((r) => tells(r, m.limits)) || (limit && published(limit))) {
      told++;
      continue;
    }
    const known = list.find((e) => e.of === m.of && e.kind === m.kind && e.said === m.said);
    if (known) {
      needed.add(known);
      same.push({ mutant: m, reason: known.reason });
    } else survivors.push(m);
  }
  return { mutants, told, survivors, same, needless: list.filter((e) => !needed.has(e)) };
}
