/**
 * The bands of a rule as a strip, with its examples on it: what a page draws and a terminal prints.
 *
 * Places on a strip are numbers from 0 (its left end) to 1. A strip shows which value falls in which band, in the right order and
 * on the right side of each limit. It is no ruler: a band is never narrower than the word in it, and the first and the last band
 * go on without end.
 */
import type { Grade, VerdictKind } from "../types.js";
import { equalWithin } from "./logic.js";
import { inOrder, rank } from "./bands.js";
import { resultInWords, runExample } from "./examples.js";
import { exactText } from "./explain-words.js";
import type { Band, BandEnd, Example, LimitValue, Rule } from "./types.js";

export interface StripBand {
  readonly grade: Grade;
  /** SI; ±Infinity where open. */
  readonly low: number;
  readonly high: number;
  /** `more than 2 in to 3 in`: a limit that the text does not exclude belongs to the band. */
  readonly range: string;
  readonly message?: string;
  /** Line in its file, counted from 1. */
  readonly line: number;
}

/** Where two bands meet. */
export interface StripLimit {
  /** SI. */
  readonly value: number;
  /** In the rule's own unit. */
  readonly text: string;
  /** The limit of the set, where it has a name. */
  readonly name?: string;
}

/** An example of a rule and what the rule makes of it. */
export interface ShownExample {
  /** As written, without what all examples of the strip share, and without its verdict. */
  readonly text: string;
  readonly gives: string;
  readonly verdict: VerdictKind;
  readonly best: Grade;
  readonly worst: Grade;
  /** Line in its file, counted from 1. */
  readonly line: number;
  /** The judged value, SI; missing where the example has none, or the rule does not apply to it. */
  readonly value?: { readonly low: number; readonly nominal: number; readonly high: number };
}

export interface Strip {
  readonly bands: readonly StripBand[];
  readonly limits: readonly StripLimit[];
  /** Examples with a judged value, from the lowest to the highest. */
  readonly marks: readonly ShownExample[];
  /** What all of `marks` have in common: `board.used yes`. */
  readonly shared: readonly string[];
  /** Examples that have no place on the strip, in full. */
  readonly beside: readonly ShownExample[];
}

export const lineOf = (at: { readonly line: number; readonly place: { readonly line: number } }): number =>
  at.line + at.place.line + 1;

/** Undefined for a rule that has no bands over a value. */
export function stripOf(rule: Rule, limits: ReadonlyMap<string, LimitValue>): Strip | undefined {
  const j = rule.judged;
  if (j.is !== "bands" || j.bands.length === 0) return undefined;
  const sorted = inOrder(j.bands);
  const bands = sorted.map((b, i): StripBand => ({
    grade: b.grade,
    low: b.low.value,
    high: b.high.value,
    range: bandInWords(sorted, i, j.signed),
    line: lineOf(b.at),
    ...(b.message !== undefined && { message: b.message }),
  }));
  const ends = sorted.slice(1).map((b): StripLimit => ({
    value: b.low.value,
    text: endText(b.low, j.signed),
    ...(b.low.limit !== undefined && { name: b.low.limit }),
  }));
  const all = rule.examples.map((e) => ({ e, shown: shownExample(rule, e, limits) }));
  const placed = all.filter((x) => x.shown.value);
  const shared = sharedParts(placed.map((x) => x.e));
  const without = (e: Example): string =>
    partsOf(e)
      .filter((p) => !shared.includes(p))
      .join(", ");
  return {
    bands,
    limits: ends,
    marks: placed
      .map((x) => ({ ...x.shown, text: without(x.e) || x.shown.text }))
      .sort(
        (a, b) => a.value!.nominal - b.value!.nominal || a.value!.high - b.value!.high || a.line - b.line,
      ),
    shared,
    beside: all.filter((x) => !x.shown.value).map((x) => x.shown),
  };
}

/** An example in full, and what the rule makes of it. */
export function shownExample(
  rule: Rule,
  example: Example,
  limits: ReadonlyMap<string, LimitValue>,
): ShownExample {
  const result = runExample(rule, example, limits);
  return {
    text: partsOf(example).join(", "),
    gives: resultInWords(result).replaceAll("-", " ").replace("not applicable", "does not apply"),
    verdict: result.verdict,
    best: result.best,
    worst: result.worst,
    line: lineOf(example.at),
    ...(result.value && { value: result.value.interval }),
  };
}

/** The values of an example as written, one by one. */
export const partsOf = (e: Example): readonly string[] =>
  e.text
    .replace(/: [^:]*$/, "")
    .replaceAll(/(^|[ ,])- (?=\d)/g, "$1-")
    .split(", ")
    .map((part) => (part === "unknown" ? "value unknown" : part === "without" ? "no such value" : part));

function sharedParts(examples: readonly Example[]): readonly string[] {
  const [first, ...rest] = examples.map(partsOf);
  if (!first || rest.length === 0) return [];
  return first.filter((p) => rest.every((parts) => parts.includes(p)));
}

const endText = (e: BandEnd, signed: boolean): string => exactText(e.value, e.dimension, e.unit, signed);

/** A band in words. A value on a limit belongs to the milder of its two bands; the other one starts past it. */
export function bandInWords(sorted: readonly Band[], i: number, signed: boolean): string {
  const band = sorted[i]!;
  const { low, high } = band;
  const owns = (other: Band | undefined): boolean => !other || rank(band.grade) <= rank(other.grade);
  const [ownsLow, ownsHigh] = [owns(sorted[i - 1]), owns(sorted[i + 1])];
  const end = (e: BandEnd): string => endText(e, signed);
  const past = (e: BandEnd): string =>
    signed && e.value !== 0 ? end(e).replace(/^(up|down) /, "$1 more than ") : `more than ${end(e)}`;
  if (low.value === -Infinity && high.value === Infinity) return "any value";
  if (low.value === -Infinity) {
    if (signed && high.value < 0) return ownsHigh ? `${end(high)} or more` : past(high);
    return ownsHigh ? `at most ${end(high)}` : `less than ${end(high)}`;
  }
  if (high.value === Infinity) return ownsLow ? `at least ${end(low)}` : past(low);
  // Going down, the band is said from the smaller drop to the larger one.
  const [near, far] = signed && high.value < 0 ? ([high, low] as const) : ([low, high] as const);
  const [ownsNear, ownsFar] = near === low ? [ownsLow, ownsHigh] : [ownsHigh, ownsLow];
  const way = signed && low.value * high.value > 0 ? /^(up|down) / : /^(?!)/;
  return `${ownsNear ? end(near) : past(near)} to ${ownsFar ? "" : "less than "}${end(far).replace(way, "")}`;
}

export interface StripScale {
  /** Where the bands begin and end, from 0 to 1: one more than there are bands. */
  readonly edges: readonly number[];
  /** The place of a value. A value exactly on a limit stands on its edge; any other strictly inside its band. */
  at(value: number): number;
  /** Whether a value lies further out than the strip shows; it then stands near the end. */
  beyond(value: number): boolean;
}

/**
 * Lays a strip out. `least` is the least width of each band as a part of the whole; where they do not fit together, all of them
 * shrink alike.
 */
export function scaleOf(strip: Strip, least: readonly number[]): StripScale {
  const knots = knotsOf(strip);
  const sizes = strip.bands.map((_, i) => knots[i + 1]! - knots[i]!);
  const widths = fitted(sizes, least);
  const edges = [0];
  for (const w of widths) edges.push(edges[edges.length - 1]! + w);
  edges[edges.length - 1] = 1;
  const last = strip.bands.length - 1;
  const inside = (value: number): number => {
    const i = Math.max(
      0,
      strip.bands.findIndex((b, k) => k === last || value <= b.high - equalWithin),
    );
    const [from, to] = [knots[i]!, knots[i + 1]!];
    // A value past a limit keeps off its line, however little it is past it; one that lies further out than the strip goes stays on it.
    const share = Math.min(0.95, Math.max(0.05, to > from ? (value - from) / (to - from) : 0.5));
    return edges[i]! + share * (edges[i + 1]! - edges[i]!);
  };
  return {
    edges,
    at(value) {
      if (value === -Infinity) return 0;
      if (value === Infinity) return 1;
      const limit = strip.limits.findIndex((l) => Math.abs(l.value - value) <= equalWithin);
      return limit >= 0 ? edges[limit + 1]! : inside(value);
    },
    beyond: (value) => value < knots[0]! || value > knots[knots.length - 1]!,
  };
}

/** The limits, and on both sides how far the strip goes: to the examples, but not so far that the limits shrink to nothing. */
function knotsOf(strip: Strip): readonly number[] {
  const limits = strip.limits.map((l) => l.value);
  const values = strip.marks
    .flatMap((m) => [m.value!.low, m.value!.nominal, m.value!.high])
    .filter(Number.isFinite);
  const first = limits[0] ?? Math.min(0, ...values);
  const last = limits[limits.length - 1] ?? Math.max(1, ...values);
  const span = last - first;
  const away = (side: number[]): number => {
    const found = side.filter((d) => d > equalWithin).sort((a, b) => a - b);
    const far = found[found.length - 1] ?? 0;
    const most = span > 0 ? span : Math.max(10 * (found[0] ?? 0), Math.abs(first) / 2);
    return Math.min(far, most);
  };
  const below = away(values.map((v) => first - v));
  const above = away(values.map((v) => v - last));
  const usual = span > 0 ? span / 3 : Math.max(below, above, Math.abs(first) / 4) || 1;
  return [first - Math.max(1.15 * below, usual), ...limits, last + Math.max(1.15 * above, usual)];
}

/** Widths in proportion to the sizes, none below its least, together 1. */
function fitted(sizes: readonly number[], least: readonly number[]): readonly number[] {
  const needed = least.reduce((a, b) => a + b, 0);
  if (needed >= 1) return least.map((w) => w / needed);
  const fixed = new Set<number>();
  for (;;) {
    const left = 1 - least.reduce((a, w, i) => a + (fixed.has(i) ? w : 0), 0);
    const size = sizes.reduce((a, s, i) => a + (fixed.has(i) ? 0 : s), 0);
    const widths = sizes.map((s, i) => (fixed.has(i) ? least[i]! : size > 0 ? (s / size) * left : 0));
    const short = widths.findIndex((w, i) => !fixed.has(i) && w < least[i]!);
    if (short < 0) return widths;
    fixed.add(short);
  }
}
