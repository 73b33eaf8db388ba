import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, test } from "vitest";
import type { MarkupContent } from "vscode-languageserver-protocol";
import { hover } from "../../../server/editor/hover.js";
import { marked, pageWith, root } from "./marked.js";

const sample = readFileSync(path.join(root, "samples/first-week/home.span"), "utf8").replace(
  "../loan-pool.span",
  "loan-pool.span",
);
const pool = { "loan-pool.span": readFileSync(path.join(root, "samples/loan-pool.span"), "utf8") };

const textAt = (source: string, others: { [name: string]: string } = {}): string | undefined => {
  const { text, cursor } = marked(source);
  return (hover(pageWith(text, others), cursor)?.contents as MarkupContent | undefined)?.value;
};
/** The sample with the mark put behind a piece of its text. */
const inSample = (piece: string, offset = piece.length): string | undefined => {
  const at = sample.indexOf(piece);
  expect(at, piece).toBeGreaterThan(0);
  return textAt(`${sample.slice(0, at + offset)}‸${sample.slice(at + offset)}`, pool);
};

describe("on a value", () => {
  test("both systems of units, the tolerance that was written, and how it is measured", () => {
    const text = inSample("  top-loaded 23", 14)!;
    expect(text).toContain("**23 in (584 mm)** — measured");
    expect(text).toContain("Tolerance: ± 1/4 in, as written.");
    expect(text).toMatch(/How to measure: somebody sits on the edge/);
  });

  test("where no tolerance is written, the one of the rule set is in force and named", () => {
    const text = textAt(
      "rules home-transfer 2026.1\nbed b { top ‸584 mm stated; size 39 in by 80 in; edge firm }",
    )!;
    expect(text).toContain("**584 mm (23 in)** — stated");
    expect(text).toMatch(
      /Tolerance: ± \d+ mm, the rule set's for what is stated \(`tolerance-length-stated`\)/,
    );
  });

  test.each([
    [
      "about",
      "bed b { top about ‸22 in to 24 in }",
      /\*\*22 to 24 in \(559 mm to 610 mm\)\*\*[^]*somewhere between/,
    ],
    ["unknown", "bed b { top ‸unknown }", /\*\*unknown\*\* — it must still be found out/],
    ["the second of two sizes", "bed b { size 39 in by ‸80 in }", /\*\*80 in \(2032 mm\)\*\*/],
    [
      "a value of an inner block",
      "wheelchair w { cushion { kind foam; thickness ‸2 in } }",
      /\*\*2 in \(51 mm\)\*\*[^]*front edge/,
    ],
    [
      "who judged it",
      'helper h { safe-pull ‸30 lbf judged by "therapist" }',
      /\*\*30 lbf \(133 N\)\*\* — judged by "therapist"/,
    ],
  ])("%s", (_, source, expected) => {
    expect(textAt(source)).toMatch(expected);
  });
});

describe("on a word", () => {
  test.each([
    ["a kind", "be‸d b { }", /\*\*bed\*\* — a bed/],
    ["a key", "bed b { ed‸ge firm }", /\*\*edge\*\* — [^]*One of: firm, soft, rounded/],
    ["a key and the safer side of an error", "client { ma‸ss 80 kg }", /the larger value is the safer one/],
    ["a statement at top level", 'set‸up "T"', /the title of the plan/],
  ])("%s", (_, source, expected) => {
    expect(textAt(source)).toMatch(expected);
  });

  test("a name shows the lines that declare it, also from another file", () => {
    const text = inSample("  with board-30", 10)!;
    expect(text).toContain("**board-30** — board, line ");
    expect(text).toContain("of loan-pool.span");
    expect(text).toContain("length 30 in");
  });

  test("nothing is said about a blank line or a comment", () => {
    expect(textAt("# wri‸tten\n")).toBeUndefined();
    expect(textAt("\n‸\n")).toBeUndefined();
  });
});

describe("on a transfer", () => {
  test("its word shows every number worked out for it", () => {
    expect(inSample("transfer into-bed", 3)).toMatch(
      /\| height\.rise \| up 3 1\/2 in \(up 3 in to up 4 in\) \|/,
    );
  });
  test("its name shows the arithmetic, line by line, with what was written and the formula", () => {
    const text = inSample("transfer into-bed", 12)!;
    expect(text).toMatch(/- the seat with the client sitting = \*\*19 1\/2 in/);
    expect(text).toMatch(/- height\.rise = [^\n]+ - [^\n]+ = \*\*up 3 1\/2 in/);
  });
});

describe("on a step", () => {
  test("what it needs, what it changes, and how things stand before it", () => {
    const text = inSample("    remove legrest left", 8)!;
    expect(text).toContain("**remove legrest left** — ");
    expect(text).toMatch(/Needs: a leg rest that lifts off\./);
    expect(text).toMatch(/Before step 2: client sitting[^]*brakes locked/);
  });
  test("a step that cannot be done says why", () => {
    const text = textAt(
      `${sample.replace("    unlock brakes\n    approach bed", "    appro‸ach bed")}`,
      pool,
    )!;
    expect(text).toContain("**It cannot be done here**: the brakes are locked.");
  });
});

describe("on a finding", () => {
  test("the number, the limit, the reason, what it rests on with its section, what would help and what not to do", () => {
    const text = inSample("  top-loaded 23", 5)!;
    expect(text).toContain("(`height/rise`)");
    expect(text).toMatch(/- here: \*\*up 3 1\/2 in/);
    expect(text).toMatch(/- limit: /);
    expect(text).toMatch(/Why: [A-Z]/);
    expect(text).toMatch(/Rests on:\n- /);
    expect(text).toMatch(/It says: [^]*Taken from it: /);
    expect(text).toMatch(/What would help:\n- /);
    expect(text).toMatch(/Meanwhile:\n- /);
  });
  test("a rule that is accepted is explained where it is accepted", () => {
    expect(inSample("accept room/loose-rug", 12)).toMatch(/A loose rug[^]*Rests on:[^]*302\.1/);
  });
});

test("free text cannot bring marks of its own into a hover", () => {
  const text = textAt('helper h { safe-pull ‸30 lbf judged by "[x](http://y) <b>" }')!;
  expect(text).not.toMatch(/(?<!\\)\[x\]/);
  expect(text).not.toMatch(/(?<!\\)<b/);
});
