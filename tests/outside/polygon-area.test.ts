/** Areas of polygons: printed examples, a trap of rounding, and another library on random outlines. */
import { Point as FPoint, Polygon as FPolygon } from "@flatten-js/core";
import { expect, test } from "vitest";
import { area } from "../../rules/plan/traverse.js";
import { draws } from "../rules/plan/sampling.js";

const points = (...xy: readonly (readonly [number, number])[]) => xy.map(([x, y]) => ({ x, y }));

test("a rectangle of 10 by 5 less a triangle of base 7 and height 3 (a course's centroid example)", () => {
  expect(area(points([0, 0], [3.5, 3], [7, 0], [10, 0], [10, 5], [0, 5]))).toBeCloseTo(50 - 10.5, 12);
});

test("rooms as walked, from an independent table: raw areas of its rectangle and its L", () => {
  // Corners before the walk returns; the side back to the first corner closes them.
  expect(area(points([0, 0], [3.65, 0], [3.65, 2.74], [-0.005, 2.74]))).toBeCloseTo(10.00785, 6);
  expect(area(points([0, 0], [4, 0], [4, 1.5], [2.49, 1.5], [2.49, 3.1], [0.01, 3.1]))).toBeCloseTo(
    9.9685,
    6,
  );
});

test("is below zero where it is walked clockwise, and nothing where nothing is enclosed", () => {
  expect(area(points([0, 0], [0, 3], [4, 3], [4, 0]))).toBe(-12);
  expect(area(points([0, 0], [4, 0]))).toBe(0);
  expect(area([])).toBe(0);
});

test("far from the origin a triangle of area pi keeps it, where sums of products lose it", () => {
  // A note on floating point shows such a sum give 3.0 at a shift of 10^8 and 0.0 at 10^9.
  for (const n of [5, 7, 8, 9]) {
    const far = 10 ** n;
    const height = far + Math.PI - far;
    expect(Math.abs(area(points([far, far + Math.PI], [far, far], [far + 2, far])) - height)).toBeLessThan(
      1e-9,
    );
  }
});

test("agrees with another library on random star-shaped outlines", () => {
  const random = draws(81);
  for (let n = 0; n < 200; n++) {
    const corners = 3 + Math.floor(random() * 9);
    const star = Array.from({ length: corners }, (_, k) => {
      const a = (2 * Math.PI * k) / corners;
      const r = 0.5 + 2 * random();
      return { x: r * Math.cos(a), y: r * Math.sin(a) };
    });
    const other = new FPolygon(star.map((p) => new FPoint(p.x, p.y))).area();
    expect(area(star)).toBeCloseTo(other, 9);
  }
});
