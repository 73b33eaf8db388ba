/** What is around a bed and a parked chair, over tolerances: every true value lies inside, and nothing is needlessly wide. */
import fc from "fast-check";
import polylabel from "polylabel";
import { describe, expect, test } from "vitest";
import { between, exactly, plusMinus, type Interval } from "../../../language/quantity/interval.js";
import { boxDistance } from "../../../rules/plan/circle.js";
import { roomOutline, type RoomOutline, type ThingMeasure } from "../../../rules/plan/outline.js";
import { parkedFootprint, type ParkedInRoom } from "../../../rules/plan/footprint.js";
import { seatOnly } from "./seat-plan.js";
import { standingPlace } from "../../../rules/plan/standing-place.js";
import { clearance, type Compass } from "../../../rules/plan/room.js";
import { besideBed } from "../../../rules/quantities/room-side.js";
import { deepestOverlap, furthestOut } from "../../../rules/quantities/room-faults.js";
import { turningCircle } from "../../../rules/quantities/turning-circle.js";
import { around, draws, pick, sound, tight, type Exact } from "./sampling.js";

type Furnished = ReturnType<typeof furnished>;
/** A room with a bed, head north, and a chest that both stand free, and a door in the south wall. */
function furnished(random: () => number) {
  return {
    wide: around(random, 3.8, 4.4, 0.01),
    deep: around(random, 3.4, 3.8, 0.01),
    bedX: around(random, 0.9, 1.1, 0.02),
    bedY: around(random, 1.1, 1.2, 0.02),
    bedW: around(random, 0.9, 1, 0.01),
    bedL: around(random, 2, 2.05, 0.01),
    chestX: around(random, 2.9, 3, 0.02),
    chestY: around(random, 2.2, 2.4, 0.02),
    chestW: around(random, 0.4, 0.6, 0.01),
    chestD: around(random, 0.4, 0.6, 0.01),
  };
}

function outline(i: Furnished): RoomOutline {
  const things: ThingMeasure[] = [
    { name: "bed", kind: "bed", head: "north", at: i.bedX, second: i.bedY, wide: i.bedW, deep: i.bedL },
    { name: "chest", kind: "furniture", at: i.chestX, second: i.chestY, wide: i.chestW, deep: i.chestD },
  ];
  return roomOutline({
    walk: [
      { length: i.wide, way: "east" },
      { length: i.deep, way: "north" },
      { length: i.wide, way: "west" },
      { length: i.deep, way: "south" },
    ],
    doors: [{ name: "hall", wall: "south", at: exactly(0.3), clear: exactly(0.8) }],
    things,
  });
}
const strip: Interval = exactly(1.2);

describe("clear floor beside the bed", () => {
  test("is what a hand finds: the chest takes from the side only where no strip as long is clear of it", () => {
    const fixed = (chestY: number) =>
      outline({
        ...furnished(draws(1)),
        wide: exactly(4),
        bedX: exactly(1),
        bedY: exactly(1.1),
        bedW: exactly(0.9),
        bedL: exactly(2),
        chestX: exactly(3),
        chestY: exactly(chestY),
        chestW: exactly(0.5),
        chestD: exactly(0.5),
      });
    // From the foot at 1.1 to the chest at 2.4 are 1.3 m: the strip of 1.2 m ends at the east wall.
    expect(besideBed(fixed(2.4), "bed", "left", strip)).toEqual({
      value: { low: expect.closeTo(2.1, 9), nominal: expect.closeTo(2.1, 9), high: expect.closeTo(2.1, 9) },
      against: "east wall",
    });
    // From the foot to a chest at 2.2 are 1.1 m, behind it 0.4: the strip ends at the chest.
    expect(besideBed(fixed(2.2), "bed", "left", strip)!.against).toBe("chest");
    expect(besideBed(fixed(2.2), "bed", "left", strip)!.value.nominal).toBeCloseTo(1.1, 9);
    expect(besideBed(fixed(2.2), "bed", "right", strip)!.value.nominal).toBeCloseTo(1, 9);
  });
  test("1,500 draws on either side", () => {
    const random = draws(91);
    for (let n = 0; n < 15; n++) {
      const i = furnished(random);
      // The chest beside the middle of the bed, so that no strip passes it.
      const j = { ...i, chestY: around(random, 1.9, 2, 0.02) };
      const room = outline(j);
      const left = besideBed(room, "bed", "left", strip)!.value;
      const right = besideBed(room, "bed", "right", strip)!.value;
      tight(
        left,
        sound(left, j, (x) => x.chestX - x.bedX - x.bedW, random, 60),
      );
      tight(
        right,
        sound(right, j, (x) => x.bedX, random, 60),
      );
    }
  });
});

describe("the largest circle that the chair can reach", () => {
  /** Another program's largest circle in the exact room, furniture as holes; none of it touches a wall. */
  const truth = (x: Exact<Furnished>): number => {
    const box = (w: number, s: number, a: number, b: number) => [
      [w, s],
      [w + a, s],
      [w + a, s + b],
      [w, s + b],
      [w, s],
    ];
    const found = polylabel(
      [
        box(0, 0, x.wide, x.deep),
        box(x.bedX, x.bedY, x.bedW, x.bedL),
        box(x.chestX, x.chestY, x.chestW, x.chestD),
      ],
      0.0005,
    );
    return 2 * found.distance;
  };
  test("1,000 draws", () => {
    const random = draws(92);
    for (let n = 0; n < 10; n++) {
      const i = furnished(random);
      const value = turningCircle(outline(i), plusMinus(0.6, 0.005));
      const found = sound(
        { ...value, low: value.low - 0.001, high: value.high + 0.001 },
        i,
        truth,
        random,
        100,
      );
      // Four millimetres are the search's own precision, at both ends.
      expect(value.high - value.low).toBeLessThanOrEqual(1.25 * (found.high - found.low) + 0.008);
    }
  }, 60_000);
  test("is nothing for a chair that nothing lets in, and stays before what is too narrow for it", () => {
    const room = outline(furnished(draws(1)));
    expect(turningCircle(room, exactly(5))).toEqual(exactly(0));
    const all = turningCircle(room, exactly(0.6)).nominal;
    expect(turningCircle(room, exactly(1.05)).nominal).toBeLessThanOrEqual(all);
  });
});

describe("things that cannot stand so", () => {
  const at = (x: Partial<Record<keyof Furnished, Interval>>) => outline({ ...furnished(draws(2)), ...x });
  test("outside: by how much, and which", () => {
    const room = at({ wide: exactly(4), chestX: exactly(3.7), chestW: exactly(0.5) });
    expect(furthestOut(room)!.name).toBe("chest");
    expect(furthestOut(room)!.value.nominal).toBeCloseTo(0.2, 9);
    expect(furthestOut(at({}))!.value.high).toBeLessThan(0);
  });
  test("in each other: the least shift that parts them", () => {
    const room = at({
      bedX: exactly(1),
      bedW: exactly(1),
      chestX: exactly(1.9),
      chestW: exactly(0.5),
    });
    expect(deepestOverlap(room.things)!.names).toBe("bed and chest");
    expect(deepestOverlap(room.things)!.value.nominal).toBeCloseTo(0.1, 9);
    expect(deepestOverlap(at({}).things)!.value.high).toBeLessThan(0);
  });
  test("1,000 draws of an overlap", () => {
    const random = draws(93);
    for (let n = 0; n < 20; n++) {
      const i = { ...furnished(random), chestX: around(random, 1.8, 1.88, 0.01) };
      const value = deepestOverlap(outline(i).things)!.value;
      const truth = (x: Exact<Furnished>): number => x.bedX + x.bedW - x.chestX;
      tight(value, sound(value, i, truth, random, 60));
    }
  });
});

describe("where a helper stands by the parked chair", () => {
  const parked = (random: () => number) => ({
    turned: around(random, 0.3, 0.5, 0.05),
    gap: around(random, 0.03, 0.1, 0.01),
    hip: around(random, 0.13, 0.2, 0.03),
    along: around(random, 0.85, 1, 0.01),
  });
  const chair = {
    depth: exactly(0.43),
    width: exactly(0.45),
    overall: exactly(0.65),
    axle: exactly(0.02),
    diameter: exactly(0.6),
    near: exactly(0.03),
    far: exactly(0.3),
  };
  type Parked = ReturnType<typeof parked>;
  const footprint = (i: Furnished, p: Parked) => {
    const at: ParkedInRoom = {
      chair,
      ...p,
      plan: seatOnly(chair.depth, chair.width),
      clearance: p.gap,
      bed: { x: i.bedX, y: i.bedY, width: i.bedW, length: i.bedL },
      head: "north",
      facing: "head",
      side: "left",
    };
    return parkedFootprint(at);
  };
  test("the circle touches nothing, stands on the side that is asked for and within reach", () => {
    const random = draws(94);
    const i = furnished(random);
    const p = parked(random);
    const room = outline(i);
    const chairAt = footprint(i, p);
    for (const place of ["in-front", "behind", "at-side"] as const) {
      const found = standingPlace(room, chairAt, place, p.hip.nominal, 0.9)!;
      const { middle, across } = found;
      for (const o of [...chairAt.nominal, ...room.things.map((t) => t.outline)])
        expect(clearance([middle], o)).toBeGreaterThanOrEqual(across.nominal / 2 - 1e-6);
      expect(across.low).toBeLessThanOrEqual(across.nominal);
      expect(across.high).toBeGreaterThanOrEqual(across.nominal);
    }
    expect(standingPlace(room, chairAt, "at-side", p.hip.nominal, 0.05)).toBeUndefined();
  });
  test("held there, 1,000 draws leave no more and no less around it", () => {
    const random = draws(95);
    for (let n = 0; n < 10; n++) {
      const i = furnished(random);
      const p = parked(random);
      const found = standingPlace(outline(i), footprint(i, p), "in-front", p.hip.nominal, 0.9)!;
      const { x, y } = found.middle;
      for (let k = 0; k < 100; k++) {
        const a = pick(i, random, k % 2 === 0);
        const b = pick(p, random, k % 2 === 0);
        const asPoints = (o: Readonly<Record<string, number>>) =>
          Object.fromEntries(Object.entries(o).map(([name, v]) => [name, exactly(v)]));
        const there = footprint(asPoints(a) as Furnished, asPoints(b) as Parked);
        const left = Math.min(
          x,
          a.wide - x,
          y,
          a.deep - y,
          boxDistance(a.bedX, a.bedX + a.bedW, a.bedY, a.bedY + a.bedL)(x, y),
          boxDistance(a.chestX, a.chestX + a.chestW, a.chestY, a.chestY + a.chestD)(x, y),
          ...there.nominal.map((o) => clearance([{ x, y }], o)),
        );
        expect(2 * Math.max(0, left)).toBeGreaterThanOrEqual(found.across.low - 1e-9);
        expect(2 * left).toBeLessThanOrEqual(found.across.high + 1e-9);
      }
    }
  });
});

describe("whatever is written of a room", () => {
  const length = fc.oneof(fc.constantFrom(0, -0.1, 1e-12, 60), fc.double({ min: -1, max: 6, noNaN: true }));
  const interval = fc.tuple(length, length).map(([a, b]): Interval => between(a, b));
  const compass = fc.constantFrom<Compass>("north", "east", "south", "west");
  const thing = fc.record({
    name: fc.constantFrom("bed", "chest"),
    kind: fc.constantFrom("bed", "furniture"),
    head: fc.option(compass, { nil: undefined }),
    wall: fc.option(compass, { nil: undefined }),
    at: interval,
    second: fc.option(interval, { nil: undefined }),
    wide: interval,
    deep: interval,
  });
  test("what is said of it are numbers in order, or nothing, and never an exception", () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ length: interval, way: compass }), { maxLength: 8 }),
        fc.array(thing, { maxLength: 3 }),
        interval,
        interval,
        compass,
        (walk, things, at, clear, wall) => {
          const room = roomOutline({ walk, things, doors: [{ name: "hall", wall, at, clear }] });
          const all = [
            turningCircle(room, clear),
            furthestOut(room)?.value,
            deepestOverlap(room.things)?.value,
            ...(["left", "right"] as const).map((side) => besideBed(room, "bed", side, strip)?.value),
          ];
          for (const i of all) {
            if (!i) continue;
            for (const x of [i.low, i.nominal, i.high]) expect(Number.isFinite(x)).toBe(true);
            expect(i.low).toBeLessThanOrEqual(i.nominal);
            expect(i.nominal).toBeLessThanOrEqual(i.high);
          }
        },
      ),
      { numRuns: 150 },
    );
  }, 60_000);
});
