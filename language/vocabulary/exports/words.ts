/** Shapes of the vocabulary in words, and an example of each that the reader takes. */
import { dimensionWords } from "../../model/cursor.js";
import { showValue } from "../../quantity/show.js";
import { fromSi, unitOf } from "../../quantity/units.js";
import { capital } from "../../text/capital.js";
import type { BlockSpec, KeySpec, Part, Shape } from "../types.js";

/** A line of the table as a sentence. */
export const sentence = (line: string): string => `${capital(line)}${/[.!?]$/.test(line) ? "" : "."}`;

const listed = (words: readonly string[], last: string): string =>
  words.length < 2 ? (words[0] ?? "") : `${words.slice(0, -1).join(", ")} ${last} ${words[words.length - 1]}`;

/** A noun with its article. */
export const article = (noun: string): string => `${/^[aeiou]/.test(noun) ? "an" : "a"} ${noun}`;

/** What a name of these kinds names: `the name of a bed or a wheelchair`. */
export const nameOf = (kinds: readonly string[]): string =>
  kinds.length > 3
    ? `the name of one of these: ${listed(kinds, "or")}`
    : `the name of ${listed(kinds.map(article), "or")}`;

/** What a value looks like, in words: `a length (in, cm, mm)`. */
export function shapeInWords(shape: Shape): string {
  switch (shape.is) {
    case "quantity": {
      const noun = shape.slope ? "slope" : dimensionWords[shape.dimension];
      const units = shape.units.length > 0 ? ` (${shape.units.join(", ")})` : "";
      return shape.range ? `two ${noun}s${units} joined by \`to\`` : `${article(noun)}${units}`;
    }
    case "choice":
      return listed(shape.choices, "or");
    case "flag":
      return "yes or no";
    case "text":
      return "a text in quotes";
    case "code":
      return shape.whole ? "a whole number" : "a word, or a text in quotes";
    case "date":
      return "a date (year-month-day)";
    case "time":
      return "a time of day (hours:minutes)";
    case "name":
      return nameOf(shape.of);
    case "pair": {
      const one = `${dimensionWords[shape.dimension]}s (${shape.units.join(", ")})`;
      const how = shape.joined === "by" ? "joined by `by`" : "parted by a comma";
      return shape.second === "required" ? `two ${one} ${how}` : `one of the ${one}, or two ${how}`;
    }
    case "list":
      return `one or several, parted by commas, each ${shapeInWords(shape.item)}`;
    case "either":
      return shape.shapes.map(shapeInWords).join("; or ");
    case "parts":
      return shape.parts.map(partInWords).join("; then ");
    case "mention":
      return "the word alone";
  }
}

const partInWords = (p: Part): string =>
  `${p.lead ? `\`${p.lead}\` and ` : `${p.name}: `}${shapeInWords(p.shape)}${p.optional ? " (may be left out)" : ""}`;

/** The span outside of which the editor asks whether a value is really meant; undefined where there is none. */
export function plausibleInWords(shape: Shape): string | undefined {
  if (shape.is === "either") return shape.shapes.map(plausibleInWords).find((words) => words !== undefined);
  if (shape.is !== "quantity" || !shape.plausible) return undefined;
  const unit = { unit: shape.units[0] ?? "" };
  const [low, high] = shape.plausible.map((v) => showValue(v, shape.dimension, unit));
  return `${low} to ${high}`;
}

/** Two digits, as somebody could have read it off a tape. */
function round(x: number): number {
  if (x === 0) return 0;
  const size = 10 ** (Math.floor(Math.log10(Math.abs(x))) - 1);
  return Math.round(x / size) * size;
}

/** So many of a unit, as the editor would show it. */
function amount(x: number, symbol: string): string {
  if (symbol === "") return `${Number(round(x).toPrecision(6))}`;
  const unit = unitOf(symbol);
  const si = (symbol === "%" ? Math.round(x) : round(x)) * (unit.times ?? unit.factor.valueOf());
  return showValue(si, unit.dimension, { unit: symbol, denominator: 4 });
}

/** A share of the way from the lower to the upper end of what is plausible, in the unit that is likeliest. */
function within(shape: Extract<Shape, { is: "quantity" }>, share: number): string {
  const unit = shape.units[0] ?? "";
  if (unit === "") return amount(10 * share + 1, unit);
  const [low, high] = (shape.plausible ?? [0, 0]).map((v) => fromSi(v, unitOf(unit)));
  if (low === undefined || high === undefined || high <= 0) return amount(20, unit);
  // Sizes of one kind of thing differ by factors, so the middle of their ratio is the likelier one.
  const from = low > 0 ? low : high / 20;
  return amount(from * (high / from) ** share, unit);
}

/** Words for the parts of a statement whose own names would be read as something else. */
const placeholders: Readonly<Record<string, string>> = {
  by: "role",
  approved: "role",
  at: "name",
  for: "name",
  use: "name",
  from: "name",
  because: "why",
  path: "pool.span",
};

/** A value that the reader takes for this shape; names are the kind and a number, other words say what would stand there. */
export function exampleOf(shape: Shape, called = "in words"): string {
  switch (shape.is) {
    case "quantity":
      return shape.range ? `${within(shape, 0.5)} to ${within(shape, 0.75)}` : within(shape, 0.5);
    case "choice":
      return shape.choices.find((c) => c !== "none" && c !== "no") ?? shape.choices[0]!;
    case "flag":
      return "yes";
    case "text":
      return `"${placeholders[called] ?? called}"`;
    case "code":
      if (shape.whole) return "3";
      return called === "in words" ? "A-1" : (placeholders[called] ?? called);
    case "date":
      return "2026-03-02";
    case "time":
      return "08:30";
    case "name":
      return `${shape.of[0]}-1`;
    case "pair": {
      const unit = shape.units[0] ?? "";
      const [a, b] = [amount(36, unit), amount(80, unit)];
      return shape.joined === "by" ? `${a} by ${b}` : `${a}, ${b}`;
    }
    case "list":
      return shape.item.is === "choice" && shape.item.choices.length > 1
        ? shape.item.choices.slice(0, 2).join(", ")
        : exampleOf(shape.item, called);
    case "either": {
      const all = shape.shapes.map((s) => exampleOf(s, called));
      return all.find((e) => e !== "no" && e !== "none") ?? all[0]!;
    }
    case "parts":
      return shape.parts.map((p) => (p.lead ? `${p.lead} ` : "") + exampleOf(p.shape, p.name)).join(" ");
    case "mention":
      return "";
  }
}

/** A whole statement. */
export const exampleStatement = (key: string, k: KeySpec): string => `${key} ${exampleOf(k.shape)}`.trim();

/** The head of a block: its kind, its name, and what follows. */
export function exampleHead(kind: string, spec: BlockSpec): string {
  const name =
    spec.name === "none" ? [] : [typeof spec.name === "object" ? `${spec.name.of[0]}-1` : `${kind}-1`];
  const head = (spec.head ?? []).map((p) => (p.lead ? `${p.lead} ` : "") + exampleOf(p.shape));
  return [kind === "may-change" ? "may change" : kind, ...name, ...head].join(" ");
}
