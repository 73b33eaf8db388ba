/** `reach.*`: the way of the chair from outside the door to beside the bed, and where it is tightest. */
import { exactly, type Interval } from "../../language/quantity/interval.js";
import type { DoorOutline, RoomOutline } from "../plan/outline.js";
import { chairOutlines, halfWay } from "../plan/footprint.js";
import { seatAlone } from "../plan/parking.js";
import { besideAxes, type Outline, type Point } from "../plan/room.js";
import { driveOf, type Drive } from "../plan/way/drive.js";
import type { ChairPose, Way, WayProblem } from "../plan/way/problem.js";
import { approaches } from "../plan/way/approach.js";
import { throughDoor } from "../plan/way/through-door.js";
import { widestWay } from "../plan/way/way.js";
import { problemsOf, wayWithin, type Approaching } from "../plan/way/within.js";
import { quantity, type Of, type Outcome } from "../quantity.js";
import type { Scene } from "../scene.js";
import type { Term } from "../types.js";
import {
  chairInRoom,
  chairInRoomInputs,
  outlineOf,
  type ChairInRoom,
  type StandingChair,
} from "./chair-in-room.js";
import { beyondSquare, derived } from "./inputs.js";
import { planWith } from "./parked.js";
import { noRoom, roomInputs, roomOf, type Inputs, type RoomHanded } from "./standing.js";

function inputs(s: Scene, of: Of): Inputs {
  const chair = chairInRoomInputs(s, of);
  if ("none" in chair) return chair;
  const room = roomInputs(s, of);
  if ("none" in room) return room;
  return { ...chair, ...room };
}

const noDoor: Outcome = {
  missing: [
    { what: "a door of the room: its wall, its place in it (at) and its clear width (clear)", key: "door" },
  ],
};

/** What was found for one value of `reach.tightest`. */
interface Reached {
  readonly problem: WayProblem;
  readonly way: Way;
  readonly door: string;
}
const byValue = new WeakMap<Interval, Reached>();

/** The way found of which `tightest` is the value; undefined where there is none. */
export const reachedAs = (tightest: Interval): Reached | undefined => byValue.get(tightest);

/** What stands at the tightest place, as it reads in a sentence. */
const placeOf = (r: Reached | undefined): string => r?.way.tightest?.name ?? "somewhere on every way";

/** The chair's pose, from its wheels as drawn in the room: their box begins at its rear corner and runs ahead. */
function poseOf(outlines: readonly Outline[]): ChairPose {
  const [rear, front, opposite] = outlines[0]! as readonly [Point, Point, Point];
  return {
    x: (rear.x + opposite.x) / 2,
    y: (rear.y + opposite.y) / 2,
    heading: Math.atan2(front.y - rear.y, front.x - rear.x),
  };
}

/** The same outlines in the chair's own frame. */
function ownFrame(outlines: readonly Outline[]): readonly Outline[] {
  const { x, y, heading } = poseOf(outlines);
  const [cos, sin] = [Math.cos(heading), Math.sin(heading)];
  return outlines.map((o) =>
    o.map((p) => ({
      x: cos * (p.x - x) + sin * (p.y - y),
      y: cos * (p.y - y) - sin * (p.x - x),
    })),
  );
}

/**
 * The chair and every place from which it may be parked. Its outlines are as equipped once it is parked: a leg rest that is lifted
 * off on the way counts as off all the way. Hands on the rims are not in them; the rules leave room for hands.
 */
export function approaching(i: ChairInRoom, c: StandingChair): Approaching {
  const outline = outlineOf(i);
  const { up, outward, ahead } = besideAxes(c.bed.head!, i.bedSide, i.facing);
  const plan = planWith(i, i.equipment);
  const bedLeft = ahead.y * outward.x - ahead.x * outward.y > 0;
  const { west, east, south, north } = c.bed.sides;
  const origin = halfWay(outline);
  const axle = poseOf(c.footprint.nominal);
  const by = origin - i.axle.nominal;
  return {
    chair: chairOutlines(outline, bedLeft, origin),
    parked: {
      x: axle.x + by * Math.cos(axle.heading),
      y: axle.y + by * Math.sin(axle.heading),
      heading: axle.heading,
    },
    approaches: approaches({
      origin,
      plan: i.gapTaped ? seatAlone(plan) : plan,
      clearance: i.gapTaped ? i.gap : i.clearance,
      diameter: i.wheelDiameter,
      turned: c.turned,
      hip: c.hip,
      along: i.along,
      bed: c.bed,
      up,
      outward,
      ahead,
    }),
    bed: c.bed.name,
    outward,
    side: outward.x > 0 ? east : outward.x < 0 ? west : outward.y > 0 ? north : south,
    bedLeft,
  };
}

export interface Ways {
  readonly value: Interval;
  readonly reached: Reached;
}

/** The ways found last, by all they rest on: a bed that is raised changes the chair's inputs, but not where anything stands. */
const recent = new Map<string, Ways>();
const remembered = 16;

/** What was found, with all it rests on: plain data, so that it can be worked out elsewhere and learnt here. */
export type KnownWay = readonly [key: string, ways: Ways];
export const knownWays = (): readonly KnownWay[] => [...recent];
/** Takes over what was found elsewhere. */
export function learnWays(found: readonly KnownWay[]): void {
  for (const [key, ways] of found) remember(key, ways);
}

function remember(key: string, ways: Ways): void {
  const [oldest] = recent.keys();
  if (recent.size >= remembered && !recent.has(key) && oldest !== undefined) recent.delete(oldest);
  recent.set(key, ways);
}

function throughOne(room: RoomOutline, door: DoorOutline, c: StandingChair, to: Approaching): Ways {
  // About the axle, for that is what a chair turns about.
  const nominal = ownFrame(c.footprint.nominal);
  const parked = poseOf(c.footprint.nominal);
  const drawn = throughDoor(room, door, { chair: nominal, nominal, parked }, "nominal");
  const bounds = problemsOf(room, door, to);
  const key = JSON.stringify([door.name, drawn, bounds, to]);
  const known = recent.get(key);
  if (known) return known;
  const way = widestWay(drawn);
  const { low, high } = wayWithin(bounds, door, to);
  // What is drawn is one of all that may be.
  const value = { low: Math.min(low, way.low), nominal: way.low, high: Math.max(high, way.low) };
  const ways = { value, reached: { problem: drawn, way, door: door.name } };
  remember(key, ways);
  return ways;
}

function terms(ways: Ways): readonly Term[] {
  const { way, door } = ways.reached;
  const seen: Term[] = [
    {
      label: `least clearance on the way found, through the door ${door}`,
      value: { low: way.low, nominal: way.low, high: way.high },
      dimension: "length",
      formula: "chair, room and things as written, the chair coming straight through the doorway",
    },
  ];
  if (way.tightest)
    seen.push({
      label: `tightest at ${way.tightest.name}`,
      formula: "the nearest thing where it is tightest",
    });
  return seen;
}

export const reachTightest = derived({
  name: "reach.tightest",
  dimension: "length",
  says: "how much room is left at the tightest place on the best way from outside the door to beside the bed, the chair equipped as when it parks; below zero by how much the chair is too large on every side, counted no further than a quarter of its width",
  formula:
    "the largest distance that some motion of the chair's outline keeps from all walls and things, from square outside the door to 6 in behind the parking place; chair, room and things within their tolerances, and the parking place worked out anew for all of them, for the angle and for what is left to the bed",
  source: "plane geometry",
  slow: true,
  inputs,
  compute: (i: ChairInRoom & RoomHanded): Outcome => {
    const room = roomOf(i);
    if (room.fault) return noRoom;
    if (room.doors.length === 0) return noDoor;
    const chair = chairInRoom(i, room);
    if (!chair) return beyondSquare;
    // Where there are several doors it is enough that the chair gets in through one of them.
    const to = approaching(i, chair);
    const [first, ...others] = room.doors.map((d) => throughOne(room, d, chair, to));
    let best = first!;
    for (const o of others) if (o.value.nominal > best.value.nominal) best = o;
    const value: Interval = {
      low: Math.max(...[first!, ...others].map((w) => w.value.low)),
      nominal: best.value.nominal,
      high: Math.max(...[first!, ...others].map((w) => w.value.high)),
    };
    byValue.set(value, best.reached);
    return {
      value,
      choice: placeOf(best.reached),
      assumed: i.bag.assumed(chair.uses),
      terms: [...i.bag.terms(chair.uses), ...terms(best)],
    };
  },
});

export const reachPlace = quantity({
  name: "reach.place",
  dimension: "length",
  says: "what stands nearest where the way to the bed is tightest, and how much room is left there",
  formula: "the wall or thing nearest to the chair at the tightest place of the way found",
  source: "plane geometry",
  slow: true,
  inputs: (_: Scene, of: Of) => ({ tightest: of(reachTightest) }),
  compute: ({ tightest }): Outcome => ({
    value: tightest,
    choice: placeOf(reachedAs(tightest)),
  }),
});

/** What a driver may give up of the room that is there, to get by with fewer changes of direction: half, at most 2 cm. */
const kept = (low: number): number => Math.max(low / 2, low - 0.02);

const drives = new WeakMap<Interval, Drive>();
const drive = (tightest: Interval, { problem, way }: Reached): Drive => {
  let found = drives.get(tightest);
  if (!found) drives.set(tightest, (found = driveOf(problem, way.path, kept(way.low))));
  return found;
};

export const reachTurns = quantity({
  name: "reach.turns",
  dimension: "number",
  says: "how often the driver changes between forward and back on the way found; turning on the spot is no change",
  formula:
    "fewest changes that join places on the way by turning on the spot and driving straight; a stretch to be worked along sideways counts as two",
  source: "plane geometry",
  slow: true,
  inputs: (_: Scene, of: Of) => ({ tightest: of(reachTightest) }),
  compute: ({ tightest }): Outcome => {
    const reached = reachedAs(tightest);
    if (!reached || reached.way.path.length === 0 || reached.way.low <= 0)
      return { without: "the chair does not get through as the room is written" };
    const { changes, shuffles } = drive(tightest, reached);
    return {
      value: exactly(changes),
      terms: [
        { label: "stretches to be worked along to and fro", value: exactly(shuffles), dimension: "number" },
      ],
    };
  },
});
