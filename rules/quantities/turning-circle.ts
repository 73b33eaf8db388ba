/** `room.turning-circle`: the largest clear circle in what the chair can reach from the door. */
import type { Interval } from "../../language/quantity/interval.js";
import { boxDistance, insideDistance, largestCircle, leastOf, type Distance } from "../plan/circle.js";
import { roomWithin, type DoorOutline, type RoomOutline, type ThingOutline } from "../plan/outline.js";
import type { Outline } from "../plan/room.js";
import type { Of, Outcome } from "../quantity.js";
import type { Scene } from "../scene.js";
import { absent, derived, without } from "./inputs.js";
import { noRoom, roomInputs, roomOf, roomOr, type Inputs, type RoomHanded } from "./standing.js";

/** Two millimetres: under what a tape reads. */
const precision = 0.002;

type End = "least" | "drawn" | "most";

/** Distance to a thing as large, as drawn or as small as it may be; nothing of it may be sure to be there. */
function thingDistance({ sides: s }: ThingOutline, end: End): Distance {
  if (end === "least") return boxDistance(s.west.low, s.east.high, s.south.low, s.north.high);
  if (end === "drawn") return boxDistance(s.west.nominal, s.east.nominal, s.south.nominal, s.north.nominal);
  return s.west.high <= s.east.low && s.south.high <= s.north.low
    ? boxDistance(s.west.high, s.east.low, s.south.high, s.north.low)
    : () => Infinity;
}

/** Just inside a door, straight in from its opening, where a disc of this radius first has room. */
function inside(doors: readonly DoorOutline[], radius: number): (x: number, y: number) => boolean {
  const cell = 0.16;
  return (x, y) =>
    doors.some((d) => {
      const dx = x - (d.from.x + d.to.x) / 2;
      const dy = y - (d.from.y + d.to.y) / 2;
      const depth = dx * d.inward.x + dy * d.inward.y;
      const aside = Math.abs(dx * d.inward.y - dy * d.inward.x);
      return (
        depth > 0 && depth < radius + cell && aside < Math.max(d.clear.nominal / 2 - radius, 0) + cell / 2
      );
    });
}

/** Diameter of the largest clear circle whose middle a disc as wide as the chair can reach from a door. */
export function turningCircle(room: RoomOutline, chairWidth: Interval): Interval {
  const run = (walls: Outline, end: End, radius: number) => {
    const xs = walls.map((p) => p.x);
    const ys = walls.map((p) => p.y);
    return largestCircle({
      distance: leastOf([insideDistance(walls), ...room.things.map((t) => thingDistance(t, end))]),
      low: { x: Math.min(...xs), y: Math.min(...ys) },
      high: { x: Math.max(...xs), y: Math.max(...ys) },
      precision,
      reach: {
        radius,
        start: inside(room.doors, radius),
        taken: end === "least" ? "sure" : end === "drawn" ? "drawn" : "possible",
      },
    });
  };
  const half = (x: number): number => Math.max(0, x / 2);
  const least = run(roomWithin(room, "smallest"), "least", half(chairWidth.high));
  const drawn = run(room.walls, "drawn", half(chairWidth.nominal));
  const most = run(roomWithin(room, "largest"), "most", half(chairWidth.low));
  const nominal = 2 * (drawn?.radius ?? 0);
  return {
    low: Math.min(nominal, 2 * (least?.radius ?? 0)),
    nominal,
    high: Math.max(nominal, 2 * (most?.atMost ?? 0)),
  };
}

export const roomTurningCircle = derived({
  name: "room.turning-circle",
  dimension: "length",
  says: "across the largest clear circle on the floor that the chair can reach from a door of the room",
  formula:
    "greatest least distance to walls and things, doubled, over the places that a disc as wide as the chair can reach from a door",
  source: "plane geometry",
  inputs: (s: Scene, of: Of): Inputs => {
    const found = roomOr(s);
    if ("none" in found) return found;
    if (!s.chair)
      return {
        none:
          s.from && s.to ? without("no wheelchair takes part") : absent(s.transfer, "the wheelchair", "from"),
      };
    const doors = found.room.inner["door"] ?? [];
    if (doors.length === 0)
      return { none: absent(found.room, "the door of the room and where it stands (door)", "door") };
    return {
      ...roomInputs(s, of),
      chairWidth: of.written(s.chair, "overall-width", "the chair's width over the hand rims"),
    };
  },
  compute: (i: RoomHanded & { readonly chairWidth: Interval }): Outcome => {
    const room = roomOf(i);
    if (room.fault) return noRoom;
    if (room.doors.length === 0)
      return {
        missing: [{ what: "where the door stands in its wall, and how wide it is (door)", key: "door" }],
      };
    return { value: turningCircle(room, i.chairWidth) };
  },
});
