/**
 * A chair parked beside a straight edge, in plan.
 *
 * Chair frame: origin at the middle of the seat's rear edge, x forward, y towards the side on which the edge lies (an edge on
 * the chair's right is the mirror image). Lengths in metres, angles in radians. The chair is turned by t: 0 is parallel to the
 * edge, above 0 the front is turned towards it. A point's distance towards the edge is x sin t + y cos t. The chair is moved
 * up until its first solid is the parking clearance away, so the gap beside a point of the seat's near side is
 *
 *     clearance + greatest over all solids of ((x_solid - x_point) sin t + (y_solid - y_side) cos t).
 *
 * Every term is a difference of two places on the same chair. What both are counted from cancels before bounds are taken:
 * otherwise a tolerance on the seat's depth would be counted twice. In each remaining length the gap rises or falls throughout,
 * and for all solids alike, so bounds of the lengths give exact bounds of the gap; the angle is cut into pieces.
 */
import { add, exactly, subtract, type Interval } from "../../language/quantity/interval.js";
import { greatestOf, leastOf, pieces, turnsAway, type Piece } from "./sweep.js";

/**
 * What places along the chair are counted from: the seat's rear edge, the axle, the seat's front edge, or the end of what stands
 * in front of it on the near side (`tip`) or the far one. Two places counted from the same one differ by what they are ahead of it, and no more.
 */
export type From = "rear" | "axle" | "front" | "tip" | "far-tip";

/** A place along the chair: ahead of one of those (negative: behind it). */
export interface Along {
  readonly from: From;
  readonly x: Interval;
}

/** A place across the chair, towards the edge: outside the seat's near side, the middle of the chair, or the outer face of the near hand rim. */
export interface Across {
  readonly from: "side" | "middle" | "rim";
  readonly y: Interval;
}

/** What can be the first to touch. */
export type SolidKind =
  "seat" | "wheel" | "castor" | "footplate" | "legrest" | "hanger" | "armrest" | "other";

/** A part of the chair that reaches the height of the surface: its near-side face, from its rear end to its front end. */
export interface Solid {
  readonly kind: SolidKind;
  readonly part: string;
  readonly front: Along;
  readonly rear: Along;
  /** Its outer face. */
  readonly out: Across;
  /** Whether it surely is at the surface's height, or only for some of the heights that may be true. */
  readonly sure: boolean;
  /** Whether it is there at nominal heights. */
  readonly nominal: boolean;
  /** Defaults of the rule set that its place rests on. */
  readonly uses: readonly string[];
}

export interface Plan {
  readonly depth: Interval;
  /** Ahead of the seat's rear edge. */
  readonly axle: Interval;
  /** How far the end of what stands in front of the seat is ahead of the seat's front edge, on the near and the far side. */
  readonly tip: Interval;
  readonly farTip: Interval;
  /** From the middle of the seat to its near side, and to the outer face of the near hand rim. */
  readonly half: Interval;
  readonly wide: Interval;
  readonly solids: readonly Solid[];
}

/** A place counted from an end of the seat. */
export interface SeatPlace extends Along {
  readonly from: "rear" | "front";
}

const zero = exactly(0);
export const seatFront: SeatPlace = { from: "front", x: zero };
export const seatRear: SeatPlace = { from: "rear", x: zero };
export const seatSide: Across = { from: "side", y: zero };
export const middleLine: Across = { from: "middle", y: zero };

/** The seat itself, which meets whatever stands beside it. */
export const seatFrame: Solid = {
  kind: "seat",
  part: "seat frame",
  front: seatFront,
  rear: seatRear,
  out: seatSide,
  sure: true,
  nominal: true,
  uses: [],
};

/** The chair as if the seat alone could touch: so stands one whose gap was taped at the seat's nearest corner. */
export const seatAlone = (plan: Plan): Plan => ({ ...plan, solids: [seatFrame] });

/** Gap beside one point of the chair, as a function of the chair's angle. */
export interface Gap {
  over(p: Piece): { readonly low: number; readonly high: number };
  at(t: number): number;
}

interface Reach {
  readonly ahead: Interval;
  readonly behind: Interval;
  readonly out: Interval;
  readonly sure: boolean;
  readonly nominal: boolean;
}

type Lengths = Pick<Plan, "axle" | "depth" | "tip" | "farTip">;
/** How often each length is counted in each place. */
const counted: Readonly<Record<From, Readonly<Partial<Record<keyof Lengths, 1>>>>> = {
  rear: {},
  axle: { axle: 1 },
  front: { depth: 1 },
  tip: { depth: 1, tip: 1 },
  "far-tip": { depth: 1, farTip: 1 },
};
const lengths = ["axle", "depth", "tip", "farTip"] as const;

/** How far a place is ahead of another; what both are counted from cancels. */
export function apart(a: Along, b: Along, of: Lengths): Interval {
  let x = subtract(a.x, b.x);
  if (a.from === b.from) return x;
  for (const name of lengths) {
    const times = (counted[a.from][name] ?? 0) - (counted[b.from][name] ?? 0);
    if (times !== 0) x = times > 0 ? add(x, of[name]) : subtract(x, of[name]);
  }
  return x;
}

/** How far a place is outside another. */
export function outside(a: Across, b: Across, of: Pick<Plan, "half" | "wide">): Interval {
  const y = subtract(a.y, b.y);
  if (a.from === b.from) return y;
  const far = (o: Across): Interval => (o.from === "middle" ? zero : o.from === "side" ? of.half : of.wide);
  return add(y, subtract(far(a), far(b)));
}

const reaches = (plan: Plan, point: Along, beside = seatSide): readonly Reach[] =>
  plan.solids.map((s) => ({
    ahead: apart(s.front, point, plan),
    behind: apart(s.rear, point, plan),
    out: outside(s.out, beside, plan),
    sure: s.sure,
    nominal: s.nominal,
  }));

const lowestReach = (r: Reach, p: Piece) => leastOf(turnsAway(p) ? r.behind : r.ahead, r.out, p);
const highestReach = (r: Reach, p: Piece) => greatestOf(turnsAway(p) ? r.behind : r.ahead, r.out, p);
const nominalReach = (r: Reach, t: number) =>
  (t < 0 ? r.behind.nominal : r.ahead.nominal) * Math.sin(t) + r.out.nominal * Math.max(0, Math.cos(t));

/**
 * The gap beside a point (of the seat's near side, if not said otherwise) as it follows from the chair's solids. A chair without
 * solids has no gap: callers always give the seat itself.
 */
export const computedGap = (plan: Plan, clearance: Interval, point: Along, beside?: Across): Gap =>
  gapOf(reaches(plan, point, beside), clearance);

function gapOf(all: readonly Reach[], clearance: Interval): Gap {
  return {
    over(p) {
      let low = -Infinity;
      let high = -Infinity;
      for (const r of all) {
        if (r.sure) low = Math.max(low, lowestReach(r, p));
        high = Math.max(high, highestReach(r, p));
      }
      return { low: clearance.low + low, high: clearance.high + high };
    },
    at(t) {
      let reach = -Infinity;
      for (const r of all) if (r.nominal) reach = Math.max(reach, nominalReach(r, t));
      return clearance.nominal + reach;
    },
  };
}

/** The gap that follows from the one measured at the seat's nearest corner. */
export function measuredGap(measured: Interval, depth: Interval, point: SeatPlace): Gap {
  const of = { depth, axle: zero, tip: zero, farTip: zero };
  const toFront = apart(seatFront, point, of);
  const toRear = apart(point, seatRear, of);
  return {
    over(p) {
      const d = turnsAway(p) ? toRear : toFront;
      const least = Math.min(Math.abs(p.sinFrom), Math.abs(p.sinTo));
      const most = Math.max(Math.abs(p.sinFrom), Math.abs(p.sinTo));
      return {
        low: measured.low + d.low * (d.low < 0 ? most : least),
        high: measured.high + d.high * (d.high < 0 ? least : most),
      };
    },
    at: (t) => measured.nominal + (t < 0 ? toRear : toFront).nominal * Math.abs(Math.sin(t)),
  };
}

/** Bounds of a gap while the chair's angle runs over `t`. */
export function gapOver(gap: Gap, t: Interval, count = 12): Interval {
  let low = Infinity;
  let high = -Infinity;
  for (const p of pieces(t, count)) {
    const g = gap.over(p);
    low = Math.min(low, g.low);
    high = Math.max(high, g.high);
  }
  return { low, nominal: gap.at(t.nominal), high };
}

/** From the edge to the nearest point of the seat: its front corner when turned towards the edge, its rear corner when turned away. */
export function cornerGap(plan: Plan, clearance: Interval, t: Interval): Interval {
  const front = t.high >= 0 ? reaches(plan, seatFront) : [];
  const rear = t.low < 0 ? reaches(plan, seatRear) : [];
  return cornerOver(front, rear, clearance, t);
}

function cornerOver(
  front: readonly Reach[],
  rear: readonly Reach[],
  clearance: Interval,
  t: Interval,
): Interval {
  const ahead = gapOf(front, clearance);
  const behind = gapOf(rear, clearance);
  let low = Infinity;
  let high = -Infinity;
  for (const p of pieces(t)) {
    const g = (turnsAway(p) ? behind : ahead).over(p);
    low = Math.min(low, g.low);
    high = Math.max(high, g.high);
  }
  return { low, nominal: (t.nominal < 0 ? behind : ahead).at(t.nominal), high };
}

/** The same at one angle, all lengths nominal. */
export const cornerGapAt = (plan: Plan, clearance: Interval, t: number): number =>
  computedGap(plan, clearance, t < 0 ? seatRear : seatFront).at(t);

export interface Contact {
  /** The solid that decides at nominal values; the first listed where two are level. */
  readonly first: Solid;
  /** All that may be the first within the tolerances. */
  readonly perhaps: readonly Solid[];
  /** How far the deciding solid stands nearer to the edge than the seat's nearest corner. */
  readonly ahead: Interval;
}

/** Which solid stops the chair. */
export function contact(plan: Plan, t: Interval): Contact {
  const front = t.high >= 0 ? reaches(plan, seatFront) : [];
  const rear = t.low < 0 ? reaches(plan, seatRear) : [];
  const all = t.nominal < 0 ? rear : front;
  let first = 0;
  let best = -Infinity;
  all.forEach((r, i) => {
    const reach = r.nominal ? nominalReach(r, t.nominal) : -Infinity;
    // A billionth of a metre: far below any tape, above the rounding of two equal sums.
    if (reach > best + 1e-9) {
      best = reach;
      first = i;
    }
  });
  const possible = new Set<number>([first]);
  for (const p of pieces(t, 6)) {
    const here = turnsAway(p) ? rear : front;
    let floor = -Infinity;
    for (const r of here) if (r.sure) floor = Math.max(floor, lowestReach(r, p));
    here.forEach((r, i) => {
      if (highestReach(r, p) >= floor) possible.add(i);
    });
  }
  return {
    first: plan.solids[first]!,
    perhaps: plan.solids.filter((_, i) => possible.has(i)),
    ahead: cornerOver(front, rear, exactly(0), t),
  };
}

/**
 * The angle with the smallest value of `measure`, searched at even steps and, with `refine`, closed in on. Of angles that are
 * equally good within `tie`, the smallest is taken, so that the answer repeats and the chair is not turned for nothing.
 */
export function bestAngle(
  measure: (t: number) => number,
  range: Interval,
  options: { readonly steps?: number; readonly tie?: number; readonly refine?: boolean } = {},
): { readonly angle: number; readonly value: number } {
  const steps = options.steps ?? 60;
  const at = (i: number) => (i === steps ? range.high : range.low + ((range.high - range.low) * i) / steps);
  const values = Array.from({ length: steps + 1 }, (_, i) => measure(at(i)));
  const least = Math.min(...values);
  let chosen = -1;
  values.forEach((v, i) => {
    if (v <= least + (options.tie ?? 0) && (chosen < 0 || Math.abs(at(i)) < Math.abs(at(chosen)))) chosen = i;
  });
  if (chosen < 0) return { angle: range.low, value: values[0] ?? 0 };
  let angle = at(chosen);
  let value = values[chosen]!;
  if (options.refine) {
    // The least gap stands at a kink where the touching solid changes, so no derivative is used.
    let low = at(Math.max(0, chosen - 1));
    let high = at(Math.min(steps, chosen + 1));
    for (let i = 0; i < 60; i++) {
      const a = low + (high - low) / 3;
      const b = high - (high - low) / 3;
      if (measure(a) <= measure(b)) high = b;
      else low = a;
    }
    angle = (low + high) / 2;
    value = measure(angle);
  }
  return { angle, value };
}
