/** Ways through rooms of which one thing alone is uncertain, beside the ways through the rooms that may be. */
import { describe, expect, test } from "vitest";
import { exactly, plusMinus, type Interval } from "../../../../language/quantity/interval.js";
import { chairOutlines, halfWay, type ChairOutline } from "../../../../rules/plan/footprint.js";
import { roomOutline, type ThingMeasure } from "../../../../rules/plan/outline.js";
import type { Plan } from "../../../../rules/plan/parking.js";
import { approaches } from "../../../../rules/plan/way/approach.js";
import { doorOff, throughDoor } from "../../../../rules/plan/way/through-door.js";
import { widestWay } from "../../../../rules/plan/way/way.js";
import { problemsOf, wayWithin } from "../../../../rules/plan/way/within.js";

const chair: ChairOutline = {
  depth: exactly(0.46),
  width: exactly(0.46),
  overall: exactly(0.62),
  axle: exactly(0),
  diameter: exactly(0.6),
  near: exactly(0.3),
  far: exactly(0.3),
};
const from = (name: "rear" | "front" | "tip", x = 0) => ({ from: name, x: exactly(x) }) as const;
const always = { sure: true, nominal: true, uses: [] };
const plan: Plan = {
  depth: chair.depth,
  axle: chair.axle,
  tip: exactly(0.3),
  farTip: exactly(0.3),
  half: exactly(0.23),
  wide: exactly(0.31),
  solids: [
    {
      kind: "seat",
      part: "seat",
      front: from("tip"),
      rear: from("rear"),
      out: { from: "side", y: exactly(0) },
      ...always,
    },
    {
      kind: "wheel",
      part: "rim",
      front: { from: "axle", x: exactly(0.3) },
      rear: { from: "axle", x: exactly(-0.3) },
      out: { from: "rim", y: exactly(0) },
      ...always,
    },
  ],
};

interface Uncertain {
  readonly at: Interval;
  readonly clear: Interval;
  readonly turned: Interval;
  readonly clearance: Interval;
  readonly along: Interval;
  /** Where a chest stands, if one does: its west and south sides, its size. */
  readonly chest?: readonly [Interval, Interval, number, number];
}
const usual: Uncertain = {
  at: exactly(0.5),
  clear: exactly(0.8),
  turned: exactly(0.3),
  clearance: exactly(0.05),
  along: exactly(1),
};

const wall = (length: number, way: "east" | "north" | "west" | "south") => ({ length: exactly(length), way });
/** A room of 5 by 5 m; the bed's head at its north wall, 2 m from the west one, the chair on its east side. */
function roomFor(u: Uncertain) {
  const bed: ThingMeasure = {
    name: "bed",
    kind: "bed",
    head: "north",
    at: exactly(2),
    second: exactly(3),
    wide: exactly(1),
    deep: exactly(2),
  };
  const [x, y, wide, deep] = u.chest ?? [];
  const chest = x &&
    y && { name: "chest", kind: "furniture", at: x, second: y, wide: exactly(wide!), deep: exactly(deep!) };
  return roomOutline({
    walk: [wall(5, "east"), wall(5, "north"), wall(5, "west"), wall(5, "south")],
    doors: [{ name: "hall", wall: "south", at: u.at, clear: u.clear, opens: "outward" }],
    things: chest ? [bed, chest] : [bed],
  });
}
function approachingOf(u: Uncertain) {
  const room = roomFor(u);
  const bed = room.things.find((t) => t.name === "bed")!;
  const origin = halfWay(chair);
  const parking = {
    plan,
    clearance: u.clearance,
    diameter: chair.diameter,
    origin,
    turned: u.turned,
    hip: exactly(0.1),
    along: u.along,
    bed,
    up: { x: 0, y: 1 },
    outward: { x: 1, y: 0 },
    ahead: { x: 0, y: 1 },
  };
  const all = approaches(parking);
  const { box } = all[all.length >> 1]!;
  const middle = (r: { low: number; high: number }) => (r.low + r.high) / 2;
  const goal = { x: middle(box.x), y: middle(box.y), heading: middle(box.heading) };
  const back = 0.15;
  const parked = {
    x: goal.x + back * Math.cos(goal.heading),
    y: goal.y + back * Math.sin(goal.heading),
    heading: goal.heading,
  };
  const to = {
    chair: chairOutlines(chair, true, origin),
    parked,
    approaches: all,
    bed: "bed",
    outward: parking.outward,
    side: bed.sides.east,
    bedLeft: true,
  };
  return { room, door: room.doors[0]!, to, goal };
}
const bounds = (u: Uncertain) => {
  const { room, door, to } = approachingOf(u);
  return wayWithin(problemsOf(room, door, to), door, to);
};
/** For exact values. */
function truth(u: Uncertain) {
  const { room, door, to } = approachingOf(u);
  const nominal = to.chair.nominal;
  return widestWay(throughDoor(room, door, { chair: nominal, nominal, parked: to.parked }, "nominal"), {
    gap: 0.002,
  });
}
type Key = "at" | "clear" | "turned" | "clearance" | "along";
const at = (u: Uncertain, key: Key, share: number): Uncertain => ({
  ...u,
  [key]: exactly(u[key].low + share * (u[key].high - u[key].low)),
});

const cases: readonly (readonly [string, Uncertain, Key, number])[] = [
  [
    "the door's place, tightest at the door",
    { ...usual, clearance: exactly(0.2), at: plusMinus(0.5, 0.04) },
    "at",
    0.02,
  ],
  [
    "the door's place, tightest between chest and bed",
    {
      ...usual,
      clearance: exactly(0.2),
      clear: exactly(1.2),
      at: plusMinus(0.8, 0.04),
      chest: [exactly(3.8), exactly(1.5), 1.2, 1.7],
    },
    "at",
    0.06,
  ],
  [
    "the door's place, a chest just inside",
    {
      ...usual,
      clearance: exactly(0.2),
      at: plusMinus(0.5, 0.04),
      chest: [exactly(1.3), exactly(0), 0.4, 1.6],
    },
    "at",
    0.06,
  ],
  ["the door's width", { ...usual, clearance: exactly(0.2), clear: plusMinus(0.8, 0.04) }, "clear", 0.02],
  [
    "what is left to the bed",
    { ...usual, clearance: { low: 0, nominal: 0.02, high: 0.04 }, turned: exactly(0) },
    "clearance",
    0.02,
  ],
  ["the angle", { ...usual, clearance: exactly(0.01), turned: plusMinus(0.1, 0.1) }, "turned", 0.02],
  [
    "the angle, a chest across",
    { ...usual, turned: plusMinus(0.3, 0.05), chest: [exactly(3.95), exactly(3.5), 0.5, 0.5] },
    "turned",
    0.03,
  ],
  [
    "the place along the bed",
    { ...usual, along: plusMinus(1, 0.05), chest: [exactly(3.2), exactly(4.55), 1, 0.4] },
    "along",
    0.03,
  ],
];

describe("where one thing alone is uncertain", () => {
  test.each(cases)(
    "%s: every way there may be lies inside, and little else",
    { timeout: 60_000 },
    (_title, u, key, more) => {
      const { low, high } = bounds(u);
      let [least, most] = [Infinity, -Infinity];
      for (let n = 0; n <= 4; n++) {
        const found = truth(at(u, key, n / 4));
        expect(found.high).toBeGreaterThanOrEqual(low - 1e-9);
        expect(found.low).toBeLessThanOrEqual(high + 1e-9);
        [least, most] = [Math.min(least, found.high), Math.max(most, found.low)];
      }
      expect(least - low).toBeLessThanOrEqual(more);
      expect(high - most).toBeLessThanOrEqual(more);
    },
  );

  test("nothing uncertain is bounded to the search's centimetre on both sides", () => {
    const { low, high } = bounds(usual);
    expect(high - low).toBeLessThanOrEqual(0.02 + 1e-9);
    const found = truth(usual);
    expect(found.high).toBeGreaterThanOrEqual(low - 1e-9);
    expect(found.low).toBeLessThanOrEqual(high + 1e-9);
  });

  test("with the room held the jambs move, with the door held all else does", () => {
    const u = { ...usual, at: plusMinus(0.5, 0.04), clear: plusMinus(0.8, 0.02) };
    const { door } = approachingOf(u);
    expect(doorOff(door, "room")).toEqual({ x: 0, y: 0 });
    const off = doorOff(door, "door");
    expect(off.x).toBeCloseTo(0.05, 9);
    expect(off.y).toBe(0);
  });
});
