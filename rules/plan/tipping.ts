/**
 * Whether a chair stands while somebody moves on it. Metres; x ahead of the drive wheels' contact, y towards the surface beside
 * which it stands. It stands on four points: the drive wheels at (0, +-track) and the castors at (base, +-castors); what counts
 * is where the load on the chair goes through the floor. Loads are given as parts of the whole, so that no weight is needed.
 */
import { between, multiply, type Interval } from "../../language/quantity/interval.js";

type Box<B> = { readonly [N in keyof B]: Interval };
type Corner<B> = { readonly [N in keyof B]: number };
type End = keyof Interval;

/**
 * Bounds of `f` over a box, exact for a function that runs only one way along each variable while the others stand still
 * (straight, or a quotient of two straight ones without a zero below): from any point a walk along one variable after the
 * other, each the way on which `f` does not fall, ends in a corner. `f` gives one of its own bounds, over whatever is no variable
 * of the box. Undefined where a corner has no value.
 */
export function overCorners<B extends Box<B>>(
  from: B,
  f: (x: Corner<B>, end: End) => number,
): Interval | undefined {
  const box = from as { readonly [name: string]: Interval };
  const names = Object.keys(box);
  const open = names.filter((n) => box[n]!.low !== box[n]!.high);
  const x: Record<string, number> = {};
  for (const n of names) x[n] = box[n]!.nominal;
  const nominal = f(x as Corner<B>, "nominal");
  let low = Infinity;
  let high = -Infinity;
  for (const n of names) x[n] = box[n]!.low;
  for (let k = 1; ; k++) {
    const least = f(x as Corner<B>, "low");
    const most = f(x as Corner<B>, "high");
    if (!Number.isFinite(least) || !Number.isFinite(most)) return undefined;
    if (least < low) low = least;
    if (most > high) high = most;
    if (k === 2 ** open.length) break;
    // From one corner to the next a single variable changes ends: the one whose bit is the lowest that is set in `k`.
    const n = open[31 - Math.clz32(k & -k)]!;
    x[n] = x[n] === box[n]!.low ? box[n]!.high : box[n]!.low;
  }
  return Number.isFinite(nominal) ? between(low, high, nominal) : undefined;
}

/** One bound of `k` times what has bounds. A sum of such terms with nothing in common is bounded by the sum of their bounds. */
const times = (k: number, of: Interval, end: End): number =>
  k * (end === "nominal" ? of.nominal : k < 0 === (end === "low") ? of.high : of.low);

/** The chair on its wheels, and where somebody's weight bears on it, along the chair. */
export interface Along {
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

type Wheels = Corner<Pick<Along, "depth" | "castor" | "axle">>;

/** From drive wheels to castors. */
export const wheelbase = (x: Wheels): number => x.depth + x.castor - x.axle;

/**
 * From the load to the line through the castors: the wheelbase less where the whole load goes through the floor, which is
 * part x (ahead + ofDepth x depth - axle) + (1 - part) x centre. Exact in `Along`: once `part` and `ofDepth` stand still, it is
 * a sum of single terms.
 */
export const forwardMargin = ({
  depth,
  axle,
  castor,
  centre,
  part,
  ahead,
  ofDepth,
}: Along): Interval | undefined =>
  overCorners(
    { part, ofDepth },
    (x, end) =>
      times(1 - x.part * x.ofDepth, depth, end) +
      castor[end] +
      times(x.part - 1, axle, end) +
      times(-x.part, ahead, end) +
      times(x.part - 1, centre, end),
  );

/**
 * How far along the wheels the whole load goes through the floor, as a part of the wheelbase, while `part` and `ofDepth` stand
 * still. Of the wheels' places each corner is taken; the rest is a sum of single terms.
 */
const loadAlong = (
  { depth, axle, castor, ahead, centre }: Along,
  { part, ofDepth }: Corner<Pick<Along, "part" | "ofDepth">>,
): Interval | undefined =>
  overCorners({ depth, axle, castor }, (x, end) => {
    const base = wheelbase(x);
    const own = times(part / base, ahead, end) + (part * (ofDepth * x.depth - x.axle)) / base;
    return own + times((1 - part) / base, centre, end);
  });

/**
 * From the load straight sideways to the line from drive wheel to castor, near the surface or far from it. It is straight in how
 * far along the wheels the load is, so its bounds are at the ends of that.
 */
export const sideMargin = (along: Along, across: Across, side: "near" | "far"): Interval | undefined =>
  overCorners({ part: along.part, ofDepth: along.ofDepth }, (x, end) => {
    const load = loadAlong(along, x);
    if (!load) return NaN;
    const own = side === "near" ? -x.part : x.part;
    const at = (t: number): number =>
      times(1 - t, across.track, end) +
      times(t, across.outside, end) +
      times(t + own * across.ofHalf, across.half, end) +
      times(own, across.aside, end);
    if (end === "nominal") return at(load.nominal);
    return Math[end === "low" ? "min" : "max"](at(load.low), at(load.high));
  });

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
 * base), straight in each weight; `place` and `centre` stand in one term each.
 */
export function floorHold(h: Holding): Interval | undefined {
  const { depth, axle, castor, ofDepth, ahead, centre, chair, floor, away } = h;
  const own = multiply(h.body, h.share);
  return overCorners({ depth, axle, castor, ofDepth, own, chair, floor }, (x, end) => {
    const base = wheelbase(x);
    const wheels = (of: End): number =>
      x.own * (1 - (x.ofDepth * x.depth - x.axle) / base) +
      times(-x.own / base, ahead, of) +
      x.chair +
      times(-x.chair / base, centre, of);
    const opposite = end === "low" ? "high" : end === "high" ? "low" : end;
    return x.floor * wheels(x.floor < 0 ? opposite : end) + times(-x.own, away, end);
  });
}

/** What locked wheels hold, as the slope on which they hold the occupied chair, less the push. */
export const lockHold = (
  h: Pick<Holding, "body" | "share" | "chair" | "away"> & { readonly slope: Interval },
): Interval | undefined =>
  overCorners(
    { body: h.body, share: h.share, chair: h.chair, away: h.away, slope: h.slope },
    (x) => (x.body + x.chair) * Math.sin(x.slope) - x.body * x.share * x.away,
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
