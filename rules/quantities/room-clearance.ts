/** `park.room-clearance`: what is left between the parked chair and what else stands in the room. */
import { exactly, width, type Interval } from "../../language/quantity/interval.js";
import type { Thing, Value } from "../../language/model/types.js";
import { isQuantity } from "../../language/model/types.js";
import {
  bedAxes,
  bedOutline,
  clearance,
  rectangle,
  type Compass,
  type Outline,
  type Point,
} from "../plan/room.js";
import type { Of, Outcome } from "../quantity.js";
import type { Scene } from "../scene.js";
import { derived, absent, choiceOf, partsOf, without, type Bag } from "./inputs.js";
import { gapCorner } from "./gap.js";
import { parkingInputs } from "./parked.js";

type Inputs = Record<string, unknown>;

/** Pairs written `a by b` or `a, b`, each as its own input. */
function pair(of: Of, thing: Thing, key: string, name: string, words: string, second = true): Inputs {
  const parts = partsOf(thing, key);
  if (!parts) return { [`${name} 1`]: absent(thing, words, key) };
  return {
    [`${name} 1`]: of.written(parts, "first", words),
    ...(second && { [`${name} 2`]: of.written(parts, "second", words) }),
  };
}

function inputs(s: Scene, of: Of): Inputs {
  const parking = parkingInputs(s, of);
  if ("none" in parking) return parking;
  if (!s.room) return { none: absent(s.transfer, "the room in which it is done", "room") };
  const others = s.placed.filter((p) => p.thing !== s.surface);
  if (others.length === 0) return { none: without("nothing else is placed in the room") };
  const bed = s.placed.find((p) => p.thing === s.surface);
  if (!bed) return { none: absent(s.room, "where the bed stands in the room", "place") };
  const head = choiceOf(bed.place, "head");
  const facing = s.value("facing").value;
  const side = s.value("bed-side").value;
  const all: Inputs = {
    ...parking,
    gap: of(gapCorner),
    hip: of.default("hip-from-seat-rear"),
    scoot: s.parked.scooted ? of.default("scoot-forward") : undefined,
    along: of.transfer("along", "the hip joint's place along the bed before sliding (along)"),
    head: head ?? absent(bed.place, "the side of the room to which the bed's head points", "head"),
    facing:
      typeof facing === "string"
        ? facing
        : absent(s.transfer, "which end of the bed the chair faces", "facing"),
    side:
      typeof side === "string"
        ? side
        : absent(s.transfer, "on which side of the bed the chair stands", "bed-side"),
    ...pair(of, bed.place, "at", "bed at", "where the bed stands in the room"),
    ...pair(of, bed.thing, "size", "bed size", "the size of the bed"),
    placed: s.placed,
    surface: s.surface,
  };
  const walled = others.some((p) => choiceOf(p.place, "wall"));
  if (walled) Object.assign(all, walk(s.room, of));
  others.forEach((p, n) => {
    const wall = choiceOf(p.place, "wall");
    Object.assign(all, pair(of, p.place, "at", `at ${n}`, `where ${p.thing.name} stands in the room`, !wall));
    Object.assign(all, pair(of, p.thing, "size", `size ${n}`, `the size of ${p.thing.name}`));
  });
  return all;
}

const wallViews = new WeakMap<object, Thing>();
/** Lengths of the walls as walked, each an input. */
function walk(room: Thing, of: Of): Inputs {
  const walls = room.values["walk"];
  if (!Array.isArray(walls)) return { walls: absent(room, "the walls of the room (walk)", "walk") };
  const all: Inputs = { ways: walls };
  walls.forEach((w: Value, n) => {
    if (typeof w !== "object" || w === null || Array.isArray(w) || isQuantity(w) || !("length" in w)) return;
    let view = wallViews.get(w);
    if (!view) {
      view = { ...room, values: w as Thing["values"], inner: {}, placeOf: () => room.placeOf("walk") };
      wallViews.set(w, view);
    }
    all[`wall ${n}`] = of.written(view, "length", `wall ${n + 1}`);
  });
  return all;
}

interface Handed {
  readonly [name: string]: unknown;
  readonly gap: Interval;
  readonly turn: Interval;
  readonly away: boolean;
  readonly equipment: string;
  readonly bag: Bag;
  readonly placed: Scene["placed"];
  readonly surface: Thing;
  readonly ways?: readonly Value[];
}

/** How far a length may lie from its nominal value. */
const off = (i: Interval | undefined): number => (i ? Math.max(i.high - i.nominal, i.nominal - i.low) : 0);

/** North, south, east and west ends of the room as walked from the south-west corner, and how far they may be off. */
function extent(i: Handed): { west: number; east: number; south: number; north: number; off: number } {
  const box = { west: 0, east: 0, south: 0, north: 0, off: 0 };
  let x = 0;
  let y = 0;
  (i.ways ?? []).forEach((w, n) => {
    const length = i[`wall ${n}`] as Interval | undefined;
    if (!length) return;
    const way = typeof w === "object" && w !== null && "way" in w ? w.way : undefined;
    if (way === "east") x += length.nominal;
    if (way === "west") x -= length.nominal;
    if (way === "north") y += length.nominal;
    if (way === "south") y -= length.nominal;
    box.off = Math.max(box.off, off(length));
    box.west = Math.min(box.west, x);
    box.east = Math.max(box.east, x);
    box.south = Math.min(box.south, y);
    box.north = Math.max(box.north, y);
  });
  return box;
}

/** What stands in the room besides the bed, each with how far any point of it may be from where it is drawn. */
function furniture(i: Handed): { name: string; outline: Outline; off: number }[] {
  const box = extent(i);
  return i.placed
    .filter((p) => p.thing !== i.surface)
    .map((p, n) => {
      const part = (name: string) => i[`${name} ${n} 1`] as Interval;
      const second = (name: string) => i[`${name} ${n} 2`] as Interval | undefined;
      const at = part("at");
      const wide = part("size");
      const deep = second("size") ?? exactly(0);
      const loose = Math.hypot(off(at) + off(wide), (second("at") ? off(second("at")) : 0) + off(deep));
      const across = (x: number, y: number) => rectangle(x, y, wide.nominal, deep.nominal);
      const beside = (x: number, y: number) => rectangle(x, y, deep.nominal, wide.nominal);
      switch (choiceOf(p.place, "wall")) {
        case "north":
          return {
            name: p.thing.name,
            outline: across(at.nominal, box.north - deep.nominal),
            off: loose + box.off,
          };
        case "south":
          return { name: p.thing.name, outline: across(at.nominal, box.south), off: loose };
        case "east":
          return {
            name: p.thing.name,
            outline: beside(box.east - deep.nominal, at.nominal),
            off: loose + box.off,
          };
        case "west":
          return { name: p.thing.name, outline: beside(box.west, at.nominal), off: loose };
        default:
          return { name: p.thing.name, outline: across(at.nominal, second("at")?.nominal ?? 0), off: loose };
      }
    });
}

/** The parked chair as convex outlines in the room: wheels and frame, seat, and what stands out in front on each side. */
function footprint(i: Handed): { outlines: Outline[]; off: number } {
  const len = (name: string) => i[name] as Interval;
  const depth = len("seatDepth").nominal;
  const half = len("seatWidth").nominal / 2;
  const wide = len("overallWidth").nominal / 2;
  const r = len("wheelDiameter").nominal / 2;
  const axle = len("axle").nominal;
  const t = (i.away ? -1 : 1) * i.turn.nominal;
  const sin = Math.sin(t);
  const cos = Math.cos(t);
  const hip = len("hip").nominal + ((i["scoot"] as Interval | undefined)?.nominal ?? 0);
  const { up, left } = bedAxes(i["head"] as Compass);
  const outward = i["side"] === "left" ? left : { x: -left.x, y: -left.y };
  const ahead = i["facing"] === "head" ? up : { x: -up.x, y: -up.y };
  // The corner of the bed at its head end, on the chair's side.
  const at = { x: len("bed at 1").nominal, y: len("bed at 2").nominal };
  const outline = bedOutline(
    at.x,
    at.y,
    len("bed size 1").nominal,
    len("bed size 2").nominal,
    i["head"] as Compass,
  );
  const corner = outline.reduce((best, p) =>
    towards(p, up) + towards(p, outward) > towards(best, up) + towards(best, outward) ? p : best,
  );
  const along = len("along").nominal;
  const edge = { x: corner.x - up.x * along, y: corner.y - up.y * along };
  // The edge's distance from the seat's rear middle, from the gap at the seat's nearest corner.
  const reach = i.gap.nominal + half * cos + Math.max(0, depth * sin);
  const placed = (x: number, y: number): Point => {
    const e = x * cos - y * sin - hip * cos;
    const n = reach - (x * sin + y * cos);
    return { x: edge.x + ahead.x * e + outward.x * n, y: edge.y + ahead.y * e + outward.y * n };
  };
  const box = (x0: number, x1: number, y0: number, y1: number): Outline => [
    placed(x0, y0),
    placed(x1, y0),
    placed(x1, y1),
    placed(x0, y1),
  ];
  const outlines = [box(axle - r, axle + r, -wide, wide), box(Math.min(0, axle), depth, -half, half)];
  const [near, far] = i.equipment.split(" ");
  const stub = (i["hangerStub"] as Interval | undefined)?.nominal ?? i.bag.of("hanger-stub-default").nominal;
  const legrest =
    (i["legrestReach"] as Interval | undefined)?.nominal ?? i.bag.of("legrest-reach-default").nominal;
  const stands = (state: string | undefined) =>
    state === "in-place"
      ? legrest
      : state === "swung"
        ? stub + i.bag.of("hanger-swung-out").nominal
        : state === "removed"
          ? stub
          : 0;
  if (stands(near) > 0) outlines.push(box(depth, depth + stands(near), 0, half));
  if (stands(far) > 0) outlines.push(box(depth, depth + stands(far), -half, 0));
  // No point of the chair is further from the hip than this, and turning moves it by no more than the arc.
  const arm = Math.hypot(depth + Math.max(stands(near), stands(far)) + Math.abs(axle) + r, wide * 2);
  const front =
    off(i["legrestReach"] as Interval | undefined) +
    off(i["hangerStub"] as Interval | undefined) +
    off(len("seatDepth"));
  const shape = Math.max(
    front,
    off(len("axle")) + off(len("wheelDiameter")) / 2,
    off(len("overallWidth")) / 2,
    off(len("seatWidth")) / 2,
  );
  const turn =
    (width(i.turn) / 2 +
      Math.max(
        Math.abs((i["parkingAngle"] as Interval).low),
        Math.abs((i["parkingAngle"] as Interval).high),
      )) *
    arm;
  const place = Math.hypot(
    off(len("along")) +
      off(len("hip")) +
      off(i["scoot"] as Interval | undefined) +
      off(len("bed size 2")) +
      off(len("bed at 2")),
    off(i.gap) + off(len("bed size 1")) + off(len("bed at 1")),
  );
  return { outlines, off: shape + turn + place };
}

const towards = (p: Point, d: Point): number => p.x * d.x + p.y * d.y;

export const roomClearance = derived({
  name: "park.room-clearance",
  dimension: "length",
  says: "least distance between the parked chair and what else stands in the room; below zero they overlap by as much",
  formula: "least distance between the chair's outline, as equipped, and each thing placed in the room",
  source: "plane geometry",
  inputs,
  compute: (i: Handed): Outcome => {
    if (!(Math.abs(i.turn.nominal) <= Math.PI / 2))
      return { missing: [{ what: "an angle of the chair between 0 and 90 degrees", key: "turned" }] };
    const chair = footprint(i);
    let nearest: { name: string; value: Interval } | undefined;
    let low = Infinity;
    let high = Infinity;
    for (const thing of furniture(i)) {
      const distance = Math.min(...chair.outlines.map((o) => clearance(o, thing.outline)));
      // Moving both outlines by no more than their tolerances changes the distance by no more than the sum.
      const loose = chair.off + thing.off;
      low = Math.min(low, distance - loose);
      high = Math.min(high, distance + loose);
      if (!nearest || distance < nearest.value.nominal - 1e-9)
        nearest = { name: thing.name, value: { low, nominal: distance, high } };
    }
    return { value: { low, nominal: nearest!.value.nominal, high }, choice: nearest!.name };
  },
});
