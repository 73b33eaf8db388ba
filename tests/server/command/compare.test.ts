/** `spanwise compare`: two rule sets as texts and by what they say of plans. And `spanwise lock`. */
import { readFileSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { folderOf } from "../workspace/folder.js";
import { planUnder, policyOf, rulesFolder } from "../workspace/small-sets.js";
import { bundle, run } from "./program.js";

beforeAll(async () => void (await bundle()), 60_000);

const flat = (text: string): string => text.replaceAll(/\s+/g, " ");
const on = ["--on", "2026-03-02"];
const up = planUnder("");
const down = up.replace("rails left", "rails none");
const folder = (files: Record<string, string>): string =>
  folderOf({ ...rulesFolder, ".git/HEAD": "", ...files });

describe("compare", () => {
  it("says what changed, with the reason of the newer set", async () => {
    const done = await run(["compare", "trial/1", "trial/2"], folder({}));
    expect(done).toMatchObject({ code: 0, err: "" });
    expect(flat(done.out)).toContain(
      "Rules changed bed/rails: Rails up reason A rail between two seats stops every slide was if not: caution: Rails of {surface} are up is if not: stop: Rails of {surface} are up",
    );
  });
  it("says which plans get other verdicts, rule by rule, and ends with 1 if any does", async () => {
    const cwd = folder({ "a.span": up, "b.span": down });
    const done = await run(["compare", "trial/1", "trial/2", ".", ...on], cwd);
    expect(done.code).toBe(1);
    expect(flat(done.out)).toContain(
      "1 of 2 plans gets other verdicts, or cannot be judged by both. a.span verdict bed/rails, into-bed: caution, then stop.",
    );
    expect(done.out).not.toContain("b.span");
    expect((await run(["compare", "trial/1", "trial/2", "b.span", ...on], cwd)).code).toBe(0);
  });
  it("whichever version the plan names", async () => {
    const done = await run(
      ["compare", "trial/1", "trial/2", "home.span", ...on],
      folder({ "home.span": planUnder("", "2") }),
    );
    expect(flat(done.out)).toContain("bed/rails, into-bed: caution, then stop.");
  });
  it("says which transfers are cleared by one only, and which expected verdicts are no longer met", async () => {
    const text = `${up}trial into-bed on 2026-03-01 { by "therapist"; outcome done }
accept bed/rails at into-bed until 2026-03-16 because "Let down before each transfer"\n`;
    const done = await run(
      ["compare", "trial/1", "trial/2", "home.span", ...on],
      folder({ "home.span": text }),
    );
    expect(flat(done.out)).toContain("into-bed: cleared, then not cleared.");
    expect(flat(done.out)).toContain("new bed/rails says stop. To accept it, somebody must answer for it");
  });
  it("a plan that one of the two cannot judge counts as one that differs, with the reason", async () => {
    const plan = planUnder('with "policy.spanrules"');
    const cwd = folder({
      "home.span": plan,
      "policy.spanrules": policyOf("rule chair/brakes { level caution to stop }"),
    });
    const done = await run(["compare", "trial/1", "trial/2", "home.span", ...on], cwd);
    expect(done.code).toBe(1);
    expect(flat(done.out)).toMatch(/It cannot be judged by both\. trial 2: .*not for trial 2/);
  });
  it("gives the same for programs", async () => {
    const cwd = folder({ "a.span": up, "b.span": down });
    const done = await run(["compare", "trial/1", "trial/2", ".", "--as", "json", ...on], cwd);
    expect(done.code).toBe(1);
    expect(JSON.parse(done.out)).toMatchObject({
      format: 1,
      before: { name: "trial", version: "1" },
      after: { name: "trial", version: "2" },
      changes: [
        {
          what: "rule",
          name: "bed/rails",
          is: "changed",
          reasons: ["A rail between two seats stops every slide"],
        },
      ],
      plans: [
        {
          path: "a.span",
          same: false,
          verdicts: [
            {
              rule: "bed/rails",
              subject: "into-bed",
              before: { verdict: "fails", levels: { worst: "caution" } },
              after: { levels: { worst: "stop" } },
            },
          ],
        },
        { path: "b.span", same: true, verdicts: [], transfers: [] },
      ],
    });
  });
  it.each([
    [
      "a set that there is not",
      ["trial/1", "trial/9"],
      /There is no rule set "trial\/9"\. There is: .*trial\/1, trial\/2/,
    ],
    ["a path that there is not", ["trial/1", "trial/2", "nowhere"], /There is no file or folder "nowhere"/],
    ["a folder without plans", ["trial/1", "trial/2", "rules"], /There is no plan/],
  ])("%s: ends with 2", async (_, args, says) => {
    const done = await run(["compare", ...args], folder({}));
    expect(done.code).toBe(2);
    expect(flat(done.err)).toMatch(says);
  });
});

describe("lock", () => {
  const set = "rules/trial/1/set.spanrules";
  it("writes down what is released; a change of it ends with 1, and the lock stays", async () => {
    const cwd = folder({});
    expect(await run(["lock", "trial/1"], cwd)).toMatchObject({ code: 0 });
    const lock = readFileSync(path.join(cwd, "rules/released.lock.json"), "utf8");
    expect(Object.keys((JSON.parse(lock) as { released: object }).released)).toEqual(["trial/1"]);
    writeFileSync(path.join(cwd, set), `${rulesFolder[set]}# a word more\n`);
    const changed = await run(["lock", "--dry"], cwd);
    expect(changed.code).toBe(1);
    expect(changed.out).toMatch(/^changed {4}trial\/1 {2}[0-9a-f]{64}\nopen {7}trial\/2/);
    expect(flat(changed.err)).toContain("make the change in a new version");
    expect((await run(["lock", "trial/1"], cwd)).code).toBe(1);
    expect(readFileSync(path.join(cwd, "rules/released.lock.json"), "utf8")).toBe(lock);
    expect((await run(["lock", "trial/1", "--again"], cwd)).code).toBe(0);
    expect(readFileSync(path.join(cwd, "rules/released.lock.json"), "utf8")).not.toBe(lock);
  });
  it("a released set that is gone is missed", async () => {
    const cwd = folder({});
    await run(["lock"], cwd);
    rmSync(path.join(cwd, "rules/trial/1"), { recursive: true });
    const done = await run(["lock", "--dry"], cwd);
    expect(done).toMatchObject({ code: 1 });
    expect(done.out).toMatch(/^gone {7}trial\/1/);
  });
  it("where there is nothing to lock, or the lock cannot be read: ends with 2", async () => {
    expect((await run(["lock"], folderOf({ ".git/HEAD": "" }))).code).toBe(2);
    const done = await run(["lock"], folder({ "rules/released.lock.json": "{" }));
    expect(done.code).toBe(2);
    expect(done.err).toContain("it is no JSON");
  });
});
