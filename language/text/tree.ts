/**
 * Lines to entries: a top-level statement, or a block with what stands in it. Blocks are paired by their braces; a line that
 * starts with a kind that stands only at top level and opens a block closes every block still open, so that one missing brace
 * does not swallow the rest of the file.
 */
import { Kept, keptLines } from "./kept.js";
import { says } from "./messages.js";
import type { Entry, Line, LineProblem, Node, Place, Statement, Tree } from "./types.js";

/** Which first words stand only at top level; given by the vocabulary of the kind of file. */
export interface Shape {
  readonly topOnly: ReadonlySet<string>;
}

type Located = LineProblem & { line: number };
interface Open {
  readonly statement: Statement;
  readonly line: number;
  readonly children: Node[];
}
const deepest = 64;

/**
 * Reads a whole text. With `before`, lines and entries whose text did not change are the same objects as in it.
 * Never throws; takes time in proportion to the text.
 */
export function readTree(text: string, shape: Shape, before?: Tree): Tree {
  const texts = linesOf(text);
  const kept = keptLines(texts, before);
  return new Reader(kept.lines, shape, new Kept(kept.head, kept.tail, texts.length, before)).read();
}

class Reader {
  private entries: { entry: Entry; line: number }[] = [];
  private stray: Located[] = [];
  constructor(
    private readonly lines: readonly Line[],
    private readonly shape: Shape,
    private readonly kept: Kept,
  ) {}

  read(): Tree {
    let i = 0;
    while (i < this.lines.length) {
      const line = this.lines[i]!;
      if (line.items.length === 0) {
        for (const p of line.problems) this.stray.push({ ...p, line: i });
        i++;
        continue;
      }
      const kept = this.kept.at(i, this.lines);
      if (kept) {
        this.entries.push({ entry: kept, line: i });
        i += kept.lines.length;
      } else i = this.readFrom(i);
    }
    return { entries: this.entries, lines: this.lines, problems: this.stray };
  }

  /** Reads the entries that start on line `first`; returns the first line that belongs to none of them. */
  private readFrom(first: number): number {
    const stack: Open[] = [];
    const roots: Node[] = [];
    const problems: Located[] = [];
    let i = first;
    let tooDeep = 0;
    for (; i < this.lines.length; i++) {
      const line = this.lines[i]!;
      const at = i - first;
      if (i > first && stack.length > 0 && this.startsAtTop(line)) break;
      for (const p of line.problems) problems.push({ ...p, line: at });
      for (const item of line.items) {
        if (item.type === "close") {
          if (tooDeep > 0) tooDeep--;
          else if (stack.length > 0) this.close(stack, roots, at, item.end);
          else
            problems.push({
              rule: "form/brace-without-block",
              message: says["form/brace-without-block"](),
              start: item.start,
              end: item.end,
              line: at,
              fixes: [{ title: "Delete it", text: "" }],
            });
        } else if (tooDeep > 0) {
          if (item.opens) tooDeep++;
        } else if (item.opens && stack.length >= deepest) {
          tooDeep = 1;
          problems.push({
            rule: "form/nested-too-deep",
            message: says["form/nested-too-deep"](),
            start: item.start,
            end: item.end,
            line: at,
          });
        } else if (item.opens) stack.push({ statement: item, line: at, children: [] });
        else (stack[stack.length - 1]?.children ?? roots).push({ statement: item, line: at });
      }
      if (stack.length === 0) {
        i++;
        break;
      }
    }
    // Blocks still open end here; the innermost names the place, since that is where the brace was forgotten.
    if (stack.length > 0) {
      const open = stack[stack.length - 1]!;
      const what =
        open.statement.atoms
          .map((a) => (a.type === "word" ? a.raw : ""))
          .join(" ")
          .trim() || "{";
      problems.push({
        rule: "form/block-not-closed",
        message: says["form/block-not-closed"]({ what }),
        start: open.statement.start,
        end: open.statement.end,
        line: open.line,
      });
    }
    while (stack.length > 0) this.close(stack, roots, undefined, 0);
    this.keep(first, i, roots, problems);
    return i;
  }

  private close(stack: Open[], roots: Node[], line: number | undefined, start: number): void {
    const { statement, line: opened, children } = stack.pop()!;
    const node: Node =
      line === undefined
        ? { statement, line: opened, children }
        : { statement, line: opened, children, close: { line, start } };
    (stack[stack.length - 1]?.children ?? roots).push(node);
  }

  /** Makes an entry of each root; roots that share a line share its lines, and its problems go to the first. */
  private keep(first: number, end: number, roots: readonly Node[], problems: readonly Located[]): void {
    const lines = this.lines.slice(first, end);
    if (roots.length === 0) {
      for (const p of problems) this.stray.push({ ...p, line: p.line + first });
      return;
    }
    for (const [k, node] of roots.entries())
      this.entries.push({ entry: { node, lines, problems: k === 0 ? problems : [] }, line: first });
  }

  private startsAtTop(line: Line): boolean {
    const item = line.items[0];
    if (item?.type !== "statement" || !item.opens) return false;
    const head = item.atoms[0];
    return head?.type === "word" && this.shape.topOnly.has(head.word);
  }
}

/** The lines of a text, whatever ends them. */
export const linesOf = (text: string): string[] =>
  text.includes("\r") ? text.split(/\r\n|\n|\r/) : text.split("\n");

/** The place of a statement. */
export const placeOfNode = (entry: Entry, node: Node): Place => ({
  entry,
  line: node.line,
  start: node.statement.start,
  end: node.statement.end,
});
