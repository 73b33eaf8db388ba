/**
 * The parked chair in the room, in plan: where its parts may be, for every angle and length within tolerance. Metres, radians;
 * x to the east, y to the north.
 */
import { exactly as exact, type Interval } from "../../language/quantity/interval.js";
import { bedAxes, bedOutline, type Compass, type Outline, type Point } from "./room.js";

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
  /** From the seat's nearest corner to the bed's edge. */
  readonly gap: Interval;
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

/** The chair at one angle: outlines that hold every chair within tolerance, and outlines that every such chair holds. */
export interface Pose {
  readonly largest: readonly Outline[];
  readonly smallest: readonly Outline[];
  /** How far a point may move until the next angle looked at. */
  readonly between: number;
}

export interface Footprint {
  readonly nominal: readonly Outline[];
  readonly poses: readonly Pose[];
  /** How far the whole chair may stand from where it is drawn, along x and along y. */
  readonly offX: number;
  readonly offY: number;
  /** How far a point of its outline may be from the nominal one, the chair's place and angle being the same. */
  readonly offShape: number;
}

const off = (i: Interval): number => Math.max(i.high - i.nominal, i.nominal - i.low);
const dot = (p: Point, d: Point): number => p.x * d.x + p.y * d.y;

type Ends = readonly [rear: Interval, front: Interval, right: Interval, left: Interval];

const plus = (a: Interval, b: Interval, k = 1): Interval => {
  const u = a.low + k * (k < 0 ? b.high : b.low);
  const v = a.high + k * (k < 0 ? b.low : b.high);
  return { low: Math.min(u, v), nominal: a.nominal + k * b.nominal, high: Math.max(u, v) };
};

/** Boxes of the chair in its own frame: wheels and frame, seat, and what stands in front on each side. */
function boxes(c: ChairOutline): Ends[] {
  const zero = exact(0);
  const half = plus(zero, c.width, 0.5);
  const wide = plus(zero, c.overall, 0.5);
  const back = (i: Interval) => plus(zero, i, -1);
  const all: Ends[] = [
    [plus(c.axle, c.diameter, -0.5), plus(c.axle, c.diameter, 0.5), back(wide), wide],
    [zero, c.depth, back(half), half],
  ];
  if (c.near) all.push([c.depth, plus(c.depth, c.near), zero, half]);
  if (c.far) all.push([c.depth, plus(c.depth, c.far), back(half), zero]);
  return all;
}

export function parkedFootprint(p: ParkedInRoom, angles = 5): Footprint {
  const { up, left } = bedAxes(p.head);
  const outward = p.side === "left" ? left : { x: -left.x, y: -left.y };
  const ahead = p.facing === "head" ? up : { x: -up.x, y: -up.y };
  const bed = bedOutline(p.bed.x.nominal, p.bed.y.nominal, p.bed.width.nominal, p.bed.length.nominal, p.head);
  // The corner of the bed at its head end on the chair's side, and the place beside the hip on its edge.
  const corner = bed.reduce((best, q) =>
    dot(q, up) + dot(q, outward) > dot(best, up) + dot(best, outward) ? q : best,
  );
  const edge = { x: corner.x - up.x * p.along.nominal, y: corner.y - up.y * p.along.nominal };
  const parts = boxes(p.chair);
  const half = p.chair.width.nominal / 2;
  const depth = p.chair.depth.nominal;

  const at = (t: number) => {
    const sin = Math.sin(t);
    const cos = Math.cos(t);
    const reach = p.gap.nominal + half * cos + Math.max(0, depth * sin);
    const place = (x: number, y: number): Point => {
      const e = (x - p.hip.nominal) * cos - y * sin;
      const n = reach - (x * sin + y * cos);
      return { x: edge.x + ahead.x * e + outward.x * n, y: edge.y + ahead.y * e + outward.y * n };
    };
    return (pick: (b: Ends) => readonly [number, number, number, number] | undefined): Outline[] =>
      parts.flatMap((b) => {
        const [x0, x1, y0, y1] = pick(b) ?? [];
        if (x0 === undefined || x1 === undefined || y0 === undefined || y1 === undefined) return [];
        return [[place(x0, y0), place(x1, y0), place(x1, y1), place(x0, y1)]];
      });
  };
  const largest = (b: Ends) => [b[0].low, b[1].high, b[2].low, b[3].high] as const;
  const smallest = (b: Ends) =>
    b[0].high > b[1].low || b[2].high > b[3].low
      ? undefined
      : ([b[0].high, b[1].low, b[2].high, b[3].low] as const);
  const nominal = (b: Ends) => [b[0].nominal, b[1].nominal, b[2].nominal, b[3].nominal] as const;

  const span = p.turned.high - p.turned.low;
  const count = span === 0 ? 1 : angles;
  // Turning moves a point by no more than the arc about the hip, and the hip as far from the edge as the corner's arc.
  const arm =
    Math.max(
      ...parts.flatMap((b) => [b[0].low, b[1].high].map((x) => Math.hypot(x - p.hip.nominal, b[2].low))),
    ) + Math.hypot(depth, half);
  const poses = Array.from({ length: count }, (_, i): Pose => {
    const drawn = at(count === 1 ? p.turned.low : p.turned.low + (span * (i + 0.5)) / count);
    return { largest: drawn(largest), smallest: drawn(smallest), between: (arm * span) / count / 2 };
  });
  const mostTurn = Math.max(Math.abs(p.turned.low), Math.abs(p.turned.high));
  const offEdge =
    off(p.gap) + off(p.chair.width) / 2 + off(p.chair.depth) * Math.sin(Math.min(Math.PI / 2, mostTurn));
  const offAlong = off(p.along) + off(p.hip);
  // A bed is placed by its west and south sides: its far sides are off by its size as well.
  const sided = (d: Point, size: Interval): number => (d.x + d.y > 0 ? off(size) : 0);
  const upOff = offAlong + sided(up, p.bed.length);
  const outOff = offEdge + sided(outward, p.bed.width);
  const offShape = Math.hypot(
    Math.max(...parts.map((b) => Math.max(off(b[0]), off(b[1])))),
    Math.max(...parts.map((b) => Math.max(off(b[2]), off(b[3])))),
  );
  return {
    offShape,
    nominal: at(p.turned.nominal)(nominal),
    poses,
    offX: off(p.bed.x) + (up.x !== 0 ? upOff : outOff),
    offY: off(p.bed.y) + (up.y !== 0 ? upOff : outOff),
  };
}
