/** What bears on the chair, and where, at each stage of a transfer: as the quantities of tipping and holding take it. */
import {
  add,
  between,
  exactly,
  multiply,
  negate,
  scale,
  subtract,
  type Interval,
} from "../../language/quantity/interval.js";
import type { Across, Along } from "../plan/tipping.js";
import type { Of, Outcome } from "../quantity.js";
import type { Scene } from "../scene.js";
import type { Computed } from "../types.js";
import { inclineEnd, inclineStart } from "./board-incline.js";
import { boardRiseStart } from "./board-rise.js";
import { pushRatio } from "../plan/incline.js";
import { pushFriction } from "./friction.js";
import { absent, block, boardOr, derived, endsOr, isWritten, noBoard } from "./inputs.js";
import { boardSpan, laidAs } from "./laying.js";
import { feetSliding, type Feet } from "./load-share.js";
import { leavingRatio } from "./push.js";
import { clientMass } from "./weight.js";

/** The chair on its wheels. */
export type Stand = Pick<Along, "depth" | "axle" | "castor" | "centre"> &
  Pick<Across, "half" | "outside" | "track">;

export type Stage = "back" | "scooted" | "over-seat-end" | "mid-span" | "last-contact";

/** Where the client sits in the chair, and how much of the body the chair then carries. */
export interface Seated {
  /** Part of the body's mass on the chair. */
  readonly share: Interval;
  /** From the hip joint to the middle of that load, ahead. */
  readonly centre: Interval;
}

export interface ChairLoad {
  readonly stand: Stand;
  readonly mass: Interval;
  readonly chairMass: Interval;
  readonly hip: Interval;
  readonly scoot: Interval;
  /** How far leaning 30 degrees moves the load. */
  readonly lean: Interval;
  /** One way of sitting for each place where the feet may be. */
  readonly seated: readonly Seated[];
  /** With the feet on the plates, wherever they are later. */
  readonly onPlates: Seated;
  /** Where the board bears on the chair; undefined without a board. */
  readonly board: OnChair | undefined;
}

interface OnChair {
  /** Where it may bear; the likeliest first. */
  readonly places: readonly (Pick<Along, "ahead" | "ofDepth"> & Pick<Across, "aside" | "ofHalf">)[];
  readonly share: readonly Interval[];
  readonly sine: Interval;
  readonly cosine: Interval;
  /** What of the weight pushes the chair away, at the start of the way on the board and along it, and at which height. */
  readonly away: { readonly end: Interval; readonly middle: Interval };
  readonly height: Interval;
}

/** A tape finds the castor's swivel and the tyre's width where somebody cares; else the rule set's range stands in. */
const orDefault = (of: Of, thing: Scene["chair"], key: string, words: string, name: string): Computed =>
  thing && isWritten(thing, key) ? of.written(thing, key, words) : of.default(name);

function boardInputs(s: Scene, of: Of): Record<string, unknown> {
  const b = boardOr(s);
  if ("none" in b) return b.none.without === noBoard ? {} : { none: b.none };
  // Wet or bare skin leaves the push open, but no push makes the wheels stand elsewhere: any friction is taken.
  const friction = of(pushFriction);
  return {
    span: of(boardSpan),
    rise: of(boardRiseStart),
    back: s.to === s.chair,
    mu: friction.value ? friction : of.default("friction-any"),
    incline: of(inclineStart),
    end: of(inclineEnd),
    upholstery: of.default("friction-upholstery"),
    left: of.default("still-on-upholstery"),
    toChair: of.default("chair-share-of-push"),
    seatHeight: of.written(s.chair, "seat-height", "the seat's height"),
  };
}

function loadInputs(s: Scene, of: Of): Record<string, unknown> {
  const ends = endsOr(s);
  if ("none" in ends) return ends;
  const { chair } = ends;
  const wheel = block(chair, "drive-wheel");
  const feet = feetSliding(s);
  return {
    depth: of.written(chair, "seat-depth", "the seat's depth"),
    width: of.written(chair, "seat-width", "the seat's width"),
    overall: of.written(chair, "overall-width", "the chair's width over the hand rims"),
    axle: wheel
      ? of.written(wheel, "axle", "the axle's place under the seat")
      : absent(chair, "the axle's place under the seat", "drive-wheel"),
    chairMass: orDefault(of, chair, "mass", "the chair's mass", "chair-mass"),
    mass: clientMass(s, of),
    stature: s.client
      ? of.written(s.client, "stature", "the client's stature")
      : absent(undefined, "the client's stature", "stature"),
    stem: of.default("castor-stem"),
    trail: orDefault(of, block(chair, "castor"), "trail", "the castors' trail", "castor-trail"),
    outside: of.default("castor-contact-outside"),
    rim: orDefault(
      of,
      block(chair, "hand-rim"),
      "standoff",
      "how far the hand rim stands out",
      "hand-rim-depth",
    ),
    tyre: orDefault(of, chair, "tyre-width", "the tyres' width", "tyre-width-default"),
    chairCentre: of.default("chair-centre-ahead"),
    hip: of.default("hip-from-seat-rear"),
    scoot: of.default("scoot-forward"),
    leanShift: of.default("lean-shift"),
    feet,
    shareDown: of.default("load-share-feet-down"),
    centreDown: of.default("seated-centre-feet-down"),
    centrePlates: of.default("seated-centre-feet-carried"),
    ...boardInputs(s, of),
  };
}

type LoadHanded = Record<
  | "depth"
  | "width"
  | "overall"
  | "axle"
  | "chairMass"
  | "mass"
  | "stature"
  | "stem"
  | "trail"
  | "outside"
  | "rim"
  | "tyre"
  | "chairCentre"
  | "hip"
  | "scoot"
  | "leanShift"
  | "shareDown"
  | "centreDown"
  | "centrePlates",
  Interval
> & { readonly feet: Feet | undefined } & Partial<BoardHanded>;
type BoardHanded = Record<
  "span" | "rise" | "mu" | "incline" | "end" | "upholstery" | "left" | "toChair" | "seatHeight",
  Interval
> & { readonly back: boolean };

function onChair(i: LoadHanded & BoardHanded, share: readonly Interval[]): OnChair {
  const laid = laidAs(i.span);
  const psi: Interval = {
    low: laid.laid.angle.low + laid.turned.low,
    nominal: laid.laid.angle.nominal + laid.turned.nominal,
    high: laid.laid.angle.high + laid.turned.high,
  };
  // The rise counts towards the destination; the chair is the lower end where the board climbs away from it.
  const lower = i.back ? negate(i.rise) : i.rise;
  const edge = {
    ahead: exactly(-laid.laid.back),
    ofDepth: exactly(1),
    aside: exactly(0),
    ofHalf: 1,
  } as const;
  const tangent = { low: Math.tan(psi.low), nominal: Math.tan(psi.nominal), high: Math.tan(psi.high) };
  const inner = {
    ahead: subtract(exactly(-laid.laid.back), multiply(laid.laid.inside, tangent)),
    ofDepth: exactly(1),
    aside: negate(laid.laid.inside),
    ofHalf: 1,
  } as const;
  const places = [...(lower.low <= 0 ? [edge] : []), ...(lower.high > 0 ? [inner] : [])];
  const start = leavingRatio(i);
  const middle = i.incline.nominal >= i.end.nominal ? [i.incline, i.end] : [i.end, i.incline];
  const slopes: Interval = {
    low: Math.min(i.incline.low, i.end.low),
    nominal: middle[0]!.nominal,
    high: Math.max(i.incline.high, i.end.high),
  };
  // Somebody sliding down unpushed is held back; then nothing pushes the chair away.
  const push = (ratio: Interval) =>
    multiply(i.toChair, {
      low: Math.max(0, ratio.low),
      nominal: Math.max(0, ratio.nominal),
      high: Math.max(0, ratio.high),
    });
  return {
    places: lower.nominal > 0 ? [...places].reverse() : places,
    share,
    sine: { low: Math.sin(psi.low), nominal: Math.sin(psi.nominal), high: Math.sin(psi.high) },
    cosine: between(
      Math.min(Math.cos(psi.low), Math.cos(psi.high)),
      psi.low <= 0 && psi.high >= 0 ? 1 : Math.max(Math.cos(psi.low), Math.cos(psi.high)),
      Math.cos(psi.nominal),
    ),
    away: { end: push(start), middle: push(pushRatio(i.mu, slopes)) },
    height: i.seatHeight,
  };
}

function loadOn(i: LoadHanded): ChairLoad | undefined {
  const stand: Stand = {
    depth: i.depth,
    axle: i.axle,
    castor: subtract(i.stem, i.trail),
    half: scale(i.width, 0.5),
    outside: i.outside,
    track: subtract(scale(i.overall, 0.5), add(i.rim, scale(i.tyre, 0.5))),
    centre: i.chairCentre,
  };
  if (stand.depth.low + stand.castor.low - stand.axle.high <= 0 || i.chairMass.low <= 0 || i.mass.low < 0)
    return undefined;
  const down: Seated = { share: i.shareDown, centre: multiply(i.stature, i.centreDown) };
  const carried: Seated = { share: exactly(1), centre: multiply(i.stature, i.centrePlates) };
  const seated = i.feet === "down" ? [down] : i.feet === undefined ? [carried, down] : [carried];
  // Feet on the plates weigh on the chair, but not on the board.
  const onBoard =
    i.feet === "hanging" ? [exactly(1)] : i.feet === undefined ? [exactly(1), i.shareDown] : [i.shareDown];
  return {
    stand,
    mass: i.mass,
    chairMass: i.chairMass,
    hip: i.hip,
    scoot: i.scoot,
    lean: multiply(i.stature, i.leanShift),
    seated,
    onPlates: carried,
    board: i.span ? onChair(i as LoadHanded & BoardHanded, onBoard) : undefined,
  };
}

const byValue = new WeakMap<Interval, ChairLoad>();

/** The castors' trail as written, else the usual; or why there is no chair. */
export function castorTrail(s: Scene, of: Of): Record<string, Computed> {
  const ends = endsOr(s);
  return "none" in ends
    ? { none: ends.none }
    : { trail: orDefault(of, block(ends.chair, "castor"), "trail", "the castors' trail", "castor-trail") };
}

/** One piece of reading for all quantities of tipping; its value is the weight on the chair's wheels, client sitting back. */
export const chairLoad = derived({
  name: "chair.load",
  dimension: "mass",
  says: "what rests on the chair's wheels while the client sits back in it: the chair and what it carries of the client",
  formula: "mass of the chair + mass of the client x part on the chair",
  source: "segment masses, from the rule set",
  inputs: loadInputs,
  compute: (i: LoadHanded): Outcome => {
    const load = loadOn(i);
    if (!load)
      return {
        missing: [{ what: "a chair whose castors stand ahead of its drive wheels", key: "drive-wheel" }],
      };
    const on = load.seated.map((x) => multiply(load.mass, x.share));
    const value = add(
      load.chairMass,
      between(Math.min(...on.map((x) => x.low)), Math.max(...on.map((x) => x.high)), on[0]!.nominal),
    );
    byValue.set(value, load);
    return { value };
  },
});

/** The load of which `chair.load` is that value. */
export const loadedAs = (value: Interval): ChairLoad => byValue.get(value)!;
