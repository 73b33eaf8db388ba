/** Clear floor on each side of the bed, to walls and furniture. */
import type { Interval } from "../../language/quantity/interval.js";
import { wallSolids, type RoomOutline, type Sides, type ThingOutline } from "../plan/outline.js";
import { bedAxes, type Point } from "../plan/room.js";
import type { Of, Outcome } from "../quantity.js";
import type { Scene } from "../scene.js";
import { absent, derived } from "./inputs.js";
import { bedPlaceOr, noRoom, roomInputs, type Inputs, type RoomHanded } from "./standing.js";
import { roomOf } from "./standing.js";

type End = "worst" | "drawn" | "best";

/** A solid seen from the bed's side: from where to where along it, how far off it begins, and where it ends. */
interface Seen {
  readonly name: string;
  readonly from: number;
  readonly to: number;
  readonly near: number;
  readonly far: number;
}

/** The lower and the upper bound of a box along an axis, as the end asks: a solid is largest at worst and smallest at best. */
function reach(s: Sides, axis: Point, end: End): readonly [number, number] {
  const [low, high] = axis.x !== 0 ? [s.west, s.east] : [s.south, s.north];
  const [a, b] =
    end === "worst"
      ? [low.low, high.high]
      : end === "best"
        ? [low.high, high.low]
        : [low.nominal, high.nominal];
  return axis.x + axis.y > 0 ? [a, b] : [-b, -a];
}

/**
 * The greatest width of a clear strip as long as `length` against the bed's side. Where solids are as large and as near as they
 * may be and the bed as far out and as short, it is the least that the tolerances allow, and the other way round.
 */
function strip(
  bed: ThingOutline,
  room: RoomOutline,
  outward: Point,
  up: Point,
  length: Interval,
  end: End,
): { readonly width: number; readonly against: string } | undefined {
  const opposite: End = end === "worst" ? "best" : end === "best" ? "worst" : "drawn";
  // The bed's side lies furthest out at worst, while its length is then the shortest.
  const [, side] = reach(bed.sides, outward, end);
  const [foot, head] = reach(bed.sides, up, opposite);
  const long = Math.min(
    end === "worst" ? length.high : end === "best" ? length.low : length.nominal,
    Math.max(0, head - foot),
  );
  const all = [
    ...room.things.filter((t) => t !== bed),
    ...wallSolids(room.sides).filter((w) => reach(w.sides, outward, "drawn")[1] > side),
  ];
  const seen = all.flatMap(({ name, sides }): Seen[] => {
    const [from, to] = reach(sides, up, end);
    const [near, far] = reach(sides, outward, end);
    return far > side && to > from ? [{ name, from, to, near: near - side, far }] : [];
  });
  const starts = [foot, head - long, ...seen.flatMap((o) => [o.to, o.from - long])];
  let best: { width: number; against: string } | undefined;
  for (const u of starts) {
    if (u < foot - 1e-9 || u > head - long + 1e-9) continue;
    let width = Infinity;
    let against = "";
    for (const o of seen)
      if (o.from < u + long - 1e-9 && o.to > u + 1e-9 && o.near < width) {
        width = o.near;
        against = o.name;
      }
    if (Number.isFinite(width) && (!best || width > best.width)) best = { width, against };
  }
  return best;
}

/** Clear floor beside the bed on the client's own left or right, lying on the back. */
export function besideBed(
  room: RoomOutline,
  bedName: string,
  side: "left" | "right",
  length: Interval,
): { readonly value: Interval; readonly against: string } | undefined {
  const bed = room.things.find((t) => t.name === bedName);
  if (!bed?.head || room.fault) return undefined;
  const { up, left } = bedAxes(bed.head);
  const outward = side === "left" ? left : { x: -left.x, y: -left.y };
  const at = (end: End) => strip(bed, room, outward, up, length, end);
  const [worst, drawn, best] = [at("worst"), at("drawn"), at("best")];
  if (!worst || !drawn || !best) return undefined;
  return {
    value: {
      low: Math.min(worst.width, drawn.width),
      nominal: drawn.width,
      high: Math.max(best.width, drawn.width),
    },
    against: drawn.against,
  };
}

export function besideInputs(s: Scene, of: Of): Inputs {
  const found = bedPlaceOr(s);
  if ("none" in found) return found;
  return { ...roomInputs(s, of), bed: found.bed.name, length: of.default("bedside-length") };
}
export type Beside = RoomHanded & { readonly bed: string; readonly length: Interval };

/** What is said where the bed stands outside of the walls, so that nothing lies beside it. */
export const bedOutside = {
  missing: [{ what: "where the bed stands inside the room", key: "place" }],
} as const;

const besideOn = (side: "left" | "right") =>
  derived({
    name: `room.side-clearance-${side}`,
    dimension: "length",
    says: `clear floor beside the bed on the client's own ${side}, lying on the back, to walls and furniture`,
    formula: "greatest width of a clear strip against that side of the bed, as long as is asked beside a bed",
    source: "plane geometry; the length of the strip is that of the published clear space beside a bed",
    inputs: besideInputs,
    compute: (i: Beside): Outcome => {
      const room = roomOf(i);
      if (room.fault) return noRoom;
      const found = besideBed(room, i.bed, side, i.length);
      return found ? { value: found.value, choice: found.against } : bedOutside;
    },
  });
export const sideClearanceLeft = besideOn("left");
export const sideClearanceRight = besideOn("right");

export const sideClearance = derived({
  name: "room.side-clearance",
  dimension: "length",
  says: "clear floor beside the bed on the side on which the chair parks",
  formula: "room.side-clearance-left or -right, by the side of the bed (bed-side)",
  source: "plane geometry",
  inputs: (s, of): Inputs => {
    const said = s.value("bed-side").value;
    if (said !== "left" && said !== "right")
      return {
        none: absent(s.transfer, "on which side of the bed the chair stands (bed-side)", "bed-side"),
      };
    return { ...besideInputs(s, of), side: said };
  },
  compute: (i: Beside & { readonly side: "left" | "right" }): Outcome => {
    const room = roomOf(i);
    if (room.fault) return noRoom;
    const found = besideBed(room, i.bed, i.side, i.length);
    return found ? { value: found.value, choice: found.against } : bedOutside;
  },
});
