/** A way that may end at any pose of a set, and the clearance of a chair that may stand at any pose of a box. */
import { describe, expect, test } from "vitest";
import { rectangle } from "../../../../rules/plan/room.js";
import { Clearance } from "../../../../rules/plan/way/clearance.js";
import { greatestIn, leastIn } from "../../../../rules/plan/way/pose-box.js";
import type { ChairPose, PoseBox, Solid, WayProblem } from "../../../../rules/plan/way/problem.js";
import { widestWay } from "../../../../rules/plan/way/way.js";
import { draws } from "../sampling.js";
import { north, plainChair, randomRoom } from "./rooms.js";

const about = ({ x, y, heading }: ChairPose, by: readonly [number, number, number]): PoseBox => {
  const range = (v: number, d: number) => ({ low: v - d, high: v + d });
  return { x: range(x, by[0]), y: range(y, by[1]), heading: range(heading, by[2]) };
};
const drawn = (b: PoseBox, random: () => number): ChairPose => {
  const from = ({ low, high }: PoseBox["x"]) => low + random() * (high - low);
  return { x: from(b.x), y: from(b.y), heading: from(b.heading) };
};

describe("a chair somewhere in a box of poses", () => {
  const random = draws(61);
  const cases = Array.from({ length: 40 }, () => {
    const { chair, solids, goal } = randomRoom(random, 6);
    const of = new Clearance(chair, solids, { x: 0, y: 0 });
    return { of, box: about(goal, [0.05 * random(), 0.05 * random(), 0.05 * random()]) };
  });

  test("is nowhere nearer than the least, nor further than the greatest, and both are nearly reached", () => {
    for (const { of, box } of cases) {
      const [least, greatest] = [leastIn(of, [box], Infinity), greatestIn(of, box, Infinity)];
      let [low, high] = [Infinity, -Infinity];
      for (let n = 0; n < 400; n++) {
        // Corners first: there the clearance is most often at an end.
        const end = (r: PoseBox["x"], bit: number) => (n & bit ? r.high : r.low);
        const p =
          n < 8 ? { x: end(box.x, 1), y: end(box.y, 2), heading: end(box.heading, 4) } : drawn(box, random);
        const c = of.at(p.x, p.y, p.heading);
        [low, high] = [Math.min(low, c), Math.max(high, c)];
      }
      expect(low).toBeGreaterThanOrEqual(least - 1e-9);
      expect(high).toBeLessThanOrEqual(greatest + 1e-9);
      expect(low - least).toBeLessThan(0.006);
      expect(greatest - high).toBeLessThan(0.006);
    }
  });

  test("is not looked at more closely than is asked", () => {
    for (const { of, box } of cases) {
      const least = leastIn(of, [box], Infinity);
      const before = of.asked;
      const enough = leastIn(of, [box], least - 0.1);
      expect(enough).toBeLessThanOrEqual(least + 2e-3);
      expect(enough).toBeGreaterThanOrEqual(least - 0.1);
      expect(of.asked - before).toBeLessThan(60);
      expect(greatestIn(of, box, least - 0.1)).toBeLessThanOrEqual(least - 0.1);
    }
  });
});

describe("a way to any of several goals", () => {
  const mm = 1e-3;
  const wall = (x0: number, y0: number, x1: number, y1: number): Solid => ({
    name: "wall",
    outline: [
      { x: x0, y: y0 },
      { x: x1, y: y1 },
    ],
  });
  /** A hall 3 m wide with two rooms behind it, one door to each. */
  const two = (left: number, right: number): WayProblem => ({
    solids: [
      wall(-2, -2.2, 2, -2.2),
      wall(-2, -2.2, -2, 2.5),
      wall(2, -2.2, 2, 2.5),
      wall(-2, 2.5, 2, 2.5),
      wall(0, 0, 0, 2.5),
      { name: "left", outline: rectangle(-2, 0, 1 - left / 2, 0.1) },
      { name: "middle", outline: rectangle(-1 + left / 2, 0, 2 - left / 2 - right / 2, 0.1) },
      { name: "right", outline: rectangle(1 + right / 2, 0, 1 - right / 2, 0.1) },
    ],
    chair: plainChair(0.5, 0.5, 0.6),
    start: { x: 0, y: -1.2, heading: north },
    goal: { x: -1, y: 1.3, heading: north },
  });
  const goals = [-1, 1].map((x) => about({ x, y: 1.3, heading: north }, [0.05, 0.05, 0.1]));

  test.each([
    [700, 760],
    [760, 700],
    [640, 800],
  ])("doors of %i mm and %i mm: half of what the wider is wider than the chair", (left, right) => {
    const way = widestWay({ ...two(left * mm, right * mm), goals });
    const exact = (Math.max(left, right) * mm - 0.6) / 2;
    expect(way.settled).toBe(true);
    expect(way.high).toBeGreaterThanOrEqual(exact - 1e-6);
    expect(way.low).toBeLessThanOrEqual(exact + 1e-6);
    expect(way.high - way.low).toBeLessThanOrEqual(0.01 + 1e-9);
    const last = way.path[way.path.length - 1]!;
    expect(Math.sign(last.x)).toBe(left > right ? -1 : 1);
    expect(Math.abs(Math.abs(last.x) - 1)).toBeLessThanOrEqual(0.05 + 1e-9);
    expect(Math.abs(last.y - 1.3)).toBeLessThanOrEqual(0.05 + 1e-9);
  });

  test("is no tighter than to any one of them, and is to one where they are one", { timeout: 60_000 }, () => {
    const random = draws(62);
    for (let n = 0; n < 5; n++) {
      const problem = randomRoom(random, 5);
      const boxes = [about(problem.goal, [0.04, 0.03, 0.05])];
      const any = widestWay({ ...problem, goals: boxes });
      let best = -Infinity;
      for (let k = 0; k < 4; k++)
        best = Math.max(best, widestWay({ ...problem, goal: drawn(boxes[0]!, random) }).low);
      expect(any.high).toBeGreaterThanOrEqual(best - 1e-9);
      const one = widestWay({ ...problem, goals: [about(problem.goal, [0, 0, 0])] });
      const only = widestWay(problem);
      expect(one.high).toBeGreaterThanOrEqual(only.low - 1e-6);
      expect(only.high).toBeGreaterThanOrEqual(one.low - 1e-6);
      expect(any.high).toBeGreaterThanOrEqual(only.low - 1e-9);
    }
  });

  test("is counted no further up than is enough", () => {
    const whole = widestWay(two(0.7, 0.8));
    const way = widestWay(two(0.7, 0.8), { enough: 0.02 });
    expect(whole.low).toBeGreaterThan(0.03);
    expect(way.high).toBe(0.02);
    expect(way.low).toBeLessThanOrEqual(0.02);
    expect(way.low).toBeGreaterThanOrEqual(0.01);
    expect(way.work).toBeLessThan(whole.work);
  });
});
