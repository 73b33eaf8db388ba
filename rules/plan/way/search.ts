/**
 * The widest way, bounded from both sides.
 *
 * One question is asked again and again: is there a way clearer than `level`? Cells whose clearance cannot exceed it are dead;
 * cells with a pose that nearly exceeds it are open; the rest are undecided. A way through as few undecided cells as can be is
 * looked for. If there is none, not even through undecided cells, no motion is clearer than `level`: whatever moves from start
 * to goal passes from cell to neighbouring cell, and one of them is dead. If it meets undecided cells, they are bounded more
 * closely, or halved. If it meets none, it is followed from pose to pose, and where that holds the way is real.
 */
import { Cells, type Ground } from "./cells.js";
import type { Clearance } from "./clearance.js";
import { clearAlong, stop, unwound, widened, type Stop } from "./follow.js";
import type { PoseBox } from "./problem.js";

export interface Found {
  low: number;
  high: number;
  way: readonly Stop[];
  settled: boolean;
}

/** Where a way may end: there, or, where there are any, in one of those boxes of poses. */
export interface Goal {
  readonly stop: Stop;
  readonly boxes: readonly PoseBox[];
}

/** Thrown through the search when its work is used up; caught where it began. */
class Enough extends Error {}

export class Search {
  private readonly cells: Cells;
  /** For each cell: the round in which it was met last, from which cell, and how many undecided ones lie before it. */
  private readonly met: number[] = [];
  private readonly from: number[] = [];
  private readonly ring: number[] = [];
  /** The round in which it was met last from the goal. */
  private readonly metBack: number[] = [];
  private round = 0;
  private startCell = -1;
  /** The cell of the only goal, if there is but one; the cell in which the way ends that was looked at last. */
  private aim = -1;
  private goalCell = -1;
  private readonly ending: boolean[] = [];
  /** Cells clearer than this in their middle are open: the level asked for, less half of what it may be missed by. */
  private open = 0;
  /** The clearance to which the straight way between two cells' middles is known to hold. */
  private readonly held = new Map<string, number>();
  private pausedAt = 0;

  constructor(
    private readonly of: Clearance,
    ground: Ground,
    private readonly start: Stop,
    private readonly goal: Goal,
    private readonly most: number,
    private readonly shouldStop: () => boolean,
  ) {
    this.cells = new Cells(of, ground);
  }

  /** Bounds the widest way to within `gap`, counted no further down than `floor` and no further up than `enough`. */
  run(floor: number, gap: number, enough = Infinity): Found {
    const { stop: only, boxes } = this.goal;
    const ends = Math.min(this.start.clear, boxes.length > 0 ? Infinity : only.clear, enough);
    const found: Found = { low: floor, high: Math.max(floor, ends), way: [], settled: false };
    try {
      // The straight way first: in an easy room it is the answer.
      this.take(found, [this.start, unwound(this.start, only)]);
      let level = 0;
      while (found.high - found.low > gap) {
        // Once there is a way, made as clear as it can be, the next thing is to prove that it is nearly the clearest.
        if (found.way.length > 0) level = found.low + 0.95 * gap;
        else if (!(level > found.low && level < found.high)) level = (found.low + found.high) / 2;
        const slack = found.way.length > 0 ? 0.5 * gap : Math.min(0.05, (level - found.low) / 2);
        const way = this.clearer(level, slack);
        if (way) this.take(found, way);
        else found.high = level;
        level = (found.low + found.high) / 2;
      }
      found.settled = true;
    } catch (e) {
      if (!(e instanceof Enough)) throw e;
    }
    found.low = Math.min(found.low, Math.max(floor, enough));
    return found;
  }

  private take(found: Found, way: readonly Stop[]): void {
    const better = widened(this.of, way);
    if (better.least.low <= found.low) return;
    found.low = better.least.low;
    found.way = better.way;
  }

  private pause(): void {
    if (this.of.asked - this.pausedAt < 256) return;
    this.pausedAt = this.of.asked;
    if (this.of.asked > this.most || this.shouldStop()) throw new Enough();
  }

  /**
   * A way that is clearer than `level` less `slack` throughout, or undefined where there is none clearer than `level`. The
   * slack keeps cells from being halved without end where the answer happens to be the level itself.
   */
  private clearer(level: number, slack: number): Stop[] | undefined {
    const { cells } = this;
    this.open = level - slack / 2;
    for (;;) {
      this.pause();
      const path = this.fewest(level);
      if (!path) return undefined;
      const undecided = this.ring[this.goalCell]!;
      if (undecided > 0) {
        for (const c of this.bundle(level, undecided)) {
          if (!cells.settle(c, level)) throw new Enough();
          this.pause();
        }
        continue;
      }
      const stops = [this.start];
      for (const c of path.slice(1, -1)) stops.push(unwound(stops[stops.length - 1]!, this.middleOf(c)));
      stops.push(unwound(stops[stops.length - 1]!, this.lastIn(path[path.length - 1]!)));
      const broken = this.broken(path, stops, level - slack);
      if (broken.length === 0) return stops;
      for (const n of broken) {
        const [a, b] = [path[n]!, path[Math.min(path.length - 1, n + 1)]!];
        const larger = cells.radius(a) >= cells.radius(b) ? a : b;
        // Two broken legs may meet in one cell, which is then halved already.
        if (cells.into[larger] === 0 && !cells.halve(larger)) throw new Enough();
      }
    }
  }

  /** Legs of the way on which the chair comes nearer to something than `level`. */
  private broken(path: readonly number[], stops: readonly Stop[], level: number): number[] {
    const broken: number[] = [];
    for (let n = 0; n + 1 < stops.length; n++) {
      const key = `${path[n]} ${path[n + 1]}`;
      const known = this.held.get(key);
      if (known !== undefined && known >= level) continue;
      if (clearAlong(this.of, stops[n]!, stops[n + 1]!, level, 1e-3)) this.held.set(key, level);
      else broken.push(n);
    }
    return broken;
  }

  /** Whether a way may end in a cell. */
  private ends(c: number): boolean {
    const { boxes } = this.goal;
    if (boxes.length === 0) return c === this.aim;
    return (this.ending[c] ??= boxes.some((b) => this.cells.within(c, b) !== undefined));
  }

  /** Where a way ends in such a cell. */
  private lastIn(c: number): Stop {
    for (const b of this.goal.boxes) {
      const pose = this.cells.within(c, b);
      if (pose) return stop(this.of, ...pose);
    }
    return this.goal.stop;
  }

  private middleOf(c: number): Stop {
    const { x, y, t, clear } = this.cells;
    return { x: x[c]!, y: y[c]!, t: t[c]!, clear: clear[c]! };
  }

  private isOpen(c: number): boolean {
    return this.cells.clear[c]! > this.open || c === this.aim || c === this.startCell;
  }

  /** Cells from start to goal that meet as few undecided ones as can be; undefined where dead cells part the two. */
  private fewest(level: number): number[] | undefined {
    const { cells, met, from, ring } = this;
    const { upper, beside } = cells;
    const round = ++this.round;
    this.startCell = cells.at(this.start.x, this.start.y, this.start.t);
    const { stop: only, boxes } = this.goal;
    if (boxes.length === 0) this.aim = cells.at(only.x, only.y, only.t);
    let now: number[] = [this.startCell];
    let next: number[] = [];
    met[this.startCell] = round;
    from[this.startCell] = -1;
    ring[this.startCell] = 0;
    // Open cells belong to the ring in which they are met, undecided ones to the next.
    for (let n = 0; now.length > 0; n++) {
      for (let i = 0; i < now.length; i++) {
        const c = now[i]!;
        if (this.ends(c)) {
          this.goalCell = c;
          const path: number[] = [];
          for (let k = c; k >= 0; k = from[k]!) path.push(k);
          return path.reverse();
        }
        for (const d of beside[c]!) {
          if (met[d] === round) continue;
          const open = this.isOpen(d);
          if (!open && upper[d]! <= level) continue;
          met[d] = round;
          from[d] = c;
          ring[d] = open ? n : n + 1;
          (open ? now : next).push(d);
        }
      }
      [now, next] = [next, []];
    }
    return undefined;
  }

  /** The undecided cells of all ways that meet no more of them than the one found last: most of them must be settled anyway. */
  private bundle(level: number, rings: number): number[] {
    const { met, ring, round, metBack } = this;
    const { upper, beside } = this.cells;
    const found: number[] = [];
    let now: number[] = [this.goalCell];
    metBack[this.goalCell] = round;
    for (let n = rings; n >= 0; n--) {
      const next: number[] = [];
      for (let i = 0; i < now.length; i++) {
        const c = now[i]!;
        const open = this.isOpen(c);
        if (!open) found.push(c);
        // Before an open cell come cells of its own ring, before an undecided one those of the ring before.
        for (const d of beside[c]!) {
          if (met[d] !== round || metBack[d] === round) continue;
          if (ring[d] !== (open ? n : n - 1) || (!this.isOpen(d) && upper[d]! <= level)) continue;
          metBack[d] = round;
          (open ? now : next).push(d);
        }
      }
      now = next;
    }
    return found;
  }
}
