/** The words of a finding: a rule's texts with their holes filled in the writer's units. */
import { show, showSigned, showValue } from "../../language/quantity/show.js";
import type { Interval } from "../../language/quantity/interval.js";
import type { Dimension, ShownUnit } from "../../language/quantity/types.js";
import { capital } from "../../language/text/capital.js";
import { measuredInstead } from "../../language/vocabulary/index.js";
import type { Assumption, Missing } from "../types.js";
import { fillHoles, holesIn, nameHoles } from "./holes.js";
import type { Judgement } from "./judge.js";
import type { Reading } from "./logic.js";
import type { Subject } from "./subjects.js";
import type { Rule, RuleSet } from "./types.js";

export interface Shown {
  readonly interval: Interval;
  readonly dimension: Dimension;
  readonly unit: ShownUnit;
}

/** The unit in which a rule's numbers are shown: that of what was written; where nothing was, that of the rule's text. */
export function unitFor(rule: Rule, j: Judgement): ShownUnit {
  const written = j.value?.unit;
  const dimensionless = !written || written.unit === "1" || written.unit === "";
  const own =
    rule.judged.is === "bands"
      ? rule.judged.bands.find((b) => b.low.unit.unit !== "1")?.low.unit
      : j.limit?.unit;
  if (dimensionless) return own ?? { unit: "1" };
  // A computed value must not be shown coarser than the limit with which it is compared.
  const finest = Math.max(written.denominator ?? 1, own?.unit === written.unit ? (own.denominator ?? 1) : 1);
  return written.unit === "in" ? { ...written, denominator: Math.max(8, finest) } : written;
}

const isSigned = (rule: Rule): boolean => rule.judged.is === "bands" && rule.judged.signed;

/** Fills the holes of one of a rule's texts. `more`: holes that only this text has, such as `{range}`. */
export function fill(
  text: string,
  rule: Rule,
  j: Judgement,
  subject: Subject,
  more: { readonly [hole: string]: string } = {},
): string {
  if (!text.includes("{")) return text;
  const unit = unitFor(rule, j);
  return fillHoles(text, (name, before) => {
    if (name in more) return more[name];
    if (nameHoles.has(name)) return nameIn(name, subject);
    switch (name) {
      case "value":
        if (j.choice !== undefined) return j.choice;
        return j.value && shown(j.value.interval.nominal, j.value.dimension, unit, isSigned(rule), before);
      case "limit":
        return j.limit && shown(j.limit.interval.nominal, j.limit.dimension, unit, isSigned(rule), before);
      case "short":
        return j.margin === undefined || !j.value
          ? undefined
          : showValue(Math.abs(j.margin), j.value.dimension, unit);
      case "missing":
        return j.missing.map((m) => m.what).join("; ");
      default:
        return readingInWords(subject.facts.read(name));
    }
  });
}

/** What something is called, as the holes of `nameHoles` say it. */
export function nameIn(hole: string, subject: Subject): string | undefined {
  switch (hole) {
    case "step":
      return subject.step?.phrase;
    case "thing":
      return subject.thing?.name;
    case "client":
      return clientCode(subject);
    case "near":
      return subject.scene?.side;
    case "far":
      return subject.scene?.side && (subject.scene.side === "left" ? "right" : "left");
    default:
      return subject.facts.role(hole)?.name;
  }
}

const used = new WeakMap<Rule, readonly string[]>();
/** The names that the messages and cautions of a rule use. */
export function namesUsedBy(rule: Rule): readonly string[] {
  let found = used.get(rule);
  if (!found) {
    const { judged } = rule;
    const own =
      judged.is === "bands" ? [...judged.bands, ...judged.choices].map((b) => b.message) : [judged.message];
    const texts = [...own, rule.message, rule.unknown, rule.title, ...rule.cautions];
    const holes = texts.flatMap((t) => (t === undefined ? [] : holesIn(t)));
    used.set(rule, (found = [...new Set(holes.filter((h) => nameHoles.has(h)))]));
  }
  return found;
}

/** Signed values say up or down themselves, unless the text has just said it. */
function shown(
  value: number,
  dimension: Dimension,
  unit: ShownUnit,
  signed: boolean,
  before: string,
): string {
  if (!signed) return showValue(value, dimension, unit);
  return /\b(up|down)\s+$/i.test(before)
    ? showValue(Math.abs(value), dimension, unit)
    : showSigned(value, dimension, unit);
}

function clientCode(subject: Subject): string {
  const code = subject.facts.sight.household.client?.values["code"];
  return typeof code === "string" ? code : "the client";
}

/** A fact as a message shows it; undefined where it is not known. */
export function readingInWords(r: Reading): string | undefined {
  if (r.value && r.choice === undefined) return showValue(r.value.nominal, r.dimension, r.unit);
  return r.choice?.replaceAll("-", " ");
}

/** What a finding says without what is said of doubts and assumptions: the rule's own message, with its numbers. */
export function plainMessage(rule: Rule, j: Judgement, subject: Subject): string {
  const said = sentence(
    fill(
      j.verdict === "unknown"
        ? (rule.unknown ?? `${rule.title}: this cannot be said yet.`)
        : (j.message ?? rule.message ?? rule.title),
      rule,
      j,
      subject,
    ),
  );
  return j.verdict === "unsettled" ? unsettledMessage(rule, j, said) : said;
}

/** What a finding says: the rule's message, and how sure it is. */
export function messageOf(rule: Rule, j: Judgement, subject: Subject, set: RuleSet): string {
  if (j.verdict === "unknown") {
    const what = missingInWords(j.missing);
    const said = plainMessage(rule, j, subject);
    return what ? `${said} Missing: ${what}.` : j.reason ? `${said} ${j.reason}.` : said;
  }
  const said = plainMessage(rule, j, subject);
  const doubt = doubtOf(rule, j);
  const assumed = assumedInWords(j.assumed, set);
  return [j.verdict === "unsettled" ? `Not settled: ${said}` : said, doubt, assumed]
    .filter((s) => s !== "")
    .join(" ");
}

/** A rule's message says what is wrong; where the value as it was written is right and only the doubt is not, it would mislead. */
function unsettledMessage(rule: Rule, j: Judgement, said: string): string {
  if (j.margin === undefined || j.margin < 0 || !j.value) return said;
  const unit = unitFor(rule, j);
  const value = isSigned(rule)
    ? showSigned(j.value.interval.nominal, j.value.dimension, unit)
    : showValue(j.value.interval.nominal, j.value.dimension, unit);
  const spare = showValue(j.margin, j.value.dimension, unit);
  return `${rule.title.replace(/[.?]$/, "")}. It comes to ${value}, with ${spare} to spare, but that is not sure yet.`;
}

const sentence = (s: string): string => (/[.!?][)"]?$/.test(s) ? s : `${s}.`);

function doubtOf(rule: Rule, j: Judgement): string {
  if (j.verdict === "fails" && j.best !== j.worst) return `At least ${j.best}, perhaps ${j.worst}.`;
  if (j.verdict !== "unsettled") return "";
  if (j.assumed.some((a) => a.tapeable)) return "";
  if (!j.value || j.value.interval.low === j.value.interval.high) return "It is not sure yet.";
  const unit = unitFor(rule, j);
  const { interval, dimension } = j.value;
  const range = isSigned(rule)
    ? `${showSigned(interval.low, dimension, unit)} to ${showSigned(interval.high, dimension, unit)}`
    : show(interval, dimension, unit);
  return `It may be anything from ${range.replace(/^(between|from) /, "")}: measure more exactly.`;
}

export const missingInWords = (missing: readonly Missing[]): string =>
  [...new Set(missing.map((m) => m.what))].join("; ");

/** That values were assumed, which of them a tape could measure, and how many are from memory. */
export function assumedInWords(assumed: readonly Assumption[], set: RuleSet): string {
  const names = [...new Set(assumed.map((a) => a.name))];
  if (names.length === 0) return "";
  const tapeable = [...new Set(assumed.filter((a) => a.tapeable).map((a) => a.name))];
  const memory = names.filter((n) =>
    set.defaults.get(n)?.bases.some((b) => b.basis === "from-memory"),
  ).length;
  const count = names.length === 1 ? "a value that was assumed" : `${names.length} values that were assumed`;
  const remembered =
    memory === 0 ? "" : names.length === 1 ? ", from memory" : `, ${memory} of them from memory`;
  const title = (name: string): string => (set.defaults.get(name)?.title ?? name).replace(/\.$/, "");
  // No tape measures a part of stature.
  const what = (name: string): string => {
    const help = measuredInstead.get(name)?.help;
    return help === undefined ? title(name) : capital(help);
  };
  const measurable =
    tapeable.length === 0 ? "" : ` A tape can measure: ${tapeable.slice(0, 3).map(what).join("; ")}.`;
  return `It rests on ${count}${remembered}.${measurable}`;
}

/** `7/8 in short; the doubt of 1/4 in does not change this`. */
export function marginInWords(rule: Rule, j: Judgement): string | undefined {
  if (j.margin === undefined || !j.value || !j.limit) return undefined;
  const unit = unitFor(rule, j);
  const size = showValue(Math.abs(j.margin), j.value.dimension, unit);
  const side =
    j.margin >= 0
      ? "to spare"
      : isSigned(rule)
        ? "beyond"
        : j.value.interval.nominal < j.limit.interval.nominal
          ? "short"
          : "too much";
  const doubt = (j.value.interval.high - j.value.interval.low) / 2;
  if (!(doubt > 0) || !Number.isFinite(doubt)) return `${size} ${side}`;
  const half = showValue(doubt, j.value.dimension, unit);
  return `${size} ${side}; the doubt of ${half} ${j.verdict === "unsettled" ? "is larger than that" : "does not change this"}`;
}
