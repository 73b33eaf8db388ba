/**
 * Where the way may end. The chair is parked anew for all that it is parked by: its own measures, the angle it is set at, what is
 * left to the bed, the bed's place. From there it is moved back along its heading, and so its place and its distance from the bed
 * are both bounded, the second much more closely: what moves the bed moves the chair with it, and a wider chair stands further
 * out. Metres, radians; x to the east, y to the north.
 */
import {
  add,
  exactly,
  multiply,
  negate,
  scale,
  subtract,
  type Interval,
} from "../../../language/quantity/interval.js";
import type { Sides, ThingOutline } from "../outline.js";
import {
  apart,
  computedGap,
  middleLine,
  outside,
  seatFront,
  seatRear,
  seatSide,
  type Across,
  type Along,
  type Plan,
} from "../parking.js";
import type { Point } from "../room.js";
import { pieces, type Piece } from "../sweep.js";
import type { PoseBox, Range } from "./problem.js";
import { approachBack } from "./through-door.js";

export interface ParkedBeside {
  /** The chair, with the solids that may be the first to touch, and how far the first stays away. */
  readonly plan: Plan;
  readonly clearance: Interval;
  readonly diameter: Interval;
  /** The point of the chair whose place is asked for: on its middle line, ahead of the seat's rear edge. */
  readonly origin: number;
  readonly turned: Interval;
  /** Hip joint ahead of the seat's rear edge, and from the bed's head end. */
  readonly hip: Interval;
  readonly along: Interval;
  readonly bed: ThingOutline;
  /** Unit vectors: to the bed's head, out from its side, and the way that a chair parked parallel looks. */
  readonly up: Point;
  readonly outward: Point;
  readonly ahead: Point;
}

/** For some of the angles: every pose, of the point asked for, from which the chair may be parked. */
export interface ApproachPoses {
  readonly angles: Piece;
  readonly box: PoseBox;
  /** How far that point is out from the bed's side, wherever that is. */
  readonly out: Range;
  /** From the chair to the bed: never below `low`; the clearance of the pose is never above `high`. */
  readonly bed: Range;
}

/** No piece of the angles is longer, radians: a degree turns a chair's end by less than two centimetres. */
const longest = Math.PI / 180;

/** How far the side of a box is in that direction. */
const sideAt = (s: Sides, d: Point): Interval =>
  d.x > 0 ? s.east : d.x < 0 ? negate(s.west) : d.y > 0 ? s.north : negate(s.south);

/** All of them, in the order of the angles; each touches the next. */
export function approaches(p: ParkedBeside): readonly ApproachPoses[] {
  const count = Math.max(1, Math.ceil((p.turned.high - p.turned.low) / longest - 1e-9));
  return pieces(p.turned, count).map((angles) => approach(p, angles));
}

function approach(p: ParkedBeside, angles: Piece): ApproachPoses {
  const { plan, up, outward, ahead, bed } = p;
  // Moved back, every point of the chair is what was further ahead of it by as much.
  const back = (a: Along): Along => ({ ...a, x: subtract(a.x, exactly(approachBack)) });
  const gap = (solids: Plan["solids"], a: Along, o: Across): Range =>
    computedGap({ ...plan, solids }, p.clearance, back(a), o).over(angles);
  const origin: Along = { from: "rear", x: exactly(p.origin) };
  const out = gap(plan.solids, origin, middleLine);
  const cos = rangeOf(angles.cosFrom, angles.cosTo);
  const sin = rangeOf(angles.sinFrom, angles.sinTo);
  // Along the bed from its head end, towards the head; `facing` is 1 for a chair that looks there.
  const facing = ahead.x * up.x + ahead.y * up.y;
  const hips = multiply(subtract(exactly(p.origin - approachBack), p.hip), cos);
  const fromHead = subtract(scale(hips, facing), p.along);
  const length = add(sideAt(bed.sides, up), sideAt(bed.sides, negated(up)));
  const depth = add(sideAt(bed.sides, outward), sideAt(bed.sides, negated(outward)));
  let low = Infinity;
  // Of each solid, were it the first to touch, how far the nearest point then is: one of them is the first.
  const ifFirst = plan.solids.map(() => Infinity);
  for (const [a, o] of pointsOf(p)) {
    const near = gap(plan.solids, a, o).low;
    low = Math.min(low, near);
    const across = multiply(outside(o, middleLine, plan), sin);
    const place = add(fromHead, scale(subtract(multiply(apart(a, origin, plan), cos), across), facing));
    // Beside the bed, and not so deep in it that it comes out sooner elsewhere, a point is as far as it is from the bed's side.
    const deep = Math.max(0, -near);
    if (!(place.high <= -deep && place.low >= deep - length.low && deep <= depth.low)) continue;
    plan.solids.forEach((s, n) => (ifFirst[n] = Math.min(ifFirst[n]!, gap([s], a, o).high)));
  }
  const n = add(sideAt(bed.sides, outward), { ...out, nominal: out.low });
  const u = add(sideAt(bed.sides, up), fromHead);
  const [x, y] = up.x === 0 ? [scale(n, outward.x), scale(u, up.y)] : [scale(u, up.x), scale(n, outward.y)];
  const turn = outward.x * ahead.y - outward.y * ahead.x;
  const heading = add(exactly(Math.atan2(ahead.y, ahead.x)), scale(rangeOf(angles.from, angles.to), turn));
  return {
    angles,
    box: { x, y, heading },
    out,
    bed: { low, high: Math.max(...ifFirst) },
  };
}

const negated = ({ x, y }: Point): Point => ({ x: -x, y: -y });
const rangeOf = (a: number, b: number): Interval => ({
  low: Math.min(a, b),
  nominal: a,
  high: Math.max(a, b),
});

/** The corners of the chair's outline next to the bed: of the wheels, the seat, and what stands in front of it on either side. */
function pointsOf({ diameter }: ParkedBeside): readonly (readonly [Along, Across])[] {
  const radius = scale(diameter, 0.5);
  const rim: Across = { from: "rim", y: exactly(0) };
  return [
    [{ from: "axle", x: radius }, rim],
    [{ from: "axle", x: negate(radius) }, rim],
    [seatRear, seatSide],
    [seatFront, seatSide],
    [{ from: "tip", x: exactly(0) }, seatSide],
    [{ from: "far-tip", x: exactly(0) }, middleLine],
  ];
}
