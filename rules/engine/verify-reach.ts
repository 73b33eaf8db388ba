/** Parts of a rule that can never come to anything: conditions that exclude each other, bands and grades that nothing reaches. */
import { inOrder, rank } from "./bands.js";
import { rangeInWords } from "./band-words.js";
import type { Names } from "./dimensions.js";
import { visit, type Expr } from "./expression.js";
import { equalWithin, evaluate } from "./logic.js";
import { problemAt } from "./read.js";
import type { Band, Rule, RulePlace, SetProblem } from "./types.js";
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

/** What a condition of a rule asks, with its place. */
export interface Condition {
  readonly ask: Ask;
  readonly at: RulePlace;
}

/** What the conditions of a rule ask. */
export function conditionsOf(rule: Rule, limits: Limits): readonly Condition[] {
  const found: Condition[] = [];
  for (const { expr, at } of rule.when) for (const ask of asksOf(expr, limits)) found.push({ ask, at });
  return found;
}

/** Two of these that no value can meet at once. */
export function excluding(
  asked: readonly Condition[],
  choices?: Choices,
): readonly [Condition, Condition] | undefined {
  for (let i = 1; i < asked.length; i++)
    for (let j = 0; j < i; j++) {
      const [a, b] = [asked[j]!, asked[i]!];
      if (a.ask.key === b.ask.key && !together(a.ask, b.ask, choices?.(a.ask.key))) return [a, b];
    }
  return undefined;
}

/** Reports what can never apply, never be reached, or never fail; true where there is nothing of that. */
export function verifyReach(
  rule: Rule,
  conditions: readonly Condition[],
  limits: Limits,
  names: Names,
  report: Report,
): boolean {
  const choices: Choices = (name) => names.fact(name)?.choices;
  let reached = true;
  const unreached = (at: RulePlace, message: string): void => {
    reached = false;
    report(problemAt(at, "rules/unreachable", message));
  };
  const never = excluding(conditions, choices);
  const asked = conditions.map((c) => c.ask);
  if (never) {
    const [a, b] = never;
    unreached(
      b.at,
      `This rule can never apply: ${a.ask.of()} cannot be both ${a.ask.says()} and ${b.ask.says()}.`,
    );
  } else if (rule.judged.is === "require") verifyRequired(rule.judged, asked, limits, choices, unreached);
  else verifyBandsReached(rule.judged, asked, choices, unreached);
  return reached;
}

const nothing = (): string => "";

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
        `This can never hold: the rule applies where ${a.of()} is ${a.says()}, and asks for ${d.says()}.`,
      );
      return;
    }
  const one = demands.length === 1 && judged.expr.op !== "and" ? demands[0] : undefined;
  const always = one && asked.find((a) => a.key === one.key && within(a, one, choices(a.key)));
  if (always)
    unreached(
      judged.at,
      `This can never fail: the rule applies only where ${always.of()} is ${always.says()} already.`,
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
    const asks: Ask = { key, of: nothing, says: nothing, words: { not: false, of: new Set(c.choices) } };
    const shut = own.find((a) => !together(a, asks, choices(key)));
    if (shut)
      unreached(
        c.at,
        `This band is never reached: the rule applies only where ${shut.of()} is ${shut.says()}.`,
      );
  }
  if (own.length === 0 && !judged.bands.some(isPoint)) return;
  const sorted = inOrder(judged.bands);
  for (let i = 0; i < sorted.length; i++) {
    const band = sorted[i]!;
    const [low, high] = [band.low.value, band.high.value];
    const point = isPoint(band);
    // A boundary belongs to the milder side, so a band of one point is met only if it is milder than both of its neighbours.
    const milder = [sorted[i - 1], sorted[i + 1]].every((n) => !n || rank(n.grade) > rank(band.grade));
    if (point && !milder) {
      unreached(
        band.at,
        "This band is never reached: it is one value, which belongs to the milder band beside it.",
      );
      continue;
    }
    const stretch = { low, high, lowOpen: !point, highOpen: !point };
    const asks: Ask = { key, of: nothing, says: nothing, stretches: [stretch] };
    const shut = own.find((a) => !together(a, asks));
    if (shut)
      unreached(
        band.at,
        `This band (${rangeInWords(band, judged.signed)}) is never reached: the rule applies only where ${shut.of()} is ${shut.says()}.`,
      );
  }
}

const isPoint = (band: Band): boolean => band.high.value - band.low.value <= equalWithin;

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
