/** Two rule sets as texts: which rules, limits, defaults and sources came, went or say something else, and why. */
import { show } from "../../language/quantity/show.js";
import type { BasisNote } from "../types.js";
import { rangeInWords } from "./band-words.js";
import { inOrder } from "./bands.js";
import { phrase } from "./phrase.js";
import type { DefaultValue, LimitValue, Rule, RuleSet, Scope, Source } from "./types.js";

export type PartOfSet = "rule" | "limit" | "default" | "source";

/** One part of a rule, limit, default or source that is not the same; undefined where one of the two does not say it. */
export interface PartChange {
  readonly part: string;
  readonly before: string | undefined;
  readonly after: string | undefined;
}

export interface SetChange {
  readonly what: PartOfSet;
  readonly name: string;
  readonly title: string;
  readonly is: "added" | "removed" | "changed";
  /** Only for what is changed. */
  readonly parts: readonly PartChange[];
  /** What the newer set says of it in its `changes`. */
  readonly reasons: readonly string[];
}

/** Rules first, in the order of the newer set; what was taken away stands where it stood. */
export function compareSets(before: RuleSet, after: RuleSet): readonly SetChange[] {
  const why = (name: string): readonly string[] =>
    after.changes.flatMap((c) => (c.rule === name ? [c.text] : []));
  const rules = (set: RuleSet): Map<string, Rule> => new Map(set.rules.map((r) => [r.id, r]));
  return [
    ...differences("rule", rules(before), rules(after), partsOfRule, why),
    ...differences("limit", before.limits, after.limits, partsOfValue, why),
    ...differences("default", before.defaults, after.defaults, partsOfValue, why),
    ...differences("source", before.sources, after.sources, partsOfSource, why),
  ];
}

type Parts = ReadonlyMap<string, string>;

function differences<T extends { readonly title: string }>(
  what: PartOfSet,
  before: ReadonlyMap<string, T>,
  after: ReadonlyMap<string, T>,
  partsOf: (x: T) => Parts,
  why: (name: string) => readonly string[],
): SetChange[] {
  const names = [...new Set([...before.keys(), ...after.keys()])];
  return names.flatMap((name): SetChange[] => {
    const [a, b] = [before.get(name), after.get(name)];
    const { title } = (b ?? a)!;
    const common = { what, name, title, reasons: why(name) };
    if (!a) return [{ ...common, is: "added", parts: [] }];
    if (!b) return [{ ...common, is: "removed", parts: [] }];
    const [old, now] = [partsOf(a), partsOf(b)];
    const parts = [...new Set([...old.keys(), ...now.keys()])]
      .map((part) => ({ part, before: old.get(part), after: now.get(part) }))
      .filter((p) => p.before !== p.after);
    return parts.length === 0 ? [] : [{ ...common, is: "changed", parts }];
  });
}

/** Parts that are said several times are compared line by line, so that one line that is added shows as that line. */
function lines(part: string, said: readonly string[]): readonly (readonly [string, string])[] {
  const unique = [...new Set(said)];
  return unique.map((s) => [`${part}: ${s}`, s]);
}

function partsOfRule(r: Rule): Parts {
  const { judged } = r;
  return new Map([
    ["title", r.title],
    ["looks at", scopeText(r.scope)],
    ...lines(
      "when",
      r.when.map((w) => phrase(w.expr)),
    ),
    [judged.is === "require" ? "asks" : "judges", phrase(judged.expr)],
    ...(judged.is === "require"
      ? [["if not", said(judged.level, judged.message)] as const]
      : [
          ...inOrder(judged.bands).map(
            (b) => [`band ${rangeInWords(b, judged.signed)}`, said(b.grade, b.message)] as const,
          ),
          ...judged.choices.map((b) => [`band ${b.choices.join(", ")}`, said(b.grade, b.message)] as const),
        ]),
    ...(r.message === undefined ? [] : [["message", r.message] as const]),
    ...(r.unknown === undefined ? [] : [["if unknown", r.unknown] as const]),
    ["because", r.because],
    ...lines("rests on", r.bases.map(basis)),
    ...lines("covers", r.covers),
    ...lines("not covered", r.notCovered),
    ...lines(
      "remedy",
      r.remedies.map((m) => (m.is === "text" || m.is === "set" ? m.text : `${m.is} "${m.step}" ${m.side}`)),
    ),
    ...lines("meanwhile", r.cautions),
    ...lines(
      "example",
      r.examples.map((e) => e.text),
    ),
  ]);
}

function partsOfValue(v: LimitValue | DefaultValue): Parts {
  return new Map([
    ["title", v.title],
    ["value", show(v.interval, v.dimension, v.unit)],
    ...("tapeable" in v ? [["a tape can measure it", v.tapeable ? "yes" : "no"] as const] : []),
    ...lines("rests on", v.bases.map(basis)),
    ...lines("covers", v.covers),
    ...lines("not covered", v.notCovered),
  ]);
}

const partsOfSource = (s: Source): Parts =>
  new Map(
    Object.entries({
      kind: s.kind,
      title: s.title,
      by: s.by,
      "published in": s.publishedIn,
      year: s.year?.toString(),
      address: s.address,
      read: s.read,
      extent: s.extent,
    }).filter((e): e is [string, string] => e[1] !== undefined),
  );

const said = (grade: string, message: string | undefined): string =>
  message === undefined ? grade : `${grade}: ${message}`;

const basis = (b: BasisNote): string =>
  b.citation
    ? `${b.citation.id}, ${b.citation.at}: ${b.citation.says}; taken: ${b.citation.takes}`
    : `${b.basis.replaceAll("-", " ")}: ${b.text}`;

function scopeText(s: Scope): string {
  if (s.is === "thing") return `each ${s.kind}`;
  if (s.is === "step") return s.phrases.length === 0 ? "each step" : `each step ${s.phrases.join(", ")}`;
  return { transfer: "each transfer", setup: "the plan as a whole", end: "the end of each transfer" }[s.is];
}
