/**
 * The widest way through a room, for every room, chair and parking place within their tolerances.
 *
 * The widest room and the smallest chair bound every way to some goal from above, where any of the goals will do; so does the
 * clearance at the goal itself. The tightest room and the largest chair bound a way to one goal from below. For the goals are
 * many, that way is searched for to a place a little out from the bed, and what joins it with each goal is bounded by itself:
 * straight out from the bed, then about. On the first of it the chair only comes away from the bed, so that its clearance there is
 * never below what it is at the goal, which is known closely; on the rest of it nothing is nearer to it than `free`. The
 * widest way to each goal is at least the least of the three.
 */
import type { ChairOutlines } from "../footprint.js";
import type { DoorOutline, RoomOutline } from "../outline.js";
import type { Outline, Point } from "../room.js";
import { greatest } from "../sweep.js";
import type { ApproachPoses } from "./approach.js";
import { Clearance } from "./clearance.js";
import { greatestIn, leastIn } from "./pose-box.js";
import type { ChairPose, PoseBox, Range, Way, WayProblem } from "./problem.js";
import { doorNames, doorOff, throughDoor, type Held } from "./through-door.js";
import { usualGap, widestWay } from "./way.js";

export interface Approaching {
  /** About the point of the chair whose place is meant by all below. */
  readonly chair: ChairOutlines;
  /** Where it parks as drawn. */
  readonly parked: ChairPose;
  readonly approaches: readonly ApproachPoses[];
  /** Name of the bed, unit vector out from the side at which it is parked, and between which bounds that side lies along it. */
  readonly bed: string;
  readonly outward: Point;
  readonly side: Range;
  /** Whether the bed is on the chair's left. */
  readonly bedLeft: boolean;
}

/** Poses are of the origin of the chair's own frame. */
const ownOrigin: Point = { x: 0, y: 0 };

/** A chair is moved out from the bed no further than this before it is free to go, metres. */
const farthestOut = 0.3;

/** A place near all goals, and the least clearance on what joins it with them, the bed beside the goal left aside. */
interface Hub {
  readonly pose: ChairPose;
  readonly free: number;
}

/** How far out from all goals, and what is free there. */
interface Place {
  readonly out: number;
  readonly free: number;
}

/** The tightest room and the largest chair, and the widest and the smallest, each by what stands still. */
export type Problems = Readonly<Record<"tightest" | "widest", Readonly<Record<Held, WayProblem>>>>;

export function problemsOf(room: RoomOutline, door: DoorOutline, { chair, parked }: Approaching): Problems {
  const { nominal } = chair;
  const of = (outlines: readonly Outline[], end: keyof Problems) => ({
    door: throughDoor(room, door, { chair: outlines, nominal, parked }, end, "door"),
    room: throughDoor(room, door, { chair: outlines, nominal, parked }, end, "room"),
  });
  return { tightest: of(chair.largest, "tightest"), widest: of(chair.smallest, "widest") };
}

/** Bounds the widest way for all within their tolerances, counted no further down than a quarter of the chair's width. */
export function wayWithin({ tightest, widest }: Problems, door: DoorOutline, a: Approaching): Range {
  const names = new Set([door.wall.name, ...Object.values(doorNames(door))]);
  const off = doorOff(door, "door");
  const moves = Math.hypot(off.x, off.y) > 0;
  // With the door held, a way that is tightest at the door is bounded as closely as can be; else both may be asked.
  const again = (way: Way): boolean => moves && !(way.tightest && names.has(way.tightest.name));
  const least = a.approaches.reduce((m, p) => Math.min(m, p.bed.low), Infinity);
  const below = (held: Held): Bound => fromBelow(tightest[held], a, doorOff(door, held), least);
  const low = below("door");
  const clear = new Clearance(widest.room.chair, widest.room.solids, ownOrigin);
  const most = a.approaches.reduce((m, p) => Math.max(m, greatestIn(clear, p.box, p.bed.high, m)), -Infinity);
  const above = (held: Held): Bound => fromAbove(widest[held], a, doorOff(door, held), most);
  const high = above("door");
  return {
    low:
      low.value < least - usualGap && again(low.way) ? Math.max(low.value, below("room").value) : low.value,
    high: high.value < most && again(high.way) ? Math.min(high.value, above("room").value) : high.value,
  };
}

interface Bound {
  readonly way: Way;
  readonly value: number;
}

/** No way is tighter than that; `bed`: the least clearance to the bed at any goal. */
function fromBelow(tight: WayProblem, a: Approaching, off: Point, bed: number): Bound {
  const hub = hubOf(tight, a, off, bed);
  const enough = Math.min(bed, hub.free);
  const way = widestWay({ ...tight, goal: hub.pose }, { enough });
  return { way, value: Math.max(way.floor, Math.min(enough, way.low)) };
}

/** No way is wider than that; `most`: the greatest clearance at any goal. */
function fromAbove(wide: WayProblem, a: Approaching, off: Point, most: number): Bound {
  const goals = a.approaches.map((p) => moved(p.box, off, a.outward)(0, false));
  const way = widestWay({ ...wide, goals }, { enough: most });
  return { way, value: Math.max(way.floor, Math.min(most, way.high)) };
}

/**
 * The place straight out from the bed, only as far as it must be for `enough` all round the chair, or as far as it is freest.
 * `off`: how far everything may be from where it is drawn.
 */
function hubOf(tight: WayProblem, a: Approaching, off: Point, enough: number): Hub {
  const solids = tight.solids.filter((s) => s.name !== a.bed);
  const others = new Clearance(tight.chair, solids, ownOrigin);
  const offBed = a.side.high - a.side.low + 2 * Math.abs(off.x * a.outward.x + off.y * a.outward.y);
  const bed = a.approaches.reduce(
    (m, p) => Math.min(m, p.out.low - towards(tight.chair, a, p) - offBed),
    Infinity,
  );
  const boxes = a.approaches.map((p) => moved(p.box, off, a.outward));
  const floor = -others.halfWidth / 2;
  const freeAt = (out: number): number => {
    const level = Math.min(enough, bed + out);
    const around = leastIn(
      others,
      boxes.map((box) => box(out, true)),
      level,
      floor,
    );
    return Math.min(level, around);
  };
  // The further out, the further from the bed and the nearer to all else: the best is where both are alike.
  const limited = (at: Place): boolean => at.free < Math.min(enough, bed + at.out);
  const place = (out: number): Place => ({ out, free: freeAt(out) });
  let best = place(0);
  const farthest = Math.min(farthestOut, Math.max(0, enough - bed));
  if (!limited(best) && farthest > 0) {
    let far = place(farthest);
    if (!limited(far)) best = far;
    while (limited(far) && far.out - best.out > 2e-3) {
      const half = place((best.out + far.out) / 2);
      if (limited(half)) far = half;
      else best = half;
    }
    if (far.free > best.free) best = far;
  }
  const { box } = a.approaches[a.approaches.length >> 1]!;
  const at = moved(box, off, a.outward)(best.out, false);
  const middle = (r: Range): number => (r.low + r.high) / 2;
  return { free: best.free, pose: { x: middle(at.x), y: middle(at.y), heading: middle(at.heading) } };
}

/** How far the chair reaches towards the bed from its own origin, at most. */
function towards(chair: readonly Outline[], a: Approaching, p: ApproachPoses): number {
  return Math.max(...chair.flat().map((q) => greatest(q.x, a.bedLeft ? q.y : -q.y, p.angles)));
}

/** All places of the box, moved out from the bed that far, and all less far if `between`. */
const moved =
  (box: PoseBox, off: Point, outward: Point) =>
  (out: number, between: boolean): PoseBox => {
    const along = (r: Range, by: number, d: number): Range => {
      const from = between ? 0 : out * d;
      return { low: r.low - by + Math.min(from, out * d), high: r.high + by + Math.max(from, out * d) };
    };
    return {
      x: along(box.x, off.x, outward.x),
      y: along(box.y, off.y, outward.y),
      heading: box.heading,
    };
  };
