/** The workspace: what counts as the text of a plan, what it may use, and that what did not change is kept. */
import { readFileSync, rmSync, symlinkSync, utimesSync, writeFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { Workspace } from "../../../server/workspace/snapshot.js";
import { folderOf } from "./folder.js";

const today = (): string => "2026-03-02";
const root = path.resolve(import.meta.dirname, "../../..");
const head = 'setup "Invented"\nrules home-transfer 2026.1\n';
const pool = `${head}board board-30 {\n  length 30 in\n}\n`;
const uses = (file: string): string => `${head}from "${file}" use board-30\n`;

function workspaceOf(files: Readonly<Record<string, string | Uint8Array>>): {
  at: (name: string) => string;
  workspace: Workspace;
} {
  const folder = folderOf(files);
  return { at: (name) => path.join(folder, name), workspace: new Workspace({ roots: [folder], today }) };
}
const rulesOf = (workspace: Workspace, file: string): string[] =>
  workspace.snapshot(file).reported.map((r) => r.rule);

describe("which text counts", () => {
  it("what an editor holds, until it lets go; then what is on disk", () => {
    const { at, workspace } = workspaceOf({ "home.span": `${head}bed bed { top 23 }\n` });
    expect(rulesOf(workspace, at("home.span"))).toContain("form/no-unit");
    workspace.open(at("home.span"), head);
    expect(rulesOf(workspace, at("home.span"))).not.toContain("form/no-unit");
    workspace.close(at("home.span"));
    expect(rulesOf(workspace, at("home.span"))).toContain("form/no-unit");
  });

  it("a file that something else writes is read again", () => {
    const { at, workspace } = workspaceOf({ "home.span": `${head}bed bed { top 23 }\n` });
    workspace.snapshot(at("home.span"));
    writeFileSync(at("home.span"), `${head}bed bed { top 23 in }\n`);
    workspace.changed(at("home.span"));
    expect(rulesOf(workspace, at("home.span"))).not.toContain("form/no-unit");
  });

  it("a plan in the editor that was never saved is judged like any other", () => {
    const { at, workspace } = workspaceOf({});
    workspace.open(at("new.span"), `${head}bed bed { top 23 }\n`);
    expect(rulesOf(workspace, at("new.span"))).toContain("form/no-unit");
    workspace.close(at("new.span"));
    expect(rulesOf(workspace, at("new.span"))).toEqual(["form/file-not-found"]);
  });
});

describe("what a plan may use", () => {
  const cases: readonly [
    what: string,
    files: Record<string, string | Uint8Array>,
    from: string,
    rule: string | undefined,
  ][] = [
    ["a file beside it", { "pool.span": pool }, "pool.span", undefined],
    ["a file in another folder of the same plans", { "kit/pool.span": pool }, "kit/pool.span", undefined],
    ["a file that is not there", {}, "pool.span", "form/file-not-found"],
    ["a file above the folder of plans", {}, "../pool.span", "form/file-outside"],
    ["a file by its full path", {}, "/etc/passwd", "form/file-outside"],
    ["a file by a full path of another system", {}, "C:/pool.span", "form/file-outside"],
    ["a file that is no text", { "pool.span": "\0" }, "pool.span", "form/file-unreadable"],
    ["itself", {}, "home.span", "form/file-circular"],
    ["a file that uses it again", { "pool.span": uses("home.span") }, "pool.span", "form/file-circular"],
  ];
  it.each(cases)("%s", (_, files, from, rule) => {
    const { at, workspace } = workspaceOf({ ...files, "home.span": uses(from) });
    const found = workspace
      .snapshot(at("home.span"))
      .reported.map((r) => r.rule)
      .filter((r) => r.startsWith("form/file"));
    expect(found).toEqual(rule === undefined ? [] : [rule]);
  });

  it("not a file outside, by whatever link", () => {
    const folder = folderOf({ "plans/home.span": uses("pool.span"), "secret.span": pool });
    symlinkSync(path.join(folder, "secret.span"), path.join(folder, "plans/pool.span"));
    const workspace = new Workspace({ roots: [path.join(folder, "plans")], today });
    const snapshot = workspace.snapshot(path.join(folder, "plans/home.span"));
    expect(snapshot.reported.map((r) => r.rule)).toContain("form/file-outside");
    expect(snapshot.household.things.has("board-30")).toBe(false);
  });

  it("an edit of a used file is seen by those that use it, saved or not", () => {
    const { at, workspace } = workspaceOf({ "pool.span": pool, "home.span": uses("pool.span") });
    expect(rulesOf(workspace, at("home.span"))).not.toContain("form/nothing-called");
    workspace.open(at("pool.span"), pool.replace("board-30", "board-36"));
    expect(rulesOf(workspace, at("home.span"))).toContain("form/nothing-called");
    expect(workspace.usersOf(at("pool.span"))).toEqual([at("home.span")]);
  });

  it("a used file that appears, and one that goes", () => {
    const { at, workspace } = workspaceOf({ "home.span": uses("pool.span") });
    expect(rulesOf(workspace, at("home.span"))).toContain("form/file-not-found");
    writeFileSync(at("pool.span"), pool);
    workspace.changed(at("pool.span"));
    expect(rulesOf(workspace, at("home.span"))).not.toContain("form/file-not-found");
    rmSync(at("pool.span"));
    workspace.changed(at("pool.span"));
    expect(rulesOf(workspace, at("home.span"))).toContain("form/file-not-found");
  });
});

describe("the rule set of a plan", () => {
  it("is the one that it names; a missing one is named, with those that there are", () => {
    const { at, workspace } = workspaceOf({
      "home.span": 'setup "A"\nrules home-transfer 1999.1\nbed bed { top 23 }\n',
    });
    const { reported, result } = workspace.snapshot(at("home.span"));
    expect(result).toBeUndefined();
    const mistakes = reported.filter((r) => r.level !== "advice");
    expect(mistakes.map((r) => [r.rule, r.range.start.line])).toEqual([
      ["form/rule-set-missing", 1],
      ["form/no-unit", 2],
    ]);
    expect(reported[0]!.message).toContain("home-transfer 2026.2");
  });

  it("is the newest where none is named, and the plan is advised to name it", () => {
    const { at, workspace } = workspaceOf({ "home.span": 'setup "A"\n' });
    const { reported, ruleSet } = workspace.snapshot(at("home.span"));
    const advice = reported.find((r) => r.rule === "form/rule-set-not-pinned")!;
    expect(advice.level).toBe("advice");
    expect(advice.problem?.fixes?.[0]?.text).toBe(`\nrules ${ruleSet!.name} ${ruleSet!.version}`);
  });

  it("of the folder of plans stands before the one of the same name that comes with the program", () => {
    const { at, workspace } = workspaceOf({
      "home.span": head,
      "rules/home-transfer/2026.1/set.spanrules": "nonsense\n",
    });
    const { reported, ruleSet, result } = workspace.snapshot(at("home.span"));
    expect(ruleSet?.folder).toBe(at("rules/home-transfer/2026.1"));
    expect(result).toBeUndefined();
    expect(reported.map((r) => r.rule)).toContain("form/rule-set-refused");
    expect(reported.find((r) => r.rule === "form/rule-set-refused")!.message).toMatch(
      /home-transfer 2026\.1.*line 1/,
    );
  });

  it("that calls itself otherwise than its folder is refused", () => {
    const { at, workspace } = workspaceOf({
      "home.span": 'setup "A"\nrules own 2\n',
      "rules/own/2/set.spanrules": 'ruleset own 1 {\n  title "Own"\n}\n',
    });
    const { ruleSet } = workspace.snapshot(at("home.span"));
    expect(ruleSet?.set).toBeUndefined();
    expect(ruleSet?.problems.map((p) => p.rule)).toContain("rules/name");
  });
});

describe("what did not change is kept", () => {
  const sample = path.join(root, "samples/first-week/home.span");
  const text = readFileSync(sample, "utf8");

  it("the same snapshot while nothing that it rests on changes, even when other files do", () => {
    const workspace = new Workspace({ roots: [root], today });
    workspace.open(sample, text);
    const first = workspace.snapshot(sample);
    expect(workspace.snapshot(sample)).toBe(first);
    workspace.open(path.join(root, "samples/other.span"), head);
    expect(workspace.snapshot(sample)).toBe(first);
    workspace.edit(path.join(root, "samples/loan-pool.span"), head);
    expect(workspace.snapshot(sample)).not.toBe(first);
  });

  it("a new day is a new judgement", () => {
    let day = "2026-03-02";
    const workspace = new Workspace({ roots: [root], today: () => day });
    const first = workspace.snapshot(sample);
    day = "2027-03-02";
    expect(workspace.snapshot(sample).reported.length).toBeGreaterThan(first.reported.length);
  });

  it("after an edit, whatever order the edits came in, the findings are those of a fresh start", () => {
    const workspace = new Workspace({ roots: [root], today });
    const edits = [
      text,
      text.replace("top 23 in", "top 22 in"),
      `\n\n${text}`,
      text.replace("lock brakes", "unlock brakes"),
      text.slice(0, 900),
      text.replace("bed-side left", "bed-side right"),
      text,
    ];
    const plain = (w: Workspace): object[] =>
      w.snapshot(sample).reported.map(({ finding, problem, ...r }) => ({
        ...r,
        is: finding ? "finding" : problem ? "problem" : "",
      }));
    for (const edit of edits) {
      workspace.edit(sample, edit);
      const fresh = new Workspace({ roots: [root], today });
      fresh.open(sample, edit);
      expect(plain(workspace)).toEqual(plain(fresh));
    }
  });

  it("trying another text leaves no trace", () => {
    const workspace = new Workspace({ roots: [root], today });
    workspace.open(sample, text);
    const first = workspace.snapshot(sample);
    const rise = (s: typeof first): number | undefined =>
      s.result?.quantities.find((q) => q.quantity.name === "height.rise")?.quantity.value?.nominal;
    const tried = workspace.tryText(sample, text.replace("top-loaded 23 in", "top-loaded 20 in"));
    expect(rise(tried)).toBeCloseTo(0.0127);
    expect(workspace.snapshot(sample)).toBe(first);
    expect(rise(first)).toBeCloseTo(0.0889);
  });

  it("a file written again with the same size is noticed", () => {
    const { at, workspace } = workspaceOf({ "home.span": `${head}bed bed { top 23    }\n` });
    workspace.snapshot(at("home.span"));
    writeFileSync(at("home.span"), `${head}bed bed { top 23 in }\n`);
    utimesSync(at("home.span"), new Date(2030, 1, 1), new Date(2030, 1, 1));
    expect(rulesOf(workspace, at("home.span"))).not.toContain("form/no-unit");
  });
});

it("noise gives a bounded number of findings, and says that there are more", () => {
  const { at, workspace } = workspaceOf({ "home.span": "{\n".repeat(20_000) });
  const { reported } = workspace.snapshot(at("home.span"));
  expect(reported.length).toBeLessThan(1100);
  expect(reported.map((r) => r.rule)).toContain("form/too-many");
});
