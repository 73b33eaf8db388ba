/** A way as poses of the reference point: how clear it is, to a bound; making it clearer, and shorter. */
import type { Clearance } from "./clearance.js";

/** Place of the reference point, and the heading, not reduced to one turn: the chair turns evenly from one to the next. */
export interface Stop {
  readonly x: number;
  readonly y: number;
  readonly t: number;
  /** Clearance there. */
  readonly clear: number;
}

export const stop = (of: Clearance, x: number, y: number, t: number): Stop => ({
  x,
  y,
  t,
  clear: of.at(x, y, t),
});

/** The most by which any point of the chair moves from one pose to another, moved straight and turned evenly. */
export const travel = (of: Clearance, a: Stop, b: Stop): number =>
  Math.hypot(b.x - a.x, b.y - a.y) + of.reach * Math.abs(b.t - a.t);

const between = (of: Clearance, a: Stop, b: Stop, u = 0.5): Stop =>
  stop(of, a.x + u * (b.x - a.x), a.y + u * (b.y - a.y), a.t + u * (b.t - a.t));

/** `b` with its heading written so that the shorter way round leads to it from `a`. */
export function unwound(a: Stop, b: Stop): Stop {
  const t = b.t - 2 * Math.PI * Math.round((b.t - a.t) / (2 * Math.PI));
  return t === b.t ? b : { ...b, t };
}

/**
 * Whether every pose from one stop to the next is clearer than `level`. The clearance changes by no more than the chair
 * travels, so two stops that are clear by enough vouch for all between them; else the stop half way is looked at.
 */
export function clearAlong(of: Clearance, a: Stop, b: Stop, level: number, finest = 2e-4): boolean {
  if (a.clear < level || b.clear < level) return false;
  const far = travel(of, a, b);
  if ((a.clear + b.clear - far) / 2 >= level) return true;
  if (far < finest) return false;
  const m = between(of, a, b);
  return clearAlong(of, a, m, level, finest) && clearAlong(of, m, b, level, finest);
}

/** Bounds of the least clearance along a way, and a pose at which it is `high`. */
export interface Least {
  readonly low: number;
  readonly high: number;
  readonly at: Stop;
  /** Index of the stop at or before it. */
  readonly leg: number;
}

/** Least clearance along a way, to within `within`. */
export function leastAlong(of: Clearance, way: readonly Stop[], within = 1e-3): Least {
  let at = way[0]!;
  let leg = 0;
  way.forEach((s, n) => {
    if (s.clear < at.clear) [at, leg] = [s, Math.min(n, way.length - 2)];
  });
  let low = at.clear;
  const look = (a: Stop, b: Stop, n: number): void => {
    const far = travel(of, a, b);
    const bound = (a.clear + b.clear - far) / 2;
    if (bound >= at.clear - within || far < 1e-5) {
      low = Math.min(low, bound);
      return;
    }
    const m = between(of, a, b);
    if (m.clear < at.clear) [at, leg] = [m, n];
    look(a, m, n);
    look(m, b, n);
  };
  for (let n = 0; n + 1 < way.length; n++) look(way[n]!, way[n + 1]!, n);
  return { low: Math.min(low, at.clear), high: at.clear, at, leg: Math.max(0, leg) };
}

/**
 * A clearer pose near `s`, moved only across the direction of travel: moved along it, it would leave the narrow place to its
 * neighbours instead of passing it better.
 */
function lifted(of: Clearance, s: Stop, before: Stop, after: Stop): Stop {
  const r = Math.max(of.reach, 1e-6);
  const d = [after.x - before.x, after.y - before.y, r * (after.t - before.t)] as const;
  const length = Math.hypot(...d) || 1;
  const [a, b, c] = [d[0] / length, d[1] / length, d[2] / length];
  // Two directions at right angles to the travel and to each other.
  const flat = Math.hypot(a, b);
  const e1 = flat > 1e-6 ? ([-b / flat, a / flat, 0] as const) : ([1, 0, 0] as const);
  const e2 = [b * e1[2] - c * e1[1], c * e1[0] - a * e1[2], a * e1[1] - b * e1[0]] as const;
  let best = s;
  let turn = 0;
  for (let step = 0.08, failed = 0, tries = 0; step > 4e-4 && tries < 40; tries++) {
    let top = best;
    // The directions turn from try to try: along a sharp ridge only few of them lead up.
    turn += 2.4;
    for (let k = 0; k < 8; k++) {
      const u = step * Math.cos(turn + (k * Math.PI) / 4);
      const v = step * Math.sin(turn + (k * Math.PI) / 4);
      const q = stop(
        of,
        best.x + u * e1[0] + v * e2[0],
        best.y + u * e1[1] + v * e2[1],
        best.t + (u * e1[2] + v * e2[2]) / r,
      );
      if (q.clear > top.clear) top = q;
    }
    if (top !== best) {
      best = top;
      failed = 0;
    } else if (++failed > 1) {
      step /= 2;
      failed = 0;
    }
  }
  return best;
}

/** The way made clearer at its narrowest places, as long as that gains anything. */
export function widened(of: Clearance, given: readonly Stop[], rounds = 24): { way: Stop[]; least: Least } {
  let way = [...given];
  let least = leastAlong(of, way);
  for (let n = 0; n < rounds; n++) {
    const ends = Math.min(way[0]!.clear, way[way.length - 1]!.clear);
    if (least.high >= ends - 1e-4) break;
    const { at, leg } = least;
    const [a, b] = [way[leg]!, way[leg + 1]!];
    const onStop = at === a || at === b;
    const i = at === b ? leg + 1 : leg;
    const q = onStop ? lifted(of, at, way[i - 1] ?? at, way[i + 1] ?? at) : lifted(of, at, a, b);
    if (q.clear <= at.clear + 1e-5) break;
    const next = [...way];
    if (onStop) next[i] = q;
    else next.splice(leg + 1, 0, q);
    const after = leastAlong(of, next);
    if (after.low <= least.low && after.high <= least.high) break;
    way = next;
    least = after;
  }
  return { way, least };
}

/** The way without the stops that it can leave out and stay clearer than `level`; corners are cut half way, then again. */
export function shortened(of: Clearance, given: readonly Stop[], level: number): Stop[] {
  let way = [...given];
  for (let round = 0; round < 3; round++) {
    const middles =
      round === 0 ? way : way.flatMap((s, n) => (n === 0 ? [s] : [between(of, way[n - 1]!, s), s]));
    const kept = [middles[0]!];
    for (let i = 0; i < middles.length - 1;) {
      const from = kept[kept.length - 1]!;
      let j = middles.length - 1;
      // Turned the shorter way: a path may have gone round more than it needs to.
      while (j > i + 1 && !clearAlong(of, from, unwound(from, middles[j]!), level)) j--;
      kept.push(j === i + 1 ? shifted(from, middles[i]!, middles[j]!) : unwound(from, middles[j]!));
      i = j;
    }
    way = kept;
  }
  return way;
}

/** The stop after `old`, with as many whole turns added as `now` has that stands for `old`. */
const shifted = (now: Stop, old: Stop, next: Stop): Stop => ({ ...next, t: next.t + (now.t - old.t) });
