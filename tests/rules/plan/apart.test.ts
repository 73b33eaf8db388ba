import { describe, expect, test } from "vitest";
import { between, type Interval } from "../../../language/quantity/interval.js";
import { bounded, leastApart, mostApart, type Spot } from "../../../rules/plan/apart.js";
import { clearance, rectangle, type Outline } from "../../../rules/plan/room.js";
import { greatestOver, leastOver, pieces } from "../../../rules/plan/sweep.js";
import { draws } from "./sampling.js";

const within = (random: () => number, low: number, high: number): number => low + random() * (high - low);

/** A rectangle about the origin, turned, as everything that stands askew in a room is. */
function askew(random: () => number): Outline {
  const [a, b, t] = [within(random, 0.2, 0.7), within(random, 0.2, 0.5), within(random, -1.5, 1.5)];
  const at = (x: number, y: number) => ({
    x: x * Math.cos(t) - y * Math.sin(t),
    y: x * Math.sin(t) + y * Math.cos(t),
  });
  return [at(-a, -b), at(a, -b), at(a, b), at(-a, b)];
}
const spot = ({ x, y }: { x: number; y: number }, ex = 0, ny = 0): Spot => ({
  west: x - ex,
  east: x + ex,
  south: y - ny,
  north: y + ny,
});

/** Near enough to overlap the rectangle often, and far enough not to, just as often. */
function box(random: () => number, most: number) {
  const [west, south] = [within(random, -1.6, 1), within(random, -1.6, 1)];
  const off = (x: number): Interval => between(x - random() * most, x + random() * most);
  return {
    west: off(west),
    east: off(west + within(random, 0.3, 0.9)),
    south: off(south),
    north: off(south + within(random, 0.3, 0.9)),
  };
}

describe("distances of an outline whose corners have bounds from a box whose sides have", () => {
  test("without any bounds are the distance, or minus the least shift that parts them", () => {
    const random = draws(61);
    let overlaps = 0;
    for (let n = 0; n < 500; n++) {
      const outline = askew(random);
      const sides = box(random, 0);
      const { largest: b } = bounded(sides);
      const known = clearance(outline, rectangle(b.west, b.south, b.east - b.west, b.north - b.south));
      const corners = outline.map((p) => spot(p));
      expect(leastApart(corners, bounded(sides))).toBeCloseTo(known, 9);
      expect(mostApart(corners, bounded(sides))).toBeCloseTo(known, 9);
      if (known < 0) overlaps++;
    }
    expect(overlaps).toBeGreaterThan(100);
    expect(overlaps).toBeLessThan(400);
  });

  test("hold every distance where all move by themselves, and are reached where they move together", () => {
    const random = draws(62);
    for (let n = 0; n < 60; n++) {
      const outline = askew(random);
      const [ex, ny] = [random() * 0.05, random() * 0.05];
      const corners = outline.map((p) => spot(p, ex, ny));
      const sides = box(random, 0.04);
      const [low, high] = [leastApart(corners, bounded(sides)), mostApart(corners, bounded(sides))];
      let [least, most] = [Infinity, -Infinity];
      const place = (i: Interval): number =>
        random() < 0.5 ? i.low : random() < 0.5 ? i.high : within(random, i.low, i.high);
      for (let k = 0; k < 400; k++) {
        const [x, y] = [place(between(-ex, ex)), place(between(-ny, ny))];
        const [w, e, s, u] = [place(sides.west), place(sides.east), place(sides.south), place(sides.north)];
        const moved = outline.map((p) => ({ x: p.x + x, y: p.y + y }));
        const apart = clearance(moved, rectangle(w, s, e - w, u - s));
        [least, most] = [Math.min(least, apart), Math.max(most, apart)];
      }
      expect(least).toBeGreaterThanOrEqual(low - 1e-9);
      expect(most).toBeLessThanOrEqual(high + 1e-9);
      expect(high - low).toBeLessThanOrEqual(1.1 * (most - least) + 1e-9);
    }
  });
});

describe("a bound over all angles", () => {
  test("comes near to the least and the greatest of a wave, of whose pieces only rough bounds are known", () => {
    const random = draws(63);
    for (let n = 0; n < 50; n++) {
      const [a, b] = [within(random, -1, 1), within(random, -1, 1)];
      const from = within(random, -0.8, 0.7);
      const turned = between(from, from + random() * 0.6);
      const wave = (t: number): number => a * Math.sin(t) + b * Math.cos(t);
      // No wave changes by more than its height a radian.
      const slack = (p: { from: number; to: number }): number => ((p.to - p.from) / 2) * Math.hypot(a, b);
      const middle = (p: { from: number; to: number }): number => wave((p.from + p.to) / 2);
      const low = leastOver(pieces(turned, 3), (p) => middle(p) - slack(p));
      const high = greatestOver(pieces(turned, 3), (p) => middle(p) + slack(p));
      const all = Array.from({ length: 2001 }, (_, k) =>
        wave(turned.low + ((turned.high - turned.low) * k) / 2000),
      );
      const [least, most] = [Math.min(...all), Math.max(...all)];
      expect(low).toBeLessThanOrEqual(least + 1e-9);
      expect(high).toBeGreaterThanOrEqual(most - 1e-9);
      // Where the wave is flat all pieces are as likely, and the halvings that there are do not narrow them all.
      expect(least - low).toBeLessThan(0.012);
      expect(high - most).toBeLessThan(0.012);
    }
  });
});
