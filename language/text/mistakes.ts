/** What is said of a character or a spelling that cannot be read, and the likely readings that are offered. Nothing is guessed. */
import type { TokenType } from "chevrotain";
import { unitNamed } from "../quantity/units.js";
import type { Magnitude } from "./measure.js";
import { says } from "./messages.js";
import * as t from "./tokens.js";
import type { Fix, LineProblem } from "./types.js";

/** The finding for a token that has no place in any statement. `before`: what stands in front of it on its line. */
export function mistakeOf(
  type: TokenType,
  image: string,
  start: number,
  before: (most: number) => string,
): LineProblem {
  const at = { start, end: start + image.length };
  if (type === t.Invisible) {
    const code = `U+${image.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0")}`;
    const rule = "form/invisible-character";
    return { rule, message: says[rule]({ code }), ...at, fixes: [{ title: "Delete it", text: "" }] };
  }
  if (type === t.OpenText) {
    const rule = "form/text-not-closed";
    // A backslash at the end would take the closing quote for part of the text.
    const slash = /\\*$/.exec(image)![0].length % 2 === 1 && image.startsWith('"') ? "\\" : "";
    const text = `${image}${slash}${image.startsWith("“") ? "”" : '"'}`;
    return { rule, message: says[rule](), ...at, fixes: [{ title: "Close the text", text }] };
  }
  if (type === t.OtherDate) {
    const rule = "form/date-written-otherwise";
    const fixes = dateReadings(image);
    return { rule, message: says[rule]({ text: image, readings: fixes.length }), ...at, fixes };
  }
  if (type === t.DecimalComma) {
    const rule = "form/decimal-comma";
    return { rule, message: says[rule]({ text: image }), ...at, fixes: commaReadings(image) };
  }
  if (type === t.PoundsSign) {
    const rule = "form/pounds-sign";
    // A number with its fraction is short; a longer look back would cost more than it could tell.
    const number = /[\d./ ]*$/.exec(before(24))![0].trim();
    const fixes = [{ title: `${number} lb`, text: " lb" }];
    return { rule, message: says[rule]({ text: `${number}#` }), ...at, fixes };
  }
  const rule = "form/character";
  const fixes = image === "=" ? [{ title: "Leave it out", text: "" }] : [];
  return { rule, message: says[rule]({ text: image.slice(0, 20) }), ...at, fixes };
}

/** `5'9`, `5 ft 9`: a number behind feet that says no unit. */
export function unitBehindFeet(feet: Magnitude, number: string, end: number): LineProblem {
  const rule = "form/inches-without-unit";
  const unit = unitNamed(feet.unit!)!;
  const whole = `${feet.image} ${unit.symbol} ${number}`;
  return {
    rule,
    message: says[rule]({ text: whole, number }),
    start: feet.start,
    end,
    fixes: [
      { title: `${whole} in`, text: `${whole} in` },
      {
        title: `${feet.image} ${unit.symbol} alone, without the ${number}`,
        text: `${feet.image} ${unit.symbol}`,
      },
    ],
  };
}

/** `1,2`: a decimal number or two numbers; with three digits behind the comma it may also part the thousands. */
function commaReadings(image: string): Fix[] {
  const [whole, part] = image.split(",") as [string, string];
  const fixes: Fix[] = [];
  if (!part.includes(".")) fixes.push({ title: `The number ${whole}.${part}`, text: `${whole}.${part}` });
  if (/^\d{3}(\.|$)/.test(part) && /^[1-9]\d{0,2}$/.test(whole))
    fixes.push({ title: `The number ${whole}${part}, its thousands parted`, text: `${whole}${part}` });
  fixes.push({ title: `Two numbers, ${whole} and ${part}`, text: `${whole}, ${part}` });
  return fixes;
}

/** Whether the Gregorian calendar has this day, written year-month-day. */
export function isDay(iso: string): boolean {
  const [year, month, day] = [Number(iso.slice(0, 4)), Number(iso.slice(5, 7)), Number(iso.slice(8, 10))];
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1];
  return /^\d{4}-\d{2}-\d{2}$/.test(iso) && days !== undefined && day >= 1 && day <= days;
}

const months = "January February March April May June July August September October November December".split(
  " ",
);

/** `3/4/2026` as month first and as day first, as far as the calendar has such a day. */
function dateReadings(image: string): Fix[] {
  const [a, b, c] = image.split(/[/.]/) as [string, string, string];
  const year = c.length === 2 ? `20${c}` : c;
  const reading = (month: string, day: string): Fix[] => {
    const iso = `${year}-${month.padStart(2, "0")}-${day.padStart(2, "0")}`;
    return isDay(iso) ? [{ title: `${Number(day)} ${months[Number(month) - 1]} ${year}`, text: iso }] : [];
  };
  return a === b ? reading(a, b) : [...reading(a, b), ...reading(b, a)];
}
