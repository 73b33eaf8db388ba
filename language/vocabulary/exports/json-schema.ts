/**
 * JSON Schema (draft 2020-12) of a household as `exportHousehold` gives it, made from the vocabulary: titles and descriptions are
 * the table's lines of help, every quantity has its SI unit, every choice its words. It describes what may be written, drafts
 * included: a key that a full plan needs may be absent, and `$comment` says that it is asked for.
 */
import { dimensionWords } from "../../model/cursor.js";
import { siUnits } from "../../model/export-values.js";
import type { Dimension } from "../../quantity/types.js";
import { setupVocabulary } from "../index.js";
import { stepPhrases } from "../step-phrases.js";
import type { BlockSpec, KeySpec, Part, Shape } from "../types.js";
import { nameOf, plausibleInWords, sentence, shapeInWords } from "./words.js";

export interface JsonSchema {
  readonly [keyword: string]: unknown;
}

const dialect = "https://json-schema.org/draft/2020-12/schema";
const ref = (name: string): JsonSchema => ({ $ref: `#/$defs/${name}` });
const text: JsonSchema = { type: "string" };
/** A day, as the reader takes it. */
const date: JsonSchema = { type: "string", pattern: "^\\d{4}-\\d{2}-\\d{2}$" };
const listOf = (items: JsonSchema): JsonSchema => ({ type: "array", items });

/** Values that do not count, by key. They were written for the keys beside them and have the same forms. */
const beside: JsonSchema = { type: "object", additionalProperties: { type: "array" } };

/** An object that has these members and no others. */
const closed = (
  properties: { readonly [name: string]: JsonSchema },
  required: readonly string[] = [],
): JsonSchema => ({
  type: "object",
  properties,
  ...(required.length > 0 && { required }),
  additionalProperties: false,
});

/** The whole schema. The same vocabulary gives the same object. */
export const householdSchema = (): JsonSchema => new SchemaMaker().whole();

class SchemaMaker {
  private readonly defs: { [name: string]: JsonSchema } = {};
  private readonly names = new Map<string, BlockSpec>();

  whole(): JsonSchema {
    const { keys, blocks } = setupVocabulary;
    const about = ([, spec]: [string, BlockSpec]): boolean => typeof spec.name === "object";
    const kinds = Object.entries(blocks);
    const things = kinds
      .filter((k) => !about(k))
      .map(([kind, spec]) => [kind, this.byName(kind, spec)] as const);
    const records = kinds
      .filter(about)
      .map(
        ([kind, spec]) =>
          [kind, { description: sentence(spec.help), ...listOf(this.block(kind, spec)) }] as const,
      );
    const statements = this.keys(keys);
    const several = Object.entries(blocks).map(
      ([kind, spec]) => [kind, listOf(this.block(kind, spec))] as const,
    );
    const notCounted = closed({
      things: closed(Object.fromEntries(several)),
      statements: beside,
    });
    return {
      $schema: dialect,
      $id: "urn:spanwise:household:1",
      title: "A household for wheelchair transfers",
      description:
        "What a plan says of a home: SI units, no places in files. A key that is left out was not looked at; {unknown: true} must still be found out.",
      ...closed(
        {
          format: { const: 1, description: "The version of this form. Fields may be added; these stay." },
          statements: { description: "What stands alone at top level.", ...statements },
          things: { description: "By kind, then by name.", ...closed(Object.fromEntries(things)) },
          changes: { description: "What may be changed, in the order of the plan.", ...listOf(change) },
          records: {
            description: "What is said about a thing and bears its name, by kind, in the order of the plan.",
            ...closed(Object.fromEntries(records)),
          },
          notCounted: {
            description: "Understood, but declared under a name or key that was taken already.",
            ...notCounted,
          },
          notUnderstood: {
            description: "Lines that were not understood. A plan with such lines is not complete.",
            ...listOf(text),
          },
        },
        ["format", "statements", "things", "changes", "records"],
      ),
      $defs: Object.fromEntries(Object.entries({ ...this.common(), ...this.defs })),
    };
  }

  private common(): { [name: string]: JsonSchema } {
    const dimensions = (Object.keys(siUnits) as Dimension[]).map((d) => [d, quantity(d)] as const);
    return {
      unknown: {
        title: "unknown",
        description: "It must still be found out.",
        ...closed({ unknown: { const: true } }, ["unknown"]),
      },
      ...Object.fromEntries(dimensions),
      step: step(),
    };
  }

  private byName(kind: string, spec: BlockSpec): JsonSchema {
    const block = this.block(kind, spec);
    const description = sentence(spec.help);
    return spec.name === "none"
      ? { description, ...closed({ [kind]: block }) }
      : { description, type: "object", additionalProperties: block };
  }

  /** Defines a block once and refers to it from then on. */
  private block(kind: string, spec: BlockSpec, parent?: string): JsonSchema {
    let name = `block-${kind}`;
    if (parent && this.names.has(name) && this.names.get(name) !== spec) name = `block-${parent}-${kind}`;
    if (this.names.has(name)) return ref(name);
    this.names.set(name, spec);
    this.defs[name] = {};
    const inside = Object.entries(spec.blocks ?? {}).map(([k, b]) => [k, this.part(k, b, kind)] as const);
    const once: readonly KeySpec[] = (spec.head ?? []).map((p) => ({
      shape: p.shape,
      help: p.lead ? `what stands behind "${p.lead}"` : p.name,
    }));
    const head = Object.fromEntries((spec.head ?? []).map((p, i) => [p.name, once[i]!]));
    this.defs[name] = {
      title: kind,
      description: sentence(spec.help),
      ...closed(
        {
          ...(spec.name !== "none" && { name: nameSchema(spec) }),
          from: { description: "The file that declares it, as the plan writes its path.", type: "string" },
          values: this.keys({ ...head, ...spec.keys }),
          ...(inside.length > 0 && { parts: closed(Object.fromEntries(inside)) }),
          ...(spec.steps && { steps: listOf(ref("step")) }),
          ...(spec.free && { lines: listOf(text) }),
          notCounted: beside,
          notUnderstood: listOf(text),
        },
        [...(spec.name !== "none" ? ["name"] : []), "values"],
      ),
    };
    return ref(name);
  }

  private part(kind: string, spec: BlockSpec, parent: string): JsonSchema {
    if (spec.once && spec.steps) return { description: sentence(spec.help), ...listOf(ref("step")) };
    const block = this.block(kind, spec, parent);
    return spec.once ? block : listOf(block);
  }

  private keys(keys: { readonly [key: string]: KeySpec }): JsonSchema {
    return closed(
      Object.fromEntries(Object.entries(keys).map(([key, k]) => [key, this.key(key, k)] as const)),
    );
  }

  private key(key: string, k: KeySpec): JsonSchema {
    const value = this.value(k);
    const more = [
      k.measure && `How to measure: ${sentence(k.measure)}`,
      plausibleInWords(k.shape) && `Usual: ${sentence(plausibleInWords(k.shape)!)}`,
    ].filter(Boolean);
    const needed = {
      required: "A full plan needs it; a draft may leave it out.",
      wanted: "It is asked for.",
    };
    return {
      title: key,
      description: [sentence(k.help), ...more].join(" "),
      ...(k.need && { $comment: needed[k.need] }),
      ...(k.many ? { anyOf: [{ ...listOf(value), minItems: 1 }, ref("unknown")] } : value),
    };
  }

  private value(k: KeySpec): JsonSchema {
    return k.shape.is === "mention"
      ? shapeSchema(k.shape)
      : { anyOf: [shapeSchema(k.shape), ref("unknown")] };
  }
}

const nameSchema = (spec: BlockSpec): JsonSchema =>
  typeof spec.name === "object" ? { description: sentence(nameOf(spec.name.of)), type: "string" } : text;

function quantity(dimension: Dimension): JsonSchema {
  const { unit } = siUnits[dimension];
  return {
    title: dimensionWords[dimension],
    description: "Without a tolerance or a range the three numbers are one.",
    ...closed(
      {
        low: { type: "number" },
        nominal: { type: "number" },
        high: { type: "number" },
        unit: { const: unit },
        known: { enum: ["measured", "stated", "judged", "estimated"] },
        by: { description: "The role of whoever measured or judged it.", type: "string" },
        on: { description: "The day.", ...date },
        range: {
          description: "adjusts: any value of the range can be chosen; about: the true one lies in it.",
          enum: ["adjusts", "about"],
        },
        tolerance: { description: "Whether a tolerance or a range was written.", type: "boolean" },
        as: { description: "As it was written.", type: "string" },
      },
      ["low", "nominal", "high", "unit", "known", "tolerance", "as"],
    ),
  };
}

function step(): JsonSchema {
  const verbs = (sided: boolean): string[] =>
    stepPhrases.filter((p) => (p.side === true) === sided).map((p) => p.verb);
  const base = { object: { description: "The name of the surface.", type: "string" }, text };
  const side = { description: "The client's own.", enum: ["left", "right"] };
  return {
    title: "step",
    description: "One step, or a line among the steps that was not understood.",
    anyOf: [
      closed({ verb: { enum: verbs(true) }, side, ...base }, ["verb", "side", "text"]),
      closed({ verb: { enum: verbs(false) }, ...base }, ["verb", "text"]),
      closed({ unknown: { const: true }, text }, ["unknown", "text"]),
    ],
  };
}

/** A line of `may change`. Its value has the form of the key that it names. */
const change: JsonSchema = {
  anyOf: [
    closed(
      {
        is: { const: "value" },
        thing: text,
        block: { description: "The block inside the thing in which the key stands.", type: "string" },
        key: text,
        value: { description: "What it may be: of a quantity, the range." },
        words: text,
      },
      ["is", "thing", "key", "value"],
    ),
    closed({ is: { const: "instead" }, thing: text, of: text, words: text }, ["is", "thing", "of"]),
    closed({ is: { enum: ["moved", "removed"] }, thing: text, words: text }, ["is", "thing"]),
  ],
};

/** The schema of one value that is known. */
function shapeSchema(shape: Shape): JsonSchema {
  switch (shape.is) {
    case "quantity":
      return ref(shape.dimension);
    case "choice":
      return { enum: shape.choices };
    case "flag":
      return { type: "boolean" };
    case "text":
      return text;
    case "code":
      return shape.whole ? { type: "string", pattern: "^\\d+$" } : text;
    case "name":
      return { type: "string", description: sentence(shapeInWords(shape)) };
    case "date":
      return date;
    case "time":
      return { type: "string", pattern: "^([01]\\d|2[0-3]):[0-5]\\d$" };
    case "pair":
      return closed({ first: ref(shape.dimension), second: ref(shape.dimension) }, [
        "first",
        ...(shape.second === "required" ? ["second"] : []),
      ]);
    case "list":
      return { ...listOf(shapeSchema(shape.item)), minItems: 1 };
    case "either":
      return { anyOf: shape.shapes.map(shapeSchema) };
    case "parts":
      return closed(
        Object.fromEntries(shape.parts.map((p: Part) => [p.name, shapeSchema(p.shape)] as const)),
        shape.parts.filter((p) => !p.optional).map((p) => p.name),
      );
    case "mention":
      return { const: true };
  }
}
