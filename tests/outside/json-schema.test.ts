/** JSON Schema 2020-12: the schema made from the vocabulary, judged by an independent validator in its strict mode. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import type { Ajv2020 as Validator } from "ajv/dist/2020.js";
import { globSync } from "tinyglobby";
import { describe, expect, it } from "vitest";
import { exportHousehold } from "../../language/model/export.js";
import { householdOf, readSetup } from "../../language/model/household.js";
import { householdSchema } from "../../language/vocabulary/exports/json-schema.js";
import { household } from "../language/form.js";
import { everyKey } from "../language/vocabulary/exports/every-key.js";

const { Ajv2020 } = createRequire(import.meta.url)("ajv/dist/2020.js") as { Ajv2020: typeof Validator };
const samples = path.resolve(import.meta.dirname, "../../samples");
const schema = householdSchema();
const ajv = new Ajv2020({ strict: true, strictRequired: true });
const validate = ajv.compile(schema);
const errors = (x: unknown): string[] =>
  validate(x) ? [] : (validate.errors ?? []).map((e) => `${e.instancePath} ${e.message}`);

/** As a program gets it. */
const plain = (x: object): Json => JSON.parse(JSON.stringify(x)) as Json;
// eslint-disable-next-line @typescript-eslint/no-explicit-any
type Json = any;
const sample = (file: string): Json => {
  const tree = (f: string) => readSetup(readFileSync(path.join(samples, f), "utf8"));
  const open = (written: string, from: string) => {
    const at = path.posix.join(path.posix.dirname(from), written);
    return { path: at, tree: tree(at) };
  };
  return plain(exportHousehold(householdOf(file, tree(file), { open })));
};

describe("The schema of a household", () => {
  it("is itself valid against the published schema of 2020-12", () => {
    expect(schema["$schema"]).toBe("https://json-schema.org/draft/2020-12/schema");
    expect(ajv.validateSchema(schema)).toBe(true);
    expect(ajv.validateSchema({ ...schema, type: "house" })).toBe(false);
  });

  it.each(globSync("**/*.span", { cwd: samples }).sort())("takes the sample %s", (file) => {
    expect(errors(sample(file))).toEqual([]);
  });

  it("takes a plan in which much was not understood, and one that says nothing", () => {
    const untidy =
      'setup "A"\nbed bed { top 23; tpo 2; rails none; top-loaded unknown }\nbed bed { }\nwhat is this';
    expect(errors(plain(exportHousehold(household(untidy))))).toEqual([]);
    expect(errors(plain(exportHousehold(household(""))))).toEqual([]);
  });

  it("asks of no key that it is there: a draft is a plan", () => {
    expect(errors(plain(exportHousehold(household("client { }\nwheelchair w { }\nbed bed { }"))))).toEqual(
      [],
    );
    const client = (schema["$defs"] as Json)["block-client"].properties.values;
    expect(client.required).toBeUndefined();
    expect(client.properties.mass.$comment).toMatch(/full plan needs it/);
    expect(client.properties.mass.description).toMatch(/body mass/i);
  });
});

describe("It refuses what no plan can say", () => {
  const cases: readonly [what: string, change: (home: Json) => void][] = [
    ["a mass in metres", (h) => (h.things.client.client.values.mass.unit = "m")],
    ["a length in inches", (h) => (h.things.bed.bed.values.top.unit = "in")],
    ["a number for a quantity", (h) => (h.things.bed.bed.values.top = 0.58)],
    ["a text for a number", (h) => (h.things.bed.bed.values.top.low = "0.58")],
    ["a quantity without its lower end", (h) => delete h.things.bed.bed.values.top.low],
    ["a choice that there is not", (h) => (h.things.bed.bed.values.edge = "springy")],
    ["a word for yes or no", (h) => (h.things.client.client.values.cooperates = "yes")],
    ["a key that there is not", (h) => (h.things.bed.bed.values.colour = "white")],
    ["a kind that there is not", (h) => (h.things.sofa = {})],
    ["unknown that says no", (h) => (h.things.bed.bed.values.top = { unknown: false })],
    ["a step that there is not", (h) => (h.things.transfer["into-bed"].parts.steps[0].verb = "jump")],
    ["a step with a side that has none", (h) => (h.things.transfer["into-bed"].parts.steps[0].side = "left")],
    ["a side that there is not", (h) => (h.things.transfer["into-bed"].parts.steps[1].side = "middle")],
    ["a day in other words", (h) => (h.statements.visited = "2 March 2026")],
    ["a trial without its name", (h) => delete h.records.trial[0].name],
    [
      "one value for a key that may stand several times",
      (h) => (h.things.client.client.values.limit = "none"),
    ],
    ["another format", (h) => (h.format = 2)],
    ["a thing without values", (h) => delete h.things.bed.bed.values],
  ];
  it.each(cases)("%s", (_, change) => {
    const home = sample("first-week/home.span");
    expect(errors(home)).toEqual([]);
    change(home);
    expect(errors(home)).not.toEqual([]);
  });
});

describe("For every key of the vocabulary", () => {
  const keys = everyKey();

  it("an example that is read is taken, and a bare number in its place is not", () => {
    expect(keys.length).toBeGreaterThan(100);
    for (const { title, text, way, key } of keys) {
      const home = plain(exportHousehold(household(text)));
      expect(errors(home), `${title}: ${text}`).toEqual([]);
      const values = valuesAt(home, way);
      expect(values[key], title).toBeDefined();
      values[key] = 12_345;
      expect(errors(home), title).not.toEqual([]);
    }
  });
});

/** The values of the only block that the kinds lead to. */
function valuesAt(home: Json, way: readonly string[]): Json {
  const [top, ...inner] = way;
  if (top === undefined) return home.statements;
  let thing = home.records[top]?.[0] ?? (Object.values(home.things[top])[0] as Json);
  for (const kind of inner) {
    const part = thing.parts[kind];
    thing = Array.isArray(part) ? part[0] : part;
  }
  return thing.values;
}
