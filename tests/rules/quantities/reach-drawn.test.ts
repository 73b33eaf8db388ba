import { describe, expect, test } from "vitest";
import { roomOf } from "../../../rules/quantities/standing.js";
import type { RoomHanded } from "../../../rules/quantities/standing.js";
import { chairInRoom, type ChairInRoom } from "../../../rules/quantities/chair-in-room.js";
import { reachedAs } from "../../../rules/quantities/reach.js";
import type { Outline } from "../../../rules/plan/room.js";
import { leastClearance } from "../../../rules/plan/room.js";
import { throughDoor } from "../../../rules/plan/way/through-door.js";
import { widestWay } from "../../../rules/plan/way/way.js";
import type { ChairPose, WayProblem } from "../../../rules/plan/way/problem.js";
import { draws } from "../plan/sampling.js";
import { Drawing } from "./drawing.js";
import { everything } from "./everything-home.js";

type Handed = ChairInRoom & RoomHanded;

const turned = (o: Outline, { x, y, heading }: ChairPose): Outline =>
  o.map((p) => ({
    x: x + Math.cos(heading) * p.x - Math.sin(heading) * p.y,
    y: y + Math.sin(heading) * p.x + Math.cos(heading) * p.y,
  }));

/** A chair's outlines about the middle of its axle, looking ahead; the first of them is the box of its wheels. */
function aboutAxle(outlines: readonly Outline[]): readonly Outline[] {
  const [rear, front, opposite] = outlines[0]!;
  const pose = {
    x: (rear!.x + opposite!.x) / 2,
    y: (rear!.y + opposite!.y) / 2,
    heading: Math.atan2(front!.y - rear!.y, front!.x - rear!.x),
  };
  const moved = outlines.map((o) => o.map((p) => ({ x: p.x - pose.x, y: p.y - pose.y })));
  return moved.map((o) => turned(o, { x: 0, y: 0, heading: -pose.heading }));
}

const drawing = new Drawing(everything, "into-bed");
const computed = drawing.computed("reach.tightest").value!;
const { problem, way, door } = reachedAs(computed)!;

/** The room and the chair as they truly are; the way still leads to the parking place as it was drawn. */
function truth(values: readonly number[]): WayProblem {
  const handed = drawing.handed("reach.tightest", values) as Handed;
  const room = roomOf(handed);
  const chair = aboutAxle(chairInRoom(handed, room)!.footprint.nominal);
  const found = room.doors.find((d) => d.name === door)!;
  return {
    ...throughDoor(room, found, { chair, nominal: chair, parked: problem.goal }, "nominal"),
    start: problem.start,
    goal: problem.goal,
  };
}

const clearanceAt = (p: WayProblem, pose: ChairPose): number => {
  const chair = p.chair.map((o) => turned(o, pose));
  return Math.min(
    ...p.solids.map((s) => {
      // Walls are segments: boxes without thickness.
      const xs = s.outline.map((q) => q.x);
      const ys = s.outline.map((q) => q.y);
      const [x, y] = [Math.min(...xs), Math.min(...ys)];
      return leastClearance(chair, { x, y, width: Math.max(...xs) - x, depth: Math.max(...ys) - y });
    }),
  );
};

describe("the room left on the way", () => {
  test(
    "where the way ends as it is drawn, no truth leaves less than the least that is computed",
    {
      timeout: 60_000,
    },
    () => {
      const random = draws(71);
      const drawn = way.path.map((pose) => clearanceAt(problem, pose));
      expect(Math.min(...drawn)).toBeGreaterThanOrEqual(way.low - 1e-6);
      const ends = [problem.start, problem.goal];
      for (let k = 0; k < 1000; k++) {
        const p = truth(drawing.pick(random, k % 2 === 0));
        const least = Math.min(...ends.map((pose) => clearanceAt(p, pose)));
        expect(least).toBeGreaterThanOrEqual(computed.low - 1e-6);
      }
    },
  );
  test(
    "a way searched for in true rooms has no more and no less than was computed",
    { timeout: 60_000 },
    () => {
      const random = draws(72);
      for (let k = 0; k < 16; k++) {
        const found = widestWay(truth(drawing.pick(random, k % 2 === 0)));
        expect(found.high).toBeGreaterThanOrEqual(computed.low - 1e-6);
        expect(found.low).toBeLessThanOrEqual(computed.high + 1e-6);
      }
    },
  );
});
