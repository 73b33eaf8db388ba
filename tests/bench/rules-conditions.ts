/**
 * The rules of a set as conditions of a general rule engine: the same comparisons over the same facts, with the facts given as
 * plain values. Arithmetic inside an expression is handed over worked out, for that engine has none; an interval is two values.
 */
import type { TopLevelCondition, NestedCondition, RuleProperties } from "json-rules-engine";
import { inOrder } from "../../rules/engine/bands.js";
import type { Comparison, Expr } from "../../rules/engine/expression.js";
import { visit } from "../../rules/engine/expression.js";
import { evaluate, type Reader } from "../../rules/engine/logic.js";
import { phrase } from "../../rules/engine/phrase.js";
import type { Rule, RuleSet } from "../../rules/engine/types.js";

const key = (e: Expr): string => phrase(e, (n) => n);
const isValue = (e: Expr): boolean => !["compare", "is", "known", "given", "and", "or", "not"].includes(e.op);

/** Which end of the left and of the right interval decides whether a comparison is certain, and the operator between them. */
const ends: Readonly<Record<Comparison, readonly [left: string, right: string, operator: string]>> = {
  "at most": ["high", "low", "lessThanInclusive"],
  "less than": ["high", "low", "lessThan"],
  "at least": ["low", "high", "greaterThanInclusive"],
  "more than": ["low", "high", "greaterThan"],
};

/** A value that depends on no fact is given as a number, every other one by the name of its fact. */
function valueOf(e: Expr, end: string, set: RuleSet): number | { fact: string } {
  const fixed =
    e.op === "value" ? e.value : e.op === "name" ? set.limits.get(e.name)?.interval.nominal : undefined;
  return fixed ?? { fact: `${key(e)} ${end}` };
}

function condition(e: Expr, set: RuleSet): NestedCondition {
  switch (e.op) {
    case "and":
      return { all: e.of.map((x) => condition(x, set)) };
    case "or":
      return { any: e.of.map((x) => condition(x, set)) };
    case "not":
      return { not: condition(e.of, set) };
    case "compare": {
      const [l, r, operator] = ends[e.how];
      return { fact: `${key(e.left)} ${l}`, operator, value: valueOf(e.right, r, set) };
    }
    case "is": {
      const words = e.words.map((w) => w.word);
      return { fact: key(e.of), operator: e.not ? "notIn" : "in", value: words };
    }
    case "known":
    case "given":
      return { fact: `${key(e.of)} ${e.op}`, operator: "equal", value: !e.not };
    default:
      throw new Error(`${e.op} is no condition`);
  }
}

/** A rule as one rule of that engine for each grade that it can give: what applies, and which band or requirement it is. */
export function rulesOf(rule: Rule, set: RuleSet): readonly RuleProperties[] {
  const when = rule.when.map((w) => condition(w.expr, set));
  const made = (level: string, more: readonly NestedCondition[]): RuleProperties => ({
    name: rule.id,
    conditions: { all: [...when, ...more] } as TopLevelCondition,
    event: { type: level, params: { rule: rule.id } },
  });
  const { judged } = rule;
  if (judged.is === "require") return [made(judged.level, [{ not: condition(judged.expr, set) }])];
  const of = key(judged.expr);
  return [
    ...judged.choices.map((c) => made(c.grade, [{ fact: of, operator: "in", value: [...c.choices] }])),
    ...inOrder(judged.bands).map((b) =>
      made(b.grade, [
        ...(Number.isFinite(b.low.value)
          ? [{ fact: `${of} high`, operator: "greaterThan", value: b.low.value }]
          : []),
        ...(Number.isFinite(b.high.value)
          ? [{ fact: `${of} low`, operator: "lessThanInclusive", value: b.high.value }]
          : []),
      ]),
    ),
  ];
}

/** The facts that those rules read, as plain values. */
export function valuesFor(rules: readonly Rule[], reader: Reader): Readonly<Record<string, unknown>> {
  const values: Record<string, unknown> = {};
  const put = (e: Expr): void => {
    const name = key(e);
    const got = evaluate(e, reader);
    if (got.choice !== undefined) values[name] = got.choice;
    if (!got.interval) return;
    values[`${name} low`] = got.interval.low;
    values[`${name} high`] = got.interval.high;
  };
  for (const rule of rules)
    for (const expr of [...rule.when.map((w) => w.expr), rule.judged.expr]) {
      if (isValue(expr)) put(expr);
      visit(expr, (e) => {
        if (e.op === "compare") for (const side of [e.left, e.right]) put(side);
        if (e.op === "is") put(e.of);
        if ((e.op === "known" || e.op === "given") && e.of.op === "name")
          values[`${key(e.of)} ${e.op}`] = evaluate(e, reader).is === (e.not ? "false" : "true");
      });
    }
  return values;
}
