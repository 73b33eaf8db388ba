/** The commands beside `check`: reasons, rule sets, layout. */
import { readFileSync, statSync } from "node:fs";
import path from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { folderOf } from "../workspace/folder.js";
import { bundle, root, run } from "./program.js";

beforeAll(async () => void (await bundle()), 60_000);

const sample = "samples/first-week/home.span";
const flat = (text: string): string => text.replaceAll(/\s+/g, " ");

describe("reason", () => {
  const cases: readonly [name: string, says: readonly RegExp[]][] = [
    [
      "height/rise",
      [
        /up more than 2 in: stop/,
        /at most up 1 in: holds/,
        /transfer-setup-2, Table 9/,
        /2026\.2\/height\.spanrules, line \d+/,
      ],
    ],
    ["firm-bearing", [/value 3 in/, /Common practice, without a source/, /used by board\/could-bear-more/]],
    ["sink-edge-firm", [/A default/, /A tape can measure it at home/]],
    ["toro-2013", [/A study\./, /cited by chair\/armrest-in-the-way/]],
    ["height.rise", [/formula/, /judged by .*height\/rise/]],
    ["Height/Rise", [/How far the body has to climb/]],
  ];
  it.each(cases)("%s", async (name, says) => {
    const done = await run(["reason", name]);
    expect(done).toMatchObject({ code: 0, err: "" });
    for (const s of says) expect(flat(done.out)).toMatch(s);
  });

  it("with a plan: the verdict of each direction and the arithmetic behind it", async () => {
    const done = await run(["reason", "height/rise", sample, "--on", "2026-03-02"]);
    expect(done.code).toBe(0);
    const own = flat(done.out.slice(done.out.indexOf("On samples/")));
    expect(own).toMatch(/into-bed Stop\./);
    expect(own).toMatch(/out-of-bed Caution\./);
    expect(own).toMatch(/into-bed height\.rise = 3 1\/2 in \(3 to 4 in\)/);
    expect(own).toMatch(/out-of-bed height\.rise = -3 1\/2 in/);
  });

  it("with a plan: a limit is shown by the rules that use it", async () => {
    const done = await run(["reason", "firm-bearing", sample, "--on", "2026-03-02"]);
    expect(flat(done.out)).toMatch(/into-bed board\/little-bearing-landing: /);
  });

  it("with a plan that cannot be judged: says so", async () => {
    const folder = folderOf({ "home.span": "\0" });
    const done = await run(["reason", "height/rise", "home.span"], folder);
    expect(done.out).toMatch(/No rule was applied to this plan/);
  });
});

describe("rules", () => {
  it("every released rule set may be used", async () => {
    const done = await run(["rules"], folderOf({}));
    expect(done.code).toBe(0);
    expect(done.out).toMatch(/\d\d+ rules, \d{3,} examples/);
    expect(done.out).toMatch(/It may be used/);
  });

  it("an example that does not give what it says is reported at its line", async () => {
    const text = readFileSync(path.join(root, "rules/home-transfer/2026.1/height.spanrules"), "utf8");
    const line = text.split("\n").findIndex((l) => /^\s+up 1 1\/8 in: caution/.test(l));
    expect(line).toBeGreaterThan(0);
    const folder = folderOf({
      "rules/own/1/set.spanrules":
        'ruleset own 1 {\n  title "Own"\n  issued 2026-01-01\n  caution "Try it."\n}\n',
      "rules/own/1/height.spanrules": text.replace(/(\s+up 1 1\/8 in: )caution/, "$1stop"),
    });
    const done = await run(["rules", "own"], folder);
    expect(done.code).toBe(1);
    expect(done.out).toMatch(/It is refused, whole/);
    expect(flat(done.out)).toContain(`line ${line + 1} This example gives caution`);
  });
});

describe("format", () => {
  const untidy = 'setup     "A"\nbed bed {\n     top   23 in\n}\n';

  it("writes only files whose text changes, and a second time none", async () => {
    const folder = folderOf({ "a.span": untidy, "b.span": 'setup "B"\n' });
    const before = statSync(path.join(folder, "b.span")).mtimeMs;
    const first = await run(["format"], folder);
    expect(first).toMatchObject({ code: 0, out: "changed  a.span\n" });
    expect(readFileSync(path.join(folder, "a.span"), "utf8")).toMatch(/^setup "A"\n/);
    expect(statSync(path.join(folder, "b.span")).mtimeMs).toBe(before);
    expect(await run(["format"], folder)).toMatchObject({ code: 0, out: "" });
  });

  it("--dry lists what would change, writes nothing and ends with 1", async () => {
    const folder = folderOf({ "a.span": untidy });
    expect(await run(["format", "--dry"], folder)).toMatchObject({ code: 1, out: "would change  a.span\n" });
    expect(readFileSync(path.join(folder, "a.span"), "utf8")).toBe(untidy);
  });

  it("leaves what is no text as it is", async () => {
    const folder = folderOf({ "a.span": "\0\0" });
    const done = await run(["format"], folder);
    expect(done.code).toBe(2);
    expect(readFileSync(path.join(folder, "a.span"), "utf8")).toBe("\0\0");
  });
});
