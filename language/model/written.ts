/** The written text of each quantity of a statement, found again among its atoms. */
import { unitOf } from "../quantity/units.js";
import type { Quantity } from "../quantity/types.js";
import type { Atom, Bare, Measure } from "../text/types.js";
import { isQuantity, type Value } from "./types.js";

/** The quantities in a value, in the order in which they were read. */
export function quantitiesIn(value: Value | undefined): Quantity[] {
  if (typeof value !== "object" || value === null) return [];
  if (isQuantity(value)) return [value];
  const inside = Array.isArray(value) ? value : Object.values(value);
  return inside.flatMap((v) => quantitiesIn(v as Value | undefined));
}

/**
 * What was written for each quantity of `value`, which was read from `atoms[from...]` of a line with this text. A quantity whose
 * words cannot be found has no entry.
 */
export function writtenTexts(
  value: Value,
  atoms: readonly Atom[],
  from: number,
  line: string,
): ReadonlyMap<Quantity, string> {
  const texts = new Map<Quantity, string>();
  let at = from;
  for (const q of quantitiesIn(value)) {
    const start = atoms.findIndex((a, i) => i >= at && isMagnitude(a) && fits(a, q));
    if (start < 0) continue;
    const end = endOf(atoms, start);
    const first = beginOf(atoms, start, from);
    const text = line.slice(atoms[first]!.start, atoms[end - 1]!.end);
    // `54 by 75 in`: a unit at the end counts for both, so the first is given it.
    const bare = !atoms.slice(first, end).some((a) => a.type === "measure");
    texts.set(q, bare ? `${text} ${q.unit.unit}` : text);
    at = end;
  }
  return texts;
}

const isMagnitude = (a: Atom | undefined): a is Measure | Bare =>
  a?.type === "measure" || a?.type === "number";
const isMark = (a: Atom | undefined, ...marks: string[]): boolean =>
  a?.type === "mark" && marks.includes(a.mark);
const isWord = (a: Atom | undefined, ...words: string[]): boolean =>
  a?.type === "word" && words.includes(a.word);

/** Whether the magnitude is the one that the quantity starts with: its only one, or the lower end of its range. */
function fits(a: Measure | Bare, q: Quantity): boolean {
  // A slope that was written as an angle is read as its tangent.
  const slope = a.type === "measure" && a.dimension === "angle" && q.dimension === "ratio";
  if (a.type === "measure" && a.dimension !== q.dimension && !slope) return false;
  const value = slope ? Math.tan(a.value) : a.type === "measure" ? a.value : inUnit(a.value, q);
  const near = (x: number): boolean => Math.abs(Math.abs(x) - value) <= 1e-9 * Math.max(1, value);
  return near(q.nominal) || near(q.low);
}

function inUnit(x: number, q: Quantity): number {
  if (q.unit.unit === "" || q.unit.unit === "1") return x;
  const u = unitOf(q.unit.unit);
  return x * (u.times ?? u.factor.valueOf());
}

/** Takes the sign and `about` or `adjusts` before a magnitude with it. */
function beginOf(atoms: readonly Atom[], start: number, from: number): number {
  let first = start;
  if (first > from && isMark(atoms[first - 1], "+", "-")) first--;
  if (first > from && isWord(atoms[first - 1], "about", "adjusts")) first--;
  return first;
}

/** Behind the range, the tolerance, and how it is known. */
function endOf(atoms: readonly Atom[], start: number): number {
  let at = start + 1;
  if (isWord(atoms[at], "to") && isMagnitude(atoms[at + 1])) at += 2;
  while (isMark(atoms[at], "±", "+", "-") && isMagnitude(atoms[at + 1])) at += 2;
  for (;;) {
    if (isWord(atoms[at], "measured", "stated", "estimated", "judged")) at++;
    else if (isWord(atoms[at], "by") && atoms[at + 1]?.type === "text") at += 2;
    else if (isWord(atoms[at], "on") && atoms[at + 1]?.type === "date") at += 2;
    else return at;
  }
}
