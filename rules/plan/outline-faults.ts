/** What is wrong with a room as walked: walls that enclose nothing or cross, things that stand outside or in each other. */
import type { Outline, Point } from "./room.js";

/** Why a room's outline is no room: it encloses nothing, or walls cross or lie on each other. */
export interface ShapeFault {
  readonly is: "nothing-enclosed" | "walls-cross";
  /** The two walls, by number, where two cross. */
  readonly walls?: readonly [number, number];
}

/** Less than a square millimetre of floor is no room. */
const noArea = 1e-6;

export function faultOf(walls: Outline, turn: number): ShapeFault | undefined {
  const n = walls.length;
  for (let i = 0; i < n; i++)
    for (let j = i + 1; j < n; j++) {
      const neighbours = j === i + 1 || (i === 0 && j === n - 1);
      if (meet(walls, i, j, neighbours)) return { is: "walls-cross", walls: [i + 1, j + 1] };
    }
  return n < 4 || !(Math.abs(turn) > noArea) ? { is: "nothing-enclosed" } : undefined;
}

/** Whether two walls along the axes share a point, or (neighbours) more than their common corner. */
function meet(walls: Outline, i: number, j: number, neighbours: boolean): boolean {
  const end = (k: number): Point => walls[(k + 1) % walls.length]!;
  const [a, b, c, d] = [walls[i]!, end(i), walls[j]!, end(j)];
  const common = (p: number, q: number, r: number, s: number): number =>
    Math.min(Math.max(p, q), Math.max(r, s)) - Math.max(Math.min(p, q), Math.min(r, s));
  const x = common(a.x, b.x, c.x, d.x);
  const y = common(a.y, b.y, c.y, d.y);
  const tiny = 1e-9;
  if (neighbours) return (x > tiny && y > -tiny) || (y > tiny && x > -tiny);
  return x > -tiny && y > -tiny;
}
