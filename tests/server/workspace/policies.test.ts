/** The policy that a plan names, the one that it should name, and what is said where it cannot be used. */
import { writeFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { policyOf, planUnder, rulesFolder } from "./small-sets.js";
import { Workspace } from "../../../server/workspace/snapshot.js";
import { folderOf } from "./folder.js";

const day = "2026-03-02";
function folder(files: Record<string, string>, today = day) {
  const root = folderOf({ ...rulesFolder, ...files });
  const workspace = new Workspace({ roots: [root], today: () => today });
  const at = (name: string): string => path.join(root, name);
  const take = (name = "homes/home.span") => workspace.snapshot(at(name));
  return { root, workspace, at, take };
}
const shown = (s: ReturnType<ReturnType<typeof folder>["take"]>): string[] =>
  s.reported
    .filter((r) => r.problem && r.rule !== "form/key-missing")
    .map((r) => `${r.level} line ${r.range.start.line + 1} ${r.rule}`);

const named = planUnder('with "../policy.spanrules"');
const stricter = policyOf("rule bed/rails { level caution to stop }");

describe("a plan that names a policy", () => {
  it("is judged by the rules as they stand under it, and says so", () => {
    const { take } = folder({ "homes/home.span": named, "policy.spanrules": stricter });
    const s = take();
    expect(shown(s)).toEqual([]);
    expect(s.ruleSet!.policy).toMatchObject({ name: "clinic", path: "policy.spanrules" });
    expect(s.ruleSet!.policy!.hash).toMatch(/^[0-9a-f]{64}$/);
    expect(s.result!.verdicts.find((v) => v.rule === "bed/rails")!.levels.worst).toBe("stop");
  });
  it.each([
    ["is not there", {}, named, /there is no such file/],
    [
      "lies outside the folder of plans",
      {},
      planUnder('with "../../policy.spanrules"'),
      /outside this folder/,
    ],
    ["is called by an absolute path", {}, planUnder('with "/etc/policy.spanrules"'), /outside this folder/],
    [
      "is no file of rules",
      { "policy.txt": stricter },
      planUnder('with "../policy.txt"'),
      /ends in \.spanrules/,
    ],
    ["is no text", { "policy.spanrules": "\0" }, named, /null bytes/],
    ["is no policy", { "policy.spanrules": "rule a/b { }" }, named, /no head/],
    [
      "asks for less without a reason",
      { "policy.spanrules": policyOf("rule bed/rails { off }") },
      named,
      /asks for less.*Add why/,
    ],
    [
      "is for another version",
      { "policy.spanrules": stricter.replace("trial 1", "trial 2") },
      named,
      /not for trial 1/,
    ],
    [
      "has ended",
      {
        "policy.spanrules": policyOf(
          'rule bed/rails { off; because "b"; approved-by "lead"; until 2026-03-01 }',
        ),
      },
      named,
      /ended on 2026-03-01/,
    ],
  ] as const)(
    "that %s: one finding at its line, no rule is applied and nothing is cleared",
    (_, files, plan, why) => {
      const s = folder({ "homes/home.span": plan, ...files }).take();
      expect(shown(s)).toEqual([expect.stringMatching(/^caution line 2 form\/policy-(missing|refused)$/)]);
      expect(s.reported.find((r) => r.problem)!.message).toMatch(why);
      expect(s.result).toBeUndefined();
    },
  );
  it("is judged anew when the policy changes, on disk or in an editor, and is the same snapshot while it does not", () => {
    const { take, workspace, at } = folder({ "homes/home.span": named, "policy.spanrules": stricter });
    const first = take();
    expect(take()).toBe(first);
    const worst = (): string | undefined =>
      take().result?.verdicts.find((v) => v.rule === "bed/rails")?.levels.worst;
    workspace.edit(at("policy.spanrules"), policyOf("rule bed/rails { level caution to"));
    expect(worst()).toBeUndefined();
    workspace.close(at("policy.spanrules"));
    expect(worst()).toBe("stop");
    writeFileSync(at("policy.spanrules"), policyOf("rule chair/brakes { level caution to stop }"));
    workspace.changed();
    expect(worst()).toBe("caution");
  });
  it("a policy in force today may have ended tomorrow", () => {
    let today = "2026-03-01";
    const text = policyOf('rule bed/rails { off; because "b"; approved-by "lead"; until 2026-03-01 }');
    const root = folderOf({ ...rulesFolder, "homes/home.span": named, "policy.spanrules": text });
    const workspace = new Workspace({ roots: [root], today: () => today });
    expect(workspace.snapshot(path.join(root, "homes/home.span")).result).toBeDefined();
    today = "2026-03-02";
    expect(workspace.snapshot(path.join(root, "homes/home.span")).result).toBeUndefined();
  });
});

describe("a folder of plans with a policy", () => {
  it("a plan that does not name it is told so, and the fix names it", () => {
    const plan = planUnder("");
    const { take, workspace, at } = folder({ "homes/home.span": plan, "policy.spanrules": stricter });
    const s = take();
    expect(shown(s)).toEqual(["caution line 2 form/policy-not-named"]);
    const [fix] = s.reported.find((r) => r.problem)!.problem!.fixes!;
    const lines = plan.split("\n");
    lines[1] = lines[1]!.slice(0, fix!.start) + fix!.text + lines[1]!.slice(fix!.end);
    workspace.edit(at("homes/home.span"), lines.join("\n"));
    expect(shown(take())).toEqual([]);
    expect(take().ruleSet!.policy).toBeDefined();
  });
  it("is noticed when it comes, and when it goes", () => {
    const { take, workspace, at } = folder({ "homes/home.span": planUnder("") });
    expect(shown(take())).toEqual([]);
    writeFileSync(at("policy.spanrules"), stricter);
    workspace.changed();
    expect(shown(take())).toEqual(["caution line 2 form/policy-not-named"]);
  });
});

it("a policy file by itself: what is wrong with it, and the rules as they stand under it", () => {
  const { workspace, at, root } = folder({});
  expect(workspace.policyAt(at("policy.spanrules"), stricter, root).problems).toEqual([]);
  const wrong = workspace.policyAt(at("policy.spanrules"), policyOf("rule bed/nails { off }"), root);
  expect(wrong.problems.map((p) => `${p.line + 1} ${p.rule}`)).toEqual(["2 rules/unknown-name"]);
  const elsewhere = workspace.policyAt(at("policy.spanrules"), stricter.replace("trial 1", "trial 9"), root);
  expect(elsewhere.problems.map((p) => p.message)).toEqual([
    "There is no rule set trial 9 that can be used.",
  ]);
});
