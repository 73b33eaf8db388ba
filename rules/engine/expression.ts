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

/** The expressions that one is directly made of. */
function partsOf(expr: Expr): readonly Expr[] {
  switch (expr.op) {
    case "value":
    case "name":
      return none;
    case "sum":
      return expr.terms.map((t) => t.of);
    case "product":
      return expr.factors.map((f) => f.of);
    case "smaller":
    case "larger":
    case "and":
    case "or":
      return expr.of;
    case "compare":
      return [expr.left, expr.right];
    case "is":
    case "known":
    case "given":
    case "not":
      return [expr.of];
  }
}
const none: readonly Expr[] = [];

/** Whether an expression reads a name of which `test` is true; names are tried in the order of their use. */
export function readsAny(expr: Expr, test: (name: string) => boolean): boolean {
  if (expr.op === "name") return test(expr.name);
  if (partsOf(expr).some((e) => readsAny(e, test))) return true;
  // A word with a dot is the name of a fact, whose word is meant.
  return expr.op === "is" && expr.words.some((w) => w.word.includes(".") && test(w.word));
}

/** Calls `see` for an expression and all in it, from the outside in. */
export function visit(expr: Expr, see: (e: Expr) => void): void {
  see(expr);
  for (const e of partsOf(expr)) visit(e, see);
}
