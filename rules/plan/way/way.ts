/** The widest way of a chair through a room. */
import { Clearance } from "./clearance.js";
import { leastAlong, shortened, stop, type Stop } from "./follow.js";
import type { ChairPose, Tightest, Way, WayLimits, WayProblem } from "./problem.js";
import { Search } from "./search.js";
import type { Ground } from "./cells.js";

/** A centimetre: less than a tape and a wall are known to. */
export const usualGap = 0.01;
/** Several times what a furnished bedroom takes. */
export const usualMost = 400_000;

/**
 * Bounds the largest distance that some motion of the chair from start to goal keeps from all solids. Never throws; where the
 * work ends too soon the bounds are wider, and hold all the same. Poses and corners are finite numbers.
 */
export function widestWay(problem: WayProblem, limits: WayLimits = {}): Way {
  // Many goals are known by where the origin of the chair's own frame is.
  const of = new Clearance(problem.chair, problem.solids, problem.goals && { x: 0, y: 0 });
  const { x: rx, y: ry } = of.reference;
  const inside = (p: ChairPose): Stop => {
    const [c, s] = [Math.cos(p.heading), Math.sin(p.heading)];
    return stop(of, p.x + c * rx - s * ry, p.y + s * rx + c * ry, p.heading);
  };
  const outside = (s: Stop): ChairPose => {
    const [c, n] = [Math.cos(s.t), Math.sin(s.t)];
    return { x: s.x - c * rx + n * ry, y: s.y - n * rx - c * ry, heading: s.t };
  };
  const start = inside(problem.start);
  const goal = inside(problem.goal);
  const floor = -of.halfWidth / 2;
  const most = limits.most ?? usualMost;
  const search = new Search(
    of,
    groundOf(problem, of.reach, start, goal),
    start,
    { stop: goal, boxes: problem.goals ?? [] },
    most,
    limits.shouldStop ?? (() => false),
  );
  const found = search.run(floor, limits.gap ?? usualGap, limits.enough);
  const way = found.way.length > 1 ? shortened(of, found.way, found.low) : [];
  // Of the way before it was shortened: shortening uses up what room there is to spare, and is tight where nothing is. Without
  // a way, an end that is itself as tight as the answer is the place; else it may be anywhere.
  const ends = start.clear <= goal.clear ? start : goal;
  const place =
    way.length > 0
      ? leastAlong(of, found.way).at
      : ends.clear <= Math.max(floor, found.high)
        ? ends
        : undefined;
  let tightest: Tightest | undefined;
  if (place) {
    of.at(place.x, place.y, place.t);
    if (of.nearest >= 0)
      tightest = {
        pose: outside(place),
        name: problem.solids[of.nearest]!.name,
        at: of.touching(of.nearest),
      };
  }
  return {
    low: found.low,
    high: found.high,
    floor,
    path: way.map(outside),
    tightest,
    work: of.asked,
    settled: found.settled,
  };
}

function groundOf(p: WayProblem, reach: number, ...stops: readonly Stop[]): Ground {
  const xs = stops.flatMap((s) => [s.x - reach, s.x + reach]);
  const ys = stops.flatMap((s) => [s.y - reach, s.y + reach]);
  for (const s of p.solids)
    for (const q of s.outline) {
      xs.push(q.x);
      ys.push(q.y);
    }
  const least = (a: readonly number[]) => a.reduce((m, v) => Math.min(m, v), Infinity);
  const most = (a: readonly number[]) => a.reduce((m, v) => Math.max(m, v), -Infinity);
  return { west: least(xs), south: least(ys), east: most(xs), north: most(ys) };
}
