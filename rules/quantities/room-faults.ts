/** What cannot be as it is written: walls that cross, things outside of the room or in each other, doors past their wall's end. */
import type { Interval } from "../../language/quantity/interval.js";
import { boxDistance, insideDistance } from "../plan/circle.js";
import { roomWithin, type RoomOutline, type Sides, type ThingOutline } from "../plan/outline.js";
import type { Outline } from "../plan/room.js";
import type { Of, Outcome } from "../quantity.js";
import type { Scene } from "../scene.js";
import { derived } from "./inputs.js";
import {
  doorInputs,
  noRoom,
  roomInputs,
  roomOf,
  roomOr,
  wallInputs,
  type Inputs,
  type RoomHanded,
} from "./standing.js";

export const roomCrossings = derived({
  name: "room.crossings",
  dimension: "number",
  says: "how many faults the walls as walked have: walls that cross or lie on each other, or that enclose nothing",
  formula: "one if two walls have a point in common that is not their corner, or if no floor is enclosed",
  source: "plane geometry",
  inputs: (s: Scene, of: Of): Inputs => {
    const found = roomOr(s);
    return "none" in found ? found : wallInputs(found.room, of);
  },
  compute: (i: RoomHanded): Outcome => {
    const { fault } = roomOf(i);
    const count = fault ? 1 : 0;
    const pair = fault?.walls;
    return {
      value: { low: count, nominal: count, high: count },
      choice: pair
        ? `walls ${pair[0]} and ${pair[1]}, in the order walked,`
        : fault
          ? "the walls as walked"
          : "no two walls",
    };
  },
});

interface Box {
  readonly west: number;
  readonly east: number;
  readonly south: number;
  readonly north: number;
}
const boxes: Readonly<Record<"largest" | "drawn" | "smallest", (s: Sides) => Box>> = {
  largest: (s) => ({ west: s.west.low, east: s.east.high, south: s.south.low, north: s.north.high }),
  drawn: (s) => ({
    west: s.west.nominal,
    east: s.east.nominal,
    south: s.south.nominal,
    north: s.north.nominal,
  }),
  smallest: (s) => ({ west: s.west.high, east: s.east.low, south: s.south.high, north: s.north.low }),
};

/** How far a box reaches out of the walls: its corner furthest out, or a corner of the walls that reaches into it. */
function out(b: Box, walls: Outline): number {
  const inside = insideDistance(walls);
  const into = boxDistance(b.west, b.east, b.south, b.north);
  const corners = [
    inside(b.west, b.south),
    inside(b.east, b.south),
    inside(b.east, b.north),
    inside(b.west, b.north),
  ];
  return Math.max(...corners.map((d) => -d), ...walls.map((p) => -into(p.x, p.y)));
}

/** How far two boxes lie in each other: the least shift that parts them; below zero they are apart. */
const within = (a: Box, b: Box): number =>
  Math.min(
    Math.min(a.east, b.east) - Math.max(a.west, b.west),
    Math.min(a.north, b.north) - Math.max(a.south, b.south),
  );

const ordered = (a: number, nominal: number, b: number): Interval => ({
  low: Math.min(a, nominal),
  nominal,
  high: Math.max(b, nominal),
});

export function furthestOut(
  room: RoomOutline,
): { readonly value: Interval; readonly name: string } | undefined {
  if (room.fault) return undefined;
  let found: { value: Interval; name: string } | undefined;
  const [small, large] = [roomWithin(room, "smallest"), roomWithin(room, "largest")];
  for (const t of room.things) {
    const value = ordered(
      out(boxes.smallest(t.sides), large),
      out(boxes.drawn(t.sides), room.walls),
      out(boxes.largest(t.sides), small),
    );
    found =
      found && found.value.nominal >= value.nominal
        ? { ...found, value: most(found.value, value) }
        : { value: found ? most(value, found.value) : value, name: t.name };
  }
  return found;
}
const most = (a: Interval, b: Interval): Interval => ({
  low: Math.max(a.low, b.low),
  nominal: Math.max(a.nominal, b.nominal),
  high: Math.max(a.high, b.high),
});

export const roomOutside = derived({
  name: "room.outside",
  dimension: "length",
  says: "how far the thing that stands furthest out of the room reaches past its walls; below zero all stand inside",
  formula: "greatest distance of a thing's corner behind a wall",
  source: "plane geometry",
  inputs: roomInputs,
  compute: (i: RoomHanded): Outcome => {
    const room = roomOf(i);
    if (room.fault) return noRoom;
    const found = furthestOut(room);
    if (!found) return { without: "nothing is placed in the room" };
    return { value: found.value, choice: found.name };
  },
});

/** Things that are made to stand in or over one another. */
const belongs: readonly (readonly [string, string])[] = [
  ["tub-bench", "tub"],
  ["shower-seat", "tub"],
  ["commode", "toilet"],
];
const mayOverlap = (a: ThingOutline, b: ThingOutline): boolean =>
  belongs.some(([x, y]) => (a.kind === x && b.kind === y) || (a.kind === y && b.kind === x));

export function deepestOverlap(
  things: readonly ThingOutline[],
): { readonly value: Interval; readonly names: string } | undefined {
  let found: { value: Interval; names: string } | undefined;
  things.forEach((a, n) => {
    for (const b of things.slice(n + 1)) {
      if (mayOverlap(a, b)) continue;
      const depth = (which: keyof typeof boxes): number =>
        within(boxes[which](a.sides), boxes[which](b.sides));
      const value = ordered(depth("smallest"), depth("drawn"), depth("largest"));
      const names = `${a.name} and ${b.name}`;
      found =
        found && found.value.nominal >= value.nominal
          ? { ...found, value: most(found.value, value) }
          : { value: found ? most(value, found.value) : value, names };
    }
  });
  return found;
}

export const roomOverlap = derived({
  name: "room.overlap",
  dimension: "length",
  says: "how far two things placed in the room lie in each other; below zero all are apart",
  formula: "greatest of the least shifts that part two things",
  source: "plane geometry",
  inputs: roomInputs,
  compute: (i: RoomHanded): Outcome => {
    const found = deepestOverlap(roomOf(i).things);
    if (!found) return { without: "no two things are placed in the room" };
    return { value: found.value, choice: found.names };
  },
});

export const doorPastWall = derived({
  name: "door.past-wall",
  dimension: "length",
  says: "how far a door reaches past an end of its wall; nothing where all lie on their walls",
  formula: "greatest of: from the wall's end back to the door; place + clear width less the wall's length",
  source: "plane geometry",
  inputs: (s: Scene, of: Of): Inputs => {
    const found = roomOr(s);
    if ("none" in found) return found;
    if ((found.room.inner["door"] ?? []).length === 0) return { ...wallInputs(found.room, of), doors: 0 };
    return { ...wallInputs(found.room, of), ...doorInputs(found.room, of) };
  },
  compute: (i: RoomHanded): Outcome => {
    const room = roomOf(i);
    if (room.fault) return noRoom;
    const worst = room.doors.reduce<(typeof room.doors)[number] | undefined>(
      (a, b) => (a && a.past.nominal >= b.past.nominal ? a : b),
      undefined,
    );
    if (!worst) return { without: "no door with its place is written" };
    return { value: worst.past, choice: worst.name };
  },
});
