/**
 * The way from square outside a door to beside the bed, as a problem for the search: the room's walls, cut open at the door,
 * and what stands in it.
 *
 * What lies outside the door is seldom written. Two bounds stand for it: nothing but a passage as wide as the door, through
 * which the chair comes straight, and nothing at all in the way.
 */
import type { Interval } from "../../../language/quantity/interval.js";
import type { DoorOutline, RoomOutline, Sides, WallOutline } from "../outline.js";
import { rectangle, type Outline, type Point } from "../room.js";
import type { ChairPose, Solid, WayProblem } from "./problem.js";

/** Depth of a doorway: a usual inner wall with its lining. Only the turn inside the doorway depends on it. */
export const doorwayDepth = 0.12;
/** How far the parked chair is moved back along its heading to where it begins to be parked. */
export const approachBack = 0.15;

/** Which end of each tolerance is taken: the tightest room, the room as written, the widest room. */
export type End = "tightest" | "nominal" | "widest";

const move = (p: Point, d: Point, by: number): Point => ({ x: p.x + by * d.x, y: p.y + by * d.y });
const inset = (i: Interval, end: End, sign: number): number =>
  end === "nominal" ? i.nominal : (end === "tightest") === sign > 0 ? i.high : i.low;

/** A wall's two ends, with the wall moved into or out of the room, and its ends out or in, by their tolerances. */
function ends(w: WallOutline, end: End): readonly [Point, Point] {
  const towards = w.inward.x + w.inward.y;
  const by = (inset(w.across, end, towards) - w.across.nominal) * towards;
  const along = { x: Math.abs(w.inward.y), y: Math.abs(w.inward.x) };
  const from = move(w.from, along, inset(w.begins, end, -1) - w.begins.nominal);
  const to = move(w.to, along, inset(w.ends, end, 1) - w.ends.nominal);
  return [move(from, w.inward, by), move(to, w.inward, by)];
}

function thing(name: string, { west, east, south, north }: Sides, end: End): Solid | undefined {
  const [w, s] = [inset(west, end, -1), inset(south, end, -1)];
  const [e, n] = [inset(east, end, 1), inset(north, end, 1)];
  // So uncertain that the boxes of all its tolerances have no point in common: for the widest room it may be anywhere.
  if (e < w || n < s) return undefined;
  return { name, outline: rectangle(w, s, e - w, n - s) };
}

/** The door's opening: its two jambs, moved together or apart by half of its tolerance. */
function jambs(d: DoorOutline, end: End): readonly [Point, Point] {
  const along = { x: Math.abs(d.inward.y), y: Math.abs(d.inward.x) };
  const by = (inset(d.clear, end, -1) - d.clear.nominal) / 2;
  return [move(d.from, along, -by), move(d.to, along, by)];
}

/** Middle of the axle of a chair that stands square outside the door, its front end clear of the doorway. */
export function outsideDoor(d: DoorOutline, chair: readonly Outline[]): ChairPose {
  const ahead = Math.max(0, ...chair.flat().map((p) => p.x));
  const middle = { x: (d.from.x + d.to.x) / 2, y: (d.from.y + d.to.y) / 2 };
  const at = move(middle, d.inward, -(ahead + doorwayDepth + 0.05));
  return { ...at, heading: Math.atan2(d.inward.y, d.inward.x) };
}

export interface Approach {
  /** Convex parts of the chair in its own frame, as equipped on the way. */
  readonly chair: readonly Outline[];
  /** The chair as it is, whose front end stands outside the door at the start. */
  readonly nominal: readonly Outline[];
  /** Where it parks. */
  readonly parked: ChairPose;
}

export function throughDoor(
  room: RoomOutline,
  door: DoorOutline,
  { chair, nominal, parked }: Approach,
  end: End,
): WayProblem {
  const start = outsideDoor(door, nominal);
  const back = { x: -Math.cos(parked.heading), y: -Math.sin(parked.heading) };
  const goal = { ...move(parked, back, approachBack), heading: parked.heading };
  const solids: Solid[] = [];
  const add = (name: string, ...outline: Point[]): void => void solids.push({ name, outline });
  const out = { x: -door.inward.x, y: -door.inward.y };
  const along = { x: Math.abs(out.y), y: Math.abs(out.x) };
  const [first, second] = jambs(door, end);
  for (const w of room.sides) {
    const [from, to] = ends(w, end);
    if (w !== door.wall) {
      add(w.name, from, to);
      continue;
    }
    const on = (p: Point): Point => {
      const s = (p.x - from.x) * along.x + (p.y - from.y) * along.y;
      return move(from, along, s);
    };
    const [a, b] = [on(first), on(second)];
    const [aOut, bOut] = [move(a, out, doorwayDepth), move(b, out, doorwayDepth)];
    add(w.name, from, a);
    add(w.name, b, to);
    add(`the doorway ${door.name}`, a, aOut);
    add(`the doorway ${door.name}`, b, bOut);
    add(`the wall outside ${door.name}`, aOut, move(from, out, doorwayDepth));
    add(`the wall outside ${door.name}`, bOut, move(to, out, doorwayDepth));
    if (end !== "widest") {
      const behind = Math.max(0, ...nominal.flat().map((p) => -p.x));
      const length = Math.hypot(start.x - (a.x + b.x) / 2, start.y - (a.y + b.y) / 2) + behind;
      add(`the passage to ${door.name}`, aOut, move(aOut, out, length));
      add(`the passage to ${door.name}`, bOut, move(bOut, out, length));
      if (door.opens === "inward" && door.hinge) {
        const hinge = door.hinge === door.from ? a : b;
        add(`the open door ${door.name}`, hinge, move(hinge, door.inward, door.clear.nominal));
      }
    }
  }
  for (const t of room.things) {
    const s = thing(t.name, t.sides, end);
    if (s) solids.push(s);
  }
  return { solids, chair, start, goal };
}
