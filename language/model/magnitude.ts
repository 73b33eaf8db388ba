/** Reads amounts with their units, and pairs of them. A bare number is never given a unit that nobody wrote. */
import { showValue } from "../quantity/show.js";
import type { Dimension, Quantity, ShownUnit } from "../quantity/types.js";
import { ratioToSi, unitOf, unitsOf } from "../quantity/units.js";
import { says } from "../text/messages.js";
import type { Bare, Measure } from "../text/types.js";
import type { Shape } from "../vocabulary/types.js";
import { dimensionWords, Wrong, type Cursor } from "./cursor.js";

type PairShape = Extract<Shape, { is: "pair" }>;

/** `39 in by 80 in`, `54 by 75 in`, `5 ft, 42 in`. */
export function readPair(c: Cursor, shape: PairShape): { first: Quantity; second?: Quantity } {
  const start = c.peek();
  const first = magnitude(c, shape.dimension, shape.units, true);
  const joined = shape.joined === "by" ? c.isWord("by") : c.isMark(",");
  if (!joined) {
    if (shape.second === "required") throw c.expected(shape);
    return { first: plain(withUnit(c, first, undefined, shape.units)) };
  }
  c.at++;
  const second = magnitude(c, shape.dimension, shape.units, first.type === "measure");
  const unit = second.type === "measure" ? second.unit : first.type === "measure" ? first.unit : undefined;
  const a = plain(withUnit(c, first, unit, shape.units));
  const b = plain(withUnit(c, second, unit, shape.units));
  if (shape.joined === "by" && start && a.nominal > b.nominal && isLongThing(c.key)) {
    const text = `${shown(a)} by ${shown(b)}`;
    const swapped = `${shown(b)} by ${shown(a)}`;
    c.problems.push(
      c.problem("form/longer-across", says["form/longer-across"]({ text }), start, c.before()!, [
        { title: `Swap: ${swapped}`, text: swapped },
      ]),
    );
  }
  return { first: a, second: b };
}

/** Beds and boards are longer than wide; what else is sat on or stands about may be either. */
const isLongThing = (key: string): boolean =>
  key.startsWith("size of bed") || key.startsWith("size of board");
const shown = (q: Quantity): string => showValue(q.nominal, q.dimension, q.unit);

/** A number with its unit, or a bare one where a unit may follow. */
export function magnitude(
  c: Cursor,
  dimension: Dimension,
  units: readonly string[],
  unitMayFollow: boolean,
): Measure | Bare {
  const a = c.peek();
  if (a?.type === "number") {
    if (!unitMayFollow) throw noUnit(c, a, units);
    c.at++;
    return a;
  }
  return measure(c, dimension, units);
}

export function measure(c: Cursor, dimension: Dimension, units: readonly string[]): Measure {
  const a = c.peek();
  if (a?.type === "number") throw noUnit(c, a, units);
  if (a?.type !== "measure") throw c.expected({ is: "quantity", dimension, units });
  if (a.dimension !== dimension)
    throw new Wrong(
      c.problem(
        "form/wrong-dimension",
        says["form/wrong-dimension"]({
          key: c.key,
          text: a.spelling,
          wants: dimensionWords[dimension],
          is: dimensionWords[a.dimension],
        }),
        a,
        a,
      ),
    );
  c.at++;
  return a;
}

function noUnit(c: Cursor, a: Bare, units: readonly string[]): Wrong {
  const likely = units.slice(0, 2);
  const inOther = (u: string): string => {
    const own = unitOf(u);
    const back = likely.find((x) => x !== u) ?? unitsOf(own.dimension)[0]!.symbol;
    const comparable = unitOf(back).dimension === own.dimension;
    return comparable ? ` (${showValue(toSiBare(a, u), own.dimension, { unit: back })})` : "";
  };
  const fixes = likely.map((u) => ({
    title: `${a.raw} ${u}${likely.length > 1 ? inOther(u) : ""}`,
    text: `${a.raw} ${u}`,
  }));
  const question = likely.map((u) => `${a.raw} ${u}`).join(" or ");
  return new Wrong(
    c.problem(
      "form/no-unit",
      says["form/no-unit"]({ key: c.key, text: a.raw, likely: question }),
      a,
      a,
      fixes,
    ),
  );
}

/** A bare number takes the unit that stands elsewhere in its statement, if one does. */
export function withUnit(
  c: Cursor,
  m: Measure | Bare,
  unit: ShownUnit | undefined,
  units: readonly string[],
): Measure {
  if (m.type === "measure") return m;
  if (!unit) throw noUnit(c, m, units);
  const own = unitOf(unit.unit);
  return {
    type: "measure",
    dimension: own.dimension,
    value: toSiBare(m, unit.unit),
    unit,
    spelling: `${m.raw} ${own.symbol}`,
    start: m.start,
    end: m.end,
  };
}

const plain = (m: Measure): Quantity => ({
  type: "quantity",
  dimension: m.dimension,
  low: m.value,
  nominal: m.value,
  high: m.value,
  toleranceGiven: false,
  shape: "plain",
  known: "measured",
  knownGiven: false,
  unit: m.unit,
});

const toSiBare = (b: Bare, symbol: string): number => ratioToSi(b.numerator, b.denominator, unitOf(symbol));
