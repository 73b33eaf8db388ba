/** The command that prints the rule book. */
import sets from "virtual:rule-sets";
import { beforeAll, describe, expect, it } from "vitest";
import { folderOf } from "../workspace/folder.js";
import { bundle, run } from "./program.js";

beforeAll(async () => void (await bundle()), 60_000);

const newest = sets.filter((s) => s.name === "home-transfer").at(-1)!.version;

describe("book", () => {
  it.each([
    [[], newest],
    [["home-transfer"], newest],
    [["home-transfer/2026.1"], "2026.1"],
  ])("%j prints one page of that set and nothing else: version %s", async (set, version) => {
    const done = await run(["book", ...set], folderOf({}));
    expect(done).toMatchObject({ code: 0, err: "" });
    expect(done.out).toMatch(/^<!DOCTYPE html>\n<html lang="en">/);
    expect(done.out).toMatch(/<\/html>\n$/);
    expect(done.out).toContain(`<code>home-transfer ${version}</code>`);
  });

  it("a set that does not exist: names those that do", async () => {
    const done = await run(["book", "house-transfer"], folderOf({}));
    expect(done).toMatchObject({ code: 2, out: "" });
    expect(done.err).toMatch(/There is no rule set "house-transfer".*home-transfer\/2026\.1/s);
  });

  it("a set that is refused: no book, and where to read why", async () => {
    const folder = folderOf({ "rules/trial/1/set.spanrules": 'ruleset trial 1 { title "T" }\nrule a { }\n' });
    const done = await run(["book", "trial/1"], folder);
    expect(done).toMatchObject({ code: 1, out: "" });
    expect(done.err.replaceAll(/\s+/g, " ")).toMatch(/trial 1 is refused.*spanwise rules trial\/1 says why/);
  });
});
