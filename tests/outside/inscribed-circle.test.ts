/** The largest inscribed circle: figures of a geometry library's own tests, and another program on random outlines with holes. */
import polylabel from "polylabel";
import { describe, expect, test } from "vitest";
import { boxDistance, insideDistance, largestCircle, leastOf } from "../../rules/plan/circle.js";
import { draws } from "../rules/plan/sampling.js";

type Ring = readonly (readonly [number, number])[];
function largest(
  ring: Ring,
  precision: number,
  boxes: readonly (readonly [number, number, number, number])[] = [],
) {
  const walls = ring.map(([x, y]) => ({ x, y }));
  return largestCircle({
    distance: leastOf([insideDistance(walls), ...boxes.map(([w, e, s, n]) => boxDistance(w, e, s, n))]),
    low: { x: Math.min(...ring.map((p) => p[0])), y: Math.min(...ring.map((p) => p[1])) },
    high: { x: Math.max(...ring.map((p) => p[0])), y: Math.max(...ring.map((p) => p[1])) },
    precision,
  })!;
}

describe("outlines with known circles (JTS, MaximumInscribedCircleTest)", () => {
  test.each<readonly [string, Ring, number, number]>([
    [
      "a right triangle, (6 + 8 - 10) / 2",
      [
        [1, 1],
        [1, 7],
        [9, 1],
      ],
      2,
      0.001,
    ],
    [
      "a sliver",
      [
        [1, 1],
        [1, 9],
        [2, 2],
      ],
      0.48528,
      0.001,
    ],
    [
      "a square",
      [
        [100, 100],
        [200, 100],
        [200, 200],
        [100, 200],
      ],
      50,
      0.001,
    ],
    [
      "a wedge",
      [
        [1, 2],
        [9, 3],
        [9, 1],
        [1, 1],
      ],
      0.93774,
      0.001,
    ],
    [
      "a diamond",
      [
        [150, 250],
        [50, 150],
        [150, 50],
        [250, 150],
      ],
      70.71,
      0.005,
    ],
    [
      "a chevron",
      [
        [1, 1],
        [6, 9],
        [3.7, 2.5],
        [9, 1],
      ],
      1.008,
      0.001,
    ],
    [
      "a fat chevron",
      [
        [1, 1],
        [6, 9],
        [5.9, 5],
        [9, 1],
      ],
      2.081,
      0.001,
    ],
    [
      "a kite",
      [
        [100, 0],
        [200, 200],
        [300, 200],
        [300, 100],
      ],
      61.8034,
      0.01,
    ],
    [
      "a corner that is none",
      [
        [1, 5],
        [5, 5],
        [9, 5],
        [5, 1],
      ],
      1.65685,
      0.001,
    ],
  ])("%s", (_, ring, radius, tolerance) => {
    const found = largest(ring, tolerance / 2);
    expect(Math.abs(found.radius - radius)).toBeLessThanOrEqual(2 * tolerance);
    expect(found.atMost).toBeGreaterThanOrEqual(radius - tolerance / 2);
  });
});

test("a kite with a hole in it (JTS, the same tests)", () => {
  const points = (ring: Ring) => ring.map(([x, y]) => ({ x, y }));
  const kite = insideDistance(
    points([
      [100, 0],
      [200, 200],
      [300, 200],
      [300, 100],
    ]),
  );
  const hole = insideDistance(
    points([
      [200, 150],
      [200, 100],
      [260, 100],
    ]),
  );
  const found = largestCircle({
    distance: leastOf([kite, (x, y) => -hole(x, y)]),
    low: { x: 100, y: 0 },
    high: { x: 300, y: 200 },
    precision: 0.005,
  })!;
  expect(Math.abs(found.radius - 42.529)).toBeLessThanOrEqual(0.02);
  expect(Math.abs(found.x - 257.47)).toBeLessThanOrEqual(0.1);
  expect(Math.abs(found.y - 157.47)).toBeLessThanOrEqual(0.1);
});

describe("largest empty circles whose middle lies in an outline (JTS, LargestEmptyCircleTest)", () => {
  const square: Ring = [
    [1, 1],
    [9, 1],
    [9, 9],
    [1, 9],
  ];
  /** Obstacles are boxes of no size, or lines; the printed radii are within .01 of the true ones. */
  test.each<readonly [string, readonly (readonly [number, number, number, number])[], Ring, number]>([
    [
      "four points, in their hull",
      [
        [100, 100, 100, 100],
        [100, 100, 200, 200],
        [200, 200, 200, 200],
        [200, 200, 100, 100],
      ],
      [
        [100, 100],
        [100, 200],
        [200, 200],
        [200, 100],
      ],
      70.71,
    ],
    [
      "three points, in their hull",
      [
        [100, 100, 100, 100],
        [300, 300, 100, 100],
        [200, 200, 250, 250],
      ],
      [
        [100, 100],
        [300, 100],
        [200, 250],
      ],
      108.33,
    ],
    [
      "three points, the middle on the hull's side",
      [
        [100, 100, 100, 100],
        [300, 300, 100, 100],
        [150, 150, 50, 50],
      ],
      [
        [100, 100],
        [300, 100],
        [150, 50],
      ],
      83.33,
    ],
    [
      "a line and a point, in their hull",
      [
        [100, 300, 100, 100],
        [250, 250, 200, 200],
      ],
      [
        [100, 100],
        [300, 100],
        [250, 200],
      ],
      64.31,
    ],
    [
      "three points, the middle in a corner of a square",
      [
        [2, 2, 2, 2],
        [6, 6, 4, 4],
        [8, 8, 8, 8],
      ],
      square,
      7.065,
    ],
    [
      "two points outside of the square",
      [
        [10, 10, 10, 10],
        [10, 10, 0, 0],
      ],
      square,
      10.29,
    ],
    [
      "the square's sides and two points in it",
      [
        [1, 9, 1, 1],
        [1, 9, 9, 9],
        [1, 1, 1, 9],
        [9, 9, 1, 9],
        [4, 4, 3, 3],
        [7, 7, 6, 6],
      ],
      square,
      3,
    ],
  ])("%s", (_, obstacles, ring, radius) => {
    const inside = insideDistance(ring.map(([x, y]) => ({ x, y })));
    const found = largestCircle({
      distance: leastOf(obstacles.map(([w, e, s, n]) => boxDistance(w, e, s, n))),
      low: { x: Math.min(...ring.map((p) => p[0])), y: Math.min(...ring.map((p) => p[1])) },
      high: { x: Math.max(...ring.map((p) => p[0])), y: Math.max(...ring.map((p) => p[1])) },
      precision: 0.001,
      outside: (x, y) => -inside(x, y),
    })!;
    expect(Math.abs(found.radius - radius)).toBeLessThanOrEqual(0.02);
    expect(found.atMost).toBeGreaterThanOrEqual(radius - 0.01);
  });
});

test("as another program finds it, on 300 random rooms with furniture, and its answer lies within ours", () => {
  const random = draws(82);
  for (let n = 0; n < 300; n++) {
    const corners = 3 + Math.floor(random() * 7);
    const ring = Array.from({ length: corners }, (_, k): [number, number] => {
      const a = (2 * Math.PI * (k + 0.8 * random())) / corners;
      const r = 1 + 3 * random();
      return [r * Math.cos(a), r * Math.sin(a)];
    });
    const boxes = Array.from({ length: Math.floor(random() * 4) }, () => {
      const [w, s] = [3 * random() - 2, 3 * random() - 2];
      return [w, w + 0.3 + random(), s, s + 0.3 + random()] as const;
    });
    // The other program knows only rings and whether an even or odd number of them surround a point: boxes that are apart only.
    const apart = boxes.filter((b, k) =>
      boxes.slice(0, k).every((o) => b[0] > o[1] || b[1] < o[0] || b[2] > o[3] || b[3] < o[2]),
    );
    const inside = insideDistance(ring.map(([x, y]) => ({ x, y })));
    const holes = apart.filter(
      ([w, e, s, nn]) =>
        [
          [w, s],
          [e, s],
          [e, nn],
          [w, nn],
        ].every(([x, y]) => inside(x!, y!) > 0) && ring.every(([x, y]) => boxDistance(w, e, s, nn)(x, y) > 0),
    );
    const closed = (r: Ring) => [...r, r[0]!].map(([x, y]) => [x, y]);
    const other = polylabel(
      [
        closed(ring),
        ...holes.map(([w, e, s, nn]) =>
          closed([
            [w, s],
            [e, s],
            [e, nn],
            [w, nn],
          ]),
        ),
      ],
      0.0005,
    );
    const ours = largest(ring, 0.0005, holes);
    if (other.distance <= 0.01) continue;
    expect(other.distance).toBeLessThanOrEqual(ours.atMost + 1e-9);
    expect(other.distance + 0.0005).toBeGreaterThanOrEqual(ours.radius - 1e-9);
  }
}, 60_000);
