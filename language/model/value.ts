/** Reads the atoms behind a key as the shape that the vocabulary gives it. Nothing is guessed; what is left over is a finding. */
import { says } from "../text/messages.js";
import { nearest } from "../text/nearest.js";
import type { Atom, LineProblem } from "../text/types.js";
import type { Part, Shape } from "../vocabulary/types.js";
import { begins, Cursor, isChoiceOf, raw, Wrong, type Reference } from "./cursor.js";
import { readPair } from "./magnitude.js";
import { readQuantity } from "./quantity.js";
import type { Value } from "./types.js";

export { wants, type Reference } from "./cursor.js";

export interface ValueReading {
  readonly value?: Value;
  readonly problems: readonly LineProblem[];
  readonly references: readonly Reference[];
}

/** One object for every `unknown`: they are all alike. */
export const unknownValue = { type: "unknown" } as const;

/** Reads `atoms[from...]` as `shape`. `key` is how messages call it; `person` marks things that carry no label. */
export function readValue(
  atoms: readonly Atom[],
  from: number,
  shape: Shape,
  key: string,
  end: number,
  person = false,
): ValueReading {
  const c = new Cursor(atoms, from, key, end, person);
  try {
    const value = whole(c, shape);
    return { value, problems: c.problems, references: c.references };
  } catch (e) {
    if (e instanceof Wrong) return { problems: [...c.problems, e.problem], references: c.references };
    throw e;
  }
}

function whole(c: Cursor, shape: Shape): Value {
  const value = shape.is !== "mention" && c.takeWord("unknown") ? unknownValue : read(c, shape);
  const left = c.peek();
  if (left)
    throw new Wrong(
      c.problem(
        "form/left-over",
        says["form/left-over"]({ key: c.key, text: raw(left) }),
        left,
        c.atoms[c.atoms.length - 1]!,
      ),
    );
  return value;
}

/** `reserved`: words that lead another part of the same statement. */
function read(c: Cursor, shape: Shape, reserved?: ReadonlySet<string>): Value {
  switch (shape.is) {
    case "quantity":
      return readQuantity(c, shape, reserved);
    case "choice":
      return readChoice(c, shape.choices, shape);
    case "flag":
      return readChoice(c, ["yes", "no"], shape) === "yes";
    case "text": {
      const a = c.peek();
      if (a?.type !== "text") throw c.expected(shape);
      c.at++;
      return a.value;
    }
    case "code":
      return readCode(c, shape);
    case "date": {
      const a = c.peek();
      if (a?.type !== "date") throw c.expected(shape);
      c.at++;
      return a.date;
    }
    case "time":
      return readTime(c, shape);
    case "name": {
      const a = c.peek();
      if (a?.type !== "word") throw c.expected(shape);
      c.at++;
      c.references.push({ name: a.word, kinds: shape.of, start: a.start, end: a.end });
      return a.word;
    }
    case "pair":
      return readPair(c, shape);
    case "list": {
      const values = [read(c, shape.item, reserved)];
      while (c.isMark(",")) {
        c.at++;
        values.push(read(c, shape.item, reserved));
      }
      return values;
    }
    case "either": {
      // The first atom decides, so that the message speaks of the branch that was meant; of a word that fits none, the longest.
      const a = c.peek();
      const fits =
        a && (shape.shapes.find((s) => isChoiceOf(s, a)) ?? shape.shapes.findLast((s) => begins(s, a)));
      if (!fits) throw c.expected(shape);
      return read(c, fits, reserved);
    }
    case "parts":
      return readParts(c, shape.parts);
    case "mention":
      return true;
  }
}

function readChoice(c: Cursor, choices: readonly string[], shape: Shape): string {
  const a = c.peek();
  if (a?.type !== "word") throw c.expected(shape);
  if (choices.includes(a.word)) {
    c.at++;
    return a.word;
  }
  const near = nearest(a.word, choices);
  const list =
    choices.length > 1 ? `${choices.slice(0, -1).join(", ")} or ${choices[choices.length - 1]}` : choices[0]!;
  const fixes = (near ? [near] : choices.slice(0, 4)).map((w) => ({ title: `Write ${w}`, text: w }));
  throw new Wrong(
    c.problem(
      "form/unknown-choice",
      says["form/unknown-choice"]({ key: c.key, text: a.raw, choices: list }),
      a,
      a,
      fixes,
    ),
  );
}

function readCode(c: Cursor, shape: Extract<Shape, { is: "code" }>): string {
  const a = c.peek();
  const fits = a?.type === "number" || (!shape.whole && (a?.type === "word" || a?.type === "text"));
  if (!fits || (shape.whole && !/^[1-9]\d{0,3}$/.test(raw(a)))) throw c.expected(shape);
  c.at++;
  return a.type === "text" ? a.value : a.raw;
}

/** `08:30`: two numbers and a colon that touch. */
function readTime(c: Cursor, shape: Shape): string {
  const [hour, colon, minute] = c.atoms.slice(c.at, c.at + 3);
  if (
    hour?.type !== "number" ||
    minute?.type !== "number" ||
    colon?.type !== "mark" ||
    colon.mark !== ":" ||
    !/^\d{1,2}$/.test(hour.raw) ||
    !/^[0-5]\d$/.test(minute.raw) ||
    Number(hour.raw) > 23
  )
    throw c.expected(shape);
  c.at += 3;
  return `${hour.raw.padStart(2, "0")}:${minute.raw}`;
}

const leadWords = new WeakMap<readonly Part[], ReadonlyMap<string, Part>>();
function leadsOf(parts: readonly Part[]): ReadonlyMap<string, Part> {
  let found = leadWords.get(parts);
  if (!found) {
    found = new Map(parts.flatMap((p) => (p.lead === undefined ? [] : [[p.lead, p] as const])));
    leadWords.set(parts, found);
  }
  return found;
}

function readParts(c: Cursor, parts: readonly Part[]): Value {
  const record: { [part: string]: Value | undefined } = {};
  const led = leadsOf(parts);
  const reserved = new Set(led.keys());
  for (const p of parts) {
    if (p.lead !== undefined) continue;
    const a = c.peek();
    if (p.optional && (!a || (a.type === "word" && led.has(a.word)) || !begins(p.shape, a))) continue;
    record[p.name] = read(c, p.shape, reserved);
  }
  for (;;) {
    const a = c.peek();
    const p = a?.type === "word" ? led.get(a.word) : undefined;
    if (!p || record[p.name] !== undefined) break;
    c.at++;
    record[p.name] = read(c, p.shape, reserved);
  }
  for (const p of parts)
    if (p.lead && !p.optional && record[p.name] === undefined) throw c.expected({ is: "parts", parts: [p] });
  return record;
}
