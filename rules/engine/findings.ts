/** Makes the finding of a judgement: its words, its place, the lines it rests on, what would help. */
import type { Household } from "../../language/model/household.js";
import type { Thing } from "../../language/model/types.js";
import { showWithDoubt } from "../../language/quantity/show.js";
import type { Place } from "../../language/text/types.js";
import type { Finding, Remedy, Term, Verdict } from "../types.js";
import type { Kept, MadeFinding } from "./evaluate.js";
import type { Facts } from "./facts.js";
import type { Reading } from "./logic.js";
import { fill, marginInWords, messageOf, plainMessage, unitFor } from "./messages.js";
import type { Subject } from "./subjects.js";
import type { Rule, RuleSet } from "./types.js";

/** The household in which places are looked up when somebody asks for them. */
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

/** The finding of a judgement that neither holds nor is out of place; kept with it while names and places are the same. */
export function findingOf(
  rule: Rule,
  subject: Subject,
  kept: Kept,
  set: RuleSet,
  now: Current,
  remedies: (rule: Rule, subject: Subject, kept: Kept) => readonly Remedy[],
): MadeFinding {
  const old = kept.finding;
  if (
    old &&
    old.ident.length === subject.ident.length &&
    old.ident.every((x, i) => x === subject.ident[i]) &&
    old.extra.every(([n, r]) => subject.facts.read(n) === r)
  )
    return old;
  const extra = new Map<string, Reading>();
  const watched: Subject = { ...subject, facts: watch(subject.facts, extra) };
  const made = make(rule, watched, kept, set, now, () => remedies(rule, subject, kept));
  const found = {
    made,
    plain: plainMessage(rule, kept.judgement, watched),
    ident: subject.ident,
    extra: [...extra],
  };
  kept.finding = found;
  return found;
}

/** Message holes read facts that the judgement did not; they count for whether the finding may be kept. */
const watch = (facts: Facts, read: Map<string, Reading>): Facts => ({
  sight: facts.sight,
  role: (name) => facts.role(name),
  read(name) {
    const reading = facts.read(name);
    read.set(name, reading);
    return reading;
  },
});

function make(
  rule: Rule,
  subject: Subject,
  kept: Kept,
  set: RuleSet,
  now: Current,
  remedies: () => readonly Remedy[],
): Finding {
  const j = kept.judgement;
  const unit = unitFor(rule, j);
  const words = marginInWords(rule, j);
  const place = placeOf(rule, subject);
  let helps: readonly Remedy[] | undefined;
  return {
    ...verdictOf(rule, subject, kept),
    place,
    message: messageOf(rule, j, subject, set),
    because: rule.because,
    value: j.value && { ...j.value.interval, dimension: j.value.dimension, unit },
    limit: j.limit && { ...j.limit.interval, name: j.limit.name, dimension: j.limit.dimension, unit },
    ...(j.margin !== undefined && words !== undefined && { margin: { value: j.margin, words } }),
    bases: basesOf(rule, j.limit?.name, set),
    get related() {
      // Looked up anew each time: lines may have moved although nothing that was judged has changed.
      return now.household ? relatedTo(j.facts, subject, now.household, place) : [];
    },
    get remedies() {
      return (helps ??= remedies());
    },
    cautions: rule.cautions.map((c) => fill(c, rule, j, subject)),
    missing: j.missing,
    accepted: undefined,
  };
}

/** The bases of the rule, and of the named limit that decided. */
function basesOf(rule: Rule, limit: string | undefined, set: RuleSet): Finding["bases"] {
  const own = limit === undefined ? undefined : set.limits.get(limit);
  return own ? [...rule.bases, ...own.bases] : rule.bases;
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
  const add = (term: Term): void => {
    const place = term.place;
    if (place) {
      const spot = household.locate(place.entry);
      const key = spot && `${spot.path} ${spot.line + place.line} ${place.start}`;
      const same = place.entry === own.entry && place.line === own.line && place.start === own.start;
      if (key === undefined || same || seen.has(key)) return;
      seen.add(key);
      const value =
        term.value && term.dimension && term.unit
          ? `: ${showWithDoubt(term.value, term.dimension, term.unit)}`
          : "";
      found.push({ place, message: `${term.label}${value}` });
    } else if (term.quantity !== undefined && !seen.has(term.quantity)) {
      seen.add(term.quantity);
      for (const t of subject.facts.read(term.quantity).trace) add(t);
    }
  };
  for (const f of facts) for (const t of f.trace) add(t);
  return found;
}
