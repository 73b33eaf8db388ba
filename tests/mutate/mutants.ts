/**
 * Mutants of a rule set: copies that differ in one number, one comparison or one level. Whoever wrote the examples meant the
 * original; an example, or a published figure, must tell each mutant from it.
 */
import { inOrder, rank } from "../../rules/engine/bands.js";
import type { Expr } from "../../rules/engine/expression.js";
import { visit } from "../../rules/engine/expression.js";
import type { Surroundings } from "../../rules/engine/verify.js";
import type {
  Band,
  BandEnd,
  DefaultValue,
  LimitValue,
  Rule,
  RulePlace,
  RuleSet,
} from "../../rules/engine/types.js";
import { grades, type Grade } from "../../rules/types.js";
import { changedExpressions, nextTo, type Kind } from "./expressions.js";

export interface Mutant {
  readonly kind: Kind;
  readonly said: string;
  readonly at: RulePlace;
  /** The rule, limit or default that was changed. */
  readonly of: string;
  /** Rules that read otherwise than in the set. */
  readonly rules: readonly Rule[];
  /** The limits, one of them changed. */
  readonly limits: ReadonlyMap<string, LimitValue>;
}

type ByBands = Rule["judged"] & { readonly is: "bands" };

/** Facts that are counts stand in comparisons with whole numbers; those numbers change by one. */
function countsIn(expr: Expr, rule: Rule, around: Surroundings): ReadonlySet<Expr> {
  const found = new Set<Expr>();
  const isCount = (e: Expr): boolean =>
    e.op === "name" && around.fact(e.name, rule.scope)?.dimension === "number";
  visit(expr, (e) => {
    if (e.op !== "compare") return;
    if (isCount(e.left)) found.add(e.right);
    if (isCount(e.right)) found.add(e.left);
  });
  return found;
}

/** Every mutant of a rule's own text. */
function* mutantsOfRule(rule: Rule, set: RuleSet, around: Surroundings): Generator<Mutant> {
  const one = (kind: Kind, said: string, at: RulePlace, changed: Rule): Mutant => ({
    kind,
    said,
    at,
    of: rule.id,
    rules: [changed],
    limits: set.limits,
  });
  for (const [i, w] of rule.when.entries()) {
    const counts = countsIn(w.expr, rule, around);
    for (const c of changedExpressions(w.expr, (e) => counts.has(e)))
      yield one(c.kind, c.said, w.at, {
        ...rule,
        when: rule.when.map((x, j) => (i === j ? { ...x, expr: c.value } : x)),
      });
    yield one("condition", "left out", w.at, { ...rule, when: rule.when.filter((x) => x !== w) });
  }
  const { judged } = rule;
  const counts = countsIn(judged.expr, rule, around);
  for (const c of changedExpressions(judged.expr, (e) => counts.has(e)))
    yield one(c.kind, c.said, judged.at, { ...rule, judged: { ...judged, expr: c.value } });
  if (judged.is === "require") {
    for (const level of grades)
      if (level !== "holds" && Math.abs(rank(level) - rank(judged.level)) === 1)
        yield one("required level", `${judged.level} -> ${level}`, judged.at, {
          ...rule,
          judged: { ...judged, level },
        });
    return;
  }
  yield* mutantsOfBands(rule, judged, one);
}

type Make = (kind: Kind, said: string, at: RulePlace, changed: Rule) => Mutant;

function* mutantsOfBands(rule: Rule, judged: ByBands, one: Make): Generator<Mutant> {
  const sorted = inOrder(judged.bands);
  const withBands = (bands: readonly Band[]): Rule => ({ ...rule, judged: { ...judged, bands } });
  for (const [i, band] of sorted.entries()) {
    const next = sorted[i + 1];
    if (!next) continue;
    // A boundary is written in both bands; moved in one of them alone it would leave a gap, which is refused anyway.
    if (band.high.limit === undefined && next.low.limit === undefined)
      for (const n of nextTo(band.high.value, band.high.dimension, band.high.unit)) {
        const moved = (e: BandEnd): BandEnd => ({ ...e, value: n.value });
        yield one(
          "band end",
          n.said,
          next.at,
          withBands(
            sorted.map((b, j) =>
              j === i ? { ...b, high: moved(b.high) } : j === i + 1 ? { ...b, low: moved(b.low) } : b,
            ),
          ),
        );
      }
    if (band.grade !== next.grade) {
      const grade = (b: Band, g: Grade): Band => ({ ...b, grade: g });
      const levels: readonly [low: Grade, high: Grade][] = [
        [next.grade, next.grade],
        [band.grade, band.grade],
        [next.grade, band.grade],
      ];
      for (const [low, high] of levels)
        yield one(
          "band's level",
          `${band.grade}, ${next.grade} -> ${low}, ${high}`,
          next.at,
          withBands(sorted.map((b, j) => (j === i ? grade(b, low) : j === i + 1 ? grade(b, high) : b))),
        );
    }
  }
  for (const [i, b] of judged.choices.entries()) {
    const other = judged.choices[i + 1] ?? judged.choices[0]!;
    if (other.grade === b.grade) continue;
    yield one("band's level", `${b.choices.join(", ")}: ${b.grade} -> ${other.grade}`, b.at, {
      ...rule,
      judged: {
        ...judged,
        choices: judged.choices.map((c) => (c === b ? { ...c, grade: other.grade } : c)),
      },
    });
  }
}

/** A rule as it reads when a limit has another value: its bands carry the value. */
function withLimit(rule: Rule, name: string, before: number, value: number): Rule {
  if (rule.judged.is !== "bands") return rule;
  const moved = (e: BandEnd): BandEnd =>
    e.limit === name ? { ...e, value: e.value === before ? value : 0 - value } : e;
  return {
    ...rule,
    judged: {
      ...rule.judged,
      bands: rule.judged.bands.map((b) => ({ ...b, low: moved(b.low), high: moved(b.high) })),
    },
  };
}

function* mutantsOfLimit(limit: LimitValue, set: RuleSet, rules: readonly Rule[]): Generator<Mutant> {
  for (const n of nextTo(limit.interval.nominal, limit.dimension, limit.unit)) {
    const interval = { low: n.value, nominal: n.value, high: n.value };
    yield {
      kind: "limit",
      said: n.said,
      at: limit.at,
      of: limit.name,
      rules: rules.map((r) => withLimit(r, limit.name, limit.interval.nominal, n.value)),
      limits: new Map([...set.limits, [limit.name, { ...limit, interval }]]),
    };
  }
}

/** Rules that name a limit, in a band or in an expression. */
export function rulesNaming(set: RuleSet, name: string): readonly Rule[] {
  return set.rules.filter((rule) => {
    let named = false;
    const see = (e: Expr): void => {
      if (e.op === "name" && e.name === name) named = true;
    };
    for (const w of rule.when) visit(w.expr, see);
    visit(rule.judged.expr, see);
    return (
      named ||
      (rule.judged.is === "bands" &&
        rule.judged.bands.some((b) => b.low.limit === name || b.high.limit === name))
    );
  });
}

/** Ends of a default that a published figure may tell: both, each by itself. */
export interface DefaultMutant {
  readonly default: DefaultValue;
  readonly end: "low" | "high";
  readonly value: number;
  readonly said: string;
}

export function* mutantsOfDefault(d: DefaultValue): Generator<DefaultMutant> {
  const ends = d.interval.low === d.interval.high ? (["low"] as const) : (["low", "high"] as const);
  for (const end of ends)
    for (const n of nextTo(d.interval[end], d.dimension, d.unit))
      yield { default: d, end, value: n.value, said: n.said };
}

export function* mutantsOf(set: RuleSet, around: Surroundings): Generator<Mutant> {
  for (const limit of set.limits.values()) yield* mutantsOfLimit(limit, set, rulesNaming(set, limit.name));
  for (const rule of set.rules) yield* mutantsOfRule(rule, set, around);
}
