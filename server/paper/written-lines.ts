/** At which lines of its file the statements of a rule stand, so that a page can be laid beside the text and read line by line. */
import type { Rule, RuleFile } from "../../rules/engine/types.js";
import { lineOf } from "../../rules/engine/explain-strip.js";

export interface WrittenLines {
  /** Counted from 1. */
  readonly first: number;
  readonly last: number;
  /**
   * The lines of the statements that begin with one of these words, in order. As many as `count`; where the text has another
   * number of them, none is said rather than a wrong one.
   */
  of(words: readonly string[], count: number): readonly (number | undefined)[];
}

export function writtenLines(rule: Rule, files: readonly RuleFile[]): WrittenLines {
  const text = files.find((f) => f.path === rule.at.path)?.text ?? "";
  const lines = text.split(/\r\n?|\n/);
  const first = lineOf(rule.at);
  const found: { word: string; line: number }[] = [];
  let depth = 0;
  let last = first;
  for (let i = first - 1; i < lines.length; i++) {
    // Braces, semicolons and number signs within a text are part of it.
    const bare = lines[i]!.replaceAll(/"[^"]*"/g, '""').replace(/#.*$/, "");
    for (const piece of bare.match(/[^;{}]+|[{}]/g) ?? []) {
      const word = piece.trim().split(/\s/)[0]!;
      if (piece === "{") depth++;
      else if (piece === "}") depth--;
      else if (depth === 1 && word !== "") found.push({ word, line: i + 1 });
    }
    last = i + 1;
    if (depth <= 0) break;
  }
  return {
    first,
    last,
    of(words, count) {
      const own = found.filter((f) => words.includes(f.word)).map((f) => f.line);
      return own.length === count ? own : Array.from({ length: count }, () => undefined);
    },
  };
}
