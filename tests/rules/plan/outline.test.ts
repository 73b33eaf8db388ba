/** A room with what stands in it, drawn from measures. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { between, exactly, plusMinus, type Interval } from "../../../language/quantity/interval.js";
import {
  roomOutline,
  roomWithin,
  wallSolids,
  type DoorMeasure,
  type RoomMeasures,
  type ThingMeasure,
  type WallName,
} from "../../../rules/plan/outline.js";
import type { Compass } from "../../../rules/plan/room.js";

const ways = { E: "east", N: "north", W: "west", S: "south" } as const;
const walk = (text: string, tolerance = 0): RoomMeasures["walk"] =>
  [...text.matchAll(/([\d.]+) ([ENWS])/g)].map((m) => ({
    length: plusMinus(Number(m[1]), tolerance),
    way: ways[m[2] as "E"],
  }));
const plain = "5 E 4 N 5 W 4 S";
const ell = "5 E 2 N 2 W 2 N 3 W 4 S";
const thing = (more: Partial<ThingMeasure>): ThingMeasure => ({
  name: "chest",
  kind: "furniture",
  at: exactly(1),
  wide: exactly(0.8),
  deep: exactly(0.4),
  ...more,
});
const nominal = (text: string, t: ThingMeasure) => {
  const s = roomOutline({ walk: walk(text), things: [t] }).things[0]?.sides;
  return s && [s.west, s.south, s.east, s.north].map((i) => +i.nominal.toFixed(9));
};

describe("walls", () => {
  test("take their side of the room from the way they run, whichever way round it was walked", () => {
    expect(roomOutline({ walk: walk(plain) }).sides.map((w) => w.name)).toEqual([
      "south wall",
      "east wall",
      "north wall",
      "west wall",
    ]);
    expect(roomOutline({ walk: walk("4 N 5 E 4 S 5 W") }).sides.map((w) => w.name)).toEqual([
      "west wall",
      "north wall",
      "east wall",
      "south wall",
    ]);
  });
  test("of one side that has several are told apart by their number", () => {
    expect(roomOutline({ walk: walk(ell) }).sides.map((w) => w.name)).toEqual([
      "south wall",
      "wall 2 (east)",
      "wall 3 (north)",
      "wall 4 (east)",
      "wall 5 (north)",
      "west wall",
    ]);
  });
  test("have the outside behind them, which ends where the room begins again", () => {
    // A U: the notch between its arms is 1 m wide.
    const u = roomOutline({ walk: walk("5 E 4 N 2 W 3 S 1 W 3 N 2 W 4 S") });
    const solid = wallSolids(u.sides).find((w) => w.name === "wall 4 (west)")!.sides;
    expect([solid.west.nominal, solid.east.nominal]).toEqual([2, 3]);
  });
  test("as far in as they may be, make the smallest room, and as far out, the largest", () => {
    const room = roomOutline({ walk: walk(plain, 0.01) });
    const extent = (which: "smallest" | "largest") => {
      const p = roomWithin(room, which);
      return [p[2]!.x - p[0]!.x, p[2]!.y - p[0]!.y].map((x) => +x.toFixed(9));
    };
    expect(extent("smallest")).toEqual([4.99, 3.99]);
    expect(extent("largest")).toEqual([5.01, 4.01]);
  });
});

describe("things", () => {
  test.each([
    ["from the west and the south wall", { second: exactly(2) }, [1, 2, 1.8, 2.4]],
    ["against the north wall", { wall: "north" }, [1, 3.6, 1.8, 4]],
    ["against the south wall", { wall: "south" }, [1, 0, 1.8, 0.4]],
    ["against the east wall, its width along it", { wall: "east" }, [4.6, 1, 5, 1.8]],
    ["against the west wall", { wall: "west" }, [0, 1, 0.4, 1.8]],
    ["against a wall by its number", { wall: 2 as WallName }, [4.6, 1, 5, 1.8]],
    [
      "a bed with its head to the west lies along",
      { kind: "bed", head: "west", second: exactly(2) },
      [1, 2, 1.4, 2.8],
    ],
    [
      "a bed against a wall is as wide as it is, not as long",
      { kind: "bed", head: "north", wall: "north" },
      [1, 3.6, 1.8, 4],
    ],
  ] as const)("%s", (_, more, expected) => {
    expect(nominal(plain, thing(more as Partial<ThingMeasure>))).toEqual(expected);
  });
  test("against a wall of an L stand from that wall's own end", () => {
    expect(nominal(ell, thing({ wall: 3 }))).toEqual([4, 1.6, 4.8, 2]);
    expect(nominal(ell, thing({ wall: "north" }))).toEqual([1, 3.6, 1.8, 4]);
  });
  test("against a wall that does not exist, or of which there are two as far out, are left out", () => {
    expect(nominal(plain, thing({ wall: 9 }))).toBeUndefined();
    expect(nominal("5 E 4 N 2 W 3 S 1 W 3 N 2 W 4 S", thing({ wall: "north" }))).toBeUndefined();
  });
});

describe("doors", () => {
  const door = (more: Partial<DoorMeasure>): DoorMeasure => ({
    name: "hall",
    wall: "south",
    at: exactly(0.5),
    clear: exactly(0.8),
    ...more,
  });
  const drawn = (d: DoorMeasure) => roomOutline({ walk: walk(plain), doors: [d] }).doors[0];
  test("lie in their wall, with the hinges at the jamb that is said", () => {
    const d = drawn(door({ wall: "east", hinged: "north" }))!;
    expect([d.from, d.to, d.hinge, d.inward]).toEqual([
      { x: 5, y: 0.5 },
      { x: 5, y: 1.3 },
      { x: 5, y: 1.3 },
      { x: -1, y: 0 },
    ]);
    expect(d.past).toEqual(exactly(0));
  });
  test("past the end of their wall say by how much", () => {
    expect(drawn(door({ at: exactly(4.5) }))!.past.nominal).toBeCloseTo(0.3, 12);
    expect(drawn(door({ at: exactly(-0.1) }))!.past.nominal).toBeCloseTo(0.1, 12);
  });
  test("of which the place or the width is not known are left out", () => {
    expect(drawn(door({ at: undefined }))).toBeUndefined();
    expect(drawn(door({ clear: undefined }))).toBeUndefined();
    expect(drawn(door({ wall: undefined }))).toBeUndefined();
  });
});

describe("rooms that cannot be", () => {
  test.each([
    ["walls that cross", "5 E 4 N 3 W 6 S 2 W 2 N", "walls-cross"],
    ["a wall walked back on itself", "5 E 5 W", "walls-cross"],
    ["no walls at all", "", "nothing-enclosed"],
    ["one wall", "3 E", "nothing-enclosed"],
  ])("%s", (_, text, fault) => {
    expect(roomOutline({ walk: walk(text) }).fault?.is).toBe(fault);
  });
  test("good ones have no fault", () => {
    for (const text of [plain, ell]) expect(roomOutline({ walk: walk(text) }).fault).toBeUndefined();
  });

  const length = fc.oneof(fc.constantFrom(0, -0.1, 1e-12, 100), fc.double({ min: -1, max: 6, noNaN: true }));
  const interval = fc.tuple(length, length).map(([a, b]): Interval => between(a, b));
  const compass = fc.constantFrom<Compass>("north", "east", "south", "west");
  const wallName = fc.oneof(compass, fc.integer({ min: 0, max: 9 }));
  test("whatever is written, the outline holds numbers and nothing is thrown", () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ length: interval, way: compass }), { maxLength: 10 }),
        fc.array(
          fc.record({
            name: fc.constant("d"),
            wall: fc.option(wallName, { nil: undefined }),
            at: fc.option(interval, { nil: undefined }),
            clear: fc.option(interval, { nil: undefined }),
            hinged: fc.option(compass, { nil: undefined }),
          }),
          { maxLength: 3 },
        ),
        fc.array(
          fc.record({
            name: fc.constant("t"),
            kind: fc.constantFrom("bed", "furniture"),
            head: fc.option(compass, { nil: undefined }),
            wall: fc.option(wallName, { nil: undefined }),
            at: interval,
            second: fc.option(interval, { nil: undefined }),
            wide: interval,
            deep: interval,
          }),
          { maxLength: 4 },
        ),
        (walked, doors, things) => {
          const room = roomOutline({ walk: walked, doors, things });
          const numbers = JSON.stringify([room, roomWithin(room, "smallest"), wallSolids(room.sides)]);
          // JSON writes what is not a number as null; nothing here may be left open.
          expect(numbers).not.toContain("null");
        },
      ),
      { numRuns: 1500 },
    );
  });
});
