import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { formatText } from "../../../language/text/format.js";
import { definition, highlights, references } from "../../../server/editor/definition.js";
import { edits, formatting } from "../../../server/editor/formatting.js";
import { folding, outline } from "../../../server/editor/outline.js";
import { applyChanges } from "../../../server/editor/page.js";
import { marked, pageWith, uriOf } from "./marked.js";

const pool = { "pool.span": "# lent\nboard long { length 90 cm; width 20 cm }\n" };
const source = `from "pool.span" use long
bed ⟦b⟧a { top 50 cm }
wheelchair w { seat-height 50 cm }
transfer t {
  from w to ⟦b⟧b
  with long
  steps { approach ⟦b⟧c }
}
may change { ⟦b⟧d.top 17 in to 23 in "other frame" }
accept room/loose-rug at ⟦b⟧e until 2026-04-01 because "x"
within-reach { from ⟦b⟧f { phone } }
`;

describe("from a name", () => {
  const { text, places } = marked(source);
  const page = pageWith(text, pool);

  test.each(["b", "c", "d", "e", "f"])("its declaration is found from place %s", (place) => {
    expect(definition(page, places[place]!.start, uriOf)).toEqual({
      uri: "test:home.span",
      range: places["a"],
    });
  });

  test("every use is found, and the declaration if it is asked for", () => {
    const all = references(page, places["c"]!.start, uriOf, true).map((l) => l.range);
    expect(new Set(all.map((r) => JSON.stringify(r)))).toEqual(
      new Set(Object.values(places).map((r) => JSON.stringify(r))),
    );
    expect(references(page, places["a"]!.start, uriOf, false)).toHaveLength(5);
    expect(highlights(page, places["a"]!.start)).toHaveLength(6);
  });

  test("a thing of another file is found there, and the file from its name", () => {
    const used = definition(page, { line: 5, character: 8 }, uriOf);
    expect(used).toEqual({
      uri: "test:pool.span",
      range: { start: { line: 1, character: 6 }, end: { line: 1, character: 10 } },
    });
    expect(definition(page, { line: 0, character: 8 }, uriOf)!.uri).toBe("test:pool.span");
  });

  test("a word that names nothing leads nowhere", () => {
    expect(definition(page, { line: 1, character: 9 }, uriOf)).toBeUndefined();
    expect(references(page, { line: 3, character: 1 }, uriOf, true)).toEqual([]);
  });
});

describe("the outline", () => {
  test("names what is declared, with what stands inside, also while lines are wrong", () => {
    const { tree } = pageWith(
      'setup "T"\nwheelchair w {\n  seat hihg\n  cushion { kind foam }\n}\ntransfer t {\n  steps {\n    slide\n  }\n}',
    );
    const all = outline(tree);
    expect(all.map((s) => [s.name, s.detail])).toEqual([
      ["setup", "T"],
      ["w", "wheelchair"],
      ["t", "transfer"],
    ]);
    expect(all[1]!.children!.map((s) => s.name)).toEqual(["cushion"]);
    for (const s of all) expect(s.range.end.line).toBeGreaterThanOrEqual(s.selectionRange.end.line);
  });

  test("blocks of several lines and comments that run on can be folded", () => {
    const { tree } = pageWith("# one\n# two\nbed b {\n  top 50 cm\n  edge firm\n}\nbed c { top 50 cm }");
    expect(folding(tree)).toEqual([
      { startLine: 2, endLine: 4 },
      { startLine: 0, endLine: 1, kind: "comment" },
    ]);
  });
});

describe("formatting", () => {
  test("only lines that change are touched", () => {
    const text = "bed b {\n   top   50 cm\n  edge firm\n}\n";
    expect(formatting(text)).toEqual([
      {
        range: { start: { line: 1, character: 0 }, end: { line: 1, character: 14 } },
        newText: "  top 50 cm",
      },
    ]);
    expect(formatting(applyChanges(text, formatting(text)))).toEqual([]);
  });

  test("the changes give what the formatter writes, whatever was written", () => {
    const line = fc.constantFrom(
      "bed b {",
      "}",
      "  top 5'2\"",
      "",
      "",
      "# c",
      "edge  firm;",
      "size 54 x 75 in",
      "steps { lock the brakes }",
      "\t",
    );
    fc.assert(
      fc.property(fc.array(line, { maxLength: 12 }), fc.constantFrom("\n", "\r\n"), (lines, ending) => {
        const text = lines.join(ending);
        const done = applyChanges(text, formatting(text));
        expect(done.replaceAll("\r\n", "\n")).toBe(formatText(text).replaceAll("\r\n", "\n"));
      }),
    );
  });

  test("the changes between any two texts lead from one to the other", () => {
    const text = fc.array(fc.constantFrom("a", "b", "", "c"), { maxLength: 8 }).map((l) => l.join("\n"));
    fc.assert(fc.property(text, text, (a, b) => applyChanges(a, edits(a, b)) === b));
  });
});
