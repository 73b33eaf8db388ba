/**
 * Bands: a judged value's whole line cut into grades.
 *
 * A value exactly on a boundary belongs to the milder of its two bands. An interval has every grade that one of its values has;
 * from the best and the worst of them comes the verdict. A value that rests on something a tape could measure never holds: where
 * it would, the verdict is `unsettled`, the best grade stays `holds` and the worst is that of the band beyond the nearest end of
 * `holds` (or of the mildest other band), for that is what measuring may show.
 */
import type { Interval } from "../../language/quantity/interval.js";
import { grades, type Grade, type VerdictKind } from "../types.js";
import { equalWithin } from "./logic.js";
import type { Band, BandEnd, ChoiceBand } from "./types.js";

export interface Graded {
  readonly verdict: VerdictKind;
  readonly best: Grade;
  readonly worst: Grade;
  /** The band that speaks: that of the worst grade nearest to the nominal value. */
  readonly band?: Band | ChoiceBand;
}

export const isGrade = (word: string): word is Grade => (grades as readonly string[]).includes(word);
export const rank = (g: Grade): number => grades.indexOf(g);
export const milder = (a: Grade, b: Grade): Grade => (rank(a) <= rank(b) ? a : b);
export const graver = (a: Grade, b: Grade): Grade => (rank(a) >= rank(b) ? a : b);

export function verdictOf(best: Grade, worst: Grade): VerdictKind {
  if (worst === "holds") return "holds";
  return best === "holds" ? "unsettled" : "fails";
}

/** Bands never change, and every judgement asks for the order of those that are not written in it. */
const sortedKept = new WeakMap<readonly Band[], readonly Band[]>();

/** The bands from the lowest to the highest value. */
export function inOrder(bands: readonly Band[]): readonly Band[] {
  if (bands.every((b, i) => i === 0 || byValue(bands[i - 1]!, b) <= 0)) return bands;
  let sorted = sortedKept.get(bands);
  if (!sorted) sortedKept.set(bands, (sorted = [...bands].sort(byValue)));
  return sorted;
}
const byValue = (a: Band, b: Band): number => a.low.value - b.low.value || a.high.value - b.high.value;

/** Whether some value of `x` lies in the `i`-th of `sorted`, boundaries given to the milder side. */
function touches(sorted: readonly Band[], i: number, x: Interval): boolean {
  const band = sorted[i]!;
  const owns = (other: Band | undefined): boolean => !other || rank(band.grade) <= rank(other.grade);
  const low = band.low.value;
  const high = band.high.value;
  if (owns(sorted[i - 1]) ? x.high < low - equalWithin : x.high <= low + equalWithin) return false;
  return owns(sorted[i + 1]) ? x.low <= high + equalWithin : x.low < high - equalWithin;
}

/** Grades an interval. `bands` cover the whole line; if they do not, what lies outside counts as the worst of them. */
export function grade(bands: readonly Band[], x: Interval, assumed: boolean): Graded {
  const sorted = inOrder(bands);
  let best: Grade | undefined;
  let worst: Grade = "holds";
  let speaking: Band | undefined;
  for (let i = 0; i < sorted.length; i++) {
    if (!touches(sorted, i, x)) continue;
    const band = sorted[i]!;
    best = best === undefined ? band.grade : milder(best, band.grade);
    const nearer = speaking && away(band, x.nominal) < away(speaking, x.nominal);
    if (!speaking || rank(band.grade) > rank(worst) || (band.grade === worst && nearer)) speaking = band;
    worst = graver(worst, band.grade);
  }
  if (best === undefined)
    return { verdict: "unknown", best: "holds", worst: sorted.map((b) => b.grade).reduce(graver, "holds") };
  if (worst === "holds" && assumed) {
    const beyond = beyondHolds(sorted, x.nominal);
    return beyond
      ? { verdict: "unsettled", best: "holds", worst: beyond.grade, band: beyond }
      : { verdict: "holds", best, worst };
  }
  return { verdict: verdictOf(best, worst), best, worst, band: speaking };
}

const away = (b: Band, x: number): number => Math.max(0, b.low.value - x, x - b.high.value);

/** The band that does not hold and lies nearest to `x`; of two as near the graver. */
function beyondHolds(sorted: readonly Band[], x: number): Band | undefined {
  const nearer = (a: Band, b: Band): boolean => {
    const by = away(b, x) - away(a, x);
    return Math.abs(by) < equalWithin ? rank(b.grade) > rank(a.grade) : by < 0;
  };
  return sorted
    .filter((b) => b.grade !== "holds")
    .reduce<Band | undefined>((a, b) => (!a || nearer(a, b) ? b : a), undefined);
}

/** Grades a choice. A choice that no band names counts as unknown: it never holds. */
export function gradeChoice(bands: readonly ChoiceBand[], choice: string, assumed: boolean): Graded {
  const band = bands.find((b) => b.choices.includes(choice));
  const worst = bands.map((b) => b.grade).reduce(graver, "holds");
  if (!band) return { verdict: "unknown", best: "holds", worst };
  if (band.grade === "holds" && assumed && worst !== "holds")
    return { verdict: "unsettled", best: "holds", worst, band };
  return { verdict: band.grade === "holds" ? "holds" : "fails", best: band.grade, worst: band.grade, band };
}

/** The nearest end of `holds` to `x`, and the signed distance to it: negative outside of `holds`. */
export function nearestLimit(
  bands: readonly Band[],
  x: number,
): { readonly end: BandEnd; readonly margin: number } | undefined {
  let found: { end: BandEnd; margin: number } | undefined;
  for (const stretch of holding(bands)) {
    const inside = x >= stretch.low.value - equalWithin && x <= stretch.high.value + equalWithin;
    for (const end of [stretch.low, stretch.high]) {
      if (!Number.isFinite(end.value)) continue;
      const margin = (inside ? 1 : -1) * Math.abs(x - end.value);
      // Inside one stretch of `holds` its own ends count alone; outside of all the nearest end counts.
      if (
        !found ||
        (inside && found.margin < 0) ||
        (inside === found.margin >= 0 && Math.abs(margin) < Math.abs(found.margin))
      )
        found = { end, margin };
    }
  }
  return found;
}

export interface Held {
  readonly low: BandEnd;
  readonly high: BandEnd;
}
const heldKept = new WeakMap<readonly Band[], readonly Held[]>();

/** The stretches of the line that hold, neighbours joined. */
export function holding(bands: readonly Band[]): readonly Held[] {
  let held = heldKept.get(bands);
  if (!held) heldKept.set(bands, (held = findHeld(bands)));
  return held;
}

function findHeld(bands: readonly Band[]): readonly Held[] {
  const found: { low: BandEnd; high: BandEnd }[] = [];
  for (const b of inOrder(bands)) {
    if (b.grade !== "holds") continue;
    const last = found[found.length - 1];
    if (last && b.low.value <= last.high.value + equalWithin) last.high = b.high;
    else found.push({ low: b.low, high: b.high });
  }
  return found;
}

export interface BandFault {
  readonly band: Band;
  readonly message: string;
}

/** Gaps and overlaps. `shown` writes a boundary in the rule's units. */
export function bandFaults(bands: readonly Band[], shown: (e: BandEnd) => string): readonly BandFault[] {
  const sorted = inOrder(bands);
  const faults: BandFault[] = [];
  for (let i = 0; i < sorted.length; i++) {
    const band = sorted[i]!;
    if (band.low.value > band.high.value)
      faults.push({
        band,
        message: `This band ends (${shown(band.high)}) before it starts (${shown(band.low)}).`,
      });
    const next = sorted[i + 1];
    if (i === 0 && band.low.value !== -Infinity)
      faults.push({ band, message: `No band says what holds below ${shown(band.low)}.` });
    if (!next) {
      if (band.high.value !== Infinity)
        faults.push({ band, message: `No band says what holds above ${shown(band.high)}.` });
    } else if (next.low.value > band.high.value + equalWithin)
      faults.push({
        band: next,
        message: `No band says what holds between ${shown(band.high)} and ${shown(next.low)}.`,
      });
    else if (next.low.value < band.high.value - equalWithin)
      faults.push({
        band: next,
        message: `Two bands speak of what lies between ${shown(next.low)} and ${shown(band.high)}.`,
      });
  }
  return faults;
}
