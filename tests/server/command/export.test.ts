/** `spanwise export`, called as a program calls it. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { folderOf } from "../workspace/folder.js";
import { bundle, root, run } from "./program.js";

beforeAll(async () => void (await bundle()), 60_000);

interface Exported {
  readonly format: number;
  readonly files: readonly {
    readonly path: string;
    readonly household: {
      readonly things: Readonly<Record<string, Readonly<Record<string, { readonly values: object }>>>>;
      readonly notUnderstood?: readonly string[];
    };
    readonly problems: readonly { readonly rule: string; readonly range: { readonly start: object } }[];
  }[];
}
const parse = (text: string): Exported => JSON.parse(text) as Exported;
const flat = (text: string): string => text.replaceAll(/\s+/g, " ");

describe("export schema and export vocabulary", () => {
  it("schema: the JSON Schema of a plan, the same bytes each time", async () => {
    const [first, second] = [await run(["export", "schema"]), await run(["export", "schema"], folderOf({}))];
    expect(first).toMatchObject({ code: 0, err: "" });
    expect(second.out).toBe(first.out);
    expect(JSON.parse(first.out)).toMatchObject({ $schema: "https://json-schema.org/draft/2020-12/schema" });
  });

  it("vocabulary: every kind, step and unit", async () => {
    const done = await run(["export", "vocabulary"]);
    expect(done).toMatchObject({ code: 0, err: "" });
    const table = JSON.parse(done.out) as {
      readonly kinds: Readonly<Record<string, { readonly keys: object }>>;
      readonly steps: readonly { readonly verb: string }[];
      readonly units: readonly { readonly symbol: string; readonly siFactor: number }[];
      readonly smallWords: readonly string[];
    };
    expect(table.kinds["bed"]?.keys).toHaveProperty("top-loaded");
    expect(table.steps.map((s) => s.verb)).toContain("place board");
    expect(table.units.find((u) => u.symbol === "in")?.siFactor).toBe(0.0254);
    expect(table.smallWords).toContain("none");
  });

  it("neither takes a plan: it would not change what is printed", async () => {
    const done = await run(["export", "schema", "samples"]);
    expect(done).toMatchObject({ code: 2, out: "" });
    expect(flat(done.err)).toMatch(/takes no paths/);
  });
});

describe("export model", () => {
  it("prints what a plan says in SI units, with what it takes from other files", async () => {
    const done = await run(["export", "model", "samples/first-week/home.span"]);
    expect(done).toMatchObject({ code: 0, err: "" });
    const [file] = parse(done.out).files;
    expect(file).toMatchObject({ path: "samples/first-week/home.span", problems: [] });
    expect(file!.household.things["bed"]!["bed"]!.values).toMatchObject({
      top: { low: 0.5842, nominal: 0.5842, high: 0.5842, unit: "m", as: "23 in" },
    });
    expect(file!.household.things["wheelchair"]!["chair-18"]).toMatchObject({ from: "../loan-pool.span" });
  });

  it("the same input gives the same bytes, and no path of this machine", async () => {
    const [first, second] = [
      await run(["export", "model", "samples"]),
      await run(["export", "model", "samples"]),
    ];
    expect(second.out).toBe(first.out);
    expect(first.out).not.toContain(root);
    expect(parse(first.out).files.map((f) => f.path)).toContain("samples/loan-pool.span");
  });

  it("a line that was not understood ends it with 1, and stands in it with its place", async () => {
    const folder = folderOf({ "a.span": 'setup "A"\nbed bed {\n  top 23\n  edge firm\n}\n' });
    const done = await run(["export", "model"], folder);
    expect(done).toMatchObject({ code: 1, err: "" });
    const [file] = parse(done.out).files;
    expect(file!.household.things["bed"]!["bed"]).toEqual({
      name: "bed",
      values: { edge: "firm" },
      notUnderstood: ["top 23"],
    });
    expect(file!.problems.find((p) => p.rule === "form/no-unit")?.range.start).toEqual({
      line: 2,
      character: 6,
    });
  });

  it("what a plan merely leaves out does not: a draft is a plan", async () => {
    const done = await run(["export", "model"], folderOf({ "a.span": "bed bed { top 23 in }\n" }));
    expect(done.code).toBe(0);
  });

  it("a file that is no text ends it with 2 and is named; the others are printed", async () => {
    const folder = folderOf({ "a.span": "\0", "b.span": 'setup "B"\n' });
    const done = await run(["export", "model", "a.span", "b.span"], folder);
    expect(done.code).toBe(2);
    expect(done.err).toMatch(/^a\.span: /);
    expect(parse(done.out).files.map((f) => f.path)).toEqual(["a.span", "b.span"]);
  });

  it("reads standard input for -, and finds what it uses from the folder of the call", async () => {
    const samples = path.join(root, "samples");
    const text = readFileSync(path.join(samples, "level-home/home.span"), "utf8");
    const done = await run(["export", "model", "-"], path.join(samples, "level-home"), text);
    expect(done).toMatchObject({ code: 0, err: "" });
    const [file] = parse(done.out).files;
    expect(file!.path).toBe("-");
    const asFile = await run(["export", "model", "samples/level-home/home.span"]);
    expect(file!.household).toEqual(parse(asFile.out).files[0]!.household);
  });

  it("standard input that is no text ends it with 2", async () => {
    const done = await run(["export", "model", "-"], folderOf({}), Uint8Array.of(0x62, 0xff, 0xfe));
    expect(done.code).toBe(2);
    expect(done.err).toMatch(/^-: /);
  });

  const wrong: readonly [what: string, args: readonly string[], says: RegExp][] = [
    ["a file that there is not", ["export", "model", "nowhere.span"], /no file or folder "nowhere\.span"/],
    ["a folder without plans", ["export", "model", "."], /no plan .* in "\."/],
    ["nothing named", ["export"], /what/],
    ["something else named", ["export", "everything"], /schema, model, vocabulary/],
  ];
  it.each(wrong)("%s: one sentence, and 2", async (_, args, says) => {
    const done = await run(args, folderOf({}));
    expect(done).toMatchObject({ code: 2, out: "" });
    expect(flat(done.err)).toMatch(says);
    expect(done.err).not.toMatch(/\bat .*:\d+:\d+/);
  });
});
