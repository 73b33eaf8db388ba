/** Makes the finding of a judgement: its words, its place, the lines it rests on, what would help. */
import type { Household } from "../../language/model/household.js";
import type { Thing } from "../../language/model/types.js";
import { showWithDoubt } from "../../language/quantity/show.js";
import type { Place } from "../../language/text/types.js";
import type { Finding, Remedy, Term, Verdict } from "../types.js";
import { Recorder, type Kept, type Words } from "./evaluate.js";
import type { Reading } from "./logic.js";
import { fill, marginInWords, messageOf, nameIn, namesUsedBy, plainMessage, unitFor } from "./messages.js";
import type { Facts } from "./slots.js";
import type { Subject } from "./subjects.js";
import type { Rule, RuleSet } from "./types.js";

export interface Current {
  household: Household | undefined;
}

/** The verdict of a judgement; the same object while the judgement is. */
export const verdictOf = (rule: Rule, subject: Subject, kept: Kept): Verdict =>
  (kept.verdict ??= makeVerdict(rule, subject, kept));

const makeVerdict = (rule: Rule, subject: Subject, kept: Kept): Verdict => {
  const { verdict, best, worst, reason, missing } = kept.judgement;
  const why =
    reason ??
    (verdict === "unknown" && missing.length > 0
      ? `Missing: ${[...new Set(missing.map((m) => m.what))].join("; ")}`
      : undefined);
  return {
    rule: rule.id,
    subject: subject.name,
    verdict,
    levels: { best, worst },
    ...(why !== undefined && { reason: why }),
  };
};

/** What a finding is made with. */
export interface Making {
  readonly set: RuleSet;
  /** The household in which places are looked up when somebody asks for them. */
  readonly now: Current;
  remedies(rule: Rule, subject: Subject, kept: Kept): readonly Remedy[];
}

/** A finding; what is seldom asked for is worked out when it is. */
class Found implements Finding {
  readonly rule: string;
  readonly subject: string;
  readonly verdict: Finding["verdict"];
  readonly levels: Finding["levels"];
  readonly reason?: string;
  readonly message: string;
  readonly because: string;
  readonly value: Finding["value"];
  readonly limit: Finding["limit"];
  readonly margin?: NonNullable<Finding["margin"]>;
  readonly bases: Finding["bases"];
  readonly cautions: readonly string[];
  readonly missing: Finding["missing"];
  readonly #from: Rule;
  #on: Subject;
  readonly #kept: Kept;
  readonly #making: Making;
  #helps: readonly Remedy[] | undefined;
  #related: Finding["related"] | undefined;

  constructor(
    from: Rule,
    on: Subject,
    kept: Kept,
    making: Making,
    readonly place: Place,
    readonly accepted: Finding["accepted"],
  ) {
    this.#from = from;
    this.#on = on;
    this.#kept = kept;
    this.#making = making;
    const verdict = verdictOf(from, on, kept);
    const j = kept.judgement;
    const words = kept.words!;
    const unit = unitFor(from, j);
    this.rule = verdict.rule;
    this.subject = verdict.subject;
    this.verdict = verdict.verdict;
    this.levels = verdict.levels;
    if (verdict.reason !== undefined) this.reason = verdict.reason;
    this.message = words.message;
    this.because = from.because;
    this.value = j.value && { ...j.value.interval, dimension: j.value.dimension, unit };
    this.limit = j.limit && { ...j.limit.interval, name: j.limit.name, dimension: j.limit.dimension, unit };
    if (j.margin !== undefined && words.margin !== undefined)
      this.margin = { value: j.margin, words: words.margin };
    this.bases = basesOf(from, j.limit?.name, making.set);
    this.cautions = words.cautions;
    this.missing = j.missing;
  }

  /** Found again for a subject that consists of other objects by now; what is said of it is the same. */
  again(subject: Subject): this {
    this.#on = subject;
    this.#helps = undefined;
    return this;
  }
  /** Looked up anew when a block that was pointed at is no longer the same: lines may have moved although nothing that was judged has changed. */
  get related(): Finding["related"] {
    const { household } = this.#making.now;
    if (!household) return [];
    if (!this.#related?.every((r) => household.locate(r.place.entry)))
      this.#related = relatedTo(this.#kept.judgement.facts, this.#on, household, this.place);
    return this.#related;
  }
  get remedies(): readonly Remedy[] {
    return (this.#helps ??= this.#making.remedies(this.#from, this.#on, this.#kept));
  }
  /** The same finding, knowingly accepted. */
  with(accepted: Finding["accepted"]): Finding {
    return new Found(this.#from, this.#on, this.#kept, this.#making, this.place, accepted);
  }
}

/** The finding knowingly accepted. One that no rule made cannot be, and stays as it is. */
export const withAccepted = (finding: Finding, accepted: Finding["accepted"]): Finding =>
  finding instanceof Found ? finding.with(accepted) : finding;

/** The finding of a judgement that neither holds nor is out of place, and its message without doubts and assumptions. */
export function findingOf(
  rule: Rule,
  subject: Subject,
  kept: Kept,
  making: Making,
): { readonly finding: Finding; readonly plain: string } {
  const words = kept.words;
  const good =
    words !== undefined &&
    words.names === namesFor(rule, subject) &&
    words.read.every((s) => s.changed <= words.at) &&
    words.readOfStep.every(([name, reading]) => subject.facts.read(name) === reading);
  if (!good) kept.words = wordsOf(rule, subject, kept, making.set);
  const place = placeOf(rule, subject);
  const before = kept.finding;
  const finding =
    good && before instanceof Found && samePlace(before.place, place)
      ? before.again(subject)
      : new Found(rule, subject, kept, making, place, undefined);
  kept.finding = finding;
  return { finding, plain: kept.words!.plain };
}

const samePlace = (a: Place, b: Place): boolean =>
  a.entry === b.entry && a.line === b.line && a.start === b.start && a.end === b.end;

/** What the things are called that the rule's texts name, in one text. */
const namesFor = (rule: Rule, subject: Subject): string =>
  namesUsedBy(rule)
    .map((hole) => nameIn(hole, subject))
    .join("\n");

function wordsOf(rule: Rule, subject: Subject, kept: Kept, set: RuleSet): Words {
  const j = kept.judgement;
  // Message holes read facts that the judgement did not; they count for whether the words may be kept.
  const recorded = new Recorder(subject, set);
  const facts: Facts = Object.create(subject.facts, {
    read: { value: (name: string) => recorded.fact(name) },
  }) as Facts;
  const watched: Subject = Object.create(subject, { facts: { value: facts } }) as Subject;
  return {
    names: namesFor(rule, subject),
    message: messageOf(rule, j, watched, set),
    plain: plainMessage(rule, j, watched),
    margin: marginInWords(rule, j),
    cautions: rule.cautions.map((c) => fill(c, rule, j, watched)),
    read: [...recorded.outer],
    readOfStep: [...recorded.inner],
    at: subject.facts.round,
  };
}

/** The bases of the rule, and of the named limit that decided. */
function basesOf(rule: Rule, limit: string | undefined, set: RuleSet): Finding["bases"] {
  const own = limit === undefined ? undefined : set.limits.get(limit);
  // What a policy says of a limit stands with the rules that use it, too.
  return own ? [...rule.bases, ...own.bases.filter((b) => !rule.bases.includes(b))] : rule.bases;
}

/** The first place of the rule that is written in this file, else the subject's own line. */
function placeOf(rule: Rule, subject: Subject): Place {
  const household = subject.facts.sight.household;
  for (const path of rule.places) {
    const found = writtenPlace(path, subject);
    if (found && household.locate(found.entry)?.path === household.path) return found;
  }
  const own = subject.place();
  if (household.locate(own.entry)?.path === household.path) return own;
  // A thing taken from another file is spoken of where this file takes it.
  const user = household.all.find(
    (t) =>
      household.locate(t.entry)?.path === household.path && (t.kind === "transfer" || t.kind === "way-back"),
  );
  return user?.placeOf() ?? own;
}

/** Where `role.key` is written; undefined if it is not. */
export function writtenPlace(path: string, subject: Subject): Place | undefined {
  const dot = path.indexOf(".");
  const key = path.slice(dot + 1);
  const role = dot < 0 ? "thing" : path.slice(0, dot);
  let thing: Thing | undefined = dot < 0 ? subject.thing : subject.facts.role(role);
  if (role === "transfer" && subject.scene) {
    const said = subject.scene.value(key);
    thing = said.value !== undefined ? said.thing : subject.scene.transfer;
  }
  if (!thing) return undefined;
  if (thing.values[key] !== undefined) return thing.placeOf(key);
  const inner = thing.inner[key]?.[0];
  return inner?.placeOf();
}

/** Every written line that the facts rest on, each once, followed through the quantities computed from them. */
function relatedTo(
  facts: readonly Reading[],
  subject: Subject,
  household: Household,
  own: Place,
): Finding["related"] {
  const found: { place: Place; message: string }[] = [];
  const seen = new Set<string>();
  for (const f of facts)
    for (const term of writtenTerms(f, subject.facts)) {
      const place = term.place!;
      const spot = household.locate(place.entry);
      const same = place.entry === own.entry && place.line === own.line && place.start === own.start;
      if (!spot || same) continue;
      const key = `${spot.path} ${spot.line + place.line} ${place.start}`;
      if (seen.has(key)) continue;
      seen.add(key);
      found.push({ place, message: inWords(term) });
    }
  return found;
}

const termsOnce = new WeakMap<Reading, readonly Term[]>();
/** The lines of arithmetic with a place of their own, down to the last. A reading stays the same object only while all of them do. */
function writtenTerms(reading: Reading, facts: Facts): readonly Term[] {
  let found = termsOnce.get(reading);
  if (!found) {
    const all = new Set<Term>();
    for (const t of reading.trace)
      if (t.place) all.add(t);
      else if (t.quantity !== undefined)
        for (const deeper of writtenTerms(facts.read(t.quantity), facts)) all.add(deeper);
    termsOnce.set(reading, (found = [...all]));
  }
  return found;
}

const wordsOnce = new WeakMap<Term, string>();
function inWords(term: Term): string {
  let words = wordsOnce.get(term);
  if (words === undefined) {
    const { label, value, dimension, unit } = term;
    words = value && dimension && unit ? `${label}: ${showWithDoubt(value, dimension, unit)}` : label;
    wordsOnce.set(term, words);
  }
  return words;
}
