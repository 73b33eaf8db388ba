/** Numbers and their units as they stand in a line: exact fractions of what was typed, and nothing guessed. */
import Fraction from "fraction.js";
import type { ShownUnit } from "../quantity/types.js";
import { toSi, unitNamed, type Unit } from "../quantity/units.js";
import { says } from "./messages.js";
import type { Bare, Fix, LineProblem, Measure } from "./types.js";

/** One number as typed, with the unit behind it if there is one. */
export interface Magnitude {
  readonly kind: "whole" | "mixed" | "decimal" | "ratio" | "hyphened" | "vulgar";
  readonly image: string;
  readonly start: number;
  readonly end: number;
  readonly unit?: string;
}

type Problem = { problem: Omit<LineProblem, "start" | "end"> };
const vulgars: Record<string, string> = {
  "½": "1/2",
  "¼": "1/4",
  "¾": "3/4",
  "⅐": "1/7",
  "⅑": "1/9",
  "⅒": "1/10",
  "⅓": "1/3",
  "⅔": "2/3",
  "⅕": "1/5",
  "⅖": "2/5",
  "⅗": "3/5",
  "⅘": "4/5",
  "⅙": "1/6",
  "⅚": "5/6",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
};
/** More digits than any tape or scale gives; what is longer is noise, and exact arithmetic on it would take long. */
const longest = 12;

interface Amount {
  readonly value: Fraction;
  readonly denominator: number;
  readonly spelling: string;
}

function amountOf(m: Magnitude): Amount | Problem {
  const image = m.image.replace(/[½¼¾⅐-⅞]/, (v) => vulgars[v]!).replace("⁄", "/");
  if (image.replace(/\D/g, "").length > longest) return wrong("form/number-too-large", { text: image });
  if (m.kind === "decimal" || m.kind === "whole") {
    const spelling = image.startsWith(".") ? `0${image}` : image;
    return { value: new Fraction(spelling), denominator: 1, spelling };
  }
  const [, whole, top, bottom] = image.match(/^(?:(\d+)[ -])?(\d+)\/(\d+)$/)!;
  if (Number(bottom) === 0) return wrong("form/fraction-of-nothing", { text: image });
  if (Number(top) >= Number(bottom)) {
    const fixes: Fix[] = [];
    const unit = m.unit ? ` ${m.unit}` : "";
    if (!whole && top!.length > 1) {
      const split = `${top!.slice(0, -1)} ${top!.slice(-1)}/${bottom}`;
      if (Number(top!.slice(-1)) < Number(bottom))
        fixes.push({ title: `${split}${unit}`, text: `${split}${unit}` });
    }
    if (!whole) {
      const over = Math.floor(Number(top) / Number(bottom));
      const rest = Number(top) % Number(bottom);
      const mixed = rest === 0 ? `${over}` : `${over} ${rest}/${bottom}`;
      fixes.push({ title: `${top} divided by ${bottom}: ${mixed}${unit}`, text: `${mixed}${unit}` });
    }
    const problem = wrong("form/improper-fraction", { text: image });
    return { problem: { ...problem.problem, fixes } };
  }
  const spelling = whole ? `${Number(whole)} ${top}/${bottom}` : `${top}/${bottom}`;
  return { value: new Fraction(`${whole ?? 0} ${top}/${bottom}`), denominator: Number(bottom), spelling };
}

export function bareNumber(m: Magnitude, raw: string): { atom: Omit<Bare, "start" | "end"> } | Problem {
  const amount = amountOf(m);
  if ("problem" in amount) return amount;
  return {
    atom: {
      type: "number",
      value: amount.value.valueOf(),
      numerator: amount.value.n,
      denominator: amount.value.d,
      raw,
    },
  };
}

/** A number with a unit, or several that make one amount (`5 ft 9 in`). */
export function measureOf(
  parts: readonly Magnitude[],
  written: string,
): { atom: Omit<Measure, "start" | "end"> } | Problem {
  let value = 0;
  let denominator = 1;
  const spellings: string[] = [];
  let unit: Unit | undefined;
  for (const [i, part] of parts.entries()) {
    const amount = amountOf(part);
    if ("problem" in amount) return amount;
    const own = unitNamed(part.unit!)!;
    if (unit && i > 0 && amount.value.compare(unit.then!.count) >= 0) return overAFoot(parts, written, unit);
    value += toSi(amount.value, own);
    denominator = Math.max(denominator, amount.denominator);
    spellings.push(`${amount.spelling} ${own.symbol}`);
    unit = i === 0 ? own : unit;
  }
  if (parts.length > 1) value = exactSum(parts);
  const shown: ShownUnit = {
    unit: unit!.symbol,
    ...(denominator > 1 && { denominator }),
    ...(unit!.symbol === "ft" && { compound: true }),
  };
  return {
    atom: { type: "measure", dimension: unit!.dimension, value, unit: shown, spelling: spellings.join(" ") },
  };
}

/** Feet and inches added as fractions and rounded once, so that 5 ft 9 in is the same number as 69 in. */
function exactSum(parts: readonly Magnitude[]): number {
  let sum = new Fraction(0);
  for (const part of parts) {
    const amount = amountOf(part);
    if (!("problem" in amount)) sum = sum.add(amount.value.mul(unitNamed(part.unit!)!.factor));
  }
  return sum.valueOf();
}

function overAFoot(parts: readonly Magnitude[], written: string, unit: Unit): Problem {
  const [first, second] = parts as [Magnitude, Magnitude];
  const small = unitNamed(second.unit!)!.symbol;
  const problem = wrong("form/inches-over-a-foot", { text: written });
  const joined = `${first.image} ${unit.symbol}, ${second.image} ${small}`;
  const fixes: Fix[] = [
    { title: `Two lengths: ${joined}`, text: joined },
    { title: `${second.image} ${small} alone`, text: `${second.image} ${small}` },
  ];
  return { problem: { ...problem.problem, fixes } };
}

function wrong(
  rule:
    | "form/number-too-large"
    | "form/fraction-of-nothing"
    | "form/improper-fraction"
    | "form/inches-over-a-foot",
  p: { text: string },
): Problem {
  return { problem: { rule, message: says[rule](p) } };
}
