/**
 * The parked chair in the room, in plan: where its parts may be, for every angle and length within tolerance. Metres, radians;
 * x to the east, y to the north.
 */
import {
  add,
  exactly as exact,
  negate,
  scale,
  shift,
  subtract,
  type Interval,
} from "../../language/quantity/interval.js";
import { asPart, type Part, type Spot, type Turning } from "./apart.js";
import {
  computedGap,
  contact,
  middleLine,
  seatFront,
  seatRear,
  seatSide,
  type Across,
  type Plan,
  type SeatPlace,
} from "./parking.js";
import { besideAxes, rectangle, type Compass, type Outline, type Point } from "./room.js";
import { greatestOf, leastOf, pieces, type Piece } from "./sweep.js";

export type { Compass } from "./room.js";

/** Outer measures of a chair; `near` and `far` are what stands out in front of the seat on either side, if anything does. */
export interface ChairOutline {
  readonly depth: Interval;
  readonly width: Interval;
  readonly overall: Interval;
  readonly axle: Interval;
  readonly diameter: Interval;
  readonly near: Interval | undefined;
  readonly far: Interval | undefined;
}

export interface ParkedInRoom {
  readonly chair: ChairOutline;
  readonly turned: Interval;
  /** What of the chair can touch the bed, and how far from the bed the first of it stands. */
  readonly plan: Plan;
  readonly clearance: Interval;
  /** Hip joint ahead of the seat's rear edge. */
  readonly hip: Interval;
  /** From the mattress head end to the hip joint. */
  readonly along: Interval;
  readonly bed: {
    readonly x: Interval;
    readonly y: Interval;
    readonly width: Interval;
    readonly length: Interval;
  };
  readonly head: Compass;
  readonly facing: "head" | "foot";
  readonly side: "left" | "right";
}

/** With `turns`, `outer` and `inner` for every chair and place within tolerance. */
export interface Footprint extends Turning {
  /** Outlines of the parts as drawn: wheels and frame, the seat, then what stands in front. */
  readonly nominal: readonly Outline[];
}

type Picked = readonly [x0: number, x1: number, y0: number, y1: number];
type Ends = readonly [rear: SeatPlace, front: SeatPlace, right: Across, left: Across];

const rear = (x: Interval): SeatPlace => ({ from: "rear", x });
const front = (x: Interval): SeatPlace => ({ from: "front", x });
const middle = (y: Interval): Across => ({ from: "middle", y });

/** The chair's parts in its own frame: wheels and frame, seat, and what stands in front on each side. */
function boxes(c: ChairOutline): readonly Ends[] {
  const farSide = middle(scale(c.width, -0.5));
  const half = scale(c.diameter, 0.5);
  const wheels: Ends = [
    rear(subtract(c.axle, half)),
    rear(add(c.axle, half)),
    middle(scale(c.overall, -0.5)),
    middle(scale(c.overall, 0.5)),
  ];
  return [
    wheels,
    [seatRear, seatFront, farSide, seatSide],
    ...(c.near ? [[seatFront, front(c.near), middleLine, seatSide] as const] : []),
    ...(c.far ? [[seatFront, front(c.far), farSide, middleLine] as const] : []),
  ];
}

type Box = readonly [rear: Interval, front: Interval, right: Interval, left: Interval];

const largest = ([a, b, c, d]: Box): Picked => [a.low, b.high, c.low, d.high];
/** Undefined for a part that may be nothing. */
const smallest = ([a, b, c, d]: Box): Picked | undefined =>
  a.high > b.low || c.high > d.low ? undefined : [a.high, b.low, c.high, d.low];
const nominal = ([a, b, c, d]: Box): Picked => [a.nominal, b.nominal, c.nominal, d.nominal];

/** Where an end of a part is: ahead of the seat's rear edge, or from the middle towards the bed. */
const fromRear = ({ from, x }: SeatPlace, depth: Interval): Interval =>
  from === "front" ? add(depth, x) : x;
const fromMiddle = ({ from, y }: Across, half: Interval): Interval => (from === "side" ? add(half, y) : y);

/** A part by where each of its ends is. */
const boxOf = ([a, b, right, left]: Ends, { depth, half }: Pick<Plan, "depth" | "half">): Box => [
  fromRear(a, depth),
  fromRear(b, depth),
  fromMiddle(right, half),
  fromMiddle(left, half),
];

const inOwnFrame = (c: ChairOutline): readonly Box[] => {
  const seat = { depth: c.depth, half: scale(c.width, 0.5) };
  return boxes(c).map((ends) => boxOf(ends, seat));
};

/** Outlines of a chair in its own frame, x ahead, y to its left: such as hold every chair within tolerance, and such as every one holds. */
export interface ChairOutlines {
  readonly largest: readonly Outline[];
  readonly nominal: readonly Outline[];
  readonly smallest: readonly Outline[];
}

/**
 * About the point of its middle line that is that far ahead of the seat's rear edge. `nearLeft`: the side next to the bed is the
 * chair's left one.
 */
export function chairOutlines(c: ChairOutline, nearLeft: boolean, origin: number): ChairOutlines {
  const all = inOwnFrame(c).map(([a, b, right, left]): Box => [
    shift(a, -origin),
    shift(b, -origin),
    ...(nearLeft ? ([right, left] as const) : ([negate(left), negate(right)] as const)),
  ]);
  const drawn = (pick: (b: Box) => Picked | undefined): Outline[] =>
    all.flatMap((b) => {
      const picked = pick(b);
      if (!picked) return [];
      const [x0, x1, y0, y1] = picked;
      return [rectangle(x0, y0, x1 - x0, y1 - y0)];
    });
  return { largest: drawn(largest), nominal: drawn(nominal), smallest: drawn(smallest) };
}

/** Half way between the chair's rear and front end, ahead of the seat's rear edge. */
export function halfWay(c: ChairOutline): number {
  const all = inOwnFrame(c);
  return (Math.min(...all.map((b) => b[0].nominal)) + Math.max(...all.map((b) => b[1].nominal))) / 2;
}

/** A part's ends, its own lengths at one end of their bounds: its rear and its right at the one, its front and its left at the other. */
const taken = ([a, b, c, d]: Ends, least: "low" | "high", most: "low" | "high"): Ends => [
  { ...a, x: exact(a.x[least]) },
  { ...b, x: exact(b.x[most]) },
  { ...c, y: exact(c.y[least]) },
  { ...d, y: exact(d.y[most]) },
];

/** Bounds of a place on an axis of the room that is `start` and then `by` further in the axis' direction or against it. */
const onAxis = (start: Interval, by: Interval, sign: number): Interval =>
  sign > 0 ? add(start, by) : subtract(start, by);

/** In how many pieces the angles are first looked at; the search halves those that matter. */
const firstPieces = 3;

export function parkedFootprint(p: ParkedInRoom): Footprint {
  const { up, outward, ahead } = besideAxes(p.head, p.side, p.facing);
  const lengthways = up.x !== 0;
  // The bed's end at its head and its side towards the chair, each on its axis; then the place beside the hip on that side.
  const sign = (d: Point): number => d.x + d.y;
  const sideOf = (d: Point, low: Interval, size: Interval): Interval => (sign(d) > 0 ? add(low, size) : low);
  const headEnd = sideOf(up, lengthways ? p.bed.x : p.bed.y, p.bed.length);
  const edge = sideOf(outward, lengthways ? p.bed.y : p.bed.x, p.bed.width);
  const beside = onAxis(headEnd, p.along, -sign(up));

  const turns = pieces(p.turned, firstPieces);
  const all = boxes(p.chair);
  // Only what may touch first tells how far the chair stands from the bed.
  const plan = { ...p.plan, solids: contact(p.plan, p.turned).perhaps };

  const t = p.turned.nominal;
  const [sin, cos] = [Math.sin(t), Math.cos(t)];
  const reach = computedGap(plan, p.clearance, seatRear, middleLine).at(t);
  const place = (x: number, y: number): Point => {
    const e = beside.nominal + sign(ahead) * ((x - p.hip.nominal) * cos - y * sin);
    const n = edge.nominal + sign(outward) * (reach - (x * sin + y * cos));
    return lengthways ? { x: e, y: n } : { x: n, y: e };
  };
  const drawn = all.map((ends): Outline => {
    const [x0, x1, y0, y1] = nominal(boxOf(ends, plan));
    return [place(x0, y0), place(x1, y0), place(x1, y1), place(x0, y1)];
  });

  const cornerAt = (along: SeatPlace, across: Across): ((turned: Piece) => Spot) => {
    const gap = computedGap(plan, p.clearance, along, across);
    const aside = negate(fromMiddle(across, plan.half));
    const forward = subtract(fromRear(along, plan.depth), p.hip);
    return (turned) => {
      const off = gap.over(turned);
      const further = { low: leastOf(aside, forward, turned), high: greatestOf(aside, forward, turned) };
      const [eLow, eHigh] =
        sign(ahead) > 0
          ? [beside.low + further.low, beside.high + further.high]
          : [beside.low - further.high, beside.high - further.low];
      const [nLow, nHigh] =
        sign(outward) > 0
          ? [edge.low + off.low, edge.high + off.high]
          : [edge.low - off.high, edge.high - off.low];
      return lengthways
        ? { west: eLow, east: eHigh, south: nLow, north: nHigh }
        : { west: nLow, east: nHigh, south: eLow, north: eHigh };
    };
  };
  const corners = ([a, b, c, d]: Ends) => [cornerAt(a, c), cornerAt(b, c), cornerAt(b, d), cornerAt(a, d)];
  // In one and the same place a part at its largest holds every other, and at its smallest is held by it: so of its own lengths only
  // one end counts. The seat's depth is no such length, for by it the place is another.
  const outermost = (ends: Ends): Ends => taken(ends, "low", "high");
  const innermost = (ends: Ends): Ends => (smallest(boxOf(ends, plan)) ? taken(ends, "high", "low") : ends);
  const parts = (sized: (ends: Ends) => Ends): ((turned: Piece) => readonly Part[]) => {
    let made: readonly (readonly ((turned: Piece) => Spot)[])[] | undefined;
    return (turned) =>
      (made ??= all.map((ends) => corners(sized(ends)))).map((part) => asPart(part.map((at) => at(turned))));
  };
  return {
    nominal: drawn,
    turns,
    outer: parts(outermost),
    inner: parts(innermost),
  };
}
