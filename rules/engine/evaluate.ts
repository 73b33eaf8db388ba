/** Judges rules on subjects and keeps each judgement while every fact that it read is the same object. */
import type { Finding, Verdict } from "../types.js";
import { judge, type Judgement } from "./judge.js";
import type { Reader, Reading } from "./logic.js";
import type { Slot } from "./slots.js";
import type { Subject } from "./subjects.js";
import type { Rule, RuleSet } from "./types.js";

/** The words of a finding, good while the names that they use and the facts in `read` are the same. */
export interface Words {
  readonly names: string;
  readonly read: readonly Slot[];
  readonly readOfStep: readonly (readonly [string, Reading])[];
  readonly at: number;
  readonly message: string;
  /** The message without what is said of doubts and assumptions. */
  readonly plain: string;
  readonly margin: string | undefined;
  readonly cautions: readonly string[];
}

export interface Kept {
  readonly judgement: Judgement;
  /** Facts of the subject's things, in the order in which they were first read. */
  readonly outer: readonly Slot[];
  /** Facts `step.*`. */
  readonly inner: readonly (readonly [string, Reading])[];
  /** Whose facts they are. */
  readonly owner: object;
  /** The check for which it was found good. */
  at: number;
  stamp: object | undefined;
  verdict?: Verdict;
  words?: Words;
  finding?: Finding;
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
    if (before && stillGood(before, subject)) return before;
    this.judged++;
    const recorded = new Recorder(subject, this.set);
    const judgement = judge(rule, recorded);
    const kept: Kept = {
      judgement,
      outer: recorded.outer,
      inner: recorded.inner,
      owner: subject.facts.owner,
      at: subject.facts.round,
      stamp: subject.stamp,
    };
    // Subjects come and go while a text is edited; their judgements must not pile up.
    if (slots.size > 2000) slots.clear();
    slots.set(subject.key, kept);
    return kept;
  }
}

function stillGood(kept: Kept, subject: Subject): boolean {
  const { facts } = subject;
  if (facts.owner !== kept.owner) return false;
  if (facts.changed > kept.at) for (const slot of kept.outer) if (slot.changed > kept.at) return false;
  if (kept.stamp !== subject.stamp) {
    for (const [name, reading] of kept.inner) if (facts.read(name) !== reading) return false;
    kept.stamp = subject.stamp;
  }
  kept.at = facts.round;
  return true;
}

/** Reads a subject's facts and the set's limits, and writes down what was read. */
export class Recorder implements Reader {
  /** Each once, in the order in which they were first read. A rule reads a handful, so lists are searched and no sets are made. */
  readonly outer: Slot[] = [];
  readonly inner: [name: string, reading: Reading][] = [];
  constructor(
    private readonly subject: Pick<Subject, "facts">,
    private readonly set: RuleSet,
  ) {}
  fact(name: string): Reading {
    if (name.startsWith("step.")) {
      const reading = this.subject.facts.read(name);
      if (!this.inner.some(([known]) => known === name)) this.inner.push([name, reading]);
      return reading;
    }
    const slot = this.subject.facts.slot(name);
    if (!this.outer.includes(slot)) this.outer.push(slot);
    return slot.reading;
  }
  limit(name: string): ReturnType<Reader["limit"]> {
    return this.set.limits.get(name);
  }
}
