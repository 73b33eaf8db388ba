/** Every expression that differs from a given one in a single place: a number, a comparison, a word between conditions. */
import type { Dimension, ShownUnit } from "../../language/quantity/types.js";
import { fromSi, toSi, unitOf } from "../../language/quantity/units.js";
import Fraction from "fraction.js";
import type { Comparison, Expr } from "../../rules/engine/expression.js";

/** What was changed in one place, and into what. */
export interface Changed<T> {
  readonly kind: Kind;
  /** Such as `3 in -> 3.3 in`. */
  readonly said: string;
  readonly value: T;
}

export type Kind =
  | "limit"
  | "band end"
  | "number"
  | "comparison"
  | "boundary"
  | "is and is not"
  | "word"
  | "and and or"
  | "not"
  | "sign"
  | "smaller and larger"
  | "band's level"
  | "required level"
  | "condition";

const opposite: Readonly<Record<Comparison, Comparison>> = {
  "more than": "at most",
  "at most": "more than",
  "less than": "at least",
  "at least": "less than",
};
/** The same comparison but for the value exactly on the limit. */
const beside: Readonly<Record<Comparison, Comparison>> = {
  "more than": "at least",
  "at least": "more than",
  "less than": "at most",
  "at most": "less than",
};

/** One step of a unit: the mark of a tape for lengths in inches, a whole one for the rest. */
const stepOf = (unit: ShownUnit): number =>
  unit.unit === "1"
    ? 1
    : unit.unit === "in"
      ? toSi(new Fraction(1, 8), unitOf("in"))
      : toSi(new Fraction(1), unitOf(unit.unit));

const shown = (x: number, unit: ShownUnit): string =>
  unit.unit === "1"
    ? `${Number(x.toPrecision(6))}`
    : `${Number(fromSi(x, unitOf(unit.unit)).toPrecision(6))} ${unit.unit}`;

/**
 * The numbers next to a number: a tenth more and a tenth less; beside zero, and for counts, which have no tenths, one step more
 * and one step less.
 */
export function nextTo(
  x: number,
  dimension: Dimension,
  unit: ShownUnit,
): readonly { readonly value: number; readonly said: string }[] {
  const step = x === 0 || (dimension === "number" && Number.isInteger(x)) ? stepOf(unit) : Math.abs(x) / 10;
  return [x + step, x - step].map((value) => ({
    value,
    said: `${shown(x, unit)} -> ${shown(value, unit)}`,
  }));
}

export function* changedExpressions(e: Expr, isCount: (e: Expr) => boolean): Generator<Changed<Expr>> {
  const inside = function* (of: Expr, put: (with_: Expr) => Expr): Generator<Changed<Expr>> {
    for (const c of changedExpressions(of, isCount)) yield { ...c, value: put(c.value) };
  };
  const each = function* (
    parts: readonly Expr[],
    put: (with_: readonly Expr[]) => Expr,
  ): Generator<Changed<Expr>> {
    for (const [i, part] of parts.entries())
      yield* inside(part, (with_) => put(parts.map((p, j) => (i === j ? with_ : p))));
  };
  switch (e.op) {
    case "value":
      for (const n of nextTo(e.value, isCount(e) ? "number" : e.bare ? "ratio" : e.dimension, e.unit))
        yield { kind: "number", said: n.said, value: { ...e, value: n.value } };
      return;
    case "name":
      return;
    case "sum":
      for (const [i, t] of e.terms.entries()) {
        // The sign of the first term belongs to its number.
        if (i > 0)
          yield {
            kind: "sign",
            said: t.minus ? "- -> +" : "+ -> -",
            value: { ...e, terms: e.terms.map((u, j) => (i === j ? { ...u, minus: !u.minus } : u)) },
          };
        yield* inside(t.of, (of) => ({ ...e, terms: e.terms.map((u, j) => (i === j ? { ...u, of } : u)) }));
      }
      return;
    case "product":
      for (const [i, f] of e.factors.entries()) {
        if (i > 0)
          yield {
            kind: "sign",
            said: f.under ? "/ -> *" : "* -> /",
            value: { ...e, factors: e.factors.map((g, j) => (i === j ? { ...g, under: !g.under } : g)) },
          };
        yield* inside(f.of, (of) => ({
          ...e,
          factors: e.factors.map((g, j) => (i === j ? { ...g, of } : g)),
        }));
      }
      return;
    case "smaller":
    case "larger": {
      const other = e.op === "smaller" ? "larger" : "smaller";
      yield { kind: "smaller and larger", said: `${e.op} -> ${other}`, value: { ...e, op: other } };
      yield* each(e.of, (of) => ({ ...e, of }));
      return;
    }
    case "compare":
      for (const [kind, how] of [
        ["comparison", opposite[e.how]],
        ["boundary", beside[e.how]],
      ] as const)
        yield { kind, said: `${e.how} -> ${how}`, value: { ...e, how } };
      yield* inside(e.left, (left) => ({ ...e, left }));
      yield* inside(e.right, (right) => ({ ...e, right }));
      return;
    case "is":
      yield {
        kind: "is and is not",
        said: e.not ? "is not -> is" : "is -> is not",
        value: { ...e, not: !e.not },
      };
      if (e.words.length > 1)
        for (const w of e.words)
          yield {
            kind: "word",
            said: `without ${w.word}`,
            value: { ...e, words: e.words.filter((x) => x !== w) },
          };
      return;
    case "known":
    case "given":
      yield {
        kind: "is and is not",
        said: e.not ? `is not ${e.op} -> is ${e.op}` : `is ${e.op} -> is not ${e.op}`,
        value: { ...e, not: !e.not },
      };
      return;
    case "and":
    case "or": {
      const other = e.op === "and" ? "or" : "and";
      yield { kind: "and and or", said: `${e.op} -> ${other}`, value: { ...e, op: other } };
      yield* each(e.of, (of) => ({ ...e, of }));
      return;
    }
    case "not":
      yield { kind: "not", said: "without not", value: e.of };
      yield* inside(e.of, (of) => ({ ...e, of }));
      return;
  }
}
