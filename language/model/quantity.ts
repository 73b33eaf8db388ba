/** Reads a quantity: its amount or range, its tolerance, how it is known, by whom and when. */
import { showValue } from "../quantity/show.js";
import type { Known, Quantity, ShownUnit } from "../quantity/types.js";
import { says } from "../text/messages.js";
import type { Measure } from "../text/types.js";
import type { Shape } from "../vocabulary/types.js";
import { raw, Wrong, type Cursor } from "./cursor.js";
import { magnitude, measure, withUnit } from "./magnitude.js";

type QuantityShape = Extract<Shape, { is: "quantity" }>;
interface Amount {
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
  readonly unit: ShownUnit;
  readonly toleranceGiven: boolean;
}

/** `reserved`: words that lead another part of the same statement and so do not belong to the quantity. */
export function readQuantity(c: Cursor, shape: QuantityShape, reserved?: ReadonlySet<string>): Quantity {
  const slope = shape.slope === true && firstDimension(c) === "angle";
  const first = c.peek();
  const form =
    shape.range || c.isWord("adjusts") ? "adjusts" : c.isWord("about") ? "about" : ("plain" as const);
  if (c.isWord("adjusts") || c.isWord("about")) c.at++;
  const written = amount(c, slope ? { ...shape, dimension: "angle", units: ["deg"] } : shape, form);
  const { low, nominal, high, unit, toleranceGiven } = slope ? asSlope(written) : written;
  const known = readKnown(c, reserved);
  const { dimension, plausible } = shape;
  if (plausible && first && (high < plausible[0] || low > plausible[1])) {
    const text = showValue(nominal, dimension, unit);
    c.problems.push(
      c.problem(
        "form/hardly-plausible",
        says["form/hardly-plausible"]({ key: c.key, text }),
        first,
        c.before()!,
      ),
    );
  }
  return { type: "quantity", dimension, low, nominal, high, toleranceGiven, shape: form, unit, ...known };
}

/** The dimension of the next amount that carries a unit. */
function firstDimension(c: Cursor): string | undefined {
  for (let i = c.at; i < c.atoms.length; i++) {
    const a = c.atoms[i]!;
    if (a.type === "measure") return a.dimension;
  }
  return undefined;
}

const asSlope = (a: Amount): Amount => ({
  ...a,
  low: Math.tan(a.low),
  nominal: Math.tan(a.nominal),
  high: Math.tan(a.high),
  unit: { unit: "%" },
});

function sign(c: Cursor, shape: QuantityShape): 1 | -1 {
  if (!c.isMark("-") && !c.isMark("+")) return 1;
  const mark = c.peek()!;
  const minus = c.isMark("-");
  c.at++;
  if (minus && (shape.plausible?.[0] ?? 0) >= 0)
    throw new Wrong(
      c.problem(
        "form/negative",
        says["form/negative"]({ key: c.key, text: `-${raw(c.peek())}` }),
        mark,
        c.peek() ?? mark,
      ),
    );
  return minus ? -1 : 1;
}

function amount(c: Cursor, shape: QuantityShape, form: "plain" | "adjusts" | "about"): Amount {
  const { dimension, units } = shape;
  const begin = c.peek();
  const sense = sign(c, shape);
  const start = magnitude(c, dimension, units, true);
  if (!c.takeWord("to")) {
    const m = withUnit(c, start, undefined, units);
    const nominal = sense * m.value;
    const t = tolerance(c, shape, m.unit);
    if (!t) return { low: nominal, nominal, high: nominal, unit: m.unit, toleranceGiven: false };
    const finer = (t.unit.denominator ?? 1) > (m.unit.denominator ?? 1);
    return {
      low: nominal - t.below,
      nominal,
      high: nominal + t.above,
      unit: finer ? { ...m.unit, denominator: t.unit.denominator! } : m.unit,
      toleranceGiven: true,
    };
  }
  const senseOfLast = sign(c, shape);
  const last = measure(c, dimension, units);
  const from = withUnit(c, start, last.unit, units);
  const one = `${sense < 0 ? "-" : ""}${from.spelling}`;
  const other = `${senseOfLast < 0 ? "-" : ""}${last.spelling}`;
  const text = `${one} to ${other}`;
  if (form === "plain")
    throw new Wrong(
      c.problem("form/range-without-reason", says["form/range-without-reason"]({ text }), begin!, last, [
        { title: `It is not known better: about ${text}`, text: `about ${text}` },
        { title: `It can be adjusted: adjusts ${text}`, text: `adjusts ${text}` },
      ]),
    );
  const [low, high] = [sense * from.value, senseOfLast * last.value];
  if (low > high)
    throw new Wrong(
      c.problem("form/range-reversed", says["form/range-reversed"]({ text }), begin!, last, [
        { title: "Swap them", text: `${other} to ${one}` },
      ]),
    );
  return { low, nominal: (low + high) / 2, high, unit: last.unit, toleranceGiven: true };
}

/** `± 1/4 in`, `+ 1/2 in - 0 in`. A bare number takes the unit of the value: `21 in ± 1/4`. */
function tolerance(
  c: Cursor,
  { dimension, units }: QuantityShape,
  unit: ShownUnit,
): { below: number; above: number; unit: ShownUnit } | undefined {
  const one = (): Measure => withUnit(c, magnitude(c, dimension, units, true), unit, units);
  if (c.isMark("±")) {
    c.at++;
    const m = one();
    return { below: m.value, above: m.value, unit: m.unit };
  }
  if (!c.isMark("+") && !c.isMark("-")) return undefined;
  let below = 0;
  let above = 0;
  let shown = unit;
  while (c.isMark("+") || c.isMark("-")) {
    const up = c.isMark("+");
    c.at++;
    const m = one();
    if (up) above = m.value;
    else below = m.value;
    shown = m.unit;
  }
  return { below, above, unit: shown };
}

function readKnown(
  c: Cursor,
  reserved: ReadonlySet<string> | undefined,
): { known: Known; knownGiven: boolean; by?: string; on?: string } {
  let known: Known = "measured";
  let knownGiven = false;
  let by: string | undefined;
  let on: string | undefined;
  for (;;) {
    const a = c.peek();
    if (a?.type !== "word" || reserved?.has(a.word)) break;
    if (a.word === "measured" || a.word === "stated" || a.word === "estimated" || a.word === "judged") {
      if (a.word === "stated" && c.person)
        throw new Wrong(
          c.problem("form/stated-by-nobody", says["form/stated-by-nobody"]({ key: c.key }), a, a, [
            { title: "A person judged it", text: 'judged by ""' },
          ]),
        );
      known = a.word;
      knownGiven = true;
      c.at++;
    } else if (a.word === "by") {
      c.at++;
      const role = c.peek();
      if (role?.type !== "text") throw c.expected({ is: "text" });
      by = role.value;
      c.at++;
    } else if (a.word === "on") {
      c.at++;
      const d = c.peek();
      if (d?.type !== "date") throw c.expected({ is: "date" });
      on = d.date;
      c.at++;
    } else break;
  }
  if (known === "judged" && by === undefined) {
    const last = c.before()!;
    c.problems.push(
      c.problem("form/who-judged", says["form/who-judged"]({ key: c.key }), last, last, [
        { title: "Name the role", text: ' by ""', start: last.end, end: last.end },
      ]),
    );
  }
  return { known, knownGiven, ...(by !== undefined && { by }), ...(on !== undefined && { on }) };
}
