/**
 * Where in a text a position stands: in which blocks, behind which words. Worked out from tokens and open braces alone, so that
 * it also answers in a text that is half written or broken.
 */
import type { Position, Range } from "vscode-languageserver-protocol";
import { parseLine } from "../../language/text/line.js";
import { Closed, lexer, Open, OpenText, PoundsSign, Semicolon, Text } from "../../language/text/tokens.js";
import type { Atom, Entry, Node, Statement, Tree } from "../../language/text/types.js";
import { setupVocabulary, topOnly } from "../../language/vocabulary/index.js";
import type { BlockSpec } from "../../language/vocabulary/types.js";

/** What stands before a position, as far as it decides what may follow. */
export interface Spot {
  /** Heads of the blocks that are open here, the outermost first, each with its line. */
  readonly open: readonly { readonly head: Statement; readonly line: number }[];
  /** The whole words, numbers and marks of this statement that stand before the position. */
  readonly before: readonly Atom[];
  /** The part of a word that stands directly before the position, as typed. */
  readonly typed: string;
  /** Columns of the word being typed, on both sides of the position. */
  readonly start: number;
  readonly end: number;
  /** Inside a comment or a text: nothing of the vocabulary can stand here. */
  readonly inside: "comment" | "text" | undefined;
}

const wordBefore = /[A-Za-z\u00c0-\u024f_][A-Za-z0-9\u00c0-\u024f_./-]*$/;
const wordAfter = /^[A-Za-z0-9\u00c0-\u024f_/-]*/;

/** The longest line of which a position is worked out; a longer one is no statement of a setup. */
const longest = 2_000;

export function spotAt(tree: Tree, position: Position): Spot | undefined {
  const line = tree.lines[position.line];
  if (!line) return undefined;
  const prefix = line.text.slice(0, position.character);
  if (prefix.length > longest) return undefined;
  const { tokens } = lexer.tokenize(prefix);
  const last = tokens[tokens.length - 1];
  const inComment = line.comment !== undefined && position.character > line.comment.start;
  const closedText = last?.tokenType === Text && last.startOffset + last.image.length === position.character;
  const inside =
    inComment || last?.tokenType === PoundsSign
      ? "comment"
      : last?.tokenType === OpenText
        ? "text"
        : undefined;
  let from = 0;
  for (const t of tokens)
    if (t.tokenType === Semicolon || t.tokenType === Open || t.tokenType === Closed)
      from = t.startOffset + t.image.length;
  const typed = inside === undefined && !closedText ? (wordBefore.exec(prefix.slice(from))?.[0] ?? "") : "";
  const start = position.character - typed.length;
  const after = inside === undefined ? wordAfter.exec(line.text.slice(position.character))![0] : "";
  const blank = " ".repeat(from);
  const segment = blank + prefix.slice(from, inside === "text" ? last!.startOffset : start);
  const statement = parseLine(segment).items.find((i) => i.type === "statement");
  return {
    open: openAt(tree, position.line, prefix.slice(0, from)),
    before: statement?.type === "statement" ? statement.atoms : [],
    typed,
    start,
    end: typed === "" ? start : position.character + after.length,
    inside,
  };
}

/** The blocks open before a line, and then behind the part of it that precedes the position. */
function openAt(tree: Tree, line: number, part: string): Spot["open"] {
  let first = line;
  while (first > 0 && !startsAtTop(tree, first)) first--;
  const open: { head: Statement; line: number }[] = [];
  const take = (items: readonly (Statement | { readonly type: "close" })[], at: number): void => {
    for (const item of items) {
      if (item.type === "close") open.pop();
      else if (item.opens) open.push({ head: item, line: at });
    }
  };
  for (let i = first; i < line; i++) take(tree.lines[i]!.items, i);
  take(parseLine(part).items, line);
  return open;
}
function startsAtTop(tree: Tree, line: number): boolean {
  const item = tree.lines[line]!.items[0];
  if (item?.type !== "statement" || !item.opens) return false;
  const head = item.atoms[0];
  return head?.type === "word" && topOnly.has(head.word);
}

/** The kind that a head names: `may change` is one kind in two words. */
export function kindOf(atoms: readonly Atom[]): { readonly kind: string; readonly used: number } | undefined {
  const [a, b] = atoms;
  if (a?.type !== "word") return undefined;
  if (a.word === "may" && b?.type === "word" && b.word === "change") return { kind: "may-change", used: 2 };
  return { kind: a.word, used: 1 };
}

/** The vocabulary of the innermost of some open blocks; undefined where one of them is not in the vocabulary. */
export function specOf(
  heads: readonly Statement[],
): { readonly spec: BlockSpec; readonly kind: string } | undefined {
  let at: { spec: BlockSpec; kind: string } | undefined;
  for (const head of heads) {
    const kind = kindOf(head.atoms)?.kind;
    if (kind === undefined) return undefined;
    const blocks: { readonly [kind: string]: BlockSpec } = at
      ? (at.spec.blocks ?? {})
      : setupVocabulary.blocks;
    if (!Object.hasOwn(blocks, kind)) return undefined;
    at = { spec: blocks[kind]!, kind };
  }
  return at;
}

/** The statement under a position, the blocks around it, and the atom that the position touches. */
export interface Hit {
  readonly entry: Entry;
  /** First line of the entry. */
  readonly line: number;
  /** From the entry's own statement to the one at the position; the last is the one at the position. */
  readonly nodes: readonly Node[];
  readonly atom: Atom | undefined;
  readonly index: number;
}

export function hitAt(tree: Tree, position: Position): Hit | undefined {
  for (const { entry, line } of entriesOn(tree, position.line)) {
    const nodes: Node[] = [];
    const at = position.line - line;
    const find = (node: Node): boolean => {
      const s = node.statement;
      if (node.line === at && s.start <= position.character && position.character <= s.end) {
        nodes.push(node);
        return true;
      }
      nodes.push(node);
      for (const child of node.children ?? []) if (find(child)) return true;
      nodes.pop();
      return false;
    };
    if (!find(entry.node)) continue;
    const atoms = nodes[nodes.length - 1]!.statement.atoms;
    // Between two atoms that touch, the position belongs to the one that starts there.
    let index = atoms.findIndex((a) => a.start <= position.character && position.character < a.end);
    if (index < 0) index = atoms.findIndex((a) => a.end === position.character);
    return { entry, line, nodes, atom: atoms[index], index };
  }
  return undefined;
}

/** The entries that hold a line, found by halving: entries stand in the order of their lines. */
export function entriesOn(tree: Tree, line: number): Tree["entries"] {
  const { entries } = tree;
  let low = 0;
  let high = entries.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const e = entries[middle]!;
    if (e.line + e.entry.lines.length <= line) low = middle + 1;
    else high = middle;
  }
  const found: Tree["entries"][number][] = [];
  for (let i = low; i < entries.length && entries[i]!.line <= line; i++) found.push(entries[i]!);
  return found;
}

export const rangeOn = (line: number, start: number, end: number): Range => ({
  start: { line, character: start },
  end: { line, character: end },
});

/** From the start of a statement to the end of its block. */
export function rangeOfNode(node: Node, line: number): Range {
  const { statement, close } = node;
  const end = close
    ? { line: line + close.line, character: close.start }
    : { line: line + lastLine(node), character: lastEnd(node) };
  return { start: { line: line + node.line, character: statement.start }, end };
}
const lastChild = (node: Node): Node => {
  const last = node.children?.[node.children.length - 1];
  return last ? lastChild(last) : node;
};
const lastLine = (node: Node): number => lastChild(node).line;
const lastEnd = (node: Node): number => lastChild(node).statement.end;

export const contains = (range: Range, p: Position): boolean =>
  !isBefore(p, range.start) && !isBefore(range.end, p);
const isBefore = (a: Position, b: Position): boolean =>
  a.line < b.line || (a.line === b.line && a.character < b.character);
export const touches = (a: Range, b: Range): boolean =>
  !isBefore(a.end, b.start) && !isBefore(b.end, a.start);

/** Every statement of an entry with the blocks around it, in the order of the text. */
export function* statementsOf(
  node: Node,
  around: readonly Node[] = [],
): Generator<{ readonly node: Node; readonly around: readonly Node[] }> {
  yield { node, around };
  for (const child of node.children ?? []) yield* statementsOf(child, [...around, node]);
}
