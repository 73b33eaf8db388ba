/** Two checks of one plan by two rule sets: which judgements come out otherwise. */
import type { CheckResult } from "./check.js";
import { rank } from "./bands.js";
import type { Grade, Verdict } from "../types.js";

/** How a rule judged a subject; undefined where it did not look at it. */
export type Outcome = Pick<Verdict, "verdict" | "levels"> | undefined;

export interface VerdictChange {
  readonly rule: string;
  readonly subject: string;
  readonly before: Outcome;
  readonly after: Outcome;
}

export interface TransferChange {
  readonly name: string;
  readonly before: boolean | undefined;
  readonly after: boolean | undefined;
}

type Checked = Pick<CheckResult, "verdicts" | "transfers">;

/**
 * In the order of the plan, then of the rules. A rule that does not apply is as good as not there; and that a rule holds where
 * there was none, or is gone where it held, changes nothing for anybody.
 */
export function verdictChanges(before: Checked, after: Checked): readonly VerdictChange[] {
  const [old, now] = [byKey(before), byKey(after)];
  const found: VerdictChange[] = [];
  for (const key of new Set([...old.keys(), ...now.keys()])) {
    const [a, b] = [old.get(key), now.get(key)];
    const { rule, subject } = (a ?? b)!;
    if (sameOutcome(a, b)) continue;
    found.push({ rule, subject, before: outcome(a), after: outcome(b) });
  }
  return found;
}

/** Transfers that are cleared by one and not by the other. */
export function transferChanges(before: Checked, after: Checked): readonly TransferChange[] {
  const names = [...new Set([...before.transfers, ...after.transfers].map((t) => t.name))];
  const of = (r: Checked, name: string): boolean | undefined =>
    r.transfers.find((t) => t.name === name)?.cleared;
  return names
    .map((name) => ({ name, before: of(before, name), after: of(after, name) }))
    .filter((t) => t.before !== t.after);
}

/** The gravest level that a change brings with it, of what comes after; `holds` where it only takes findings away. */
export const gravestAfter = (changes: readonly VerdictChange[]): Grade =>
  changes
    .map((c) => c.after?.levels.worst ?? "holds")
    .reduce((a, b) => (rank(b) > rank(a) ? b : a), "holds" as Grade);

/** By rule and subject; several of one name (two trials of a transfer) are told apart by their order. */
function byKey(r: Checked): Map<string, Verdict> {
  const found = new Map<string, Verdict>();
  for (const v of r.verdicts) {
    if (v.verdict === "not-applicable") continue;
    let key = `${v.rule}\n${v.subject}`;
    for (let n = 2; found.has(key); n++) key = `${v.rule}\n${v.subject}\n${n}`;
    found.set(key, v);
  }
  return found;
}

const outcome = (v: Verdict | undefined): Outcome => v && { verdict: v.verdict, levels: v.levels };

const quiet = (v: Verdict | undefined): boolean => v === undefined || v.verdict === "holds";

const sameOutcome = (a: Verdict | undefined, b: Verdict | undefined): boolean =>
  (quiet(a) && quiet(b)) ||
  (a !== undefined &&
    b !== undefined &&
    a.verdict === b.verdict &&
    a.levels.best === b.levels.best &&
    a.levels.worst === b.levels.worst);
