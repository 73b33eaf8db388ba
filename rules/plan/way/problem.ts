/**
 * What the way through a room is asked of: solids that stand in the room, the chair's outline, and two poses. Metres, radians;
 * x to the east, y to the north; a heading of 0 looks east and grows anticlockwise.
 */
import type { Outline, Point } from "../room.js";

/** Where the origin of the chair's own frame is and which way the chair looks. */
export interface ChairPose {
  readonly x: number;
  readonly y: number;
  readonly heading: number;
}

/** From `low` to `high`, nothing between them left out. */
export interface Range {
  readonly low: number;
  readonly high: number;
}

/** Places and headings, every one with every other. */
export interface PoseBox {
  readonly x: Range;
  readonly y: Range;
  readonly heading: Range;
}

/** A convex solid in plan: a piece of furniture, or a piece of wall. Two points make a wall without thickness. */
export interface Solid {
  readonly name: string;
  readonly outline: Outline;
}

export interface WayProblem {
  readonly solids: readonly Solid[];
  /** Convex parts of the occupied chair in its own frame: origin on its middle line, x ahead, y to the left. */
  readonly chair: readonly Outline[];
  readonly start: ChairPose;
  readonly goal: ChairPose;
  /** Where given, the way may end at any pose in any of these as well. */
  readonly goals?: readonly PoseBox[];
}

export interface WayLimits {
  /** The width of the answer at which the search is done, metres. */
  readonly gap?: number;
  /** The most clearances that may be worked out; past it a wider answer comes back. Work is counted, never timed. */
  readonly most?: number;
  /** More room than this does not matter, metres: the answer is counted no further up. */
  readonly enough?: number;
  /** Asked every some hundred clearances; true ends the search, and a wider answer comes back. */
  readonly shouldStop?: () => boolean;
}

/** Where it is tightest: on the way found, or where it begins or ends if there is none for that reason. */
export interface Tightest {
  readonly pose: ChairPose;
  /** Name of the nearest solid there, and the point of it that is nearest. */
  readonly name: string;
  readonly at: Point;
}

export interface Way {
  /**
   * The true value lies from `low` to `high`, counted no further down than `floor`: a chair that had to lose a quarter of its
   * width on every side is no chair any more, and by how much more it is too large helps nobody. With `low` at `floor` no way
   * was found.
   */
  readonly low: number;
  readonly high: number;
  readonly floor: number;
  /**
   * Poses of the way; empty if none was found. From one to the next the middle of the chair's outline moves straight while the
   * chair turns evenly, never nearer than `low` to anything. It is a motion, not yet a drive: `drive.ts` looks at that.
   */
  readonly path: readonly ChairPose[];
  readonly tightest: Tightest | undefined;
  /** How many clearances were worked out. */
  readonly work: number;
  /** Whether the answer is as narrow as was asked. */
  readonly settled: boolean;
}
