/** One household twice: as a setup of 300 lines, and as the same content in JSON with the JSON Schema of its vocabulary. */
import { readFileSync } from "node:fs";
import { householdOf, readSetup, type Library } from "../../language/model/household.js";
import { isQuantity, isUnknown, type Thing, type Value } from "../../language/model/types.js";
import { fromSi, unitOf, unitsOf } from "../../language/quantity/units.js";
import { setupVocabulary } from "../../language/vocabulary/index.js";
import type { BlockSpec, Shape } from "../../language/vocabulary/types.js";

/** The first-week sample with what it takes from the pool written into it, filled up with furniture to `lines` lines. */
export function setupOf(lines: number): string {
  const pool = readFileSync("samples/loan-pool.span", "utf8");
  const home = readFileSync("samples/first-week/home.span", "utf8");
  const things = pool.slice(pool.indexOf("wheelchair "));
  let text = `${home.replace(/^from .*$/m, "")}\n${things}`;
  const missing = lines - text.split("\n").length;
  for (let i = 0; i * 5 < missing; i++)
    text += `furniture chest-${i} {\n  size ${20 + (i % 9)} in by 16 in\n  height 30 in\n  movable yes\n}\n`;
  return text.split("\n").slice(0, lines).join("\n");
}

const library: Library = { open: () => ({ problem: "not-found" }) };

type Json = { [key: string]: unknown };

/** A value as a person would write it in JSON: a number with its unit, a choice, a text. */
function plain(value: Value | undefined): unknown {
  if (Array.isArray(value)) return value.map(plain);
  if (typeof value !== "object" || value === null) return value;
  if (isUnknown(value)) return null;
  if (!isQuantity(value))
    return Object.fromEntries(Object.entries(value).map(([k, v]) => [k, plain(v as Value)]));
  const unit = unitOf(value.unit.unit);
  const said: Json = { value: Number(fromSi(value.nominal, unit).toFixed(4)), unit: unit.symbol };
  if (value.toleranceGiven) said["tolerance"] = Number(fromSi(value.high - value.nominal, unit).toFixed(4));
  if (value.knownGiven) said["known"] = value.known;
  return said;
}

function asJson(thing: Thing): Json {
  const values = Object.fromEntries(Object.entries(thing.values).map(([k, v]) => [k, plain(v)]));
  const inner = Object.fromEntries(
    Object.entries(thing.inner).map(([kind, things]) => [kind, things!.map(asJson)]),
  );
  const steps = thing.steps?.map((s) => [s.step.verb, s.step.side, s.step.object].filter(Boolean).join(" "));
  return { name: thing.name, ...values, ...inner, ...(steps && { steps }) };
}

/** The household as an object of lists by kind. */
export function jsonOf(setup: string): string {
  const home = householdOf("home.span", readSetup(setup), library);
  const byKind: { [kind: string]: Json[] } = {};
  for (const thing of home.all) (byKind[thing.kind] ??= []).push(asJson(thing));
  return JSON.stringify({ setup: home.title, visited: home.visited, ...byKind }, null, 1);
}

function schemaOfShape(shape: Shape): Json {
  switch (shape.is) {
    case "quantity":
      return {
        type: ["object", "null"],
        additionalProperties: false,
        required: ["value", "unit"],
        properties: {
          value: { type: "number" },
          unit: { enum: unitsOf(shape.dimension).map((u) => u.symbol) },
          tolerance: { type: "number", minimum: 0 },
          known: { enum: ["measured", "stated", "judged", "estimated"] },
        },
      };
    case "choice":
      return { enum: [...shape.choices, null] };
    case "flag":
      return { type: "boolean" };
    case "mention":
      return { const: true };
    case "date":
      return { type: "string", pattern: "^\\d{4}-\\d{2}-\\d{2}$" };
    case "time":
      return { type: "string", pattern: "^\\d{2}:\\d{2}$" };
    case "text":
    case "code":
    case "name":
      return { type: "string" };
    case "pair": {
      const one = schemaOfShape({ is: "quantity", dimension: shape.dimension, units: shape.units });
      return { type: "object", properties: { first: one, second: one }, required: ["first"] };
    }
    case "list":
      return { type: "array", items: schemaOfShape(shape.item) };
    case "either":
      return { anyOf: shape.shapes.map(schemaOfShape) };
    case "parts":
      return {
        type: "object",
        additionalProperties: false,
        required: shape.parts.filter((p) => !p.optional).map((p) => p.name),
        properties: Object.fromEntries(shape.parts.map((p) => [p.name, schemaOfShape(p.shape)])),
      };
  }
}

function schemaOfBlock(spec: BlockSpec): Json {
  const keys = Object.entries(spec.keys).map(([key, k]) => [
    key,
    k.many ? { type: "array", items: schemaOfShape(k.shape) } : schemaOfShape(k.shape),
  ]);
  const head = (spec.head ?? []).map((p) => [p.name, schemaOfShape(p.shape)]);
  const inner = Object.entries(spec.blocks ?? {}).map(([kind, b]) => {
    const blocks = { type: "array", items: schemaOfBlock(b) };
    // The same word may be a key too: `steps planned`.
    const key = spec.keys[kind];
    return [kind, key ? { anyOf: [blocks, schemaOfShape(key.shape)] } : blocks];
  });
  const steps = spec.steps ? { steps: { type: "array", items: { type: "string" } } } : {};
  return {
    type: "object",
    additionalProperties: false,
    properties: { name: { type: "string" }, ...Object.fromEntries([...head, ...keys, ...inner]), ...steps },
  };
}

/** JSON Schema of `jsonOf`'s result, made from the vocabulary. */
export function schemaOf(): Json {
  const kinds = Object.entries(setupVocabulary.blocks).map(([kind, spec]) => [
    kind,
    { type: "array", items: schemaOfBlock(spec) },
  ]);
  return {
    type: "object",
    additionalProperties: false,
    properties: {
      setup: { type: "string" },
      visited: { type: "string", pattern: "^\\d{4}-\\d{2}-\\d{2}$" },
      ...Object.fromEntries(kinds),
    },
  };
}
