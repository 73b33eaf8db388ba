/** Whether a change of a rule set asks for less anywhere. What cannot be told counts as asking for less. */
import { exactly } from "../../language/quantity/interval.js";
import { grade, gradeChoice, rank } from "./bands.js";
import { readsAny, type Expr } from "./expression.js";
import type { Band, ChoiceBand, Rule } from "./types.js";

/** Whether some value gets a milder grade by `now` than by `before`. Both cover the whole line. */
export function milderSomewhere(before: readonly Band[], now: readonly Band[]): boolean {
  const ends = [...before, ...now]
    .flatMap((b) => [b.low.value, b.high.value])
    .filter(Number.isFinite)
    .sort((a, b) => a - b);
  const points = ends.flatMap((e, i) => (i === 0 ? [e] : [(e + ends[i - 1]!) / 2, e]));
  points.push((ends[0] ?? 0) - 1, (ends.at(-1) ?? 0) + 1);
  return points.some((x) => {
    const at = exactly(x);
    return rank(grade(now, at, false).worst) < rank(grade(before, at, false).worst);
  });
}

/** The same for bands over words. */
export const milderChoice = (before: readonly ChoiceBand[], now: readonly ChoiceBand[]): boolean =>
  before.some((b) =>
    b.choices.some((c) => rank(gradeChoice(now, c, false).worst) < rank(gradeChoice(before, c, false).worst)),
  );

/** How an expression follows a name in it: up with it, down with it, not at all, or one cannot tell. */
type Follows = "up" | "down" | "not" | "unclear";

const turned = (f: Follows): Follows => (f === "up" ? "down" : f === "down" ? "up" : f);
const joined = (all: readonly Follows[]): Follows => {
  const said = [...new Set(all.filter((f) => f !== "not"))];
  return said.length === 0 ? "not" : said.length === 1 ? said[0]! : "unclear";
};

/** For a condition, up means: the larger the value of the name, the sooner it is true. */
export function follows(expr: Expr, name: string): Follows {
  if (!readsAny(expr, (n) => n === name)) return "not";
  switch (expr.op) {
    case "name":
      return "up";
    case "sum":
      return joined(expr.terms.map((t) => (t.minus ? turned(follows(t.of, name)) : follows(t.of, name))));
    case "product": {
      const rest = expr.factors.filter((f) => follows(f.of, name) === "not");
      const own = expr.factors.filter((f) => follows(f.of, name) !== "not");
      // What is multiplied by something that may be less than nothing goes either way.
      if (own.length !== 1 || !rest.every((f) => f.of.op === "value" && f.of.value > 0)) return "unclear";
      return own[0]!.under ? "unclear" : follows(own[0]!.of, name);
    }
    case "smaller":
    case "larger":
    case "and":
    case "or":
      return joined(expr.of.map((e) => follows(e, name)));
    case "not":
      return turned(follows(expr.of, name));
    case "compare": {
      const parts = joined([follows(expr.left, name), turned(follows(expr.right, name))]);
      return expr.how === "at least" || expr.how === "more than" ? parts : turned(parts);
    }
    default:
      return "unclear";
  }
}

/** Whether a rule can ask for less when a limit that it names goes `up` or `down`; its bands are compared by `milderSomewhere`. */
export function looserBy(rule: Rule, limit: string, way: "up" | "down"): boolean {
  /** A condition that is true more often lets the rule judge more often. */
  const loosens = (f: Follows, whenTrue: "looser" | "tighter"): boolean =>
    f === "unclear" || (f !== "not" && (f === way) === (whenTrue === "looser"));
  if (rule.when.some((w) => loosens(follows(w.expr, limit), "tighter"))) return true;
  const { judged } = rule;
  return judged.is === "require"
    ? loosens(follows(judged.expr, limit), "looser")
    : follows(judged.expr, limit) !== "not";
}
