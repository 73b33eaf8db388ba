/** What a rule, limit, default, source, quantity or fact is, in plain sentences: for hovers, for pages and for `spanwise reason`. */
import { show, showValue } from "../../language/quantity/show.js";
import type { Dimension } from "../../language/quantity/types.js";
import type { BasisNote, Grade } from "../types.js";
import { inOrder } from "./bands.js";
import { runExample, resultInWords } from "./examples.js";
import { namesIn } from "./expression.js";
import type { FactTable } from "./fact-table.js";
import { nameInWords, phrase } from "./phrase.js";
import type { LimitValue, Rule, RulePlace, RuleSet, Scope, Source } from "./types.js";
import { rangeInWords } from "./band-words.js";

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

export interface Explanation {
  readonly is: "rule" | "limit" | "default" | "source" | "quantity" | "fact";
  readonly name: string;
  readonly title: string;
  /** What it looks at, when it applies, what it judges; or its value; or its formula. One sentence each. */
  readonly says: readonly string[];
  readonly because?: string;
  readonly bands: readonly ExplainedBand[];
  readonly dimension?: Dimension;
  readonly bases: readonly ExplainedBasis[];
  readonly covers: readonly string[];
  readonly notCovered: readonly string[];
  readonly remedies: readonly string[];
  readonly cautions: readonly string[];
  readonly examples: readonly { readonly text: string; readonly gives: string; readonly value?: number }[];
  /** Rules that read or cite it. */
  readonly usedBy: readonly string[];
  readonly at?: RulePlace;
}

const empty = {
  bands: [],
  bases: [],
  covers: [],
  notCovered: [],
  remedies: [],
  cautions: [],
  examples: [],
  usedBy: [],
} as const;

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

const gradeWords: Record<Grade, string> = {
  holds: "holds",
  advice: "advice: it would be easier or safer",
  caution: "caution: only with what the message says",
  stop: "stop: do not attempt it like this",
};

function scopeInWords(scope: Scope): string {
  switch (scope.is) {
    case "transfer":
      return "Looks at each transfer and way back.";
    case "thing":
      return `Looks at each ${scope.kind.replaceAll("-", " ")}.`;
    case "setup":
      return "Looks at the setup as a whole.";
    case "end":
      return "Looks at how things stand after the last step of a transfer.";
    case "step":
      return scope.phrases.length === 0
        ? "Looks at each step."
        : `Looks at each step ${scope.phrases.map((p) => `"${p}"`).join(", ")}.`;
  }
}

export function explainRule(rule: Rule, set: RuleSet, table: FactTable): Explanation {
  const called = (n: string): string => set.limits.get(n)?.title ?? nameInWords(n);
  const says = [scopeInWords(rule.scope), ...rule.when.map((w) => `Applies where ${phrase(w.expr)}.`)];
  const { judged } = rule;
  if (judged.is === "require")
    says.push(`Requires that ${phrase(judged.expr, withValue(set))}; else ${gradeWords[judged.level]}.`);
  else
    says.push(
      `Judges ${judged.expr.op === "name" ? `${nameInWords(judged.expr.name)} (${whatIs(judged.expr.name, rule.scope, table)})` : phrase(judged.expr, called)}.`,
    );
  return {
    ...empty,
    is: "rule",
    name: rule.id,
    title: rule.title,
    says,
    because: rule.because,
    bands: bandsOf(rule),
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
    examples: rule.examples.map((e) => {
      const result = runExample(rule, e, set.limits);
      return {
        text: e.text.replace(/: [^:]*$/, ""),
        gives: resultInWords(result),
        ...(result.value && { value: result.value.interval.nominal }),
      };
    }),
    at: rule.at,
  };
}

const withValue =
  (set: RuleSet) =>
  (n: string): string => {
    const l = set.limits.get(n);
    return l ? `${showValue(l.interval.nominal, l.dimension, l.unit)} (${n})` : nameInWords(n);
  };

const whatIs = (name: string, scope: Scope, table: FactTable): string =>
  table.spec(name, scope)?.says ?? nameInWords(name);

function bandsOf(rule: Rule): readonly ExplainedBand[] {
  const j = rule.judged;
  if (j.is === "require") return [];
  const words = j.choices.map((b): ExplainedBand => ({
    text: `${b.choices.join(", ")}: ${gradeWords[b.grade]}`,
    grade: b.grade,
    ...(b.message !== undefined && { message: b.message }),
  }));
  const values = inOrder(j.bands).map((b): ExplainedBand => ({
    text: `${rangeInWords(b, j.signed)}: ${gradeWords[b.grade]}`,
    grade: b.grade,
    low: b.low.value,
    high: b.high.value,
    ...(b.message !== undefined && { message: b.message }),
  }));
  return [...words, ...values];
}

const basisWords: Record<BasisNote["basis"], string> = {
  published: "Published",
  derived: "Derived",
  "common-practice": "Common practice, without a source",
  "from-memory": "From memory",
  "project-choice": "A choice of this project",
};
const extentWords: Record<Source["extent"], string> = {
  whole: "read whole",
  part: "read in part",
  abstract: "only its abstract was read",
  "through-another": "known through another page",
};

function basesOf(notes: readonly BasisNote[], set: RuleSet): readonly ExplainedBasis[] {
  return notes.map((note) => {
    const c = note.citation;
    if (!c) return { text: `${basisWords[note.basis]}: ${note.text}`, note };
    const source = set.sources.get(c.id);
    const text = `Published: ${source?.title ?? c.id}, ${c.at}, says ${c.says}; taken from it: ${c.takes}.${source ? ` (${extentWords[source.extent]})` : ""}`;
    return { text, note, ...(source && { source }) };
  });
}

function explainLimit(
  limit: LimitValue,
  is: "limit" | "default",
  set: RuleSet,
  tapeable = false,
): Explanation {
  const value = show(limit.interval, limit.dimension, limit.unit);
  const says = [
    is === "limit" ? `The limit is ${value}.` : `Where nobody gave a value, ${value} is assumed.`,
  ];
  if (tapeable)
    says.push(
      "A tape can measure it in the home: while it is only assumed, nothing that rests on it counts as holding.",
    );
  return {
    ...empty,
    is,
    name: limit.name,
    title: limit.title,
    says,
    dimension: limit.dimension,
    bases: basesOf(limit.bases, set),
    covers: limit.covers,
    notCovered: limit.notCovered,
    usedBy: readers(limit.name, set),
    at: limit.at,
  };
}

function explainSource(source: Source, set: RuleSet): Explanation {
  const says = [
    `${source.by}${source.year === undefined ? "" : `, ${source.year}`}.`,
    ...(source.publishedIn === undefined ? [] : [`In: ${source.publishedIn}.`]),
    `A ${source.kind}; ${extentWords[source.extent]}, on ${source.read}.`,
    ...(source.address === undefined ? [] : [source.address]),
  ];
  const holders = [
    ...set.rules.map((r) => ({ name: r.id, bases: r.bases })),
    ...set.limits.values(),
    ...set.defaults.values(),
  ];
  const cites = holders.flatMap((h) =>
    h.bases.filter((b) => b.citation?.id === source.name).map((b) => ({ by: h.name, note: b })),
  );
  return {
    ...empty,
    is: "source",
    name: source.name,
    title: source.title,
    says,
    bases: cites.map(({ by, note }) => ({
      text: `${by}: ${note.citation!.at} says ${note.citation!.says}; taken from it: ${note.citation!.takes}.`,
      note,
      source,
    })),
    usedBy: [...new Set(cites.map((c) => c.by))],
    at: source.at,
  };
}

const everywhere: readonly Scope[] = [{ is: "transfer" }, { is: "step", phrases: [] }, { is: "setup" }];

function explainFact(name: string, set: RuleSet, table: FactTable): Explanation | undefined {
  for (const scope of everywhere) {
    const spec = table.spec(name, scope);
    if (!spec) continue;
    const says = [`${spec.says[0]?.toUpperCase() ?? ""}${spec.says.slice(1)}.`];
    if (spec.type.choices) says.push(`It is one of ${spec.type.choices.join(", ")}.`);
    if (spec.is === "quantity")
      says.push(`Worked out as: ${spec.quantity.formula}.`, `From: ${spec.quantity.source}.`);
    return {
      ...empty,
      is: spec.is === "quantity" ? "quantity" : "fact",
      name,
      title: nameInWords(name),
      says,
      ...(spec.type.dimension && { dimension: spec.type.dimension }),
      usedBy: readers(name, set),
    };
  }
  return undefined;
}

/** The rules that read a fact or use a limit. */
function readers(name: string, set: RuleSet): readonly string[] {
  return set.rules
    .filter(
      (r) =>
        [...r.when.map((w) => w.expr), r.judged.expr].some((e) => namesIn(e).some((n) => n.name === name)) ||
        (r.judged.is === "bands" &&
          r.judged.bands.some((b) => b.low.limit === name || b.high.limit === name)),
    )
    .map((r) => r.id);
}

/** The whole explanation as lines of text. */
export function explanationLines(e: Explanation): readonly string[] {
  const part = (head: string, lines: readonly string[]): string[] =>
    lines.length === 0 ? [] : ["", head, ...lines.map((l) => `  ${l}`)];
  return [
    `${e.title} (${e.name})`,
    ...e.says,
    ...(e.because === undefined ? [] : ["", `Why: ${e.because}`]),
    ...part(
      "Bands:",
      e.bands.map((b) => b.text),
    ),
    ...part(
      "What it rests on:",
      e.bases.map((b) => b.text),
    ),
    ...part("Covers:", e.covers),
    ...part("Does not cover:", e.notCovered),
    ...part("What would help:", e.remedies),
    ...part("Meanwhile:", e.cautions),
    ...part(
      "Examples:",
      e.examples.map((x) => `${x.text}: ${x.gives}`),
    ),
    ...part("Used by:", e.usedBy),
  ];
}
