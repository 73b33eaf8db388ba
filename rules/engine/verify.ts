/** Whether a rule set may be used. Everything that is wrong is reported at its line; a set with any fault is refused whole. */
import { nearest } from "../../language/text/nearest.js";
import { showValue } from "../../language/quantity/show.js";
import { holding, bandFaults, inOrder, rank } from "./bands.js";
import { dimensionWords, truth, typeOf, type ExprType, type FactType, type Names } from "./dimensions.js";
import { exampleFault, runExample } from "./examples.js";
import { namesIn, type Expr, type Span } from "./expression.js";
import { holesIn, knownHoles } from "./holes.js";
import type { Judgement } from "./judge.js";
import { phrase, valueInWords } from "./phrase.js";
import { problemAt } from "./read.js";
import type { BandEnd, Rule, RulePlace, RuleSet, Scope, SetProblem } from "./types.js";

/** What the program that uses the set knows and needs. */
export interface Surroundings {
  /** A fact's type where a rule of this scope may read it. */
  fact(name: string, scope: Scope): FactType | undefined;
  factNames(scope: Scope): Iterable<string>;
  /** Whether `role.key` can be written in a setup, and takes a quantity. */
  settable(role: string, key: string, scope: Scope): "quantity" | "other" | undefined;
  /** Kinds of things that a rule may be for. */
  readonly kinds: readonly string[];
  /** Whether steps can start with these words. */
  stepPhrase(phrase: string): boolean;
  /** Defaults (or limits) that the program reads by name. Undefined: not checked. */
  readonly used?: readonly string[];
}

type Report = (p: SetProblem) => void;

export function verify(set: RuleSet, head: RulePlace | undefined, around: Surroundings): readonly SetProblem[] {
  const problems: SetProblem[] = [];
  const report: Report = (p) => problems.push(p);
  if (!head) report({ path: set.rules[0]?.at.path ?? "", line: 0, start: 0, end: 0, rule: "rules/missing", message: "This rule set has no head: ruleset NAME VERSION { title ... }." });
  const usedLimits = new Set<string>();
  const cited = new Set<string>();
  const bases = [...set.limits.values(), ...set.defaults.values(), ...set.rules];
  for (const holder of bases)
    for (const b of holder.bases) {
      if (!b.citation) continue;
      cited.add(b.citation.id);
      if (!set.sources.has(b.citation.id)) {
        const near = nearest(b.citation.id, set.sources.keys());
        report(problemAt(holder.at, "rules/unknown-source", `There is no source called "${b.citation.id}".${near ? ` Is "${near}" meant?` : ""}`));
      }
    }
  for (const rule of set.rules) verifyRule(rule, set, around, usedLimits, report);
  for (const s of set.sources.values()) if (!cited.has(s.name)) report(problemAt(s.at, "rules/unused", `Nothing cites the source ${s.name}.`));
  const byCode = new Set(around.used ?? []);
  for (const l of set.limits.values()) if (!usedLimits.has(l.name) && !byCode.has(l.name)) report(problemAt(l.at, "rules/unused", `Nothing uses the limit ${l.name}.`));
  if (around.used) {
    for (const d of set.defaults.values()) if (!byCode.has(d.name) && !usedLimits.has(d.name)) report(problemAt(d.at, "rules/unused", `Nothing uses the default ${d.name}.`));
    for (const name of byCode)
      if (!set.defaults.has(name) && !set.limits.has(name) && head) report(problemAt(head, "rules/missing", `The default ${name} is missing: something computed needs it.`));
  }
  contradictions(set.rules, report);
  return problems;
}

function verifyRule(rule: Rule, set: RuleSet, around: Surroundings, usedLimits: Set<string>, report: Report): void {
  const names: Names = {
    fact: (n) => around.fact(n, rule.scope),
    limit: (n) => {
      const l = set.limits.get(n);
      if (l) usedLimits.add(n);
      return l && { dimension: l.dimension, bare: l.dimension === "number" };
    },
    nearest: (n) => nearest(n, [...around.factNames(rule.scope), ...set.limits.keys()]),
  };
  if (rule.scope.is === "thing" && !around.kinds.includes(rule.scope.kind)) report(problemAt(rule.at, "rules/unknown-word", `No kind of thing is called "${rule.scope.kind}": ${around.kinds.join(", ")}.`));
  if (rule.scope.is === "step") for (const p of rule.scope.phrases) if (!around.stepPhrase(p)) report(problemAt(rule.at, "rules/unknown-word", `No step starts with "${p}".`));
  const at = (place: RulePlace) => (rulePart: string) => (p: Span & { message: string; fixes?: SetProblem["fixes"] }) =>
    report(problemAt(place, rulePart, p.message, { start: p.start, end: p.end, ...(p.fixes && { fixes: p.fixes }) }));
  let sound = true;
  const typed = (expr: Expr, place: RulePlace): ExprType | undefined => {
    const t = typeOf(expr, names, (p) => {
      sound = false;
      at(place)("rules/expression")(p);
    });
    return t;
  };
  const condition = (expr: Expr, place: RulePlace): void => {
    truth(expr, typed(expr, place), (span, message) => {
      sound = false;
      return void at(place)("rules/expression")({ ...span, start: span.start, end: span.end, message });
    });
  };
  for (const w of rule.when) condition(w.expr, w.at);
  if (rule.judged.is === "require") condition(rule.judged.expr, rule.judged.at);
  else sound = verifyBands(rule.judged, typed(rule.judged.expr, rule.judged.at), usedLimits, report) && sound;
  verifyWords(rule, around, names, report);
  sound = verifyExampleValues(rule, names, report) && sound;
  if (sound) verifyExamples(rule, set, report);
  const never = unreachable(rule);
  if (never) report(problemAt(never.at, "rules/unreachable", never.message));
}

type ByBands = Rule["judged"] & { readonly is: "bands" };

function verifyBands(judged: ByBands, type: ExprType | undefined, usedLimits: Set<string>, report: Report): boolean {
  for (const b of judged.bands) for (const e of [b.low, b.high]) if (e.limit !== undefined) usedLimits.add(e.limit);
  if (!type) return false;
  if (judged.choices.length > 0) {
    if (type.is !== "choice" || type.choices.length === 0) {
      report(problemAt(judged.at, "rules/dimension", "These bands speak of words, but what is judged is not a choice of words."));
      return false;
    }
    return verifyChoiceBands(judged, type.choices, report);
  }
  if (type.is !== "quantity" && type.is !== "either") {
    report(problemAt(judged.at, "rules/dimension", "What is judged by bands of values must be a quantity."));
    return false;
  }
  let fine = true;
  for (const b of judged.bands)
    for (const e of [b.low, b.high]) {
      const bareRatio = e.dimension === "number" && type.dimension === "ratio";
      if (!Number.isFinite(e.value) || e.dimension === type.dimension || bareRatio) continue;
      fine = false;
      report(problemAt(b.at, "rules/dimension", `What is judged is ${dimensionWords[type.dimension]}; this band speaks of ${dimensionWords[e.dimension]}.`));
      break;
    }
  if (!fine || judged.bands.length === 0) return false;
  const faults = bandFaults(judged.bands, (e) => shownEnd(e, judged.signed));
  for (const f of faults) report(problemAt(f.band.at, "rules/band", f.message));
  return faults.length === 0;
}

const shownEnd = (e: BandEnd, signed: boolean): string => valueInWords(e.value, e.dimension, e.unit, signed);

function verifyChoiceBands(judged: ByBands, choices: readonly string[], report: Report): boolean {
  const seen = new Set<string>();
  let fine = true;
  const wrong = (at: RulePlace, message: string): void => {
    fine = false;
    report(problemAt(at, "rules/band", message));
  };
  for (const b of judged.choices)
    for (const c of b.choices) {
      if (!choices.includes(c)) wrong(b.at, `"${c}" is not one of ${choices.join(", ")}.`);
      if (seen.has(c)) wrong(b.at, `Two bands speak of ${c}.`);
      seen.add(c);
    }
  const left = choices.filter((c) => !seen.has(c));
  if (left.length > 0) wrong(judged.at, `No band says what holds for ${left.join(", ")}.`);
  return fine;
}

/** Messages, remedies and places may only speak of what there is. */
function verifyWords(rule: Rule, around: Surroundings, names: Names, report: Report): void {
  const texts: [string | undefined, RulePlace][] = [[rule.message, rule.at], [rule.unknown, rule.at]];
  if (rule.judged.is === "require") texts.push([rule.judged.message, rule.judged.at]);
  else for (const b of [...rule.judged.bands, ...rule.judged.choices]) texts.push([b.message, b.at]);
  for (const c of rule.cautions) texts.push([c, rule.at]);
  for (const r of rule.remedies) texts.push([r.is === "text" || r.is === "set" ? r.text : r.step, r.is === "text" ? rule.at : r.at]);
  for (const [text, at] of texts)
    for (const hole of text === undefined ? [] : holesIn(text))
      if (!knownHoles.has(hole) && !names.fact(hole) && !names.limit(hole)) report(problemAt(at, "rules/unknown-name", `{${hole}} is not the name of anything that can be filled in.`));
  for (const r of rule.remedies) {
    if (r.is === "set" && around.settable(r.role, r.key, rule.scope) !== "quantity") report(problemAt(r.at, "rules/unknown-name", `${r.role}.${r.key} is not a quantity that can be written in a setup.`));
    if ((r.is === "insert" || r.is === "move") && rule.scope.is !== "step" && rule.scope.is !== "end") report(problemAt(r.at, "rules/statement", "Only a rule on steps can insert or move a step."));
  }
  for (const place of rule.places) {
    const dot = place.indexOf(".");
    if (!around.settable(place.slice(0, dot), place.slice(dot + 1), rule.scope) && !(rule.scope.is === "thing" && around.settable(rule.scope.kind, place, rule.scope)))
      report(problemAt(rule.at, "rules/unknown-name", `at ${place}: this cannot be written in a setup.`));
  }
  const said = rule.message !== undefined || (rule.judged.is === "require" ? rule.judged.message !== undefined : [...rule.judged.bands, ...rule.judged.choices].every((b) => b.grade === "holds" || b.message !== undefined));
  if (!said) report(problemAt(rule.at, "rules/missing", "A grade of this rule has no message, and the rule has none of its own."));
}

function verifyExampleValues(rule: Rule, names: Names, report: Report): boolean {
  let fine = true;
  const wrong = (at: RulePlace, message: string): void => {
    fine = false;
    report(problemAt(at, "rules/example", message));
  };
  const read = new Set([...rule.when.flatMap((w) => namesIn(w.expr)), ...namesIn(rule.judged.expr)].map((n) => n.name));
  for (const e of rule.examples)
    for (const v of e.values) {
      if (v.fact === undefined) {
        if (rule.judged.is === "require" && rule.judged.expr.op !== "name" && !v.unknown) wrong(e.at, "This rule judges no single value: name the facts of the example.");
        else if (rule.judged.is === "bands" && v.dimension && rule.judged.bands[0] && v.dimension !== rule.judged.bands[0].low.dimension && !(v.dimension === "number" && rule.judged.bands[0].low.dimension === "ratio"))
          wrong(e.at, `What is judged is ${dimensionWords[rule.judged.bands[0].low.dimension]}, not ${dimensionWords[v.dimension]}.`);
        continue;
      }
      const type = names.fact(v.fact);
      if (!type) {
        const near = names.nearest(v.fact);
        wrong(e.at, `Nothing is called "${v.fact}".${near ? ` Is "${near}" meant?` : ""}`);
      } else if (!read.has(v.fact)) wrong(e.at, `This rule does not read ${v.fact}.`);
      else if (v.choice !== undefined && !type.open && !type.choices?.includes(v.choice)) wrong(e.at, `${v.fact}: "${v.choice}" is not one of ${(type.choices ?? []).join(", ") || "its values"}.`);
      else if (v.dimension && v.dimension !== type.dimension && !(v.dimension === "number" && type.dimension === "ratio"))
        wrong(e.at, `${v.fact} is ${type.dimension ? dimensionWords[type.dimension] : "a choice of words"}, not ${dimensionWords[v.dimension]}.`);
    }
  return fine;
}

function verifyExamples(rule: Rule, set: RuleSet, report: Report): void {
  const results: Judgement[] = [];
  for (const e of rule.examples) {
    const result = runExample(rule, e, set.limits);
    const fault = exampleFault(rule, e, result);
    if (fault) report(problemAt(e.at, "rules/example-fails", fault));
    results.push(result);
  }
  const missing = (what: string): void => report(problemAt(rule.at, "rules/example-missing", `No example shows ${what}.`));
  if (rule.judged.is === "require") {
    if (!results.some((r) => r.verdict === "holds")) missing("when this rule holds");
    if (!results.some((r) => r.verdict === "fails")) missing("when this rule fails");
    return;
  }
  for (const b of rule.judged.choices) if (!results.some((r) => r.choice !== undefined && b.choices.includes(r.choice))) missing(`${b.choices.join(" or ")}`);
  const points = results.flatMap((r) => (r.value && r.value.interval.low === r.value.interval.high ? [r.value.interval.low] : []));
  const sorted = inOrder(rule.judged.bands);
  for (const [i, band] of sorted.entries()) {
    const next = sorted[i + 1];
    if (!next || rank(band.grade) === rank(next.grade)) continue;
    const edge = band.high.value;
    const shown = shownEnd(band.high, rule.judged.signed);
    const on = points.some((p) => Math.abs(p - edge) < 1e-9);
    const below = points.some((p) => p < edge - 1e-9 && p >= band.low.value - 1e-9);
    const above = points.some((p) => p > edge + 1e-9 && p <= next.high.value + 1e-9);
    // The boundary itself belongs to the milder side; what lies beyond it must be shown on the graver one.
    if (!on) missing(`the value exactly on the boundary ${shown}`);
    if (!(rank(band.grade) > rank(next.grade) ? below : above)) missing(`a value just past the boundary ${shown}`);
  }
}

/** Two conditions that ask different words of the same fact can never both be met. */
function unreachable(rule: Rule): { at: RulePlace; message: string } | undefined {
  const asked = new Map<string, readonly string[]>();
  for (const w of rule.when)
    for (const part of w.expr.op === "and" ? w.expr.of : [w.expr]) {
      if (part.op !== "is" || part.not || part.of.op !== "name") continue;
      const words = part.words.map((x) => x.word);
      const before = asked.get(part.of.name);
      if (before && !before.some((x) => words.includes(x))) return { at: w.at, message: `This rule can never apply: ${part.of.name} cannot be both ${before.join(" or ")} and ${words.join(" or ")}.` };
      asked.set(part.of.name, before ? before.filter((x) => words.includes(x)) : words);
    }
  return undefined;
}

/** Rules that judge the same value on the same things must leave some value that holds for both, and may not say the same twice. */
function contradictions(rules: readonly Rule[], report: Report): void {
  const groups = new Map<string, Rule[]>();
  for (const r of rules) {
    if (r.judged.is !== "bands" || r.judged.bands.length === 0) continue;
    const key = `${JSON.stringify(r.scope)} ${phrase(r.judged.expr, (n) => n)}`;
    const group = groups.get(key);
    if (group) group.push(r);
    else groups.set(key, [r]);
  }
  for (const group of groups.values())
    for (const [i, a] of group.entries())
      for (const b of group.slice(i + 1)) {
        if (exclusive(a, b)) continue;
        const x = a.judged as ByBands;
        const y = b.judged as ByBands;
        const common = holding(x.bands).some((p) => holding(y.bands).some((q) => Math.max(p.low.value, q.low.value) <= Math.min(p.high.value, q.high.value) + 1e-9));
        if (!common) {
          const say = (r: ByBands): string => holding(r.bands).map((h) => rangeInWords(h, r.signed)).join(", ");
          report(problemAt(b.at, "rules/contradiction", `No value satisfies both rules: ${a.id} asks for ${say(x)}, ${b.id} for ${say(y)}.`));
        } else if (sameText(a.when, b.when) && sameBands(x, y)) report(problemAt(b.at, "rules/shadowed", `This rule says the same of the same value as ${a.id}.`));
      }
}

export function rangeInWords(h: { readonly low: BandEnd; readonly high: BandEnd }, signed: boolean): string {
  if (h.low.value === -Infinity && h.high.value === Infinity) return "any value";
  if (h.low.value === -Infinity) return `at most ${shownEnd(h.high, signed)}`;
  if (h.high.value === Infinity) return `at least ${shownEnd(h.low, signed)}`;
  return `${shownEnd(h.low, signed)} to ${shownEnd(h.high, signed)}`;
}

const text = (when: Rule["when"]): string[] => when.map((w) => phrase(w.expr, (n) => n)).sort();
const sameText = (a: Rule["when"], b: Rule["when"]): boolean => text(a).join("\n") === text(b).join("\n");
const sameBands = (a: ByBands, b: ByBands): boolean => {
  const say = (j: ByBands): string => inOrder(j.bands).map((x) => `${showValue(x.low.value, x.low.dimension, { unit: "1" })} ${x.high.value} ${x.grade}`).join("\n");
  return say(a) === say(b);
};
/** Whether their conditions ask different words of the same fact. */
const exclusive = (a: Rule, b: Rule): boolean => unreachable({ ...a, when: [...a.when, ...b.when] }) !== undefined;
