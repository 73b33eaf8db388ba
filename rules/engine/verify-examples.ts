/** Whether the examples of a rule speak of what it reads, give what they say, and show both sides of each boundary. */
import { inOrder, rank } from "./bands.js";
import { shownEnd } from "./band-words.js";
import { dimensionWords, type Names } from "./dimensions.js";
import { exampleFault, runExample } from "./examples.js";
import { namesIn } from "./expression.js";
import type { Judgement } from "./judge.js";
import { problemAt } from "./read.js";
import type { Rule, RulePlace, RuleSet, SetProblem } from "./types.js";

type Report = (p: SetProblem) => void;

export function verifyExampleValues(rule: Rule, names: Names, report: Report): boolean {
  let fine = true;
  const wrong = (at: RulePlace, message: string): void => {
    fine = false;
    report(problemAt(at, "rules/example", message));
  };
  const read = new Set([...rule.when.flatMap((w) => namesIn(w.expr)), ...namesIn(rule.judged.expr)]);
  for (const e of rule.examples)
    for (const v of e.values) {
      if (v.fact === undefined) {
        if (rule.judged.is === "require" && rule.judged.expr.op !== "name" && !v.unknown)
          wrong(e.at, "This rule judges no single value: name the facts of the example.");
        else if (
          rule.judged.is === "bands" &&
          v.dimension &&
          rule.judged.bands[0] &&
          v.dimension !== rule.judged.bands[0].low.dimension &&
          !(v.dimension === "number" && rule.judged.bands[0].low.dimension === "ratio")
        )
          wrong(
            e.at,
            `What is judged is ${dimensionWords[rule.judged.bands[0].low.dimension]}, not ${dimensionWords[v.dimension]}.`,
          );
        continue;
      }
      const type = names.fact(v.fact);
      if (!type) {
        const near = names.nearest(v.fact);
        wrong(e.at, `Nothing is called "${v.fact}".${near ? ` Is "${near}" meant?` : ""}`);
      } else if (!read.has(v.fact)) wrong(e.at, `This rule does not read ${v.fact}.`);
      else if (v.choice !== undefined && !type.open && !type.choices?.includes(v.choice))
        wrong(
          e.at,
          `${v.fact}: "${v.choice}" is not one of ${(type.choices ?? []).join(", ") || "its values"}.`,
        );
      else if (
        v.dimension &&
        v.dimension !== type.dimension &&
        !(v.dimension === "number" && type.dimension === "ratio")
      )
        wrong(
          e.at,
          `${v.fact} is ${type.dimension ? dimensionWords[type.dimension] : "a choice of words"}, not ${dimensionWords[v.dimension]}.`,
        );
    }
  return fine;
}

/** `reached`: no part of the rule is out of reach. Where one is, no example could show it, and none is asked for. */
export function verifyExamples(rule: Rule, set: RuleSet, reached: boolean, report: Report): void {
  const results: Judgement[] = [];
  for (const e of rule.examples) {
    const result = runExample(rule, e, set.limits);
    const fault = exampleFault(rule, e, result);
    if (fault) report(problemAt(e.at, "rules/example-fails", fault));
    results.push(result);
  }
  if (!reached) return;
  const missing = (what: string): void =>
    report(problemAt(rule.at, "rules/example-missing", `No example shows ${what}.`));
  if (rule.judged.is === "require") {
    if (!results.some((r) => r.verdict === "holds")) missing("when this rule holds");
    if (!results.some((r) => r.verdict === "fails")) missing("when this rule fails");
    return;
  }
  for (const b of rule.judged.choices)
    if (!results.some((r) => r.choice !== undefined && b.choices.includes(r.choice)))
      missing(`${b.choices.join(" or ")}`);
  const points: number[] = [];
  for (const { value } of results)
    if (value && value.interval.low === value.interval.high) points.push(value.interval.low);
  const sorted = inOrder(rule.judged.bands);
  for (let i = 0; i < sorted.length; i++) {
    const band = sorted[i]!;
    const next = sorted[i + 1];
    if (!next || rank(band.grade) === rank(next.grade)) continue;
    const edge = band.high.value;
    const on = points.some((p) => Math.abs(p - edge) < 1e-9);
    const below = points.some((p) => p < edge - 1e-9 && p >= band.low.value - 1e-9);
    const above = points.some((p) => p > edge + 1e-9 && p <= next.high.value + 1e-9);
    // The boundary itself belongs to the milder side; what lies beyond it must be shown on the graver one.
    if (!on) missing(`the value exactly on the boundary ${shownEnd(band.high, rule.judged.signed)}`);
    if (!(rank(band.grade) > rank(next.grade) ? below : above))
      missing(`a value just past the boundary ${shownEnd(band.high, rule.judged.signed)}`);
  }
}
