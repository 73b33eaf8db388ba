/** The largest clear circle: by hand, in furnished rooms, and in what a disc can reach. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { boxDistance, insideDistance, largestCircle, leastOf } from "../../../rules/plan/circle.js";
import { rectangle, type Outline } from "../../../rules/plan/room.js";

const search = (walls: Outline, boxes: readonly (readonly [number, number, number, number])[] = []) => ({
  distance: leastOf([insideDistance(walls), ...boxes.map(([w, e, s, n]) => boxDistance(w, e, s, n))]),
  low: { x: Math.min(...walls.map((p) => p.x)), y: Math.min(...walls.map((p) => p.y)) },
  high: { x: Math.max(...walls.map((p) => p.x)), y: Math.max(...walls.map((p) => p.y)) },
  precision: 0.001,
});

describe("the largest circle", () => {
  test("in an empty room is half as wide as the room is narrow", () => {
    const c = largestCircle(search(rectangle(0, 0, 5, 3)))!;
    expect(c.radius).toBeCloseTo(1.5, 2);
    expect(c.atMost).toBeGreaterThanOrEqual(1.5);
    expect(c.atMost - c.radius).toBeLessThanOrEqual(0.001 + 1e-9);
  });
  test("in a furnished L-shaped room is the one of an independent grid search", () => {
    // Walls, bed and box of the independent table; it found 750 mm.
    const walls = [
      [0, 0],
      [4, 0],
      [4, 1.5],
      [2.5, 1.5],
      [2.5, 3.1],
      [0, 3.1],
    ].map(([x, y]) => ({ x: x!, y: y! }));
    const c = largestCircle(
      search(walls, [
        [0, 2, 1.1, 2],
        [3.4, 4, 0, 0.6],
      ]),
    )!;
    expect(c.radius).toBeLessThanOrEqual(0.75);
    expect(c.radius).toBeGreaterThan(0.749);
    expect(c.atMost).toBeGreaterThanOrEqual(0.75);
  });
  test("there is none where nothing is clear, or the room has no floor", () => {
    expect(largestCircle(search(rectangle(0, 0, 2, 2), [[-1, 3, -1, 3]]))).toBeUndefined();
    expect(largestCircle(search(rectangle(0, 0, 0, 2)))).toBeUndefined();
  });
});

describe("what a disc can reach", () => {
  // Two halves of a room with a gap of 0.7 m between them; the far half is the larger.
  const walls = rectangle(0, 0, 6, 3);
  const boxes = [
    [2, 2.2, 0, 1.15],
    [2, 2.2, 1.85, 3],
  ] as const;
  const from = (radius: number, taken: "sure" | "drawn" | "possible") =>
    largestCircle({
      ...search(walls, boxes),
      reach: { radius, start: (x, y) => x < 1 && Math.abs(y - 1.5) < 0.2, taken },
    })!;
  test("a narrow disc goes through the gap", () => {
    expect(from(0.25, "drawn").radius).toBeGreaterThan(1.49);
  });
  test("a wide one stays in the near part", () => {
    // There the circle touches the west wall and the ends of both partitions.
    const x = 1.0;
    expect(from(0.45, "drawn").radius).toBeGreaterThan(x);
    expect(from(0.45, "drawn").radius).toBeLessThan(1.2);
  });
  test("in doubt the sure answer stays and the possible one goes through", () => {
    expect(from(0.345, "sure").radius).toBeLessThan(1.2);
    expect(from(0.355, "possible").radius).toBeGreaterThan(1.4);
  });
});

test("whatever stands in the room, the search ends with numbers: property", () => {
  const number = fc.oneof(fc.constantFrom(0, 1e-12, 50), fc.double({ min: -3, max: 8, noNaN: true }));
  fc.assert(
    fc.property(
      fc.array(fc.tuple(number, number), { minLength: 0, maxLength: 7 }),
      fc.array(fc.tuple(number, number, number, number), { maxLength: 4 }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (points, boxes, radius) => {
        const walls = points.map(([x, y]) => ({ x, y }));
        const c = largestCircle({
          ...search(walls, boxes),
          precision: 0.01,
          reach: { radius, start: () => true, taken: "drawn" },
        });
        if (!c) return;
        for (const v of [c.x, c.y, c.radius, c.atMost]) expect(Number.isFinite(v)).toBe(true);
        expect(c.atMost).toBeGreaterThanOrEqual(c.radius);
      },
    ),
    { numRuns: 100 },
  );
}, 30_000);
