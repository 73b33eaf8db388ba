/** One rule on one subject: the verdict and what it rests on. Used alike for households, for examples and for computed remedies. */
import type { Interval } from "../../language/quantity/interval.js";
import type { Dimension, ShownUnit } from "../../language/quantity/types.js";
import type { Assumption, Grade, Missing, VerdictKind } from "../types.js";
import { grade, gradeChoice, graver, nearestLimit } from "./bands.js";
import { readsAny, visit, type Expr } from "./expression.js";
import { compare, evaluate, restsOnAssumption, type Evaluated, type Reader, type Reading } from "./logic.js";
import { phrase } from "./phrase.js";
import type { Rule } from "./types.js";

export interface Judgement {
  readonly verdict: VerdictKind;
  readonly best: Grade;
  readonly worst: Grade;
  /** Why it does not apply. */
  readonly reason?: string;
  /** The message of the band or requirement that speaks, holes unfilled. */
  readonly message?: string;
  readonly value?: { readonly interval: Interval; readonly dimension: Dimension; readonly unit: ShownUnit };
  readonly choice?: string;
  readonly limit?: {
    readonly name: string;
    readonly interval: Interval;
    readonly dimension: Dimension;
    readonly unit: ShownUnit;
  };
  /** Signed distance of the nominal value to the nearest end of what holds; negative where it misses. */
  readonly margin?: number;
  readonly missing: readonly Missing[];
  readonly assumed: readonly Assumption[];
  readonly facts: readonly Reading[];
}

const none: readonly never[] = [];

/** The gravest grade that a rule can give. */
export function gravest(rule: Rule): Grade {
  const j = rule.judged;
  if (j.is === "require") return j.level;
  return [...j.bands, ...j.choices].map((b) => b.grade).reduce(graver, "holds");
}

/** `skip`: whether a condition is taken as met, which examples ask for where they say nothing of what a condition reads. */
export function judge(rule: Rule, reader: Reader, skip?: (condition: Expr) => boolean): Judgement {
  let without: Condition | undefined;
  let open: Condition[] | undefined;
  let doubtful: Condition[] | undefined;
  for (const { expr } of rule.when) {
    if (skip?.(expr)) continue;
    const result = evaluate(expr, reader);
    if (result.is === "true") continue;
    // The first condition that is not met for certain decides, whatever the others are.
    if (result.is === "false" && !restsOnAssumption(result))
      return notApplicable(result.facts, `Only where ${phrase(expr)}`);
    if (result.is === "without") without ??= { expr, result };
    else if (result.is === "false" || result.is === "unsettled") (doubtful ??= []).push({ expr, result });
    else (open ??= []).push({ expr, result });
  }
  if (without)
    return notApplicable(without.result.facts, without.result.reason ?? `Only where ${phrase(without.expr)}`);
  if (open)
    return {
      verdict: "unknown",
      best: "holds",
      worst: gravest(rule),
      reason: `It is not known whether ${phrase(open[0]!.expr)}`,
      missing: open.flatMap((c) => c.result.missing),
      assumed: [],
      facts: open.flatMap((c) => c.result.facts),
    };
  const result =
    rule.judged.is === "bands" ? byBands(rule, rule.judged, reader) : byRequirement(rule.judged, reader);
  if (!doubtful || result.verdict !== "fails") return result;
  // Whether the rule applies at all is in doubt, so what fails may also not matter.
  return {
    ...result,
    verdict: "unsettled",
    best: "holds",
    facts: [...result.facts, ...doubtful.flatMap((c) => c.result.facts)],
  };
}

interface Condition {
  readonly expr: Expr;
  readonly result: Evaluated;
}

const notApplicable = (facts: readonly Reading[], reason: string): Judgement => ({
  verdict: "not-applicable",
  best: "holds",
  worst: "holds",
  reason,
  missing: none,
  assumed: none,
  facts,
});

/** What a rule judges does not exist on this subject, such as a board where none is used. */
const notThere = (e: Evaluated): Judgement => notApplicable(e.facts, e.reason ?? "It does not exist here");

function byBands(rule: Rule, judged: Rule["judged"] & { readonly is: "bands" }, reader: Reader): Judgement {
  const e = evaluate(judged.expr, reader);
  const { missing, assumed, facts, choice, interval } = e;
  if (e.is === "without") return notThere(e);
  if (judged.choices.length > 0) {
    if (choice === undefined)
      return { verdict: "unknown", best: "holds", worst: gravest(rule), missing, assumed, facts };
    const { verdict, best, worst, band } = gradeChoice(judged.choices, choice, restsOnAssumption(e));
    return { verdict, best, worst, message: band?.message, choice, missing, assumed, facts };
  }
  if (!interval) return { verdict: "unknown", best: "holds", worst: gravest(rule), missing, assumed, facts };
  const { verdict, best, worst, band } = grade(judged.bands, interval, restsOnAssumption(e));
  const dimension = e.dimension ?? judged.bands[0]?.low.dimension ?? "number";
  const value = { interval, dimension, unit: e.unit ?? { unit: "1" } };
  const message = band?.message;
  const near = nearestLimit(judged.bands, interval.nominal);
  if (!near) return { verdict, best, worst, message, value, missing, assumed, facts };
  const limit = {
    name: near.end.limit ?? rule.id,
    interval: point(near.end.value),
    dimension: near.end.dimension,
    unit: near.end.unit,
  };
  return { verdict, best, worst, message, value, limit, margin: near.margin, missing, assumed, facts };
}

const point = (x: number): Interval => ({ low: x, nominal: x, high: x });

function byRequirement(judged: Rule["judged"] & { readonly is: "require" }, reader: Reader): Judgement {
  const { expr, level, message } = judged;
  const only = expr.op === "compare" ? sidesOf(expr, reader) : undefined;
  const e = only ? compare(only.left, only.right, only.expr.how) : evaluate(expr, reader);
  if (e.is === "without") return notThere(e);
  const { value, limit, margin } = turningPoint(only ? [only] : comparisons(expr, reader));
  const { assumed, facts } = e;
  const verdict = requiredVerdict(e.is, restsOnAssumption(e));
  return {
    verdict,
    best: verdict === "fails" ? level : "holds",
    worst: verdict === "holds" ? "holds" : level,
    message,
    value,
    limit,
    margin,
    missing: verdict === "holds" ? none : e.missing,
    assumed,
    facts,
  };
}

/** What is true and rests on an assumption is not settled. */
function requiredVerdict(is: Evaluated["is"], assumed: boolean): VerdictKind {
  if (is === "true") return assumed ? "unsettled" : "holds";
  if (is === "false") return "fails";
  return is === "unsettled" ? "unsettled" : "unknown";
}

interface Compared {
  readonly expr: Expr & { readonly op: "compare" };
  readonly left: Evaluated;
  readonly right: Evaluated;
}

const sidesOf = (expr: Compared["expr"], reader: Reader): Compared => ({
  expr,
  left: evaluate(expr.left, reader),
  right: evaluate(expr.right, reader),
});

function comparisons(expr: Expr, reader: Reader): readonly Compared[] {
  const all: Compared[] = [];
  visit(expr, (e) => {
    if (e.op === "compare") all.push(sidesOf(e, reader));
  });
  return all;
}

/** Value, limit and margin of the comparison that a requirement turns on: the first that does not hold, else the first. */
function turningPoint(all: readonly Compared[]): Pick<Judgement, "value" | "limit" | "margin"> {
  const turning = all.find((c) => compare(c.left, c.right, c.expr.how).is !== "true") ?? all[0];
  if (!turning) return {};
  const { how, left, right } = turning.expr;
  const swap = !readsAny(left, () => true);
  const limitExpr = swap ? left : right;
  const [v, l] = swap ? [turning.right, turning.left] : [turning.left, turning.right];
  const upward = (how === "at least" || how === "more than") !== swap;
  const unit = { unit: "1" };
  const value = v.interval && {
    interval: v.interval,
    dimension: v.dimension ?? "number",
    unit: v.unit ?? unit,
  };
  const limit = l.interval && {
    name: limitExpr.op === "name" ? limitExpr.name : phrase(limitExpr),
    interval: l.interval,
    dimension: v.dimension ?? l.dimension ?? "number",
    unit: l.unit ?? unit,
  };
  const gap = value && limit && value.interval.nominal - limit.interval.nominal;
  return { value, limit, margin: gap === undefined ? undefined : upward ? gap : 0 - gap };
}
