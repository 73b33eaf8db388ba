/**
 * The model as zod schemas, made from the vocabulary. The reader already refuses what does not fit; this second, independent
 * check keeps a thing that a program built, or a reader that was changed, from reaching the rules in a form they do not expect.
 */
import * as z from "zod/mini";
import { blockSpec } from "../vocabulary/index.js";
import type { BlockSpec, Shape } from "../vocabulary/types.js";
import type { Thing } from "./types.js";

const unknown = z.object({ type: z.literal("unknown") });
const number = z.number();

const quantity = (dimension: string) =>
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
      unit: z.object({
        unit: z.string(),
        denominator: z.optional(number),
        compound: z.optional(z.boolean()),
      }),
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

const schemas = new Map<BlockSpec, z.ZodMiniType>();
/** The schema of a block's values; unknown keys are refused. */
export function schemaOfBlock(spec: BlockSpec): z.ZodMiniType {
  let schema = schemas.get(spec);
  if (!schema) {
    const keys = Object.entries(spec.keys).map(([key, k]) => {
      const one = z.union([schemaOfShape(k.shape), unknown]);
      return [key, z.optional(k.many ? z.union([z.array(one), unknown]) : one)] as const;
    });
    const head = (spec.head ?? []).map((p) => [p.name, z.optional(schemaOfShape(p.shape))] as const);
    schemas.set(spec, (schema = z.strictObject(Object.fromEntries([...head, ...keys]))));
  }
  return schema;
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
  if (spec) {
    const result = schemaOfBlock(spec).safeParse(thing.values);
    if (!result.success)
      for (const issue of result.error.issues)
        messages.push(`${thing.kind} ${thing.name}: ${issue.path.join(" ")}: ${issue.message}`);
  }
  for (const inner of Object.values(thing.inner))
    for (const t of inner ?? []) messages.push(...checkThing(t));
  return messages;
}
