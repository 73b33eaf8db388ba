/**
 * A room walked with a tape: legs that must come back to where they started. Metres; x to the east, y to the north.
 *
 * Corners are taken as square and walls as running east, north, west or south, so an error east to west can only lie in walls
 * that run that way. It is shared among them in proportion to their lengths: the transit rule of surveying, which for legs along
 * the axes is the compass rule (correction = error x leg / sum of legs) taken for each direction by itself. So walls stay square.
 */
import type { Interval } from "../../language/quantity/interval.js";
import type { Point } from "./room.js";

/** How far a leg goes to the east and to the north; for a wall one of the two is nothing. */
export interface Leg {
  readonly east: Interval;
  readonly north: Interval;
}

const none: Interval = { low: 0, nominal: 0, high: 0 };
const plus = (a: Interval, b: Interval): Interval => ({
  low: a.low + b.low,
  nominal: a.nominal + b.nominal,
  high: a.high + b.high,
});
const minus = (a: Interval): Interval => ({ low: -a.high, nominal: -a.nominal, high: -a.low });
const clamp = (x: number, i: Interval): number => Math.min(i.high, Math.max(i.low, x));

/** The leg of a wall of this length. */
export function wallLeg(length: Interval, way: "north" | "east" | "south" | "west"): Leg {
  switch (way) {
    case "east":
      return { east: length, north: none };
    case "west":
      return { east: minus(length), north: none };
    case "north":
      return { east: none, north: length };
    case "south":
      return { east: none, north: minus(length) };
  }
}

export interface Closure {
  /** Where the walk ends, seen from where it started: nothing if it closes. */
  readonly east: Interval;
  readonly north: Interval;
  /** Distance from start to end. */
  readonly error: Interval;
  readonly perimeter: Interval;
}

/** Distance of a point known within a box from the origin. */
function distance(x: Interval, y: Interval): Interval {
  const near = (i: Interval): number => (i.low > 0 ? i.low : i.high < 0 ? i.high : 0);
  const far = (i: Interval): number => Math.max(Math.abs(i.low), Math.abs(i.high));
  return {
    low: Math.hypot(near(x), near(y)),
    nominal: Math.hypot(x.nominal, y.nominal),
    high: Math.hypot(far(x), far(y)),
  };
}

/** How the walk closes. East and north are taken as independent, which they are for walls along the axes. */
export function closure(legs: readonly Leg[]): Closure {
  let east = none;
  let north = none;
  let perimeter = none;
  for (const leg of legs) {
    east = plus(east, leg.east);
    north = plus(north, leg.north);
    perimeter = plus(perimeter, distance(leg.east, leg.north));
  }
  return { east, north, error: distance(east, north), perimeter };
}

/** A corner of the closed room: where it may be, and where it is drawn. */
export interface Corner {
  readonly x: Interval;
  readonly y: Interval;
}

/**
 * Places along one axis after each leg. Any true place is reached from the start by the legs before it and from the end by the
 * legs after it, each within its tolerance: so it lies in both sums. Where those have nothing in common the walk does not close
 * within its tolerances, and everything from one sum to the other is possible.
 */
function along(parts: readonly Interval[]): Interval[] {
  const total = parts.reduce(plus, none);
  const lengths = parts.reduce((sum, p) => sum + Math.abs(p.nominal), 0);
  const places: Interval[] = [none];
  let before = none;
  let walked = 0;
  let rest = total;
  for (const p of parts.slice(0, -1)) {
    before = plus(before, p);
    rest = { low: rest.low - p.low, nominal: rest.nominal - p.nominal, high: rest.high - p.high };
    walked += Math.abs(p.nominal);
    if (p === none) {
      places.push(places[places.length - 1]!);
      continue;
    }
    const after = minus(rest);
    const low = Math.max(before.low, after.low);
    const high = Math.min(before.high, after.high);
    const bounds: Interval =
      low <= high
        ? { low, nominal: 0, high }
        : { low: Math.min(before.low, after.low), nominal: 0, high: Math.max(before.high, after.high) };
    const share = lengths > 0 ? walked / lengths : 0;
    places.push({ ...bounds, nominal: clamp(before.nominal - total.nominal * share, bounds) });
  }
  return places;
}

/** Corners of the closed room, from the first; the corner after the last wall is the first again and is not repeated. */
export function corners(legs: readonly Leg[]): readonly Corner[] {
  const east = closing(legs.map((l) => l.east));
  const north = closing(legs.map((l) => l.north));
  return legs.map((_, n) => ({ x: east[n]!, y: north[n]! }));
}

/** After the last leg that runs along an axis the walk is back on the line from which it started. */
function closing(parts: readonly Interval[]): Interval[] {
  const last = parts.findLastIndex((p) => p !== none);
  const places = along(parts.slice(0, last + 1));
  while (places.length < parts.length) places.push(none);
  return places;
}

/** Area with its sign: above zero when walked anticlockwise. Counted from the first corner, so that far places lose no digits. */
export function area(points: readonly Point[]): number {
  const o = points[0];
  if (!o) return 0;
  let twice = 0;
  for (let n = 0; n < points.length; n++) {
    const a = points[n]!;
    const b = points[(n + 1) % points.length]!;
    twice += (a.x - o.x) * (b.y - o.y) - (b.x - o.x) * (a.y - o.y);
  }
  return twice / 2;
}
