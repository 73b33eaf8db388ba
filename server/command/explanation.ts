/** The texts of `spanwise reason`. */
import { nearest } from "../../language/text/nearest.js";
import { show, showWithDoubt } from "../../language/quantity/show.js";
import { readsAny } from "../../rules/engine/expression.js";
import { phrase } from "../../rules/engine/phrase.js";
import { inOrder } from "../../rules/engine/bands.js";
import { bandInWords } from "../../rules/engine/explain-strip.js";
import type { DefaultValue, LimitValue, Rule, RuleSet, Scope, Source } from "../../rules/engine/types.js";
import { quantities, quantityNamed } from "../../rules/quantities/index.js";
import type { QuantityRule } from "../../rules/quantity.js";
import type { Basis, Computed, Term, Verdict } from "../../rules/types.js";
import { stripText } from "../paper/strip-text.js";
import { located } from "../workspace/reported.js";
import { basisText, sourceText } from "./as-text.js";
import type { Checked, CheckedFile } from "./checked.js";
import { capital } from "../../language/text/capital.js";
import { entry, heading, type Terminal } from "./terminal.js";
import { sourceKindInWords } from "./words.js";

/** What the set and the program say of a name; undefined if it is nothing of theirs. */
export function explanation(name: string, set: RuleSet, t: Terminal): string | undefined {
  const rule = set.rules.find((r) => r.id === name);
  if (rule) return ruleText(rule, set, t);
  const limit = set.limits.get(name);
  if (limit) return limitText(limit, "A limit", set, t);
  const value = set.defaults.get(name);
  if (value) return limitText(value, "A default: it stands in where nobody gave a value", set, t);
  const source = set.sources.get(name);
  if (source) return sourcePage(source, set, t);
  const quantity = quantityNamed.get(name);
  return quantity && quantityText(quantity, set, t);
}

/** Names that may have been meant. */
export function namesLike(name: string, set: RuleSet): readonly string[] {
  const all = [
    ...set.rules.map((r) => r.id),
    ...set.limits.keys(),
    ...set.defaults.keys(),
    ...set.sources.keys(),
    ...quantities.map((q) => q.name),
  ];
  const near = nearest(name, all);
  const parts = all.filter((n) => n !== near && n.includes(name));
  return [...(near === undefined ? [] : [near]), ...parts].slice(0, 5);
}

class Page {
  private readonly parts: string[] = [];
  constructor(
    private readonly t: Terminal,
    title: string,
  ) {
    this.parts.push(heading(t, title));
  }
  list(label: string, texts: readonly string[]): this {
    for (const [i, text] of texts.entries()) this.parts.push(entry(this.t, i === 0 ? label : "", text));
    return this;
  }
  get text(): string {
    return this.parts.join("\n");
  }
}

const stop = (text: string): string => (/[.!?]["”)]?$/.test(text) ? capital(text) : `${capital(text)}.`);

function scopeInWords(scope: Scope): string {
  switch (scope.is) {
    case "transfer":
      return "each transfer and each way back";
    case "thing":
      return `each ${scope.kind}`;
    case "setup":
      return "the plan as a whole";
    case "step":
      return scope.phrases.length === 0 ? "each step" : `each step ${scope.phrases.join(", ")}`;
    case "end":
      return "the end of each transfer, after its last step";
  }
}

function ruleText(rule: Rule, set: RuleSet, t: Terminal): string {
  const page = new Page(t, `${rule.id}: ${rule.title}`)
    .list("looks at", [stop(scopeInWords(rule.scope))])
    .list(
      "when",
      rule.when.map((w) => stop(phrase(w.expr))),
    );
  const { judged } = rule;
  if (judged.is === "require") page.list("asks", [stop(phrase(judged.expr)), `If not: ${judged.level}.`]);
  else {
    page.list("judges", [stop(phrase(judged.expr))]);
    const sorted = inOrder(judged.bands);
    const bands = sorted.map((b, i) => `${bandInWords(sorted, i, judged.signed)}: ${b.grade}`);
    page.list("bands", [...bands, ...judged.choices.map((c) => `${c.choices.join(", ")}: ${c.grade}`)]);
  }
  page
    .list("why", [rule.because])
    .list("rests on", [...new Set(rule.bases.map(basisText))])
    .list("covers", rule.covers.map(stop))
    .list("not covered", rule.notCovered.map(stop))
    .list(
      "would help",
      rule.remedies.flatMap((r) => (r.is === "text" ? [r.text] : [])),
    )
    .list("meanwhile", rule.cautions)
    .list(
      "examples",
      rule.examples.map((e) => stop(e.text)),
    );
  const cited = [...new Set(rule.bases.flatMap((b) => (b.citation ? [b.citation.id] : [])))];
  page
    .list(
      "sources",
      cited.flatMap((id) => (set.sources.has(id) ? [`${id}: ${sourceText(set.sources.get(id)!)}`] : [])),
    )
    .list("written in", [`${rule.at.path}, line ${rule.at.line + rule.at.place.line + 1}`]);
  return page.text + stripText(rule, set, t);
}

function limitText(limit: LimitValue | DefaultValue, what: string, set: RuleSet, t: Terminal): string {
  const used = set.rules.filter((r) => usesLimit(r, limit.name)).map((r) => r.id);
  const page = new Page(t, `${limit.name}: ${limit.title}`)
    .list("what", [stop(what)])
    .list("value", [show(limit.interval, limit.dimension, limit.unit)]);
  if ("tapeable" in limit && limit.tapeable)
    page.list("measure it", ["A tape can measure it at home. Until then it never lets a rule hold."]);
  return page
    .list("rests on", [...new Set(limit.bases.map(basisText))])
    .list("covers", limit.covers.map(stop))
    .list("not covered", limit.notCovered.map(stop))
    .list("used by", used)
    .list("written in", [`${limit.at.path}, line ${limit.at.line + limit.at.place.line + 1}`]).text;
}

/** Whether what a rule asks reads a fact or limit of this name. */
const mentions = (rule: Rule, name: string): boolean =>
  [...rule.when.map((w) => w.expr), rule.judged.expr].some((e) => readsAny(e, (n) => n === name));

/** Whether a rule names a limit, in its bands or in what it asks. */
const usesLimit = (rule: Rule, name: string): boolean =>
  mentions(rule, name) ||
  (rule.judged.is === "bands" &&
    rule.judged.bands.some((b) => b.low.limit === name || b.high.limit === name));

function sourcePage(source: Source, set: RuleSet, t: Terminal): string {
  const holders = [
    ...set.rules.map((r) => ({ name: r.id, bases: r.bases })),
    ...set.limits.values(),
    ...set.defaults.values(),
  ];
  const cited = holders.flatMap((h) =>
    h.bases.flatMap(({ citation: c }) =>
      c?.id === source.name ? [`${h.name}: ${c.at}: ${c.says}. Taken from it: ${stop(c.takes)}`] : [],
    ),
  );
  return new Page(t, `${source.name}: ${source.title}`)
    .list("what", [stop(sourceKindInWords(source.kind))])
    .list("source", [sourceText(source)])
    .list("cited by", cited).text;
}

function quantityText(q: QuantityRule, set: RuleSet, t: Terminal): string {
  const judgedBy = set.rules.filter((r) => mentions(r, q.name));
  return new Page(t, q.name)
    .list("what", [stop(q.says)])
    .list("formula", [q.formula])
    .list("from", [stop(q.source)])
    .list(
      "judged by",
      judgedBy.map((r) => r.id),
    ).text;
}

/** The rules behind a name: itself, or those that use the limit or cite the source. */
function rulesBehind(name: string, set: RuleSet): readonly Rule[] {
  return set.rules.filter(
    (r) => r.id === name || usesLimit(r, name) || r.bases.some((b) => b.citation?.id === name),
  );
}

/** What comes out for a plan: what its rules say, and the arithmetic of the quantities that they read. */
export function onPlan(name: string, plan: CheckedFile, checked: Checked, t: Terminal): string {
  const { result, reported, ruleSet } = plan.snapshot;
  const page = new Page(t, `On ${plan.shown}`);
  if (!result || !ruleSet)
    return page.list("", ["No rule was applied to this plan; spanwise check says why."]).text;
  const rules = rulesBehind(name, ruleSet.partial);
  const ids = new Set(rules.map((r) => r.id));
  const verdicts = result.verdicts.filter((v) => ids.has(v.rule));
  for (const v of verdicts) {
    const found = reported.find((r) => r.rule === v.rule && r.subject === v.subject && r.finding);
    const outcome = ids.has(name) ? stop(outcomeInWords(v)) : `${v.rule}: ${outcomeInWords(v)}.`;
    page.list(v.subject, [outcome, ...(found ? [found.message] : [])]);
  }
  const own = rules.find((r) => r.id === name);
  const names = new Set(own ? quantitiesIn(own) : [name]);
  const shown = result.quantities.filter(({ quantity: q }) => names.has(q.name));
  // What is the same both ways is told once.
  const told = new Map<
    string,
    { readonly subjects: string[]; readonly head: string; readonly terms: string[] }
  >();
  for (const { subject, quantity: q } of shown) {
    const terms = q.trace.map((term) => termText(term, q, plan, checked));
    const head = `${q.name} = ${valueOf(q)}`;
    const key = [head, ...terms].join("\n");
    const same = told.get(key);
    if (same) same.subjects.push(subject);
    else told.set(key, { subjects: [subject], head, terms });
  }
  for (const { subjects, head, terms } of told.values()) {
    page.list(" ", [""]);
    if (subjects.length > 1) page.list("for", [subjects.join(", ")]).list("", [head]);
    else page.list(subjects[0]!, [head]);
    page.list("  from", terms);
  }
  if (verdicts.length === 0 && shown.length === 0) page.list("", ["Nothing of this plan rests on it."]);
  return page.text;
}

function outcomeInWords(v: Verdict): string {
  const { best, worst } = v.levels;
  const levels = best === worst ? worst : `${best} to ${worst}`;
  const words = {
    holds: "holds",
    fails: levels,
    unsettled: `not settled (${levels})`,
    unknown: `not known (${levels})`,
    "not-applicable": "does not apply",
  }[v.verdict];
  return v.reason === undefined ? words : `${words}: ${v.reason}`;
}

const quantitiesIn = (rule: Rule): string[] => quantities.map((q) => q.name).filter((n) => mentions(rule, n));

function valueOf(q: Computed): string {
  if (q.value) return [showWithDoubt(q.value, q.dimension, q.unit), q.choice].filter(Boolean).join(", ");
  if (q.choice !== undefined) return q.choice;
  if (q.without !== undefined) return `does not apply: ${q.without}`;
  return `not known; missing: ${q.missing.map((m) => m.what).join(", ")}`;
}

/** A line of arithmetic: what it is, its value, and where that comes from. The last is the result itself, by its formula. */
function termText(term: Term, q: Computed, plan: CheckedFile, checked: Checked): string {
  const unit = term.unit ?? (term.dimension === q.dimension ? q.unit : { unit: "1" });
  const value = term.value ? ` = ${showWithDoubt(term.value, term.dimension ?? "number", unit)}` : "";
  if (term.label === q.name && term.formula !== undefined) return `so: ${term.formula}${value}`;
  const formula = term.formula === undefined ? "" : ` (${term.formula})`;
  const at = term.place && located(plan.snapshot.household, term.place);
  const line = at ? `line ${at.range.start.line + 1}` : "";
  const where = !at
    ? ""
    : at.path === plan.snapshot.path
      ? `; ${line}`
      : `; ${checked.shownPath(at.path)}, ${line}`;
  const from = term.default === undefined ? "" : ofTheSet(term.default, plan);
  const own = term.quantity === undefined ? "" : "; worked out by itself";
  return `${term.label}${formula}${value}${where}${from}${own}`;
}

/** A default or a limit that entered the arithmetic, and on what kind of ground it stands. */
function ofTheSet(name: string, { snapshot }: CheckedFile): string {
  const set = snapshot.ruleSet?.partial;
  const given = set?.defaults.get(name) ?? set?.limits.get(name);
  const rests = [...new Set(given?.bases.map((b) => basisWords[b.basis]))].join(" and ");
  const what = set?.defaults.has(name) ? "default" : "limit";
  return [`; a ${what} of the rule set`, rests].filter(Boolean).join(", ");
}

/** On what kind of ground a default stands, in a word or two. */
const basisWords: Readonly<Record<Basis, string>> = {
  published: "published",
  derived: "derived",
  "common-practice": "common practice",
  "from-memory": "from memory",
  "project-choice": "a choice of this project",
};
