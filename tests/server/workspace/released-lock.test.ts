/** A released rule set does not change: its content is that of the lock. */
import path from "node:path";
import { describe, expect, it } from "vitest";
import { compareLock, lockFile, readLock, rulesIn } from "../../../server/workspace/released-lock.js";
import { RuleSets } from "../../../server/workspace/rule-sets.js";
import { folderOf } from "./folder.js";
import { rulesFolder } from "./small-sets.js";

const root = path.resolve(import.meta.dirname, "../../..");
const lock = readLock(root);
const released = "released" in lock ? lock.released : new Map<string, string>();
const now = rulesIn(root);

describe("the rule sets of this program", () => {
  it("have a lock that can be read", () => expect(lock).toHaveProperty("released"));

  it.each(compareLock(released, now).map((l) => [l.name, l] as const))(
    "%s has the content with which it was released (npm run lock, only before a release)",
    (_, line) => expect(line).toMatchObject({ is: "released" }),
  );

  it("the content in the lock is the one that every report names", () => {
    const sets = new RuleSets();
    for (const { name, version } of sets.list())
      expect(sets.get(name, version)!.hash).toBe(released.get(`${name}/${version}`));
  });
});

describe("a lock", () => {
  const files = { ...rulesFolder };
  it("tells what is released, what changed, what is gone and what is still open", () => {
    const folder = folderOf(files);
    const there = rulesIn(folder);
    expect([...there.keys()]).toEqual(["trial/1", "trial/2"]);
    const locked = new Map([
      ["trial/1", there.get("trial/1")!],
      ["trial/0", "0".repeat(64)],
    ]);
    expect(compareLock(locked, there).map((l) => `${l.name} ${l.is}`)).toEqual([
      "trial/0 gone",
      "trial/1 released",
      "trial/2 open",
    ]);
    const changed = rulesIn(
      folderOf({ ...files, "rules/trial/1/set.spanrules": `${files["rules/trial/1/set.spanrules"]} ` }),
    );
    expect(compareLock(locked, changed).find((l) => l.name === "trial/1")!.is).toBe("changed");
  });
  it.each([
    ["no JSON", "{", "it is no JSON"],
    ["another form", '{"format":2}', "it is no lock of this form"],
  ])("that is %s is not taken for an empty one", (_, text, problem) => {
    expect(readLock(folderOf({ [lockFile]: text }))).toEqual({ problem });
  });
  it("that is not there releases nothing", () =>
    expect(readLock(folderOf({}))).toEqual({ released: new Map() }));
});
