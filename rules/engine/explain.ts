/** What a rule, limit, default, source, quantity or fact is, in plain sentences: for hovers, for pages and for `spanwise reason`. */
import type { Dimension } from "../../language/quantity/types.js";
import type { BasisNote, Grade } from "../types.js";
import { namesIn } from "./expression.js";
import { shownExample, stripOf, type ShownExample, type Strip } from "./explain-strip.js";
import { stripLines } from "./explain-strip-text.js";
import { basesOf, explainFact, explainLimit, explainSource } from "./explain-values.js";
import { exactText, gradeWords, scopeInWords } from "./explain-words.js";
import type { FactTable } from "./fact-table.js";
import { nameInWords, phrase } from "./phrase.js";
import type { Rule, RulePlace, RuleSet, Source } from "./types.js";

export interface ExplainedBand {
  readonly text: string;
  readonly grade: Grade;
  readonly message?: string;
  /** SI; ±Infinity where open. Missing for bands over words. */
  readonly low?: number;
  readonly high?: number;
}

export interface ExplainedBasis {
  /** One sentence, citation included. */
  readonly text: string;
  readonly note: BasisNote;
  readonly source?: Source;
}

/** A name that a rule reads, and what it means. */
export interface ReadName {
  readonly is: "limit" | "quantity" | "fact";
  readonly name: string;
  /** One sentence without its full stop. */
  readonly says: string;
}

export interface Explanation {
  readonly is: "rule" | "limit" | "default" | "source" | "quantity" | "fact";
  readonly name: string;
  readonly title: string;
  /** What it looks at, when it applies, what it judges; or its value; or its formula. One sentence each. */
  readonly says: readonly string[];
  readonly because?: string;
  readonly bands: readonly ExplainedBand[];
  /** The bands over a value with every example on them. */
  readonly strip?: Strip;
  readonly dimension?: Dimension;
  readonly bases: readonly ExplainedBasis[];
  readonly covers: readonly string[];
  readonly notCovered: readonly string[];
  readonly remedies: readonly string[];
  readonly cautions: readonly string[];
  readonly examples: readonly ShownExample[];
  /** What a rule reads, in the order in which it does. */
  readonly reads: readonly ReadName[];
  /** Rules that read or cite it. */
  readonly usedBy: readonly string[];
  readonly at?: RulePlace;
}

/** Explains a name of the rule set or of the facts; undefined where nothing is called so. */
export function explain(name: string, set: RuleSet, table: FactTable): Explanation | undefined {
  const rule = set.rules.find((r) => r.id === name);
  if (rule) return explainRule(rule, set, table);
  const limit = set.limits.get(name);
  if (limit) return explainLimit(limit, "limit", set);
  const value = set.defaults.get(name);
  if (value) return explainLimit(value, "default", set, value.tapeable);
  const source = set.sources.get(name);
  return source ? explainSource(source, set) : explainFact(name, set, table);
}

export function explainRule(rule: Rule, set: RuleSet, table: FactTable): Explanation {
  const strip = stripOf(rule, set.limits);
  const { judged } = rule;
  return {
    is: "rule",
    name: rule.id,
    title: rule.title,
    says: [
      scopeInWords(rule.scope),
      ...rule.when.map((w) => `Applies where ${phrase(w.expr, nameWith(set))}.`),
      judgedInWords(rule, set, table),
    ],
    because: rule.because,
    bands: bandsOf(rule, strip),
    ...(strip && { strip }),
    ...(judged.is === "bands" && judged.bands[0] && { dimension: judged.bands[0].low.dimension }),
    bases: basesOf(rule.bases, set),
    covers: rule.covers,
    notCovered: rule.notCovered,
    remedies: rule.remedies.map((r) =>
      r.is === "text" || r.is === "set"
        ? r.text
        : `${r.is === "insert" ? "Put" : "Move"} the step "${r.step}" ${r.side} this one.`,
    ),
    cautions: rule.cautions,
    examples: rule.examples.map((e) => shownExample(rule, e, set.limits)),
    reads: readsOf(rule, set, table),
    usedBy: [],
    at: rule.at,
  };
}

function judgedInWords({ judged, scope }: Rule, set: RuleSet, table: FactTable): string {
  const asked = phrase(judged.expr, nameWith(set));
  if (judged.is === "require") return `Requires that ${asked}; else ${gradeWords[judged.level]}.`;
  if (judged.expr.op !== "name") return `Judges ${asked}.`;
  const says = table.spec(judged.expr.name, scope)?.says;
  return `Judges ${asked}${says === undefined ? "" : ` (${says.replace(/\.$/, "")})`}.`;
}

/** A fact by its name, a limit by its value with its name behind it. */
const nameWith =
  (set: RuleSet) =>
  (n: string): string => {
    const l = set.limits.get(n);
    return l ? `${exactText(l.interval.nominal, l.dimension, l.unit)} (${n})` : nameInWords(n);
  };

/** Names in the conditions and in what is judged, then limits that only bands name; each once. */
function readsOf(rule: Rule, set: RuleSet, table: FactTable): readonly ReadName[] {
  const { judged, scope } = rule;
  const exprs = [...rule.when.map((w) => w.expr), judged.expr];
  const ends = judged.is === "bands" ? judged.bands.flatMap((b) => [b.low.limit, b.high.limit]) : [];
  const names = [...exprs.flatMap(namesIn), ...ends.filter((n) => n !== undefined)];
  return [...new Set(names)].map((name) => {
    const limit = set.limits.get(name);
    if (limit) return { is: "limit", name, says: limit.title };
    const spec = table.spec(name, scope);
    const says = (spec?.says ?? nameInWords(name)).replace(/\.$/, "");
    return { is: spec?.is === "quantity" ? "quantity" : "fact", name, says };
  });
}

function bandsOf(rule: Rule, strip: Strip | undefined): readonly ExplainedBand[] {
  const j = rule.judged;
  if (j.is === "require") return [];
  const words = j.choices.map((b): ExplainedBand => ({
    text: `${b.choices.join(", ")}: ${gradeWords[b.grade]}`,
    grade: b.grade,
    ...(b.message !== undefined && { message: b.message }),
  }));
  const values = (strip?.bands ?? []).map((b): ExplainedBand => ({
    text: `${b.range}: ${gradeWords[b.grade]}`,
    grade: b.grade,
    low: b.low,
    high: b.high,
    ...(b.message !== undefined && { message: b.message }),
  }));
  return [...words, ...values];
}

/** How wide the strip of an explanation in lines is. */
const stripWidth = 76;

/** The whole explanation as lines of text. */
export function explanationLines(e: Explanation): readonly string[] {
  const part = (head: string, lines: readonly string[]): string[] =>
    lines.length === 0 ? [] : ["", head, ...lines.map((l) => `  ${l}`)];
  const examples = e.strip ? stripLines(e.strip, stripWidth) : e.examples.map((x) => `${x.text}: ${x.gives}`);
  return [
    `${e.title} (${e.name})`,
    ...e.says,
    ...(e.because === undefined ? [] : ["", `Why: ${e.because}`]),
    ...part(
      "Bands:",
      e.bands.map((b) => b.text),
    ),
    ...part("Examples:", examples),
    ...part(
      "What it rests on:",
      e.bases.map((b) => b.text),
    ),
    ...part("Covers:", e.covers),
    ...part("Does not cover:", e.notCovered),
    ...part("What would help:", e.remedies),
    ...part("Meanwhile:", e.cautions),
    ...part(
      "Reads:",
      e.reads.map((r) => `${r.name}: ${r.says}`),
    ),
    ...part("Used by:", e.usedBy),
  ];
}
