/** One household twice: as a setup of 300 lines, and as the same content in JSON with the JSON Schema of its vocabulary. */
import { readFileSync } from "node:fs";
import * as z from "zod/mini";
import { householdOf, readSetup, type Library } from "../../language/model/household.js";
import { schemaOfBlock } from "../../language/model/schema.js";
import type { Thing } from "../../language/model/types.js";
import { setupVocabulary } from "../../language/vocabulary/index.js";
import type { BlockSpec } from "../../language/vocabulary/types.js";

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

function asJson(thing: Thing): Json {
  const inner = Object.fromEntries(
    Object.entries(thing.inner).map(([kind, things]) => [kind, things!.map(asJson)]),
  );
  const steps = thing.steps?.map((s) => [s.step.verb, s.step.side, s.step.object].filter(Boolean).join(" "));
  return { name: thing.name, ...thing.values, ...inner, ...(steps && { steps }) };
}

/** The household as an object of lists by kind. */
export function jsonOf(setup: string): string {
  const home = householdOf("home.span", readSetup(setup), library);
  const byKind: { [kind: string]: Json[] } = {};
  for (const thing of home.all) (byKind[thing.kind] ??= []).push(asJson(thing));
  return JSON.stringify({ setup: home.title, visited: home.visited, ...byKind }, null, 2);
}

function schemaWithInner(spec: BlockSpec): Json {
  const own = z.toJSONSchema(schemaOfBlock(spec)) as Json & { properties: Json };
  const inner = Object.entries(spec.blocks ?? {}).map(([kind, b]) => [
    kind,
    b.steps
      ? {
          type: "array",
          items: {
            type: "object",
            properties: { name: { type: "string" }, steps: { type: "array", items: { type: "string" } } },
          },
        }
      : { type: "array", items: schemaWithInner(b) },
  ]);
  delete own["$schema"];
  return {
    ...own,
    properties: { name: { type: "string" }, ...own.properties, ...Object.fromEntries(inner) },
  };
}

/** JSON Schema of `jsonOf`'s result, made from the vocabulary. */
export function schemaOf(): Json {
  const kinds = Object.entries(setupVocabulary.blocks).map(([kind, spec]) => [
    kind,
    { type: "array", items: schemaWithInner(spec) },
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
