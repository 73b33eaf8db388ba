/**
 * A room with what stands in it, in plan: walls as walked, doors in them, things as boxes. Metres; x to the east, y to the north,
 * the first corner walked (the south-west one) at (0, 0). Walls run along the axes and things stand square in the room.
 *
 * Whatever is shown or planned takes the nominal outline; `across`, `sides` and `clear` tell between which bounds the true wall,
 * side or width lies for any measures within their tolerances.
 */
import { add, exactly, larger, negate, subtract, type Interval } from "../../language/quantity/interval.js";
import { rectangle, type Compass, type Outline, type Point } from "./room.js";
import { faultOf, type ShapeFault } from "./outline-faults.js";
import { area, closure, corners, wallLeg, type Closure } from "./traverse.js";

export interface WallMeasure {
  readonly length: Interval;
  readonly way: Compass;
}

/** On which wall: a side of the room (its outermost wall there), or the number of the wall in the order walked, from 1. */
export type WallName = Compass | number;

export interface DoorMeasure {
  readonly name: string;
  readonly wall: WallName | undefined;
  /** From the west or south end of its wall to its near side. */
  readonly at: Interval | undefined;
  readonly clear: Interval | undefined;
  readonly opens?: string | undefined;
  readonly hinged?: Compass | undefined;
}

export interface ThingMeasure {
  readonly name: string;
  readonly kind: string;
  /** For a bed: where its head points; its size is then width by length. Other things: width along their wall by depth. */
  readonly head?: Compass | undefined;
  readonly wall?: WallName | undefined;
  /** Without a wall from the west (`at`) and the south (`second`) to its nearest sides; with one from the wall's west or south end. */
  readonly at: Interval;
  readonly second?: Interval | undefined;
  readonly wide: Interval;
  readonly deep: Interval;
  readonly height?: Interval | undefined;
}

export interface RoomMeasures {
  readonly walk: readonly WallMeasure[];
  readonly doors?: readonly DoorMeasure[];
  readonly things?: readonly ThingMeasure[];
}

export interface WallOutline {
  /** In the order walked, from 1. */
  readonly number: number;
  /** `south wall`; where a side of the room has several, `wall 3 (south)`. */
  readonly name: string;
  /** The side of the room on which it stands: the room lies on the other side of it. */
  readonly side: Compass;
  /** From its west or south end. */
  readonly from: Point;
  readonly to: Point;
  /** Unit vector into the room. */
  readonly inward: Point;
  /** Its y if it runs east to west, else its x. */
  readonly across: Interval;
  /** The places of its west or south end and of the other, along it. */
  readonly begins: Interval;
  readonly ends: Interval;
}

export interface DoorOutline {
  readonly name: string;
  readonly wall: WallOutline;
  /** From the west or south jamb to the other. */
  readonly from: Point;
  readonly to: Point;
  /** Unit vector into the room. */
  readonly inward: Point;
  readonly clear: Interval;
  /** From the west or south end of its wall to the first of the two. */
  readonly at: Interval;
  readonly opens?: string | undefined;
  /** The jamb with the hinges, where it is said. */
  readonly hinge?: Point | undefined;
  /** By how much it reaches past an end of its wall; nothing where it lies on it. */
  readonly past: Interval;
}

/** The four sides of a box, each with its bounds. */
export interface Sides {
  readonly west: Interval;
  readonly east: Interval;
  readonly south: Interval;
  readonly north: Interval;
}

export interface ThingOutline {
  readonly name: string;
  readonly kind: string;
  readonly outline: Outline;
  readonly sides: Sides;
  readonly head?: Compass | undefined;
  readonly height?: Interval | undefined;
}

export type { ShapeFault } from "./outline-faults.js";
export { roomWithin, wallSolids } from "./outline-solids.js";

export interface RoomOutline {
  /** Corners in the order walked, closed by the transit rule; the first is not repeated. */
  readonly walls: Outline;
  readonly sides: readonly WallOutline[];
  readonly closure: Closure;
  readonly fault: ShapeFault | undefined;
  /** Doors whose wall, place and width are known. */
  readonly doors: readonly DoorOutline[];
  readonly things: readonly ThingOutline[];
}

/** Side of the room on which a wall stands, by the way it runs with the room on its left. */
const sideOfWay: Readonly<Record<Compass, Compass>> = {
  east: "south",
  north: "east",
  west: "north",
  south: "west",
};
export const opposite: Readonly<Record<Compass, Compass>> = {
  north: "south",
  south: "north",
  east: "west",
  west: "east",
};
const inwardFrom: Readonly<Record<Compass, Point>> = {
  south: { x: 0, y: 1 },
  north: { x: 0, y: -1 },
  west: { x: 1, y: 0 },
  east: { x: -1, y: 0 },
};
export const runsEast = (side: Compass): boolean => side === "north" || side === "south";

export function roomOutline(m: RoomMeasures): RoomOutline {
  const legs = m.walk.map((w) => wallLeg(w.length, w.way));
  const at = corners(legs);
  const walls = at.map((c): Point => ({ x: c.x.nominal, y: c.y.nominal }));
  const turn = area(walls);
  const fault = faultOf(walls, turn);
  const count = new Map<Compass, number>();
  const ways = m.walk.map((w) => (turn < 0 ? opposite[sideOfWay[w.way]] : sideOfWay[w.way]));
  for (const side of ways) count.set(side, (count.get(side) ?? 0) + 1);
  const sides = m.walk.map((_, n): WallOutline => {
    const side = ways[n]!;
    const a = at[n]!;
    const b = at[(n + 1) % at.length]!;
    const along = runsEast(side);
    const [first, second] = (along ? a.x.nominal <= b.x.nominal : a.y.nominal <= b.y.nominal)
      ? [a, b]
      : [b, a];
    const point = (c: typeof a): Point => ({ x: c.x.nominal, y: c.y.nominal });
    return {
      number: n + 1,
      name: count.get(side) === 1 ? `${side} wall` : `wall ${n + 1} (${side})`,
      side,
      from: point(first),
      to: point(second),
      inward: inwardFrom[side],
      across: along ? a.y : a.x,
      begins: along ? first.x : first.y,
      ends: along ? second.x : second.y,
    };
  });
  return {
    walls,
    sides,
    closure: closure(legs),
    fault,
    doors: (m.doors ?? []).flatMap((d) => doorOutline(d, sides) ?? []),
    things: (m.things ?? []).flatMap((t) => thingOutline(t, sides) ?? []),
  };
}

/** The outermost wall on a side, or the wall of that number. Of two as far out, or of none, none: it is not said which. */
export function wallNamed(
  sides: readonly WallOutline[],
  name: WallName | undefined,
): WallOutline | undefined {
  if (typeof name === "number") return sides[name - 1];
  const on = sides.filter((w) => w.side === name);
  const out = name === "north" || name === "east" ? 1 : -1;
  const most = Math.max(...on.map((w) => out * w.across.nominal));
  const outermost = on.filter((w) => out * w.across.nominal >= most - 1e-9);
  return outermost.length === 1 ? outermost[0] : undefined;
}

function doorOutline(d: DoorMeasure, sides: readonly WallOutline[]): DoorOutline | undefined {
  const wall = wallNamed(sides, d.wall);
  if (!wall || !d.at || !d.clear) return undefined;
  const along = runsEast(wall.side);
  const on = (s: number): Point =>
    along ? { x: wall.from.x + s, y: wall.from.y } : { x: wall.from.x, y: wall.from.y + s };
  const from = on(d.at.nominal);
  const to = on(d.at.nominal + d.clear.nominal);
  const first = along ? d.hinged === "west" : d.hinged === "south";
  const second = along ? d.hinged === "east" : d.hinged === "north";
  return {
    name: d.name,
    wall,
    from,
    to,
    inward: wall.inward,
    clear: d.clear,
    at: d.at,
    opens: d.opens,
    hinge: first ? from : second ? to : undefined,
    past: pastEnds(d.at, d.clear, subtract(wall.ends, wall.begins)),
  };
}

/** The larger of what sticks out before the wall's first end and past its other. */
const pastEnds = (at: Interval, clear: Interval, long: Interval): Interval =>
  larger(exactly(0), larger(negate(at), subtract(add(at, clear), long)));

/** The box of a thing; none where it stands against a wall that is not known. */
export function thingOutline(t: ThingMeasure, sides: readonly WallOutline[]): ThingOutline | undefined {
  const placed = sidesOf(t, sides);
  if (!placed) return undefined;
  const { west, east, south, north } = placed;
  return {
    name: t.name,
    kind: t.kind,
    outline: rectangle(
      west.nominal,
      south.nominal,
      east.nominal - west.nominal,
      north.nominal - south.nominal,
    ),
    sides: placed,
    head: t.head,
    height: t.height,
  };
}

function sidesOf(t: ThingMeasure, walls: readonly WallOutline[]): Sides | undefined {
  const wall = t.wall === undefined ? undefined : wallNamed(walls, t.wall);
  if (t.wall !== undefined && !wall) return undefined;
  // A bed is measured across and from head to foot; other things along their wall and out from it.
  const lengthways = t.head === undefined ? wall !== undefined && !runsEast(wall.side) : !runsEast(t.head);
  const [ew, ns] = lengthways ? [t.deep, t.wide] : [t.wide, t.deep];
  if (!wall) {
    const south = t.second ?? exactly(0);
    return { west: t.at, east: add(t.at, ew), south, north: add(south, ns) };
  }
  const near = add(wall.begins, t.at);
  switch (wall.side) {
    case "south":
      return { west: near, east: add(near, ew), south: wall.across, north: add(wall.across, ns) };
    case "north":
      return { west: near, east: add(near, ew), south: subtract(wall.across, ns), north: wall.across };
    case "west":
      return { south: near, north: add(near, ns), west: wall.across, east: add(wall.across, ew) };
    case "east":
      return { south: near, north: add(near, ns), west: subtract(wall.across, ew), east: wall.across };
  }
}
