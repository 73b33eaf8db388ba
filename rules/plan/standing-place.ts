/** Where somebody can stand by the parked chair: the largest clear circle on one side of it, within reach of who sits there. Metres. */
import type { Interval } from "../../language/quantity/interval.js";
import { leastApartOver, mostApartOver } from "./apart.js";
import { boxDistance, insideDistance, largestCircle, leastOf, type Distance } from "./circle.js";
import type { Footprint } from "./footprint.js";
import { roomWithin, type RoomOutline } from "./outline.js";
import type { Outline, Point } from "./room.js";

export type Place = "in-front" | "behind" | "at-side";

/** The seat in the room: its rear corner away from the bed, and its unit vectors forward and towards the bed. */
interface Seat {
  readonly rear: Point;
  readonly forward: Point;
  readonly toBed: Point;
  readonly depth: number;
  readonly width: number;
}

/** The seat is the second of the chair's outlines, drawn from its rear corner away from the bed, along that side and across. */
function seatOf(chair: Footprint): Seat | undefined {
  const [rear, front, , across] = chair.nominal[1] ?? [];
  if (!rear || !front || !across) return undefined;
  const unit = (p: Point): { readonly d: Point; readonly length: number } => {
    const x = p.x - rear.x;
    const y = p.y - rear.y;
    const length = Math.hypot(x, y);
    return { d: { x: x / length, y: y / length }, length };
  };
  const f = unit(front);
  const b = unit(across);
  return f.length > 0 && b.length > 0
    ? { rear, forward: f.d, toBed: b.d, depth: f.length, width: b.length }
    : undefined;
}

/** The place chosen: the middle of the circle, and how wide it is for any measures within their tolerances. */
export interface Standing {
  readonly middle: Point;
  readonly across: Interval;
}

/**
 * The circle's middle is chosen at nominal values and then held; how far everything is from it is worked out for all tolerances.
 * `hip`: the hip joint ahead of the seat's rear edge; `reach`: from there to the circle's middle at most.
 */
export function standingPlace(
  room: RoomOutline,
  chair: Footprint,
  place: Place,
  hip: number,
  reach: number,
): Standing | undefined {
  const seat = seatOf(chair);
  if (!seat) return undefined;
  const at = (x: number, y: number): Point => ({
    x: seat.rear.x + seat.forward.x * x + seat.toBed.x * y,
    y: seat.rear.y + seat.forward.y * x + seat.toBed.y * y,
  });
  const sitter = at(hip, seat.width / 2);
  // How far a place is from where somebody may stand: the furthest of the bounds that it lies beyond.
  const outside = (x: number, y: number): number => {
    const ahead = (x - seat.rear.x) * seat.forward.x + (y - seat.rear.y) * seat.forward.y;
    const aside = (x - seat.rear.x) * seat.toBed.x + (y - seat.rear.y) * seat.toBed.y;
    const away = Math.hypot(x - sitter.x, y - sitter.y) - reach;
    if (place === "in-front") return Math.max(away, seat.depth - ahead);
    if (place === "behind") return Math.max(away, ahead);
    return Math.max(away, -ahead, ahead - seat.depth, aside);
  };
  const toChair = toChairDrawn(chair, seat);
  const drawn = [
    insideDistance(room.walls),
    ...room.things.map(({ sides: s }) =>
      boxDistance(s.west.nominal, s.east.nominal, s.south.nominal, s.north.nominal),
    ),
    toChair,
  ];
  const circle = largestCircle({
    distance: leastOf(drawn),
    low: { x: sitter.x - reach, y: sitter.y - reach },
    high: { x: sitter.x + reach, y: sitter.y + reach },
    precision: 0.001,
    outside,
  });
  if (!circle) return undefined;
  const { x, y } = circle;
  const far = (walls: Outline): number => insideDistance(walls)(x, y);
  let low = far(roomWithin(room, "smallest"));
  let high = far(roomWithin(room, "largest"));
  for (const { sides: s } of room.things) {
    low = Math.min(low, boxDistance(s.west.low, s.east.high, s.south.low, s.north.high)(x, y));
    if (s.west.high <= s.east.low && s.south.high <= s.north.low)
      high = Math.min(high, boxDistance(s.west.high, s.east.low, s.south.high, s.north.low)(x, y));
  }
  const spot = { west: x, east: x, south: y, north: y };
  const middle = [{ largest: spot, smallest: spot }];
  low = Math.min(low, leastApartOver(chair, middle, low));
  // As drawn it may already be further away than the nearest of all else can ever be.
  if (toChair(x, y) < high) high = Math.min(high, mostApartOver(chair, middle));
  const nominal = circle.radius;
  return {
    middle: { x, y },
    across: {
      low: 2 * Math.max(0, Math.min(low, nominal)),
      nominal: 2 * nominal,
      high: 2 * Math.max(high, nominal),
    },
  };
}

/** To the chair as drawn: its outlines are rectangles that lie along the seat. */
function toChairDrawn(chair: Footprint, seat: Seat): Distance {
  const along = (p: Point): Point => ({
    x: (p.x - seat.rear.x) * seat.forward.x + (p.y - seat.rear.y) * seat.forward.y,
    y: (p.x - seat.rear.x) * seat.toBed.x + (p.y - seat.rear.y) * seat.toBed.y,
  });
  const parts = chair.nominal.map((o) => {
    const corners = o.map(along);
    const xs = corners.map((p) => p.x);
    const ys = corners.map((p) => p.y);
    return boxDistance(Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys));
  });
  const least = leastOf(parts);
  return (x, y) => {
    const p = along({ x, y });
    return least(p.x, p.y);
  };
}
