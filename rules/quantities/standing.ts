/** What stands in the room besides the bed, as boxes in plan, and how far each may be from where it is drawn. */
import { exactly, type Interval } from "../../language/quantity/interval.js";
import { isQuantity, type Thing, type Value } from "../../language/model/types.js";
import type { Box } from "../plan/room.js";
import type { Of } from "../quantity.js";
import { absent } from "./inputs.js";

/** Lengths by numbered names (`at 0 1`), as the inputs give them. */
export type Handed = {
  readonly [numbered: `${"at" | "size"} ${number} ${1 | 2}` | `wall ${number}`]: Interval | undefined;
} & {
  readonly [numbered: `${"thing" | "stands"} ${number}`]: string | undefined;
} & {
  /** How many things but the bed stand in the room; `thing n`, `stands n`, `at n 1`, `size n 1` and so on tell of each. */
  readonly others: number;
  readonly ways?: readonly Value[];
};

const views = new WeakMap<object, Thing>();
/** Lengths of the walls as walked, each an input. */
export function wallInputs(room: Thing, of: Of): Record<string, unknown> {
  const walls = room.values["walk"];
  if (!Array.isArray(walls)) return { walls: absent(room, "the walls of the room (walk)", "walk") };
  const all: Record<string, unknown> = { ways: walls };
  walls.forEach((w: Value, n) => {
    if (typeof w !== "object" || w === null || Array.isArray(w) || isQuantity(w) || !("length" in w)) return;
    let view = views.get(w);
    if (!view) {
      view = { ...room, values: w as Thing["values"], inner: {}, placeOf: () => room.placeOf("walk") };
      views.set(w, view);
    }
    all[`wall ${n}`] = of.written(view, "length", `wall ${n + 1}`);
  });
  return all;
}

const off = (i: Interval | undefined): number => (i ? Math.max(i.high - i.nominal, i.nominal - i.low) : 0);

interface Extent {
  readonly west: number;
  readonly east: number;
  readonly south: number;
  readonly north: number;
  /** How far the far walls may be off. */
  readonly off: number;
}

/** Where the outermost walls stand, as walked from the south-west corner. */
function extent(i: Handed): Extent {
  const box = { west: 0, east: 0, south: 0, north: 0, off: 0 };
  let x = 0;
  let y = 0;
  (i.ways ?? []).forEach((w, n) => {
    const length = i[`wall ${n}`];
    if (!length) return;
    const way = typeof w === "object" && w !== null && "way" in w ? w.way : undefined;
    if (way === "east") x += length.nominal;
    if (way === "west") x -= length.nominal;
    if (way === "north") y += length.nominal;
    if (way === "south") y -= length.nominal;
    box.off = Math.max(box.off, off(length));
    box.west = Math.min(box.west, x);
    box.east = Math.max(box.east, x);
    box.south = Math.min(box.south, y);
    box.north = Math.max(box.north, y);
  });
  return box;
}

export interface Standing {
  readonly name: string;
  readonly box: Box;
  /** How far each of its sides may be from where it is drawn. */
  readonly offX: number;
  readonly offY: number;
}

/** Width along its wall and depth into the room; without a wall, width from west to east. */
export function placedOutlines(i: Handed): readonly Standing[] {
  const room = extent(i);
  const zero = exactly(0);
  return Array.from({ length: i.others }, (_, n) => {
    const at: Interval = i[`at ${n} 1`] ?? zero;
    const second: Interval = i[`at ${n} 2`] ?? zero;
    const wide: Interval = i[`size ${n} 1`] ?? zero;
    const deep: Interval = i[`size ${n} 2`] ?? zero;
    const box = (x: number, y: number, w: Interval, d: Interval, offX: number, offY: number): Standing => ({
      name: String(i[`thing ${n}`]),
      box: { x, y, width: w.nominal, depth: d.nominal },
      offX,
      offY,
    });
    const along = off(at) + off(wide);
    switch (i[`stands ${n}`]) {
      case "north":
        return box(at.nominal, room.north - deep.nominal, wide, deep, along, room.off + off(deep));
      case "south":
        return box(at.nominal, room.south, wide, deep, along, off(deep));
      case "east":
        return box(room.east - deep.nominal, at.nominal, deep, wide, room.off + off(deep), along);
      case "west":
        return box(room.west, at.nominal, deep, wide, off(deep), along);
      default:
        return box(at.nominal, second.nominal, wide, deep, along, off(second) + off(deep));
    }
  });
}
