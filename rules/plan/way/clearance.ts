/**
 * The clearance of a chair at a pose: its distance from the nearest solid; where it overlaps one, minus the least shift that
 * parts the two. Made to be asked some hundred thousand times, so everything lies in flat arrays.
 *
 * It changes by no more than the reference point moves plus `reach` times the angle turned: the distance of two convex
 * outlines does, apart or overlapping, and so does the least of several. All bounds of the search rest on this.
 */
import type { Outline, Point } from "../room.js";
import { footOn, hull, leastWidth, middle, square } from "./outlines.js";
import type { Solid } from "./problem.js";

interface Flat {
  /** Where the corners of the n-th outline begin; one more than there are outlines. */
  readonly first: Int32Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Outward unit normal of the side from a corner to the next, and how far out the side lies along it. */
  readonly nx: Float64Array;
  readonly ny: Float64Array;
  readonly out: Float64Array;
}

function flat(outlines: readonly (readonly Point[])[]): Flat {
  const count = outlines.reduce((n, o) => n + o.length, 0);
  const first = new Int32Array(outlines.length + 1);
  const [x, y, nx, ny, out] = [0, 0, 0, 0, 0].map(() => new Float64Array(count)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  let k = 0;
  outlines.forEach((o, n) => {
    first[n] = k;
    o.forEach((p, i) => {
      const q = o[(i + 1) % o.length]!;
      const length = Math.hypot(q.x - p.x, q.y - p.y);
      x[k] = p.x;
      y[k] = p.y;
      nx[k] = length === 0 ? 1 : (q.y - p.y) / length;
      ny[k] = length === 0 ? 0 : (p.x - q.x) / length;
      out[k] = nx[k]! * p.x + ny[k]! * p.y;
      k++;
    });
  });
  first[outlines.length] = k;
  return { first, x, y, nx, ny, out };
}

export class Clearance {
  /** The reference point of poses in the chair's own frame. */
  readonly reference: Point;
  /** Farthest point of the chair from the reference point. */
  readonly reach: number;
  /** Half of the least width of the chair's widest part. */
  readonly halfWidth: number;
  /** How often it was asked. */
  asked = 0;
  /** Index of the solid that was nearest when last asked; -1 if there is none. */
  nearest = -1;

  private readonly chair: Flat;
  private readonly solids: Flat;
  private readonly boxes: Float64Array;
  private readonly count: number;
  private readonly parts: number;
  private readonly partReach: readonly number[];
  private readonly near = new Float64Array(16);
  private readonly wx: Float64Array;
  private readonly wy: Float64Array;
  private readonly wnx: Float64Array;
  private readonly wny: Float64Array;
  private readonly wout: Float64Array;

  /** `reference` in the chair's own frame; where none is given, that about which turning moves the chair least. */
  constructor(chair: readonly Outline[], solids: readonly Solid[], reference?: Point) {
    const parts = chair.filter((o) => o.length > 0).map(hull);
    const corners = parts.flat();
    this.reference = reference ?? middle(corners.length > 0 ? corners : [{ x: 0, y: 0 }]);
    const { x: rx, y: ry } = this.reference;
    this.reach = corners.reduce((r, p) => Math.max(r, Math.hypot(p.x - rx, p.y - ry)), 0);
    this.chair = flat(parts.map((o) => o.map((p) => ({ x: p.x - rx, y: p.y - ry }))));
    this.partReach = parts.map((o) => o.reduce((r, p) => Math.max(r, Math.hypot(p.x - rx, p.y - ry)), 0));
    this.halfWidth = parts.reduce((w, o) => Math.max(w, leastWidth(o) / 2), 0);
    this.solids = flat(solids.map((s) => hull(s.outline)));
    this.parts = parts.length;
    this.count = solids.length;
    this.boxes = new Float64Array(4 * this.count);
    for (let k = 0; k < this.count; k++) {
      let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
      for (let i = this.solids.first[k]!; i < this.solids.first[k + 1]!; i++) {
        west = Math.min(west, this.solids.x[i]!);
        east = Math.max(east, this.solids.x[i]!);
        south = Math.min(south, this.solids.y[i]!);
        north = Math.max(north, this.solids.y[i]!);
      }
      this.boxes.set([west, south, east, north], 4 * k);
    }
    const n = this.chair.x.length;
    this.wx = new Float64Array(n);
    this.wy = new Float64Array(n);
    this.wnx = new Float64Array(n);
    this.wny = new Float64Array(n);
    this.wout = new Float64Array(n);
  }

  /** Clearance with the reference point at (x, y) and that heading. Infinity where there is nothing to meet. */
  at(x: number, y: number, heading: number): number {
    this.asked++;
    this.place(x, y, heading);
    const { boxes, reach } = this;
    let best = Infinity;
    const last = this.nearest;
    // What was nearest a moment ago is most likely still near, and lets most others be passed over.
    if (last >= 0) best = this.against(last, best);
    for (let k = 0; k < this.count; k++) {
      if (k === last) continue;
      const dx = Math.max(boxes[4 * k]! - x, x - boxes[4 * k + 2]!, 0);
      const dy = Math.max(boxes[4 * k + 1]! - y, y - boxes[4 * k + 3]!, 0);
      const near = best + reach;
      if (near <= 0 || dx * dx + dy * dy >= near * near) {
        if (near > 0 || dx + dy > 0) continue;
      }
      const d = this.against(k, best);
      if (d < best) {
        best = d;
        this.nearest = k;
      }
    }
    return best;
  }

  /**
   * The pairs of a part and a solid that are nearest at a pose, no more than `into` holds and none farther than `within`; each as one
   * number for `pairAt`. Gives how many there are.
   */
  nearestPairs(x: number, y: number, heading: number, within: number, into: Int32Array): number {
    this.place(x, y, heading);
    const { boxes, reach, near } = this;
    let found = 0;
    for (let k = 0; k < this.count; k++) {
      const dx = Math.max(boxes[4 * k]! - x, x - boxes[4 * k + 2]!, 0);
      const dy = Math.max(boxes[4 * k + 1]! - y, y - boxes[4 * k + 3]!, 0);
      if (Math.hypot(dx, dy) - reach > within) continue;
      for (let p = 0; p < this.parts; p++) {
        const bound = found < into.length ? within : Math.min(within, near[found - 1]!);
        const d = this.pair(p, k, bound);
        if (d >= bound) continue;
        let at = found < into.length ? found++ : found - 1;
        for (; at > 0 && near[at - 1]! > d; at--) {
          near[at] = near[at - 1]!;
          into[at] = into[at - 1]!;
        }
        near[at] = d;
        into[at] = k * this.parts + p;
      }
    }
    return found;
  }

  /** Signed distance of one pair, with the chair as last placed. */
  pairAt(pair: number): number {
    const p = pair % this.parts;
    return this.pair(p, (pair - p) / this.parts, Infinity);
  }

  /** Farthest point of a pair's part from the reference point. */
  reachOf(pair: number): number {
    return this.partReach[pair % this.parts]!;
  }

  /** Puts the chair's corners where they are with the reference point at (x, y). */
  place(x: number, y: number, heading: number): void {
    const { chair, wx, wy, wnx, wny, wout } = this;
    const cos = Math.cos(heading);
    const sin = Math.sin(heading);
    for (let i = 0; i < wx.length; i++) {
      const nx = chair.nx[i]!;
      const ny = chair.ny[i]!;
      wx[i] = x + cos * chair.x[i]! - sin * chair.y[i]!;
      wy[i] = y + sin * chair.x[i]! + cos * chair.y[i]!;
      wnx[i] = cos * nx - sin * ny;
      wny[i] = sin * nx + cos * ny;
      wout[i] = wnx[i]! * wx[i]! + wny[i]! * wy[i]!;
    }
  }

  /** The point of a solid that is nearest to the chair as last placed; some point of the overlap where they overlap. */
  touching(k: number): Point {
    const { solids, chair, wx, wy } = this;
    let least = Infinity;
    let at: Point = { x: 0, y: 0 };
    const see = (px: number, py: number, qx: number, qy: number, onSolid: Point): void => {
      const d = (px - qx) ** 2 + (py - qy) ** 2;
      if (d < least) {
        least = d;
        at = onSolid;
      }
    };
    for (let p = 0; p < this.parts; p++) {
      const [c0, c1] = [chair.first[p]!, chair.first[p + 1]!];
      const [s0, s1] = [solids.first[k]!, solids.first[k + 1]!];
      for (let i = c0; i < c1; i++)
        for (let j = s0; j < s1; j++) {
          const j2 = j + 1 < s1 ? j + 1 : s0;
          const i2 = i + 1 < c1 ? i + 1 : c0;
          const a = footOn(wx[i]!, wy[i]!, solids.x[j]!, solids.y[j]!, solids.x[j2]!, solids.y[j2]!);
          see(wx[i]!, wy[i]!, a.x, a.y, a);
          const b = footOn(solids.x[j]!, solids.y[j]!, wx[i]!, wy[i]!, wx[i2]!, wy[i2]!);
          see(solids.x[j]!, solids.y[j]!, b.x, b.y, { x: solids.x[j]!, y: solids.y[j]! });
        }
    }
    return at;
  }

  private against(k: number, best: number): number {
    let least = best;
    for (let p = 0; p < this.parts; p++) {
      const d = this.pair(p, k, least);
      if (d < least) least = d;
    }
    return least;
  }

  /** Signed distance of a part of the chair and a solid, or anything not below `best` if it is not below `best`. */
  private pair(p: number, k: number, best: number): number {
    const { chair, solids, wx, wy, wnx, wny, wout } = this;
    const c0 = chair.first[p]!;
    const c1 = chair.first[p + 1]!;
    const s0 = solids.first[k]!;
    const s1 = solids.first[k + 1]!;
    const { x: sx, y: sy, nx: snx, ny: sny, out: sout } = solids;
    let apart = -Infinity;
    let alongSolid = false;
    let side = -1;
    let corner = -1;
    if (s1 - s0 > 1)
      for (let j = s0; j < s1; j++) {
        const nx = snx[j]!;
        const ny = sny[j]!;
        let low = Infinity;
        let at = c0;
        for (let i = c0; i < c1; i++) {
          const d = nx * wx[i]! + ny * wy[i]!;
          if (d < low) {
            low = d;
            at = i;
          }
        }
        low -= sout[j]!;
        if (low > apart) {
          if (low >= best) return low;
          apart = low;
          alongSolid = true;
          side = j;
          corner = at;
        }
      }
    if (c1 - c0 > 1)
      for (let i = c0; i < c1; i++) {
        const nx = wnx[i]!;
        const ny = wny[i]!;
        let low = Infinity;
        let at = s0;
        for (let j = s0; j < s1; j++) {
          const d = nx * sx[j]! + ny * sy[j]!;
          if (d < low) {
            low = d;
            at = j;
          }
        }
        low -= wout[i]!;
        if (low > apart) {
          if (low >= best) return low;
          apart = low;
          alongSolid = false;
          side = i;
          corner = at;
        }
      }
    if (apart <= 0 && side >= 0) return apart;
    // A corner that lies square in front of the side: the distance across that side is the distance.
    if (side >= 0) {
      const [px, py] = alongSolid ? [wx[corner]!, wy[corner]!] : [sx[corner]!, sy[corner]!];
      const next = side + 1 < (alongSolid ? s1 : c1) ? side + 1 : alongSolid ? s0 : c0;
      const [ax, ay] = alongSolid ? [sx[side]!, sy[side]!] : [wx[side]!, wy[side]!];
      const [bx, by] = alongSolid ? [sx[next]!, sy[next]!] : [wx[next]!, wy[next]!];
      const u = (px - ax) * (bx - ax) + (py - ay) * (by - ay);
      if (u >= 0 && u <= (bx - ax) ** 2 + (by - ay) ** 2) return apart;
    }
    // Else two corners face each other, or a corner faces another side.
    let least = Infinity;
    for (let i = c0; i < c1; i++) {
      const i2 = i + 1 < c1 ? i + 1 : c0;
      for (let j = s0; j < s1; j++) {
        const j2 = j + 1 < s1 ? j + 1 : s0;
        least = Math.min(
          least,
          square(wx[i]!, wy[i]!, sx[j]!, sy[j]!, sx[j2]!, sy[j2]!),
          square(sx[j]!, sy[j]!, wx[i]!, wy[i]!, wx[i2]!, wy[i2]!),
        );
      }
    }
    return Math.sqrt(least);
  }
}
