/** Expressions of rules as a tree. `parse-expression.ts` reads them, `dimensions.ts` checks them, `logic.ts` evaluates them. */
import type { Dimension, ShownUnit } from "../../language/quantity/types.js";

export interface Span {
  readonly start: number;
  readonly end: number;
}

export type Comparison = "more than" | "less than" | "at least" | "at most";

export type Expr = Span &
  (
    | {
        readonly op: "value";
        readonly value: number;
        readonly dimension: Dimension;
        readonly unit: ShownUnit;
        readonly bare: boolean;
        readonly signed?: boolean;
      }
    /** A fact, or a limit of the rule set. */
    | { readonly op: "name"; readonly name: string }
    | { readonly op: "sum"; readonly terms: readonly { readonly minus: boolean; readonly of: Expr }[] }
    | { readonly op: "product"; readonly factors: readonly { readonly under: boolean; readonly of: Expr }[] }
    | { readonly op: "smaller" | "larger"; readonly of: readonly Expr[] }
    | { readonly op: "compare"; readonly how: Comparison; readonly left: Expr; readonly right: Expr }
    | {
        readonly op: "is";
        readonly of: Expr;
        readonly not: boolean;
        readonly words: readonly (Span & { readonly word: string })[];
      }
    | { readonly op: "known" | "given"; readonly of: Expr; readonly not: boolean }
    | { readonly op: "and" | "or"; readonly of: readonly Expr[] }
    | { readonly op: "not"; readonly of: Expr }
  );

/** The names that an expression reads, each once, in the order of their first use. */
export function namesIn(expr: Expr): readonly string[] {
  const found = new Set<string>();
  readsAny(expr, (name) => {
    found.add(name);
    return false;
  });
  return [...found];
}

/** Whether an expression reads a name of which `test` is true; names are tried in the order of their use. */
export function readsAny(expr: Expr, test: (name: string) => boolean): boolean {
  switch (expr.op) {
    case "name":
      return test(expr.name);
    case "value":
      return false;
    case "sum":
      return expr.terms.some((t) => readsAny(t.of, test));
    case "product":
      return expr.factors.some((f) => readsAny(f.of, test));
    case "smaller":
    case "larger":
    case "and":
    case "or":
      return expr.of.some((e) => readsAny(e, test));
    case "compare":
      return readsAny(expr.left, test) || readsAny(expr.right, test);
    case "is":
      // A word with a dot is the name of a fact, whose word is meant.
      return readsAny(expr.of, test) || expr.words.some((w) => w.word.includes(".") && test(w.word));
    case "known":
    case "given":
    case "not":
      return readsAny(expr.of, test);
  }
}

/** Calls `see` for an expression and all in it, from the outside in. */
export function visit(expr: Expr, see: (e: Expr) => void): void {
  see(expr);
  switch (expr.op) {
    case "sum":
      for (const t of expr.terms) visit(t.of, see);
      break;
    case "product":
      for (const f of expr.factors) visit(f.of, see);
      break;
    case "smaller":
    case "larger":
    case "and":
    case "or":
      for (const e of expr.of) visit(e, see);
      break;
    case "compare":
      visit(expr.left, see);
      visit(expr.right, see);
      break;
    case "is":
    case "known":
    case "given":
    case "not":
      visit(expr.of, see);
      break;
    case "value":
    case "name":
      break;
  }
}
