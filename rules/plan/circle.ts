/**
 * The largest clear circle: where the least distance to everything is greatest. Metres.
 *
 * A distance changes by no more than a point moves, so a square cell holds no point that is further from everything than its
 * middle by more than half its diagonal. Cells that cannot beat the best middle found are dropped, the others cut in four, until
 * no cell promises more than the precision: the true radius lies between `radius` and `atMost`.
 */
import type { Point } from "./room.js";

/** Least distance from a point to whatever is in the way; below zero inside of it. */
export type Distance = (x: number, y: number) => number;

/** Distance to the walls of a room from a point in it; below zero outside. */
export function insideDistance(walls: readonly Point[]): Distance {
  const count = walls.length;
  return (x, y) => {
    let least = Infinity;
    let inside = false;
    for (let n = 0, m = count - 1; n < count; m = n++) {
      const a = walls[m]!;
      const b = walls[n]!;
      if (a.y > y !== b.y > y && x < ((b.x - a.x) * (y - a.y)) / (b.y - a.y) + a.x) inside = !inside;
      const dx = b.x - a.x;
      const dy = b.y - a.y;
      const square = dx * dx + dy * dy;
      const u = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - a.x) * dx + (y - a.y) * dy) / square));
      const ex = x - a.x - u * dx;
      const ey = y - a.y - u * dy;
      least = Math.min(least, ex * ex + ey * ey);
    }
    const distance = Math.sqrt(least);
    return inside ? distance : -distance;
  };
}

/** Distance to a box; below zero inside. */
export function boxDistance(west: number, east: number, south: number, north: number): Distance {
  return (x, y) => {
    const dx = Math.max(west - x, x - east);
    const dy = Math.max(south - y, y - north);
    return dx > 0 && dy > 0 ? Math.sqrt(dx * dx + dy * dy) : Math.max(dx, dy);
  };
}

export const leastOf =
  (all: readonly Distance[]): Distance =>
  (x, y) => {
    let least = Infinity;
    for (const d of all) least = Math.min(least, d(x, y));
    return least;
  };

export interface Search {
  readonly distance: Distance;
  /** Corners of a box that holds every place to be tried. */
  readonly low: Point;
  readonly high: Point;
  /** How near to the true radius is near enough. */
  readonly precision: number;
  /** Only places where this is not above zero may be the middle; it tells how far a place is from them, at least. */
  readonly outside?: Distance;
  /**
   * Only what a disc of this radius can reach from where it starts counts. `sure`: cells all of whose points keep the disc clear;
   * `possible`: cells some of whose points may; `drawn`: cells whose middle does.
   */
  readonly reach?: {
    readonly radius: number;
    readonly start: (x: number, y: number) => boolean;
    readonly taken: "sure" | "drawn" | "possible";
  };
}

export interface Circle {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly atMost: number;
}

/** First cells of about three inches, more in a hall, so that the work is bounded. */
const firstCell = 0.075;
const mostCells = 6000;
/** Cells kept at one size; past that the search ends and `atMost` says what is still possible. */
const mostKept = 20000;

interface Cell {
  readonly x: number;
  readonly y: number;
  readonly d: number;
}

/** The largest clear circle; none where no place is clear, allowed and within reach. */
export function largestCircle(s: Search): Circle | undefined {
  const wide = s.high.x - s.low.x;
  const deep = s.high.y - s.low.y;
  if (!(wide > 0 && deep > 0 && Number.isFinite(wide * deep))) return undefined;
  let size = Math.max(firstCell, Math.sqrt((wide * deep) / mostCells), Math.max(wide, deep) / mostCells);
  let cells = firstCells(s, size);
  let best: Circle | undefined;
  for (;;) {
    for (const c of cells)
      if (c.d > (best?.radius ?? 0) && (s.outside?.(c.x, c.y) ?? 0) <= 0)
        best = { x: c.x, y: c.y, radius: c.d, atMost: c.d };
    const half = (size * Math.SQRT2) / 2;
    const worth = Math.max(best?.radius ?? 0, 0) + s.precision;
    cells = cells.filter((c) => c.d + half > worth && (s.outside?.(c.x, c.y) ?? 0) <= half);
    if (cells.length === 0) return best && { ...best, atMost: best.radius + s.precision };
    if (cells.length > mostKept || size < s.precision / 8)
      return best && { ...best, atMost: cells.reduce((m, c) => Math.max(m, c.d + half), best.radius) };
    size /= 2;
    const next: Cell[] = [];
    for (const c of cells)
      for (const [i, j] of quarters) {
        const x = c.x + (i * size) / 2;
        const y = c.y + (j * size) / 2;
        next.push({ x, y, d: s.distance(x, y) });
      }
    cells = next;
  }
}

const quarters = [
  [-1, -1],
  [1, -1],
  [-1, 1],
  [1, 1],
] as const;

function firstCells(s: Search, size: number): Cell[] {
  const columns = Math.max(1, Math.ceil((s.high.x - s.low.x) / size));
  const rows = Math.max(1, Math.ceil((s.high.y - s.low.y) / size));
  const at = (k: number): Cell => {
    const x = s.low.x + ((k % columns) + 0.5) * size;
    const y = s.low.y + (Math.floor(k / columns) + 0.5) * size;
    return { x, y, d: s.distance(x, y) };
  };
  const all = Array.from({ length: columns * rows }, (_, k) => at(k));
  if (!s.reach) return all;
  const half = (size * Math.SQRT2) / 2;
  const slack = { sure: -half, drawn: 0, possible: half }[s.reach.taken];
  const free = (k: number): boolean => all[k]!.d + slack >= s.reach!.radius;
  const seen = new Set<number>();
  const next: number[] = [];
  const visit = (k: number): void => {
    if (seen.has(k) || !free(k)) return;
    seen.add(k);
    next.push(k);
  };
  for (const [k, c] of all.entries()) if (s.reach.start(c.x, c.y)) visit(k);
  while (next.length > 0) {
    const k = next.pop()!;
    const column = k % columns;
    if (column > 0) visit(k - 1);
    if (column < columns - 1) visit(k + 1);
    if (k >= columns) visit(k - columns);
    if (k < columns * (rows - 1)) visit(k + columns);
  }
  return [...seen].map((k) => all[k]!);
}
