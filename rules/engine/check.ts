/**
 * The check: a household, a rule set and a day in; findings, verdicts, transfers and quantities out.
 *
 * A pure function of its arguments. A checker keeps what it worked out from one check to the next and uses again whatever rests
 * on the same objects, so that checking after an edit costs what the edit touched.
 */
import type { Household } from "../../language/model/household.js";
import type { Computed, Finding, TransferResult, Verdict } from "../types.js";
import type { QuantityRule } from "../quantity.js";
import type { Defaults, Scene } from "../scene.js";
import { Scenes } from "../scenes.js";
import type { Allowed } from "../steps/plan.js";
import { applyAcceptances, checkExpectations } from "./accept.js";
import { transferResult } from "./cleared.js";
import { Evaluator } from "./evaluate.js";
import { FactTable } from "./fact-table.js";
import { FactReader } from "./facts.js";
import type { Current } from "./findings.js";
import { Looker, type Looked } from "./look.js";
import { remediesOf } from "./remedies.js";
import { allowedBy, factsOfSteps } from "./step-rules.js";
import { rulesByScope, SubjectMaker, type Subjects } from "./subjects.js";
import type { RuleSet } from "./types.js";
import { Variants } from "./variants.js";

/** A derived quantity and the transfer for which it was worked out. */
export interface SubjectQuantity {
  readonly subject: string;
  readonly quantity: Computed;
}

export interface CheckResult {
  /** Everything that neither holds nor is out of place, in the order of the file, then of the rules. */
  readonly findings: readonly Finding[];
  /** Every rule on every subject that it looks at, those that hold or do not apply included. */
  readonly verdicts: readonly Verdict[];
  readonly transfers: readonly TransferResult[];
  /** Worked out when first asked for. */
  readonly quantities: readonly SubjectQuantity[];
  readonly scenes: readonly Scene[];
  /** False where a slow quantity was left out: what rests on it reads unknown until it is worked out. */
  readonly complete: boolean;
}

/** What the planner of steps needs to keep to the rules. */
export interface StepRules {
  readonly allowed: Allowed;
  /** Names of the facts `step.*` that the rules read. */
  readonly reads: ReadonlySet<string>;
}

export interface Checker {
  readonly set: RuleSet;
  /** `haste`: slow quantities are left out where they are not known from before, and the result is not `complete`. */
  check(household: Household, today: string, haste?: boolean): CheckResult;
  /** Verdicts and nothing else, what is slow left out: for trying many households that are nearly alike. */
  verdicts(household: Household, today: string): readonly Verdict[];
  /** The rules on steps for one transfer of a household, as the planner asks them. */
  stepRules(household: Household, scene: Scene, today: string): StepRules;
  /** How much the last check worked out anew. */
  readonly effort: { readonly judged: number; readonly computed: number };
}

/** Defaults of the rule set by name; a limit of that name serves as well, so that a figure stands in one place. */
export const defaultsOf = (set: RuleSet): Defaults => ({
  get(name) {
    const d = set.defaults.get(name);
    if (d) return d;
    const limit = set.limits.get(name);
    return limit && { interval: limit.interval, dimension: limit.dimension, tapeable: false };
  },
});

/** A checker for one rule set, best kept for one household: it remembers what it saw last. */
export function createChecker(
  set: RuleSet,
  quantities: readonly QuantityRule[],
  table: FactTable = new FactTable(quantities),
): Checker {
  return new HouseholdChecker(set, quantities, table);
}

class HouseholdChecker implements Checker {
  private readonly scenes = new Scenes();
  private readonly reader: FactReader;
  private readonly evaluator: Evaluator;
  private readonly subjects: SubjectMaker;
  private readonly rules;
  private readonly looker: Looker;
  private readonly defaults: Defaults;
  private readonly titles: ReadonlyMap<string, string>;
  /** The household checked last: places of kept findings are looked up in it. */
  private readonly now: Current = { household: undefined };
  private variantsOnce: Variants | undefined;
  private bare: Looker | undefined;

  constructor(
    readonly set: RuleSet,
    private readonly quantities: readonly QuantityRule[],
    private readonly table: FactTable,
  ) {
    this.defaults = defaultsOf(set);
    this.reader = new FactReader(table, this.defaults);
    this.subjects = new SubjectMaker(this.reader);
    this.evaluator = new Evaluator(set);
    this.rules = rulesByScope(set);
    this.titles = new Map(set.rules.map((r) => [r.id, r.title]));
    this.looker = new Looker(this.rules, this.evaluator, {
      set,
      now: this.now,
      remedies: (rule, subject, kept) => remediesOf(rule, subject, kept, this.variants()),
    });
  }

  get effort(): { readonly judged: number; readonly computed: number } {
    return { judged: this.evaluator.judged, computed: this.reader.computed };
  }

  check(household: Household, today: string, haste = false): CheckResult {
    this.reader.begin(haste);
    this.evaluator.begin();
    this.now.household = household;
    const scenes = this.scenes.of(household);
    const { subjects, looked } = this.lookAt(household, scenes, today, this.looker);
    const verdicts = looked.flatMap((l) => l.verdicts);
    const judged = looked.flatMap((l) => l.judged);
    const complete = !this.reader.leftOut;
    const accepted = applyAcceptances(household, judged, this.set, today, complete);
    const findings = inFileOrder(household, [
      ...accepted.judged.map((j) => ({ finding: j.finding, rule: j.order })),
      ...[...accepted.own, ...checkExpectations(household, verdicts, this.set, complete)].map((finding) => ({
        finding,
        rule: -1,
      })),
    ]);
    const transfers = subjects.transfers.map(({ transfer: s }) =>
      transferResult(s.scene!, household, accepted.judged, s.facts.read("trial.outcome").choice, this.titles),
    );
    let worked: readonly SubjectQuantity[] | undefined;
    const { quantities } = this;
    const of = scenes.map((scene) => ({ scene, read: this.reader.quantitiesOf(scene) }));
    return {
      findings,
      verdicts,
      transfers,
      scenes,
      complete,
      get quantities() {
        return (worked ??= of.flatMap(({ scene, read }) =>
          quantities.map((q) => ({ subject: scene.name, quantity: read(q) })),
        ));
      },
    };
  }

  verdicts(household: Household, today: string): readonly Verdict[] {
    this.reader.begin(true);
    this.evaluator.begin();
    const looker = (this.bare ??= new Looker(this.rules, this.evaluator, undefined));
    return this.lookAt(household, this.scenes.of(household), today, looker).looked.flatMap((l) => l.verdicts);
  }

  private lookAt(
    household: Household,
    scenes: readonly Scene[],
    today: string,
    looker: Looker,
  ): { readonly subjects: Subjects; readonly looked: readonly Looked[] } {
    const subjects = this.subjects.of(household, scenes, today);
    looker.begin(subjects.user);
    const looked = subjects.transfers.map((t) => looker.transfer(t));
    for (const [kind, rules] of this.rules.things)
      for (const s of subjects.things(kind)) looked.push(looker.subject(rules, s));
    looked.push(looker.subject(this.rules.setup, subjects.setup));
    return { subjects, looked };
  }

  stepRules(household: Household, scene: Scene, today: string): StepRules {
    const facts = this.reader.ofScene({ household, today, scene });
    return {
      allowed: allowedBy(this.set, this.rules, facts, this.reader, scene),
      reads: factsOfSteps(this.set),
    };
  }

  private variants(): Variants {
    return (this.variantsOnce ??= new Variants(this.set, this.table, this.defaults));
  }
}

/** By place in the file, then in the order of the rules, then of their subjects. */
function inFileOrder(
  household: Household,
  all: readonly { readonly finding: Finding; readonly rule: number }[],
): readonly Finding[] {
  const keyed = all.map(({ finding, rule }, i) => {
    const spot = household.locate(finding.place.entry);
    return {
      finding,
      rule,
      i,
      own: spot?.path === household.path ? 0 : 1,
      line: (spot?.line ?? 0) + finding.place.line,
    };
  });
  keyed.sort(
    (a, b) =>
      a.own - b.own ||
      a.line - b.line ||
      a.finding.place.start - b.finding.place.start ||
      a.rule - b.rule ||
      a.i - b.i,
  );
  return keyed.map((x) => x.finding);
}
