/** Words and values that every explanation uses. */
import { showSigned, showValue } from "../../language/quantity/show.js";
import type { Dimension, ShownUnit } from "../../language/quantity/types.js";
import { fromSi, unitOf } from "../../language/quantity/units.js";
import type { BasisNote, Grade } from "../types.js";
import { holesIn } from "./holes.js";
import { nameInWords } from "./phrase.js";
import type { Scope, Source } from "./types.js";

export const gradeWords: Record<Grade, string> = {
  holds: "holds",
  advice: "advice: it would be easier or safer",
  caution: "caution: only with what the message says",
  stop: "stop: do not attempt it like this",
};

export const basisWords: Record<BasisNote["basis"], string> = {
  published: "Published",
  derived: "Derived",
  "common-practice": "Common practice, without a source",
  "from-memory": "From memory",
  "project-choice": "A choice of this project",
};

export const extentWords: Record<Source["extent"], string> = {
  whole: "read whole",
  part: "read in part",
  abstract: "only its abstract was read",
  "through-another": "known through another page",
};

export const sourceKindWords: Record<Source["kind"], string> = {
  standard: "A standard",
  law: "A law",
  study: "A study",
  handbook: "A handbook",
  guidance: "Guidance",
};

export function scopeInWords(scope: Scope): string {
  switch (scope.is) {
    case "transfer":
      return "Looks at each transfer and way back.";
    case "thing":
      return `Looks at each ${scope.kind.replaceAll("-", " ")}.`;
    case "setup":
      return "Looks at the setup as a whole.";
    case "end":
      return "Looks at how things stand after the last step of a transfer.";
    case "step":
      return scope.phrases.length === 0
        ? "Looks at each step."
        : `Looks at each step ${scope.phrases.map((p) => `"${p}"`).join(", ")}.`;
  }
}

/** A message with its holes named: `The body drops: [value].` Text outside of holes is handed to `text`, a hole's name to `hole`. */
export function messageParts(
  message: string,
  text: (t: string) => string = (t) => t,
  hole: (name: string) => string = (name) => `[${name}]`,
): string {
  let rest = message;
  let said = "";
  for (const name of holesIn(message)) {
    const at = rest.indexOf(`{${name}}`);
    said += text(rest.slice(0, at)) + hole(nameInWords(name));
    rest = rest.slice(at + name.length + 2);
  }
  return said + text(rest);
}

const near = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(b));

/**
 * A value of the rule set to the last digit in which it was written: `8 1/3 %`, `12 1/2 %`. A limit that is shown rounded would be
 * another limit.
 */
export function exactText(value: number, dimension: Dimension, unit: ShownUnit, signed = false): string {
  const size = Number.isFinite(value) ? exactSize(Math.abs(value), dimension, unit) : undefined;
  if (signed) {
    const usual = value === 0 ? showValue(0, dimension, unit) : showSigned(value, dimension, unit);
    return size === undefined || value === 0 ? usual : `${value > 0 ? "up" : "down"} ${size}`;
  }
  return size === undefined ? showValue(value, dimension, unit) : `${value < 0 ? "-" : ""}${size}`;
}

/** Undefined where the usual way of showing it is exact already. */
function exactSize(value: number, dimension: Dimension, shown: ShownUnit): string | undefined {
  if (shown.unit === "" || shown.unit === "1" || shown.compound || shown.unit === "ft") {
    const text = String(Number(value.toPrecision(12)));
    return shown.unit === "1" || shown.unit === "" ? text : undefined;
  }
  const unit = unitOf(shown.unit);
  if (unit.dimension !== dimension) return undefined;
  const amount = fromSi(value, unit);
  const parts = shown.denominator ?? 1;
  const top = Math.round(amount * parts);
  if (parts > 1 && near(top / parts, amount)) {
    const [whole, left] = [Math.floor(top / parts), top % parts];
    const by = commonDivisor(left, parts);
    const fraction = left === 0 ? "" : `${left / by}/${parts / by}`;
    return `${[whole > 0 || fraction === "" ? String(whole) : "", fraction].filter(Boolean).join(" ")} ${unit.symbol}`;
  }
  return `${Number(amount.toPrecision(10))} ${unit.symbol}`;
}

const commonDivisor = (a: number, b: number): number => (b === 0 ? a : commonDivisor(b, a % b));
