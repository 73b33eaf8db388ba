/** Checks an expression before it runs: every name exists, dimensions agree, choices are choices of what they are compared with. */
import type { Dimension } from "../../language/quantity/types.js";
import type { Fix } from "../../language/text/types.js";
import type { Expr, Span } from "./expression.js";

/** What a fact can be. Both where a key takes either (`adjusts no`, `adjusts 15 in to 26 in`). */
export interface FactType {
  readonly dimension?: Dimension;
  readonly choices?: readonly string[];
  /** A name, a code or a text: any word may be compared with it. */
  readonly open?: boolean;
}

export interface Names {
  fact(name: string): FactType | undefined;
  limit(name: string): { readonly dimension: Dimension; readonly bare: boolean } | undefined;
  nearest(name: string): string | undefined;
}

export interface TypeProblem extends Span {
  readonly message: string;
  readonly fixes?: readonly Fix[];
}

/** What an expression is; undefined where a problem was already reported inside it. `bare`: a number without unit, at home with ratios and counts. */
export type ExprType =
  | { readonly is: "quantity"; readonly dimension: Dimension; readonly bare: boolean }
  | { readonly is: "choice"; readonly choices: readonly string[]; readonly open: boolean }
  | { readonly is: "either"; readonly dimension: Dimension; readonly choices: readonly string[] }
  | { readonly is: "truth" };

export const dimensionWords: Record<Dimension, string> = {
  length: "a length",
  mass: "a mass",
  angle: "an angle",
  force: "a force",
  moment: "a moment",
  pressure: "a pressure",
  ratio: "a ratio",
  duration: "a number of days",
  number: "a number",
};

const quantityOf = (t: ExprType | undefined): { dimension: Dimension; bare: boolean } | undefined =>
  t?.is === "quantity" ? t : t?.is === "either" ? { dimension: t.dimension, bare: false } : undefined;

/** The type of `expr`; what is wrong in it is handed to `report`. */
export function typeOf(expr: Expr, names: Names, report: (p: TypeProblem) => void): ExprType | undefined {
  const wrong = (at: Span, message: string, fixes?: readonly Fix[]): undefined => {
    report({ message, start: at.start, end: at.end, ...(fixes && { fixes }) });
    return undefined;
  };
  const inner = (e: Expr) => typeOf(e, names, report);
  const measured = (e: Expr): { dimension: Dimension; bare: boolean } | undefined => {
    const t = inner(e);
    if (!t) return undefined;
    const q = quantityOf(t);
    if (!q)
      return wrong(
        e,
        t.is === "truth"
          ? "This is true or false; a value is expected here."
          : "This is a word; a value is expected here.",
      );
    return q;
  };
  const together = (of: readonly Expr[]): ExprType | undefined => {
    let found: { dimension: Dimension; bare: boolean } | undefined;
    let ok = true;
    for (const e of of) {
      const q = measured(e);
      if (!q) ok = false;
      else if (!found) found = q;
      else {
        const joined = join(found, q);
        if (joined) found = joined;
        else {
          wrong(
            e,
            `${dimensionWords[q.dimension]} cannot be put together with ${dimensionWords[found.dimension]}.`,
          );
          ok = false;
        }
      }
    }
    return ok && found ? { is: "quantity", ...found } : undefined;
  };
  switch (expr.op) {
    case "value":
      return { is: "quantity", dimension: expr.dimension, bare: expr.bare };
    case "name": {
      const limit = names.limit(expr.name);
      if (limit) return { is: "quantity", ...limit };
      const fact = names.fact(expr.name);
      if (fact) return typeOfFact(fact);
      return wrong(expr, ...unknownName(expr.name, names));
    }
    case "sum":
      return together(expr.terms.map((t) => t.of));
    case "smaller":
    case "larger":
      return together(expr.of);
    case "product": {
      let found: { dimension: Dimension; bare: boolean } | undefined;
      for (const f of expr.factors) {
        const q = measured(f.of);
        if (!q) return undefined;
        const made: { dimension: Dimension; bare: boolean } | undefined = found
          ? combine(found, q, f.under)
          : q;
        if (!made)
          return wrong(
            f.of,
            `${dimensionWords[found!.dimension]} ${f.under ? "divided by" : "times"} ${dimensionWords[q.dimension]} is nothing that a rule can judge.`,
          );
        found = made;
      }
      return found && { is: "quantity", ...found };
    }
    case "compare":
      return together([expr.left, expr.right]) && { is: "truth" };
    case "is": {
      const t = inner(expr.of);
      if (!t) return undefined;
      if (t.is === "truth" || t.is === "quantity")
        return wrong(
          expr.of,
          "Only something with a choice of words can be compared by is; use at least, at most, more than or less than.",
        );
      let ok = true;
      for (const w of expr.words) {
        if (w.word.includes(".")) {
          const other = names.fact(w.word);
          if (!other) ok = wrong(w, ...unknownName(w.word, names)) ?? false;
          else if (!other.choices && !other.open)
            ok = wrong(w, `"${w.word}" is not a choice of words.`) ?? false;
        } else if (!(t.is === "choice" && t.open) && !t.choices.includes(w.word))
          ok =
            wrong(w, `"${w.word}" is not one of ${t.choices.join(", ")}.`, choiceFixes(w, t.choices)) ??
            false;
      }
      return ok ? { is: "truth" } : undefined;
    }
    case "known":
    case "given":
      if (expr.of.op !== "name") return wrong(expr.of, `Only a name can be ${expr.op}.`);
      return inner(expr.of) && { is: "truth" };
    case "and":
    case "or": {
      let ok = true;
      for (const e of expr.of) if (!truth(e, inner(e), wrong)) ok = false;
      return ok ? { is: "truth" } : undefined;
    }
    case "not":
      return truth(expr.of, inner(expr.of), wrong) ? { is: "truth" } : undefined;
  }
}

/** True where `t` can be true or false; says what is missing where not. */
export function truth(
  e: Expr,
  t: ExprType | undefined,
  wrong: (at: Span, message: string) => undefined,
): boolean {
  if (!t) return false;
  if (t.is === "truth") return true;
  wrong(
    e,
    t.is === "choice" && t.choices.includes("yes")
      ? `Say what it should be: ... is yes, or ... is no.`
      : "A condition is expected here; this is only a value.",
  );
  return false;
}

function typeOfFact(f: FactType): ExprType {
  if (f.dimension && f.choices) return { is: "either", dimension: f.dimension, choices: f.choices };
  if (f.dimension) return { is: "quantity", dimension: f.dimension, bare: false };
  return { is: "choice", choices: f.choices ?? [], open: f.open ?? false };
}

function unknownName(name: string, names: Names): [message: string, fixes?: readonly Fix[]] {
  const nearest = names.nearest(name);
  if (!nearest) return [`Nothing is called "${name}".`];
  return [
    `Nothing is called "${name}". Is "${nearest}" meant?`,
    [{ title: `Write ${nearest}`, text: nearest }],
  ];
}

function choiceFixes(w: Span & { word: string }, choices: readonly string[]): readonly Fix[] {
  return choices.slice(0, 8).map((c) => ({ title: `Write ${c}`, text: c }));
}

/** Whether two values may stand beside each other in a sum or a comparison. */
function join(
  a: { dimension: Dimension; bare: boolean },
  b: { dimension: Dimension; bare: boolean },
): { dimension: Dimension; bare: boolean } | undefined {
  if (a.dimension === b.dimension) return { dimension: a.dimension, bare: a.bare && b.bare };
  if (a.bare && b.dimension === "ratio") return b;
  if (b.bare && a.dimension === "ratio") return a;
  return undefined;
}

const plain = (d: Dimension): boolean => d === "ratio" || d === "number";

/** What a value of `a` times one of `b` is, or, `under`, divided by it; undefined where that is nothing that can be judged. */
export function combine(
  a: { dimension: Dimension; bare: boolean },
  b: { dimension: Dimension; bare: boolean },
  under: boolean,
): { dimension: Dimension; bare: boolean } | undefined {
  if (plain(a.dimension) && plain(b.dimension))
    return {
      dimension: a.dimension === "ratio" || b.dimension === "ratio" ? "ratio" : under ? "ratio" : "number",
      bare: a.bare && b.bare,
    };
  if (plain(b.dimension)) return { dimension: a.dimension, bare: false };
  if (under) return a.dimension === b.dimension ? { dimension: "ratio", bare: false } : undefined;
  return plain(a.dimension) ? { dimension: b.dimension, bare: false } : undefined;
}
