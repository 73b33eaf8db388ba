/**
 * A straight board laid from a chair's seat to a surface with a straight edge, in plan (horizontal lengths in metres, angles in
 * radians; frame as in `parking.ts`).
 *
 * phi is the board's angle to the normal of the surface's edge, above 0 with the outer end further forward along the chair;
 * psi = phi + t is its angle to the normal of the seat's side. `inside` is how far the middle of the inner end lies from the
 * seat's near side, at a right angle to it; `back` how far behind the seat's front edge the middle line crosses that side. With
 * the gap G beside that crossing, length L and width w:
 *
 *     bearing on the seat      inside / cos psi - (w / 2) tan |psi|
 *     bearing on the landing   L - inside / cos psi - G / cos phi - (w / 2) tan |phi|
 *     span (longer long side)  G / cos phi + (w / 2) sin |t| / (cos phi cos psi)
 *
 * The last follows from tan psi - tan phi = sin t / (cos phi cos psi). Each bearing is that of the shorter long side.
 */
import type { Interval } from "../../language/quantity/interval.js";
import { greatest, least, pieces, type Piece } from "./sweep.js";
import type { Gap } from "./parking.js";

/** Where the board lies: chosen at nominal values or as it was laid, then held while everything else varies. */
export interface Laid {
  readonly angle: Interval;
  readonly inside: Interval;
  readonly back: number;
}

export interface Laying {
  readonly length: Interval;
  readonly width: Interval;
  /** The chair's angle, parking tolerance included. */
  readonly turned: Interval;
  /** The gap beside the place where the board's middle line crosses the seat's near side. */
  readonly gap: Gap;
  readonly laid: Laid;
  /** From the middle of the seat to its near side. */
  readonly half: Interval;
  /** From the client's midline to the near sitting bone. */
  readonly bone: Interval;
  /** Firm bearing asked at each end. */
  readonly asked: Interval;
  /** What of each edge does not carry. */
  readonly setbackSeat: Interval;
  readonly setbackLanding: Interval;
}

export interface Bearings {
  readonly seat: Interval;
  readonly seatSquare: Interval;
  readonly landing: Interval;
  readonly landingSquare: Interval;
  /** What could bear on the landing if the inner end were drawn out as far as the seat end allows. */
  readonly landingPossible: Interval;
  readonly span: Interval;
  /** Middle line from the higher edge to the board's end on the lower surface: the seat higher, the landing higher. */
  readonly runSeatHigher: Interval;
  readonly runLandingHigher: Interval;
  /** Length at which both ends have the bearing asked, the inner end drawn out as far as the seat end allows. */
  readonly shortest: Interval;
}

/** A board more askew than this to either edge is no longer laid across a gap; its lengths grow without bound. */
export const steepest = (80 * Math.PI) / 180;

export function canLie(turned: Interval, angle: Interval): boolean {
  return (
    Math.abs(turned.low) <= Math.PI / 2 &&
    Math.abs(turned.high) <= Math.PI / 2 &&
    Math.max(
      Math.abs(angle.low),
      Math.abs(angle.high),
      Math.abs(angle.low + turned.low),
      Math.abs(angle.high + turned.high),
    ) <= steepest
  );
}

/** The bearing of the shorter long side on the seat; its least is where sin psi = w / (2 inside). */
function onSeat(inside: number, width: number, psi: Interval): { low: number; high: number } {
  const at = (x: number) => (inside - (width / 2) * Math.sin(Math.abs(x))) / Math.cos(x);
  const turn = inside > width / 2 ? Math.asin(width / (2 * inside)) : Infinity;
  const places = [psi.low, psi.high, ...[0, turn, -turn].filter((x) => psi.low < x && x < psi.high)];
  const values = places.map(at);
  return { low: Math.min(...values), high: Math.max(...values) };
}

class Range {
  low = Infinity;
  high = -Infinity;
  take(low: number, high: number): void {
    if (low < this.low) this.low = low;
    if (high > this.high) this.high = high;
  }
  with = (nominal: number): Interval => ({ low: this.low, nominal, high: this.high });
}

/** Least and greatest magnitude of an angle between two. */
const magnitude = (a: number, b: number): readonly [number, number] =>
  a <= 0 && b >= 0
    ? [0, Math.max(-a, b)]
    : [Math.min(Math.abs(a), Math.abs(b)), Math.max(Math.abs(a), Math.abs(b))];

const lowest = (low: number, least: number, most: number) => (low < 0 ? low * most : low * least);
const highest = (high: number, least: number, most: number) => (high < 0 ? high * least : high * most);

/** Everything a laid board has, as bounds. The angles must satisfy `canLie`. */
export function bearings(b: Laying): Bearings {
  const { length: L, width: w, laid, turned: t } = b;
  const rho = laid.inside;
  const psi: Interval = {
    low: laid.angle.low + t.low,
    nominal: laid.angle.nominal + t.nominal,
    high: laid.angle.high + t.high,
  };
  const seatLow = onSeat(rho.low, w.high, psi).low;
  const seatHigh = onSeat(rho.high, w.low, psi).high;
  const [psiLeast, psiMost] = magnitude(psi.low, psi.high);
  const landing = new Range();
  const square = new Range();
  const possible = new Range();
  const span = new Range();
  const runOver = new Range();
  const shortest = new Range();
  const drawnOut = (
    half: number,
    bone: number,
    asked: number,
    setback: number,
    width: number,
    sinPsi: number,
  ) => Math.max(half - bone, asked + setback + (width / 2) * sinPsi, 0);
  const phiParts: readonly Piece[] = pieces(laid.angle, 4);
  for (const p of pieces(t)) {
    const g = b.gap.over(p);
    const [tLeast, tMost] = magnitude(p.from, p.to);
    const sinTLeast = Math.sin(tLeast);
    const sinTMost = Math.sin(tMost);
    for (const f of phiParts) {
      const [fLeast, fMost] = magnitude(f.from, f.to);
      const [sLeast, sMost] = magnitude(f.from + p.from, f.to + p.to);
      const cosFLow = Math.cos(fMost);
      const cosFHigh = Math.cos(fLeast);
      const secFLow = 1 / cosFHigh;
      const secFHigh = 1 / cosFLow;
      const secSLow = 1 / Math.cos(sLeast);
      const secSHigh = 1 / Math.cos(sMost);
      const inLow = lowest(rho.low, secSLow, secSHigh);
      const inHigh = highest(rho.high, secSLow, secSHigh);
      const acrossLow = lowest(g.low, secFLow, secFHigh);
      const acrossHigh = highest(g.high, secFLow, secFHigh);
      const skewLow = (w.low / 2) * Math.tan(fLeast);
      const skewHigh = (w.high / 2) * Math.tan(fMost);
      landing.take(L.low - inHigh - acrossHigh - skewHigh, L.high - inLow - acrossLow - skewLow);
      square.take(
        lowest(L.low - inHigh, cosFLow, cosFHigh) - g.high - (w.high / 2) * Math.sin(fMost),
        highest(L.high - inLow, cosFLow, cosFHigh) - g.low - (w.low / 2) * Math.sin(fLeast),
      );
      span.take(
        acrossLow + (w.low / 2) * sinTLeast * secFLow * secSLow,
        acrossHigh + (w.high / 2) * sinTMost * secFHigh * secSHigh,
      );
      runOver.take(inLow + acrossLow, inHigh + acrossHigh);
      // Sine and secant both grow with the angle, so the drawn-out end has its bounds at the ends of the piece.
      const outLow =
        drawnOut(b.half.low, b.bone.high, b.asked.low, b.setbackSeat.low, w.low, Math.sin(sLeast)) * secSLow;
      const outHigh =
        drawnOut(b.half.high, b.bone.low, b.asked.high, b.setbackSeat.high, w.high, Math.sin(sMost)) *
        secSHigh;
      possible.take(L.low - outHigh - acrossHigh - skewHigh, L.high - outLow - acrossLow - skewLow);
      shortest.take(
        outLow + acrossLow + skewLow + Math.max(0, b.asked.low + b.setbackLanding.low) * secFLow,
        outHigh + acrossHigh + skewHigh + Math.max(0, b.asked.high + b.setbackLanding.high) * secFHigh,
      );
    }
  }
  // Nominal values, by the formulae as they stand.
  const phi = Math.abs(laid.angle.nominal);
  const cosPhi = Math.cos(phi);
  const cosPsi = Math.cos(psi.nominal);
  const G = b.gap.at(t.nominal);
  const half = w.nominal / 2;
  const sinPsi = Math.sin(Math.abs(psi.nominal));
  const out =
    drawnOut(b.half.nominal, b.bone.nominal, b.asked.nominal, b.setbackSeat.nominal, w.nominal, sinPsi) /
    cosPsi;
  const in0 = rho.nominal / cosPsi;
  const land0 = L.nominal - in0 - G / cosPhi - half * Math.tan(phi);
  return {
    seat: { low: seatLow, nominal: (rho.nominal - half * sinPsi) / cosPsi, high: seatHigh },
    seatSquare: {
      low: rho.low - (w.high / 2) * Math.sin(psiMost),
      nominal: rho.nominal - half * sinPsi,
      high: rho.high - (w.low / 2) * Math.sin(psiLeast),
    },
    landing: landing.with(land0),
    landingSquare: square.with(land0 * cosPhi),
    landingPossible: possible.with(L.nominal - out - G / cosPhi - half * Math.tan(phi)),
    span: span.with(G / cosPhi + (half * Math.sin(Math.abs(t.nominal))) / (cosPhi * cosPsi)),
    runSeatHigher: {
      low: L.low - highest(rho.high, 1 / Math.cos(psiLeast), 1 / Math.cos(psiMost)),
      nominal: L.nominal - in0,
      high: L.high - lowest(rho.low, 1 / Math.cos(psiLeast), 1 / Math.cos(psiMost)),
    },
    runLandingHigher: runOver.with(in0 + G / cosPhi),
    shortest: shortest.with(
      out +
        G / cosPhi +
        half * Math.tan(phi) +
        Math.max(0, b.asked.nominal + b.setbackLanding.nominal) / cosPhi,
    ),
  };
}

/**
 * From the wheel to the board's rear long side, at a right angle to the board; below zero the board lies on the wheel. The wheel
 * ends at `window` behind the seat's front edge and reaches `outward` from the seat's side.
 */
export function wheelClearance(
  laid: Laid,
  turned: Interval,
  width: Interval,
  window: Interval,
  outward: Interval,
): Interval {
  const psi: Interval = {
    low: laid.angle.low + turned.low,
    nominal: laid.angle.nominal + turned.nominal,
    high: laid.angle.high + turned.high,
  };
  const ahead = { low: window.low - laid.back, high: window.high - laid.back };
  const range = new Range();
  for (const p of pieces(psi, 2)) {
    // The inner corner of the wheel is the nearer one while the board points forward, the outer one while it points back.
    const back = p.from < 0;
    range.take(
      least(back ? Math.max(0, outward.high) : 0, ahead.low, p) - width.high / 2,
      greatest(back ? Math.max(0, outward.low) : 0, ahead.high, p) - width.low / 2,
    );
  }
  const x = psi.nominal;
  const nominal =
    (window.nominal - laid.back) * Math.cos(x) +
    Math.min(0, Math.sin(x)) * Math.max(0, outward.nominal) -
    width.nominal / 2;
  return range.with(nominal);
}
