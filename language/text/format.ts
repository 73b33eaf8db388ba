/**
 * The formatter: one spelling, one indentation, comments kept where they stand. It works line by line from what the reader read,
 * so it cannot change what a text means; a line that cannot be read keeps its text and is only indented.
 */
import { topOnly } from "../vocabulary/index.js";
import { alignComments, alignRows, type Row } from "./align.js";
import { parseLine } from "./line.js";
import { piecesOf, plainPieces } from "./spelling.js";
import { linesOf } from "./tree.js";
import type { Line, Statement } from "./types.js";

const indent = "  ";

/** Formats a text. Formatting twice gives the same as once. `tops`: the kinds that stand only at top level in this kind of file. */
export function formatText(text: string, tops: ReadonlySet<string> = topOnly): string {
  const rows: Row[] = [];
  const setup = tops === topOnly;
  let open: string[] = [];
  for (const raw of linesOf(text)) {
    const line = parseLine(raw);
    if (startsAtTop(line, tops)) open = [];
    const depth = Math.max(0, open.length - leadingCloses(line));
    const row = rowOf(line, indent.repeat(Math.min(depth, 40)), open, setup);
    follow(line, open);
    const blank = isBlank(row);
    if (!blank || (rows.length > 0 && !isBlank(rows[rows.length - 1]!))) rows.push(row);
  }
  while (rows.length > 0 && isBlank(rows[rows.length - 1]!)) rows.pop();
  alignRows(rows);
  alignComments(rows);
  return rows.map((r) => `${r.written}\n`).join("");
}

const isBlank = (r: Row): boolean => r.pieces.length === 0 && r.comment === undefined;

function startsAtTop(line: Line, tops: ReadonlySet<string>): boolean {
  const item = line.items[0];
  const head = item?.type === "statement" && item.opens ? item.atoms[0] : undefined;
  return head?.type === "word" && tops.has(head.word);
}

function leadingCloses(line: Line): number {
  const n = line.items.findIndex((item) => item.type !== "close");
  return n < 0 ? line.items.length : n;
}

/** Brings the blocks that are open up to date with what a line opens and closes. */
function follow(line: Line, open: string[]): void {
  for (const item of line.items) {
    if (item.type === "close") open.pop();
    else if (item.opens) open.push(kindOf(item));
  }
}

/** The kind of the block that a statement opens. */
const kindOf = (s: Statement): string => {
  const [a, b] = s.atoms;
  if (a?.type !== "word") return "";
  return a.word === "may" && b?.type === "word" && b.word === "change" ? "may-change" : a.word;
};

function rowOf(line: Line, margin: string, open: readonly string[], setup: boolean): Row {
  // A text that could not be read is left as it was typed.
  if (line.problems.length > 0) return { margin, ...plainPieces(line), written: "" };
  const comment = line.comment && {
    text: line.text.slice(line.comment.start, line.comment.end).trimEnd(),
    column: line.comment.start,
  };
  return { margin, pieces: piecesOf(line, open, kindOf, setup), ...(comment && { comment }), written: "" };
}
