/**
 * Footprints in a room, in plan: convex outlines as lists of corners, anticlockwise or clockwise, metres.
 */
export interface Point {
  readonly x: number;
  readonly y: number;
}
export type Outline = readonly Point[];

export const rectangle = (x: number, y: number, width: number, depth: number): Outline => [
  { x, y },
  { x: x + width, y },
  { x: x + width, y: y + depth },
  { x, y: y + depth },
];

/** A thing that stands square in the room: its south-west corner and its size. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly depth: number;
}

/** How far `b` lies beyond `a` in a direction: below zero they overlap in it. */
function beyond(a: Outline, b: Outline, nx: number, ny: number): number {
  let aMost = -Infinity;
  let bLeast = Infinity;
  for (const p of a) aMost = Math.max(aMost, p.x * nx + p.y * ny);
  for (const p of b) bLeast = Math.min(bLeast, p.x * nx + p.y * ny);
  return bLeast - aMost;
}

/** Square of the distance from a point to a side. */
function toSide(p: Point, a: Point, b: Point): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const square = dx * dx + dy * dy;
  const u = square === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / square));
  const x = p.x - a.x - u * dx;
  const y = p.y - a.y - u * dy;
  return x * x + y * y;
}

/**
 * Distance between two convex outlines; where they overlap, minus the least shift that parts them. The least shift of convex
 * outlines is at a right angle to a side of one of them.
 */
export function clearance(a: Outline, b: Outline): number {
  let apart = -Infinity;
  for (const [one, other] of [
    [a, b],
    [b, a],
  ] as const) {
    let last = one[one.length - 1]!;
    for (const p of one) {
      const nx = p.y - last.y;
      const ny = last.x - p.x;
      last = p;
      const length = Math.sqrt(nx * nx + ny * ny);
      if (length === 0) continue;
      // Outlines may run either way round, so both directions across a side are looked along.
      apart = Math.max(
        apart,
        beyond(one, other, nx / length, ny / length),
        beyond(one, other, -nx / length, -ny / length),
      );
    }
  }
  if (apart <= 0 && Number.isFinite(apart)) return apart;
  let least = Infinity;
  for (const [one, other] of [
    [a, b],
    [b, a],
  ] as const)
    for (const p of one)
      for (let i = 0; i < other.length; i++)
        least = Math.min(least, toSide(p, other[i]!, other[(i + 1) % other.length]!));
  return Math.sqrt(least);
}

export type Compass = "north" | "east" | "south" | "west";

/** The unit vector from foot to head, and that to the client's own left, lying on the back. */
export function bedAxes(head: Compass): { readonly up: Point; readonly left: Point } {
  // Lying on the back, head north, face to the ceiling: the client's left is the east side.
  switch (head) {
    case "north":
      return { up: { x: 0, y: 1 }, left: { x: 1, y: 0 } };
    case "south":
      return { up: { x: 0, y: -1 }, left: { x: -1, y: 0 } };
    case "east":
      return { up: { x: 1, y: 0 }, left: { x: 0, y: -1 } };
    case "west":
      return { up: { x: -1, y: 0 }, left: { x: 0, y: 1 } };
  }
}

/** Beside a bed, on the client's own left or right of it: unit vectors to its head, out from its side, and the way the chair looks. */
export function besideAxes(
  head: Compass,
  side: "left" | "right",
  facing: "head" | "foot",
): { readonly up: Point; readonly outward: Point; readonly ahead: Point } {
  const { up, left } = bedAxes(head);
  const opposite = ({ x, y }: Point): Point => ({ x: -x, y: -y });
  return {
    up,
    outward: side === "left" ? left : opposite(left),
    ahead: facing === "head" ? up : opposite(up),
  };
}

/** Least clearance between any of some outlines and a box. */
export function leastClearance(outlines: readonly Outline[], b: Box): number {
  const outline = rectangle(b.x, b.y, b.width, b.depth);
  let least = Infinity;
  for (const o of outlines) least = Math.min(least, clearance(o, outline));
  return least;
}
