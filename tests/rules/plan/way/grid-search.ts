/**
 * The widest way by a plain search over a grid of poses, as a yardstick: the clearance at every node, and neighbours joined
 * from the clearest down until start and goal are joined.
 */
import { Clearance } from "../../../../rules/plan/way/clearance.js";
import type { ChairPose, WayProblem } from "../../../../rules/plan/way/problem.js";

export interface GridAnswer {
  /** The true value lies between these. */
  readonly low: number;
  readonly high: number;
  readonly nodes: number;
}

/** `step` in metres; the heading's step moves no point of the chair by more than that. */
export function gridSearch(p: WayProblem, step: number): GridAnswer {
  const of = new Clearance(p.chair, p.solids);
  const { reach, reference } = of;
  const inside = (q: ChairPose): [number, number, number] => {
    const [c, s] = [Math.cos(q.heading), Math.sin(q.heading)];
    return [q.x + c * reference.x - s * reference.y, q.y + s * reference.x + c * reference.y, q.heading];
  };
  const [start, goal] = [inside(p.start), inside(p.goal)];
  const points = p.solids.flatMap((s) => s.outline.map((q) => [q.x, q.y] as const));
  const all = [
    ...points,
    ...[start, goal].flatMap(([x, y]) => [
      [x - reach, y - reach],
      [x + reach, y + reach],
    ]),
  ];
  const west = Math.min(...all.map((q) => q[0]!));
  const south = Math.min(...all.map((q) => q[1]!));
  const nx = Math.ceil((Math.max(...all.map((q) => q[0]!)) - west) / step) + 1;
  const ny = Math.ceil((Math.max(...all.map((q) => q[1]!)) - south) / step) + 1;
  const nt = Math.ceil((2 * Math.PI * reach) / step);
  const turn = (2 * Math.PI) / nt;
  const count = nx * ny * nt;
  const clear = new Float32Array(count);
  for (let k = 0, n = 0; k < nt; k++)
    for (let j = 0; j < ny; j++)
      for (let i = 0; i < nx; i++, n++) clear[n] = of.at(west + i * step, south + j * step, k * turn);
  const order = new Uint32Array(count).map((_, n) => n).sort((a, b) => clear[b]! - clear[a]!);
  const parent = new Int32Array(count).fill(-1);
  const root = (n: number): number => {
    while (parent[n] !== n) n = parent[n] = parent[parent[n]!]!;
    return n;
  };
  const node = ([x, y, t]: readonly [number, number, number]): number => {
    const k = ((Math.round(t / turn) % nt) + nt) % nt;
    return (k * ny + Math.round((y - south) / step)) * nx + Math.round((x - west) / step);
  };
  const [from, to] = [node(start), node(goal)];
  const layer = nx * ny;
  let value = -Infinity;
  for (const n of order) {
    parent[n] = n;
    const i = n % nx;
    const j = Math.floor(n / nx) % ny;
    const beside = [(n + layer) % count, (n + count - layer) % count];
    if (i > 0) beside.push(n - 1);
    if (i + 1 < nx) beside.push(n + 1);
    if (j > 0) beside.push(n - nx);
    if (j + 1 < ny) beside.push(n + nx);
    for (const m of beside) if (parent[m] !== -1) parent[root(m)] = root(n);
    if (parent[from] !== -1 && parent[to] !== -1 && root(from) === root(to)) {
      value = clear[n]!;
      break;
    }
  }
  // A pose differs from its nearest node by half a step along each; between two neighbours it is half a step from one of them.
  const half = (step * Math.SQRT2 + reach * turn) / 2;
  const ends = Math.min(of.at(...start), of.at(...goal));
  return {
    low: Math.min(ends - 1e-6, value - half - 1e-6),
    high: Math.min(ends, value + half) + 1e-6,
    nodes: count,
  };
}
