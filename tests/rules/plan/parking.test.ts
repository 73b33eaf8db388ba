import { describe, expect, test } from "vitest";
import { exactly, negate, scale, type Interval } from "../../../language/quantity/interval.js";
import { chairPlan, halfChord, sideWindow, type ChairMeasures } from "../../../rules/plan/chair-solids.js";
import {
  bestAngle,
  computedGap,
  contact,
  cornerGap,
  cornerGapAt,
  gapOver,
  measuredGap,
  type Along,
  type Across,
} from "../../../rules/plan/parking.js";
import {
  around,
  degree,
  degrees,
  draws,
  inch,
  inches,
  points,
  sound,
  tight,
  type Exact,
} from "./sampling.js";

type Equipment = Pick<ChairMeasures, "nearLegrest" | "farLegrest" | "nearArmrest">;
const off: Equipment = { nearLegrest: "removed", farLegrest: "removed", nearArmrest: "away" };

/** What a tape finds, and the defaults, as one record of intervals. */
const usual = {
  seatDepth: inches(18),
  seatWidth: inches(18),
  overallWidth: inches(25),
  wheelDiameter: inches(24),
  axle: inches(1),
  seatHeight: inches(19.5),
  hangerStub: inches(1.5),
  legrestReach: inches(16),
  top: inches(21),
  under: inches(0),
  clearance: inches(0.25),
  turned: degrees(30),
  "hanger-swung-out": inches(0.75),
  "legrest-outside": inches(0.5),
  "armrest-outside": inches(1.5),
  "armrest-length": inches(12),
  "armrest-socket": inches(0.5),
  "castor-front": inches(-2),
  "castor-outside": inches(0),
  "castor-height": inches(7),
  "footplate-inner": inches(-1),
  "footplate-height": inches(5),
  "brake-lever-forward": inches(2),
  "brake-lever-outside": inches(1.5),
  "hand-rim-depth": inches(1),
};
type Measures = { readonly [N in keyof typeof usual]: Interval };

const planFor = (m: Measures, equipment: Equipment) =>
  chairPlan({ ...m, ...equipment }, m, (name) => m[name as keyof Measures]);
const gapFor = (m: Measures, equipment: Equipment) => cornerGap(planFor(m, equipment), m.clearance, m.turned);

/** The same worked out afresh from corners turned and moved as points, with none of the code under test. */
function trueGap(x: Exact<Measures>, e: Equipment): number {
  const side = x.seatWidth / 2;
  const r = x.wheelDiameter / 2;
  const corners: [number, number][] = [
    [0, side],
    [x.seatDepth, side],
  ];
  const box = (x0: number, x1: number, y: number) => corners.push([x0, y], [x1, y]);
  const disc = (radius: number, y: number) => {
    // Widest chord of the disc between the heights of the surface, by looking at many heights.
    let widest = -1;
    for (let n = 0; n <= 400; n++) {
      const h = x.under + ((x.top - x.under) * n) / 400;
      const square = radius * radius - (h - r) * (h - r);
      if (square >= 0) widest = Math.max(widest, Math.sqrt(square));
    }
    if (x.under <= r && r <= x.top) widest = radius;
    if (widest >= 0) box(x.axle - widest, x.axle + widest, y);
  };
  disc(r - x["hand-rim-depth"], x.overallWidth / 2);
  disc(r, x.overallWidth / 2 - x["hand-rim-depth"]);
  if (x["castor-height"] > x.under) box(0, x.seatDepth + x["castor-front"], side + x["castor-outside"]);
  if (e.nearLegrest === "removed" || e.nearLegrest === "swung") box(0, x.seatDepth + x.hangerStub, side);
  if (e.nearLegrest === "swung")
    box(0, x.seatDepth + x.hangerStub + x["hanger-swung-out"], side + x["hanger-swung-out"]);
  if (e.nearLegrest === "in-place") box(0, x.seatDepth + x.legrestReach, side + x["legrest-outside"]);
  if (e.farLegrest === "in-place" && x["footplate-height"] > x.under)
    box(x.seatDepth, x.seatDepth + x.legrestReach, x["footplate-inner"]);
  if (e.nearArmrest === "in-place" && x.seatHeight < x.top)
    box(0, x["armrest-length"], side + x["armrest-outside"]);
  box(0, x["armrest-length"], side + x["armrest-socket"]);
  box(0, x.axle + r + x["brake-lever-forward"], side + x["brake-lever-outside"]);
  const towards = ([a, b]: [number, number]) => a * Math.sin(x.turned) + b * Math.cos(x.turned);
  const edge = x.clearance + Math.max(...corners.map(towards));
  return edge - Math.max(towards([0, side]), towards([x.seatDepth, side]));
}

const uncertain = (random: () => number, turned: Interval): Measures => {
  const a = (low: number, high: number, most = 0.5) => around(random, low * inch, high * inch, most * inch);
  return {
    seatDepth: a(15, 20),
    seatWidth: a(15, 22),
    overallWidth: a(23, 30),
    wheelDiameter: a(20, 26),
    axle: a(-1, 4),
    seatHeight: a(17, 22),
    hangerStub: a(1, 3),
    legrestReach: a(12, 18, 1),
    top: a(15, 26, 1),
    under: a(1, 8, 1),
    clearance: a(0.5, 1, 0.5),
    turned,
    "hanger-swung-out": a(0.7, 1, 0.25),
    "legrest-outside": a(0.5, 1),
    "armrest-outside": a(1, 2),
    "armrest-length": a(10, 14, 2),
    "armrest-socket": a(0.5, 1),
    "castor-front": a(-3, -1, 1),
    "castor-outside": a(-1, 1, 1),
    "castor-height": a(5, 9, 1),
    "footplate-inner": a(-2, 0, 1),
    "footplate-height": a(3, 7, 1),
    "brake-lever-forward": a(1, 3, 1),
    "brake-lever-outside": a(1, 2),
    "hand-rim-depth": a(0.75, 1.25, 0.25),
  };
};

const equipments: readonly Equipment[] = [
  off,
  { nearLegrest: "swung", farLegrest: "in-place", nearArmrest: "away" },
  { nearLegrest: "in-place", farLegrest: "in-place", nearArmrest: "in-place" },
];

describe("the gap holds every true gap within the tolerances", () => {
  test.each([
    ["turned towards the bed", 5, 55, 4],
    ["turned away from the bed", -45, -5, 4],
    ["about parallel", -3, 3, 5],
  ])("%s", (_title, low, high, tolerance) => {
    const random = draws(11);
    for (let n = 0; n < 60; n++) {
      const m = uncertain(random, around(random, low * degree, high * degree, tolerance * degree));
      const e = equipments[n % equipments.length]!;
      sound(gapFor(m, e), m, (x) => trueGap(x, e), random, 100);
    }
  });

  test("beside every corner of the chair next to the bed, and its middle line", () => {
    const random = draws(14);
    for (let n = 0; n < 40; n++) {
      const m = uncertain(random, around(random, -20 * degree, 50 * degree, 2 * degree));
      const e = equipments[n % equipments.length]!;
      const plan = planFor(m, e);
      const tip = (x: Exact<Measures>) =>
        e.nearLegrest === "in-place"
          ? x.legrestReach
          : x.hangerStub + (e.nearLegrest === "swung" ? x["hanger-swung-out"] : 0);
      const radius = scale(m.wheelDiameter, 0.5);
      const [rim, side, middle] = (["rim", "side", "middle"] as const).map((from) => ({
        from,
        y: exactly(0),
      }));
      const corners: readonly (readonly [
        Along,
        Across,
        (x: Exact<Measures>) => readonly [number, number],
      ])[] = [
        [{ from: "axle", x: radius }, rim!, (x) => [x.axle + x.wheelDiameter / 2, x.overallWidth / 2]],
        [
          { from: "axle", x: negate(radius) },
          rim!,
          (x) => [x.axle - x.wheelDiameter / 2, x.overallWidth / 2],
        ],
        [{ from: "tip", x: exactly(0) }, side!, (x) => [x.seatDepth + tip(x), x.seatWidth / 2]],
        [{ from: "rear", x: exactly(0.3) }, middle!, () => [0.3, 0]],
      ];
      for (const [along, out, at] of corners) {
        const gap = gapOver(computedGap(plan, m.clearance, along, out), m.turned);
        const truth = (x: Exact<Measures>): number => {
          const towards = (a: number, b: number) => a * Math.sin(x.turned) + b * Math.cos(x.turned);
          const seat = Math.max(towards(0, x.seatWidth / 2), towards(x.seatDepth, x.seatWidth / 2));
          return trueGap(x, e) + seat - towards(...at(x));
        };
        sound(gap, m, truth, random, 60);
      }
    }
  });

  test("beside the face that touches it is the parking clearance, however uncertain the chair", () => {
    const m = {
      ...usual,
      seatWidth: inches(17, 19),
      overallWidth: inches(25, 27),
      axle: inches(-1, 2),
      clearance: inches(0, 0.5),
      turned: degrees(0),
    };
    const rim = [
      { from: "axle", x: exactly(0) },
      { from: "rim", y: exactly(0) },
    ] as const;
    const gap = gapOver(computedGap(planFor(m, off), m.clearance, ...rim), m.turned);
    expect(gap.low).toBeCloseTo(0, 9);
    expect(gap.high).toBeCloseTo(0.5 * inch, 9);
  });

  test("beside the hip as well, measured or computed", () => {
    const random = draws(12);
    for (let n = 0; n < 40; n++) {
      const m = {
        ...uncertain(random, around(random, -10 * degree, 50 * degree, 5 * degree)),
        hip: around(random, 5 * inch, 11 * inch, inch),
      };
      const plan = planFor(m, off);
      const hips = gapOver(computedGap(plan, m.clearance, { from: "rear", x: m.hip }), m.turned);
      const beside = (x: Exact<typeof m>, corner: number) =>
        corner + Math.max(0, x.seatDepth * Math.sin(x.turned)) - x.hip * Math.sin(x.turned);
      sound(hips, m, (x) => beside(x, trueGap(x, off)), random, 60);
      const measured = { ...m, gap: around(random, inch, 4 * inch, 0.5 * inch) };
      const taped = gapOver(measuredGap(measured.gap, m.seatDepth, { from: "rear", x: m.hip }), m.turned);
      tight(
        taped,
        sound(taped, measured, (x) => beside(x, x.gap), random, 4000),
      );
    }
  });
});

test("the gap is not needlessly wide: at most a quarter wider than what the inputs' ends give", () => {
  const random = draws(13);
  // All lengths have their ends where the gap has its own, so few inputs are let vary at a time: their corners can be tried out.
  const names = [
    "seatDepth",
    "seatWidth",
    "overallWidth",
    "wheelDiameter",
    "axle",
    "hangerStub",
    "clearance",
  ] as const;
  for (let n = 0; n < 30; n++) {
    const full = uncertain(random, around(random, 5 * degree, 50 * degree, 5 * degree));
    const m = Object.fromEntries(
      Object.entries(full).map(([k, i]) => [
        k,
        k === "turned" || names.includes(k as never) ? i : exactly(i.nominal),
      ]),
    ) as unknown as Measures;
    const computed = gapFor(m, off);
    let found = sound(computed, m, (x) => trueGap(x, off), random, 1500);
    // The angle's extremes lie inside, so it is walked while the lengths stand at their ends.
    for (const end of ["low", "high"] as const)
      for (let k = 0; k < 64; k++)
        for (let step = 0; step <= 20; step++) {
          const x = Object.fromEntries(
            Object.entries(m).map(([name, i], j) => [
              name,
              (k >> (j % 6)) & 1 ? i[end] : i[end === "low" ? "high" : "low"],
            ]),
          ) as Exact<Measures>;
          const y = trueGap(
            { ...x, turned: m.turned.low + ((m.turned.high - m.turned.low) * step) / 20 },
            off,
          );
          found = { low: Math.min(found.low, y), nominal: 0, high: Math.max(found.high, y) };
        }
    // The sure ends: everything that widens the gap, and everything that narrows it.
    for (const wide of [true, false])
      for (let step = 0; step <= 40; step++) {
        const x = Object.fromEntries(
          Object.entries(m).map(([name, i]) => [
            name,
            (name === "seatDepth" || name === "seatWidth") === wide ? i.low : i.high,
          ]),
        ) as Exact<Measures>;
        const y = trueGap({ ...x, turned: m.turned.low + ((m.turned.high - m.turned.low) * step) / 40 }, off);
        found = { low: Math.min(found.low, y), nominal: 0, high: Math.max(found.high, y) };
      }
    tight(computed, found);
  }
});

describe("what touches the bed first", () => {
  const touches = (turned: number, e: Equipment, more: Partial<Measures> = {}) =>
    contact(planFor({ ...usual, ...more }, e), degrees(turned)).first;

  test("parallel to the bed the wheel's hand rim decides", () => {
    expect(touches(0, off).part).toBe("hand rim");
    const gap = gapFor({ ...usual, turned: degrees(0) }, off);
    expect(gap.nominal / inch).toBeCloseTo((25 - 18) / 2 + 0.25, 9);
  });

  test("turning the chair brings the seat's front corner closer and takes the hips away", () => {
    const plan = planFor(usual, off);
    const corner = [0, 10, 20, 30].map((t) => cornerGapAt(plan, usual.clearance, t * degree));
    for (let n = 1; n < corner.length; n++) expect(corner[n]).toBeLessThan(corner[n - 1]!);
    const hips = [0, 10, 20, 30, 45].map((t) =>
      computedGap(plan, usual.clearance, { from: "rear", x: inches(5) }).at(t * degree),
    );
    for (let n = 1; n < hips.length; n++) expect(hips[n]).toBeGreaterThan(hips[n - 1]!);
  });

  test("turned far enough, what is left of the leg rest decides", () => {
    expect(touches(45, off).kind).toBe("hanger");
    expect(touches(45, { ...off, nearLegrest: "swung" }).part).toBe("hanger, swung away");
  });

  test("lifting the swung-away hanger off brings the chair about an inch closer (common practice)", () => {
    for (const t of [30, 40, 45]) {
      const m = { ...usual, turned: degrees(t) };
      const closer = gapFor(m, { ...off, nearLegrest: "swung" }).nominal - gapFor(m, off).nominal;
      expect(closer / inch).toBeGreaterThan(0.6);
      expect(closer / inch).toBeLessThan(1.4);
    }
  });

  test("a leg rest left in place keeps the chair off by more than all else", () => {
    const m = { ...usual, turned: degrees(30) };
    const on = gapFor(m, { ...off, nearLegrest: "in-place" }).nominal / inch;
    expect(touches(30, { ...off, nearLegrest: "in-place" }).kind).toBe("legrest");
    expect(on - gapFor(m, off).nominal / inch).toBeGreaterThan(5);
  });

  test("the far footplate meets the bed when the chair is turned a long way, unless it goes under", () => {
    const far: Equipment = { ...off, farLegrest: "in-place" };
    expect(touches(55, far).kind).toBe("footplate");
    expect(touches(55, far, { under: inches(8) }).kind).not.toBe("footplate");
  });

  test("an armrest in place counts only beside a bed that is higher than the seat", () => {
    const thin = { overallWidth: inches(20), top: inches(22) };
    expect(touches(0, { ...off, nearArmrest: "in-place" }, thin).kind).toBe("armrest");
    expect(touches(0, { ...off, nearArmrest: "in-place" }, { ...thin, top: inches(18) }).part).not.toBe(
      "armrest",
    );
  });

  test("a castor whose height is doubtful widens the gap to both sides of the doubt", () => {
    const m = {
      ...usual,
      turned: degrees(0),
      overallWidth: inches(18),
      under: inches(6),
      "castor-outside": inches(2),
      "brake-lever-outside": inches(0),
      "armrest-socket": inches(0),
    };
    const gap = gapFor({ ...m, "castor-height": inches(5, 7) }, off);
    expect(gap.low / inch).toBeCloseTo(0.25, 9);
    expect(gap.high / inch).toBeCloseTo(2.25, 9);
  });
});

describe("the wheel in plan", () => {
  test("is as long as its chord within the bed's heights", () => {
    expect(halfChord(12, 12, 0, 24)).toBe(12);
    expect(halfChord(12, 12, 0, 6)).toBeCloseTo(Math.sqrt(144 - 36), 12);
    expect(halfChord(12, 12, 20, 30)).toBeCloseTo(Math.sqrt(144 - 64), 12);
    expect(halfChord(12, 12, 25, 30)).toBe(-1);
  });

  test("leaves the side window in front of it, all of the seat where it ends below the rail", () => {
    const at = (h: number) => sideWindow(inches(18), inches(1), inches(24), inches(h));
    expect(at(20).window.nominal / inch).toBeCloseTo(18 - (1 + Math.sqrt(144 - 64)), 9);
    expect(at(25)).toMatchObject({ wheel: "below", window: { nominal: 18 * inch } });
  });

  test("the side window holds every true one", () => {
    const random = draws(14);
    for (let n = 0; n < 40; n++) {
      const m = {
        depth: around(random, 15 * inch, 20 * inch, 0.5 * inch),
        axle: around(random, -inch, 3 * inch, 0.5 * inch),
        diameter: around(random, 20 * inch, 26 * inch, 0.5 * inch),
        height: around(random, 16 * inch, 26 * inch, 0.5 * inch),
      };
      const window = sideWindow(m.depth, m.axle, m.diameter, m.height).window;
      const found = sound(
        window,
        m,
        (x) => {
          const r = x.diameter / 2;
          if (x.height > x.diameter) return x.depth;
          return Math.min(x.depth, Math.max(0, x.depth - x.axle - Math.sqrt(r * r - (x.height - r) ** 2)));
        },
        random,
        600,
      );
      // Where the wheel's top is about as high as the rail the window jumps; draws seldom hit both sides of it.
      if (m.height.low > m.diameter.high || m.height.high < m.diameter.low) tight(window, found);
    }
  });
});

describe("the best angle", () => {
  test("of angles equally good the smallest is taken, and the answer repeats", () => {
    const flat = bestAngle(() => 1, degrees(0, 60));
    expect(flat.angle).toBe(0);
    const nearly = bestAngle((t) => (t > 20 * degree ? 1 : 1.005), degrees(0, 60), { tie: 0.00635 });
    expect(nearly.angle).toBe(0);
  });
  test("is found at a kink", () => {
    const kink = bestAngle((t) => Math.abs(t - 0.4321), degrees(0, 60), { refine: true });
    expect(kink.angle).toBeCloseTo(0.4321, 9);
  });
});

test("exact inputs give one exact gap", () => {
  const m = points<Measures>(
    Object.fromEntries(Object.entries(usual).map(([k, i]) => [k, i.nominal])) as Exact<Measures>,
  );
  const gap = gapFor(m, off);
  expect(gap.high - gap.low).toBeLessThan(1e-12);
  expect(gap.nominal).toBeCloseTo(
    trueGap(Object.fromEntries(Object.entries(m).map(([k, i]) => [k, i.nominal])) as Exact<Measures>, off),
    12,
  );
});
