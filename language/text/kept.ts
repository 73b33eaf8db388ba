/**
 * What a reading takes over from the one before: lines and entries whose text did not change stay the same objects, so that
 * whatever was worked out from them is kept too. Most edits touch one place, so the lines that are alike at both ends are
 * compared one by one, and only what lies between is looked up.
 */
import { parseLines } from "./line.js";
import type { Entry, Line, Tree } from "./types.js";

/** Lines of a text; the first `head` and the last `tail` of them are those of the tree before. */
export interface KeptLines {
  readonly lines: readonly Line[];
  readonly head: number;
  readonly tail: number;
}

/** The lines of `texts`: those of the tree before where they are alike, equal texts being one object. */
export function keptLines(texts: readonly string[], before: Tree | undefined): KeptLines {
  const old = before?.lines ?? [];
  const most = Math.min(texts.length, old.length);
  let head = 0;
  while (head < most && old[head]!.text === texts[head]) head++;
  let tail = 0;
  while (tail < most - head && old[old.length - 1 - tail]!.text === texts[texts.length - 1 - tail]) tail++;
  const known = old.slice(head, old.length - tail);
  /** Where each text stands in the lines known before and those that must be read, which follow them. */
  const seen = new Map<string, number>();
  for (let i = 0; i < known.length; i++) seen.set(known[i]!.text, i);
  const unread: string[] = [];
  const places: number[] = [];
  for (let i = head; i < texts.length - tail; i++) {
    const text = texts[i]!;
    let at = seen.get(text);
    if (at === undefined) {
      seen.set(text, (at = known.length + unread.length));
      unread.push(text);
    }
    places.push(at);
  }
  const all = known.concat(parseLines(unread));
  const between = places.map((at) => all[at]!);
  return { lines: old.slice(0, head).concat(between, old.slice(old.length - tail)), head, tail };
}

/** How many entries that begin alike are compared before one is read anew: a bound, so that repeated text costs no more. */
const tries = 8;

/** Entries of a tree that may be taken over, each once. */
export class Kept {
  /** Entries of the lines that are alike at both ends, by the line on which they would start now. */
  private readonly inPlace = new Map<number, { entry: Entry; ends: number }>();
  /** Entries of the lines between, by their first line. */
  private readonly between = new Map<Line, Entry[]>();

  constructor(head: number, tail: number, lines: number, before: Tree | undefined) {
    if (!before) return;
    const moved = lines - before.lines.length;
    for (const { entry, line } of before.entries) {
      const ends = line + entry.lines.length;
      if (!isComplete(entry)) continue;
      if (ends <= head) this.inPlace.set(line, { entry, ends });
      else if (line >= before.lines.length - tail)
        this.inPlace.set(line + moved, { entry, ends: ends + moved });
      else {
        const list = this.between.get(entry.lines[0]!);
        if (list) list.push(entry);
        else this.between.set(entry.lines[0]!, [entry]);
      }
    }
    // The first in the text is taken first, from the end of its list.
    for (const list of this.between.values()) list.reverse();
  }

  /** An entry of the tree before with just the lines that start at `i`, if there is one that was not taken yet. */
  at(i: number, lines: readonly Line[]): Entry | undefined {
    const same = this.inPlace.get(i);
    if (same) return same.entry;
    const list = this.between.get(lines[i]!);
    if (!list) return undefined;
    for (let k = list.length - 1; k >= Math.max(0, list.length - tries); k--) {
      const own = list[k]!.lines;
      if (i + own.length > lines.length || !own.every((line, j) => line === lines[i + j])) continue;
      return list.splice(k, 1)[0];
    }
    return undefined;
  }
}

/**
 * Whether reading an entry again with other lines behind it would give the same. A block that was never closed depends on
 * what follows it, and entries that share a line on one another.
 */
function isComplete(e: Entry): boolean {
  const last = e.lines[e.lines.length - 1]!.items;
  if (e.node.children === undefined) return e.lines.length === 1 && last.length === 1;
  const item = last[last.length - 1];
  return (
    e.node.close !== undefined &&
    e.node.close.line === e.lines.length - 1 &&
    e.node.line === 0 &&
    item?.type === "close" &&
    e.node.close.start === item.end &&
    e.lines[0]!.items[0] === e.node.statement
  );
}
