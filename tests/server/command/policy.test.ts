/** A policy in everything that the program prints: as a page, for programs, for services, and where a rule is explained. */
import path from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { folderOf } from "../workspace/folder.js";
import { planUnder, policyOf, rulesFolder } from "../workspace/small-sets.js";
import { bundle, run } from "./program.js";

beforeAll(async () => void (await bundle()), 60_000);

const flat = (text: string): string => text.replaceAll(/\s+/g, " ");
const on = ["--on", "2026-03-02"];
const reasons = 'because "Parts are on order"; approved-by "clinical lead"; until 2026-04-01';
const policy = policyOf(`rule bed/rails { level caution to stop }\nrule chair/brakes { off; ${reasons} }`);
const files = {
  ...rulesFolder,
  ".git/HEAD": "",
  "home.span": planUnder('with "policy.spanrules"'),
  "policy.spanrules": policy,
};
const tells = [
  "The rule bed/rails (rails up) says stop where it said caution.",
  "The rule chair/brakes (brakes on one wheel) is switched off.",
];

describe("a policy that is in force", () => {
  it("is listed in the page for people, with what asks for less, why, by whom and until when", async () => {
    const done = await run(["check", ...on], folderOf(files));
    expect(flat(done.out)).toContain("Judged as of 2026-03-02 by trial 1 under the policy clinic.");
    for (const t of tells) expect(flat(done.out)).toContain(t);
    expect(flat(done.out)).toContain(
      "This asks for less than the released rules, or could. Because: Parts are on order. Approved by the clinical lead. Until 2026-04-01.",
    );
    expect(done.code).toBe(1);
  });

  it("is listed for programs", async () => {
    const done = await run(["check", "--as", "json", ...on], folderOf(files));
    const { overlays } = (JSON.parse(done.out) as { files: [{ ruleSet: { overlays: object[] } }] }).files[0]
      .ruleSet;
    expect(overlays).toEqual([
      {
        name: "clinic",
        title: "Policy of a clinic",
        path: "policy.spanrules",
        hash: expect.stringMatching(/^[0-9a-f]{64}$/) as unknown,
        by: "clinical lead",
        changes: [
          {
            is: "levels",
            name: "bed/rails",
            rules: ["bed/rails"],
            text: tells[0],
            loosens: false,
            because: null,
            approvedBy: null,
            until: null,
          },
          {
            is: "off",
            name: "chair/brakes",
            rules: ["chair/brakes"],
            text: tells[1],
            loosens: true,
            because: "Parts are on order",
            approvedBy: "clinical lead",
            until: "2026-04-01",
          },
        ],
      },
    ]);
  });

  it("is listed for services, and among what the rule rests on", async () => {
    const done = await run(["check", "--as", "sarif", ...on], folderOf(files));
    const [sarif] = (
      JSON.parse(done.out) as {
        runs: [
          {
            properties: { ruleSets: [{ overlays: [{ changes: unknown[] }] }] };
            tool: { driver: { rules: { id: string; help?: { text: string } }[] } };
          },
        ];
      }
    ).runs;
    expect(sarif.properties.ruleSets[0].overlays[0].changes).toHaveLength(2);
    expect(sarif.tool.driver.rules.find((r) => r.id === "bed/rails")!.help!.text).toContain(
      `The policy clinic decides: ${tells[0]}`,
    );
  });

  it("is part of the reason for a rule, and for a rule that it switched off", async () => {
    const cwd = folderOf(files);
    expect(flat((await run(["reason", "bed/rails", "home.span", ...on], cwd)).out)).toContain(
      `The policy clinic decides: ${tells[0]}`,
    );
    const off = await run(["reason", "chair/brakes", "home.span", ...on], cwd);
    expect(off.code).toBe(0);
    expect(flat(off.out)).toContain(tells[1]);
  });
});

describe("a policy that is refused", () => {
  const silent = { ...files, "policy.spanrules": policy.replace(`; ${reasons}`, "") };
  it("leaves the plan unjudged: nothing is cleared, and the check ends with 2", async () => {
    const done = await run(["check", ...on], folderOf(silent));
    expect(flat(done.out)).toMatch(
      /The policy "policy\.spanrules" cannot be used, so no rule was applied\. Line 3: .*asks for less/,
    );
    expect(done.out).not.toMatch(/cleared/);
    expect(done.out).not.toContain("policy      clinic");
    expect(done.code).toBe(2);
  });
  it("among good plans the check ends with 1", async () => {
    const good = planUnder("").replace("rails left", "rails none");
    const done = await run(
      ["check", ...on],
      folderOf({ ...silent, "policy.spanrules": "policy", "other.span": good }),
    );
    expect(done.code).toBe(1);
  });
  it("is named by spanwise rules with every reason at its line, and is no fault once it is mended", async () => {
    const bad = await run(["rules", ...on], folderOf(silent));
    expect(bad.code).toBe(1);
    expect(flat(bad.out)).toMatch(
      /Policy policy\.spanrules .* It is refused, whole: 1 reason\. line 3 The rule chair\/brakes/,
    );
    const good = await run(["rules", ...on], folderOf(files));
    expect(good.code).toBe(0);
    for (const t of tells) expect(flat(good.out)).toContain(t);
  });
});

it("an expected verdict that is not met ends the check with 1, whatever level counts", async () => {
  const plan = (verdict: string): string =>
    `${planUnder("").replace("rails left", "rails none")}trial into-bed on 2026-03-01 { by "therapist"; outcome done }\nexpect bed/rails ${verdict} for into-bed\n`;
  const code = async (verdict: string): Promise<number | null> =>
    (
      await run(
        ["check", "home.span", "--level", "stop", ...on],
        folderOf({ ...rulesFolder, ".git/HEAD": "", "home.span": plan(verdict) }),
      )
    ).code;
  expect(await code("holds")).toBe(0);
  expect(await code("fails")).toBe(1);
});

it("an accepted stop is told to services and is not hidden by them; an accepted caution is", async () => {
  const plan = `${planUnder("", "2")}accept bed/rails at into-bed until 2026-03-16 approved-by "physician" because "b"\n`;
  const statuses = async (text: string): Promise<unknown[]> => {
    const done = await run(
      ["check", "home.span", "--as", "sarif", ...on],
      folderOf({ ...rulesFolder, "home.span": text }),
    );
    const { results } = (
      JSON.parse(done.out) as {
        runs: [{ results: { ruleId: string; suppressions?: { status: string }[] }[] }];
      }
    ).runs[0];
    return results.filter((r) => r.ruleId === "bed/rails").map((r) => r.suppressions?.[0]?.status);
  };
  expect(await statuses(plan)).toEqual(["rejected"]);
  expect(await statuses(plan.replace("trial 2", "trial 1"))).toEqual(["accepted"]);
});

it("what to measure next stands at the end of a file of which something is open", async () => {
  const open = planUnder("").replace("rails left", "rails unknown");
  const cwd = folderOf({ ...rulesFolder, ".git/HEAD": "", "home.span": open });
  const page = flat((await run(["check", ...on], cwd)).out);
  expect(page).toMatch(/Measure next 1\. Rails of bed \(line 5\)\. Settles 1 judgement\./);
  const json = JSON.parse((await run(["check", "--as", "json", ...on], cwd)).out) as {
    files: [{ measureNext: object[] }];
  };
  expect(json.files[0].measureNext).toEqual([
    expect.objectContaining({
      what: "rails of bed",
      state: "missing",
      kind: "bed",
      key: "rails",
      settles: 1,
      rules: ["bed/rails"],
    }),
  ]);
  const settled = folderOf({ ...rulesFolder, ".git/HEAD": "", "home.span": planUnder("") });
  expect((await run(["check", path.join(settled, "home.span"), ...on], settled)).out).not.toContain(
    "Measure next",
  );
});
