/** Formatting as the smallest changes: lines that stay as they are keep their marks, folds and cursors. */
import type { Range, TextEdit } from "vscode-languageserver-protocol";
import { formatText } from "../../language/text/format.js";
import { touches } from "./where.js";

/** `tops`: the kinds that stand only at top level in this kind of file; those of setups by default. */
export function formatting(text: string, tops?: ReadonlySet<string>): TextEdit[] {
  return edits(text, formatText(text, tops));
}

/** Only what lies in the range; the whole text is formatted and the rest left alone, so that the indentation is right. */
export const formattingIn = (text: string, range: Range, tops?: ReadonlySet<string>): TextEdit[] =>
  formatting(text, tops).filter((e) => touches(e.range, range));

/** From one text to the other by whole lines: what is alike at both ends stays, and in between each line that differs is replaced. */
export function edits(before: string, after: string): TextEdit[] {
  if (before === after) return [];
  const ending = before.includes("\r\n") ? "\r\n" : "\n";
  const a = before.split(/\r\n|\n|\r/);
  const b = after.split(/\r\n|\n|\r/);
  let head = 0;
  while (head < a.length && head < b.length && a[head] === b[head]) head++;
  let tail = 0;
  while (
    tail < a.length - head &&
    tail < b.length - head &&
    a[a.length - 1 - tail] === b[b.length - 1 - tail]
  )
    tail++;
  const [endA, endB] = [a.length - tail, b.length - tail];
  if (endA - head === endB - head) {
    const found: TextEdit[] = [];
    for (let i = head; i < endA; i++)
      if (a[i] !== b[i])
        found.push({
          range: { start: { line: i, character: 0 }, end: { line: i, character: a[i]!.length } },
          newText: b[i]!,
        });
    return found;
  }
  const lines = b.slice(head, endB);
  // Whole lines go or come with one line break: the one behind them, or at the end of the text the one before.
  if (endA < a.length)
    return [
      {
        range: { start: { line: head, character: 0 }, end: { line: endA, character: 0 } },
        newText: lines.map((l) => l + ending).join(""),
      },
    ];
  const start = head === 0 ? { line: 0, character: 0 } : { line: head - 1, character: a[head - 1]!.length };
  return [
    {
      range: { start, end: { line: a.length - 1, character: a[a.length - 1]!.length } },
      newText: lines.map((l, i) => (i === 0 && head === 0 ? l : ending + l)).join(""),
    },
  ];
}
