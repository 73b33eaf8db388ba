/**
 * The library: plans read and judged from another program. The same text, rule set and day give the same result. No file, clock
 * or network is used: the rule sets are inside, and other plans are asked of `open`. Nothing that comes back says that a transfer
 * is safe.
 */
import path from "node:path";
import { exportHousehold } from "../language/model/export.js";
import type { HouseholdJson } from "../language/model/export-types.js";
import {
  householdOf,
  readSetup,
  type FormProblem,
  type Household,
  type Library,
} from "../language/model/household.js";
import { householdSchema } from "../language/vocabulary/exports/json-schema.js";
import { createChecker } from "../rules/engine/check.js";
import { quantities } from "../rules/quantities/index.js";
import { asJson } from "./command/as-json.js";
import type { CheckedPlan, Problem } from "./library-types.js";
import { asPlan, isFault } from "./workspace/files.js";
import { atTop, chooseSet, faultInWords, faultMessage, limited } from "./workspace/form.js";
import { inReportOrder, reportFinding, reportForm } from "./workspace/reported.js";
import { byVersion, RuleSets, surroundings, type LoadedSet } from "./workspace/rule-sets.js";
import type { Snapshot } from "./workspace/snapshot.js";

export type * from "./library-types.js";
export type * from "../language/model/export-types.js";
export { householdSchema };

export interface ReadOptions {
  /** How the plan is called in findings, with slashes; what it uses is looked for from there. Default: `plan.span`. */
  readonly path?: string;
  /**
   * Gives the text of another plan that this one uses, or undefined where there is none. The path is the one that the plan writes,
   * seen from `path`; it may lead upwards (`../pool.span`), and whoever opens it decides what may be read. Without `open`, no
   * other plan is found, and each line that names one says so.
   */
  readonly open?: (path: string) => string | undefined;
}

/** A plan that was read. `check` takes only what `read` gave, not a copy of it. */
export interface Plan {
  readonly path: string;
  /** What the plan says, in SI units; `householdSchema()` describes it. */
  readonly household: HouseholdJson;
  /** Lines that could not be understood or are doubtful, in the order of the file. */
  readonly problems: readonly Problem[];
}

export interface CheckOptions extends ReadOptions {
  /** The day as of which it is judged: year-month-day. */
  readonly on: string;
  /** `home-transfer 2026.1`: judge by this one of `ruleSets` and not by the one that the plan names. */
  readonly ruleSet?: string;
}

/** Rule sets as they come with the library: none is ever looked for in a folder. */
class ReleasedSets extends RuleSets {
  override list(): ReturnType<RuleSets["list"]> {
    return super.list();
  }
  override newest(name: string): ReturnType<RuleSets["newest"]> {
    return super.newest(name);
  }
  override get(name: string, version: string): LoadedSet | undefined {
    return super.get(name, version);
  }
}
const released = new ReleasedSets();

/** The rule sets inside, by name and version. */
export const ruleSets: readonly { readonly name: string; readonly version: string }[] = released
  .list()
  .map(({ name, version }) => ({ name, version }));

/** What `read` keeps for `check`. */
interface Kept {
  readonly text: string;
  readonly household: Household;
  /** The text is none that a plan could be. */
  readonly fault: boolean;
}
const kept = new WeakMap<Plan, Kept>();

/**
 * Reads a plan. Never throws for what the text says: what is wrong with it is in `problems`.
 *
 *     import { read, check } from "spanwise";
 *
 *     const plan = read(text, { path: "homes/c-07/home.span", open: (path) => texts.get(path) });
 *     const { findings, transfers } = check(plan, { on: "2026-03-02" });
 */
export function read(text: string, options: ReadOptions = {}): Plan {
  const file = options.path ?? "plan.span";
  const got = asPlan(text);
  const fault = isFault(got);
  const whole = householdOf(file, readSetup(fault ? "" : got.text), libraryOf(options));
  const household = fault ? { ...whole, problems: [atTop(file, ...faultMessage(file, got))] } : whole;
  let json: HouseholdJson | undefined;
  const plan: Plan = {
    path: file,
    get household() {
      return (json ??= exportHousehold(household));
    },
    problems: limited(household.problems).map(problemOf),
  };
  kept.set(plan, { text: fault ? "" : got.text, household, fault });
  return plan;
}

/**
 * Judges a plan, or the text of one (then `path` and `open` are those of `read`).
 *
 * Throws a RangeError for a day or a rule set that there is not, and a TypeError for a plan that `read` did not give.
 */
export function check(plan: Plan | string, options: CheckOptions): CheckedPlan {
  const day = /^\d{4}-\d{2}-\d{2}$/.test(options.on) ? new Date(`${options.on}T00:00:00Z`) : undefined;
  if (!day || Number.isNaN(day.getTime()) || day.toISOString().slice(0, 10) !== options.on)
    throw new RangeError(`on: "${options.on}" is not a day, written year-month-day, such as 2026-03-02.`);
  const known = kept.get(typeof plan === "string" ? read(plan, options) : plan);
  if (!known) throw new TypeError("check takes what read gave, or the text of a plan.");
  const snapshot = judged(known, options.on, options.ruleSet);
  const { path: file } = known.household;
  // One form for programs: what the command line prints is what the library gives.
  const printed = asJson({
    on: options.on,
    files: [{ shown: file, snapshot }],
    shownPath: (of) => of,
    newerThan: ({ name, version }) => {
      const newest = released.newest(name)?.version;
      return newest !== undefined && byVersion(newest, version) > 0 ? newest : undefined;
    },
  });
  const [checked] = (
    JSON.parse(printed) as { readonly files: readonly [Omit<CheckedPlan, "on" | "cautions">] }
  ).files;
  return { ...checked, on: options.on, cautions: snapshot.ruleSet?.set?.cautions ?? [] };
}

/** Everything that is known of a plan on a day. */
function judged({ text, household: read, fault }: Kept, today: string, wanted: string | undefined): Snapshot {
  const household = wanted === undefined ? read : { ...read, pin: pinOf(wanted, read) };
  const base = { path: household.path, text, tree: household.tree, household, today };
  if (fault) return { ...base, reported: household.problems.map(reportForm) };
  const { loaded, problems } = chooseSet(released, household, "", today);
  const reported = [...limited(household.problems), ...problems].map(reportForm);
  const result = loaded?.set && createChecker(loaded.set, quantities, surroundings).check(household, today);
  for (const f of result?.findings ?? []) reported.push(reportFinding(household, f));
  return {
    ...base,
    ...(result && { result }),
    ...(loaded && { ruleSet: loaded }),
    reported: inReportOrder(household.path, reported),
  };
}

/** The rule set that is asked for, in place of the one that the plan names. */
function pinOf(wanted: string, household: Household): NonNullable<Household["pin"]> {
  const found = ruleSets.find(
    (s) => wanted === `${s.name} ${s.version}` || wanted === `${s.name}/${s.version}`,
  );
  if (!found)
    throw new RangeError(
      `ruleSet: there is no "${wanted}" inside. There is: ${ruleSets.map((s) => `${s.name} ${s.version}`).join(", ")}.`,
    );
  const entry = household.tree.entries[0]?.entry ?? readSetup('setup ""').entries[0]!.entry;
  return { ...found, place: household.pin?.place ?? { entry, line: 0, start: 0, end: 0 } };
}

/** Other plans, through `open`. Each is read once for one plan. */
function libraryOf({ open }: ReadOptions): Library {
  const opened = new Map<string, ReturnType<Library["open"]>>();
  return {
    open(written, from) {
      if (path.posix.isAbsolute(written) || path.win32.isAbsolute(written) || /^[a-z]:/i.test(written))
        return { problem: "outside" };
      const file = path.posix.join(path.posix.dirname(from), written.replaceAll("\\", "/"));
      const before = opened.get(file);
      if (before) return before;
      const text = open?.(file);
      const got = text === undefined ? undefined : asPlan(text);
      const result = !got
        ? ({ problem: "not-found" } as const)
        : isFault(got)
          ? ({ problem: "unreadable", why: faultInWords(got) } as const)
          : { path: file, tree: readSetup(got.text) };
      opened.set(file, result);
      return result;
    },
  };
}

const problemOf = (p: FormProblem): Problem => ({
  rule: p.rule,
  level: p.level,
  path: p.path,
  range: { start: { line: p.line, character: p.start }, end: { line: p.line, character: p.end } },
  message: p.message,
});
