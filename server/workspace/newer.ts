/** What a newer version of its rule set would change for a plan: said at the line that names the older one. */
import { gravestAfter, verdictChanges } from "../../rules/engine/compare-verdicts.js";
import type { CheckResult } from "../../rules/engine/check.js";
import type { FormProblem, Household } from "../../language/model/household.js";
import { says } from "../../language/text/messages.js";
import { atPin } from "./form.js";
import { byVersion, type LoadedSet } from "./rule-sets.js";

/** How a plan comes out under another rule set than the one that it names. */
export interface JudgedBy {
  readonly ruleSet?: LoadedSet;
  readonly result?: CheckResult;
  /** Why there is no result. */
  readonly why?: string;
}

interface Kept {
  /** The rule set and policy that the plan named. */
  readonly named: string;
  readonly newest: LoadedSet;
  /** The check with which the newest set was compared. */
  readonly of: CheckResult;
  readonly found: NewerSet;
}

/** What is known of newer versions, plan by plan. Looking costs a whole check, so it is done when nobody types. */
export class NewerSets {
  private readonly kept = new Map<string, Kept>();

  constructor(private readonly judgedBy: (file: string, name: string, version: string) => JudgedBy) {}

  forget(file: string): void {
    this.kept.delete(file);
  }

  /** What was last found for a plan, at the line that names its rule set as it stands now. */
  problems(household: Household): readonly FormProblem[] {
    const kept = this.kept.get(household.path);
    if (!kept || kept.named !== namedBy(household)) return [];
    const problem = newerProblem(household, kept.found);
    return problem ? [problem] : [];
  }

  /** Looks again, unless nothing changed since; whether something else is to be said now. `newest`: of the set that the plan names. */
  look(household: Household, result: CheckResult | undefined, newest: LoadedSet | undefined): boolean {
    const { pin, path: file } = household;
    const before = this.kept.get(file);
    if (!pin || !result || !newest || byVersion(newest.version, pin.version) <= 0) {
      this.kept.delete(file);
      return before !== undefined;
    }
    const named = namedBy(household);
    if (before?.of === result && before.named === named && before.newest === newest) return false;
    const { result: after, why } = this.judgedBy(file, newest.name, newest.version);
    const found = newerSet(newest, result, after, why);
    this.kept.set(file, { named, newest, of: result, found });
    return before?.named !== named || before.found.what !== found.what;
  }
}

const namedBy = ({ pin }: Pick<Household, "pin">): string =>
  `${pin?.name ?? ""} ${pin?.version ?? ""} ${pin?.policy ?? ""}`;

export interface NewerSet {
  readonly name: string;
  readonly version: string;
  /** In one or two sentences. */
  readonly what: string;
  /** Whether the plan could be judged by it as it stands. */
  readonly usable: boolean;
}

/** `after` is undefined where the newer set could not be used for this plan; `why` then says so. */
export function newerSet(
  newer: Pick<LoadedSet, "name" | "version">,
  before: CheckResult,
  after: CheckResult | undefined,
  why: string | undefined,
): NewerSet {
  const { name, version } = newer;
  if (!after)
    return {
      name,
      version,
      usable: false,
      what: `This plan cannot be judged by it yet: ${why ?? "it was refused"}`,
    };
  const changes = verdictChanges(before, after);
  if (changes.length === 0)
    return { name, version, usable: true, what: "It would change nothing for this plan." };
  const worst = gravestAfter(changes);
  const one = changes.find((c) => (c.after?.levels.worst ?? "holds") === worst)!;
  const many =
    changes.length === 1 ? "1 judgement would be another" : `${changes.length} judgements would be others`;
  const gravest =
    worst === "holds"
      ? "none of them would be a finding"
      : `the gravest is ${worst}: ${one.rule} at ${one.subject}`;
  return { name, version, usable: true, what: `For this plan ${many}; ${gravest}.` };
}

/** The advice at the line that names the rule set, with the newer version to be written there. */
export function newerProblem(household: Household, newer: NewerSet): FormProblem | undefined {
  const { pin } = household;
  if (!pin || pin.name !== newer.name) return undefined;
  const called = `${newer.name} ${newer.version}`;
  const message = says["form/rule-set-newer"]({
    newer: called,
    using: `${pin.name} ${pin.version}`,
    what: newer.what,
  });
  const problem = atPin(household, pin, "form/rule-set-newer", message);
  const version = pin.place.entry.node.statement.atoms[2];
  const fix = version && {
    title: `Write rules ${called}`,
    text: newer.version,
    start: version.start,
    end: version.end,
  };
  return { ...problem, level: "advice", ...(fix && newer.usable && { fixes: [fix] }) };
}
