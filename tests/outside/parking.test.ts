/**
 * A chair beside a bed's edge, worked out beforehand by turning and moving the footprint's corners in steps, with none of the
 * project's code: independent table "chair beside a bed edge". There the bed is on the chair's right, x is counted from the axle
 * and an angle above zero turns the front away. Here that is mirrored: the bed is on the near side, x is counted from the seat's
 * rear edge (50 mm behind the axle), and an angle above zero turns the front towards the bed.
 */
import { expect, test } from "vitest";
import { exactly } from "../../language/quantity/interval.js";
import {
  bestAngle,
  computedGap,
  contact,
  seatFront,
  seatRear,
  type Plan,
  type Solid,
} from "../../rules/plan/parking.js";

const mm = (x: number) => exactly(x / 1000);
const vertex = (part: string, rear: number, front: number, y: number): Solid => ({
  kind: "other",
  part,
  rear: { from: "rear", x: mm(rear + 50) },
  front: { from: "rear", x: mm(front + 50) },
  out: { from: "middle", y: mm(y) },
  sure: true,
  nominal: true,
  uses: [],
});

const chair: Plan = {
  depth: mm(430),
  axle: mm(50),
  tip: mm(0),
  farTip: mm(0),
  half: mm(215),
  wide: mm(310),
  solids: [
    vertex("wheel", -300, 300, 310),
    vertex("footrest", 750, 750, 200),
    vertex("rear frame", -120, -120, 215),
  ],
};
const degree = Math.PI / 180;
const gap = (from: typeof seatFront, t: number) => computedGap(chair, exactly(0), from).at(t) * 1000;

test.each([
  [-90, 750.0, 370.0, 800.0, "footrest"],
  [-60, 749.52, 312.93, 685.32, "footrest"],
  [-45, 671.75, 251.02, 555.08, "footrest"],
  [-30, 548.21, 172.01, 387.01, "footrest"],
  [-20, 444.45, 112.45, 259.52, "footrest"],
  [-15, 387.3, 81.27, 192.57, "footrest"],
  [-10, 357.38, 79.66, 154.33, "wheel"],
  [-5, 334.97, 87.67, 125.14, "wheel"],
  [0, 310.0, 95.0, 95.0, "wheel"],
  [5, 334.97, 153.9, 116.43, "wheel"],
  [10, 357.38, 211.64, 136.97, "wheel"],
  [15, 377.08, 267.76, 156.47, "wheel"],
  [20, 393.91, 321.84, 174.78, "wheel"],
  [30, 418.47, 422.27, 207.27, "wheel"],
  [45, 431.34, 548.01, 243.95, "wheel"],
])("at %d degrees (front away from the bed counted above zero)", (away, axle, front, rear, touching) => {
  const t = -away * degree;
  expect(Math.abs(gap(seatFront, t) - front)).toBeLessThan(0.0051);
  expect(Math.abs(gap(seatRear, t) - rear)).toBeLessThan(0.0051);
  // The axle stands 50 mm ahead of the seat's rear edge, half a seat's width further from the bed than its side.
  const toAxle = gap(seatRear, t) + 215 * Math.cos(t) - 50 * Math.sin(t);
  expect(Math.abs(toAxle - axle)).toBeLessThan(0.0051);
  if (Math.abs(away) < 90) expect(contact(chair, exactly(t)).first.part).toBe(touching);
});

test("the smallest gap stands at the kink where the touch goes over from wheel to footrest", () => {
  const best = bestAngle(
    (t) => Math.min(gap(seatFront, t), gap(seatRear, t)),
    { low: -90 * degree, nominal: 0, high: 90 * degree },
    { steps: 90, refine: true },
  );
  // The table stepped by 0.01 degrees and found 73.298 at 13.73; the kink itself lies a little lower.
  expect(gap(seatFront, 13.73 * degree)).toBeCloseTo(73.298, 2);
  expect(best.value).toBeLessThan(73.298);
  expect(best.value).toBeGreaterThan(73.28);
  expect(best.angle / degree).toBeCloseTo(Math.atan(110 / 450) / degree, 4);
  expect(best.angle / degree).toBeCloseTo(13.7363, 3);
});
