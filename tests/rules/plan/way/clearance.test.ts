import { describe, expect, test } from "vitest";
import { clearance as apart, rectangle, type Outline } from "../../../../rules/plan/room.js";
import { Bounds } from "../../../../rules/plan/way/bound.js";
import { Clearance } from "../../../../rules/plan/way/clearance.js";
import { draws } from "../sampling.js";
import { bedroom, chairOf } from "./rooms.js";

const placed = (o: Outline, x: number, y: number, t: number): Outline =>
  o.map((p) => ({
    x: x + Math.cos(t) * p.x - Math.sin(t) * p.y,
    y: y + Math.sin(t) * p.x + Math.cos(t) * p.y,
  }));

describe("the clearance of a chair at a pose", () => {
  const { solids } = bedroom();
  const chair = chairOf();

  test("is the least distance of its outlines and the solids, found another way", () => {
    const of = new Clearance(chair, solids, { x: 0, y: 0 });
    const random = draws(51);
    let overlapping = 0;
    for (let n = 0; n < 3000; n++) {
      const [x, y, t] = [5 * random() - 0.6, 4.5 * random() - 1.2, 7 * random()];
      let least = Infinity;
      for (const o of chair)
        for (const s of solids) least = Math.min(least, apart(placed(o, x, y, t), s.outline));
      expect(of.at(x, y, t)).toBeCloseTo(least, 9);
      if (least < 0) overlapping++;
    }
    expect(overlapping).toBeGreaterThan(500);
    expect(overlapping).toBeLessThan(2900);
  });

  test("changes by no more than the reference point moves and its reach times the turn", () => {
    const of = new Clearance(chair, solids);
    const random = draws(52);
    for (let n = 0; n < 3000; n++) {
      const [x, y, t] = [4 * random(), 3.5 * random() - 0.5, 7 * random()];
      const [dx, dy, dt] = [0.3 * random() - 0.15, 0.3 * random() - 0.15, 0.4 * random() - 0.2];
      const most = Math.hypot(dx, dy) + of.reach * Math.abs(dt);
      expect(Math.abs(of.at(x + dx, y + dy, t + dt) - of.at(x, y, t))).toBeLessThanOrEqual(most + 1e-12);
    }
  });

  test("is measured from walls without thickness as well", () => {
    const of = new Clearance(
      [rectangle(-0.5, -0.3, 1, 0.6)],
      [
        {
          name: "wall",
          outline: [
            { x: 0, y: 2 },
            { x: 5, y: 2 },
          ],
        },
      ],
      { x: 0, y: 0 },
    );
    expect(of.at(2, 1, 0)).toBeCloseTo(0.7, 12);
    expect(of.at(2, 1.8, 0)).toBeCloseTo(-0.1, 12);
    expect(of.at(2, 2, 0)).toBeCloseTo(-0.3, 12);
    expect(of.at(-0.8, 2.7, 0)).toBeCloseTo(Math.hypot(0.3, 0.4), 12);
    expect(of.at(2, 1, 0)).toBeLessThan(of.at(2, 0.5, 0));
  });
});

test("no pose of a cell is clearer than the cell's upper bound", () => {
  const { solids, chair } = bedroom();
  const of = new Clearance(chair, solids);
  const bounds = new Bounds(of);
  const random = draws(53);
  let closer = 0;
  for (let n = 0; n < 2000; n++) {
    const [x, y, t] = [4 * random(), 3.8 * random() - 0.8, 7 * random()];
    const [hx, hy, ht] = [0.2 * random(), 0.2 * random(), 0.3 * random()];
    const clear = of.at(x, y, t);
    bounds.look(x, y, t, hx, hy, ht, clear, clear + 0.1 * random());
    if (bounds.upper < clear + 0.7 * (Math.hypot(hx, hy) + of.reach * ht)) closer++;
    for (let k = 0; k < 40; k++) {
      const corner =
        k < 8 ? [k & 1 ? 1 : -1, k & 2 ? 1 : -1, k & 4 ? 1 : -1] : [0, 0, 0].map(() => 2 * random() - 1);
      const there = of.at(x + corner[0]! * hx, y + corner[1]! * hy, t + corner[2]! * ht);
      expect(there).toBeLessThanOrEqual(bounds.upper + 1e-9);
    }
  }
  // And it is much closer than what moving the middle could gain, where the chair stands between two things.
  expect(closer).toBeGreaterThan(300);
});
