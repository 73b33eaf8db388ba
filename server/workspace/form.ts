/** Findings of form that only the surroundings of a plan can make: whether it is a text, and which rule set it is judged by. */
import path from "node:path";
import type { FormProblem, Household } from "../../language/model/household.js";
import { says } from "../../language/text/messages.js";
import type { FileFault } from "./files.js";
import { usualSet, type LoadedSet, type RuleSets } from "./rule-sets.js";

export interface ChosenSet {
  /** Its `set` is undefined where it was refused. */
  readonly loaded?: LoadedSet;
  readonly problems: readonly FormProblem[];
}

/**
 * The rule set that a plan names, under the policy that it names; the newest usual one where it names none, which is said.
 * `today` decides whether what a policy allows has ended.
 */
export function chooseSet(sets: RuleSets, household: Household, root: string, today: string): ChosenSet {
  const { pin, path: file } = household;
  const known = (): string =>
    sets
      .list(root)
      .map((s) => `${s.name} ${s.version}`)
      .join(", ") || "none";
  if (pin) {
    const loaded = sets.get(pin.name, pin.version, root);
    if (loaded) return withPolicy(sets, loaded, pin, household, root, today);
    const message = says["form/rule-set-missing"]({ name: `${pin.name} ${pin.version}`, known: known() });
    return { problems: [atPin(household, pin, "form/rule-set-missing", message)] };
  }
  const newest = sets.newest(usualSet, root);
  const loaded = newest && sets.get(newest.name, newest.version, root);
  if (!loaded)
    return {
      problems: [
        atTop(
          file,
          "form/rule-set-missing",
          says["form/rule-set-missing"]({ name: usualSet, known: known() }),
        ),
      ],
    };
  const using = `${loaded.name} ${loaded.version}`;
  const policy = sets.policies.usualFor(file, root);
  const advice = household.tree.entries.length === 0 ? [] : [notPinned(household, using, policy)];
  const aside =
    policy === undefined || advice.length === 0
      ? []
      : [{ ...advice[0]!, ...notNamed(policy), level: "caution" as const }];
  return { loaded, problems: [...advice, ...aside, ...refused(loaded, undefined, household)] };
}

function withPolicy(
  sets: RuleSets,
  base: LoadedSet,
  pin: Pin,
  household: Household,
  root: string,
  today: string,
): ChosenSet {
  const { policy: written } = pin;
  if (written === undefined) {
    const aside = sets.policies.usualFor(household.path, root);
    const problems = refused(base, pin, household);
    if (aside === undefined) return { loaded: base, problems };
    const { rule, message } = notNamed(aside);
    const problem = atPin(household, pin, rule, message);
    const { end } = pin.place;
    const fix = { title: `Name the policy ${aside}`, text: ` with "${aside}"`, start: end, end };
    return { loaded: base, problems: [{ ...problem, fixes: [fix] }, ...problems] };
  }
  const loaded = sets.under(base, written, household.path, root, today);
  if (!("why" in loaded)) return { loaded, problems: refused(loaded, pin, household) };
  const message = says["form/policy-missing"]({ path: written, why: loaded.why });
  return { problems: [atPin(household, pin, "form/policy-missing", message)] };
}

const notNamed = (policy: string): { readonly rule: string; readonly message: string } => ({
  rule: "form/policy-not-named",
  message: says["form/policy-not-named"]({ path: policy }),
});

/** So many findings of form are reported of one file. Noise has hundreds of thousands, and nobody reads those. */
export const mostOfForm = 1000;

/** The first findings of form, and how many there are beyond them. */
export function limited(problems: readonly FormProblem[]): readonly FormProblem[] {
  const next = problems[mostOfForm];
  if (!next) return problems;
  const message = `${problems.length - mostOfForm} more lines from here on cannot be read as a plan. Mend the ones above first.`;
  return [
    ...problems.slice(0, mostOfForm),
    { ...next, rule: "form/too-many", message, fixes: [], level: "caution" },
  ];
}

type Pin = NonNullable<Household["pin"]>;

export const atTop = (file: string, rule: string, message: string): FormProblem => ({
  rule,
  message,
  path: file,
  line: 0,
  start: 0,
  end: 0,
  level: "caution",
});

/** A finding at the line that names the rule set. */
export function atPin(household: Household, pin: Pin, rule: string, message: string): FormProblem {
  const line = (household.locate(pin.place.entry)?.line ?? 0) + pin.place.line;
  return {
    rule,
    message,
    path: household.path,
    line,
    start: pin.place.start,
    end: pin.place.end,
    level: "caution",
  };
}

/** Why a rule set that exists is not used. */
function refused(set: LoadedSet, pin: Pin | undefined, household: Household): FormProblem[] {
  const first = set.problems[0];
  if (set.set || !first) return [];
  const more = set.problems.length - 1;
  const rest = more === 0 ? "" : more === 1 ? " One more fault is in it." : ` ${more} more faults are in it.`;
  if (set.refusedPolicy !== undefined && pin?.policy !== undefined) {
    const where = `Line ${first.line + 1}: ${first.message}`;
    const told = says["form/policy-refused"]({ path: pin.policy, first: where, more: rest });
    return [atPin(household, pin, "form/policy-refused", told)];
  }
  const message = `The rule set ${set.name} ${set.version} cannot be used, so no rule was applied. ${first.path}, line ${first.line + 1}: ${first.message}${rest}`;
  return [
    pin
      ? atPin(household, pin, "form/rule-set-refused", message)
      : atTop(household.path, "form/rule-set-refused", message),
  ];
}

/** Advice to name a rule set, with the line that does it offered behind the title, or else at the top. */
function notPinned(household: Household, using: string, policy?: string): FormProblem {
  const message = says["form/rule-set-not-pinned"]({ using });
  const written = `rules ${using}${policy === undefined ? "" : ` with "${policy}"`}`;
  const title = `Write ${written}`;
  const setup = household.tree.entries.find(({ entry }) => {
    const first = entry.node.statement.atoms[0];
    return first?.type === "word" && first.word === "setup";
  });
  const { start, end } = setup?.entry.node.statement ?? { start: 0, end: 0 };
  const line = setup ? setup.line + setup.entry.node.line : 0;
  const fix = setup
    ? { title, text: `\n${written}`, start: end, end }
    : { title, text: `${written}\n`, start: 0, end: 0 };
  return {
    rule: "form/rule-set-not-pinned",
    message,
    path: household.path,
    line,
    start,
    end,
    level: "advice",
    fixes: [fix],
  };
}

/** Rule and message for a file that is no plan. */
export function faultMessage(file: string, fault: FileFault): [rule: string, message: string] {
  if (fault.problem === "not-text") return ["form/not-text", says["form/not-text"]({ what: fault.what })];
  if (fault.problem === "too-large") return ["form/too-large", says["form/too-large"]({ size: fault.size })];
  const name = path.basename(file);
  if (fault.problem === "not-found") return ["form/file-not-found", `There is no file ${name}.`];
  return ["form/file-unreadable", says["form/file-unreadable"]({ path: name, why: fault.why })];
}

/** Why a file that another one uses cannot be read. */
export function faultInWords(fault: FileFault): string {
  if (fault.problem === "not-text") return `it holds ${fault.what}`;
  if (fault.problem === "too-large") return `it is too large (${fault.size})`;
  return fault.problem === "unreadable" ? fault.why : "it is not there";
}
