import { Point as FPoint, Polygon as FPolygon } from "@flatten-js/core";
import { describe, expect, test } from "vitest";
import { exactly } from "../../../language/quantity/interval.js";
import { bounded, leastApartOver, mostApartOver } from "../../../rules/plan/apart.js";
import { parkedFootprint, type ParkedInRoom } from "../../../rules/plan/footprint.js";
import { bedAxes, clearance, leastClearance, rectangle, type Outline } from "../../../rules/plan/room.js";
import { seatOnly } from "./seat-plan.js";
import { around, degree, draws, inch, pick, type Exact } from "./sampling.js";

const turned = (o: Outline, a: number): Outline =>
  o.map((p) => ({ x: p.x * Math.cos(a) - p.y * Math.sin(a), y: p.x * Math.sin(a) + p.y * Math.cos(a) }));

describe("distance between outlines", () => {
  test("agrees with another library's polygon distance where they are apart", () => {
    const random = draws(31);
    let apart = 0;
    for (let n = 0; n < 400; n++) {
      const one = turned(rectangle(0, 0, 1 + random(), 0.3 + random()), 6 * random());
      const other = turned(
        rectangle(3 * random() - 1, 3 * random() - 1, 0.5 + random(), 0.5 + random()),
        6 * random(),
      );
      const polygon = (o: Outline) => new FPolygon(o.map((p) => new FPoint(p.x, p.y)));
      const [distance] = polygon(one).distanceTo(polygon(other));
      const ours = clearance(one, other);
      if (ours > 1e-6) {
        apart++;
        expect(ours).toBeCloseTo(distance, 6);
      } else expect(ours).toBeLessThanOrEqual(1e-6);
    }
    expect(apart).toBeGreaterThan(100);
  });

  test("where they overlap, moving one by that much along some direction just parts them", () => {
    const a = rectangle(0, 0, 4, 2);
    expect(clearance(a, rectangle(3, 1, 5, 5))).toBeCloseTo(-1, 12);
    expect(clearance(a, rectangle(3.5, 0.5, 1, 1))).toBeCloseTo(-0.5, 12);
    const random = draws(32);
    for (let n = 0; n < 200; n++) {
      const one = turned(rectangle(-1, -0.5, 2, 1), 6 * random());
      const other = turned(rectangle(-0.5, -0.5, 1 + random(), 1), 6 * random());
      const depth = -clearance(one, other);
      if (depth <= 0) continue;
      const moved = (d: number) =>
        Array.from({ length: 720 }, (_, k) => (k * Math.PI) / 360).some(
          (a) =>
            clearance(
              one.map((p) => ({ x: p.x + d * Math.cos(a), y: p.y + d * Math.sin(a) })),
              other,
            ) > -1e-3,
        );
      expect(moved(depth)).toBe(true);
      expect(moved(depth * 0.98 - 2e-3)).toBe(false);
    }
  });

  test("the client's own left, lying on the back, is the east side with the head to the north", () => {
    expect(bedAxes("north").left).toEqual({ x: 1, y: 0 });
    expect(bedAxes("east").left).toEqual({ x: 0, y: -1 });
  });
});

describe("the parked chair in the room", () => {
  const chair = (random: () => number) => ({
    depth: around(random, 16 * inch, 19 * inch, 0.5 * inch),
    width: around(random, 16 * inch, 20 * inch, 0.5 * inch),
    overall: around(random, 24 * inch, 28 * inch, 0.5 * inch),
    axle: around(random, 0, 3 * inch, 0.5 * inch),
    diameter: around(random, 22 * inch, 24 * inch, 0.5 * inch),
    near: around(random, 1 * inch, 3 * inch, 0.5 * inch),
    far: around(random, 14 * inch, 17 * inch, inch),
  });
  const place = (random: () => number) => ({
    turned: around(random, 5 * degree, 45 * degree, 4 * degree),
    gap: around(random, 1 * inch, 4 * inch, inch),
    hip: around(random, 5 * inch, 9 * inch, inch),
    along: around(random, 30 * inch, 40 * inch, inch),
    bedX: around(random, 50 * inch, 60 * inch, 0.5 * inch),
    bedY: around(random, 40 * inch, 45 * inch, 0.5 * inch),
    bedWidth: around(random, 36 * inch, 54 * inch, 0.5 * inch),
    bedLength: around(random, 75 * inch, 80 * inch, 0.5 * inch),
  });
  type All = ReturnType<typeof chair> & ReturnType<typeof place>;
  const parked = (i: All, facing: "head" | "foot", side: "left" | "right"): ParkedInRoom => ({
    chair: i,
    ...i,
    plan: seatOnly(i.depth, i.width),
    clearance: i.gap,
    bed: { x: i.bedX, y: i.bedY, width: i.bedWidth, length: i.bedLength },
    head: "north",
    facing,
    side,
  });

  /** The same from the picture: head north, chair on the east side (left) facing north, or mirrored. */
  function picture(x: Exact<All>, facing: "head" | "foot", side: "left" | "right"): Outline[] {
    const east = side === "left" ? 1 : -1;
    const north = facing === "head" ? 1 : -1;
    const edgeX = side === "left" ? x.bedX + x.bedWidth : x.bedX;
    const hipY = x.bedY + x.bedLength - x.along;
    const s = Math.sin(x.turned);
    const c = Math.cos(x.turned);
    const corner = x.depth * s + (x.width / 2) * c;
    const at = (a: number, b: number) => ({
      x: edgeX + east * (x.gap + corner - (a * s + b * c)),
      y: hipY + north * ((a - x.hip) * c - b * s),
    });
    const box = (a0: number, a1: number, b0: number, b1: number): Outline => [
      at(a0, b0),
      at(a1, b0),
      at(a1, b1),
      at(a0, b1),
    ];
    const half = x.width / 2;
    return [
      box(x.axle - x.diameter / 2, x.axle + x.diameter / 2, -x.overall / 2, x.overall / 2),
      box(0, x.depth, -half, half),
      box(x.depth, x.depth + x.near, 0, half),
      box(x.depth, x.depth + x.far, -half, 0),
    ];
  }

  test("stands where a drawing puts it, on either side, facing either end", () => {
    const random = draws(33);
    for (const facing of ["head", "foot"] as const)
      for (const side of ["left", "right"] as const) {
        const i = { ...chair(random), ...place(random) };
        const x = Object.fromEntries(Object.entries(i).map(([k, v]) => [k, v.nominal])) as Exact<All>;
        const drawn = picture(x, facing, side);
        parkedFootprint(parked(i, facing, side)).nominal.forEach((o, n) =>
          o.forEach((p, k) => {
            expect(p.x).toBeCloseTo(drawn[n]![k]!.x, 9);
            expect(p.y).toBeCloseTo(drawn[n]![k]!.y, 9);
          }),
        );
      }
  });

  test("every chair within the tolerances leaves no less and no more than is said", () => {
    const random = draws(34);
    for (let n = 0; n < 40; n++) {
      const i = { ...chair(random), ...place(random) };
      const f = parkedFootprint(parked(i, "head", "left"));
      const box = {
        x: (110 + 30 * random()) * inch,
        y: (90 + 30 * random()) * inch,
        width: 18 * inch,
        depth: 16 * inch,
      };
      const sides = {
        west: exactly(box.x),
        east: exactly(box.x + box.width),
        south: exactly(box.y),
        north: exactly(box.y + box.depth),
      };
      const low = leastApartOver(f, [bounded(sides)]);
      const high = mostApartOver(f, [bounded(sides)]);
      for (let k = 0; k < 60; k++) {
        const x = pick(i, random, k % 2 === 0);
        const left = leastClearance(picture(x, "head", "left"), box);
        expect(left).toBeGreaterThanOrEqual(low - 1e-9);
        expect(left).toBeLessThanOrEqual(high + 1e-9);
      }
    }
  });
});
