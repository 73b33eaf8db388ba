/**
 * Evaluation of expressions over intervals.
 *
 * Truth has five values. `unsettled`: the tolerance straddles. `unknown`: an input is missing. `without`: something it speaks of
 * does not exist here (no board), so it cannot be judged at all. Of an `and`, the first present of false, without, unknown,
 * unsettled, true is the result; of an `or`, the first of true, unknown, unsettled, false, without. Evaluation always ends, never
 * throws and never gives NaN.
 */
import {
  divide,
  entire,
  exactly,
  larger,
  multiply,
  negate,
  smaller,
  type Interval,
} from "../../language/quantity/interval.js";
import type { Dimension, ShownUnit } from "../../language/quantity/types.js";
import type { Assumption, Computed, Missing } from "../types.js";
import { combine } from "./dimensions.js";
import type { Comparison, Expr } from "./expression.js";

/** A fact on a subject. */
export interface Reading extends Computed {
  /** Something was written for it, be it `unknown`. Where it is not set, a value counts as given. */
  readonly given?: boolean;
}

export type Truth = "true" | "false" | "unsettled" | "unknown" | "without";

/** What an expression came to, with all that decided it. */
export interface Evaluated {
  readonly is: "interval" | "choice" | "unknown" | "without" | Truth;
  readonly interval?: Interval;
  readonly dimension?: Dimension;
  readonly unit?: ShownUnit;
  readonly choice?: string;
  /** Why it is `without`. */
  readonly reason?: string;
  readonly missing: readonly Missing[];
  readonly assumed: readonly Assumption[];
  /** The facts that decided it. */
  readonly facts: readonly Reading[];
}

export interface Reader {
  fact(name: string): Reading;
  limit(
    name: string,
  ): { readonly interval: Interval; readonly dimension: Dimension; readonly unit: ShownUnit } | undefined;
}

/** Differences below this (a nanometre, a microgram) are none. */
export const equalWithin = 1e-9;

const none: readonly never[] = [];

/** Whether something that a tape could measure in the home was only assumed. */
export const restsOnAssumption = (e: { readonly assumed: readonly Assumption[] }): boolean =>
  e.assumed.some((a) => a.tapeable);

export function evaluate(expr: Expr, reader: Reader): Evaluated {
  switch (expr.op) {
    case "value":
      return {
        is: "interval",
        interval: exactly(expr.value),
        dimension: expr.dimension,
        unit: expr.unit,
        missing: none,
        assumed: none,
        facts: none,
      };
    case "name":
      return named(expr.name, reader);
    case "sum":
      return arithmetic(
        expr.terms.map((t) => evaluate(t.of, reader)),
        (values) => values.reduce((sum, v, i) => plus(sum, expr.terms[i]!.minus ? negate(v) : v), exactly(0)),
      );
    case "product":
      return product(
        expr.factors,
        expr.factors.map((f) => evaluate(f.of, reader)),
      );
    case "smaller":
    case "larger": {
      const pick = expr.op === "smaller" ? smaller : larger;
      return arithmetic(
        expr.of.map((e) => evaluate(e, reader)),
        (values) => values.reduce((a, b) => pick(a, b)),
      );
    }
    case "compare":
      return compare(evaluate(expr.left, reader), evaluate(expr.right, reader), expr.how);
    case "is":
      return isTest(expr, reader);
    case "known":
    case "given": {
      const fact = expr.of.op === "name" ? reader.fact(expr.of.name) : undefined;
      if (!fact) return { is: "unknown", missing: none, assumed: none, facts: none };
      const known = fact.value !== undefined || fact.choice !== undefined;
      if (fact.without !== undefined)
        return { is: "without", reason: fact.without, missing: none, assumed: none, facts: [fact] };
      const yes = expr.op === "known" ? known : (fact.given ?? known);
      return {
        is: yes !== expr.not ? "true" : "false",
        missing: fact.missing,
        assumed: fact.assumed,
        facts: [fact],
      };
    }
    case "and":
      return decide(expr.of, reader, ["false", "without", "unknown", "unsettled", "true"]);
    case "or":
      return decide(expr.of, reader, ["true", "unknown", "unsettled", "false", "without"]);
    case "not": {
      const e = evaluate(expr.of, reader);
      return e.is === "true" ? { ...e, is: "false" } : e.is === "false" ? { ...e, is: "true" } : e;
    }
  }
}

function named(name: string, reader: Reader): Evaluated {
  const limit = reader.limit(name);
  if (limit) {
    const { interval, dimension, unit } = limit;
    return { is: "interval", interval, dimension, unit, missing: none, assumed: none, facts: none };
  }
  const fact = reader.fact(name);
  const { missing, assumed, dimension, unit, choice, without } = fact;
  const facts = [fact];
  if (without !== undefined)
    return { is: "without", reason: without, missing, assumed, facts, dimension, unit };
  if (fact.value) {
    const interval = sane(fact.value);
    return choice === undefined
      ? { is: "interval", interval, missing, assumed, facts, dimension, unit }
      : { is: "interval", interval, choice, missing, assumed, facts, dimension, unit };
  }
  return choice !== undefined
    ? { is: "choice", choice, missing, assumed, facts, dimension, unit }
    : { is: "unknown", missing, assumed, facts, dimension, unit };
}

/** NaN, which infinities can make of each other, becomes the widest bound that is still true. */
function sane(a: Interval): Interval {
  const low = Number.isNaN(a.low) ? -Infinity : a.low;
  const high = Number.isNaN(a.high) ? Infinity : a.high;
  if (low > high) return entire;
  const nominal = Number.isFinite(a.nominal)
    ? a.nominal
    : Number.isFinite(low)
      ? low
      : Number.isFinite(high)
        ? high
        : 0;
  return low === a.low && high === a.high && nominal === a.nominal
    ? a
    : { low, nominal: Math.min(high, Math.max(low, nominal)), high };
}

const plus = (a: Interval, b: Interval): Interval =>
  sane({ low: a.low + b.low, nominal: a.nominal + b.nominal, high: a.high + b.high });

function arithmetic(parts: readonly Evaluated[], work: (values: readonly Interval[]) => Interval): Evaluated {
  const lacking = parts.find((p) => p.is === "without") ?? parts.find((p) => p.is === "choice");
  if (lacking) {
    const reason = lacking.reason ?? `${lacking.facts[0]?.name ?? "it"} is ${lacking.choice}`;
    const { missing, assumed, facts } = lacking;
    return { is: "without", reason, missing, assumed, facts };
  }
  const { missing, assumed, facts } = merged(parts);
  if (parts.some((p) => !p.interval)) return { is: "unknown", missing, assumed, facts };
  const interval = sane(work(parts.map((p) => p.interval!)));
  const { dimension, unit } = parts.find((p) => p.facts.length > 0) ?? parts[0]!;
  return { is: "interval", interval, dimension, unit, missing, assumed, facts };
}

type Factors = Extract<Expr, { readonly op: "product" }>["factors"];

/** A product has the dimension that its factors make: a length divided by a length is a ratio and is shown as one. */
function product(factors: Factors, parts: readonly Evaluated[]): Evaluated {
  const made = arithmetic(parts, (values) =>
    values.reduce((so, v, i) => (i === 0 ? v : sane(factors[i]!.under ? divide(so, v) : multiply(so, v)))),
  );
  if (made.is !== "interval") return made;
  const dimension = parts.reduce<Dimension | undefined>((so, p, i) => {
    if (i === 0 || so === undefined || p.dimension === undefined) return p.dimension;
    return combine({ dimension: so, bare: false }, { dimension: p.dimension, bare: false }, factors[i]!.under)
      ?.dimension;
  }, undefined);
  if (dimension === undefined || dimension === made.dimension) return made;
  const like = parts.filter((p) => p.dimension === dimension);
  const unit = (like.find((p) => p.facts.length > 0) ?? like[0])?.unit ?? { unit: "1" };
  return { ...made, dimension, unit };
}

/** How one value stands to another, with the evidence of both. */
export function compare(a: Evaluated, b: Evaluated, how: Comparison): Evaluated {
  if (a.is !== "interval" || b.is !== "interval") {
    const difference = arithmetic([a, b], () => exactly(0));
    if (difference.is !== "interval") return difference;
  }
  const { missing, assumed, facts } = merged([a, b]);
  return { is: compared(a.interval!, b.interval!, how), missing, assumed, facts };
}

function compared(x: Interval, y: Interval, how: Comparison): "true" | "false" | "unsettled" {
  switch (how) {
    case "more than":
      return x.low > y.high + equalWithin ? "true" : x.high <= y.low + equalWithin ? "false" : "unsettled";
    case "at most":
      return x.high <= y.low + equalWithin ? "true" : x.low > y.high + equalWithin ? "false" : "unsettled";
    case "less than":
      return x.high < y.low - equalWithin ? "true" : x.low >= y.high - equalWithin ? "false" : "unsettled";
    case "at least":
      return x.low >= y.high - equalWithin ? "true" : x.high < y.low - equalWithin ? "false" : "unsettled";
  }
}

function isTest(expr: Expr & { readonly op: "is" }, reader: Reader): Evaluated {
  const of = evaluate(expr.of, reader);
  if (of.is === "without" || of.is === "unknown") return of;
  let others: Evaluated[] | undefined;
  let same = false;
  for (const w of expr.words) {
    if (w.word === of.choice) same = true;
    if (w.word.includes("."))
      (others ??= []).push(evaluate({ op: "name", name: w.word, start: w.start, end: w.end }, reader));
  }
  if (!others) {
    const { missing, assumed, facts } = of;
    return { is: same !== expr.not ? "true" : "false", missing, assumed, facts };
  }
  const all = merged([of, ...others]);
  same ||= of.choice !== undefined && others.some((o) => o.choice === of.choice);
  if (!same) {
    const open = others.find((o) => o.is === "without") ?? others.find((o) => o.is === "unknown");
    if (open) return { ...all, is: open.is, ...(open.reason !== undefined && { reason: open.reason }) };
  }
  return { ...all, is: same !== expr.not ? "true" : "false" };
}

function decide(of: readonly Expr[], reader: Reader, order: readonly Truth[]): Evaluated {
  const parts = of.map((e) => evaluate(e, reader));
  for (const truth of order) {
    const same = parts.filter((p) => p.is === truth);
    if (same.length === 0) continue;
    // The strongest result decides alone: one that rests on nothing assumed is preferred, and all of them count where all are needed.
    if (truth === order[0]) {
      const firm = same.find((p) => !restsOnAssumption(p)) ?? same[0]!;
      return { ...firm, is: truth };
    }
    const counted = truth === order[order.length - 1] || truth === "unsettled" ? parts : same;
    const reason = same.find((p) => p.reason !== undefined)?.reason;
    return { ...merged(counted), is: truth, ...(reason !== undefined && { reason }) };
  }
  return { ...merged(parts), is: "unknown" };
}

/** The evidence of several parts together. */
function merged(parts: readonly Evaluated[]): {
  missing: readonly Missing[];
  assumed: readonly Assumption[];
  facts: readonly Reading[];
} {
  // Numbers and limits bring no evidence, so mostly one part has all of it.
  const tells = (p: Evaluated): boolean => p.facts.length + p.missing.length + p.assumed.length > 0;
  const first = parts.find(tells) ?? parts[0]!;
  if (!parts.some((p) => p !== first && tells(p))) {
    const { missing, assumed, facts } = first;
    return { missing, assumed, facts };
  }
  const missing: Missing[] = [];
  const assumed: Assumption[] = [];
  const facts: Reading[] = [];
  for (const p of parts) {
    for (const m of p.missing) if (!missing.some((n) => n.what === m.what)) missing.push(m);
    for (const a of p.assumed) if (!assumed.some((b) => b.name === a.name)) assumed.push(a);
    for (const f of p.facts) if (!facts.includes(f)) facts.push(f);
  }
  return { missing, assumed, facts };
}
