/**
 * Columns set by hand. Comments behind neighbouring lines stand in one column, and rows that a writer set below one another
 * stay so. Neighbours are lines that follow each other with the same margin.
 */
import type { Piece } from "./spelling.js";

/** A line on its way to be written. */
export interface Row {
  readonly margin: string;
  readonly pieces: readonly Piece[];
  readonly comment?: { readonly text: string; readonly column: number };
  /** What is written in the end. */
  written: string;
}

/** A line longer than this keeps its comment to itself: others would be pushed out of sight. */
const longest = 64;

/** Where a piece stands in its row, counted from the row's first piece, and the blanks in front of it. */
interface Spot {
  readonly column: number;
  readonly gap: number;
}
/** For every row, the spots of its pieces; none for one that is glued or not of the writer's own spelling. */
type Layout = readonly (readonly (Spot | undefined)[])[];

/** A piece, by the numbers of its row and of itself. */
interface Stop {
  readonly row: number;
  readonly piece: number;
}
/** Pieces below one another. */
interface Chain {
  readonly column: number;
  readonly stops: Stop[];
  /** The least number of blanks in front of one of them. */
  gap: number;
}

/** The most blanks that are kept between a column and the longest piece before it. */
const widest = 3;
/** Over how many rows that end before it a column is followed. */
const reach = 4;
/** A layout nearly always stands after two rounds; one that would not is written without columns. */
const rounds = 6;

/**
 * Writes the pieces of every row. Pieces of neighbouring rows that were typed in the same column, at least one of them behind
 * more than one blank, are written in the same column again, as far behind the longest as the writer chose. A row that ends
 * before a column does not interrupt it.
 */
export function alignRows(rows: readonly Row[]): void {
  let layout: Layout = rows.map(typed);
  for (let round = 0; round < rounds; round++) {
    const next = laidOut(rows, chainsOf(rows, layout));
    const stands = next.every((row, r) => row.every((spot, p) => sameSpot(spot, layout[r]![p])));
    layout = next;
    // What has been moved may stand below something else now; written out it must be read as the same columns.
    if (stands) return write(rows, layout);
  }
  write(rows, laidOut(rows, []));
}

const sameSpot = (a: Spot | undefined, b: Spot | undefined): boolean =>
  a === b || (a !== undefined && b !== undefined && a.column === b.column && a.gap === b.gap);

const typed = (row: Row): (Spot | undefined)[] => {
  const from = row.pieces[0]?.column ?? 0;
  return row.pieces.map((p) =>
    p.glued || p.column === undefined ? undefined : { column: p.column - from, gap: p.gap },
  );
};

function write(rows: readonly Row[], layout: Layout): void {
  for (const [r, row] of rows.entries()) {
    let out = "";
    for (const [p, piece] of row.pieces.entries()) {
      if (!piece.glued) out = out.padEnd(layout[r]![p]?.column ?? out.length + 1);
      out += piece.text;
    }
    row.written = out === "" ? "" : row.margin + out;
  }
}

/** The layout with these columns: each as far left as its longest row allows. Columns come from left to right. */
function laidOut(rows: readonly Row[], chains: readonly Chain[]): Layout {
  const chainAt = rows.map(() => new Map<number, Chain>());
  for (const chain of chains) for (const { row, piece } of chain.stops) chainAt[row]!.set(piece, chain);
  const spots = rows.map((row): (Spot | undefined)[] => row.pieces.map(() => undefined));
  // How far each row is written: its next piece, and the column behind the one before it.
  const done = rows.map(() => ({ piece: 0, end: 0 }));
  const advance = (row: number, to: number): number => {
    const at = done[row]!;
    while (at.piece < to) put(row, at.piece, at.end + 1);
    return at.end;
  };
  const put = (row: number, p: number, column: number): void => {
    const at = done[row]!;
    const piece = rows[row]!.pieces[p]!;
    const start = piece.glued ? at.end : column;
    if (!piece.glued && piece.column !== undefined) spots[row]![p] = { column: start, gap: start - at.end };
    at.end = start + piece.text.length;
    at.piece = p + 1;
  };
  for (const chain of chains) {
    let column = 0;
    for (const { row, piece } of chain.stops) column = Math.max(column, advance(row, piece) + chain.gap);
    for (const { row, piece } of chain.stops) put(row, piece, column);
  }
  for (const [r, row] of rows.entries()) advance(r, row.pieces.length);
  return spots;
}

/** Columns from left to right, so that each depends on those before it only. */
function chainsOf(rows: readonly Row[], layout: Layout): Chain[] {
  const chains: Chain[] = [];
  interface Above extends Stop {
    readonly gap: number;
    chain: Chain | undefined;
  }
  let above = new Map<number, Above>();
  for (const [r, row] of rows.entries()) {
    const spots = layout[r]!;
    const neighbours = r > 0 && row.pieces.length > 0 && rows[r - 1]!.margin === row.margin;
    const last = spots[spots.length - 1];
    const end = (last?.column ?? 0) + (row.pieces[row.pieces.length - 1]?.text.length ?? 0);
    const here = new Map<number, Above>();
    if (neighbours && row.pieces.length > 1)
      for (const [c, a] of above) if (c > end && r - a.row <= reach) here.set(c, a);
    for (const [p, spot] of spots.entries()) {
      if (p === 0 || !spot) continue;
      const over = neighbours ? above.get(spot.column) : undefined;
      let chain: Chain | undefined;
      if (over && (over.gap > 1 || spot.gap > 1)) {
        chain = over.chain ??= {
          column: spot.column,
          stops: [{ row: over.row, piece: over.piece }],
          gap: over.gap,
        };
        if (chain.stops.length === 1) chains.push(chain);
        chain.stops.push({ row: r, piece: p });
        chain.gap = Math.max(1, Math.min(chain.gap, spot.gap, widest));
      }
      here.set(spot.column, { row: r, piece: p, gap: spot.gap, chain });
    }
    above = here;
  }
  return chains.sort((a, b) => a.column - b.column);
}

/**
 * Puts the comments behind what is written: one column for neighbours, the leftmost of those in which they were typed if there is
 * room, else one blank behind the longest line.
 */
export function alignComments(rows: readonly Row[]): void {
  let run: Row[] = [];
  const end = (): void => {
    let column = Infinity;
    for (const row of run) column = Math.min(column, row.comment!.column);
    for (const row of run) column = Math.max(column, row.written.length + 1);
    for (const row of run) row.written = row.written.padEnd(column) + row.comment!.text;
    run = [];
  };
  for (const row of rows) {
    const trails = row.comment !== undefined && row.pieces.length > 0;
    const alone = trails && row.written.length > longest;
    if (run.length > 0 && (!trails || alone || run[0]!.margin !== row.margin)) end();
    if (row.comment && row.pieces.length === 0) row.written = row.margin + row.comment.text;
    if (trails) run.push(row);
    if (alone) end();
  }
  if (run.length > 0) end();
}
