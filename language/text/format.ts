/**
 * The formatter: one spelling, one indentation, comments kept where they stand. It works line by line from what the reader read,
 * so it cannot change what a text means; a line that cannot be read keeps its text and is only indented.
 */
import { blockSpec, setupVocabulary, topOnly } from "../vocabulary/index.js";
import { readStep, spell } from "../vocabulary/verbs.js";
import { atomText } from "./atom.js";
import { parseLine } from "./line.js";
import type { Atom, Line, Statement } from "./types.js";

const indent = "  ";

/** Formats a text. Formatting twice gives the same as once. `tops`: the kinds that stand only at top level in this kind of file. */
export function formatText(text: string, tops: ReadonlySet<string> = topOnly): string {
  const out: string[] = [];
  let open: string[] = [];
  for (const raw of text.split(/\r\n|\n|\r/)) {
    const line = parseLine(raw);
    if (startsAtTop(line, tops)) open = [];
    const leading = leadingCloses(line);
    const depth = Math.max(0, open.length - leading);
    const formatted = formatLine(line, depth, open);
    open = openAfter(line, open);
    if (formatted === "" && (out.length === 0 || out[out.length - 1] === "")) continue;
    out.push(formatted);
  }
  while (out[out.length - 1] === "") out.pop();
  return out.length === 0 ? "" : `${out.join("\n")}\n`;
}

function startsAtTop(line: Line, tops: ReadonlySet<string>): boolean {
  const item = line.items[0];
  const head = item?.type === "statement" && item.opens ? item.atoms[0] : undefined;
  return head?.type === "word" && tops.has(head.word);
}

function leadingCloses(line: Line): number {
  let n = 0;
  for (const item of line.items) {
    if (item.type !== "close") break;
    n++;
  }
  return n;
}

function openAfter(line: Line, before: readonly string[]): string[] {
  const open = [...before];
  for (const item of line.items) {
    if (item.type === "close") open.pop();
    else if (item.opens) open.push(firstWord(item) ?? "");
  }
  return open;
}

const firstWord = (s: Statement): string | undefined => {
  const a = s.atoms[0];
  return a?.type === "word" ? a.word : undefined;
};

function formatLine(line: Line, depth: number, open: readonly string[]): string {
  const text = line.text.trim();
  if (text === "") return "";
  const margin = indent.repeat(Math.min(depth, 40));
  // A text that could not be read is left as it was typed.
  if (line.problems.length > 0) return margin + text;
  const comment = line.comment ? line.text.slice(line.comment.start, line.comment.end).trimEnd() : "";
  const code = formatItems(line, open);
  if (code === "") return margin + comment;
  if (comment === "") return margin + code;
  // A comment set at a column by hand stays there, if there is room before it.
  const column = Math.max(margin.length + code.length + 1, line.comment!.start);
  return (margin + code).padEnd(column) + comment;
}

function formatItems(line: Line, open: readonly string[]): string {
  let out = "";
  let last: "" | "statement" | "open" | "close" = "";
  const blocks = [...open];
  for (const item of line.items) {
    if (item.type === "close") {
      out += last === "" || (last === "close" && out.endsWith("}")) ? (last === "" ? "}" : " }") : " }";
      blocks.pop();
      last = "close";
      continue;
    }
    if (last === "statement") out += "; ";
    else if (last === "close") out += "; ";
    else if (last === "open") out += " ";
    const words = formatStatement(item, blocks[blocks.length - 1]);
    out += words;
    if (item.opens) {
      out += words === "" ? "{" : " {";
      blocks.push(firstWord(item) ?? "");
      last = "open";
    } else last = "statement";
  }
  return out;
}

/** A statement of a block of kind `inside`. */
function formatStatement(s: Statement, inside: string | undefined): string {
  if (inside === "steps" && s.atoms.length > 0 && s.atoms.every((a) => a.type === "word")) {
    const step = readStep(s.atoms.map((a) => (a as { word: string }).word)).step;
    if (step) return spell(step);
  }
  let out = "";
  for (const [i, atom] of s.atoms.entries()) {
    const written =
      i === 0 && atom.type === "word" ? keySpelling(atom.word, atom.raw, inside) : spelling(atom);
    const before = s.atoms[i - 1];
    const glued =
      i === 0 ||
      (atom.type === "mark" && (atom.mark === "," || atom.mark === ":" || atom.mark === ")")) ||
      (before?.type === "mark" && before.mark === "(") ||
      minusBefore(s.atoms, i);
    out += glued ? written : ` ${written}`;
  }
  return out;
}

/** A sign directly in front of a number belongs to it, unless it stands between two values. */
function minusBefore(atoms: readonly Atom[], i: number): boolean {
  const sign = atoms[i - 1];
  if (sign?.type !== "mark" || sign.mark !== "-" || sign.end !== atoms[i]!.start) return false;
  const before = atoms[i - 2];
  return before === undefined || before.type === "word";
}

/** The one spelling of a key: small letters, and the key itself where another spelling of it was typed. */
function keySpelling(word: string, raw: string, inside: string | undefined): string {
  const keys = inside === undefined ? setupVocabulary.keys : blockSpec(inside)?.keys;
  if (keys && Object.hasOwn(keys, word)) return word;
  for (const [key, spec] of Object.entries(keys ?? {})) if (spec.also?.includes(word)) return key;
  if (blockSpec(word)) return word;
  return raw;
}

/** The letter or sign between two sizes is written `by`. */
const spelling = (a: Atom): string =>
  a.type === "word" && (a.raw === "×" || a.raw === "x") ? a.word : atomText(a);
