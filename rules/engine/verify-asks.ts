/**
 * What conditions, requirements and bands ask of a value, as far as that can be read off their text: a stretch of the line, or
 * some of its words. What cannot be read off asks nothing, so whatever is concluded from this is certain.
 */
import { holding } from "./bands.js";
import { rangeInWords } from "./band-words.js";
import { readsAny, type Comparison, type Expr } from "./expression.js";
import { equalWithin, evaluate, type Reader } from "./logic.js";
import { nameInWords, phrase, valueInWords } from "./phrase.js";
import type { LimitValue, Rule } from "./types.js";

/** A stretch of the line; an open end does not belong to it. */
interface Stretch {
  readonly low: number;
  readonly high: number;
  readonly lowOpen: boolean;
  readonly highOpen: boolean;
}

export interface Ask {
  /** The name of the fact, or the whole expression: the same text is the same value. */
  readonly key: string;
  /** The value as people say it. Words are put together where something is wrong, and seldom is. */
  readonly of: () => string;
  readonly stretches?: readonly Stretch[];
  /** Words that are asked for, or ruled out. */
  readonly words?: { readonly not: boolean; readonly of: ReadonlySet<string> };
  /** In words: `at most 1 in`. */
  readonly says: () => string;
}

export type Limits = ReadonlyMap<string, LimitValue>;

/** A reader that knows the limits and no fact. */
export const limitsOnly = (limits: Limits): Reader => ({
  fact: (name) => ({
    name,
    dimension: "number",
    value: undefined,
    missing: [],
    assumed: [],
    trace: [],
    unit: { unit: "1" },
  }),
  limit: (name) => limits.get(name),
});

/** Whether an expression reads nothing but numbers and limits. */
export const readsNoFact = (e: Expr, limits: Limits): boolean => !readsAny(e, (name) => !limits.has(name));

/** The text by which the same value is known again: all of an expression but where it stands and in which unit it was written. */
export function keyOf(e: Expr): string {
  switch (e.op) {
    case "name":
      return e.name;
    case "value":
      return `(${e.value} ${e.dimension}${e.bare ? " bare" : ""}${e.signed ? " signed" : ""})`;
    case "sum":
      return `(sum ${e.terms.map((t) => `${t.minus ? "-" : "+"}${keyOf(t.of)}`).join(" ")})`;
    case "product":
      return `(product ${e.factors.map((f) => `${f.under ? "/" : "*"}${keyOf(f.of)}`).join(" ")})`;
    case "smaller":
    case "larger":
    case "and":
    case "or":
      return `(${e.op} ${e.of.map(keyOf).join(" ")})`;
    case "compare":
      return `(${keyOf(e.left)} ${e.how} ${keyOf(e.right)})`;
    case "is":
      return `(${keyOf(e.of)} is${e.not ? " not" : ""} ${e.words.map((w) => w.word).join(",")})`;
    case "known":
    case "given":
      return `(${keyOf(e.of)} is${e.not ? " not" : ""} ${e.op})`;
    case "not":
      return `(not ${keyOf(e.of)})`;
  }
}

const opposite: Readonly<Record<Comparison, Comparison>> = {
  "more than": "at most",
  "at most": "more than",
  "less than": "at least",
  "at least": "less than",
};
/** `3 in at least x` asks of x what `x at most 3 in` asks. */
const turned: Readonly<Record<Comparison, Comparison>> = {
  "more than": "less than",
  "less than": "more than",
  "at most": "at least",
  "at least": "at most",
};

function stretchOf(how: Comparison, x: number): Stretch {
  const none = { low: -Infinity, high: Infinity, lowOpen: false, highOpen: false };
  switch (how) {
    case "at most":
      return { ...none, high: x };
    case "less than":
      return { ...none, high: x, highOpen: true };
    case "at least":
      return { ...none, low: x };
    case "more than":
      return { ...none, low: x, lowOpen: true };
  }
}

/** What an expression that must be true asks of single values. An `or` asks nothing of any one of them. */
export function asksOf(expr: Expr, limits: Limits, not = false): readonly Ask[] {
  switch (expr.op) {
    case "and":
      return not ? [] : expr.of.flatMap((e) => asksOf(e, limits));
    case "or":
      return not ? expr.of.flatMap((e) => asksOf(e, limits, true)) : [];
    case "not":
      return asksOf(expr.of, limits, !not);
    case "compare": {
      const [left, right] = [readsNoFact(expr.left, limits), readsNoFact(expr.right, limits)];
      if (left === right) return [];
      const [value, fixed] = left ? [expr.right, expr.left] : [expr.left, expr.right];
      const to = evaluate(fixed, limitsOnly(limits));
      if (!to.interval || to.interval.low !== to.interval.high) return [];
      const said = left ? turned[expr.how] : expr.how;
      const how = not ? opposite[said] : said;
      const { nominal } = to.interval;
      const shown = (): string => valueInWords(nominal, to.dimension ?? "number", to.unit ?? { unit: "1" });
      return [
        {
          key: keyOf(value),
          of: () => phrase(value),
          stretches: [stretchOf(how, nominal)],
          says: () => `${how} ${shown()}`,
        },
      ];
    }
    case "is": {
      if (expr.words.some((w) => w.word.includes("."))) return [];
      const of = new Set(expr.words.map((w) => w.word));
      const ruledOut = expr.not !== not;
      return [
        {
          key: keyOf(expr.of),
          of: () => phrase(expr.of),
          words: { not: ruledOut, of },
          says: () => `${ruledOut ? "not " : ""}${[...of].join(" or ")}`,
        },
      ];
    }
    case "known":
    case "given":
      return [
        {
          key: `${keyOf(expr.of)} ${expr.op}`,
          of: () => phrase(expr.of),
          words: { not: false, of: new Set([expr.not === not ? "yes" : "no"]) },
          says: () => (expr.not === not ? expr.op : `not ${expr.op}`),
        },
      ];
    default:
      return [];
  }
}

/** What has to be so for a rule to hold. */
export function demandsOf(rule: Rule, limits: Limits): readonly Ask[] {
  const { judged } = rule;
  if (judged.is === "require") return asksOf(judged.expr, limits);
  const name = { key: keyOf(judged.expr), of: () => phrase(judged.expr, nameInWords) };
  if (judged.choices.length > 0) {
    const of = new Set(judged.choices.filter((c) => c.grade === "holds").flatMap((c) => c.choices));
    return [{ ...name, words: { not: false, of }, says: () => [...of].join(" or ") }];
  }
  const held = holding(judged.bands);
  return [
    {
      ...name,
      stretches: held.map((h) => ({ low: h.low.value, high: h.high.value, lowOpen: false, highOpen: false })),
      says: () => held.map((h) => rangeInWords(h, judged.signed)).join(", "),
    },
  ];
}

/** Whether one value can be what both ask. `choices`: all words that the value can be, where they are known. */
export function together(a: Ask, b: Ask, choices?: readonly string[]): boolean {
  if (a.words && b.words) {
    const fits = (x: Ask, word: string): boolean => x.words!.of.has(word) !== x.words!.not;
    // Of two lists of words that are ruled out nothing follows unless it is known which words there are.
    const candidates =
      choices ?? (!a.words.not ? [...a.words.of] : !b.words.not ? [...b.words.of] : undefined);
    return !candidates || candidates.some((w) => fits(a, w) && fits(b, w));
  }
  if (!a.stretches || !b.stretches) return true;
  return a.stretches.some((p) => b.stretches!.some((q) => overlap(p, q)));
}

function overlap(p: Stretch, q: Stretch): boolean {
  const [low, high] = [Math.max(p.low, q.low), Math.min(p.high, q.high)];
  if (low < high - equalWithin) return true;
  if (low > high + equalWithin) return false;
  // They have one point in common, if it belongs to both.
  const open = (s: Stretch): boolean =>
    (s.lowOpen && s.low >= low - equalWithin) || (s.highOpen && s.high <= high + equalWithin);
  return !open(p) && !open(q);
}

/** Whether everything that `a` allows is also allowed by `b`. */
export function within(a: Ask, b: Ask, choices?: readonly string[]): boolean {
  if (a.words && b.words) {
    const of = a.words.not ? choices?.filter((w) => !a.words!.of.has(w)) : [...a.words.of];
    return of !== undefined && of.every((w) => b.words!.of.has(w) !== b.words!.not);
  }
  if (!a.stretches || !b.stretches) return false;
  return a.stretches.every((p) =>
    b.stretches!.some(
      (q) =>
        (q.low < p.low - equalWithin || (q.low <= p.low + equalWithin && (!q.lowOpen || p.lowOpen))) &&
        (q.high > p.high + equalWithin || (q.high >= p.high - equalWithin && (!q.highOpen || p.highOpen))),
    ),
  );
}
