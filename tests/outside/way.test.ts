/** The widest way of a chair beside answers known in closed form, exact answers for a disc, and another kind of planner. */
import { describe, expect, test } from "vitest";
import { clearance, rectangle, type Outline } from "../../rules/plan/room.js";
import type { ChairPose, Solid, WayProblem } from "../../rules/plan/way/problem.js";
import { widestWay } from "../../rules/plan/way/way.js";
import { draws } from "../rules/plan/sampling.js";
import { north, plainChair, randomRoom } from "../rules/plan/way/rooms.js";

const mm = 1e-3;
/** From 250 mm behind to 800 mm ahead of the axle, 620 mm wide. */
const chair = plainChair(250 * mm, 800 * mm, 620 * mm);
const wall = (x0: number, y0: number, x1: number, y1: number): Solid => ({
  name: "wall",
  outline: [
    { x: x0, y: y0 },
    { x: x1, y: y1 },
  ],
});
const box = (x: number, y: number, w: number, d: number): Solid => ({
  name: "box",
  outline: rectangle(x, y, w, d),
});
const pose = (x: number, y: number, heading: number): ChairPose => ({ x, y, heading });

const holds = (problem: WayProblem, value: number, within = 0.5 * mm): void => {
  const way = widestWay(problem);
  expect(way.settled).toBe(true);
  expect(way.high - way.low).toBeLessThanOrEqual(0.01 + 1e-9);
  expect(way.low).toBeLessThanOrEqual(value + within);
  expect(way.high).toBeGreaterThanOrEqual(value - within);
};

describe("a rectangle straight through a door keeps half of what the door is wider", () => {
  test.each([
    [700, 100],
    [800, 100],
    [800, 300],
    [950, 20],
    [600, 100],
    // Just as wide as the rectangle: nothing is left; a body that may not touch does not pass a gap of its own width (RPI robotics assignment 2, problem 2).
    [620, 100],
  ])("door of %i mm in a wall of %i mm", (door, thick) => {
    const solids = [
      box(-3, 0, 3, thick * mm),
      box(door * mm, 0, 3, thick * mm),
      wall(-3, -3, -3, 3),
      wall(3 + door * mm, -3, 3 + door * mm, 3),
    ];
    const middle = (door * mm) / 2;
    holds({ solids, chair, start: pose(middle, -1.5, north), goal: pose(middle, 1.5, north) }, middle - 0.31);
  });
});

describe("a rectangle round a right-angled corner: least over all angles of the closed form", () => {
  /** Both outer walls and the inner corner touch the rectangle at once; `a`, `b` the widths of the arms. */
  const closed = (a: number, b: number, long = 1.05, wide = 0.62): number => {
    let least = Infinity;
    for (let k = 0; k <= 90_000; k++) {
      const t = ((k / 90_000) * Math.PI) / 2;
      const [s, c] = [Math.sin(t), Math.cos(t)];
      least = Math.min(least, (a * s + b * c - long * s * c - wide) / (1 + s + c));
    }
    return least;
  };
  /** A grid search with steps of 6 to 20 mm by another program, which can only fall short. */
  const cases: readonly (readonly [a: number, b: number, known: number, grid: number])[] = [
    [1.0, 1.0, 0.111512, 0.1067],
    [1.0, 1.2, 0.16468, 0.1543],
    [0.9, 1.1, 0.106503, 0.0866],
  ];
  test.each(cases)("arms of %d m and %d m", (a, b, known, grid) => {
    expect(closed(a, b)).toBeCloseTo(known, 5);
    const solids = [
      wall(0, 0, 5, 0),
      wall(0, 0, 0, 5),
      wall(5, 0, 5, b),
      wall(0, 5, a, 5),
      { name: "inner corner", outline: rectangle(a, b, 5 - a, 5 - b) },
    ];
    const problem = { solids, chair, start: pose(3.5, b / 2, Math.PI), goal: pose(a / 2, 3.5, north) };
    holds(problem, known);
    expect(widestWay(problem).high).toBeGreaterThan(grid);
  });
});

describe("out of a corridor through a door in its side, beside a grid search of 6 mm and 1 degree", () => {
  test.each([
    [900, 1000, 81.7, 6],
    [900, 1200, 130.1, 6],
    [1000, 1000, 112.6, 6],
    [800, 1200, 90, 0.5],
  ])("door %i mm, corridor %i mm: %d mm", (door, corridor, grid, within) => {
    const [d, c] = [door * mm, corridor * mm];
    const solids = [
      wall(-3, 0, 4, 0),
      wall(-3, 0, -3, c),
      wall(4, 0, 4, c),
      wall(-3, c, 0, c),
      wall(d, c, 4, c),
      wall(-0.8, c, -0.8, 3.5),
      wall(1.7, c, 1.7, 3.5),
      wall(-0.8, 3.5, 1.7, 3.5),
    ];
    holds(
      { solids, chair, start: pose(-0.804, c / 2, 0), goal: pose(0.45, 1.95, north) },
      grid * mm,
      within * mm,
    );
  });
});

describe("a disc between boxes passes exactly where no chain of boxes from wall to wall leaves less than its width", () => {
  const radius = 0.22;
  const disc: Outline = Array.from({ length: 48 }, (_, k) => ({
    x: radius * Math.cos((k * Math.PI) / 24),
    y: radius * Math.sin((k * Math.PI) / 24),
  }));

  /** The least, over all chains of things from the left wall to the right, of the widest gap in the chain. */
  function widestGapOfTightestChain(boxes: readonly Solid[], wide: number): number {
    const outlines = [
      [
        { x: 0, y: -3 },
        { x: 0, y: 7 },
      ],
      [
        { x: wide, y: -3 },
        { x: wide, y: 7 },
      ],
      ...boxes.map((b) => b.outline),
    ];
    const gaps: [number, number, number][] = [];
    for (let i = 0; i < outlines.length; i++)
      for (let j = 0; j < i; j++)
        if (!(i === 1 && j === 0)) gaps.push([clearance(outlines[i]!, outlines[j]!), i, j]);
    gaps.push([wide, 1, 0]);
    const group = outlines.map((_, n) => n);
    for (const [gap, i, j] of gaps.sort((a, b) => a[0] - b[0])) {
      const [from, to] = [group[i], group[j]];
      group.forEach((g, n) => (group[n] = g === from ? to! : g));
      if (group[0] === group[1]) return gap;
    }
    return wide;
  }

  test("fifteen random fields", () => {
    const random = draws(71);
    let passed = 0;
    for (let n = 0; n < 15; n++) {
      const wide = 2.5 + 1.5 * random();
      const boxes = Array.from({ length: 3 + (n % 5) }, () => {
        const [w, d] = [0.2 + 0.5 * random(), 0.2 + 0.5 * random()];
        return box((wide - w) * random(), 0.6 + 2.4 * random(), w, d);
      });
      const exact = widestGapOfTightestChain(boxes, wide) / 2 - radius;
      const way = widestWay({
        solids: [
          ...boxes,
          wall(0, -3, 0, 7),
          wall(wide, -3, wide, 7),
          wall(0, -3, wide, -3),
          wall(0, 7, wide, 7),
        ],
        chair: [disc],
        start: pose(wide / 2, -1.4, 0),
        goal: pose(wide / 2, 5.4, 0),
      });
      expect(way.low).toBeLessThanOrEqual(Math.max(way.floor, exact) + mm);
      expect(way.high).toBeGreaterThanOrEqual(exact - mm);
      expect(way.high - way.low).toBeLessThanOrEqual(0.01 + 1e-9);
      if (exact > 0) passed++;
    }
    expect(passed).toBeGreaterThan(5);
  });
});

describe("a planner that throws poses at random and joins near ones", () => {
  const placed = (o: Outline, [x, y, t]: readonly number[]): Outline => {
    const [c, s] = [Math.cos(t!), Math.sin(t!)];
    return o.map((p) => ({ x: x! + c * p.x - s * p.y, y: y! + s * p.x + c * p.y }));
  };

  /** The clearest way through its poses; a way it finds is a way, so it is never above the true value by more than its steps. */
  function thrown(problem: WayProblem, random: () => number, count: number, step: number): number {
    const least = (q: readonly number[]): number => {
      let at = Infinity;
      for (const part of problem.chair) {
        const o = placed(part, q);
        for (const s of problem.solids) at = Math.min(at, clearance(o, s.outline));
      }
      return at;
    };
    const of = (p: ChairPose): number[] => [p.x, p.y, p.heading];
    const poses = [of(problem.start), of(problem.goal)];
    const clear = poses.map(least);
    while (poses.length < count) {
      const q = [4.6 * random(), 5.5 * random() - 1.5, 2 * Math.PI * random()];
      const c = least(q);
      if (c < -0.15) continue;
      poses.push(q);
      clear.push(c);
    }
    const arm = 0.9;
    const far = (a: readonly number[], b: readonly number[]): number => {
      const turn = Math.abs(((((b[2]! - a[2]!) % (2 * Math.PI)) + 3 * Math.PI) % (2 * Math.PI)) - Math.PI);
      return Math.hypot(b[0]! - a[0]!, b[1]! - a[1]!) + arm * turn;
    };
    const edges: [number, number, number][] = [];
    poses.forEach((a, i) => {
      const near = poses
        .map((b, j) => [far(a, b), j] as const)
        .filter(([, j]) => j !== i)
        .sort((x, y) => x[0] - y[0])
        .slice(0, 8);
      for (const [d, j] of near) {
        const b = poses[j]!;
        const turn = ((((b[2]! - a[2]!) % (2 * Math.PI)) + 3 * Math.PI) % (2 * Math.PI)) - Math.PI;
        let low = Math.min(clear[i]!, clear[j]!);
        const parts = Math.ceil(d / step);
        for (let k = 1; k < parts; k++) {
          const u = k / parts;
          low = Math.min(
            low,
            least([a[0]! + u * (b[0]! - a[0]!), a[1]! + u * (b[1]! - a[1]!), a[2]! + u * turn]),
          );
          if (low < -0.15) break;
        }
        edges.push([low, i, j]);
      }
    });
    const group = poses.map((_, n) => n);
    const root = (n: number): number => (group[n] === n ? n : (group[n] = root(group[n]!)));
    for (const [value, i, j] of edges.sort((a, b) => b[0] - a[0])) {
      group[root(i)] = root(j);
      if (root(0) === root(1)) return value;
    }
    return -Infinity;
  }

  test("finds no wider way, and most often one nearly as wide", { timeout: 180_000 }, () => {
    const random = draws(81);
    const step = 0.04;
    let near = 0;
    for (let n = 0; n < 4; n++) {
      const problem = randomRoom(random, 4);
      const way = widestWay(problem);
      const other = thrown(problem, random, 700, step);
      expect(other).toBeLessThanOrEqual(way.high + step / 2);
      if (other > way.low - 0.15) near++;
    }
    expect(near).toBeGreaterThanOrEqual(2);
  });
});
