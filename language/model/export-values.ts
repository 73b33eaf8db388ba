/** Values as plain JSON: quantities in SI with their written text, records and lists in the order of the vocabulary. */
import { showWithDoubt } from "../quantity/show.js";
import type { Dimension, Quantity } from "../quantity/types.js";
import type { Part, Shape } from "../vocabulary/types.js";
import type { QuantityJson, ValueJson } from "./export-types.js";
import { isQuantity, isUnknown, type Value } from "./types.js";

/** The unit of each dimension in this form. Durations are kept in days and written in seconds. */
export const siUnits: Readonly<Record<Dimension, { readonly unit: string; readonly times: number }>> = {
  length: { unit: "m", times: 1 },
  mass: { unit: "kg", times: 1 },
  angle: { unit: "rad", times: 1 },
  force: { unit: "N", times: 1 },
  moment: { unit: "N m", times: 1 },
  pressure: { unit: "Pa", times: 1 },
  ratio: { unit: "1", times: 1 },
  number: { unit: "1", times: 1 },
  duration: { unit: "s", times: 86_400 },
};

/** Twelve digits: more than any tape gives, few enough that every machine prints the same. */
const rounded = (x: number): number => Number(x.toPrecision(12));

/** What was written for each quantity. */
export type Texts = ReadonlyMap<Quantity, string>;

/** Entries of a record, known names first and in their order, then any other. */
export function inOrder<T>(
  order: readonly string[],
  record: { readonly [name: string]: T | undefined },
): [string, T][] {
  const names = [...order, ...Object.keys(record).filter((n) => !order.includes(n))];
  return names.flatMap((n) =>
    Object.hasOwn(record, n) && record[n] !== undefined ? [[n, record[n]] as [string, T]] : [],
  );
}

/** A value. `shape` gives the order of its parts. */
export function valueJson(value: Value, shape: Shape | undefined, texts: Texts): ValueJson {
  if (typeof value !== "object") return value;
  if (isUnknown(value)) return { unknown: true };
  if (isQuantity(value)) return quantityJson(value, texts.get(value));
  if (Array.isArray(value)) {
    const item = shape?.is === "list" ? shape.item : undefined;
    return (value as readonly Value[]).map((v) => valueJson(v, item, texts));
  }
  const record = value as { readonly [part: string]: Value | undefined };
  const parts = shape ? partsOf(shape, record) : [];
  return Object.fromEntries(
    inOrder(
      parts.map((p) => p.name),
      record,
    ).map(([name, v]) => [name, valueJson(v, parts.find((p) => p.name === name)?.shape, texts)]),
  );
}

/** The parts of which a record consists; of several forms that are possible, the first that has them all. */
function partsOf(shape: Shape, record: object): readonly Part[] {
  if (shape.is === "parts") return shape.parts;
  if (shape.is === "list") return partsOf(shape.item, record);
  if (shape.is !== "either") return [];
  const forms = shape.shapes.map((s) => partsOf(s, record));
  return forms.find((f) => Object.keys(record).every((name) => f.some((p) => p.name === name))) ?? [];
}

function quantityJson(q: Quantity, written: string | undefined): QuantityJson {
  const { unit, times } = siUnits[q.dimension];
  return {
    low: rounded(q.low * times),
    nominal: rounded(q.nominal * times),
    high: rounded(q.high * times),
    unit,
    known: q.known,
    ...(q.by !== undefined && { by: q.by }),
    ...(q.on !== undefined && { on: q.on }),
    ...(q.shape !== "plain" && { range: q.shape }),
    tolerance: q.toleranceGiven,
    as: written ?? showWithDoubt(q, q.dimension, q.unit),
  };
}
