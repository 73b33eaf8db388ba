/** Whatever is given to the program, it says what is wrong, ends, and never calls a plan good that it could not judge. */
import { chmodSync } from "node:fs";
import path from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { asText } from "../../../server/command/as-text.js";
import { checkPlans } from "../../../server/command/checked.js";
import { plainTerminal } from "../../../server/command/terminal.js";
import { folderOf } from "../workspace/folder.js";
import { bundle, run, runAndStopReading, type Ended } from "./program.js";

beforeAll(async () => void (await bundle()), 60_000);

const day = ["--on", "2026-03-02"];
const head = 'setup "Invented"\nrules home-transfer 2026.1\n';
const noTrace = ({ out, err }: Ended): void => {
  expect(out + err).not.toMatch(
    /^\s+at .*[:(]\d+|node:internal|\bTypeError\b|\bRangeError\b|fault in the program/m,
  );
};

describe("a file that is not a good plan", () => {
  const cases: readonly [what: string, content: string | Uint8Array, code: number, says: RegExp][] = [
    ["an empty file", "", 2, /form\/empty/],
    [
      "a file that ends in the middle of a block",
      `${head}bed bed {\n  top 23 in`,
      1,
      /form\/block-not-closed.*\n.*|is not closed/,
    ],
    ["words that nobody knows", `${head}bed bed {\n  colour blue\n}\n`, 1, /form\/unknown-word/],
    ["a missing unit", `${head}bed bed {\n  top 23\n}\n`, 1, /form\/no-unit/],
    ["a unit of another kind", `${head}bed bed {\n  top 23 lb\n}\n`, 1, /form\/wrong-dimension/],
    ["units that contradict each other", `${head}bed bed {\n  size 39 in by 80 kg\n}\n`, 1, /form\//],
    ["a value given twice", `${head}bed bed {\n  top 23 in\n  top 24 in\n}\n`, 1, /form\/given-twice/],
    [
      "a transfer between things that do not exist",
      `${head}transfer into-bed {\n  from chair to bed\n}\n`,
      1,
      /form\/unknown-name/,
    ],
    ["a file that uses itself", `${head}from "home.span" use bed\n`, 1, /form\/file-circular/],
    [
      "a file outside the folder of plans",
      `${head}from "../../../../../../etc/passwd" use bed\n`,
      1,
      /form\/file-outside/,
    ],
    [
      "a rule set that does not exist",
      'setup "Invented"\nrules home-transfer 1999.1\n',
      2,
      /form\/rule-set-missing/,
    ],
    ["null bytes", `${head}\0`, 2, /form\/not-text/],
    ["bytes that are not UTF-8", Uint8Array.of(0x73, 0xff, 0xfe, 0x0a), 2, /form\/not-text/],
    ["ten megabytes of noise", '{}}{"\\#±'.repeat(1_100_000), 2, /form\/too-large/],
    ["half a megabyte of braces", "{".repeat(500_000), 1, /form\/too-many/],
    ["half a megabyte of words on one line", `setup ${"x ".repeat(250_000)}`, 1, /form\//],
  ];
  it.each(cases)(
    "%s",
    async (_, content, code, says) => {
      const folder = folderOf({ "home.span": content });
      const json = await run(["check", "home.span", "--as", "json", ...day], folder);
      expect(json.code).toBe(code);
      expect(json.out).toMatch(says);
      noTrace(json);
      const parsed = JSON.parse(json.out) as { files: { findings: { rule: string }[] }[] };
      expect(parsed.files[0]!.findings.length).toBeGreaterThan(0);
      const page = asText(checkPlans({ paths: ["home.span"], cwd: folder, on: "2026-03-02" }), plainTerminal);
      expect(page).toContain("home.span");
    },
    40_000,
  );

  it("a rule set with a fault is refused whole, named, with its line; findings of form are still shown", async () => {
    const folder = folderOf({
      "home.span": 'setup "Invented"\nrules own 1\nbed bed { top 23 }\n',
      "rules/own/1/set.spanrules": 'ruleset own 1 { title "Own" }\nrule a/b {\n  nonsense\n}\n',
    });
    const done = await run(["check", "home.span", ...day], folder);
    expect(done.code).toBe(2);
    expect(done.out).toMatch(/The rule set own 1 cannot be used/);
    expect(done.out.replaceAll(/\s+/g, " ")).toMatch(/own\/1\/set.spanrules, line \d/);
    expect(done.out).toMatch(/has no unit/);
    const rules = await run(["rules", "own"], folder);
    expect(rules.code).toBe(1);
    expect(rules.out).toMatch(/^line 3\s/m);
    noTrace(done);
    noTrace(rules);
  });

  it("a good file beside a bad one is still checked, and the outcome is not good", async () => {
    const folder = folderOf({ "bad.span": "\0", "good.span": `${head}` });
    const done = await run(["check", "--as", "json", ...day], folder);
    expect(done.code).toBe(1);
    const files = (JSON.parse(done.out) as { files: { path: string; ruleSet: unknown }[] }).files;
    expect(files.map((f) => [f.path, f.ruleSet === null])).toEqual([
      ["bad.span", true],
      ["good.span", false],
    ]);
  });

  it.skipIf(process.getuid?.() === 0)("a file that may not be read", async () => {
    const folder = folderOf({ "home.span": head });
    chmodSync(path.join(folder, "home.span"), 0);
    const done = await run(["check", "home.span", ...day], folder);
    expect(done.code).toBe(2);
    expect(done.out).toMatch(/this account may not read it/);
  });

  it("what somebody wrote into a file cannot steer the terminal", async () => {
    const folder = folderOf({ "home.span": 'setup "A\u001B[2J\u202Eb"\nrules home-transfer 2026.1\n' });
    const done = await run(["check", "home.span", ...day], folder);
    expect(done.out).not.toMatch(/[\u001B\u202E]/);
  });
});

describe("a call that cannot be followed ends with 2 and one clear sentence", () => {
  const cases: readonly [args: readonly string[], says: RegExp][] = [
    [["chekc"], /There is no command "chekc"/],
    [["check", "--colour"], /Unknown option "--colour"/],
    [["check", "--as", "poem"], /poem/],
    [["check", "--on", "2026-02-30"], /year-month-day/],
    [["check", "--on", "2. March"], /year-month-day/],
    [["check", "--level", "error"], /error/],
    [["check", "gone.span"], /There is no file or folder "gone.span"/],
    [["check", "."], /There is no plan/],
    [["reason"], /name/],
    [["reason", "height/rose"], /height\/rise/],
    [["rules", "nobody"], /There is no rule set "nobody"/],
    [["serve"], /--stdio/],
    [[], /check/],
  ];
  it.each(cases)("spanwise %j", async (args, says) => {
    const done = await run(args, folderOf({}));
    expect(done.code).toBe(2);
    expect(done.err).toMatch(says);
    expect(done.out).toBe("");
    noTrace(done);
  });
});

it("help and version end with 0", async () => {
  const help = await run(["check", "--help"]);
  expect(help).toMatchObject({ code: 0, err: "" });
  expect(help.out).toMatch(/--level/);
  expect((await run(["--version"])).out).toMatch(/^\d+\.\d+\.\d+\n$/);
});

it("a reader that stops reading is no fault", async () => {
  const done = await runAndStopReading(["check", "samples", "--as", "json", ...day]);
  expect(done.err).toBe("");
  expect(done.code).not.toBeNull();
});
