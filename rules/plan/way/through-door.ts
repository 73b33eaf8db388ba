/**
 * The way from square outside a door to beside the bed, as a problem for the search: the room's walls, cut open at the door,
 * and what stands in it.
 *
 * What lies outside the door is seldom written. Two bounds stand for it: nothing but a passage as wide as the door, through
 * which the chair comes straight, and nothing at all in the way.
 */
import { add, scale, type Interval } from "../../../language/quantity/interval.js";
import type { DoorOutline, RoomOutline, Sides, WallOutline } from "../outline.js";
import { rectangle, type Outline, type Point } from "../room.js";
import type { ChairPose, Solid, WayProblem } from "./problem.js";

/** Depth of a doorway: a usual inner wall with its lining. Only the turn inside the doorway depends on it. */
export const doorwayDepth = 0.12;
/** How far the parked chair is moved back along its heading to where it begins to be parked. */
export const approachBack = 0.15;

/** Which end of each tolerance is taken: the tightest room, the room as written, the widest room. */
export type End = "tightest" | "nominal" | "widest";

/**
 * What stands still while a tolerance is taken. How far the door is along its wall is known to a tape only, and the door and the
 * rest of the room move against each other by that: with the room held, the jambs move; with the door held, all else does. Either
 * bounds every room between. The first leaves a door narrower than it can be, the second a space between walls.
 */
export type Held = "room" | "door";

const move = (p: Point, d: Point, by: number): Point => ({ x: p.x + by * d.x, y: p.y + by * d.y });
const inset = (i: Interval, end: End, sign: number): number =>
  end === "nominal" ? i.nominal : (end === "tightest") === sign > 0 ? i.high : i.low;
const wider = (i: Interval, by: number): Interval => ({ ...i, low: i.low - by, high: i.high + by });
const onWall = (d: DoorOutline): Point => ({ x: Math.abs(d.inward.y), y: Math.abs(d.inward.x) });

/** How far the door's middle may be from where it is drawn, along x or y: how far all else is off, with the door held. */
export function doorOff(d: DoorOutline, held: Held): Point {
  if (held === "room") return { x: 0, y: 0 };
  const middle = add(add(d.wall.begins, d.at), scale(d.clear, 0.5));
  return move({ x: 0, y: 0 }, onWall(d), Math.max(middle.high - middle.nominal, middle.nominal - middle.low));
}

/** The same wall and thing where the door may be that far off from them. */
const wallOff = (w: WallOutline, off: Point): WallOutline => {
  const [across, along] = w.inward.x === 0 ? [off.y, off.x] : [off.x, off.y];
  return {
    ...w,
    across: wider(w.across, across),
    begins: wider(w.begins, along),
    ends: wider(w.ends, along),
  };
};
const sidesOff = ({ west, east, south, north }: Sides, off: Point): Sides => ({
  west: wider(west, off.x),
  east: wider(east, off.x),
  south: wider(south, off.y),
  north: wider(north, off.y),
});

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

/** Between which bounds either jamb stands, from where it is drawn: with the door held, either half of its clear width. */
function jambs(d: DoorOutline, held: Held): readonly [Interval, Interval] {
  const about = (i: Interval): Interval => ({ low: i.low - i.nominal, nominal: 0, high: i.high - i.nominal });
  if (held === "door") return [about(scale(d.clear, -0.5)), about(scale(d.clear, 0.5))];
  const first = about(add(d.wall.begins, d.at));
  return [first, add(first, about(d.clear))];
}

/** Middle of the axle of a chair that stands square outside the door, its front end clear of the doorway. */
export function outsideDoor(
  d: DoorOutline,
  chair: readonly Outline[],
  jambs: readonly [Point, Point],
): ChairPose {
  const ahead = Math.max(0, ...chair.flat().map((p) => p.x));
  const middle = { x: (jambs[0].x + jambs[1].x) / 2, y: (jambs[0].y + jambs[1].y) / 2 };
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
  held: Held = "room",
): WayProblem {
  const off = doorOff(door, held);
  const along = onWall(door);
  const bounds = jambs(door, held);
  const first = move(door.from, along, inset(bounds[0], end, 1));
  const second = move(door.to, along, inset(bounds[1], end, -1));
  const start = outsideDoor(door, nominal, [first, second]);
  const back = { x: -Math.cos(parked.heading), y: -Math.sin(parked.heading) };
  const goal = { ...move(parked, back, approachBack), heading: parked.heading };
  const solids: Solid[] = [];
  const put = (name: string, ...outline: Point[]): void => void solids.push({ name, outline });
  const out = { x: -door.inward.x, y: -door.inward.y };
  for (const w of room.sides) {
    const [from, to] = ends(wallOff(w, off), end);
    if (w !== door.wall) {
      put(w.name, from, to);
      continue;
    }
    const on = (p: Point): Point => {
      const s = (p.x - from.x) * along.x + (p.y - from.y) * along.y;
      return move(from, along, s);
    };
    const [a, b] = [on(first), on(second)];
    const [aOut, bOut] = [move(a, out, doorwayDepth), move(b, out, doorwayDepth)];
    put(w.name, from, a);
    put(w.name, b, to);
    put(doorNames(door).way, a, aOut);
    put(doorNames(door).way, b, bOut);
    put(doorNames(door).outside, aOut, move(from, out, doorwayDepth));
    put(doorNames(door).outside, bOut, move(to, out, doorwayDepth));
    if (end !== "widest") {
      const behind = Math.max(0, ...nominal.flat().map((p) => -p.x));
      const length = Math.hypot(start.x - (a.x + b.x) / 2, start.y - (a.y + b.y) / 2) + behind;
      put(doorNames(door).passage, aOut, move(aOut, out, length));
      put(doorNames(door).passage, bOut, move(bOut, out, length));
      if (door.opens === "inward" && door.hinge) {
        // The leaf stands at its jamb wherever that is, and is as long as the door is wide.
        const [jamb, bound] = door.hinge === door.from ? [door.from, bounds[0]] : [door.to, bounds[1]];
        const [near, far] = [inset(bound, end, -1), inset(bound, end, 1)].map((by) =>
          on(move(jamb, along, by)),
        );
        const wide = inset(door.clear, end, 1);
        const feet = near!.x === far!.x && near!.y === far!.y ? [near!] : [near!, far!];
        put(doorNames(door).leaf, ...feet, ...feet.map((p) => move(p, door.inward, wide)).reverse());
      }
    }
  }
  for (const t of room.things) {
    const s = thing(t.name, sidesOff(t.sides, off), end);
    if (s) solids.push(s);
  }
  return { solids, chair, start, goal };
}

/** What the parts of a door are called where they are in the way. */
export const doorNames = ({ name }: DoorOutline) => ({
  way: `the doorway ${name}`,
  outside: `the wall outside ${name}`,
  passage: `the passage to ${name}`,
  leaf: `the open door ${name}`,
});
