/**
 * Poses in cells: blocks of place and heading, halved along one of the three where a search needs to know more. A cell keeps
 * the clearance at the pose in its middle and an upper bound of it at any pose of the cell.
 */
import { Bounds, type Axis } from "./bound.js";
import type { Clearance } from "./clearance.js";
import type { PoseBox, Range } from "./problem.js";

/** How often a cell may be halved; the finest is about a millionth of a room. */
const levels = 14;
const whole = 1 << levels;

export interface Ground {
  readonly west: number;
  readonly south: number;
  readonly east: number;
  readonly north: number;
}

export class Cells {
  /** Middle of each cell, and the clearance there. */
  readonly x: number[] = [];
  readonly y: number[] = [];
  readonly t: number[] = [];
  readonly clear: number[] = [];
  /** No pose of the cell is clearer. */
  readonly upper: number[] = [];
  /** Cells that share a face; of a cell that was halved, nothing. */
  readonly beside: number[][] = [];
  /** First of the two cells into which one was halved; 0 where it was not (no cell is halved into the very first). */
  readonly into: number[] = [];

  private readonly bounds: Bounds;
  private readonly lowX: number[] = [];
  private readonly lowY: number[] = [];
  private readonly lowT: number[] = [];
  private readonly sizeX: number[] = [];
  private readonly sizeY: number[] = [];
  private readonly sizeT: number[] = [];
  private readonly nx: number;
  private readonly ny: number;
  private readonly nt = 12;
  private readonly stepX: number;
  private readonly stepY: number;
  private readonly stepT: number;

  constructor(
    private readonly clearance: Clearance,
    private readonly ground: Ground,
  ) {
    this.bounds = new Bounds(clearance);
    const wide = Math.max(0.1, ground.east - ground.west);
    const deep = Math.max(0.1, ground.north - ground.south);
    // About as long as wide as what turning moves the chair's ends, so that halving takes from each alike.
    const side = Math.max(0.4, Math.max(wide, deep) / 24);
    this.nx = Math.max(1, Math.ceil(wide / side));
    this.ny = Math.max(1, Math.ceil(deep / side));
    this.stepX = wide / this.nx / whole;
    this.stepY = deep / this.ny / whole;
    this.stepT = (2 * Math.PI) / this.nt / whole;
    for (let k = 0; k < this.nt; k++)
      for (let j = 0; j < this.ny; j++)
        for (let i = 0; i < this.nx; i++) this.add(i * whole, j * whole, k * whole, whole, whole, whole);
    for (let a = 0; a < this.x.length; a++) {
      const i = a % this.nx;
      const j = Math.floor(a / this.nx) % this.ny;
      const layer = this.nx * this.ny;
      if (i + 1 < this.nx) this.join(a, a + 1);
      if (j + 1 < this.ny) this.join(a, a + this.nx);
      this.join(a, (a + layer) % (layer * this.nt));
    }
  }

  /** How many cells there are, halved ones included. */
  get count(): number {
    return this.x.length;
  }

  /** The cell, not halved, that holds a pose. */
  at(x: number, y: number, heading: number): number {
    const bound = (v: number, n: number): number => Math.min(n * whole - 1, Math.max(0, Math.floor(v)));
    const i = bound((x - this.ground.west) / this.stepX, this.nx);
    const j = bound((y - this.ground.south) / this.stepY, this.ny);
    const turn = heading - 2 * Math.PI * Math.floor(heading / (2 * Math.PI));
    const k = bound(turn / this.stepT, this.nt);
    let c = ((k >> levels) * this.ny + (j >> levels)) * this.nx + (i >> levels);
    while (this.into[c] !== 0) {
      const first = this.into[c]!;
      const second = first + 1;
      const later = i >= this.lowX[second]! && j >= this.lowY[second]! && k >= this.lowT[second]!;
      c = later ? second : first;
    }
    return c;
  }

  /** Half of a cell's length, depth and turn together: how far its clearance may differ from that in its middle. */
  radius(c: number): number {
    const { clearance, stepX, stepY, stepT } = this;
    return (
      Math.hypot(this.sizeX[c]! * stepX, this.sizeY[c]! * stepY) / 2 +
      (clearance.reach * this.sizeT[c]! * stepT) / 2
    );
  }

  /** A pose that is in a cell and in the box, the nearest to the cell's middle; undefined where they have none in common. */
  within(c: number, box: PoseBox): [x: number, y: number, heading: number] | undefined {
    const [x, y, middle] = [this.x[c]!, this.y[c]!, (box.heading.low + box.heading.high) / 2];
    const t = this.t[c]! - 2 * Math.PI * Math.round((this.t[c]! - middle) / (2 * Math.PI));
    const to = (v: number, { low, high }: Range): number => Math.min(high, Math.max(low, v));
    const at: [number, number, number] = [to(x, box.x), to(y, box.y), to(t, box.heading)];
    // A billionth more, so that rounding loses nothing between two cells.
    const inside =
      Math.abs(at[0] - x) <= (this.sizeX[c]! / 2) * this.stepX + 1e-9 &&
      Math.abs(at[1] - y) <= (this.sizeY[c]! / 2) * this.stepY + 1e-9 &&
      Math.abs(at[2] - t) <= (this.sizeT[c]! / 2) * this.stepT + 1e-9;
    return inside ? at : undefined;
  }

  /**
   * Looks closer at a cell of which it is not known whether it holds a pose clearer than `level`: bounds its clearance
   * better and, where that does not settle it, halves it. False where it is too small for that.
   */
  settle(c: number, level: number): boolean {
    const [hx, hy, ht] = [
      (this.sizeX[c]! / 2) * this.stepX,
      (this.sizeY[c]! / 2) * this.stepY,
      (this.sizeT[c]! / 2) * this.stepT,
    ];
    const { bounds } = this;
    bounds.look(this.x[c]!, this.y[c]!, this.t[c]!, hx, hy, ht, this.clear[c]!, level);
    this.upper[c] = Math.min(this.upper[c]!, bounds.upper + 1e-9);
    return this.upper[c]! <= level || this.divide(c, bounds.axis);
  }

  /** Halves a cell along what moves the chair most. */
  halve(c: number): boolean {
    const { clearance, stepX, stepY, stepT } = this;
    const [a, b, d] = [
      this.sizeX[c]! * stepX,
      this.sizeY[c]! * stepY,
      clearance.reach * this.sizeT[c]! * stepT,
    ];
    return this.divide(c, d >= a && d >= b ? 2 : a >= b ? 0 : 1);
  }

  /** Two new cells take a cell's place beside its neighbours. */
  private divide(c: number, axis: Axis): boolean {
    const first = this.count;
    const [i, j, k] = [this.lowX[c]!, this.lowY[c]!, this.lowT[c]!];
    const [si, sj, sk] = [this.sizeX[c]!, this.sizeY[c]!, this.sizeT[c]!];
    if ([si, sj, sk][axis]! < 2) return false;
    for (let n = 0; n < 2; n++) {
      if (axis === 0) this.add(i + (n * si) / 2, j, k, si / 2, sj, sk);
      else if (axis === 1) this.add(i, j + (n * sj) / 2, k, si, sj / 2, sk);
      else this.add(i, j, k + (n * sk) / 2, si, sj, sk / 2);
      this.upper[first + n] = Math.min(this.upper[first + n]!, this.upper[c]!);
    }
    this.into[c] = first;
    this.join(first, first + 1);
    for (const other of this.beside[c]!) {
      const theirs = this.beside[other]!;
      theirs.splice(theirs.indexOf(c), 1);
      if (this.touch(first, other)) this.join(first, other);
      if (this.touch(first + 1, other)) this.join(first + 1, other);
    }
    this.beside[c] = [];
    return true;
  }

  private add(i: number, j: number, k: number, si: number, sj: number, sk: number): void {
    const x = this.ground.west + (i + si / 2) * this.stepX;
    const y = this.ground.south + (j + sj / 2) * this.stepY;
    const t = (k + sk / 2) * this.stepT;
    const c = this.count;
    this.x.push(x);
    this.y.push(y);
    this.t.push(t);
    this.lowX.push(i);
    this.lowY.push(j);
    this.lowT.push(k);
    this.sizeX.push(si);
    this.sizeY.push(sj);
    this.sizeT.push(sk);
    const clear = this.clearance.at(x, y, t);
    this.clear.push(clear);
    this.upper.push(clear + this.radius(c) + 1e-9);
    this.beside.push([]);
    this.into.push(0);
  }

  private join(a: number, b: number): void {
    this.beside[a]!.push(b);
    this.beside[b]!.push(a);
  }

  private touch(a: number, b: number): boolean {
    const x = meet(this.lowX[a]!, this.sizeX[a]!, this.lowX[b]!, this.sizeX[b]!);
    if (x < 0) return false;
    const y = meet(this.lowY[a]!, this.sizeY[a]!, this.lowY[b]!, this.sizeY[b]!);
    if (y < 0 || x + y === 0) return false;
    const [ta, sa, tb, sb] = [this.lowT[a]!, this.sizeT[a]!, this.lowT[b]!, this.sizeT[b]!];
    const round = this.nt * whole;
    let t = meet(ta, sa, tb, sb);
    if (t < 0 && (ta + sa - tb === round || tb + sb - ta === round)) t = 0;
    return x + y + t === 2;
  }
}

/** Whether two lengths overlap (1), only touch (0), or neither (-1). */
function meet(a: number, sizeA: number, b: number, sizeB: number): number {
  const room = Math.min(a + sizeA, b + sizeB) - Math.max(a, b);
  return room > 0 ? 1 : room === 0 ? 0 : -1;
}
