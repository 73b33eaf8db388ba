/** The released rules on steps, asked of any equipment without a household around it: what a transfer would say, from the setup. */
import sets from "virtual:rule-sets";
import { spell, type Step } from "../../../language/vocabulary/verbs.js";
import { rank } from "../../../rules/engine/bands.js";
import { FactTable } from "../../../rules/engine/fact-table.js";
import { factsOfSteps } from "../../../rules/engine/step-rules.js";
import { judge } from "../../../rules/engine/judge.js";
import { loadRuleSet } from "../../../rules/engine/load.js";
import { rulesByScope } from "../../../rules/engine/subjects.js";
import type { Rule } from "../../../rules/engine/types.js";
import { choiceReading, missingReading, numberReading } from "../../../rules/engine/written.js";
import { quantities } from "../../../rules/quantities/index.js";
import { facts } from "../../../rules/steps/facts.js";
import { run } from "../../../rules/steps/machine.js";
import type { Allowed } from "../../../rules/steps/plan.js";
import { helpersOf, type StepSetup } from "../../../rules/steps/setup.js";
import { keyOf, type State } from "../../../rules/steps/state.js";

const released = sets.at(-1)!;
const { partial: set } = loadRuleSet(released.files, new FactTable(quantities));
const rules = rulesByScope(set);
export const reads: ReadonlySet<string> = factsOfSteps(set);

/** What a transfer with this equipment says beside the facts of its steps. */
function ofTransfer(setup: StepSetup, name: string): string | number | undefined {
  const yes = (is: boolean): string => (is ? "yes" : "no");
  switch (name) {
    case "board.used":
      return yes(setup.board);
    case "belt.used":
      return yes(setup.belt);
    case "helper.used":
      return yes(setup.helped);
    case "lift.used":
      return yes(setup.lift === true);
    case "helpers.count":
      return helpersOf(setup);
    case "chair.footplates":
      return setup.footplates;
    case "chair.legrest-near":
      return setup.side && setup.legrests?.[setup.side];
    case "chair.armrest-near":
      return setup.side && setup.armrests?.[setup.side];
    default:
      throw new Error(`a rule on steps reads ${name}, which these tests do not know`);
  }
}

const readerOf = (setup: StepSetup, state: State, step: Step | undefined) => {
  const own = facts(state, setup, step);
  return {
    fact: (name: string) => {
      const value = name.startsWith("step.") ? own(name) : ofTransfer(setup, name);
      return value === undefined
        ? missingReading(name, name)
        : typeof value === "number"
          ? numberReading(name, value)
          : choiceReading(name, value);
    },
    limit: (name: string) => set.limits.get(name),
  };
};

/** Rules that are certain to fail at this level or above, in the order of the rule set. */
function failing(
  list: readonly Rule[],
  setup: StepSetup,
  state: State,
  step: Step | undefined,
  from: "advice" | "caution",
): Rule[] {
  const reader = readerOf(setup, state, step);
  return list.filter((rule) => {
    const j = judge(rule, reader);
    return j.verdict === "fails" && rank(j.worst) >= rank(from);
  });
}

/** The released rules as the planner asks them. */
export function releasedRules(setup: StepSetup): Allowed {
  const kept = new Map<string, string | true>();
  const ask = (list: readonly Rule[], state: State, step: Step | undefined): string | true => {
    const key = `${keyOf(state)} ${step ? spell(step) : ""}`;
    let found = kept.get(key);
    if (found === undefined) {
      const [rule] = failing(list, setup, state, step, "caution");
      kept.set(key, (found = rule ? rule.id : true));
    }
    return found;
  };
  return (before, step, after, isEnd) => {
    const taken = ask(rules.steps(spell(step)), before, step);
    return taken === true && isEnd ? ask(rules.end, after, undefined) : taken;
  };
}

/** `3 raise sling: steps/loops-not-checked, insert check loops`; rules of one level and above, and steps that cannot be done. */
export function troubles(
  order: readonly Step[],
  setup: StepSetup,
  from: "advice" | "caution" = "caution",
): string[] {
  const done = run(order, setup);
  const said = (at: string, list: readonly Rule[]): string[] =>
    list.map((rule) => {
      const inserts = rule.remedies.flatMap((r) => (r.is === "insert" ? [r.step] : []));
      return `${at}: ${rule.id.replace("steps/", "")}${inserts.length > 0 ? `, insert ${inserts.join(" or ")}` : ""}`;
    });
  return [
    ...order.flatMap((step, i) => {
      const at = `${i + 1} ${spell(step)}`;
      const possible = done.possible[i]!;
      if (!possible.ok) return [`${at}: ${possible.because}`];
      return said(at, failing(rules.steps(spell(step)), setup, done.before[i]!, step, from));
    }),
    ...said("end", failing(rules.end, setup, done.end, undefined, from)),
  ];
}
