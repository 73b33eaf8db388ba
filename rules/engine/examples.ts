/** Runs the examples of a rule: the proof that it carries in its own text. */
import { exactly } from "../../language/quantity/interval.js";
import { readsAny, type Expr } from "./expression.js";
import { judge, type Judgement } from "./judge.js";
import type { Reader, Reading } from "./logic.js";
import { nameInWords, valueInWords } from "./phrase.js";
import type { Example, ExampleValue, LimitValue, Rule } from "./types.js";

const unit = { unit: "1" } as const;

const none: readonly never[] = [];

/** A fact as an example gives it. */
function readingOf(name: string, v: ExampleValue | undefined): Reading {
  const dimension = v?.dimension ?? "number";
  if (!v || v.unknown) {
    const missing = [{ what: nameInWords(name) }];
    return { name, dimension, value: undefined, missing, assumed: none, trace: none, unit, given: false };
  }
  if (v.without) {
    const without = `There is no ${nameInWords(name)}`;
    const value = undefined;
    return { name, dimension, value, missing: none, assumed: none, trace: none, unit, without, given: false };
  }
  const assumed = v.assumed
    ? [{ name, interval: v.interval ?? exactly(0), dimension, tapeable: true }]
    : none;
  const { choice } = v;
  const value = choice === undefined ? v.interval : undefined;
  return { name, dimension, value, missing: none, assumed, trace: none, unit, choice, given: true };
}

/** Reads the values of an example; the value without a name is that of `judged`. */
class ExampleReader implements Reader {
  constructor(
    private readonly values: readonly ExampleValue[],
    private readonly judged: string,
    private readonly limits: ReadonlyMap<string, LimitValue>,
  ) {}
  /** What the example says of a fact; where it says it twice, the last. */
  given(name: string): ExampleValue | undefined {
    let found: ExampleValue | undefined;
    for (const v of this.values) {
      if (v.fact === name) found = v;
      else if (v.fact === undefined && name === this.judged) return v;
    }
    return found;
  }
  fact(name: string): Reading {
    return readingOf(name, this.given(name));
  }
  limit(name: string): LimitValue | undefined {
    return this.limits.get(name);
  }
}

/** Stands for a judged expression of which an example gives the value at once. */
const direct = { op: "name", name: "judged value", start: 0, end: 0 } as const satisfies Expr;

/** What an example comes to. Conditions of which it says nothing are taken as met. */
export function runExample(rule: Rule, example: Example, limits: ReadonlyMap<string, LimitValue>): Judgement {
  const { judged } = rule;
  const name = judged.expr.op === "name" ? judged.expr.name : direct.name;
  const reader = new ExampleReader(example.values, name, limits);
  const skip = (e: Expr): boolean => !readsAny(e, (n) => reader.given(n) !== undefined);
  const atOnce = judged.expr.op !== "name" && example.values.some((v) => v.fact === undefined);
  const applied: Rule =
    atOnce && judged.is === "bands" ? { ...rule, judged: { ...judged, expr: direct } } : rule;
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
