/** Numbers and their units as they stand in a line: exact fractions of what was typed, and nothing guessed. */
import Fraction from "fraction.js";
import type { ShownUnit } from "../quantity/types.js";
import { ratioToSi, unitNamed, type Unit } from "../quantity/units.js";
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

/** An amount as a ratio of whole numbers, both small enough to be exact: nothing typed has more than twelve digits. */
interface Amount {
  readonly top: number;
  readonly bottom: number;
  readonly denominator: number;
  readonly decimals: number;
  readonly spelling: string;
}

const exact = (a: Amount): Fraction => new Fraction(a.top).div(a.bottom);

function amountOf(m: Magnitude): Amount | Problem {
  const plain = m.kind === "whole" || m.kind === "decimal";
  const image = plain ? m.image : m.image.replace(/[½¼¾⅐-⅞]/, (v) => vulgars[v]!).replace("⁄", "/");
  if (image.length > longest && image.replace(/\D/g, "").length > longest)
    return wrong("form/number-too-large", { text: image });
  if (plain) {
    const spelling = image.startsWith(".") ? `0${image}` : image;
    const decimals = m.kind === "decimal" ? spelling.length - spelling.indexOf(".") - 1 : 0;
    const top = Number(decimals > 0 ? spelling.replace(".", "") : spelling);
    return { top, bottom: 10 ** decimals, denominator: 1, decimals, spelling };
  }
  const [, whole, top, bottom] = image.match(/^(?:(\d+)[ -])?(\d+)\/(\d+)$/)!;
  if (Number(bottom) === 0) return wrong("form/fraction-of-nothing", { text: image });
  if (Number(top) >= Number(bottom)) {
    const fixes: Fix[] = [];
    const unit = m.unit ? ` ${unitNamed(m.unit)!.symbol}` : "";
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
  const parts = Number(bottom);
  const above = Number(whole ?? 0) * parts + Number(top);
  return { top: above, bottom: parts, denominator: parts, decimals: 0, spelling };
}

export function bareNumber(m: Magnitude, raw: string): Bare | Problem {
  const amount = amountOf(m);
  if ("problem" in amount) return amount;
  const { top, bottom } = amount;
  const value = top / bottom;
  return { type: "number", value, numerator: top, denominator: bottom, raw, start: m.start, end: m.end };
}

/** A number with a unit, or several that make one amount (`5 ft 9 in`). */
export function measureOf(parts: readonly Magnitude[], written: string): Measure | Problem {
  return parts.length === 1 ? single(parts[0]!) : compound(parts, written);
}

function single(part: Magnitude): Measure | Problem {
  const amount = amountOf(part);
  if ("problem" in amount) return amount;
  const unit = unitNamed(part.unit!)!;
  return {
    type: "measure",
    dimension: unit.dimension,
    value: ratioToSi(amount.top, amount.bottom, unit),
    unit: shownUnit(unit, amount.denominator, amount.decimals),
    spelling: `${amount.spelling} ${unit.symbol}`,
    start: part.start,
    end: part.end,
  };
}

function compound(parts: readonly Magnitude[], written: string): Measure | Problem {
  // Feet and inches are added as fractions and rounded once, so that 5 ft 9 in is the same number as 69 in.
  let sum = new Fraction(0);
  let denominator = 1;
  let decimals = 0;
  const spellings: string[] = [];
  let before: Unit | undefined;
  for (const part of parts) {
    const amount = amountOf(part);
    if ("problem" in amount) return amount;
    const own = unitNamed(part.unit!)!;
    if (before && amount.top >= before.then!.count * amount.bottom)
      return overAFoot(parts, written, before, own);
    sum = exact(amount).mul(own.factor).add(sum);
    denominator = Math.max(denominator, amount.denominator);
    decimals = Math.max(decimals, amount.decimals);
    spellings.push(`${amount.spelling} ${own.symbol}`);
    before = own;
  }
  const unit = unitNamed(parts[0]!.unit!)!;
  return {
    type: "measure",
    dimension: unit.dimension,
    value: sum.valueOf(),
    unit: shownUnit(unit, denominator, decimals),
    spelling: spellings.join(" "),
    start: parts[0]!.start,
    end: parts[parts.length - 1]!.end,
  };
}

/** Most amounts are whole, and share the one way to show their unit. */
const wholeUnits = new Map<Unit, ShownUnit>();

function shownUnit(unit: Unit, denominator: number, decimals: number): ShownUnit {
  if (denominator <= 1 && decimals === 0) {
    let shown = wholeUnits.get(unit);
    if (!shown) wholeUnits.set(unit, (shown = writtenUnit(unit, denominator, decimals)));
    return shown;
  }
  return writtenUnit(unit, denominator, decimals);
}

const writtenUnit = (unit: Unit, denominator: number, decimals: number): ShownUnit => ({
  unit: unit.symbol,
  ...(denominator > 1 && { denominator }),
  ...(decimals > 0 && { decimals }),
  ...(unit.symbol === "ft" && { compound: true }),
});

/** `5 ft 42 in`: as many of the smaller unit as make the larger one, or more. */
function overAFoot(parts: readonly Magnitude[], written: string, large: Unit, small: Unit): Problem {
  const rule = "form/inches-over-a-foot";
  const at = parts.findIndex((p) => unitNamed(p.unit!) === small);
  const joined = parts.map((p) => `${p.image} ${unitNamed(p.unit!)!.symbol}`);
  const [before, after] = [joined.slice(0, at).join(" "), joined.slice(at).join(" ")];
  const message = says[rule]({
    text: written,
    count: large.then!.count,
    small: small.symbol,
    large: large.symbol,
  });
  const fixes: Fix[] = [
    { title: `Two of them: ${before}, ${after}`, text: `${before}, ${after}` },
    { title: `${before} alone`, text: before },
    { title: `${after} alone`, text: after },
  ];
  return { problem: { rule, message, fixes } };
}

function wrong(
  rule: "form/number-too-large" | "form/fraction-of-nothing" | "form/improper-fraction",
  p: { text: string },
): Problem {
  return { problem: { rule, message: says[rule](p) } };
}
