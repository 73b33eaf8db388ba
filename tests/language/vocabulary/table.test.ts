import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { checkThing } from "../../../language/model/schema.js";
import type { Thing } from "../../../language/model/types.js";
import { unitNamed } from "../../../language/quantity/units.js";
import { setupVocabulary, smallWords } from "../../../language/vocabulary/index.js";
import type { BlockSpec, KeySpec, Part, Shape } from "../../../language/vocabulary/types.js";
import { findings, fixed, household } from "../form.js";
import { bad, good, measurable, nameOf } from "./values.js";

interface Row {
  /** `wheelchair cushion thickness`. */
  readonly title: string;
  readonly key: string;
  readonly spec: KeySpec;
  /** The household with this statement in its place. */
  readonly around: (statement: string) => string;
  /** Where the value then stands. */
  readonly find: (thing: Thing) => Thing;
  readonly kind: string;
}

const kinds = Object.entries(setupVocabulary.blocks);
const headOf = (parts: readonly Part[] | undefined): string =>
  (parts ?? []).map((p) => ` ${p.lead ? `${p.lead} ` : ""}${good(p.shape)}`).join("");

/** The head of a block of this kind, under the name `own`. */
function head(kind: string, spec: BlockSpec): string {
  const word = kind === "may-change" ? "may change" : kind;
  const name =
    spec.name === "none" ? "" : typeof spec.name === "object" ? ` ${nameOf(spec.name.of)}` : " own";
  return `${word}${name}${headOf(spec.head)}`;
}

/** The things that a statement or a head names, declared one a line. */
const declared = (...shapes: readonly (Shape | undefined)[]): string[] =>
  [...new Set(shapes.flatMap(kindsIn))].map((kind) =>
    kind === "door"
      ? "room a-room { door a-door { clear 32 in } }"
      : `${kind} a-${kind}${kind === "way-back" ? " of a-transfer" : ""} { }`,
  );

function kindsIn(shape: Shape | undefined): readonly string[] {
  switch (shape?.is) {
    case "name":
      return [shape.of[0]!];
    case "list":
      return kindsIn(shape.item);
    case "either":
      return shape.shapes.flatMap(kindsIn);
    case "parts":
      return shape.parts.flatMap((p) => kindsIn(p.shape));
    default:
      return [];
  }
}
const nameShape = (spec: BlockSpec): Shape | undefined =>
  typeof spec.name === "object" ? { is: "name", of: spec.name.of } : undefined;
const headShape = (spec: BlockSpec): Shape | undefined => spec.head && { is: "parts", parts: spec.head };

function rowsOf(kind: string, spec: BlockSpec): Row[] {
  const own = Object.entries(spec.keys).map(([key, k]): Row => ({
    title: `${kind} ${key}`,
    key,
    spec: k,
    around: (s) =>
      [...declared(nameShape(spec), headShape(spec), k.shape), `${head(kind, spec)} { ${s} }`].join("\n"),
    find: (thing) => thing,
    kind,
  }));
  const inner = Object.entries(spec.blocks ?? {}).flatMap(([block, b]) =>
    Object.entries(b.keys).map(([key, k]): Row => ({
      title: `${kind} ${block} ${key}`,
      key,
      spec: k,
      around: (s) =>
        [
          ...declared(nameShape(spec), headShape(spec), nameShape(b), k.shape),
          `${head(kind, spec)} { ${block}${headName(b)} { ${s} } }`,
        ].join("\n"),
      find: (thing) => thing.inner[block]![0]!,
      kind,
    })),
  );
  return [...own, ...inner];
}
const headName = (b: BlockSpec): string =>
  b.name === "none" ? "" : typeof b.name === "object" ? ` ${nameOf(b.name.of)}` : " own";

const rows = kinds.flatMap(([kind, spec]) => rowsOf(kind, spec));
const statements = Object.entries(setupVocabulary.keys).filter(([key]) => key !== "from");

/** Findings of form but for keys that are absent: each block here holds one key. */
const absent = ["form/key-missing", "form/measure-both"];
const problems = (text: string): readonly string[] =>
  household(text)
    .problems.filter((p) => !absent.includes(p.rule))
    .map((p) => `${p.rule} ${p.line}:${p.start} ${p.message}`);

describe("Every key takes what it is made for", () => {
  it.each(rows)("$title", ({ key, spec, around, find, kind }) => {
    const text = around(`${key} ${good(spec.shape)}`);
    expect(problems(text), text.split("\n").at(-1)).toEqual([]);
    const things = household(text).all.filter((t) => t.kind === kind);
    expect(find(things.at(-1)!).values[key]).toBeDefined();
  });
  it.each(statements)("%s, alone at the top", (key, spec) => {
    expect(problems(`${key} ${good(spec.shape)}`)).toEqual([]);
  });
  it.each(rows.filter((r) => r.spec.shape.is !== "mention"))("$title, left open in so many words", (row) => {
    expect(problems(row.around(`${row.key} unknown`))).toEqual([]);
  });
});

describe("The second check of the model, made from the same table", () => {
  it.each(rows)("$title: refuses what no reader would give", ({ key, spec, around, find, kind }) => {
    const things = household(around(`${key} ${good(spec.shape)}`)).all.filter((t) => t.kind === kind);
    const thing = find(things.at(-1)!);
    expect(checkThing(thing)).toEqual([]);
    const wrong = { ...thing, values: { ...thing.values, [key]: 42 as never } };
    expect(checkThing(wrong)).not.toEqual([]);
  });
});

describe("Every key says what is wrong with another value, at its place", () => {
  const wrong = rows.flatMap((row) => bad(row.spec.shape).map((b) => ({ ...row, ...b })));
  it("has something to say of each", () => {
    const without = rows.filter((r) => bad(r.spec.shape).length === 0).map((r) => r.title);
    expect(without).toEqual([]);
  });
  it.each(wrong)("$title: $text", ({ key, text, around, rule }) => {
    findings(around(`${key} ${text}`), { a: rule });
  });
  it.each(wrong.filter((w) => w.mended))("$title: $text, and its quick fix mends it", (row) => {
    const text = row.around(`${row.key} ${row.text.replace(/⟦([^⟧]*)⟧a/, "$1")}`);
    expect(problems(fixed(text, row.rule, /./))).toEqual([]);
  });
  it.each(rows.filter((r) => r.spec.shape.is !== "mention"))("$title: nothing at all", (row) => {
    const text = row.around(row.key);
    const found = household(text).problems.filter((p) => !absent.includes(p.rule));
    expect(found.map((p) => p.rule)).toEqual(["form/value-missing"]);
    expect(problems(fixed(text, "form/value-missing", /unknown/))).toEqual([]);
  });
  it.each(rows)("$title, misspelt: the nearest word is offered", ({ key, spec, around }) => {
    const typed = `${key}q`;
    const text = around(`${typed} ${good(spec.shape)}`);
    const found = household(text).problems.find((p) => p.rule === "form/unknown-word")!;
    expect(found.message).toContain(`"${typed}"`);
    if (key.length > 2) expect(found.fixes?.length).toBe(1);
  });
});

describe("The table itself", () => {
  const all = [...rows.map((r) => [r.title, r.spec] as const), ...statements];
  it.each(all)("%s has one line of help", (_title, spec) => {
    expect(spec.help).toMatch(/^[a-z][^\n]{3,140}[^.\s]$/);
  });
  it.each(all.filter(([, spec]) => measurable(spec.shape)))("%s tells how it is measured", (_title, spec) => {
    expect(spec.measure ?? "").toMatch(/^[a-z0-9][^\n]{3,140}$/);
  });
  it("names kinds and keys in small letters and hyphens, and no kind after a unit or a small word", () => {
    for (const [kind, spec] of kinds) {
      for (const word of [kind, ...Object.keys(spec.keys), ...Object.keys(spec.blocks ?? {})])
        expect(word).toMatch(/^[a-z]+(?:-[a-z]+)*$/);
      expect(smallWords.has(kind) || unitNamed(kind) !== undefined, kind).toBe(false);
    }
  });
  it("lets no other spelling of a key be a key of the same block, or of two keys", () => {
    for (const [kind, spec] of kinds) {
      const also = Object.values(spec.keys).flatMap((k) => k.also ?? []);
      expect(new Set(also).size, kind).toBe(also.length);
      for (const word of also) expect(Object.hasOwn(spec.keys, word), `${kind} ${word}`).toBe(false);
    }
  });
  it("speaks only of kinds that exist", () => {
    const known = new Set([...kinds.map(([kind]) => kind), "door"]);
    const named = JSON.stringify(setupVocabulary).matchAll(/"(?:of)":\[("[^\]]*")\]/g);
    for (const [, list] of named) for (const kind of JSON.parse(`[${list}]`)) expect(known).toContain(kind);
  });
  it("names a default only where the released rule set has one", () => {
    const folder = new URL("../../../rules/home-transfer/2026.1/", import.meta.url);
    const text = readdirSync(folder)
      .map((file) => readFileSync(new URL(file, folder), "utf8"))
      .join("\n");
    const names = [...text.matchAll(/^default ([a-z0-9-]+)/gm)].map((m) => m[1]!);
    for (const [title, spec] of all) {
      if (spec.default === undefined) continue;
      const pattern = new RegExp(`^${spec.default.replace("*", "[a-z]+")}$`);
      expect(
        names.filter((n) => pattern.test(n)),
        title,
      ).not.toEqual([]);
    }
  });
});
