import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, test } from "vitest";
import type { Range } from "vscode-languageserver-protocol";
import { formatText } from "../../../language/text/format.js";
import { fixes } from "../../../server/editor/fixes.js";
import { applyChanges, pageOf, type Page } from "../../../server/editor/page.js";
import { Workspace } from "../../../server/workspace/snapshot.js";
import {
  after,
  editsOf,
  expectSettled,
  fixesAt,
  marked,
  pageWith,
  root,
  rulesOf,
  today,
  uriOf,
} from "./marked.js";

const home = readFileSync(path.join(root, "samples/first-week/home.span"), "utf8").replace(
  "../loan-pool.span",
  "loan-pool.span",
);
const pool = { "loan-pool.span": readFileSync(path.join(root, "samples/loan-pool.span"), "utf8") };

const at = (page: Page, piece: string): Range => {
  const line = page.tree.lines.findIndex((l) => l.text.includes(piece));
  const character = page.tree.lines[line]!.text.indexOf(piece);
  return { start: { line, character }, end: { line, character: character + piece.length } };
};
/** The finding of a rule on a subject: two transfers can break the same rule. */
const broken = (page: Page): string[] => page.reported.map((r) => `${r.rule} ${r.subject}`);
/** Without those that are only not settled: a value set exactly at a limit may still be in doubt by its tolerance. */
const failing = (page: Page): string[] =>
  page.reported.filter((r) => r.verdict === "fails").map((r) => `${r.rule} ${r.subject}`);

describe("findings of form", () => {
  test.each([
    ["a number without its unit", "bed b { top ⟦24⟧a }", /^24 in/, "bed b { top 24 in }"],
    ["a misspelt key", "bed b { ⟦colr⟧a red; ⟦egde⟧b firm }", undefined, ""],
    ["a misspelt choice", "bed b { edge ⟦frim⟧a }", /firm/, "bed b { edge firm }"],
    ["a misspelt kind", "⟦bedd⟧a b { }", /bed/, "bed b { }"],
    ["a decimal comma", "bed b { top ⟦1,2⟧a m }", /1\.2/, "bed b { top 1.2 m }"],
    ["a pounds sign", "client { mass 182⟦#⟧a }", /182 lb/, "client { mass 182 lb"],
    ["a text that is not closed", 'setup ⟦"First week⟧a', /Close/, 'setup "First week"'],
    ["a date written otherwise", "visited ⟦3/4/2026⟧a", /4 March 2026/, "visited 2026-03-04"],
    [
      "a range without a reason",
      "bed b { top ⟦20 in to 23 in⟧a }",
      /adjusted/,
      "bed b { top adjusts 20 in to 23 in }",
    ],
    [
      "a judgement without a person",
      "helper h { safe-pull 30 lbf ⟦judged⟧a }",
      /role/,
      'helper h { safe-pull 30 lbf judged by "" }',
    ],
    [
      "a misspelt step",
      "transfer t { steps { ⟦lok brakes⟧a } }",
      /lock brakes/,
      "transfer t { steps { lock brakes } }",
    ],
    [
      "a name that is nearly another",
      "bed b { }\nwithin-reach { from ⟦c⟧a { phone } }",
      /Write b/,
      "bed b { }\nwithin-reach { from b { phone } }",
    ],
    ["a brace too many", "bed b { }\n⟦}⟧a", /Delete/, "bed b { }\n"],
    ["a missing value", "bed b { ⟦top⟧a }", /unknown/, "bed b { top unknown }"],
  ])("%s is mended", (_, source, title, expected) => {
    const { text, places } = marked(source);
    const page = pageWith(text);
    if (!title) return expect(rulesOf(page)).toContain("form/unknown-word");
    const mended = expectSettled(page, places["a"]!, title);
    expect(mended.startsWith(expected)).toBe(true);
  });

  test.each([
    [
      "a block on one line",
      "⟦bed b⟧a { edge firm; size 39 in by 80 in }",
      "bed b { top unknown; edge firm; size 39 in by 80 in }",
    ],
    ["an empty block on one line", "⟦belt b⟧a { }\n⟦helper h⟧b { }\n⟦bed b2⟧c { }", undefined],
    [
      "a block over several lines",
      "⟦bed b⟧a {\n  edge firm\n  size 39 in by 80 in\n}",
      "bed b {\n  top unknown\n  edge firm\n  size 39 in by 80 in\n}",
    ],
    [
      "a head with a comment",
      "⟦bed b⟧a {  # by the window\n  edge firm\n  size 39 in by 80 in\n}",
      "bed b {  # by the window\n  top unknown\n  edge firm\n  size 39 in by 80 in\n}",
    ],
    [
      "a head without blanks",
      "⟦bed b⟧a{edge firm; size 39 in by 80 in}",
      "bed b{ top unknown;edge firm; size 39 in by 80 in}",
    ],
  ])("a missing key is written as unknown in %s", (_, source, expected) => {
    const { text, places } = marked(source);
    const page = pageWith(text);
    const range = places["c"] ?? places["a"]!;
    const missing = fixesAt(page, range).filter((f) => /^Write top unknown/.test(f.title));
    expect(missing).toHaveLength(1);
    const next = after(page, editsOf(missing[0]!));
    if (expected) expect(next.text).toBe(expected);
    const tops = (p: Page) =>
      p.reported.filter((r) => r.rule === "form/key-missing" && / does not say top:/.test(r.message));
    expect(tops(next).length).toBe(tops(page).length - 1);
    expect(next.reported.filter((r) => r.rule === "form/left-over")).toEqual([]);
  });

  test("a plan that names no rule set is offered the line that does", () => {
    const page = pageWith('setup "T"\nclient { code C-01; mass 80 kg }');
    expect(expectSettled(page, at(page, 'setup "T"'), /Write rules home-transfer/)).toMatch(
      /^setup "T"\nrules home-transfer 2026\.2\n/,
    );
  });

  test("a fix never touches what it was not offered for", () => {
    const { text, places } = marked("bed b { top ⟦24⟧a; edge frim }");
    expect(fixesAt(pageWith(text), places["a"]!).map((f) => f.title)).not.toContain("Write firm");
  });
});

describe("findings of substance", () => {
  const page = pageWith(home, pool);

  test("a step that is missing is put in its place", () => {
    const text = expectSettled(page, at(page, "    slide\n".trim()), /check brakes/, pool);
    expect(text).toContain("    footplates up\n    check brakes\n    slide\n");
  });

  test("a bed at the computed height is no longer a climb", () => {
    const range = at(page, "top-loaded 23 in");
    const action = fixesAt(page, range).find((a) => a.diagnostics?.some((d) => d.code === "height/rise"));
    expect(action!.title).toMatch(/writes \d/);
    const next = after(page, editsOf(action!), pool);
    expect(broken(page)).toContain("height/rise into-bed");
    expect(broken(next)).not.toContain("height/rise into-bed");
  });

  test("a rule that fails no longer does once a change that it offers is made, each by itself", () => {
    const kept: string[] = [];
    const seen = new Set<string>();
    for (const r of page.reported.filter((r) => r.finding)) {
      for (const action of fixesAt(page, r.range)) {
        const asked = action.diagnostics ?? [];
        const key = JSON.stringify(action.edit);
        if (asked.length === 0 || seen.has(key)) continue;
        seen.add(key);
        const next = after(page, editsOf(action), pool);
        const subjects = asked.map((d) => `${d.code} ${(d.data as { subject: string }).subject}`);
        if (!subjects.some((s) => !failing(next).includes(s)))
          kept.push(`${action.title} for ${subjects.join(", ")}`);
      }
    }
    expect(seen.size).toBeGreaterThan(2);
    expect(kept).toEqual([]);
  });
});

describe("planning", () => {
  const page = pageWith(home, pool);
  const find = (p: Page, piece: string, title: RegExp) =>
    fixesAt(p, at(p, piece)).find((a) => title.test(a.title));

  test("the way back is planned in place of `steps planned`, and is then judged like any other", () => {
    const action = find(page, "steps planned", /^Plan the way back/)!;
    const next = after(page, editsOf(action), pool);
    expect(next.text).toContain("way-back out-of-bed of into-bed {\n  steps {\n    ");
    expect(next.text).toMatch(/\n {4}slide\n[^]*\n {2}\}\n\}\n\ntrial into-bed/);
    expect(next.reported.filter((r) => r.rule.startsWith("form/"))).toEqual(
      page.reported.filter((r) => r.rule.startsWith("form/")),
    );
    const wrong = next.reported.filter(
      (r) =>
        r.subject.startsWith("out-of-bed") &&
        r.rule.startsWith("steps/") &&
        r.level !== "advice" &&
        r.verdict === "fails",
    );
    expect(wrong.map((r) => `${r.rule} ${r.subject}`)).toEqual([]);
    expect(formatText(next.text)).toBe(next.text);
  });

  test("it is planned on a line of its own too, with its indentation kept", () => {
    const spread = pageWith(
      home.replace("{ steps planned }", '{\n    note "x"\n    steps planned # later\n}'),
      pool,
    );
    const next = after(spread, editsOf(find(spread, "steps planned", /^Plan the way back/)!), pool);
    expect(next.text).toMatch(/ {4}steps \{\n {6}[a-z][^]*\n {4}\} # later\n\}/);
  });

  test("a transfer without a way back is offered one, with its steps", () => {
    const without = pageWith(home.replace("way-back out-of-bed of into-bed { steps planned }\n", ""), pool);
    const action = find(without, "transfer into-bed", /^Add the way back/)!;
    const next = after(without, editsOf(action), pool);
    expect(next.text).toMatch(/\n\}\n\nway-back out-of-bed of into-bed \{\n {2}steps \{\n {4}/);
    expect(next.scenes.map((s) => s.name)).toEqual(["into-bed", "out-of-bed"]);
    expect(next.scenes[1]!.run!.possible.every((p) => p.ok)).toBe(true);
  });

  test("a transfer without steps has them planned before its closing brace", () => {
    const bare = pageWith(home.replace(/ {2}steps \{[^]*?\n {2}\}\n/, ""), pool);
    expect(bare.scenes[0]!.steps).toBeUndefined();
    const next = after(bare, editsOf(find(bare, "transfer into-bed", /^Plan the steps/)!), pool);
    expect(next.scenes[0]!.steps!.length).toBeGreaterThan(8);
    expect(next.reported.filter((r) => r.rule.startsWith("form/")).length).toBe(
      bare.reported.filter((r) => r.rule.startsWith("form/")).length,
    );
  });

  test("where no order can be planned the reason is said instead", () => {
    const sideless = pageWith(home.replace("  facing head ", "  # facing head "), pool);
    const range = at(sideless, "steps planned");
    expect(fixes(sideless, range, uriOf).some((a) => /Plan the way back/.test(a.title))).toBe(false);
    const shown = fixes(sideless, range, uriOf, { disabled: true }).find(
      (a) => a.title === "Plan the way back",
    )!;
    expect(shown.disabled!.reason).toMatch(/facing/);
    expect(shown.edit).toBeUndefined();
  });

  test("without a rule set nothing is planned", () => {
    const unruled = pageWith(home.replace("rules home-transfer 2026.1", "rules none-such 1"), pool);
    expect(find(unruled, "steps planned", /Plan/)).toBeUndefined();
  });
});

test("a fix for a thing of another file changes that file", () => {
  const workspace = new Workspace({ roots: [path.join(root, "samples")], today: () => today });
  const page = pageOf(workspace, path.join(root, "samples/first-week/home.span"));
  for (const r of page.reported)
    for (const a of fixes(page, r.range, uriOf))
      for (const [uri, edits] of Object.entries(a.edit!.changes!)) {
        const file = [page.path, ...page.household.uses.keys()].find((f) => uriOf(f) === uri)!;
        const got = workspace.text(file);
        expect("text" in got && applyChanges(got.text, edits)).not.toBe("text" in got && got.text);
      }
});
