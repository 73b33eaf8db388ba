import { describe, expect, test } from "vitest";
import { clearance, rectangle, type Outline } from "../../../../rules/plan/room.js";
import { driveOf } from "../../../../rules/plan/way/drive.js";
import type { ChairPose, Solid, Way, WayProblem } from "../../../../rules/plan/way/problem.js";
import { widestWay } from "../../../../rules/plan/way/way.js";
import { draws } from "../sampling.js";
import { gridSearch } from "./grid-search.js";
import { bedroom, north, plainChair, randomRoom, wallsOf } from "./rooms.js";

const placed = (o: Outline, p: ChairPose): Outline =>
  o.map((q) => ({
    x: p.x + Math.cos(p.heading) * q.x - Math.sin(p.heading) * q.y,
    y: p.y + Math.sin(p.heading) * q.x + Math.cos(p.heading) * q.y,
  }));
const leastOf = (problem: WayProblem, p: ChairPose): number => {
  let least = Infinity;
  for (const part of problem.chair)
    for (const s of problem.solids) least = Math.min(least, clearance(placed(part, p), s.outline));
  return least;
};

/** The middle of the chair, about which the path turns evenly: poses between are not evenly spaced at the axle. */
function between(problem: WayProblem, a: ChairPose, b: ChairPose, u: number): ChairPose {
  const corners = problem.chair.flat();
  const [mx, my] = middleOf(corners);
  const at = (p: ChairPose): [number, number] => [
    p.x + Math.cos(p.heading) * mx - Math.sin(p.heading) * my,
    p.y + Math.sin(p.heading) * mx + Math.cos(p.heading) * my,
  ];
  const [ax, ay] = at(a);
  const [bx, by] = at(b);
  const heading = a.heading + u * (b.heading - a.heading);
  const [x, y] = [ax + u * (bx - ax), ay + u * (by - ay)];
  return {
    x: x - Math.cos(heading) * mx + Math.sin(heading) * my,
    y: y - Math.sin(heading) * mx - Math.cos(heading) * my,
    heading,
  };
}
/** Middle of the smallest circle around points that are mirrored about the x axis: it lies on that axis. */
function middleOf(points: readonly { x: number; y: number }[]): [number, number] {
  let [low, high] = [-3, 3];
  const radius = (x: number) => Math.max(...points.map((p) => Math.hypot(p.x - x, p.y)));
  for (let n = 0; n < 100; n++) {
    const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
    if (radius(a) < radius(b)) high = b;
    else low = a;
  }
  return [(low + high) / 2, 0];
}

function expectReal(problem: WayProblem, way: Way): void {
  expect(way.path[0]!.x).toBeCloseTo(problem.start.x, 9);
  expect(way.path[way.path.length - 1]!.y).toBeCloseTo(problem.goal.y, 9);
  for (let n = 0; n + 1 < way.path.length; n++)
    for (let k = 0; k <= 25; k++) {
      const p = between(problem, way.path[n]!, way.path[n + 1]!, k / 25);
      expect(leastOf(problem, p)).toBeGreaterThanOrEqual(way.low - 2e-3);
    }
}

describe("a room of 12 by 10 feet with six pieces of furniture", () => {
  const problem = bedroom();
  const way = widestWay(problem);

  test("is bounded to a centimetre with little work", () => {
    expect(way.settled).toBe(true);
    expect(way.high - way.low).toBeLessThanOrEqual(0.01 + 1e-9);
    expect(way.work).toBeLessThan(60_000);
  });
  test("is tightest between the foot of the bed and the armchair, and names one of them", () => {
    // The armchair is 18 in deep, the bed ends 40 in from the wall, the chair is 635 mm wide: it is too wide by half of the rest.
    const straight = (22 * 0.0254 - 0.635) / 2;
    expect(way.low).toBeLessThanOrEqual(straight);
    expect(way.high).toBeGreaterThanOrEqual(straight - 0.01);
    expect(["bed", "armchair"]).toContain(way.tightest!.name);
  });
  test("the way found is nowhere nearer to anything than it says", () => expectReal(problem, way));
  test("gives the same answer every time", () => expect(widestWay(problem)).toEqual(way));
});

test("the answer does not rest on where the room lies or how it is turned", () => {
  const problem = bedroom();
  const { low, high } = widestWay(problem);
  const [angle, dx, dy] = [0.6, 3.1, -2.7];
  const turn = <P extends { x: number; y: number }>(p: P): P => ({
    ...p,
    x: dx + Math.cos(angle) * p.x - Math.sin(angle) * p.y,
    y: dy + Math.sin(angle) * p.x + Math.cos(angle) * p.y,
  });
  const turned = widestWay({
    chair: problem.chair,
    solids: problem.solids.map((s) => ({ ...s, outline: s.outline.map(turn) })),
    start: { ...turn(problem.start), heading: problem.start.heading + angle },
    goal: { ...turn(problem.goal), heading: problem.goal.heading + angle },
  });
  expect(turned.low).toBeLessThanOrEqual(high);
  expect(turned.high).toBeGreaterThanOrEqual(low);
  expect(turned.high - turned.low).toBeLessThanOrEqual(0.01 + 1e-9);
});

describe("random rooms", () => {
  const random = draws(61);
  const rooms = Array.from({ length: 8 }, () => randomRoom(random));
  test("a plain grid search over all poses bounds the same value", { timeout: 120_000 }, () => {
    let met = 0;
    for (const problem of rooms) {
      const way = widestWay(problem);
      const grid = gridSearch(problem, 0.06);
      expect(way.low).toBeLessThanOrEqual(grid.high);
      expect(way.high).toBeGreaterThanOrEqual(grid.low);
      if (way.low > -0.2 && way.low < 0.2) met++;
    }
    expect(met).toBeGreaterThan(4);
  });
  test("every one is bounded to a centimetre, and its way is real", () => {
    for (const problem of rooms) {
      const way = widestWay(problem);
      expect(way.settled).toBe(true);
      expect(way.high - way.low).toBeLessThanOrEqual(0.01 + 1e-9);
      if (way.path.length > 0) expectReal(problem, way);
    }
  });
  test("a room with more in it is never wider, and one with walls further out never tighter", () => {
    for (const problem of rooms.slice(0, 5)) {
      const way = widestWay(problem);
      const fuller = widestWay({
        ...problem,
        solids: [...problem.solids, { name: "box", outline: rectangle(1.2, 1, 0.4, 0.4) }],
      });
      expect(fuller.low).toBeLessThanOrEqual(way.high);
      const emptier = widestWay({ ...problem, solids: problem.solids.slice(0, -1) });
      expect(emptier.high).toBeGreaterThanOrEqual(way.low);
    }
  });
});

describe("the work is bounded", () => {
  const problem = bedroom();
  const full = widestWay(problem);
  test.each([10, 1500, 3000, 6000, 12_000])(
    "after %i clearances a wider answer still holds the true one",
    (most) => {
      const way = widestWay(problem, { most });
      expect(way.low).toBeLessThanOrEqual(full.high);
      expect(way.high).toBeGreaterThanOrEqual(full.low);
      expect(way.settled).toBe(way.high - way.low <= 0.01 + 1e-9);
    },
  );
  test("it ends soon after it is told to stop", () => {
    let asked = 0;
    const way = widestWay(problem, { shouldStop: () => ++asked > 3 });
    expect(asked).toBe(4);
    expect(way.settled).toBe(false);
    expect(way.low).toBeLessThanOrEqual(full.high);
    expect(way.high).toBeGreaterThanOrEqual(full.low);
  });
});

describe("whatever is given, there is an answer", () => {
  const chair = plainChair(0.25, 0.8, 0.62);
  const at = (x: number, y: number, heading = 0): ChairPose => ({ x, y, heading });
  const cases: readonly [string, WayProblem][] = [
    ["start and goal at the same pose", { ...bedroom(), goal: bedroom().start }],
    ["a start inside a wall", { ...bedroom(), start: at(-0.05, 1) }],
    ["a goal far outside", { ...bedroom(), goal: at(40, 40) }],
    [
      "walls of no length",
      {
        solids: [
          { name: "w", outline: [] },
          {
            name: "v",
            outline: [
              { x: 1, y: 1 },
              { x: 1, y: 1 },
            ],
          },
        ],
        chair,
        start: at(0, 0),
        goal: at(2, 2),
      },
    ],
    [
      "a chair without width",
      {
        ...bedroom(),
        chair: [
          [
            { x: -0.3, y: 0 },
            { x: 0.5, y: 0 },
          ],
        ],
      },
    ],
    ["a chair that is a point", { ...bedroom(), chair: [[{ x: 0, y: 0 }]] }],
    [
      "a goal shut in on all sides",
      { ...bedroom(), solids: [...bedroom().solids, { name: "box", outline: rectangle(0, 0.1, 3.7, 0.05) }] },
    ],
  ];
  test.each(cases)("%s", (_, problem) => {
    const way = widestWay(problem, { most: 60_000 });
    for (const x of [way.low, way.high, way.floor, ...way.path.flatMap((p) => [p.x, p.y, p.heading])])
      expect(Number.isFinite(x)).toBe(true);
    expect(way.low).toBeLessThanOrEqual(way.high);
    expect(way.low).toBeGreaterThanOrEqual(way.floor);
  });
  test("a goal that is shut in has no way, at the least value there is", () => {
    const [, problem] = cases[cases.length - 1]!;
    const way = widestWay(problem);
    expect(way.low).toBe(way.floor);
    expect(way.high).toBeLessThan(way.floor + 0.011);
    expect(way.path).toEqual([]);
  });
  test("with nothing in the way nothing bounds it", () => {
    const way = widestWay({ solids: [], chair, start: at(0, 0), goal: at(2, 2) });
    expect([way.low, way.high, way.tightest]).toEqual([Infinity, Infinity, undefined]);
  });
});

describe("changes of direction", () => {
  const chair = plainChair(0.3, 0.8, 0.62);
  const count = (solids: readonly Solid[], start: ChairPose, goal: ChairPose) => {
    const problem = { solids, chair, start, goal };
    const way = widestWay(problem);
    expect(way.low).toBeGreaterThan(0);
    return driveOf(problem, way.path, Math.max(way.low / 2, way.low - 0.02));
  };
  const wall = (name: string, ...outline: { x: number; y: number }[]): Solid => ({ name, outline });

  test("straight ahead: none", () => {
    const corridor = [
      wall("south", { x: -3, y: -0.5 }, { x: 5, y: -0.5 }),
      wall("north", { x: -3, y: 0.5 }, { x: 5, y: 0.5 }),
    ];
    expect(count(corridor, { x: 0, y: 0, heading: 0 }, { x: 3, y: 0, heading: 0 })).toEqual({
      changes: 0,
      shuffles: 0,
    });
  });
  test("straight back: none either", () => {
    const corridor = [
      wall("south", { x: -3, y: -0.5 }, { x: 5, y: -0.5 }),
      wall("north", { x: -3, y: 0.5 }, { x: 5, y: 0.5 }),
    ];
    expect(count(corridor, { x: 3, y: 0, heading: 0 }, { x: 0, y: 0, heading: 0 })).toEqual({
      changes: 0,
      shuffles: 0,
    });
  });
  test("into an open room and beside a wall, turning on the spot: none", () => {
    const solids = wallsOf(4, 4, [1, 1.9]);
    const d = count(solids, { x: 1.45, y: -1.2, heading: north }, { x: 2.8, y: 2.4, heading: north });
    expect(d.shuffles).toBe(0);
    expect(d.changes).toBe(0);
  });
  test("into a bay head first and, in the end, facing out of another bay: one or more", () => {
    // Two bays side by side off a passage too narrow to turn round in: out of one backwards, then forward into the other.
    const solids = [
      wall("end", { x: 0, y: 0 }, { x: 2.4, y: 0 }),
      wall("left", { x: 0, y: 0 }, { x: 0, y: 3.4 }),
      wall("right", { x: 2.4, y: 0 }, { x: 2.4, y: 3.4 }),
      wall("far", { x: 0, y: 3.4 }, { x: 2.4, y: 3.4 }),
      { name: "between", outline: rectangle(1.15, 0, 0.1, 1.4) },
    ];
    const d = count(solids, { x: 0.58, y: 0.9, heading: -north }, { x: 1.83, y: 0.9, heading: -north });
    expect(d.changes).toBeGreaterThanOrEqual(1);
  });
});
