/** What is asked of convex outlines while they are laid out for the search. */
import type { Point } from "../room.js";

/** Corners anticlockwise, without repeats: the convex hull, which for a convex outline is the outline. */
export function hull(points: readonly Point[]): Point[] {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
  const half = (from: readonly Point[]): Point[] => {
    const out: Point[] = [];
    for (const p of from) {
      while (out.length >= 2) {
        const a = out[out.length - 2]!;
        const b = out[out.length - 1]!;
        if ((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x) > 1e-12) break;
        out.pop();
      }
      const last = out[out.length - 1];
      if (!last || Math.hypot(last.x - p.x, last.y - p.y) > 1e-9) out.push(p);
    }
    return out;
  };
  const lower = half(sorted);
  const upper = half(sorted.reverse());
  const ring = [...lower.slice(0, -1), ...upper.slice(0, -1)];
  return ring.length > 0 ? ring : lower.slice(0, 1);
}

/** Middle of the smallest circle that holds the points, well enough: turning about it moves the outline least. */
export function middle(points: readonly Point[]): Point {
  let c = { x: 0, y: 0 };
  for (const p of points) c = { x: c.x + p.x / points.length, y: c.y + p.y / points.length };
  for (let n = 1; n < 400; n++) {
    const far = points.reduce((a, p) =>
      Math.hypot(p.x - c.x, p.y - c.y) > Math.hypot(a.x - c.x, a.y - c.y) ? p : a,
    );
    c = { x: c.x + (far.x - c.x) / (n + 1), y: c.y + (far.y - c.y) / (n + 1) };
  }
  return c;
}

/** Square of the distance from a point to a side. */
export function square(px: number, py: number, ax: number, ay: number, bx: number, by: number): number {
  const dx = bx - ax;
  const dy = by - ay;
  const s = dx * dx + dy * dy;
  let u = s === 0 ? 0 : ((px - ax) * dx + (py - ay) * dy) / s;
  u = u < 0 ? 0 : u > 1 ? 1 : u;
  const ex = px - ax - u * dx;
  const ey = py - ay - u * dy;
  return ex * ex + ey * ey;
}

/** The point of a side that is nearest to a point. */
export function footOn(px: number, py: number, ax: number, ay: number, bx: number, by: number): Point {
  const s = (bx - ax) ** 2 + (by - ay) ** 2;
  const u = s === 0 ? 0 : Math.min(1, Math.max(0, ((px - ax) * (bx - ax) + (py - ay) * (by - ay)) / s));
  return { x: ax + u * (bx - ax), y: ay + u * (by - ay) };
}

/** Least width of a convex outline: across one of its sides. */
export function leastWidth(o: readonly Point[]): number {
  if (o.length < 3) return 0;
  let least = Infinity;
  o.forEach((p, i) => {
    const q = o[(i + 1) % o.length]!;
    const length = Math.hypot(q.x - p.x, q.y - p.y);
    if (length === 0) return;
    let most = 0;
    for (const r of o)
      most = Math.max(most, Math.abs((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x)) / length);
    least = Math.min(least, most);
  });
  return Number.isFinite(least) ? least : 0;
}
