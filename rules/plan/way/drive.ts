/**
 * How often the driver changes between forward and back on a way.
 *
 * The way found may move the chair sideways, which no chair does. It is driven by moves that a chair can make: turn on the
 * spot, drive straight forward or back, turn on the spot. Of all ways to join poses of the path by such moves, that with the
 * fewest changes of direction is taken, then the shortest. Where a stretch cannot be driven so, the chair works its way along
 * it in small moves to and fro: each such stretch counts as two changes, and the count is then only a least one.
 */
import type { Outline } from "../room.js";
import { Clearance } from "./clearance.js";
import { clearAlong, stop, travel, unwound, type Stop } from "./follow.js";
import type { ChairPose, WayProblem } from "./problem.js";

export interface Drive {
  readonly changes: number;
  /** Stretches that can only be worked along to and fro; with any, `changes` is a least number. */
  readonly shuffles: number;
}

/** Poses looked at along the path, at most. */
const poses = 48;

function sampled(of: Clearance, path: readonly ChairPose[]): Stop[] {
  const stops = path.map((p) => stop(of, p.x, p.y, p.heading));
  const whole = stops.slice(1).reduce((sum, s, n) => sum + travel(of, stops[n]!, s), 0);
  const step = Math.max(0.06, whole / poses);
  const out = stops.slice(0, 1);
  stops.slice(1).forEach((b, n) => {
    const a = stops[n]!;
    const parts = Math.max(1, Math.round(travel(of, a, b) / step));
    for (let k = 1; k <= parts; k++) {
      const u = k / parts;
      out.push(
        k === parts ? b : stop(of, a.x + u * (b.x - a.x), a.y + u * (b.y - a.y), a.t + u * (b.t - a.t)),
      );
    }
  });
  return out;
}

/** Whether the chair can turn at `a`, drive straight to `b` and turn there, clearer than `level` all the while. */
function driven(of: Clearance, a: Stop, b: Stop, forward: boolean, level: number): boolean {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const far = Math.hypot(dx, dy);
  if (far < 1e-3) return clearAlong(of, a, { ...b, x: a.x, y: a.y }, level);
  const course = Math.atan2(dy, dx) + (forward ? 0 : Math.PI);
  const away = unwound(a, { ...a, t: course });
  const turned = stop(of, a.x, a.y, away.t);
  if (turned.clear < level) return false;
  const arrived = stop(of, b.x, b.y, away.t);
  if (arrived.clear < level) return false;
  const last = unwound(arrived, b);
  return (
    clearAlong(of, turned, arrived, level) &&
    clearAlong(of, a, turned, level) &&
    clearAlong(of, arrived, last, level)
  );
}

type Mode = 0 | 1 | 2;
const [ahead, back, toAndFro] = [0, 1, 2] as const;

/** `level`: the clearance that the driver keeps to. */
export function driveOf(problem: WayProblem, path: readonly ChairPose[], level: number): Drive {
  const of = new Clearance(problem.chair as readonly Outline[], problem.solids, { x: 0, y: 0 });
  const stops = sampled(of, path);
  const n = stops.length;
  if (n < 2) return { changes: 0, shuffles: 0 };
  // A change costs more than any length; so does, twice over, beginning to work to and fro.
  const change = 1e6;
  const price = (from: Mode | undefined, to: Mode): number => {
    if (to === toAndFro) return from === toAndFro ? 0 : 2 * change;
    return from === undefined || from === toAndFro || from === to ? 0 : change;
  };
  const cost = Array.from({ length: 3 * n }, () => Infinity);
  const shuffles = Array.from({ length: 3 * n }, () => 0);
  const reach = (to: number, mode: Mode, from: number, far: number): void => {
    const kinds: readonly (Mode | undefined)[] = from === 0 ? [undefined] : [ahead, back, toAndFro];
    for (const k of kinds) {
      const before = k === undefined ? 0 : cost[3 * from + k]!;
      const now = before + far + price(k, mode);
      if (now >= cost[3 * to + mode]!) continue;
      cost[3 * to + mode] = now;
      const had = k === undefined ? 0 : shuffles[3 * from + k]!;
      shuffles[3 * to + mode] = had + (mode === toAndFro && k !== toAndFro ? 1 : 0);
    }
  };
  for (let j = 1; j < n; j++)
    for (let i = 0; i < j; i++) {
      const [a, b] = [stops[i]!, stops[j]!];
      const far = Math.hypot(b.x - a.x, b.y - a.y);
      if (driven(of, a, b, true, level)) reach(j, ahead, i, far);
      if (driven(of, a, b, false, level)) reach(j, back, i, far);
      if (i === j - 1) reach(j, toAndFro, i, far);
    }
  const ends = [ahead, back, toAndFro].map((m) => 3 * (n - 1) + m);
  const best = ends.reduce((x, y) => (cost[y]! < cost[x]! ? y : x));
  return { changes: Math.floor(cost[best]! / change), shuffles: shuffles[best]! };
}
