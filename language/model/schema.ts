/**
 * The model as zod schemas, made from the vocabulary. The reader already refuses what does not fit; this second, independent
 * check keeps a thing that a program built, or a reader that was changed, from reaching the rules in a form they do not expect.
 */
import * as z from "zod/mini";
import { blockSpec } from "../vocabulary/index.js";
import type { BlockSpec, KeySpec, Part, Shape } from "../vocabulary/types.js";
import type { Thing } from "./types.js";

const unknown = z.object({ type: z.literal("unknown") });
const number = z.number();

const shapeOfUnit = z.object({
  unit: z.string(),
  denominator: z.optional(number),
  decimals: z.optional(number),
  compound: z.optional(z.boolean()),
});

const quantities = new Map<string, z.ZodMiniType>();
function quantity(dimension: string): z.ZodMiniType {
  let found = quantities.get(dimension);
  if (!found) quantities.set(dimension, (found = quantityOf(dimension)));
  return found;
}

const quantityOf = (dimension: string) =>
  z
    .object({
      type: z.literal("quantity"),
      dimension: z.literal(dimension),
      low: number,
      nominal: number,
      high: number,
      toleranceGiven: z.boolean(),
      shape: z.enum(["plain", "adjusts", "about"]),
      known: z.enum(["measured", "stated", "judged", "estimated"]),
      knownGiven: z.boolean(),
      by: z.optional(z.string()),
      on: z.optional(z.string()),
      unit: shapeOfUnit,
    })
    .check(
      z.refine((q) => q.low <= q.nominal && q.nominal <= q.high, {
        error: "low, nominal and high are out of order",
      }),
    );

/** The schema of one value. */
export function schemaOfShape(shape: Shape): z.ZodMiniType {
  switch (shape.is) {
    case "quantity":
      return quantity(shape.dimension);
    case "choice":
      return z.enum(shape.choices as [string, ...string[]]);
    case "flag":
      return z.boolean();
    case "code":
      return shape.whole ? z.string().check(z.regex(/^[1-9]\d{0,3}$/)) : z.string();
    case "text":
    case "name":
      return z.string();
    case "date":
      return z.string().check(z.regex(/^\d{4}-\d{2}-\d{2}$/));
    case "time":
      return z.string().check(z.regex(/^([01]\d|2[0-3]):[0-5]\d$/));
    case "pair":
      return z.object({
        first: quantity(shape.dimension),
        second:
          shape.second === "required" ? quantity(shape.dimension) : z.optional(quantity(shape.dimension)),
      });
    case "list":
      return z.array(schemaOfShape(shape.item));
    case "either":
      return z.union(shape.shapes.map(schemaOfShape) as [z.ZodMiniType, ...z.ZodMiniType[]]);
    case "parts":
      return z.object(
        Object.fromEntries(
          shape.parts.map((p) => [
            p.name,
            p.optional ? z.optional(schemaOfShape(p.shape)) : schemaOfShape(p.shape),
          ]),
        ),
      );
    case "mention":
      return z.literal(true);
  }
}

const schemas = new WeakMap<KeySpec | Part, z.ZodMiniType>();
/** The schema of what one key says, made when the first such key is checked: most of the table is in no one plan. */
function schemaOfKey(key: KeySpec | Part): z.ZodMiniType {
  let schema = schemas.get(key);
  if (!schema) {
    const one = "help" in key ? z.union([schemaOfShape(key.shape), unknown]) : schemaOfShape(key.shape);
    schemas.set(key, (schema = "many" in key && key.many ? z.union([z.array(one), unknown]) : one));
  }
  return schema;
}

/** What is wrong with a block's values, in words; a key that it cannot have is refused. */
export function checkValues(spec: BlockSpec, values: Thing["values"]): readonly string[] {
  const found: string[] = [];
  for (const [name, value] of Object.entries(values)) {
    if (value === undefined) continue;
    const key = Object.hasOwn(spec.keys, name) ? spec.keys[name] : spec.head?.find((p) => p.name === name);
    if (!key) {
      found.push(`${name}: this key is not known here`);
      continue;
    }
    const result = schemaOfKey(key).safeParse(value);
    if (!result.success)
      for (const issue of result.error.issues)
        found.push(`${[name, ...issue.path].join(" ")}: ${issue.message}`);
  }
  return found;
}

const checked = new WeakMap<Thing, readonly string[]>();
/** What is wrong with a thing's form, in words; empty for what the reader makes. Kept with the thing. */
export function checkThing(thing: Thing): readonly string[] {
  let found = checked.get(thing);
  if (!found) checked.set(thing, (found = check(thing)));
  return found;
}

function check(thing: Thing): string[] {
  const spec = blockSpec(thing.kind);
  const messages: string[] = [];
  if (spec)
    for (const m of checkValues(spec, thing.values)) messages.push(`${thing.kind} ${thing.name}: ${m}`);
  for (const inner of Object.values(thing.inner))
    for (const t of inner ?? []) messages.push(...checkThing(t));
  return messages;
}
