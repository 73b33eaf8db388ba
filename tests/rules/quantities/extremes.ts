/** The range that a quantity really takes: found by climbing from corner to corner of its inputs. */
import type { Interval } from "../../../language/quantity/interval.js";
import { draws } from "../plan/sampling.js";
import type { Drawing, Leaf } from "./drawing.js";

export interface Range {
  low: number;
  high: number;
}

/** Beyond this an end counts as moved; below it the climb has come to rest. */
const grain = 1e-12;
/** An end is found once so much of the way to the computed bound was come. */
const near = 0.9;

const once = <T>(make: () => T): (() => T) => {
  let made: { readonly it: T } | undefined;
  return () => (made ??= { it: make() }).it;
};

const otherwise = (values: readonly number[], n: number, x: number): number[] =>
  values.map((v, k) => (k === n ? x : v));

/**
 * From a corner of the leaves, one after the other is moved to another of its ends, or to what was written, while that makes a value
 * greater; at most three times round, and no longer than until it is `enough`.
 */
export function climb(
  leaves: readonly Leaf[],
  from: { readonly corner: readonly number[]; readonly best: number },
  value: (values: readonly number[]) => number,
  enough: (best: number) => boolean,
): { readonly corner: readonly number[]; readonly best: number } {
  let { corner, best } = from;
  for (let pass = 0, won = true; won && pass < 3 && !enough(best); pass++) {
    won = false;
    leaves.forEach((l, n) => {
      for (const x of [l.low, l.high, l.nominal]) {
        if (x === corner[n]) continue;
        const moved = otherwise(corner, n, x);
        const now = value(moved);
        if (!(now > best + grain)) continue;
        [corner, best, won] = [moved, now, true];
      }
    });
  }
  return { corner, best };
}

/**
 * Range of each quantity over corners of the inputs. A first corner is taken from the effect of each input by itself, all others
 * as written; from there one input after the other is moved to its other end while that widens the range.
 */
export function extremes(
  drawing: Drawing,
  names: readonly string[],
  held: (name: string) => boolean,
): ReadonlyMap<string, Range> {
  const { leaves } = drawing;
  const written = leaves.map((l) => l.nominal);
  const valueAt = (values: readonly number[]) => {
    const [chosen, anew] = [once(() => drawing.at(values, true)), once(() => drawing.at(values, false))];
    return (name: string): Interval | undefined => (held(name) ? chosen() : anew())(name).value;
  };
  const moved = (n: number, x: number) => valueAt(otherwise(written, n, x));
  const effects = leaves.map((l, n) => [moved(n, l.low), moved(n, l.high)] as const);
  const ranges = new Map<string, Range>();
  // Corners drawn, and those that were the furthest for one quantity, are where others may start: two inputs may have no effect
  // but together, as a footplate that is both high enough to meet the bed and near enough to it.
  const random = draws(17);
  const known = Array.from({ length: 48 }, () => {
    const values: readonly number[] = drawing.pick(random, false);
    return { values, at: valueAt(values) };
  });
  for (const name of names) {
    const computed = drawing.computed(name).value!;
    const { nominal } = computed;
    const range: Range = { low: nominal, high: nominal };
    for (const end of ["low", "high"] as const) {
      const better = (a: number, b: number): boolean => (end === "low" ? a < b - grain : a > b + grain);
      const read = (v: Interval | undefined): number => v?.[end] ?? (end === "low" ? Infinity : -Infinity);
      const enough = (reached: number): boolean =>
        Math.abs(reached - nominal) >= near * Math.abs(computed[end] - nominal);
      const single = effects.map((e) => [read(e[0](name)), read(e[1](name))] as const);
      let corner: readonly number[] = written.map((v, n) => {
        const [low, high] = single[n]!;
        return low === high ? v : better(low, high) ? leaves[n]!.low : leaves[n]!.high;
      });
      let best = read(valueAt(corner)(name));
      const start = (values: readonly number[], value: number): void => {
        if (better(value, best)) [corner, best] = [values, value];
      };
      // Where opposite ends do the same, as in a distance, all single effects together may cancel: then the greatest one starts.
      leaves.forEach((l, n) => {
        start(otherwise(written, n, l.low), single[n]![0]);
        start(otherwise(written, n, l.high), single[n]![1]);
      });
      if (!enough(best)) for (const k of known) start(k.values, read(k.at(name)));
      const sign = end === "low" ? -1 : 1;
      const top = climb(
        leaves,
        { corner, best: sign * best },
        (values) => sign * read(valueAt(values)(name)),
        (reached) => enough(sign * reached),
      );
      range[end] = sign * top.best;
      if (known.length < 100 && !known.some((k) => k.values.every((x, n) => x === top.corner[n])))
        known.push({ values: top.corner, at: valueAt(top.corner) });
    }
    ranges.set(name, range);
  }
  return ranges;
}
