/** What `check` prints and with what it ends, on the sample households. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { asJson } from "../../../server/command/as-json.js";
import { asText } from "../../../server/command/as-text.js";
import { checkPlans, exitCodeOf } from "../../../server/command/checked.js";
import { plainTerminal, terminalOf } from "../../../server/command/terminal.js";
import { folderOf } from "../workspace/folder.js";
import { root, run } from "./program.js";

const on = "2026-03-02";
const samples = (...paths: string[]) =>
  checkPlans({ paths: paths.map((p) => `samples/${p}`), cwd: root, on });

interface JsonFinding {
  readonly rule: string;
  readonly verdict: string;
  readonly levels: { readonly best: string; readonly worst: string };
  readonly subject: string;
  readonly range: { readonly start: { readonly line: number; readonly character: number } };
  readonly message: string;
  readonly value: Record<string, unknown> | null;
  readonly limit: Record<string, unknown> | null;
  readonly basis: readonly string[];
  readonly sources: readonly { readonly id: string; readonly at: string }[];
}
interface Json {
  readonly format: number;
  readonly on: string;
  readonly files: readonly {
    readonly path: string;
    readonly ruleSet: {
      readonly name: string;
      readonly version: string;
      readonly hash: string;
      readonly overlays: unknown[];
    };
    readonly findings: readonly JsonFinding[];
    readonly verdicts: readonly {
      readonly rule: string;
      readonly subject: string;
      readonly verdict: string;
    }[];
    readonly transfers: readonly {
      readonly name: string;
      readonly cleared: boolean;
      readonly left: readonly string[];
    }[];
    readonly quantities: readonly {
      readonly name: string;
      readonly subject: string;
      readonly low: number | null;
      readonly unit: string;
    }[];
    readonly measureNext: readonly object[];
  }[];
}
const json = (...paths: string[]): Json => JSON.parse(asJson(samples(...paths))) as Json;

describe("the exit code says whether every transfer may be tried as planned", () => {
  it("0 for a household in which both directions are cleared", () => {
    expect(exitCodeOf(samples("level-home"), "caution")).toBe(0);
  });
  it("1 where a transfer is not cleared, whatever level is asked for", () => {
    expect(exitCodeOf(samples("first-week"), "caution")).toBe(1);
    expect(exitCodeOf(samples("first-week"), "stop")).toBe(1);
  });
  it("1 for one such household among good ones", () => {
    expect(exitCodeOf(samples("."), "caution")).toBe(1);
  });
  it("1 for a good household if advice counts as well", () => {
    expect(exitCodeOf(samples("level-home"), "advice")).toBe(1);
  });
  it("2 where nothing could be checked", () => {
    const cwd = folderOf({ "home.span": "" });
    expect(exitCodeOf(checkPlans({ paths: [], cwd, on }), "caution")).toBe(2);
  });
});

describe("the form for programs", () => {
  const first = json("first-week/home.span");
  const file = first.files[0]!;

  it("names the day, the file and the rule set with its content", () => {
    expect(first).toMatchObject({ format: 1, on, files: [{ path: "samples/first-week/home.span" }] });
    expect(file.ruleSet).toMatchObject({ name: "home-transfer", version: "2026.1", overlays: [] });
    expect(file.ruleSet.hash).toMatch(/^[0-9a-f]{64}$/);
  });

  it("gives the climb into the bed in metres: 23 in less 19 1/2 in, each to 1/4 in", () => {
    const rise = file.quantities.find((q) => q.name === "height.rise" && q.subject === "into-bed")!;
    expect(rise).toEqual({
      name: "height.rise",
      subject: "into-bed",
      low: 0.0762,
      nominal: 0.0889,
      high: 0.1016,
      unit: "m",
    });
  });

  it("carries a finding with its value, limit, bases and sources", () => {
    const climb = file.findings.find((f) => f.rule === "height/rise" && f.subject === "into-bed")!;
    expect(climb).toMatchObject({
      verdict: "fails",
      levels: { best: "stop", worst: "stop" },
      value: { nominal: 0.0889, unit: "m" },
    });
    expect(climb.limit).toMatchObject({ unit: "m" });
    expect(climb.basis).toContain("published");
    expect(climb.sources.every((s) => s.id !== "" && s.at !== "")).toBe(true);
  });

  it("lists the rules that hold, and none that does not apply", () => {
    expect(new Set(file.verdicts.map((v) => v.verdict))).toContain("holds");
    expect(file.verdicts.map((v) => v.verdict)).not.toContain("not-applicable");
    for (const f of file.findings)
      if (!f.rule.startsWith("form/"))
        expect(file.verdicts.map((v) => `${v.rule} ${v.subject}`)).toContain(`${f.rule} ${f.subject}`);
  });

  it("puts findings in the order of the file", () => {
    const lines = file.findings.map((f) => f.range.start.line);
    expect(lines).toEqual([...lines].sort((a, b) => a - b));
  });

  it("says what is left to do for every transfer that is not cleared", () => {
    expect(file.transfers.map((t) => t.name)).toEqual(["into-bed", "out-of-bed"]);
    for (const t of file.transfers) expect(t.left.length > 0).toBe(!t.cleared);
  });

  it("proposes the one measurement on which a landing waits, however many values are written that could be read again", () => {
    const folder = folderOf({
      "loan-pool.span": readFileSync(path.join(root, "samples/loan-pool.span"), "utf8"),
      "level-home/home.span": readFileSync(path.join(root, "samples/level-home/home.span"), "utf8").replace(
        /^ {2}head-to-hip .*\n/m,
        "",
      ),
    });
    const checked = checkPlans({ paths: ["level-home"], cwd: folder, on });
    expect(exitCodeOf(checked, "caution")).toBe(1);
    const [plan] = (JSON.parse(asJson(checked)) as Json).files;
    expect(plan!.measureNext).toContainEqual(
      expect.objectContaining({
        what: "head to hip of client",
        state: "assumed",
        key: "head-to-hip",
        rules: ["landing/hips-low"],
      }),
    );
    expect(JSON.parse(asJson(samples("level-home"))) as Json).toMatchObject({
      files: [{ transfers: [{ cleared: true }, { cleared: true }] }],
    });
  });

  it("has no number that is not one: an open end is null", () => {
    expect(asJson(samples("."))).not.toMatch(/Infinity|NaN|undefined/);
  });
});

describe("the page for people", () => {
  const page = asText(samples("first-week"), plainTerminal);

  it("keeps to the width, save for addresses that must stay whole", () => {
    const wide = page.split("\n").filter((l) => l.length > plainTerminal.width && !l.includes("://"));
    expect(wide).toEqual([]);
  });
  it("leaves no blanks at line ends and one line break at its own", () => {
    expect(page).not.toMatch(/[ \t]\n/);
    expect(page).toMatch(/[^\n]\n$/);
  });
  it("prints every message, every source cited, and the cautions of the rule set", () => {
    const flat = page.replaceAll(/\s+/g, " ");
    const { snapshot } = samples("first-week").files[0]!;
    for (const r of snapshot.reported) {
      expect(flat).toContain(r.message.replaceAll(/\s+/g, " "));
      for (const b of r.finding?.bases ?? []) if (b.citation) expect(flat).toContain(`${b.citation.id} `);
      for (const c of r.finding?.cautions ?? []) expect(flat).toContain(c);
    }
    for (const c of snapshot.ruleSet!.set!.cautions) expect(flat).toContain(c);
    expect(flat).toContain(snapshot.ruleSet!.hash);
  });
  it("never says that anything is safe", () => {
    expect(asText(samples("."), plainTerminal)).not.toMatch(/\b(is|are) safe\b/i);
  });
  it("has no colour in a pipe, nor where none is wanted; in a terminal the words are the same", () => {
    const watched = { isTTY: true, columns: 100 };
    const bold = asText(samples("first-week"), terminalOf(watched, { TERM: "xterm" }));
    const plain = (t: string): string => t.replaceAll(/\u001B\[\d+m/g, "");
    expect(bold).not.toBe(page);
    expect(plain(bold)).toBe(page);
    expect(asText(samples("first-week"), terminalOf(watched, { TERM: "xterm", NO_COLOR: "1" }))).toBe(page);
    expect(asText(samples("first-week"), terminalOf({ isTTY: false }, { TERM: "xterm" }))).toBe(page);
  });
});

it("the same input gives the same bytes", async () => {
  const calls = ["text", "json", "sarif"].map((as) => ["check", "samples", "--as", as, "--on", on]);
  for (const call of calls) expect((await run(call)).out).toBe((await run(call)).out);
});

it("paths are relative to the folder of the call", async () => {
  const done = await run(
    ["check", "home.span", "--as", "json", "--on", on],
    path.join(root, "samples/first-week"),
  );
  expect((JSON.parse(done.out) as Json).files.map((f) => f.path)).toEqual(["home.span"]);
});
