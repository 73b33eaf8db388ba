/** Whatever is written, the geometry gives numbers or says that it has none: it never gives NaN and never throws. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { between, type Interval } from "../../../language/quantity/interval.js";
import { bounded, leastApartOver, mostApartOver } from "../../../rules/plan/apart.js";
import { bearings, canLie, wheelClearance } from "../../../rules/plan/board.js";
import { chairDefaults, chairPlan, sideWindow } from "../../../rules/plan/chair-solids.js";
import { parkedFootprint } from "../../../rules/plan/footprint.js";
import { slope, loadRatio } from "../../../rules/plan/heights.js";
import {
  computedGap,
  contact,
  cornerGap,
  cornerGapAt,
  gapOver,
  measuredGap,
} from "../../../rules/plan/parking.js";
import { place } from "../../../rules/plan/placing.js";
import { leastClearance } from "../../../rules/plan/room.js";
import { signedTurn } from "../../../rules/quantities/inputs.js";
import { seatOnly } from "./seat-plan.js";

/** Lengths that a slip of the pen can give: zero, negative, a hundred yards. */
const length = fc.oneof(fc.constantFrom(0, -0.0254, 1e-12, 100), fc.double({ min: -1, max: 2, noNaN: true }));
const interval = fc.tuple(length, length).map(([a, b]) => between(a, b));
const angle = fc.oneof(
  fc.constantFrom(0, Math.PI / 2, -Math.PI / 2, Math.PI, 3),
  fc.double({ min: -2, max: 2, noNaN: true }),
);
const turn = fc
  .tuple(angle, fc.double({ min: 0, max: 0.2, noNaN: true }))
  .map(([a, t]): Interval => ({ low: a - t, nominal: a, high: a + t }));

const good = (i: Interval) => {
  expect(i.low).not.toBeNaN();
  expect(i.nominal).not.toBeNaN();
  expect(i.high).not.toBeNaN();
  expect(i.low).toBeLessThanOrEqual(i.high + 1e-9);
  expect(i.nominal).toBeGreaterThanOrEqual(i.low - 1e-9);
  expect(i.nominal).toBeLessThanOrEqual(i.high + 1e-9);
};

const measures = fc.record({
  seatDepth: interval,
  seatWidth: interval,
  overallWidth: interval,
  wheelDiameter: interval,
  axle: interval,
  seatHeight: interval,
  hangerStub: fc.option(interval, { nil: undefined }),
  legrestReach: fc.option(interval, { nil: undefined }),
  nearLegrest: fc.constantFrom("in-place", "swung", "removed", "none"),
  farLegrest: fc.constantFrom("in-place", "swung", "removed", "none"),
  nearArmrest: fc.constantFrom("in-place", "away", "none"),
});
const side = fc.record({ top: interval, under: interval });
const defaults = fc.array(interval, { minLength: chairDefaults.length, maxLength: chairDefaults.length });

test("parking", () => {
  fc.assert(
    fc.property(
      measures,
      side,
      defaults,
      turn,
      fc.boolean(),
      interval,
      interval,
      (m, s, d, t, away, clearance, x) => {
        const turned = signedTurn(t, away, 0.05);
        if (!turned) return;
        const plan = chairPlan(m as never, s, (name) => d[chairDefaults.indexOf(name as never)]!);
        good(cornerGap(plan, clearance, turned));
        good(gapOver(computedGap(plan, clearance, { from: "rear", x }), turned));
        good(gapOver(measuredGap(clearance, m.seatDepth, { from: "rear", x }), turned));
        expect(cornerGapAt(plan, clearance, turned.nominal)).not.toBeNaN();
        const c = contact(plan, turned);
        good(c.ahead);
        expect(c.perhaps).toContain(c.first);
        good(sideWindow(m.seatDepth, m.axle, m.wheelDiameter, m.seatHeight).window);
      },
    ),
    { numRuns: 1500 },
  );
});

test("laying the board", () => {
  const number = length;
  fc.assert(
    fc.property(
      fc.record({
        length: interval,
        width: interval,
        half: interval,
        bone: interval,
        asked: interval,
        setbackSeat: interval,
        setbackLanding: interval,
      }),
      fc.record({
        turned: angle,
        gapFront: number,
        length: number,
        width: number,
        depth: number,
        half: number,
        window: fc.option(number, { nil: undefined }),
        outward: number,
        clear: number,
        hip: number,
        bone: number,
        asked: number,
        setbackSeat: number,
        setbackLanding: number,
      }),
      turn,
      turn,
      interval,
      interval,
      (i, c, t, phi, inside, gap) => {
        const turned = signedTurn(t, false, 0.05);
        if (!turned) return;
        const width = {
          low: Math.abs(i.width.low),
          nominal: Math.abs(i.width.low),
          high: Math.abs(i.width.low),
        };
        const p = place({ ...c, turned: turned.nominal });
        for (const v of [p.angle, p.inside, p.back, p.margin, p.short, p.span]) expect(v).not.toBeNaN();
        if (!canLie(turned, phi)) return;
        const laid = { angle: phi, inside, back: p.back };
        const b = bearings({ ...i, width, turned, gap: { over: () => gap, at: () => gap.nominal }, laid });
        for (const q of Object.values(b)) good(q as Interval);
        good(wheelClearance(laid, turned, width, i.half, i.bone));
      },
    ),
    { numRuns: 1500 },
  );
});

test("slopes, loads and the room", () => {
  fc.assert(
    fc.property(
      interval,
      interval,
      interval,
      measures,
      turn,
      fc.constantFrom("north", "east", "south", "west"),
      fc.constantFrom("head", "foot"),
      fc.constantFrom("left", "right"),
      (a, b, c, m, t, head, facing, bedSide) => {
        good(slope(a, b, c));
        const ratio = loadRatio(a, b, c);
        if (ratio && a.low >= 0 && b.low >= 0) good(ratio);
        const turned = signedTurn(t, false, 0);
        if (!turned) return;
        const chair = {
          depth: m.seatDepth,
          width: m.seatWidth,
          overall: m.overallWidth,
          axle: m.axle,
          diameter: m.wheelDiameter,
          near: m.hangerStub,
          far: m.legrestReach,
        };
        const f = parkedFootprint({
          chair,
          turned,
          plan: seatOnly(m.seatDepth, m.seatWidth),
          clearance: a,
          hip: b,
          along: c,
          bed: { x: a, y: b, width: m.seatWidth, length: m.seatDepth },
          head: head as never,
          facing: facing as never,
          side: bedSide as never,
        });
        const box = { x: 0, y: 0, width: 0.4, depth: 0 };
        const thing = bounded({ west: a, east: b, south: b, north: c });
        expect(leastApartOver(f, [thing])).not.toBeNaN();
        expect(mostApartOver(f, [thing])).not.toBeNaN();
        expect(leastClearance(f.nominal, box)).not.toBeNaN();
      },
    ),
    { numRuns: 800 },
  );
});
