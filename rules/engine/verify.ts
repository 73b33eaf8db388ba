/** Whether a rule set may be used. Everything that is wrong is reported at its line; a set with any fault is refused whole. */
import { bandFaults } from "./bands.js";
import { shownEnd } from "./band-words.js";
import { dimensionWords, truth, typeOf, type ExprType, type FactType, type Names } from "./dimensions.js";
import type { Expr, Span } from "./expression.js";
import { holesIn, knownHoles } from "./holes.js";
import { problemAt } from "./read.js";
import type { Rule, RulePlace, RuleSet, Scope, SetProblem } from "./types.js";
import { verifyExamples, verifyExampleValues } from "./verify-examples.js";
import { suggestions, verifyCommonPractice, verifyNames } from "./verify-names.js";
import { contradictions } from "./verify-pairs.js";
import { conditionsOf, verifyNumbers, verifyReach, type Condition } from "./verify-reach.js";

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

export function verify(
  set: RuleSet,
  head: RulePlace | undefined,
  around: Surroundings,
): readonly SetProblem[] {
  const problems: SetProblem[] = [];
  const report: Report = (p) => problems.push(p);
  if (!head)
    report({
      path: set.rules[0]?.at.path ?? "",
      line: 0,
      start: 0,
      end: 0,
      rule: "rules/missing",
      message: "This rule set has no head: ruleset NAME VERSION { title ... }.",
    });
  verifyNames(set, report);
  verifyCommonPractice(set, report);
  const near = suggestions();
  const usedLimits = new Set<string>();
  const cited = new Set<string>();
  const bases = [...set.limits.values(), ...set.defaults.values(), ...set.rules];
  for (const holder of bases)
    for (const b of holder.bases) {
      if (!b.citation) continue;
      cited.add(b.citation.id);
      if (!set.sources.has(b.citation.id)) {
        const meant = near(b.citation.id, () => set.sources.keys());
        report(
          problemAt(
            holder.at,
            "rules/unknown-source",
            `There is no source called "${b.citation.id}".${meant ? ` Is "${meant}" meant?` : ""}`,
          ),
        );
      }
    }
  const namesOf = (rule: Rule): Names => ({
    fact: (n) => around.fact(n, rule.scope),
    limit: (n) => {
      const l = set.limits.get(n);
      if (l) usedLimits.add(n);
      return l && { dimension: l.dimension, bare: l.dimension === "number" };
    },
    nearest: (n) => near(n, () => [...around.factNames(rule.scope), ...set.limits.keys()]),
  });
  const conditions = new Map<Rule, readonly Condition[]>();
  const conditionsIn = (rule: Rule): readonly Condition[] => {
    let found = conditions.get(rule);
    if (!found) conditions.set(rule, (found = conditionsOf(rule, set.limits)));
    return found;
  };
  for (const rule of set.rules) {
    const names = namesOf(rule);
    if (!verifyRule(rule, set, around, names, usedLimits, report)) continue;
    verifyNumbers(rule, set.limits, report);
    const reached = verifyReach(rule, conditionsIn(rule), set.limits, names, report);
    verifyExamples(rule, set, reached, report);
  }
  for (const s of set.sources.values())
    if (!cited.has(s.name)) report(problemAt(s.at, "rules/unused", `Nothing cites the source ${s.name}.`));
  const byCode = new Set(around.used ?? []);
  for (const l of set.limits.values())
    if (!usedLimits.has(l.name) && !byCode.has(l.name))
      report(problemAt(l.at, "rules/unused", `Nothing uses the limit ${l.name}.`));
  if (around.used) {
    for (const d of set.defaults.values())
      if (!byCode.has(d.name) && !usedLimits.has(d.name))
        report(problemAt(d.at, "rules/unused", `Nothing uses the default ${d.name}.`));
    for (const name of byCode)
      if (!set.defaults.has(name) && !set.limits.has(name) && head)
        report(
          problemAt(head, "rules/missing", `The default ${name} is missing: something computed needs it.`),
        );
  }
  contradictions(set.rules, set.limits, conditionsIn, namesOf, report);
  return problems;
}

/** Whether what the rule says can be worked out, so that its examples can be run; what is wrong is reported. */
function verifyRule(
  rule: Rule,
  set: RuleSet,
  around: Surroundings,
  names: Names,
  usedLimits: Set<string>,
  report: Report,
): boolean {
  if (rule.scope.is === "thing" && !around.kinds.includes(rule.scope.kind))
    report(
      problemAt(
        rule.at,
        "rules/unknown-word",
        `No kind of thing is called "${rule.scope.kind}": ${around.kinds.join(", ")}.`,
      ),
    );
  if (rule.scope.is === "step")
    for (const p of rule.scope.phrases)
      if (!around.stepPhrase(p))
        report(problemAt(rule.at, "rules/unknown-word", `No step starts with "${p}".`));
  const at =
    (place: RulePlace) =>
    (rulePart: string) =>
    (p: Span & { message: string; fixes?: SetProblem["fixes"] }) =>
      report(
        problemAt(place, rulePart, p.message, {
          start: p.start,
          end: p.end,
          ...(p.fixes && { fixes: p.fixes }),
        }),
      );
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
  return verifyExampleValues(rule, names, report) && sound;
}

type ByBands = Rule["judged"] & { readonly is: "bands" };

function verifyBands(
  judged: ByBands,
  type: ExprType | undefined,
  usedLimits: Set<string>,
  report: Report,
): boolean {
  for (const b of judged.bands)
    for (const e of [b.low, b.high]) if (e.limit !== undefined) usedLimits.add(e.limit);
  if (!type) return false;
  if (judged.choices.length > 0) {
    if (type.is !== "choice" || type.choices.length === 0) {
      report(
        problemAt(
          judged.at,
          "rules/dimension",
          "These bands speak of words, but what is judged is not a choice of words.",
        ),
      );
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
      report(
        problemAt(
          b.at,
          "rules/dimension",
          `What is judged is ${dimensionWords[type.dimension]}; this band speaks of ${dimensionWords[e.dimension]}.`,
        ),
      );
      break;
    }
  if (!fine || judged.bands.length === 0) return false;
  const faults = bandFaults(judged.bands, (e) => shownEnd(e, judged.signed));
  for (const f of faults) report(problemAt(f.band.at, "rules/band", f.message));
  return faults.length === 0;
}

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
  const texts: [string | undefined, RulePlace][] = [
    [rule.message, rule.at],
    [rule.unknown, rule.at],
  ];
  if (rule.judged.is === "require") texts.push([rule.judged.message, rule.judged.at]);
  else for (const b of [...rule.judged.bands, ...rule.judged.choices]) texts.push([b.message, b.at]);
  for (const c of rule.cautions) texts.push([c, rule.at]);
  for (const r of rule.remedies)
    texts.push([r.is === "text" || r.is === "set" ? r.text : r.step, r.is === "text" ? rule.at : r.at]);
  for (const [text, at] of texts)
    for (const hole of text === undefined ? [] : holesIn(text))
      if (!knownHoles.has(hole) && !names.fact(hole) && !names.limit(hole))
        report(
          problemAt(at, "rules/unknown-name", `{${hole}} is not the name of anything that can be filled in.`),
        );
  for (const r of rule.remedies) {
    if (r.is === "set" && around.settable(r.role, r.key, rule.scope) !== "quantity")
      report(
        problemAt(
          r.at,
          "rules/unknown-name",
          `${r.role}.${r.key} is not a quantity that can be written in a setup.`,
        ),
      );
    if ((r.is === "insert" || r.is === "move") && rule.scope.is !== "step" && rule.scope.is !== "end")
      report(problemAt(r.at, "rules/statement", "Only a rule on steps can insert or move a step."));
  }
  for (const place of rule.places) {
    const dot = place.indexOf(".");
    if (
      !around.settable(place.slice(0, dot), place.slice(dot + 1), rule.scope) &&
      !(rule.scope.is === "thing" && around.settable(rule.scope.kind, place, rule.scope))
    )
      report(problemAt(rule.at, "rules/unknown-name", `at ${place}: this cannot be written in a setup.`));
  }
  const said =
    rule.message !== undefined ||
    (rule.judged.is === "require"
      ? rule.judged.message !== undefined
      : [...rule.judged.bands, ...rule.judged.choices].every(
          (b) => b.grade === "holds" || b.message !== undefined,
        ));
  if (!said)
    report(
      problemAt(
        rule.at,
        "rules/missing",
        "A grade of this rule has no message, and the rule has none of its own.",
      ),
    );
}
