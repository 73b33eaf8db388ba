/**
 * The least and the greatest clearance of a chair that stands anywhere in boxes of poses. Both come from what the clearance can
 * change by (`Clearance`): a box is halved where that is most, the box that decides first.
 */
import type { Clearance } from "./clearance.js";
import type { PoseBox } from "./problem.js";

/** What a bound may miss, metres, and how many clearances it may take; after that it is wider, and holds all the same. */
const within = 1e-3;
const looks = 1500;

interface Cell {
  readonly at: readonly [x: number, y: number, t: number];
  readonly half: readonly [x: number, y: number, t: number];
  /** No pose of the cell lies further in the direction looked in. */
  readonly bound: number;
}

/** No pose in any of the boxes has a lower clearance; not looked at more closely once all are above `enough`, or one below `least`. */
export const leastIn = (
  of: Clearance,
  boxes: readonly PoseBox[],
  enough: number,
  least = -Infinity,
): number => -farthest(of, boxes, -1, -enough, -least);

/** No pose in the box has a higher clearance, counted no further up than `most`; not looked at more closely once none is above `enough`. */
export const greatestIn = (of: Clearance, box: PoseBox, most: number, enough = -Infinity): number =>
  Math.min(most, farthest(of, [box], 1, enough, most));

/** Bounds the greatest clearance (`sign` 1), or the greatest of minus the clearance (-1), from above. */
function farthest(
  of: Clearance,
  boxes: readonly PoseBox[],
  sign: 1 | -1,
  enough: number,
  most: number,
): number {
  let seen = -Infinity;
  const cell = (at: Cell["at"], half: Cell["half"]): Cell => {
    const value = sign * of.at(...at);
    seen = Math.max(seen, value);
    return { at, half, bound: value + Math.hypot(half[0], half[1]) + of.reach * half[2] };
  };
  const cells = boxes.map(({ x, y, heading }) => {
    const ranges = [x, y, heading] as const;
    const middle = ranges.map((r) => (r.low + r.high) / 2) as [number, number, number];
    return cell(middle, ranges.map((r) => (r.high - r.low) / 2) as [number, number, number]);
  });
  for (let asked = 1; ; asked += 2) {
    let first = 0;
    for (let n = 1; n < cells.length; n++) if (cells[n]!.bound > cells[first]!.bound) first = n;
    const decides = cells[first]!;
    if (decides.bound <= Math.max(enough, seen + within) || seen >= most || asked > looks)
      return decides.bound;
    const moves = [decides.half[0], decides.half[1], of.reach * decides.half[2]] as const;
    const axis = moves[2] >= moves[0] && moves[2] >= moves[1] ? 2 : moves[0] >= moves[1] ? 0 : 1;
    const less = decides.half.map((h, n) => (n === axis ? h / 2 : h)) as [number, number, number];
    const beside = (by: number) =>
      decides.at.map((v, n) => (n === axis ? v + by * less[axis] : v)) as [number, number, number];
    cells[first] = cell(beside(-1), less);
    cells.push(cell(beside(1), less));
  }
}
