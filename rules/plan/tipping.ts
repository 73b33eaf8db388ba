/**
 * Whether a chair stands while somebody moves on it. Metres; x ahead of the drive wheels' contact, y towards the surface beside
 * which it stands. It stands on four points: the drive wheels at (0, +-track) and the castors at (base, +-castors); what counts
 * is where the load on the chair goes through the floor. Loads are given as parts of the whole, so that no weight is needed.
 */
import { between, exactly, type Interval } from "../../language/quantity/interval.js";

type Box = { readonly [name: string]: Interval };
type Corner<B> = { readonly [N in keyof B]: number };
type Bounds = { readonly low: number; readonly nominal: number; readonly high: number };

/**
 * Bounds of `f` over a box, exact for a function that runs only one way along each variable while the others stand still
 * (straight, or a quotient of two straight ones without a zero below): from any point a walk along one variable after the
 * other, each the way on which `f` does not fall, ends in a corner. Undefined where a corner has no value.
 */
export function overCorners<B extends Box>(box: B, f: (x: Corner<B>) => Bounds): Interval | undefined {
  const names = Object.keys(box);
  const open = names.filter((n) => box[n]!.low !== box[n]!.high);
  const x: Record<string, number> = {};
  for (const n of names) x[n] = box[n]!.nominal;
  const { nominal } = f(x as Corner<B>);
  let low = Infinity;
  let high = -Infinity;
  for (const n of names) x[n] = box[n]!.low;
  for (let k = 0; k < 2 ** open.length; k++) {
    for (let i = 0; i < open.length; i++)
      x[open[i]!] = (k >> i) & 1 ? box[open[i]!]!.high : box[open[i]!]!.low;
    const y = f(x as Corner<B>);
    if (!Number.isFinite(y.low) || !Number.isFinite(y.high)) return undefined;
    if (y.low < low) low = y.low;
    if (y.high > high) high = y.high;
  }
  return Number.isFinite(nominal) ? between(low, high, nominal) : undefined;
}

/** The chair on its wheels, and where somebody's weight bears on it, along the chair. */
export interface Along extends Box {
  /** Seat's depth, and the axle ahead of the seat's rear edge (below zero behind it). */
  readonly depth: Interval;
  readonly axle: Interval;
  /** From the seat's front edge to the castors' contact; below zero behind it. */
  readonly castor: Interval;
  /** The empty chair's mass centre ahead of the axle. */
  readonly centre: Interval;
  /** Part of the whole load on the chair that is theirs. */
  readonly part: Interval;
  /**
   * Where it bears: ahead of the seat's rear edge where `ofDepth` is 0, of its front edge where it is 1. A push that points
   * back moves it back by the push as a part of their weight times the height at which it acts.
   */
  readonly ahead: Interval;
  readonly ofDepth: Interval;
}

/** The same across the chair. */
export interface Across {
  /** Half of the seat's width. */
  readonly half: Interval;
  /** The castors' contact outside the seat's side. */
  readonly outside: Interval;
  /** Half of the drive wheels' track. */
  readonly track: Interval;
  /**
   * Where it bears: from the middle where `ofHalf` is 0, from the seat's near side where it is 1. A push away from the
   * surface moves it away.
   */
  readonly aside: Interval;
  readonly ofHalf: 0 | 1;
}

export type AlongAt = Corner<Along>;

/** From drive wheels to castors. */
export const wheelbase = (x: Pick<AlongAt, "depth" | "castor" | "axle">): number =>
  x.depth! + x.castor! - x.axle!;

/** Where somebody's own weight bears ahead of the axle. */
const ownPlace = (x: AlongAt): number => x.ahead! + x.ofDepth! * x.depth! - x.axle!;

/** How far ahead of the axle the whole load goes through the floor. */
const loadAhead = (x: AlongAt): number => x.part! * ownPlace(x) + (1 - x.part!) * x.centre!;

/** From the load to the line through the castors. Exact in `Along`. */
export const forwardMargin = (along: Along): Interval | undefined =>
  overCorners(along, (x) => exactly(wheelbase(x) - loadAhead(x)));

/**
 * From the load straight sideways to the line from drive wheel to castor, near the surface or far from it. Of the corners along
 * the chair each is taken; across it the margin is a sum of single terms, whose bounds are taken as they stand.
 */
export const sideMargin = (along: Along, across: Across, side: "near" | "far"): Interval | undefined =>
  overCorners(along, (x) => {
    const t = loadAhead(x) / wheelbase(x);
    const own = side === "near" ? -x.part! : x.part!;
    return total([
      [1 - t, across.track],
      [t, across.outside],
      [t + own * across.ofHalf, across.half],
      [own, across.aside],
    ]);
  });

function total(terms: readonly (readonly [number, Interval])[]): Bounds {
  let low = 0;
  let nominal = 0;
  let high = 0;
  for (const [k, i] of terms) {
    low += k * (k < 0 ? i.high : i.low);
    nominal += k * i.nominal;
    high += k * (k < 0 ? i.low : i.high);
  }
  return { low, nominal, high };
}

/** What the floor, or the locks, hold against a push, and what is left of it. Newtons; `weights` in newtons too. */
export interface Holding extends Omit<Along, "part"> {
  /** The client's weight, the part of it on the chair, and the empty chair's weight. */
  readonly body: Interval;
  readonly share: Interval;
  readonly chair: Interval;
  /** What of the weight on the chair pushes it away. */
  readonly away: Interval;
  /** Friction of the tyres on the floor. */
  readonly floor: Interval;
}

/**
 * Friction under the drive wheels less the push. The load on them is body x share x (1 - place / base) + chair x (1 - centre /
 * base), straight in each weight.
 */
export function floorHold({ floor, away, ...h }: Holding): Interval | undefined {
  return overCorners(h as Omit<Holding, "floor" | "away"> & Box, (x) => {
    const at = x as unknown as AlongAt & {
      readonly body: number;
      readonly share: number;
      readonly chair: number;
    };
    const base = wheelbase(at);
    const own = at.body * at.share;
    const wheels = own * (1 - ownPlace(at) / base) + at.chair * (1 - at.centre! / base);
    return total([
      [wheels, floor],
      [-own, away],
    ]);
  });
}

/** What locked wheels hold, as the slope on which they hold the occupied chair, less the push. */
export const lockHold = (
  h: Pick<Holding, "body" | "share" | "chair" | "away"> & { readonly slope: Interval },
): Interval | undefined =>
  overCorners({ body: h.body, share: h.share, chair: h.chair, away: h.away, slope: h.slope }, (x) =>
    exactly((x.body + x.chair) * Math.sin(x.slope) - x.body * x.share * x.away),
  );

/** What part of a load on the chair is somebody's, of whom the chair carries `mass`. */
export function partOf(mass: Interval, chair: Interval): Interval | undefined {
  if (mass.low < 0 || chair.low < 0 || mass.low + chair.low <= 0) return undefined;
  const at = (m: number, c: number) => m / (m + c);
  return {
    low: at(mass.low, chair.high),
    nominal: at(mass.nominal, chair.nominal),
    high: at(mass.high, chair.low),
  };
}
