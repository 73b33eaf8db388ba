/**
 * The parts of a wheelchair that can meet the side of a bed, from what a tape finds on it and from defaults of the rule set.
 * Lengths in metres. Frame and mirror as in `parking.ts`.
 */
import {
  add,
  between,
  exactly,
  negate,
  scale,
  subtract,
  type Interval,
} from "../../language/quantity/interval.js";
import type { ArmrestState, LegRestState } from "../steps/types.js";
import { seatFrame, type Along, type Plan, type Solid } from "./parking.js";

export interface ChairMeasures {
  readonly seatDepth: Interval;
  readonly seatWidth: Interval;
  /** Over the hand rims. */
  readonly overallWidth: Interval;
  readonly wheelDiameter: Interval;
  /** Wheel's axle ahead of the seat's rear edge; negative: behind. */
  readonly axle: Interval;
  /** Top of the seat; only tells whether an armrest reaches the height of the surface. */
  readonly seatHeight: Interval;
  /** Undefined: taken from the defaults. */
  readonly hangerStub?: Interval;
  /** How far a hanger that is swung away stands out to the side of the seat. */
  readonly hangerSwung?: Interval;
  readonly legrestReach?: Interval;
  /** How far the hand rim stands outside the tyre, and its own diameter. */
  readonly rimStandoff?: Interval;
  readonly rimDiameter?: Interval;
  /** How far a brake lever stands out to the side of the seat. */
  readonly brakeLever?: Interval;
  readonly nearLegrest: LegRestState | "none";
  readonly farLegrest: LegRestState | "none";
  readonly nearArmrest: ArmrestState | "none";
}

/** The surface beside which the chair stands: heights of its top and of the free room under it (0: none, or unknown). */
export interface SideOfSurface {
  readonly top: Interval;
  readonly under: Interval;
}

/** Defaults of the rule set, by name. */
export type DefaultOf = (name: string) => Interval;

export const chairDefaults = [
  "hanger-stub-default",
  "hanger-swung-out",
  "legrest-reach-default",
  "legrest-outside",
  "armrest-outside",
  "armrest-length",
  "armrest-socket",
  "castor-front",
  "castor-outside",
  "castor-height",
  "footplate-inner",
  "footplate-height",
  "brake-lever-forward",
  "brake-lever-outside",
  "hand-rim-depth",
] as const;

/**
 * Half of the chord of a disc on the floor, of radius `reach` about a centre at height `radius`, at the widest of the heights
 * from `under` to `top`; below zero nothing (NaN-free): -1 where it does not reach them.
 */
export function halfChord(reach: number, radius: number, under: number, top: number): number {
  if (top <= under) return -1;
  const away = Math.max(0, radius - top, under - radius);
  const square = reach * reach - away * away;
  return square < 0 || reach <= 0 ? -1 : Math.sqrt(square);
}

/** The same over intervals: the chord grows with the radius and with how far the surface covers the axle's height. */
function chord(reach: (r: number) => number, radius: Interval, side: SideOfSurface) {
  const low = halfChord(reach(radius.low), radius.low, side.under.high, side.top.low);
  const high = halfChord(reach(radius.high), radius.high, side.under.low, side.top.high);
  const nominal = halfChord(reach(radius.nominal), radius.nominal, side.under.nominal, side.top.nominal);
  return {
    half: { low: Math.max(0, low), nominal: Math.max(0, nominal), high: Math.max(0, high) },
    sure: low >= 0,
    nominal: nominal >= 0,
    possible: high >= 0,
  };
}

/** How far the end of what stands in front of the seat is ahead of it; undefined where nothing stands there. */
export function standsInFront(
  legrest: LegRestState | "none",
  { stub, more, reach }: { readonly stub: Interval; readonly more: Interval; readonly reach: Interval },
): Interval | undefined {
  if (legrest === "none") return undefined;
  if (legrest === "in-place") return reach;
  return legrest === "swung" ? add(stub, more) : stub;
}

/** Whether a part between two heights meets the surface: surely, nominally, possibly. */
function meets(bottom: Interval, top: Interval, side: SideOfSurface) {
  return {
    sure: top.low > side.under.high && bottom.high < side.top.low,
    nominal: top.nominal > side.under.nominal && bottom.nominal < side.top.nominal,
    possible: top.high > side.under.low && bottom.low < side.top.high,
  };
}

const always = { sure: true, nominal: true } as const;
const zero = exactly(0);

export function chairPlan(chair: ChairMeasures, side: SideOfSurface, of: DefaultOf): Plan {
  const depth = chair.seatDepth;
  const half = scale(chair.seatWidth, 0.5);
  const solids: Solid[] = [];
  const fromRear = (x: Interval) => ({ from: "rear", x }) as const;
  const fromFront = (x: Interval) => ({ from: "front", x }) as const;
  const fromAxle = (x: Interval) => ({ from: "axle", x }) as const;
  const outside = (y: Interval) => ({ from: "side", y }) as const;
  const whole = { front: fromFront(zero), rear: fromRear(zero) };

  // Frame tubes run below the rail down to the castors, so the seat frame meets whatever stands beside it.
  solids.push(seatFrame);

  const radius = scale(chair.wheelDiameter, 0.5);
  const wide = scale(chair.overallWidth, 0.5);
  const usual = of("hand-rim-depth");
  const rim = chair.rimDiameter ? scale(subtract(chair.wheelDiameter, chair.rimDiameter), 0.5) : usual;
  const standoff = chair.rimStandoff ?? usual;
  const assumed = (measured: Interval | undefined) => (measured ? [] : ["hand-rim-depth"]);
  // The hand rim is the smaller disc and stands outside; the tyre reaches further along and stands inside by its depth.
  for (const { part, reach, out, uses } of [
    {
      part: "hand rim",
      reach: (d: number) => (r: number) => r - d,
      out: { from: "rim", y: zero } as const,
      uses: assumed(chair.rimDiameter),
    },
    {
      part: "tyre",
      reach: () => (r: number) => r,
      out: { from: "rim", y: negate(standoff) } as const,
      uses: assumed(chair.rimStandoff),
    },
  ]) {
    const shallow = chord(reach(rim.low), radius, side);
    const deep = chord(reach(rim.high), radius, side);
    if (!shallow.possible) continue;
    const length = {
      low: deep.half.low,
      nominal: chord(reach(rim.nominal), radius, side).half.nominal,
      high: shallow.half.high,
    };
    solids.push({
      kind: "wheel",
      part,
      front: fromAxle(length),
      rear: fromAxle(negate(length)),
      out,
      sure: deep.sure,
      nominal: shallow.nominal,
      uses,
    });
  }

  // A castor trails after rolling forward. Swivelling, it is pushed aside rather than stopping the chair, so it is not swept.
  const castor = meets(zero, of("castor-height"), side);
  if (castor.possible)
    solids.push({
      kind: "castor",
      part: "castor",
      front: fromFront(of("castor-front")),
      rear: fromRear(zero),
      out: outside(of("castor-outside")),
      ...castor,
      uses: ["castor-front", "castor-outside", "castor-height"],
    });

  const bare = chair.hangerStub ?? of("hanger-stub-default");
  const stub = between(Math.max(0, bare.low), Math.max(0, bare.high), Math.max(0, bare.nominal));
  const stubUses = chair.hangerStub ? [] : ["hanger-stub-default"];
  const reach = chair.legrestReach ?? of("legrest-reach-default");
  const reachUses = chair.legrestReach ? [] : ["legrest-reach-default"];
  const more = of("hanger-swung-out");
  const front = { stub, more, reach };
  const tip = standsInFront(chair.nearLegrest, front) ?? zero;
  const farTip = standsInFront(chair.farLegrest, front) ?? zero;
  const atTip = { ...whole, front: { from: "tip", x: zero } } as const;
  const hanger = (part: string, front: Along, out: Interval, uses: readonly string[]) =>
    solids.push({ kind: "hanger", part, ...whole, front, out: outside(out), ...always, uses });
  if (chair.nearLegrest === "removed") hanger("hanger stub", atTip.front, zero, stubUses);
  if (chair.nearLegrest === "swung") {
    hanger("hanger stub", fromFront(stub), zero, stubUses);
    hanger("hanger, swung away", atTip.front, chair.hangerSwung ?? more, [...stubUses, "hanger-swung-out"]);
  }
  if (chair.nearLegrest === "in-place")
    solids.push({
      kind: "legrest",
      part: "leg rest in place",
      ...atTip,
      out: outside(of("legrest-outside")),
      ...always,
      uses: [...reachUses, "legrest-outside"],
    });
  if (chair.farLegrest === "in-place") {
    // The far hanger stands on the far side; its plate reaches in towards the middle, and only it comes near the edge.
    const plate = meets(zero, of("footplate-height"), side);
    if (plate.possible)
      solids.push({
        kind: "footplate",
        part: "far footplate",
        front: { from: "far-tip", x: zero },
        rear: fromFront(zero),
        out: { from: "middle", y: of("footplate-inner") },
        ...plate,
        uses: [...reachUses, "footplate-inner", "footplate-height"],
      });
  }

  if (chair.nearArmrest === "in-place") {
    // Upward without end: whatever is as high as the seat meets it.
    const arm = meets(chair.seatHeight, exactly(Infinity), side);
    if (arm.possible)
      solids.push({
        kind: "armrest",
        part: "armrest",
        front: fromRear(of("armrest-length")),
        rear: fromRear(zero),
        out: outside(of("armrest-outside")),
        ...arm,
        uses: ["armrest-length", "armrest-outside"],
      });
  }
  if (chair.nearArmrest !== "none")
    solids.push({
      kind: "armrest",
      part: "armrest socket",
      front: fromRear(of("armrest-length")),
      rear: fromRear(zero),
      out: outside(of("armrest-socket")),
      ...always,
      uses: ["armrest-length", "armrest-socket"],
    });

  // A lever in front of the wheel: the wheel's front at the height of the axle, and the lever's own length.
  solids.push({
    kind: "other",
    part: "brake lever",
    front: fromAxle(add(radius, of("brake-lever-forward"))),
    rear: fromRear(zero),
    out: outside(chair.brakeLever ?? of("brake-lever-outside")),
    ...always,
    uses: ["brake-lever-forward", ...(chair.brakeLever ? [] : ["brake-lever-outside"])],
  });
  return { depth, axle: chair.axle, tip, farTip, half, wide, solids };
}

/**
 * The free side of the seat in front of the wheel at height h and above it: seat depth - (axle + sqrt(r^2 - (h - r)^2)), the
 * whole depth where the wheel ends below h, nothing where it covers the seat.
 */
export function sideWindow(
  depth: Interval,
  axle: Interval,
  diameter: Interval,
  height: Interval,
): { readonly window: Interval; readonly wheel: "meets" | "perhaps" | "below" } {
  const at = (d: number, a: number, w: number, h: number) => {
    const half = halfChord(w / 2, w / 2, Math.max(0, h), Infinity);
    return half < 0 ? d : Math.min(d, Math.max(0, d - a - half));
  };
  const wheelLow = 2 * Math.max(0, diameter.low / 2) >= height.high;
  const wheelHigh = diameter.high >= height.low;
  return {
    window: {
      low: at(depth.low, axle.high, diameter.high, height.low),
      nominal: at(depth.nominal, axle.nominal, diameter.nominal, height.nominal),
      high: at(depth.high, axle.low, diameter.low, height.high),
    },
    wheel: wheelLow ? "meets" : wheelHigh ? "perhaps" : "below",
  };
}
