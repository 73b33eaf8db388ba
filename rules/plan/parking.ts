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
import { exactly, type Interval } from "../../language/quantity/interval.js";
import { greatestOf, leastOf, pieces, turnsAway, type Piece } from "./sweep.js";

/** A place along the seat: ahead of its rear edge, or ahead of its front edge (negative: behind it). */
export interface Along {
  readonly from: "rear" | "front";
  readonly x: Interval;
}

/** A place across the chair, towards the edge: outside the seat's near side, or from the middle of the chair. */
export interface Across {
  readonly from: "side" | "middle";
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
  /** From the middle of the seat to its near side. */
  readonly half: Interval;
  readonly solids: readonly Solid[];
}

export const seatFront: Along = { from: "front", x: exactly(0) };
export const seatRear: Along = { from: "rear", x: exactly(0) };
export const seatSide: Across = { from: "side", y: exactly(0) };

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
export const seatAlone = (depth: Interval, half: Interval): Plan => ({ depth, half, solids: [seatFrame] });

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

/** `a` less `b`, and a length `between` that is added (1) or taken off (-1) where they are counted from different places. */
function less(a: Interval, b: Interval, between: Interval, sign: -1 | 0 | 1): Interval {
  const low = a.low - b.high;
  const nominal = a.nominal - b.nominal;
  const high = a.high - b.low;
  if (sign === 0) return { low, nominal, high };
  return sign > 0
    ? { low: low + between.low, nominal: nominal + between.nominal, high: high + between.high }
    : { low: low - between.high, nominal: nominal - between.nominal, high: high - between.low };
}

/** How far ahead of `b` along the seat `a` is. */
const apart = (a: Along, b: Along, depth: Interval): Interval =>
  less(a.x, b.x, depth, a.from === b.from ? 0 : a.from === "front" ? 1 : -1);
/** How far outside of `b`, towards the edge, `a` is. */
const beyond = (a: Across, b: Across, half: Interval): Interval =>
  less(a.y, b.y, half, a.from === b.from ? 0 : a.from === "side" ? 1 : -1);

function reaches(plan: Plan, point: Along, across = seatSide): readonly Reach[] {
  return plan.solids.map((s) => ({
    ahead: apart(s.front, point, plan.depth),
    behind: apart(s.rear, point, plan.depth),
    out: beyond(s.out, across, plan.half),
    sure: s.sure,
    nominal: s.nominal,
  }));
}

const lowestReach = (r: Reach, p: Piece) => leastOf(turnsAway(p) ? r.behind : r.ahead, r.out, p);
const highestReach = (r: Reach, p: Piece) => greatestOf(turnsAway(p) ? r.behind : r.ahead, r.out, p);
const nominalReach = (r: Reach, t: number) =>
  (t < 0 ? r.behind.nominal : r.ahead.nominal) * Math.sin(t) + r.out.nominal * Math.max(0, Math.cos(t));

/**
 * The gap as it follows from the chair's solids, beside a point of the seat's near side unless told `across` which. A chair without
 * solids has no gap: callers always give the seat itself.
 */
export const computedGap = (plan: Plan, clearance: Interval, point: Along, across?: Across): Gap =>
  gapOf(reaches(plan, point, across), clearance);

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
export function measuredGap(measured: Interval, depth: Interval, point: Along): Gap {
  const toFront = apart(seatFront, point, depth);
  const toRear = apart(point, seatRear, depth);
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
