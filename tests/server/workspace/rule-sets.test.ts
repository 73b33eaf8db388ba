import { describe, expect, it } from "vitest";
import { byVersion, contentHash, RuleSets } from "../../../server/workspace/rule-sets.js";

describe("the content hash of a rule set", () => {
  const a = { path: "s/1/a.spanrules", text: "one\n" };
  const b = { path: "s/1/b.spanrules", text: "two\n" };
  const same: readonly [what: string, files: (typeof a)[]][] = [
    ["the files come in another order", [b, a]],
    ["the lines end as on another system", [{ ...a, text: "one\r\n" }, b]],
    ["the folder lies elsewhere", [{ ...a, path: "elsewhere/a.spanrules" }, b]],
  ];
  it.each(same)("is the same when %s", (_, files) => expect(contentHash(files)).toBe(contentHash([a, b])));
  const other: readonly [what: string, files: (typeof a)[]][] = [
    ["a text changes", [{ ...a, text: "One\n" }, b]],
    ["a file is called otherwise", [{ ...a, path: "s/1/c.spanrules" }, b]],
    [
      "a text moves from one file to the other",
      [
        { ...a, text: "one\ntwo\n" },
        { ...b, text: "" },
      ],
    ],
  ];
  it.each(other)("is another when %s", (_, files) =>
    expect(contentHash(files)).not.toBe(contentHash([a, b])),
  );
});

it("every released rule set may be used: its examples give what they say", () => {
  const sets = new RuleSets();
  expect(sets.list().length).toBeGreaterThan(0);
  for (const { name, version } of sets.list()) expect(sets.get(name, version)?.problems).toEqual([]);
});

it("a name cannot lead out of the folder of rule sets", () => {
  expect(new RuleSets().get("..", "..", "/")).toBeUndefined();
});

it("2026.10 is newer than 2026.2", () =>
  expect(["2026.10", "2026.2"].sort(byVersion)).toEqual(["2026.2", "2026.10"]));
