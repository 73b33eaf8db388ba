/** `park.room-clearance`: what is left between the parked chair and the walls and things around it. */
import type { Interval } from "../../language/quantity/interval.js";
import { bounded, leastApartOver, mostApartOver } from "../plan/apart.js";
import { wallSolids, type Sides } from "../plan/outline.js";
import type { Footprint } from "../plan/footprint.js";
import { clearance, leastClearance, type Box, type Outline } from "../plan/room.js";
import type { Outcome } from "../quantity.js";
import type { Scene } from "../scene.js";
import type { Of } from "../quantity.js";
import { beyondSquare, derived } from "./inputs.js";
import { chairInRoom, chairInRoomInputs, type ChairInRoom } from "./chair-in-room.js";
import {
  noRoom,
  placedInputs,
  roomOf,
  roomOr,
  wallInputs,
  type Inputs,
  type RoomHanded,
} from "./standing.js";

function inputs(s: Scene, of: Of): Inputs {
  const chair = chairInRoomInputs(s, of);
  if ("none" in chair) return chair;
  const found = roomOr(s);
  if ("none" in found) return found;
  return {
    ...chair,
    ...wallInputs(found.room, of),
    ...placedInputs(s, of),
  };
}

/** A solid with its bounds, in the way of the parked chair. */
export interface Solid {
  readonly name: string;
  readonly sides: Sides;
}

const drawnBox = ({ west, east, south, north }: Sides): Box => ({
  x: west.nominal,
  y: south.nominal,
  width: Math.max(0, east.nominal - west.nominal),
  depth: Math.max(0, north.nominal - south.nominal),
});

/** Least distance from the parked chair to any of some solids, and the name of the nearest. */
export function clearanceAround(
  chair: Footprint,
  solids: readonly Solid[],
): { readonly value: Interval; readonly nearest: string } | undefined {
  let nominal = Infinity;
  let nearest: string | undefined;
  const things = solids.map(({ name, sides }) => {
    const away = leastClearance(chair.nominal, drawnBox(sides));
    // Of some that are as near the first keeps its name.
    if (away < nominal - 1e-9) {
      nominal = away;
      nearest = name;
    }
    return { away, thing: bounded(sides) };
  });
  if (nearest === undefined) return undefined;
  // After the nearest it is quickly told of most others that they are too far away to matter.
  const sorted = things.sort((a, b) => a.away - b.away).map((t) => t.thing);
  const low = Math.min(nominal, leastApartOver(chair, sorted));
  const high = Math.max(nominal, mostApartOver(chair, sorted));
  return { value: { low, nominal, high }, nearest };
}

export const roomClearance = derived({
  name: "park.room-clearance",
  dimension: "length",
  says: "least distance between the parked chair and the walls and what else stands in the room; below zero they overlap by as much",
  formula:
    "least distance between the chair's outline, as equipped, and each wall and each thing placed in the room",
  source: "plane geometry",
  inputs,
  compute: (i: ChairInRoom & RoomHanded): Outcome => {
    const room = roomOf(i);
    if (room.fault) return noRoom;
    const chair = chairInRoom(i, room);
    if (!chair) return beyondSquare;
    // Behind the corner of a notch two walls are as near: the one whose face is nearer gives the name.
    const toFace = (face: Outline): number =>
      Math.min(...chair.footprint.nominal.map((o) => clearance(o, face)));
    const walls = wallSolids(room.sides)
      .map((wall) => ({ ...wall, away: toFace(wall.face) }))
      .sort((a, b) => a.away - b.away);
    const found = clearanceAround(chair.footprint, [
      ...room.things.filter((t) => t.name !== i.bed),
      ...walls,
    ]);
    if (!found) return noRoom;
    return {
      value: found.value,
      choice: found.nearest,
      assumed: i.bag.assumed(chair.uses),
      terms: i.bag.terms(chair.uses),
    };
  },
});
