/** Runs the examples of a rule: the proof that it carries in its own text. */
import { exactly } from "../../language/quantity/interval.js";
import { namesIn, type Expr } from "./expression.js";
import { judge, type Judgement } from "./judge.js";
import type { Reader, Reading } from "./logic.js";
import { nameInWords, valueInWords } from "./phrase.js";
import type { Example, ExampleValue, LimitValue, Rule } from "./types.js";

const unit = { unit: "1" } as const;

const none: readonly never[] = [];

/** A fact as an example gives it. */
function readingOf(name: string, v: ExampleValue | undefined): Reading {
  const dimension = v?.dimension ?? "number";
  const common = { name, dimension, value: v?.interval, missing: none, assumed: none, trace: none, unit };
  if (!v || v.unknown)
    return { ...common, value: undefined, missing: [{ what: nameInWords(name) }], given: false };
  if (v.without)
    return { ...common, value: undefined, without: `There is no ${nameInWords(name)}`, given: false };
  const assumed = v.assumed
    ? [{ name, interval: v.interval ?? exactly(0), dimension, tapeable: true }]
    : none;
  if (v.choice !== undefined) return { ...common, value: undefined, choice: v.choice, assumed, given: true };
  return { ...common, assumed, given: true };
}

/** What an example comes to. Conditions of which it says nothing are taken as met. */
export function runExample(rule: Rule, example: Example, limits: ReadonlyMap<string, LimitValue>): Judgement {
  const given = new Map<string, ExampleValue>();
  for (const v of example.values) if (v.fact !== undefined) given.set(v.fact, v);
  const bare = example.values.find((v) => v.fact === undefined);
  const judged = rule.judged.expr;
  const direct =
    bare !== undefined && judged.op !== "name"
      ? ({ op: "name", name: "judged value", start: 0, end: 0 } as const)
      : undefined;
  if (bare) given.set(judged.op === "name" ? judged.name : "judged value", bare);
  const skip = new Set<Expr>(
    rule.when.filter((w) => !namesIn(w.expr).some((n) => given.has(n.name))).map((w) => w.expr),
  );
  const reader: Reader = {
    fact: (name) => readingOf(name, given.get(name)),
    limit: (name) => limits.get(name),
  };
  const applied: Rule =
    direct && rule.judged.is === "bands" ? { ...rule, judged: { ...rule.judged, expr: direct } } : rule;
  return judge(applied, reader, skip);
}

/** Undefined where the example gives what it says; else what it gives, in words. */
export function exampleFault(rule: Rule, example: Example, result: Judgement): string | undefined {
  const agrees =
    result.verdict === example.verdict &&
    (example.best === undefined || result.best === example.best) &&
    (example.worst === undefined || result.worst === example.worst);
  if (agrees) return undefined;
  const value =
    result.value && rule.judged.is === "bands"
      ? ` (value ${valueInWords(result.value.interval.nominal, result.value.dimension, rule.judged.bands[0]?.low.unit ?? unit, rule.judged.signed)})`
      : "";
  return `This example gives ${resultInWords(result)}${value}, not what it says.`;
}

export function resultInWords(result: {
  readonly verdict: string;
  readonly best: string;
  readonly worst: string;
}): string {
  if (result.verdict === "fails")
    return result.best === result.worst ? result.best : `${result.best} to ${result.worst}`;
  if (result.verdict === "unsettled") return `unsettled (holds to ${result.worst})`;
  return result.verdict;
}
