/**
 * Bounds of the distance between a convex outline, of which each corner is known to lie in a box of its own, and a box whose sides
 * have bounds. Metres.
 *
 * Apart in a direction u they are by the least u·b over the box less the greatest u·q over the corners, and apart altogether by the
 * greatest of that over all directions: their distance, or below zero minus the least shift that parts them. Within a quarter turn
 * of directions every corner is at its worst, or at its best, in one and the same corner of where it may be, so that one difference
 * a corner is left. The least of these is greatest along one of them, where two of them are level, or at an end of the quarter.
 */
import type { Sides } from "./outline.js";
import { greatestOver, leastOver, type Piece } from "./sweep.js";

/** Four sides of a box: where one corner may be, or a thing that stands square in the room. */
export interface Spot {
  readonly west: number;
  readonly east: number;
  readonly south: number;
  readonly north: number;
}

/** A part of something that stands askew: where each corner of it may be, and the box around all of that. */
export interface Part {
  readonly corners: readonly Spot[];
  readonly around: Spot;
}

/** A thing that stands square in the room. */
export interface Bounded {
  readonly largest: Spot;
  /** What it surely fills; where that is nothing its sides stand the wrong way round. */
  readonly smallest: Spot;
}

const atLargest = ({ west, east, south, north }: Sides): Spot => ({
  west: west.low,
  east: east.high,
  south: south.low,
  north: north.high,
});

const atSmallest = ({ west, east, south, north }: Sides): Spot => ({
  west: Math.min(west.high, east.high),
  east: Math.max(west.low, east.low),
  south: Math.min(south.high, north.high),
  north: Math.max(south.low, north.low),
});
/** A thing by its four sides with their bounds. */
export const bounded = (s: Sides): Bounded => ({ largest: atLargest(s), smallest: atSmallest(s) });

/** One difference a corner, in numbers that are used again: a search takes these bounds some hundred times. */
const xs: number[] = [];
const ys: number[] = [];

/** The least difference along a direction, which need not be of length one. */
function leastAlong(ux: number, uy: number, count: number): number {
  let least = Infinity;
  for (let i = 0; i < count; i++) {
    const along = ux * xs[i]! + uy * ys[i]!;
    if (along < least) least = along;
  }
  const length = Math.sqrt(ux * ux + uy * uy);
  // Where two differences are the same to the last digit there is no direction in which they become level.
  return length > 0 ? least / length : -Infinity;
}

/** The greatest of it over directions neither of whose parts is below zero. */
function greatestInQuarter(count: number): number {
  let greatest = Math.max(leastAlong(1, 0, count), leastAlong(0, 1, count));
  for (let i = 0; i < count; i++) {
    const x = xs[i]!;
    const y = ys[i]!;
    if (x > 0 && y > 0) greatest = Math.max(greatest, leastAlong(x, y, count));
    for (let j = 0; j < i; j++) {
      const ux = ys[j]! - y;
      const uy = x - xs[j]!;
      if (ux > 0 && uy > 0) greatest = Math.max(greatest, leastAlong(ux, uy, count));
      if (ux < 0 && uy < 0) greatest = Math.max(greatest, leastAlong(-ux, -uy, count));
    }
  }
  return greatest;
}

/** The greatest over all directions, with every corner at its side towards the box, or at its side away from it. */
function apart(corners: readonly Spot[], box: Spot, towards: boolean): number {
  let greatest = -Infinity;
  for (let quarter = 0; quarter < 4; quarter++) {
    for (let i = 0; i < corners.length; i++) {
      const { west, east, south, north } = corners[i]!;
      xs[i] = quarter & 1 ? (towards ? west : east) - box.east : box.west - (towards ? east : west);
      ys[i] = quarter & 2 ? (towards ? south : north) - box.north : box.south - (towards ? north : south);
    }
    greatest = Math.max(greatest, greatestInQuarter(corners.length));
  }
  return greatest;
}

/** No true distance is less. */
export const leastApart = (corners: readonly Spot[], thing: Bounded): number =>
  apart(corners, thing.largest, true);
/** No true distance is more. */
export const mostApart = (corners: readonly Spot[], thing: Bounded): number =>
  apart(corners, thing.smallest, false);

/** Quickly found, and no more than `leastApart`: how far the box around all corners is away along one axis. */
const boxesApart = (a: Spot, b: Spot): number =>
  Math.max(b.west - a.east, a.west - b.east, b.south - a.north, a.south - b.north);

/** A bound of the least distance between any part and any thing, by a bound for one of each. */
function nearest(
  parts: readonly Part[],
  things: readonly Bounded[],
  bound: (corners: readonly Spot[], thing: Bounded) => number,
): number {
  let least = Infinity;
  for (const thing of things)
    for (const part of parts)
      if (boxesApart(part.around, thing.largest) < least) least = Math.min(least, bound(part.corners, thing));
  return least;
}

/** What stands askew, at any of some angles: parts that hold its own, and parts that its own hold. */
export interface Turning {
  readonly turns: readonly Piece[];
  outer(turned: Piece): readonly Part[];
  inner(turned: Piece): readonly Part[];
}

/** No least distance between any part and any thing is less; looked for no further than to know that none is below `enough`. */
export const leastApartOver = (
  { turns, outer }: Turning,
  things: readonly Bounded[],
  enough = Infinity,
): number => leastOver(turns, (t) => nearest(outer(t), things, leastApart), enough);

/** No least distance between any part and any thing is more. */
export const mostApartOver = ({ turns, inner }: Turning, things: readonly Bounded[]): number =>
  greatestOver(turns, (t) => nearest(inner(t), things, mostApart));

/** A part by its corners. */
export function asPart(corners: readonly Spot[]): Part {
  let [west, east, south, north] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const s of corners) {
    west = Math.min(west, s.west);
    east = Math.max(east, s.east);
    south = Math.min(south, s.south);
    north = Math.max(north, s.north);
  }
  return { corners, around: { west, east, south, north } };
}
