/** Draws of exact inputs from intervals, to test that a computed interval is sound and not needlessly wide. */
import { expect } from "vitest";
import { between, exactly, type Interval } from "../../../language/quantity/interval.js";

/** A small generator of even numbers from 0 to 1; the same seed gives the same draws. */
export function draws(seed: number): () => number {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

export type Inputs = { readonly [name: string]: Interval };
export type Exact<I> = { readonly [N in keyof I]: number };

export const inch = 0.0254;
export const degree = Math.PI / 180;
export const inches = (low: number, high = low): Interval => between(low * inch, high * inch);
export const degrees = (low: number, high = low): Interval => between(low * degree, high * degree);

/** Around a random nominal value, up to a tolerance. */
export const around = (random: () => number, low: number, high: number, most: number): Interval => {
  const nominal = low + random() * (high - low);
  const tolerance = random() * most;
  return { low: nominal - tolerance, nominal, high: nominal + tolerance };
};

/** One exact choice of all inputs: within (`inside`), or each at one of its ends. */
export function pick<I extends Inputs>(inputs: I, random: () => number, inside: boolean): Exact<I> {
  const out: Record<string, number> = {};
  for (const [name, i] of Object.entries(inputs))
    out[name] = inside ? i.low + random() * (i.high - i.low) : random() < 0.5 ? i.low : i.high;
  return out as Exact<I>;
}

/** The inputs of one exact choice, as intervals of one point. */
export const points = <I extends Inputs>(x: Exact<I>): I =>
  Object.fromEntries(
    Object.entries(x as Record<string, number>).map(([n, v]) => [n, exactly(v)]),
  ) as unknown as I;

/**
 * That every true value lies inside the computed interval, over `count` draws, half of them at the ends of the inputs; gives
 * the range that the draws found.
 */
export function sound<I extends Inputs>(
  computed: Interval,
  inputs: I,
  truth: (x: Exact<I>) => number,
  random: () => number,
  count: number,
): Interval {
  let low = Infinity;
  let high = -Infinity;
  for (let n = 0; n < count; n++) {
    const x = pick(inputs, random, n % 2 === 0);
    const y = truth(x);
    low = Math.min(low, y);
    high = Math.max(high, y);
    if (!(y >= computed.low - 1e-9 && y <= computed.high + 1e-9))
      expect.fail(`${y} lies outside ${computed.low} to ${computed.high} for ${JSON.stringify(x)}`);
  }
  return between(low, high);
}

/** At most a quarter wider than what draws found. */
export const tight = (computed: Interval, found: Interval): void =>
  expect(computed.high - computed.low).toBeLessThanOrEqual(1.25 * (found.high - found.low) + 1e-9);
