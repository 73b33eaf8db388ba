import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { linesOf } from "../../../language/text/tree.js";
import type { Household } from "../../../language/model/household.js";
import type { Line } from "../../../language/text/types.js";
import { isFault, readPlan } from "../../../server/workspace/files.js";
import { findingsOf, read, saysOf } from "./meaning.js";
import { anyText, nonsense, patience, runs, samples, spoiltSample, trapWords } from "./texts.js";

/** Every finding of form stands on a line of the text and within it, and findings come in the order of the text. */
function expectPlaced(text: string, home: Household): void {
  const lines = linesOf(text);
  let before = { line: 0, start: 0 };
  for (const p of home.problems) {
    expect(p.line).toBeLessThan(lines.length);
    expect(p.start).toBeGreaterThanOrEqual(0);
    expect(p.end).toBeGreaterThanOrEqual(p.start);
    expect(p.end).toBeLessThanOrEqual(lines[p.line]!.length);
    expect(p.message).not.toMatch(/undefined|NaN|\[object/);
    expect(p.line > before.line || (p.line === before.line && p.start >= before.start)).toBe(true);
    before = p;
  }
}

/** Characters of a line that are neither blank nor part of anything that was read. */
function passedOver(line: Line): string {
  const seen = new Set<number>();
  const cover = (s: { start: number; end: number }): void => {
    for (let i = s.start; i < s.end; i++) seen.add(i);
  };
  for (const item of line.items) {
    if (item.type === "close") cover(item);
    else for (const a of item.atoms) cover(a);
  }
  if (line.comment) cover(line.comment);
  return [...line.text].length === 0
    ? ""
    : line.text
        .split("")
        .filter((c, i) => !seen.has(i) && !/[\s{;]/.test(c))
        .join("");
}

describe("Whatever a file holds, it is read to its end", () => {
  it("finds the same in the same text, each finding in its place and in order", { timeout: patience }, () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const home = read(text);
        expectPlaced(text, home);
        expect(findingsOf(read(text))).toEqual(findingsOf(home));
      }),
      { numRuns: runs(25) },
    );
  });

  it("reads after any edit what it would read anew", { timeout: patience }, () => {
    const edit = fc.tuple(anyText, anyText, fc.nat(), fc.nat(), fc.boolean());
    fc.assert(
      fc.property(edit, ([old, text, from, to, whole]) => {
        // Either another text altogether, or some of its lines in place of some of the old one's.
        const lines = linesOf(old);
        lines.splice(from % (lines.length + 1), to % 4, ...linesOf(text).slice(0, 3));
        const now = whole ? text : lines.join("\n");
        const kept = read(now, read(old).tree);
        expect(findingsOf(kept)).toEqual(findingsOf(read(now)));
        expect(saysOf(kept)).toEqual(saysOf(read(now)));
      }),
      { numRuns: runs(25) },
    );
  });

  it(
    "passes over nothing: a line without a finding is understood to its last character",
    { timeout: patience },
    () => {
      fc.assert(
        fc.property(fc.oneof(anyText, nonsense), (text) => {
          for (const line of read(text).tree.lines)
            if (line.problems.length === 0) expect(passedOver(line), JSON.stringify(line.text)).toBe("");
        }),
        { numRuns: runs(25) },
      );
    },
  );
});

describe("Files as they are read from a disk", () => {
  let folder = "";
  beforeAll(() => void (folder = mkdtempSync(path.join(tmpdir(), "spanwise-"))));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it("takes any bytes for a plan, or says why they are none", { timeout: patience }, () => {
    const letters = fc.constantFrom(...Buffer.from('bed { top 19½ in }\r\n"#;1/2\u00a0\u2028'));
    const bytes = fc.oneof(
      fc.uint8Array({ maxLength: 120 }),
      fc.array(letters, { maxLength: 120 }).map((b) => Uint8Array.from(b)),
    );
    const file = path.join(folder, "home.span");
    fc.assert(
      fc.property(bytes, (content) => {
        writeFileSync(file, content);
        const plan = readPlan(file);
        if (isFault(plan)) expect(["not-text", "too-large"]).toContain(plan.problem);
        else expectPlaced(plan.text, read(plan.text));
      }),
      { numRuns: runs(25) },
    );
  });
});

describe("Samples cut short", () => {
  it.each(samples.map((s) => [s.path, s.text]))(
    "%s, at any character",
    { timeout: patience },
    (_path, text) => {
      const step = runs(1) > 1 ? 13 : 197;
      for (let end = 0; end < text.length; end += step) {
        const cut = text.slice(0, end);
        expectPlaced(cut, read(cut));
      }
    },
  );
});

describe("Words that every object has of itself mean nothing here", () => {
  const places: readonly (readonly [string, (w: string) => string])[] = [
    ["a kind", (w) => `${w} { top 3 in }`],
    ["a key at top level", (w) => `${w} 3 in`],
    ["a name", (w) => `bed ${w} { top 23 in }\ntransfer t { from ${w} to ${w}; with ${w} }`],
    ["a key", (w) => `bed { ${w} 3 in }`],
    ["a block inside", (w) => `bed { ${w} { top 3 in } }`],
    ["a choice", (w) => `bed { edge ${w} }`],
    ["a unit", (w) => `bed { top 3 ${w} }`],
    ["a step", (w) => `transfer t { steps { ${w}; ${w} left; approach ${w} } }`],
    ["a thing from another file", (w) => `from "${w}" use ${w}`],
    ["a rule", (w) => `accept ${w}/${w} at ${w} because "x"\nexpect ${w}/${w} fails for ${w}`],
    ["what may change", (w) => `may change { ${w}.${w} 3 in; ${w} moved; ${w} instead-of ${w} }`],
  ];
  it.each(places)("as %s", (_place, text) => {
    const words = trapWords.slice(0, 6);
    const counts = words.map((w) => read(text(w)).problems.length);
    // A word that begins with a line is no name; neither is one that no object has of itself.
    const plain = (w: string): number =>
      read(text(w.startsWith("_") ? "__gribble__" : "gribble")).problems.length;
    for (const [i, w] of words.entries()) {
      expectPlaced(text(w), read(text(w)));
      expect(counts[i], w).toBe(plain(w));
    }
  });
});

describe("Numbers that no tape shows", () => {
  it.each([
    "1/0 in",
    "-3 in",
    "- 3 in",
    `${"9".repeat(400)} in`,
    `0.${"0".repeat(400)}1 in`,
    `1/${"9".repeat(400)} in`,
    `${"1/2 ".repeat(400)}in`,
    "3 in ± -1 in",
    "3 in - 5 in",
  ])("%s", (amount) => {
    const text = `bed { top ${amount} }`;
    const home = read(text);
    expectPlaced(text, home);
    expect(JSON.stringify(saysOf(home))).not.toMatch(/null|NaN/);
    expect(home.problems.some((p) => p.rule !== "form/key-missing")).toBe(true);
  });
});

/**
 * Work in proportion to the text, told by time beside an ordinary text of the same length, read in the same run. What grows as the
 * square of the length takes hundreds of times as long here; the limit is generous because other programs run meanwhile.
 */
describe("Long texts take no more than their share", () => {
  const limit = 40;
  const [characters, lines] = runs(1) > 1 ? [100_000, 8_000] : [24_000, 1_500];
  const took = (work: () => unknown): number => {
    const once = (): number => {
      const start = performance.now();
      work();
      return performance.now() - start;
    };
    return Math.max(1, Math.min(once(), once()));
  };
  const repeated = (piece: string): string => piece.repeat(characters / piece.length);
  let ordinary = 0;
  let ordinaryLines = 0;
  beforeAll(() => {
    ordinary = took(() => read(repeated("top 3 in; ")));
    ordinaryLines = took(() => editedOnTop("bed {\n top 3 in\n}\n"));
  });
  const editedOnTop = (piece: string): void => {
    const text = piece.repeat(lines);
    void read(`bed x { }\n${text}`, read(text).tree);
  };

  const shortPieces = ["9#9 ", '"\\"', "bed {", "1,1,"];
  const morePieces = [
    "1#",
    "1/",
    "½",
    "}",
    "\\",
    "-",
    '"',
    "“",
    "a-",
    "1 x ",
    "1 ft ",
    "{",
    "{}",
    ";",
    "€",
    "bed { top 3 in } ",
    "1'",
    "-1",
  ];
  it.each(runs(1) > 1 ? [...shortPieces, ...morePieces] : shortPieces)(
    "a line of many %s",
    { timeout: 120_000 },
    (piece) => {
      expect(took(() => read(repeated(piece))) / ordinary).toBeLessThan(limit);
    },
  );

  const manyLines = ["bed {\n", "slide\n", "bed b { top 3 in }\n", "\u2028\n", "bed b {\n top 3 in\n}\n"];
  it.each(manyLines)("many lines of %j, and one more on top of them", { timeout: 120_000 }, (piece) => {
    expect(took(() => editedOnTop(piece)) / ordinaryLines).toBeLessThan(limit);
  });

  it("a line of a megabyte, and blocks nested ten thousand deep", () => {
    expectPlaced("x".repeat(2 ** 20), read("x".repeat(2 ** 20)));
    const open = read(`note "${"a ".repeat(2 ** 19)}`);
    expect(open.problems.map((p) => p.rule)).toContain("form/text-not-closed");
    for (const gap of [" ", "\n"]) {
      const deep = `bed {${gap}`.repeat(10_000) + `}${gap}`.repeat(10_000);
      expect(read(deep).problems.map((p) => p.rule)).toContain(
        gap === " " ? "form/nested-too-deep" : "form/block-not-closed",
      );
      expect(read(`room {${gap}` + `walk {${gap}`.repeat(10_000)).problems.map((p) => p.rule)).toContain(
        "form/nested-too-deep",
      );
    }
  });
});

describe("Spoilt samples", () => {
  it("what stands on the lines that were not touched is still understood", { timeout: patience }, () => {
    fc.assert(
      fc.property(spoiltSample, (text) => {
        const home = read(text);
        expectPlaced(text, home);
        // The statements of the tree are those of its lines: none is lost between the two.
        const inTree = home.tree.entries.reduce((n, e) => n + countOf(e.entry.node), 0);
        const inLines = home.tree.lines.reduce(
          (n, l) => n + l.items.filter((i) => i.type === "statement").length,
          0,
        );
        if (!home.problems.some((p) => p.rule === "form/nested-too-deep")) expect(inTree).toBe(inLines);
      }),
      { numRuns: runs(25) },
    );
  });
});

const countOf = (node: Household["tree"]["entries"][number]["entry"]["node"]): number =>
  1 + (node.children ?? []).reduce((n, c) => n + countOf(c), 0);
