/** Looks at subjects with the rules that concern them, and keeps what was seen while neither a subject nor any of its facts changed. */
import type { Thing } from "../../language/model/types.js";
import type { Verdict } from "../types.js";
import type { Judged } from "./accept.js";
import type { Evaluator } from "./evaluate.js";
import { findingOf, verdictOf, type Making } from "./findings.js";
import type { Facts } from "./slots.js";
import type { OfTransfer, RulesByScope, Subject } from "./subjects.js";
import type { Rule } from "./types.js";

/** The verdicts on a subject, or on a transfer with its steps and end. */
export interface Looked {
  readonly verdicts: readonly Verdict[];
  /** Those that neither hold nor are out of place. */
  readonly judged: readonly Judged[];
}

interface KeptLook extends Looked {
  at: number;
  readonly user: Thing | undefined;
}

export class Looker {
  private readonly kept = new WeakMap<object, KeptLook>();
  /** The transfer of the household's own file at which things of other files are spoken of. */
  private user: Thing | undefined;

  /** `making` undefined: verdicts are all that is wanted, and no finding is made. */
  constructor(
    private readonly rules: RulesByScope,
    private readonly evaluator: Evaluator,
    private readonly making: Making | undefined,
  ) {}

  begin(user: Thing | undefined): void {
    this.user = user;
  }

  transfer(of: OfTransfer): Looked {
    return this.keep(of, of.transfer.facts, (seen) => {
      this.look(this.rules.transfer, of.transfer, seen);
      for (const step of of.steps) this.look(this.rules.steps(step.step!.phrase), step, seen);
      if (of.end) this.look(this.rules.end, of.end, seen);
    });
  }

  subject(rules: readonly Rule[], subject: Subject): Looked {
    return this.keep(subject, subject.facts, (seen) => this.look(rules, subject, seen));
  }

  private keep(owner: object, facts: Facts, see: (seen: Seen) => void): Looked {
    const before = this.kept.get(owner);
    if (before && before.user === this.user && facts.changed <= before.at) {
      before.at = facts.round;
      return before;
    }
    const seen: Seen = { verdicts: [], judged: [] };
    see(seen);
    const looked: KeptLook = { ...seen, at: facts.round, user: this.user };
    this.kept.set(owner, looked);
    return looked;
  }

  private look(rules: readonly Rule[], subject: Subject, seen: Seen): void {
    for (const rule of rules) {
      const kept = this.evaluator.of(rule, subject);
      seen.verdicts.push(verdictOf(rule, subject, kept));
      const { verdict } = kept.judgement;
      if (verdict === "holds" || verdict === "not-applicable" || !this.making) continue;
      const { finding, plain } = findingOf(rule, subject, kept, this.making);
      seen.judged.push({ finding, subject, plain, order: rule.order });
    }
  }
}

interface Seen {
  readonly verdicts: Verdict[];
  readonly judged: Judged[];
}
