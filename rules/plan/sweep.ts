/**
 * Bounds of `a sin x + b cos x` while x runs over an interval: the form every distance between a turned chair and a straight
 * edge takes. Angles in radians, at most a quarter turn either way.
 */
import type { Interval } from "../../language/quantity/interval.js";

/** A piece of an angle interval on which the angle does not change sign, with sine and cosine at both ends. */
export interface Piece {
  readonly from: number;
  readonly to: number;
  readonly sinFrom: number;
  readonly cosFrom: number;
  readonly sinTo: number;
  readonly cosTo: number;
}

const piece = (from: number, to: number): Piece => ({
  from,
  to,
  sinFrom: Math.sin(from),
  cosFrom: Math.max(0, Math.cos(from)),
  sinTo: Math.sin(to),
  cosTo: Math.max(0, Math.cos(to)),
});

/** Parts of an interval of angles; zero is always a boundary, so that the sine keeps its sign on each. */
export function pieces(t: Interval, count = 12): readonly Piece[] {
  if (t.low === t.high) return [piece(t.low, t.low)];
  const parts: Piece[] = [];
  const cut = (low: number, high: number) => {
    const n = Math.max(1, Math.ceil((count * (high - low)) / (t.high - t.low)));
    for (let i = 0; i < n; i++)
      parts.push(
        piece(low + ((high - low) * i) / n, i === n - 1 ? high : low + ((high - low) * (i + 1)) / n),
      );
  };
  if (t.low < 0) cut(t.low, Math.min(0, t.high));
  if (t.high > 0) cut(Math.max(0, t.low), t.high);
  return parts;
}

/** Whether the sine on the piece is negative (a piece that only touches zero from below counts). */
export const turnsAway = (p: Piece): boolean => p.from < 0;

export function least(a: number, b: number, p: Piece): number {
  const ends = Math.min(a * p.sinFrom + b * p.cosFrom, a * p.sinTo + b * p.cosTo);
  // Falling where the piece begins and rising where it ends: the trough of the wave lies inside.
  const inside = a * p.cosFrom - b * p.sinFrom < 0 && a * p.cosTo - b * p.sinTo > 0;
  return inside ? -Math.hypot(a, b) : ends;
}

export function greatest(a: number, b: number, p: Piece): number {
  const ends = Math.max(a * p.sinFrom + b * p.cosFrom, a * p.sinTo + b * p.cosTo);
  const inside = a * p.cosFrom - b * p.sinFrom > 0 && a * p.cosTo - b * p.sinTo < 0;
  return inside ? Math.hypot(a, b) : ends;
}

/** Bounds of `a sin x + b cos x` over the piece where both lengths have bounds of their own. */
export const leastOf = (a: Interval, b: Interval, p: Piece): number =>
  least(turnsAway(p) ? a.high : a.low, b.low, p);
export const greatestOf = (a: Interval, b: Interval, p: Piece): number =>
  greatest(turnsAway(p) ? a.low : a.high, b.high, p);

/** A piece narrower than this, a tenth of a degree, is not halved again: a point a metre away moves no more than two millimetres. */
const narrow = 0.002;
/** Halvings at most, so that the work is bounded. */
const mostHalvings = 12;

/**
 * A lower bound over all angles, from one that holds over a piece: the piece that gives the least is halved as long as that may
 * tell more, or until it is known to be no less than what is `enough`.
 */
export function leastOver(all: readonly Piece[], bound: (p: Piece) => number, enough = Infinity): number {
  const found = all.map((p) => ({ p, value: bound(p) }));
  for (let n = 0; ; n++) {
    let at = 0;
    for (let k = 1; k < found.length; k++) if (found[k]!.value < found[at]!.value) at = k;
    const { p, value } = found[at]!;
    if (value >= enough || n === mostHalvings || !(p.to - p.from > narrow)) return value;
    const middle = (p.from + p.to) / 2;
    const [first, second] = [piece(p.from, middle), piece(middle, p.to)];
    found[at] = { p: first, value: bound(first) };
    found.push({ p: second, value: bound(second) });
  }
}

/** An upper bound alike. */
export const greatestOver = (all: readonly Piece[], bound: (p: Piece) => number): number =>
  -leastOver(all, (p) => -bound(p));
