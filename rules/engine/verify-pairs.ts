/** Rules against each other: what contradicts, what is said twice. */
import { bandFaults, inOrder } from "./bands.js";
import type { Names } from "./dimensions.js";
import { problemAt } from "./read.js";
import type { Rule, Scope, SetProblem } from "./types.js";
import { demandsOf, keyOf, together, type Ask, type Limits } from "./verify-asks.js";
import { excluding, type Condition } from "./verify-reach.js";

type Report = (p: SetProblem) => void;

/**
 * Rules on one value are compared pair by pair. More than so many of them that say different things are refused, for a rule file
 * is somebody else's data and checking it must end; no set that people can review comes near.
 */
export const mostOnOneValue = 200;

interface Demand {
  readonly rule: Rule;
  readonly ask: Ask;
  readonly asked: readonly Condition[];
}

/**
 * Rules that judge the same value on the same things must leave some value that holds for both, and may not say the same twice.
 * Each rule is reported once at most, with the first other one.
 */
export function contradictions(
  rules: readonly Rule[],
  limits: Limits,
  conditionsOf: (rule: Rule) => readonly Condition[],
  namesOf: (rule: Rule) => Names,
  report: Report,
): void {
  const said = new Said();
  const groups = new Map<string, Demand[]>();
  for (const rule of rules) {
    // Bands with faults of their own have been reported; what they would contradict is not known.
    if (rule.judged.is === "bands" && rule.judged.choices.length === 0) {
      const { bands } = rule.judged;
      if (bands.length === 0 || bandFaults(bands, () => "").length > 0) continue;
    }
    const before = said.before(rule);
    if (before) {
      report(
        problemAt(rule.at, "rules/shadowed", `This rule says the same of the same value as ${before.id}.`),
      );
      continue;
    }
    const asked = conditionsOf(rule);
    for (const ask of demandsOf(rule, limits)) {
      const key = `${rule.scope.is} ${rule.scope.is === "thing" ? rule.scope.kind : ""} ${ask.key}`;
      const group = groups.get(key);
      if (group) group.push({ rule, ask, asked });
      else groups.set(key, [{ rule, ask, asked }]);
    }
  }
  const reported = new Set<Rule>();
  for (const group of groups.values()) {
    for (const { rule } of group.slice(mostOnOneValue))
      report(
        problemAt(
          rule.at,
          "rules/too-many",
          `More than ${mostOnOneValue} rules judge this value. They cannot all be compared with each other, so this one is not taken.`,
        ),
      );
    const compared = group.slice(0, mostOnOneValue);
    for (let i = 1; i < compared.length; i++) {
      const b = compared[i]!;
      for (const a of compared) {
        if (a === b) break;
        if (a.rule === b.rule || reported.has(b.rule) || !scopesMeet(a.rule.scope, b.rule.scope)) continue;
        const choices = (name: string): readonly string[] | undefined =>
          namesOf(b.rule).fact(name)?.choices ?? undefined;
        if (together(a.ask, b.ask, choices(b.ask.key))) continue;
        if (excluding([...a.asked, ...b.asked], choices)) continue;
        reported.add(b.rule);
        report(
          problemAt(
            b.rule.at,
            "rules/contradiction",
            `No value satisfies both rules: ${a.rule.id} asks for ${a.ask.says()}, ${b.rule.id} for ${b.ask.says()}.`,
          ),
        );
      }
    }
  }
}

/** Whether one step can be meant by both. */
function scopesMeet(a: Scope, b: Scope): boolean {
  if (a.is !== "step" || b.is !== "step") return true;
  if (a.phrases.length === 0 || b.phrases.length === 0) return true;
  const starts = (x: string, y: string): boolean => `${x} `.startsWith(`${y} `);
  return a.phrases.some((x) => b.phrases.some((y) => starts(x, y) || starts(y, x)));
}

/** Finds the rule that said the same. Only rules that judge the same value are compared. */
class Said {
  private readonly byValue = new Map<string, { readonly first: Rule; texts?: Map<string, Rule> }>();

  /** The rule before this one that says the same. */
  before(rule: Rule): Rule | undefined {
    const value = keyOf(rule.judged.expr);
    const same = this.byValue.get(value);
    if (!same) {
      this.byValue.set(value, { first: rule });
      return undefined;
    }
    same.texts ??= new Map([[textOf(same.first), same.first]]);
    const text = textOf(rule);
    const before = same.texts.get(text);
    if (!before) same.texts.set(text, rule);
    return before;
  }
}

/** What a rule looks at, when, and what it judges how, as one text. */
function textOf(rule: Rule): string {
  const { judged } = rule;
  const how =
    judged.is === "require"
      ? judged.level
      : judged.choices.length > 0
        ? judged.choices
            .flatMap((c) => c.choices.map((word) => `${word} ${c.grade}`))
            .sort()
            .join("\n")
        : inOrder(judged.bands)
            .map((b) => `${b.low.value} ${b.high.value} ${b.grade}`)
            .join("\n");
  const when = rule.when.map((w) => keyOf(w.expr)).sort();
  return [JSON.stringify(rule.scope), ...when, keyOf(judged.expr), how].join("\n");
}
