/** Expressions and names in words, for reasons, explanations and messages. */
import { showSigned, showValue } from "../../language/quantity/show.js";
import type { Dimension, ShownUnit } from "../../language/quantity/types.js";
import type { Expr } from "./expression.js";

/** `surface.top-loaded` as people say it: `surface top loaded`. */
export const nameInWords = (name: string): string => name.replaceAll(/[.-]/g, " ");

/** A value of a rule's text in its own unit. */
export const valueInWords = (value: number, dimension: Dimension, unit: ShownUnit, signed = false): string =>
  signed
    ? value === 0
      ? showValue(0, dimension, unit)
      : showSigned(value, dimension, unit)
    : showValue(value, dimension, unit);

/** Expressions never change, and every rule that does not apply says its condition in words. */
const said = new WeakMap<Expr, string>();

/** An expression in words. `name` says how a fact or limit is called. */
export function phrase(expr: Expr, name: (n: string) => string = nameInWords): string {
  if (name !== nameInWords) return worded(expr, name);
  let words = said.get(expr);
  if (words === undefined) said.set(expr, (words = worded(expr, name)));
  return words;
}

function worded(expr: Expr, name: (n: string) => string): string {
  const inner = (e: Expr): string =>
    e.op === "and" || e.op === "or" || e.op === "sum" ? `(${worded(e, name)})` : worded(e, name);
  switch (expr.op) {
    case "value":
      return valueInWords(expr.value, expr.dimension, expr.unit, expr.signed);
    case "name":
      return name(expr.name);
    case "sum":
      return expr.terms
        .map((t, i) =>
          i === 0
            ? t.minus
              ? `minus ${inner(t.of)}`
              : inner(t.of)
            : `${t.minus ? "less" : "plus"} ${inner(t.of)}`,
        )
        .join(" ");
    case "product":
      return expr.factors
        .map((f, i) => (i === 0 ? inner(f.of) : `${f.under ? "divided by" : "times"} ${inner(f.of)}`))
        .join(" ");
    case "smaller":
    case "larger":
      return `the ${expr.op} of ${expr.of.map((e) => worded(e, name)).join(" and ")}`;
    case "compare":
      return `${worded(expr.left, name)} is ${expr.how} ${worded(expr.right, name)}`;
    case "is": {
      const words = expr.words.map((w) => (w.word.includes(".") ? name(w.word) : w.word));
      const list =
        words.length === 1 ? words[0]! : `${words.slice(0, -1).join(", ")} or ${words[words.length - 1]!}`;
      return `${worded(expr.of, name)} is ${expr.not ? "not " : ""}${list}`;
    }
    case "known":
    case "given":
      return `${worded(expr.of, name)} is ${expr.not ? "not " : ""}${expr.op}`;
    case "and":
    case "or":
      return expr.of.map(inner).join(` ${expr.op} `);
    case "not":
      return `not (${worded(expr.of, name)})`;
  }
}
