/** What lies behind the walls of a room, with its bounds, and the smallest and the largest room. */
import { exactly } from "../../language/quantity/interval.js";
import { opposite, runsEast, type RoomOutline, type Sides, type WallOutline } from "./outline.js";
import type { Outline } from "./room.js";

/** How thick the outside is taken to be behind a wall: more than any chair is long. */
const behind = 3;

export interface WallSolid {
  readonly name: string;
  readonly sides: Sides;
  /** The wall itself, from end to end. */
  readonly face: Outline;
}

/**
 * What lies behind each wall, as a box with its bounds, so that a chair that would stand in a wall or outside is as wrong as it is
 * far out. It ends where the room begins again on the other side, as in the notch of a U.
 */
export function wallSolids(walls: readonly WallOutline[]): readonly WallSolid[] {
  return walls.map((w) => {
    const out = w.inward.x + w.inward.y < 0 ? 1 : -1;
    const others = walls.filter(
      (o) =>
        o.side === opposite[w.side] &&
        (o.across.nominal - w.across.nominal) * out > 0 &&
        o.begins.nominal < w.ends.nominal &&
        o.ends.nominal > w.begins.nominal,
    );
    const thick = Math.min(behind, ...others.map((o) => Math.abs(o.across.nominal - w.across.nominal)));
    const far = exactly(w.across.nominal + out * thick);
    const [low, high] = out > 0 ? [w.across, far] : [far, w.across];
    const sides: Sides = runsEast(w.side)
      ? { west: w.begins, east: w.ends, south: low, north: high }
      : { south: w.begins, north: w.ends, west: low, east: high };
    return { name: w.name, sides, face: [w.from, w.to] };
  });
}

/** Corners of the smallest or the largest room within the bounds: every wall as far in, or as far out, as it may be. */
export function roomWithin(room: RoomOutline, which: "smallest" | "largest"): Outline {
  const sides = room.sides;
  return room.walls.map((corner, n) => {
    const both = [sides[(n + sides.length - 1) % sides.length]!, sides[n]!];
    const place = (vertical: boolean, otherwise: number): number => {
      const w = both.find((wall) => runsEast(wall.side) !== vertical);
      if (!w) return otherwise;
      const outHigh = w.side === "north" || w.side === "east";
      return outHigh === (which === "largest") ? w.across.high : w.across.low;
    };
    return { x: place(true, corner.x), y: place(false, corner.y) };
  });
}
