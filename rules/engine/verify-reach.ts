/** Parts of a rule that can never come to anything: conditions that exclude each other, bands and grades that nothing reaches. */
import { inOrder, rank } from "./bands.js";
import { rangeInWords } from "./band-words.js";
import type { Names } from "./dimensions.js";
import { visit, type Expr } from "./expression.js";
import { equalWithin, evaluate } from "./logic.js";
import { problemAt } from "./read.js";
import type { Rule, RulePlace, SetProblem } from "./types.js";
import {
  asksOf,
  keyOf,
  limitsOnly,
  readsNoFact,
  together,
  within,
  type Ask,
  type Limits,
} from "./verify-asks.js";

type Report = (p: SetProblem) => void;
type Choices = (name: string) => readonly string[] | undefined;

/** What the conditions of a rule ask, each with its place. */
export const conditionsOf = (rule: Rule, limits: Limits): readonly (Ask & { readonly at: RulePlace })[] =>
  rule.when.flatMap((w) => asksOf(w.expr, limits).map((a) => ({ ...a, at: w.at })));

/** Two of these that no value can meet at once. */
export function excluding<A extends Ask>(
  asked: readonly A[],
  choices?: Choices,
): readonly [A, A] | undefined {
  for (const [i, b] of asked.entries())
    for (const a of asked.slice(0, i))
      if (a.key === b.key && !together(a, b, choices?.(a.key))) return [a, b];
  return undefined;
}

/** Reports what can never apply, never be reached, or never fail; true where there is nothing of that. */
export function verifyReach(rule: Rule, limits: Limits, names: Names, report: Report): boolean {
  const choices: Choices = (name) => names.fact(name)?.choices;
  const asked = conditionsOf(rule, limits);
  let reached = true;
  const unreached = (at: RulePlace, message: string): void => {
    reached = false;
    report(problemAt(at, "rules/unreachable", message));
  };
  const never = excluding(asked, choices);
  if (never) {
    const [a, b] = never;
    unreached(b.at, `This rule can never apply: ${a.of} cannot be both ${a.says} and ${b.says}.`);
  } else if (rule.judged.is === "require") verifyRequired(rule.judged, asked, limits, choices, unreached);
  else verifyBandsReached(rule.judged, asked, choices, unreached);
  return reached;
}

type Unreached = (at: RulePlace, message: string) => void;

function verifyRequired(
  judged: Rule["judged"] & { readonly is: "require" },
  asked: readonly Ask[],
  limits: Limits,
  choices: Choices,
  unreached: Unreached,
): void {
  const demands = asksOf(judged.expr, limits);
  for (const d of demands)
    for (const a of asked) {
      if (a.key !== d.key || together(a, d, choices(a.key))) continue;
      unreached(
        judged.at,
        `This can never hold: the rule applies where ${a.of} is ${a.says}, and asks for ${d.says}.`,
      );
      return;
    }
  const one = demands.length === 1 && judged.expr.op !== "and" ? demands[0] : undefined;
  const always = one && asked.find((a) => a.key === one.key && within(a, one, choices(a.key)));
  if (always)
    unreached(
      judged.at,
      `This can never fail: the rule applies only where ${always.of} is ${always.says} already.`,
    );
}

function verifyBandsReached(
  judged: Rule["judged"] & { readonly is: "bands" },
  asked: readonly Ask[],
  choices: Choices,
  unreached: Unreached,
): void {
  const key = keyOf(judged.expr);
  const own = asked.filter((a) => a.key === key);
  for (const c of judged.choices) {
    const asks: Ask = { key, of: "", says: "", words: { not: false, of: new Set(c.choices) } };
    const shut = own.find((a) => !together(a, asks, choices(key)));
    if (shut)
      unreached(c.at, `This band is never reached: the rule applies only where ${shut.of} is ${shut.says}.`);
  }
  const sorted = inOrder(judged.bands);
  for (const [i, band] of sorted.entries()) {
    const [low, high] = [band.low.value, band.high.value];
    const point = high - low <= equalWithin;
    // A boundary belongs to the milder side, so a band of one point is met only if it is milder than both of its neighbours.
    const milder = [sorted[i - 1], sorted[i + 1]].every((n) => !n || rank(n.grade) > rank(band.grade));
    if (point && !milder) {
      unreached(
        band.at,
        "This band is never reached: it is one value, which belongs to the milder band beside it.",
      );
      continue;
    }
    const range = rangeInWords(band, judged.signed);
    const stretch = { low, high, lowOpen: !point, highOpen: !point };
    const asks: Ask = { key, of: "", says: range, stretches: [stretch] };
    const shut = own.find((a) => !together(a, asks));
    if (shut)
      unreached(
        band.at,
        `This band (${range}) is never reached: the rule applies only where ${shut.of} is ${shut.says}.`,
      );
  }
}

/** Whether what a rule reads comes to something: facts to look at, and numbers that are numbers. */
export function verifyNumbers(rule: Rule, limits: Limits, report: Report): void {
  const parts: readonly (readonly [Expr, RulePlace])[] = [
    ...rule.when.map((w) => [w.expr, w.at] as const),
    [rule.judged.expr, rule.judged.at],
  ];
  for (const [expr, at] of parts) {
    const say = (e: Expr, message: string): void =>
      report(problemAt(at, "rules/expression", message, { start: e.start, end: e.end }));
    if (readsNoFact(expr, limits)) say(expr, "This reads nothing of the home: it is the same for everybody.");
    visit(expr, (e) => {
      if (e.op !== "product" && e.op !== "sum") return;
      const reader = limitsOnly(limits);
      if (e.op === "product")
        for (const f of e.factors) {
          if (!f.under || !readsNoFact(f.of, limits)) continue;
          const by = evaluate(f.of, reader).interval;
          if (by && Math.abs(by.nominal) <= equalWithin) return say(f.of, "This divides by zero.");
        }
      if (!readsNoFact(e, limits)) return;
      const value = evaluate(e, reader).interval;
      if (value && !(Number.isFinite(value.low) && Number.isFinite(value.high)))
        say(e, "This comes to more than any number.");
    });
  }
}
