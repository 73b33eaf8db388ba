/** Values and places as hovers show them. */
import type { Interval } from "../../language/quantity/interval.js";
import { inOtherSystem, show, showSigned, showWithDoubt } from "../../language/quantity/show.js";
import type { Dimension, Quantity, ShownUnit } from "../../language/quantity/types.js";
import type { Defaults } from "../../rules/scene.js";
import type { Computed, Term } from "../../rules/types.js";

/** `23 in (584 mm)`; a range with both its ends in both systems. */
export function inBoth(value: Interval, dimension: Dimension, unit: ShownUnit): string {
  const own = show(value, dimension, unit);
  if (!inOtherSystem(value.nominal, dimension, unit)) return own;
  const ends = value.low === value.high ? [value.low] : [value.low, value.high];
  return `${own} (${ends.map((v) => inOtherSystem(v, dimension, unit)).join(" to ")})`;
}

/** `up 2 3/4 in (up 2 1/2 in to up 3 in)` for a rise or a slope, else the value with its doubt. */
export function reckoned(value: Interval, dimension: Dimension, unit: ShownUnit, signed: boolean): string {
  if (!signed) return showWithDoubt(value, dimension, unit);
  const nominal = showSigned(value.nominal, dimension, unit);
  const [low, high] = [showSigned(value.low, dimension, unit), showSigned(value.high, dimension, unit)];
  return low === high ? nominal : `${nominal} (${low} to ${high})`;
}

export const isSigned = (name: string): boolean => /(^|[.-])(rise|slope)/.test(name);

/** The tolerance in force, and why: written, or the rule set's for how the value is known. */
export function toleranceOf(q: Quantity, defaults: Defaults | undefined): string {
  const half = (d: number): string =>
    show({ low: d, nominal: d, high: d }, q.dimension, {
      ...q.unit,
      denominator: Math.max(16, q.unit.denominator ?? 1),
    });
  if (q.shape === "adjusts") return "It can be set anywhere between these.";
  if (q.shape === "about") return "It lies somewhere between these.";
  if (q.toleranceGiven) {
    const [below, above] = [q.nominal - q.low, q.high - q.nominal];
    return Math.abs(below - above) < 1e-9
      ? `Tolerance: ± ${half(above)}, as written.`
      : `Tolerance: + ${half(above)} - ${half(below)}, as written.`;
  }
  const name = `tolerance-${q.dimension}-${q.known}`;
  const found = defaults?.get(name);
  if (!found) return "No tolerance is written, and none is assumed.";
  return `Tolerance: ± ${half(found.interval.high)}, the rule set's for what is ${q.known} (\`${name}\`).`;
}

/** `14 in · top of bed`: one line of arithmetic. */
export function termLine(term: Term, unit: ShownUnit): string {
  const amount =
    term.value && term.dimension
      ? reckoned(term.value, term.dimension, term.unit ?? unit, isSigned(term.label))
      : undefined;
  const origin = term.default !== undefined ? ` (default of the rule set, \`${term.default}\`)` : "";
  const how = term.formula !== undefined ? ` = ${term.formula}` : "";
  return amount === undefined ? `${term.label}${how}` : `${term.label}${how} = **${amount}**${origin}`;
}

/** A derived quantity in one line: its value, or why there is none. */
export function computedLine(c: Computed): string {
  if (c.value)
    return (
      reckoned(c.value, c.dimension, c.unit, isSigned(c.name)) +
      (c.choice !== undefined ? `, ${c.choice.replaceAll("-", " ")}` : "")
    );
  if (c.choice !== undefined) return c.choice.replaceAll("-", " ");
  if (c.without !== undefined) return `none: ${c.without}`;
  return c.missing.length > 0 ? `not known: ${c.missing.map((m) => m.what).join("; ")}` : "not known";
}

/** Text that Markdown must not take for its own marks. */
export const plain = (text: string): string => text.replace(/[\\`*_[\]<>|#]/g, (m) => `\\${m}`);

/** With a full stop at its end, if nothing ends it yet. */
export const sentence = (words: string): string => (/[.!?]$/.test(words) ? words : `${words}.`);
