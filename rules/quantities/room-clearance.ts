/** `park.room-clearance`: what is left between the parked chair and the walls and things around it. */
import type { Interval } from "../../language/quantity/interval.js";
import { smallestBox, wallSolids, type Sides } from "../plan/outline.js";
import type { Footprint } from "../plan/footprint.js";
import { clearance, enlarged, leastClearance, type Box, type Outline } from "../plan/room.js";
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

const asBox = ({ west, east, south, north }: Sides, end: "low" | "nominal" | "high"): Box => {
  const other = end === "low" ? "high" : end === "high" ? "low" : "nominal";
  return {
    x: west[end],
    y: south[end],
    width: Math.max(0, east[other] - west[end]),
    depth: Math.max(0, north[other] - south[end]),
  };
};
const off = (s: Sides): number => {
  const of = (i: Interval): number => Math.max(i.high - i.nominal, i.nominal - i.low);
  return Math.hypot(Math.max(of(s.west), of(s.east)), Math.max(of(s.south), of(s.north)));
};

/** The most that can be left: both as small as they may be, and as far apart as their tolerances let them be. */
function farthest(chair: Footprint, sides: Sides): number {
  const held = smallestBox(sides) && asBox(sides, "high");
  // Drawn in by the tolerances the box is what every possible box holds; one too small for that is moved instead.
  const holds = held && 2 * chair.offX <= held.width && 2 * chair.offY <= held.depth;
  const box = holds ? enlarged(held, -chair.offX, -chair.offY) : (held ?? asBox(sides, "nominal"));
  const moved = holds ? 0 : Math.hypot(chair.offX, chair.offY) + (held ? 0 : off(sides));
  let most = -Infinity;
  for (const pose of chair.poses)
    most = Math.max(most, leastClearance(pose.smallest, box) + pose.between + moved);
  return most;
}

/** Least distance from the parked chair to any of some solids, and the name of the nearest. */
export function clearanceAround(
  chair: Footprint,
  solids: readonly Solid[],
): { readonly value: Interval; readonly nearest: string } | undefined {
  let low = Infinity;
  let high = Infinity;
  let nominal = Infinity;
  let nearest: string | undefined;
  const swing = chair.poses.reduce((sum, pose) => sum + pose.between, 0);
  for (const { name, sides } of solids) {
    const now = leastClearance(chair.nominal, asBox(sides, "nominal"));
    if (now < nominal - 1e-9) {
      nominal = now;
      nearest = name;
    }
    // Too far away to matter, however the tolerances fall.
    if (now - Math.hypot(chair.offX, chair.offY) - off(sides) - 2 * swing - chair.offShape > high) continue;
    // At worst both are as large as they may be and as near as their tolerances let them come.
    const worst = enlarged(asBox(sides, "low"), chair.offX, chair.offY);
    for (const pose of chair.poses) low = Math.min(low, leastClearance(pose.largest, worst) - pose.between);
    high = Math.min(high, farthest(chair, sides));
  }
  if (nearest === undefined) return undefined;
  return { value: { low: Math.min(low, nominal), nominal, high: Math.max(high, nominal) }, nearest };
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
