/** SARIF 2.1.0 (OASIS Standard): the output against the schema that is published with the standard, and its promises. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import Ajv from "ajv-draft-04";
import addFormats from "ajv-formats";
import { describe, expect, it } from "vitest";
import { asSarif } from "../../server/command/as-sarif.js";
import { checkPlans } from "../../server/command/checked.js";
import { folderOf } from "../server/workspace/folder.js";

const root = path.resolve(import.meta.dirname, "../..");
const on = "2026-03-02";
const library = path.dirname(createRequire(import.meta.url).resolve("@microsoft/jest-sarif/package.json"));
const schema = JSON.parse(
  readFileSync(path.join(library, "lib/schemas/sarif-2.1.0-rtm.5.json"), "utf8"),
) as object;
const ajv = new Ajv({ strict: false, allErrors: true, unicodeRegExp: false });
addFormats.default(ajv as never);
const validate = ajv.compile(schema);

interface Result {
  readonly ruleId: string;
  readonly ruleIndex: number;
  readonly level: string;
  readonly message: { readonly text: string };
  readonly locations: readonly {
    readonly physicalLocation: {
      readonly artifactLocation: { readonly uri: string };
      readonly region: {
        readonly startLine: number;
        readonly startColumn: number;
        readonly endColumn: number;
      };
    };
  }[];
  readonly partialFingerprints: { readonly [name: string]: string };
  readonly suppressions?: readonly object[];
}
interface Log {
  readonly runs: readonly [
    {
      readonly columnKind: string;
      readonly tool: {
        readonly driver: {
          readonly rules: readonly {
            readonly id: string;
            readonly help?: { text: string; markdown: string };
          }[];
        };
      };
      readonly results: readonly Result[];
    },
  ];
}
const sarif = (cwd: string, ...paths: string[]): Log =>
  JSON.parse(asSarif(checkPlans({ paths, cwd, on }), cwd)) as Log;

const bad =
  'setup "Ärger"\nrules home-transfer 2026.1\nbed bed { top 23 }\nbed bed { tpo 23 in; top 24 in }\n';

describe("the output is valid against the published schema", () => {
  const cases: readonly [what: string, make: () => Log][] = [
    ["the sample households", () => sarif(root, "samples")],
    [
      "plans that cannot be read",
      () => sarif(folderOf({ "a.span": "\0", "b.span": "", "c d#.span": bad }), "."),
    ],
    [
      "a call from another folder",
      () => sarif(path.join(root, "samples/first-week"), "home.span", "../loan-pool.span"),
    ],
  ];
  it.each(cases)("%s", (_, make) => {
    const log = make();
    validate(log);
    expect(validate.errors ?? []).toEqual([]);
    expect(log.runs[0].results.length).toBeGreaterThan(0);
  });

  it("the schema is one that can refuse", () => {
    expect(validate({ version: "2.1.0", runs: [{ tool: {} }] })).toBe(false);
  });
});

describe("each finding", () => {
  const { tool, results, columnKind } = sarif(root, "samples").runs[0];

  it("points to its rule, and a rule of substance has help with what it rests on", () => {
    for (const r of results) expect(tool.driver.rules[r.ruleIndex]!.id).toBe(r.ruleId);
    for (const rule of tool.driver.rules) {
      if (rule.id.startsWith("form/") || !rule.help) continue;
      expect(rule.help.text.split("\n").length).toBeGreaterThan(1);
      expect(rule.help.markdown).toContain("**Rests on**");
    }
    expect(tool.driver.rules.find((r) => r.id === "height/rise")?.help?.markdown).toContain(
      "transfer-setup-1",
    );
  });

  it("has a level of the standard for ours: stop, caution, advice are error, warning, note", () => {
    const levels = new Set(results.map((r) => r.level));
    expect([...levels].sort()).toEqual(["error", "note", "warning"]);
  });

  it("that was accepted carries the acceptance with its reason", () => {
    const rug = results.filter((r) => r.ruleId === "room/loose-rug" && r.suppressions);
    expect(rug[0]?.suppressions).toEqual([expect.objectContaining({ kind: "inSource", status: "accepted" })]);
  });

  it("counts columns in UTF-16 code units from 1", () => {
    expect(columnKind).toBe("utf16CodeUnits");
    const cwd = folderOf({
      "home.span": 'setup "A"\nrules home-transfer 2026.1\nbed bed { edge firm; top 23 }\n',
    });
    const found = sarif(cwd, ".").runs[0].results.find((r) => r.ruleId === "form/no-unit")!;
    const { region } = found.locations[0]!.physicalLocation;
    expect(region).toMatchObject({ startLine: 3, startColumn: 26, endColumn: 28 });
  });
});

describe("fingerprints", () => {
  const text = readFileSync(path.join(root, "samples/first-week/home.span"), "utf8");
  const pool = readFileSync(path.join(root, "samples/loan-pool.span"), "utf8");
  const prints = (home: string): string[] =>
    sarif(folderOf({ ".git/HEAD": "", "week/home.span": home, "loan-pool.span": pool }), "week")
      .runs[0].results.map((r) => r.partialFingerprints["spanwise/1"]!)
      .sort();

  it("are different for every finding", () => {
    const all = prints(text);
    expect(new Set(all).size).toBe(all.length);
  });

  it("stay the same when lines are added above and a block moves", () => {
    const [first = "", ...rest] = text.split(/\n(?=furniture )/);
    const moved = `# One line more.\n\n${first}\n\n# And another.\n${rest.join("\n")}`;
    expect(prints(moved)).toEqual(prints(text));
  });

  it("of steps stay the same when a step is put in before them", () => {
    const more = text.replace(
      "    lock brakes\n    remove legrest left\n",
      "    check brakes\n    lock brakes\n    remove legrest left\n",
    );
    expect(more).not.toBe(text);
    const [before, after] = [new Set(prints(text)), new Set(prints(more))];
    expect([...before].filter((p) => !after.has(p)).length).toBeLessThanOrEqual(1);
  });
});
