/** Judges rules on subjects and keeps each judgement while every fact that it read is the same object. */
import type { Finding, Verdict } from "../types.js";
import { judge, type Judgement } from "./judge.js";
import type { Reader, Reading } from "./logic.js";
import type { Subject } from "./subjects.js";
import type { Rule, RuleSet } from "./types.js";

export interface MadeFinding {
  readonly made: Finding;
  /** Its message without what is said of doubts and assumptions. */
  readonly plain: string;
}

export interface Kept {
  readonly judgement: Judgement;
  /** Facts of the subject's things, in the order in which they were first read. */
  readonly outer: readonly (readonly [string, Reading])[];
  /** Facts `step.*`. */
  readonly inner: readonly (readonly [string, Reading])[];
  stamp: object | undefined;
  verdict?: Verdict;
  /** The finding made of it, good while the subject's names and places are the same. */
  finding?: MadeFinding & {
    readonly ident: readonly unknown[];
    readonly extra: readonly (readonly [string, Reading])[];
  };
}

export class Evaluator {
  private readonly slots = new Map<Rule, Map<string, Kept>>();
  /** How many judgements were made anew since the last `begin`; tests count it. */
  judged = 0;

  constructor(private readonly set: RuleSet) {}

  begin(): void {
    this.judged = 0;
  }

  of(rule: Rule, subject: Subject): Kept {
    let slots = this.slots.get(rule);
    if (!slots) this.slots.set(rule, (slots = new Map()));
    const before = slots.get(subject.key);
    if (before && this.stillGood(before, subject)) return before;
    this.judged++;
    const read = new Map<string, Reading>();
    const judgement = judge(rule, recording(subject, this.set, read));
    const all = [...read];
    const kept: Kept = {
      judgement,
      outer: all.filter(([n]) => !n.startsWith("step.")),
      inner: all.filter(([n]) => n.startsWith("step.")),
      stamp: subject.stamp,
    };
    // Subjects come and go while a text is edited; their judgements must not pile up.
    if (slots.size > 2000) slots.clear();
    slots.set(subject.key, kept);
    return kept;
  }

  private stillGood(kept: Kept, subject: Subject): boolean {
    for (const [name, reading] of kept.outer) if (subject.facts.read(name) !== reading) return false;
    if (kept.stamp === subject.stamp) return true;
    for (const [name, reading] of kept.inner) if (subject.facts.read(name) !== reading) return false;
    kept.stamp = subject.stamp;
    return true;
  }
}

/** Reads a subject's facts and the set's limits; what was read is written down. */
export function recording(subject: Subject, set: RuleSet, read: Map<string, Reading>): Reader {
  return {
    fact(name) {
      const reading = subject.facts.read(name);
      read.set(name, reading);
      return reading;
    },
    limit: (name) => set.limits.get(name),
  };
}
