import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { formatText } from "../../../language/text/format.js";
import { parseLine } from "../../../language/text/line.js";
import { linesOf } from "../../../language/text/tree.js";
import { ruleShape } from "../../../rules/engine/read.js";
import { read, rulesOf, saysOf } from "./meaning.js";
import { generatedSetup } from "./setups.js";
import { anyText, patience, respacedSample, ruleFiles, runs, samples } from "./texts.js";

const formatRules = (text: string): string => formatText(text, ruleShape.topOnly);
const commentsOf = (text: string): string[] =>
  linesOf(text).flatMap((t) => {
    const line = parseLine(t);
    return line.comment ? [t.slice(line.comment.start, line.comment.end).trimEnd()] : [];
  });

describe("Formatting keeps what is said", () => {
  const texts = fc.oneof(anyText, respacedSample, generatedSetup);
  it("of any text: the same is understood, the same findings, every comment", { timeout: patience }, () => {
    fc.assert(
      fc.property(texts, (text) => {
        const formatted = formatText(text);
        expect(saysOf(read(formatted))).toEqual(saysOf(read(text)));
        expect(rulesOf(read(formatted))).toEqual(rulesOf(read(text)));
        expect(commentsOf(formatted)).toEqual(commentsOf(text));
      }),
      { numRuns: runs(25) },
    );
  });

  it("of any text: formatted twice is formatted once", { timeout: patience }, () => {
    fc.assert(
      fc.property(texts, (text) => {
        const once = formatText(text);
        expect(formatText(once)).toBe(once);
        const rules = formatRules(text);
        expect(formatRules(rules)).toBe(rules);
      }),
      { numRuns: runs(25) },
    );
  });

  it("of any columns: rows and comments set by hand come to rest at once", { timeout: patience }, () => {
    const gap = fc.integer({ min: 1, max: 12 }).map((n) => " ".repeat(n));
    const word = fc.constantFrom(
      "top",
      "top-loaded",
      "3 in",
      "3.25 in",
      "holds",
      "advice",
      '"a text"',
      "19½ in",
      "a, b",
      "{",
      "}",
      ";",
      "# c",
    );
    const line = fc
      .array(fc.tuple(word, gap), { maxLength: 7 })
      .map((l) => l.map(([w, g]) => w + g).join(""));
    fc.assert(
      fc.property(fc.array(line, { maxLength: 12 }), (lines) => {
        const once = formatText(lines.join("\n"));
        expect(formatText(once)).toBe(once);
      }),
      { numRuns: runs(120) },
    );
  });

  it(
    "of samples with other blanks: the same text comes out, but for the columns set by hand",
    { timeout: patience },
    () => {
      fc.assert(
        fc.property(respacedSample, (text) => {
          const plain = (t: string): string => t.replace(/[ \t]+/g, " ");
          const written = samples.map((s) => plain(formatText(s.text)));
          expect(written).toContain(plain(formatText(text)));
        }),
        { numRuns: runs(8) },
      );
    },
  );
});

describe("Texts that ship", () => {
  it.each(samples.map((s) => [s.path, s.text]))("%s stays as it is", (_path, text) => {
    expect(formatText(text)).toBe(text);
  });
  it.each(ruleFiles.map((f) => [f.path, f.text]))("%s is as the formatter writes it", (_path, text) => {
    expect(formatRules(text)).toBe(text);
  });
  it("are there", () => {
    expect(samples.length).toBeGreaterThan(8);
    expect(ruleFiles.length).toBeGreaterThan(60);
  });
  it.each(ruleFiles.map((f) => [f.path, f.text]))(
    "%s with other blanks keeps its words and comes to rest",
    (_path, text) => {
      // Texts in quotes and comments are left as they are: only the blanks between words are the formatter's.
      const respaced = text.replace(/"[^"\n]*"|#.*|(?<=\S) +(?=\S)/g, (m) => (m.startsWith(" ") ? "   " : m));
      const formatted = formatRules(respaced);
      expect(formatRules(formatted)).toBe(formatted);
      expect(formatted.replace(/\s+/g, "")).toBe(text.replace(/\s+/g, ""));
      expect(commentsOf(formatted)).toEqual(commentsOf(text));
    },
  );
});

describe("Formatting takes time in proportion to the text", () => {
  it.each(["bed {\n", "a  b  c\n", `${"a  ".repeat(50)}\n`, "top 3 in   # c\n", "1 2\n"])(
    "many lines of %j",
    { timeout: 120_000 },
    (piece) => {
      const took = (n: number): number => {
        const text = piece.repeat(n);
        const start = performance.now();
        formatText(text);
        return performance.now() - start;
      };
      took(200);
      const n = runs(1) > 1 ? 1_000 : 60;
      // Sixteen times the text; as the square it would be two hundred and fifty-six times the work.
      expect(took(16 * n) / Math.max(2, took(n), took(n))).toBeLessThan(100);
    },
  );
});
