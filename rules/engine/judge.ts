/** One rule on one subject: the verdict and what it rests on. Used alike for households, for examples and for computed remedies. */
import type { Interval } from "../../language/quantity/interval.js";
import type { Dimension, ShownUnit } from "../../language/quantity/types.js";
import type { Assumption, Grade, Missing, VerdictKind } from "../types.js";
import { grade, gradeChoice, graver, nearestLimit } from "./bands.js";
import { namesIn, visit, type Expr } from "./expression.js";
import { evaluate, restsOnAssumption, type Evaluated, type Reader, type Reading } from "./logic.js";
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

const nothing = { missing: [], assumed: [], facts: [] } as const;

/** The gravest grade that a rule can give. */
export function gravest(rule: Rule): Grade {
  const j = rule.judged;
  if (j.is === "require") return j.level;
  return [...j.bands, ...j.choices].map((b) => b.grade).reduce(graver, "holds");
}

/** `skip`: conditions taken as met, which examples use where they say nothing of what a condition reads. */
export function judge(rule: Rule, reader: Reader, skip?: ReadonlySet<Expr>): Judgement {
  const conditions: { readonly expr: Expr; readonly result: Evaluated }[] = [];
  for (const { expr } of rule.when) {
    if (skip?.has(expr)) continue;
    const result = evaluate(expr, reader);
    // The first condition that is not met for certain decides, whatever the others are.
    if (result.is === "false" && !restsOnAssumption(result))
      return {
        ...nothing,
        facts: result.facts,
        verdict: "not-applicable",
        best: "holds",
        worst: "holds",
        reason: `Only where ${phrase(expr)}`,
      };
    conditions.push({ expr, result });
  }
  const without = conditions.find((c) => c.result.is === "without");
  if (without)
    return {
      ...nothing,
      facts: without.result.facts,
      verdict: "not-applicable",
      best: "holds",
      worst: "holds",
      reason: without.result.reason ?? `Only where ${phrase(without.expr)}`,
    };
  const open = conditions.filter(
    (c) => c.result.is !== "true" && c.result.is !== "false" && c.result.is !== "unsettled",
  );
  if (open.length > 0) {
    const all = open.map((c) => c.result);
    return {
      verdict: "unknown",
      best: "holds",
      worst: gravest(rule),
      reason: `It is not known whether ${phrase(open[0]!.expr)}`,
      missing: all.flatMap((e) => e.missing),
      assumed: [],
      facts: all.flatMap((e) => e.facts),
    };
  }
  const result =
    rule.judged.is === "bands" ? byBands(rule, rule.judged, reader) : byRequirement(rule.judged, reader);
  const doubtful = conditions.filter((c) => c.result.is === "unsettled" || c.result.is === "false");
  if (doubtful.length === 0 || result.verdict !== "fails") return result;
  // Whether the rule applies at all is in doubt, so what fails may also not matter.
  return {
    ...result,
    verdict: "unsettled",
    best: "holds",
    facts: [...result.facts, ...doubtful.flatMap((c) => c.result.facts)],
  };
}

/** What a rule judges does not exist on this subject, such as a board where none is used. */
const notThere = (e: Evaluated): Judgement => ({
  ...nothing,
  facts: e.facts,
  verdict: "not-applicable",
  best: "holds",
  worst: "holds",
  reason: e.reason ?? "It does not exist here",
});

function byBands(rule: Rule, judged: Rule["judged"] & { readonly is: "bands" }, reader: Reader): Judgement {
  const e = evaluate(judged.expr, reader);
  const evidence = { missing: e.missing, assumed: e.assumed, facts: e.facts };
  if (e.is === "without") return notThere(e);
  if (judged.choices.length > 0) {
    if (e.choice === undefined)
      return { ...evidence, verdict: "unknown", best: "holds", worst: gravest(rule) };
    const { band, ...graded } = gradeChoice(judged.choices, e.choice, restsOnAssumption(e));
    return {
      ...evidence,
      ...graded,
      choice: e.choice,
      ...(band?.message !== undefined && { message: band.message }),
    };
  }
  if (!e.interval) return { ...evidence, verdict: "unknown", best: "holds", worst: gravest(rule) };
  const { band, ...graded } = grade(judged.bands, e.interval, restsOnAssumption(e));
  const dimension = judged.bands[0]?.low.dimension ?? e.dimension ?? "number";
  const value = { interval: e.interval, dimension: e.dimension ?? dimension, unit: e.unit ?? { unit: "1" } };
  const near = nearestLimit(judged.bands, e.interval.nominal);
  return {
    ...evidence,
    ...graded,
    value,
    ...(band?.message !== undefined && { message: band.message }),
    ...(near && {
      limit: {
        name: near.end.limit ?? rule.id,
        interval: point(near.end.value),
        dimension: near.end.dimension,
        unit: near.end.unit,
      },
      margin: near.margin,
    }),
  };
}

const point = (x: number): Interval => ({ low: x, nominal: x, high: x });

function byRequirement(judged: Rule["judged"] & { readonly is: "require" }, reader: Reader): Judgement {
  const e = evaluate(judged.expr, reader);
  const level = judged.level;
  const measured = comparison(judged.expr, reader);
  const evidence = {
    missing: e.missing,
    assumed: e.assumed,
    facts: e.facts,
    ...measured,
    ...(judged.message !== undefined && { message: judged.message }),
  };
  switch (e.is) {
    case "true":
      return restsOnAssumption(e)
        ? { ...evidence, verdict: "unsettled", best: "holds", worst: level }
        : { ...evidence, missing: [], verdict: "holds", best: "holds", worst: "holds" };
    case "false":
      return { ...evidence, verdict: "fails", best: level, worst: level };
    case "unsettled":
      return { ...evidence, verdict: "unsettled", best: "holds", worst: level };
    case "without":
      return notThere(e);
    default:
      return { ...evidence, verdict: "unknown", best: "holds", worst: level };
  }
}

/** Value, limit and margin of the comparison that a requirement turns on: the first that does not hold, else the first. */
function comparison(expr: Expr, reader: Reader): Pick<Judgement, "value" | "limit" | "margin"> {
  const all: (Expr & { readonly op: "compare" })[] = [];
  visit(expr, (e) => {
    if (e.op === "compare") all.push(e);
  });
  const turning = all.find((c) => evaluate(c, reader).is !== "true") ?? all[0];
  if (!turning) return {};
  const swap = namesIn(turning.left).length === 0;
  const [valueExpr, limitExpr] = swap ? [turning.right, turning.left] : [turning.left, turning.right];
  const v: Evaluated = evaluate(valueExpr, reader);
  const l: Evaluated = evaluate(limitExpr, reader);
  const limitName = limitExpr.op === "name" ? limitExpr.name : phrase(limitExpr);
  const upward = (turning.how === "at least" || turning.how === "more than") !== swap;
  return {
    ...(v.interval && {
      value: { interval: v.interval, dimension: v.dimension ?? "number", unit: v.unit ?? { unit: "1" } },
    }),
    ...(l.interval && {
      limit: {
        name: limitName,
        interval: l.interval,
        dimension: v.dimension ?? l.dimension ?? "number",
        unit: l.unit ?? { unit: "1" },
      },
    }),
    ...(v.interval &&
      l.interval && {
        margin: upward ? v.interval.nominal - l.interval.nominal : l.interval.nominal - v.interval.nominal,
      }),
  };
}
