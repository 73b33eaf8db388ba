/** Rules under a policy: their bands with other limits, their levels otherwise. */
import type { Grade, Level } from "../types.js";
import { readsAny } from "./expression.js";
import type { Band, BandEnd, Example, LimitValue, Rule } from "./types.js";

/** Whether a rule names a limit, in its bands, its conditions or what it asks. */
export const usesLimit = (rule: Rule, limit: string): boolean =>
  [...rule.when.map((w) => w.expr), rule.judged.expr].some((e) => readsAny(e, (name) => name === limit)) ||
  (rule.judged.is === "bands" &&
    rule.judged.bands.some((b) => b.low.limit === limit || b.high.limit === limit));

/** The bands with their named ends at the values of `now`; `before` are the limits for which they were resolved. */
export function bandsUnder(
  bands: readonly Band[],
  before: ReadonlyMap<string, LimitValue>,
  now: ReadonlyMap<string, LimitValue>,
): readonly Band[] {
  const end = (e: BandEnd): BandEnd => {
    const [old, made] = e.limit === undefined ? [] : [before.get(e.limit), now.get(e.limit)];
    if (!old || !made || !Number.isFinite(e.value)) return e;
    // The end may be the limit itself already, or either of the two with a minus.
    const minus = e.value === -old.interval.nominal || e.value === -made.interval.nominal;
    const value = made.interval.nominal;
    return { ...e, value: minus && value !== 0 ? -value : value, unit: made.unit };
  };
  return bands.map((b) => ({ ...b, low: end(b.low), high: end(b.high) }));
}

/** The rule with one level in place of another, its examples alike; undefined where it never gives that level. */
export function levelled(rule: Rule, from: Level, to: Level): Rule | undefined {
  const one = <G extends Grade>(g: G): G | Level => (g === from ? to : g);
  const { judged } = rule;
  if (judged.is === "require")
    return judged.level === from
      ? { ...rule, judged: { ...judged, level: to }, examples: rule.examples.map((e) => exampleWith(e, one)) }
      : undefined;
  if (![...judged.bands, ...judged.choices].some((b) => b.grade === from)) return undefined;
  return {
    ...rule,
    judged: {
      ...judged,
      bands: judged.bands.map((b) => ({ ...b, grade: one(b.grade) })),
      choices: judged.choices.map((b) => ({ ...b, grade: one(b.grade) })),
    },
    examples: rule.examples.map((e) => exampleWith(e, one)),
  };
}

const exampleWith = (e: Example, one: (g: Grade) => Grade): Example => ({
  ...e,
  ...(e.best !== undefined && { best: one(e.best) }),
  ...(e.worst !== undefined && { worst: one(e.worst) }),
});
