import { describe, expect, test } from "vitest";
import { DiagnosticSeverity } from "vscode-languageserver-protocol";
import { readFileSync } from "node:fs";
import path from "node:path";
import { diagnostics } from "../../../server/editor/diagnostics.js";
import { inPlans, marked, pageWith, root, uriOf } from "./marked.js";

const sample = readFileSync(path.join(root, "samples/first-week/home.span"), "utf8").replace(
  "../loan-pool.span",
  "loan-pool.span",
);
const pool = { "loan-pool.span": readFileSync(path.join(root, "samples/loan-pool.span"), "utf8") };
const shown = (text: string, others: { [name: string]: string } = {}) =>
  diagnostics(pageWith(text, others), uriOf);

describe("findings in the editor", () => {
  const all = shown(sample, pool);

  test("every finding of the check is there, each with its rule, its level and where it comes from", () => {
    const page = pageWith(sample, pool);
    expect(new Set(all.map((d) => d.code))).toEqual(new Set(page.reported.map((r) => r.rule)));
    expect(page.reported.length).toBeGreaterThan(10);
    for (const d of all) expect(d.source).toBe("spanwise");
  });

  test("a stop is shown as an error, a caution as a warning, an advice as information", () => {
    const levels = {
      stop: DiagnosticSeverity.Error,
      caution: DiagnosticSeverity.Warning,
      advice: DiagnosticSeverity.Information,
    };
    for (const r of pageWith(sample, pool).reported)
      expect(all.find((d) => d.code === r.rule && String(d.message).startsWith(r.message))!.severity).toBe(
        levels[r.level],
      );
  });

  test("the climb into the bed is said with its numbers, with the lines that it was computed from", () => {
    const rise = all.find((d) => d.code === "height/rise" && d.severity === DiagnosticSeverity.Error)!;
    expect(rise.message).toMatch(/3 1\/2 in/);
    expect(rise.message).toMatch(/\n2 1\/2 in (beyond|too much)/);
    expect(rise.message).toMatch(/\nMeanwhile: /);
    expect(rise.relatedInformation!.length).toBeGreaterThan(0);
    expect(
      rise.relatedInformation!.some(
        (r) => r.location.uri === "test:loan-pool.span" && r.message.includes("19 1/2 in"),
      ),
    ).toBe(true);
  });

  test("findings that read alike at one place are shown once", () => {
    const keys = all.map((d) => JSON.stringify([d.range, d.code, d.message]));
    expect(new Set(keys).size).toBe(keys.length);
  });
});

test("a wrong line hides no other finding, of form or of substance", () => {
  const before = shown(sample, pool).map((d) => d.code);
  const broken = shown(
    sample.replace("  castors none", "  castors none\n  colour blue\n  rails nome"),
    pool,
  ).map((d) => d.code);
  expect(broken).toEqual(
    expect.arrayContaining([
      "form/unknown-word",
      "form/unknown-choice",
      "height/rise",
      ...before.filter((c) => c !== "form/given-twice"),
    ]),
  );
});

test("each of several wrong lines has its own finding at its own place", () => {
  const { text, places } = marked(
    "bed b {\n  top ⟦24⟧a\n  size 39 in by 80 in\n  edge ⟦frim⟧b\n  ⟦colur⟧c red\n}\n",
  );
  const found = shown(text);
  expect(found.find((d) => d.code === "form/no-unit")!.range).toEqual(places["a"]);
  expect(found.find((d) => d.code === "form/unknown-choice")!.range).toEqual(places["b"]);
  expect(found.find((d) => d.code === "form/unknown-word")!.range).toEqual(places["c"]);
});

test("columns count UTF-16 code units", () => {
  const { text, places } = marked('setup "🛏️ 🪑"; ⟦visitd⟧a 2026-03-02\n');
  expect(shown(text).find((d) => d.code === "form/unknown-word")!.range).toEqual(places["a"]);
});

test("an empty file says how to begin, and nothing else about form", () => {
  expect(
    shown("")
      .filter((d) => String(d.code).startsWith("form/"))
      .map((d) => d.code),
  ).toEqual(["form/empty"]);
});

test("a file that is used is found under its own address", () => {
  expect(uriOf(inPlans("loan-pool.span"))).toBe("test:loan-pool.span");
  const twice = shown(`${sample}\nboard board-30 { length 20 in; width 8 in }\n`, pool).filter(
    (d) => d.code === "form/name-used-twice",
  );
  expect(twice.length).toBe(1);
});
