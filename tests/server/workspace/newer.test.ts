/** A newer version of the rule set that a plan names: found when nobody types, with what it would change and the line that takes it. */
import path from "node:path";
import { describe, expect, it } from "vitest";
import { Workspace } from "../../../server/workspace/snapshot.js";
import { folderOf } from "./folder.js";
import { planUnder, policyOf, rulesFolder } from "./small-sets.js";

const rule = "form/rule-set-newer";
function opened(text: string, files: Record<string, string> = rulesFolder) {
  const root = folderOf(files);
  const workspace = new Workspace({ roots: [root], today: () => "2026-03-02", haste: true });
  const file = path.join(root, "home.span");
  workspace.open(file, text);
  const found = () => workspace.snapshot(file).reported.filter((r) => r.rule === rule);
  return { workspace, file, found };
}

describe("a plan that names the older of two versions", () => {
  it("is told nothing while somebody types; then how many judgements would be others, and the gravest", () => {
    const { workspace, file, found } = opened(planUnder(""));
    workspace.snapshot(file);
    expect(found()).toEqual([]);
    workspace.settle(file);
    expect(found().map((r) => `${r.level} line ${r.range.start.line + 1} ${r.message}`)).toEqual([
      "advice line 2 There is a newer rule set, trial 2; this plan names trial 1. For this plan 1 judgement would be another; the gravest is stop: bed/rails at into-bed.",
    ]);
  });
  it("is told so where it would change nothing", () => {
    const { workspace, file, found } = opened(planUnder("").replace("rails left", "rails none"));
    workspace.settle(file);
    expect(found()[0]!.message).toContain("It would change nothing for this plan.");
  });
  it("gets the newer version written by the fix, and is then told nothing more", () => {
    const text = planUnder("");
    const { workspace, file, found } = opened(text);
    workspace.settle(file);
    const [fix, ...more] = found()[0]!.problem!.fixes!;
    expect([fix!.title, more]).toEqual(["Write rules trial 2", []]);
    const lines = text.split("\n");
    lines[1] = lines[1]!.slice(0, fix!.start) + fix!.text + lines[1]!.slice(fix!.end);
    expect(lines[1]).toBe("rules trial 2 ");
    workspace.edit(file, lines.join("\n"));
    expect(found()).toEqual([]);
    workspace.settle(file);
    expect(found()).toEqual([]);
  });
  it("keeps what it was told while somebody types on, at the line as it moves; it is looked at again afterwards", () => {
    const { workspace, file, found } = opened(planUnder(""));
    workspace.settle(file);
    workspace.edit(file, `# a line above\n${planUnder("").replace("rails left", "rails none")}`);
    expect(found().map((r) => r.range.start.line)).toEqual([2]);
    expect(found()[0]!.message).toContain("1 judgement");
    workspace.settle(file);
    expect(found()[0]!.message).toContain("It would change nothing");
  });
  it("is not judged again by the newer version while nothing changes", () => {
    const { workspace, file } = opened(planUnder(""));
    const first = workspace.settle(file);
    expect(workspace.settle(file)).toBe(first);
    expect(workspace.snapshot(file)).toBe(first);
  });
  it("under a policy that is not for the newer version: says so, and offers no fix", () => {
    const { workspace, file, found } = opened(planUnder('with "policy.spanrules"'), {
      ...rulesFolder,
      "policy.spanrules": policyOf("rule chair/brakes { level caution to stop }"),
    });
    workspace.settle(file);
    expect(found()[0]!.message).toMatch(/cannot be judged by it yet: .*not for trial 2/);
    expect(found()[0]!.problem!.fixes).toBeUndefined();
  });
});

it("a plan that names the newest version, or none, is told nothing", () => {
  for (const text of [planUnder("", "2"), planUnder("").replace(/rules .*\n/, "")]) {
    const { workspace, file, found } = opened(text);
    workspace.settle(file);
    expect(found()).toEqual([]);
  }
});

it("what is settled is otherwise what a check that waits for everything gives", () => {
  const { workspace, file } = opened(planUnder(""));
  const settled = workspace.settle(file).reported.filter((r) => r.rule !== rule);
  const patient = new Workspace({ roots: [path.dirname(file)], today: () => "2026-03-02" });
  patient.open(file, planUnder(""));
  const of = (all: typeof settled): string[] => all.map((r) => `${r.rule} ${r.subject} ${r.message}`);
  expect(of(settled)).toEqual(of([...patient.snapshot(file).reported]));
});
