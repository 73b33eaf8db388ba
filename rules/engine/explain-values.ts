/** Limits, defaults, sources, quantities and facts, explained. */
import type { Interval } from "../../language/quantity/interval.js";
import type { BasisNote } from "../types.js";
import type { ExplainedBasis, Explanation } from "./explain.js";
import { basisWords, exactText, extentWords, sourceKindWords } from "./explain-words.js";
import { namesIn } from "./expression.js";
import type { FactTable } from "./fact-table.js";
import { nameInWords } from "./phrase.js";
import type { LimitValue, RuleSet, Scope, Source } from "./types.js";

const empty = {
  bands: [],
  bases: [],
  covers: [],
  notCovered: [],
  remedies: [],
  cautions: [],
  examples: [],
  reads: [],
  usedBy: [],
} as const;

/** What a value or rule rests on, each basis in one sentence. */
export function basesOf(notes: readonly BasisNote[], set: RuleSet): readonly ExplainedBasis[] {
  return notes.map((note) => {
    const c = note.citation;
    if (!c) return { text: `${basisWords[note.basis]}: ${note.text}`, note };
    const source = set.sources.get(c.id);
    const text = `Published: ${source?.title ?? c.id}, ${c.at}, says ${c.says}; taken from it: ${c.takes}.${source ? ` (${extentWords[source.extent]})` : ""}`;
    return { text, note, ...(source && { source }) };
  });
}

/** The value of a limit or default as written: `3 in`, `0 to 1/4 in`. */
export function limitText({
  interval,
  dimension,
  unit,
}: Pick<LimitValue, "dimension" | "unit"> & { readonly interval: Interval }): string {
  const high = exactText(interval.high, dimension, unit);
  if (interval.low === interval.high) return high;
  if (interval.low === -Infinity) return `at most ${high}`;
  const low = exactText(interval.low, dimension, unit);
  return interval.high === Infinity ? `at least ${low}` : `${low} to ${high}`;
}

export function explainLimit(
  limit: LimitValue,
  is: "limit" | "default",
  set: RuleSet,
  tapeable = false,
): Explanation {
  const value = limitText(limit);
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

export interface Cited {
  /** The rule, limit or default that cites. */
  readonly by: string;
  readonly is: "rule" | "limit" | "default";
  readonly note: BasisNote;
}

/** Where a source is cited, in the order of rules, limits, defaults. */
export function citationsOf(source: string, set: RuleSet): readonly Cited[] {
  const holders = [
    ...set.rules.map((r) => ({ by: r.id, is: "rule" as const, bases: r.bases })),
    ...[...set.limits.values()].map((l) => ({ by: l.name, is: "limit" as const, bases: l.bases })),
    ...[...set.defaults.values()].map((d) => ({ by: d.name, is: "default" as const, bases: d.bases })),
  ];
  return holders.flatMap(({ by, is, bases }) =>
    bases.filter((b) => b.citation?.id === source).map((note) => ({ by, is, note })),
  );
}

export function explainSource(source: Source, set: RuleSet): Explanation {
  const says = [
    `${source.by}${source.year === undefined ? "" : `, ${source.year}`}.`,
    ...(source.publishedIn === undefined ? [] : [`In: ${source.publishedIn}.`]),
    `${sourceKindWords[source.kind]}; ${extentWords[source.extent]}, on ${source.read}.`,
    ...(source.address === undefined ? [] : [source.address]),
  ];
  const cites = citationsOf(source.name, set);
  return {
    ...empty,
    is: "source",
    name: source.name,
    title: source.title,
    says,
    bases: cites.map(({ by, note }): ExplainedBasis => ({
      text: `${by}: ${note.citation!.at} says ${note.citation!.says}; taken from it: ${note.citation!.takes}.`,
      note,
      source,
    })),
    usedBy: [...new Set(cites.map((c) => c.by))],
    at: source.at,
  };
}

/** Where a fact may be read: a transfer, a step, the setup, and each kind of thing. */
const scopesOf = (table: FactTable): readonly Scope[] => [
  { is: "transfer" },
  { is: "step", phrases: [] },
  { is: "setup" },
  ...table.kinds.map((kind): Scope => ({ is: "thing", kind })),
];

export function explainFact(name: string, set: RuleSet, table: FactTable): Explanation | undefined {
  for (const scope of scopesOf(table)) {
    const spec = table.spec(name, scope);
    if (!spec) continue;
    const says = [`${spec.says[0]?.toUpperCase() ?? ""}${spec.says.slice(1).replace(/\.$/, "")}.`];
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

const indices = new WeakMap<RuleSet, ReadonlyMap<string, readonly string[]>>();

/** The rules that read a fact or use a limit, in the order of the set. */
export function readers(name: string, set: RuleSet): readonly string[] {
  let index = indices.get(set);
  if (!index) indices.set(set, (index = readersOf(set)));
  return index.get(name) ?? [];
}

function readersOf(set: RuleSet): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, string[]>();
  for (const rule of set.rules) {
    const { judged } = rule;
    const ends = judged.is === "bands" ? judged.bands.flatMap((b) => [b.low.limit, b.high.limit]) : [];
    const read = [...rule.when.map((w) => w.expr), judged.expr].flatMap(namesIn);
    for (const name of new Set([...read, ...ends])) {
      if (name === undefined) continue;
      const rules = found.get(name);
      if (rules) rules.push(rule.id);
      else found.set(name, [rule.id]);
    }
  }
  return found;
}
