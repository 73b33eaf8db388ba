/**
 * A close upper bound of the clearance within a cell of poses.
 *
 * With the heading held, the signed distance of two convex outlines is a convex function of where one of them stands, and so is
 * any mean of several such distances. The least of several is never above a mean of them, and a convex function is greatest at
 * a corner: so the greatest mean at the four corners of the cell bounds the clearance on it, whatever the weights. Turning adds
 * no more than reach times angle. Between two walls the mean of the distances to both does not change at all from one wall to
 * the other, which is why a narrow place needs few cells.
 */
import type { Clearance } from "./clearance.js";

export type Axis = 0 | 1 | 2;

export class Bounds {
  /** No pose of the cell is clearer. */
  upper = 0;
  /** Along which to halve the cell: x, y or heading. */
  axis: Axis = 0;

  private readonly pairs = new Int32Array(5);
  private readonly means = Array.from({ length: 5 }, () => new Float64Array(4));
  private readonly mix = new Float64Array(4);

  constructor(private readonly of: Clearance) {}

  /** Of the cell around a pose with those halves; `clear` is the clearance at the pose, `level` what is asked of the cell. */
  look(
    x: number,
    y: number,
    t: number,
    hx: number,
    hy: number,
    ht: number,
    clear: number,
    level: number,
  ): void {
    const { of, pairs, means, mix } = this;
    const turn = of.reach * ht;
    const radius = Math.hypot(hx, hy) + turn;
    this.upper = clear + radius;
    this.axis = turn >= hx && turn >= hy ? 2 : hx >= hy ? 0 : 1;
    const count = of.nearestPairs(x, y, t, clear + 2 * radius, pairs);
    if (count === 0) return;
    for (let corner = 0; corner < 4; corner++) {
      of.place(x + (corner & 1 ? hx : -hx), y + (corner & 2 ? hy : -hy), t);
      for (let k = 0; k < count; k++) means[k]![corner] = of.pairAt(pairs[k]!);
    }
    let turning = turn;
    let best = Infinity;
    for (let k = 0; k < count; k++) {
      const own = of.reachOf(pairs[k]!) * ht;
      const top = most(means[k]!) + own;
      if (top >= best) continue;
      best = top;
      turning = own;
      mix.set(means[k]!);
    }
    for (let pass = 0; pass < 3; pass++) {
      const before = best;
      for (let k = 0; k < count; k++) {
        const own = of.reachOf(pairs[k]!) * ht;
        const s = weight(mix, means[k]!, own - turning);
        if (s === 0) continue;
        for (let c = 0; c < 4; c++) mix[c] = mix[c]! + s * (means[k]![c]! - mix[c]!);
        turning += s * (own - turning);
        best = most(mix) + turning;
      }
      if (best > before - 1e-4) break;
    }
    this.upper = Math.min(this.upper, best);
    // Where turning is most of what is in doubt, the heading alone is halved; a cell that only just holds nothing, or does hold
    // something, is halved along what moves the chair most.
    if (best - turning <= level - 0.2 * turning) {
      const vx = Math.max(Math.abs(mix[1]! - mix[0]!), Math.abs(mix[3]! - mix[2]!)) / 2;
      const vy = Math.max(Math.abs(mix[2]! - mix[0]!), Math.abs(mix[3]! - mix[1]!)) / 2;
      this.axis = turning >= vx && turning >= vy ? 2 : vx >= vy ? 0 : 1;
    }
  }
}

const most = (a: Float64Array): number => Math.max(a[0]!, a[1]!, a[2]!, a[3]!);

/** The share of `b` at which the greatest of the four mixed values, and `more` for all of `b`, is least. */
function weight(a: Float64Array, b: Float64Array, more: number): number {
  const at = (s: number): number => {
    let top = -Infinity;
    for (let c = 0; c < 4; c++) top = Math.max(top, a[c]! + s * (b[c]! + more - a[c]!));
    return top;
  };
  let share = 0;
  let least = at(0) - 1e-9;
  for (let c = 0; c < 4; c++)
    for (let d = 0; d < c; d++) {
      const slope = b[c]! - a[c]! - (b[d]! - a[d]!);
      const s = slope === 0 ? 0 : (a[d]! - a[c]!) / slope;
      if (!(s > 0 && s < 1)) continue;
      const v = at(s);
      if (v < least) {
        least = v;
        share = s;
      }
    }
  return share;
}
