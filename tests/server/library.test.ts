/** The library as another program has it: from its source, and packed, unpacked and imported by name. */
import { spawnSync } from "node:child_process";
import {
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { asJson } from "../../server/command/as-json.js";
import { checkPlans } from "../../server/command/checked.js";
import { check, householdSchema, read, ruleSets, type CheckedPlan } from "../../server/library.js";

const root = path.resolve(import.meta.dirname, "../..");
const on = "2026-03-02";
const samples = path.join(root, "samples");
const open = (file: string): string | undefined => {
  try {
    return readFileSync(path.join(samples, file), "utf8");
  } catch {
    return undefined;
  }
};
const sample = open("first-week/home.span")!;
const home = read(sample, { path: "first-week/home.span", open });
let once: CheckedPlan | undefined;
/** The sample, judged once for all tests that do not ask for another judgement. */
const judged = (): CheckedPlan => (once ??= check(home, { on }));

describe("read", () => {
  it("gives what the plan says, in SI units, with what it takes from other plans", () => {
    expect(home.problems).toEqual([]);
    expect(home.household.things["bed"]!["bed"]!.values["top"]).toMatchObject({ nominal: 0.5842, unit: "m" });
    expect(home.household.things["board"]!["board-30"]!.from).toBe("../loan-pool.span");
  });

  it("opens nothing by itself: without open, the line that names another plan says that there is none", () => {
    expect(read(sample).problems.map((p) => p.rule)).toContain("form/file-not-found");
  });

  it("asks for each other plan once, by its path seen from this one, and never for an absolute one", () => {
    const asked: string[] = [];
    const spy = (file: string): undefined => void asked.push(file);
    const text = `from "../a.span" use x\nfrom "../a.span" use y\nfrom "/etc/b.span" use z\nfrom "C:/c.span" use w`;
    const { problems } = read(text, { path: "homes/one/home.span", open: spy });
    expect(asked).toEqual(["homes/a.span"]);
    expect(problems.filter((p) => p.rule === "form/file-outside").length).toBe(2);
  });

  it("says of a line that it cannot read where it stands and why, and of what is no text that it is none", () => {
    expect(read("bed bed { top 23 }").problems).toContainEqual(
      expect.objectContaining({
        rule: "form/no-unit",
        range: { start: { line: 0, character: 14 }, end: { line: 0, character: 16 } },
      }),
    );
    expect(read("\0").problems.map((p) => p.rule)).toEqual(["form/not-text"]);
  });
});

describe("check", { timeout: 60_000 }, () => {
  it("gives what the command line prints for programs", () => {
    const checked = checkPlans({ paths: ["first-week/home.span"], cwd: samples, on });
    const [printed] = (JSON.parse(asJson(checked)) as { files: readonly [CheckedPlan] }).files;
    const { cautions, on: day, ...ours } = judged();
    // The command names related files from the folder of the call; so does the library, from where the plan's path starts.
    expect(ours).toEqual(printed);
    expect(day).toBe(on);
    expect(cautions.join(" ")).toMatch(/therapist/);
  });

  it("takes the text as well", () => {
    expect(check(sample, { on, path: "first-week/home.span", open })).toEqual(judged());
  });

  it("gives the same again, and another day another answer only where the day counts", () => {
    expect(check(home, { on })).toEqual(judged());
    const later = check(home, { on: "2026-06-01" });
    expect(later.quantities).toEqual(judged().quantities);
    expect(later.findings).not.toEqual(judged().findings);
  });

  it("judges by the rule set that is asked for, whatever the plan names", () => {
    const other = sample.replace("rules home-transfer 2026.1", "rules house-rules 7");
    const plan = read(other, { path: "first-week/home.span", open });
    const refused = check(plan, { on });
    expect(refused.ruleSet).toBeNull();
    expect(refused.findings.map((f) => f.rule)).toContain("form/rule-set-missing");
    const [{ name, version } = { name: "", version: "" }] = ruleSets;
    expect(check(plan, { on, ruleSet: `${name} ${version}` }).verdicts).toEqual(judged().verdicts);
  });

  it("of what is no plan says that no rule was applied", () => {
    const none = check("\0", { on });
    expect(none).toMatchObject({ ruleSet: null, verdicts: [], transfers: [] });
    expect(none.findings.map((f) => f.rule)).toEqual(["form/not-text"]);
  });

  it("refuses a day or a rule set that there is not, and a plan that it did not read", () => {
    expect(() => check(home, { on: "2026-02-30" })).toThrow(/not a day/);
    expect(() => check(home, { on, ruleSet: "home-transfer 1" })).toThrow(RangeError);
    expect(() => check({ ...home }, { on })).toThrow(TypeError);
  });

  it("describes its households by the schema that the command prints", () => {
    expect(householdSchema()).toMatchObject({ title: expect.stringMatching(/household/) as string });
  });
});

describe("The package, packed and unpacked, with nothing else installed", () => {
  let project = "";
  const call = (command: string, args: readonly string[], cwd: string): string => {
    const done = spawnSync(command, args, { cwd, encoding: "utf8", timeout: 120_000 });
    expect(done.status, `${command} ${args.join(" ")}\n${done.stdout}${done.stderr}`).toBe(0);
    return done.stdout;
  };

  beforeAll(() => {
    project = mkdtempSync(path.join(tmpdir(), "spanwise-consumer-"));
    const stage = path.join(project, "stage");
    mkdirSync(stage);
    for (const file of ["package.json", "README.md", "LICENSE"])
      copyFileSync(path.join(root, file), path.join(stage, file));
    call(
      process.execPath,
      [path.join(root, "esbuild.config.mjs"), "--library", path.join(stage, "dist")],
      root,
    );
    call("npm", ["pack", "--ignore-scripts", "--offline", "--pack-destination", project], stage);
    const packed = readdirSync(project).find((f) => f.endsWith(".tgz"))!;
    const installed = path.join(project, "node_modules/spanwise");
    mkdirSync(installed, { recursive: true });
    call("tar", ["-xzf", path.join(project, packed), "--strip-components=1", "-C", installed], project);
    rmSync(stage, { recursive: true });
    writeFileSync(path.join(project, "home.span"), sample);
    writeFileSync(path.join(project, "pool.span"), open("loan-pool.span")!);
  }, 240_000);
  afterAll(() => rmSync(project, { recursive: true, force: true }));

  it("is imported by its name and judges a sample as the source does", () => {
    const program = `
      import { readFileSync } from "node:fs";
      import { check, read } from "spanwise";
      const open = (path) => readFileSync(path === "loan-pool.span" ? "pool.span" : path, "utf8");
      const plan = read(readFileSync("home.span", "utf8"), { path: "first-week/home.span", open });
      console.log(JSON.stringify(check(plan, { on: "${on}" })));
    `;
    writeFileSync(path.join(project, "judge.mjs"), program);
    expect(JSON.parse(call(process.execPath, ["judge.mjs"], project))).toEqual(judged());
  }, 60_000);

  it("has types that a strict program is checked against, and that need no other package", () => {
    const options = "--strict --noEmit --target es2022 --module nodenext".split(" ");
    const tsc = [path.join(root, "node_modules/typescript/bin/tsc"), ...options];
    const good = `
      import { check, read, ruleSets, type CheckedPlan, type HouseholdJson, type Plan } from "spanwise";
      const plan: Plan = read("bed bed { top 20 in }", { path: "home.span", open: () => undefined });
      const home: HouseholdJson = plan.household;
      const checked: CheckedPlan = check(plan, { on: "2026-03-02", ruleSet: ruleSets[0]?.name });
      export const worst: readonly ("holds" | "advice" | "caution" | "stop")[] = checked.findings.map((f) => f.levels.worst);
      export const low: (number | null)[] = checked.quantities.map((q) => q.low);
      export const left: string[] = checked.transfers.flatMap((t) => (t.cleared ? [] : [...t.left]));
      export const kinds = Object.keys(home.things);
    `;
    writeFileSync(path.join(project, "good.mts"), good);
    call(process.execPath, [...tsc, "good.mts"], project);
    const bad = 'import { check } from "spanwise";\ncheck("setup", {}).findings[0]?.verdict === "maybe";\n';
    writeFileSync(path.join(project, "bad.mts"), bad);
    const done = spawnSync(process.execPath, [...tsc, "bad.mts"], { cwd: project, encoding: "utf8" });
    expect(done.status).not.toBe(0);
    expect(done.stdout).toMatch(/'on' is missing/);
    expect(done.stdout).toMatch(/no overlap/);
    expect(done.stdout).not.toMatch(/Cannot find module/);
  }, 120_000);

  it("carries the licences of what is inside, and no source", () => {
    const installed = path.join(project, "node_modules/spanwise");
    expect(readFileSync(path.join(installed, "dist/LICENSES.txt"), "utf8")).toMatch(/chevrotain/);
    const files = readdirSync(installed, { recursive: true }).map(String);
    expect(files).toContain("LICENSE");
    expect(files.filter((f) => f.endsWith(".ts") && !f.endsWith(".d.ts"))).toEqual([]);
  });
});
