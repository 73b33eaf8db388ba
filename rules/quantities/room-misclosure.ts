/** Whether the walls as walked come back to where they started, and if not, which wall is most likely wrong. */
import { divide, root, square, add, type Interval } from "../../language/quantity/interval.js";
import type { Thing } from "../../language/model/types.js";
import { area, closure, corners, wallLeg } from "../plan/traverse.js";
import type { Compass } from "../plan/room.js";
import type { Of, Outcome } from "../quantity.js";
import type { Scene } from "../scene.js";
import { choiceOf, derived, isWritten } from "./inputs.js";
import { itemsOf, roomOf, roomOr, wallInputs, type Inputs, type RoomHanded } from "./standing.js";

function walked(s: Scene, of: Of): Inputs {
  const found = roomOr(s);
  return "none" in found ? found : wallInputs(found.room, of);
}

export const roomMisclosure = derived({
  name: "room.misclosure",
  dimension: "length",
  says: "how far from the start the walk along the walls ends; nothing if it closes",
  formula: "root of (east less west)² + (north less south)², summed over the walls",
  source: "surveying: closure of a traverse",
  inputs: walked,
  compute: (i: RoomHanded): Interval => roomOf(i).closure.error,
});

export const roomMisclosureShare = derived({
  name: "room.misclosure-share",
  dimension: "ratio",
  says: "how far the walk along the walls misses its start, as a part of its whole length",
  formula: "room.misclosure / length of all walls",
  source: "surveying: closure of a traverse",
  inputs: walked,
  compute: (i: RoomHanded): Outcome => {
    const { error, perimeter } = roomOf(i).closure;
    if (perimeter.low <= 0) return { without: "the walls have no length" };
    return { value: divide(error, perimeter) };
  },
});

const other = (w: Compass): boolean => w === "north" || w === "south";
const off = (i: Interval): number => Math.max(i.high - i.nominal, i.nominal - i.low);

interface Walk {
  readonly lengths: readonly Interval[];
  readonly ways: readonly Compass[];
}
interface Diagonal {
  readonly corners: "sw-ne" | "nw-se";
  readonly length: Interval;
}

/** The corner furthest towards a corner of the compass, and the one furthest the other way: their distance. */
function across(walk: Walk, which: Diagonal["corners"]): Interval | undefined {
  const points = corners(walk.lengths.map((l, n) => wallLeg(l, walk.ways[n]!)));
  const lean = which === "sw-ne" ? 1 : -1;
  let from = points[0];
  let to = points[0];
  if (!from || !to) return undefined;
  const place = (c: NonNullable<typeof from>): number => c.x.nominal + lean * c.y.nominal;
  for (const c of points) {
    if (place(c) < place(from)) from = c;
    if (place(c) > place(to)) to = c;
  }
  const apart = (a: Interval, b: Interval): Interval => ({
    low: b.low - a.high,
    nominal: b.nominal - a.nominal,
    high: b.high - a.low,
  });
  return root(add(square(apart(from.x, to.x)), square(apart(from.y, to.y))));
}

/**
 * The one wall whose length, corrected by the whole error, makes the walk close and agrees with every diagonal; none where the
 * error does not run along the walls of one direction, or where several walls would do.
 */
export function wallMostLikelyWrong(walk: Walk, diagonals: readonly Diagonal[]): number | undefined {
  const legs = walk.lengths.map((l, n) => wallLeg(l, walk.ways[n]!));
  const { east, north } = closure(legs);
  const missesEast = east.low > 0 || east.high < 0;
  const missesNorth = north.low > 0 || north.high < 0;
  if (missesEast === missesNorth) return undefined;
  const fitting: number[] = [];
  walk.ways.forEach((way, n) => {
    if (other(way) !== missesNorth) return;
    const error = missesNorth ? north.nominal : east.nominal;
    const towards = way === "north" || way === "east" ? 1 : -1;
    const length = walk.lengths[n]!.nominal - towards * error;
    if (!(length > 0)) return;
    const by = off(walk.lengths[n]!);
    const lengths = walk.lengths.map((l, k) =>
      k === n ? { low: length - by, nominal: length, high: length + by } : l,
    );
    const mended: Walk = { ...walk, lengths };
    if (
      Math.abs(
        area(
          corners(lengths.map((l, k) => wallLeg(l, walk.ways[k]!))).map((c) => ({
            x: c.x.nominal,
            y: c.y.nominal,
          })),
        ),
      ) < 1e-6
    )
      return;
    const agrees = diagonals.every((d) => {
      const taken = across(mended, d.corners);
      return taken !== undefined && taken.low <= d.length.high && taken.high >= d.length.low;
    });
    if (agrees) fitting.push(n);
  });
  return fitting.length === 1 ? fitting[0] : undefined;
}

/** Diagonals that were taken, each an input. */
function diagonalInputs(room: Thing, of: Of): Inputs {
  const all: Inputs = {};
  itemsOf(room, "diagonal").forEach((d, n) => {
    const which = choiceOf(d, "corners");
    if (!d || which === undefined || !isWritten(d, "length")) return;
    all[`diagonal ${n} corners`] = which;
    all[`diagonal ${n}`] = of.written(d, "length", `the diagonal ${which}`);
  });
  return all;
}

type WithDiagonals = RoomHanded & { readonly [numbered: `diagonal ${number}`]: Interval | undefined } & {
  readonly [numbered: `diagonal ${number} corners`]: string | undefined;
};

const ordinal = (n: number): string =>
  ["first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth"][n] ?? `${n + 1}th`;

export const roomMisclosureWall = derived({
  name: "room.misclosure-wall",
  dimension: "number",
  says: "the wall, counted in the order walked, whose length is most likely wrong where the walls do not close",
  formula:
    "the one wall along the error's direction that, mended by the error, lets the walk close and agrees with the diagonals",
  source: "surveying: an error in one leg shows in that leg's direction",
  inputs: (s, of) => {
    const found = roomOr(s);
    if ("none" in found) return found;
    return { ...wallInputs(found.room, of), ...diagonalInputs(found.room, of) };
  },
  compute: (i: WithDiagonals): Outcome => {
    const lengths: Interval[] = [];
    const ways: Compass[] = [];
    (i.ways ?? []).forEach((w, n) => {
      const length = i[`wall ${n}`];
      const way = typeof w === "object" && w !== null && "way" in w ? w.way : undefined;
      if (!length || typeof way !== "string") return;
      lengths.push(length);
      ways.push(way as Compass);
    });
    const diagonals: Diagonal[] = [];
    for (let n = 0; n < 8; n++) {
      const length = i[`diagonal ${n}`];
      const which = i[`diagonal ${n} corners`];
      if (length && (which === "sw-ne" || which === "nw-se")) diagonals.push({ corners: which, length });
    }
    const wall = wallMostLikelyWrong({ lengths, ways }, diagonals);
    if (wall === undefined) return { without: "no wall stands out as the one that is wrong" };
    const count = wall + 1;
    return {
      value: { low: count, nominal: count, high: count },
      choice: `${ordinal(wall)} wall, walked to the ${ways[wall]!}`,
    };
  },
});
