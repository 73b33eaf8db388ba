/** `park.room-clearance`: what is left between the parked chair and what else stands in the room. */
import type { Interval } from "../../language/quantity/interval.js";
import type { Thing } from "../../language/model/types.js";
import { parkedFootprint, type ChairOutline, type Compass, type Footprint } from "../plan/footprint.js";
import { enlarged, leastClearance } from "../plan/room.js";
import type { Of, Outcome } from "../quantity.js";
import type { Scene } from "../scene.js";
import { absent, beyondSquare, choiceOf, derived, partsOf, signedTurn, without } from "./inputs.js";
import { gapCorner } from "./gap.js";
import { parkingInputs, type Parking } from "./parked.js";
import { placedOutlines, wallInputs, type Handed as Placed, type Standing } from "./standing.js";

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
  const said = (key: string, words: string) => {
    const v = s.value(key).value;
    return typeof v === "string" ? v : absent(s.transfer, words, key);
  };
  const all: Inputs = {
    ...parking,
    gap: of(gapCorner),
    hip: of.default("hip-from-seat-rear"),
    scoot: s.parked.scooted ? of.default("scoot-forward") : undefined,
    along: of.transfer("along", "the hip joint's place along the bed before sliding (along)"),
    head:
      choiceOf(bed.place, "head") ??
      absent(bed.place, "the side of the room to which the bed's head points", "head"),
    facing: said("facing", "which end of the bed the chair faces (facing)"),
    bedSide: said("bed-side", "on which side of the bed the chair stands (bed-side)"),
    ...pair(of, bed.place, "at", "bed at", "where the bed stands in the room"),
    ...pair(of, bed.thing, "size", "bed size", "the size of the bed"),
    others: others.length,
  };
  if (others.some((p) => choiceOf(p.place, "wall"))) Object.assign(all, wallInputs(s.room, of));
  others.forEach((p, n) => {
    const wall = choiceOf(p.place, "wall");
    all[`thing ${n}`] = p.thing.name;
    all[`stands ${n}`] = wall;
    Object.assign(all, pair(of, p.place, "at", `at ${n}`, `where ${p.thing.name} stands in the room`, !wall));
    Object.assign(all, pair(of, p.thing, "size", `size ${n}`, `the size of ${p.thing.name}`));
  });
  return all;
}

type Handed = Placed &
  Parking & {
    readonly "bed at 1": Interval;
    readonly "bed at 2": Interval;
    readonly "bed size 1": Interval;
    readonly "bed size 2": Interval;
    readonly gap: Interval;
    readonly hip: Interval;
    readonly scoot?: Interval;
    readonly along: Interval;
    readonly head: Compass;
    readonly facing: "head" | "foot";
    readonly bedSide: "left" | "right";
  };

/** How far each part of the chair stands out in front, by how the leg rests stand. */
function outlineOf(i: Handed): ChairOutline {
  const stub = i.hangerStub ?? i.bag.of("hanger-stub-default");
  const reach = i.legrestReach ?? i.bag.of("legrest-reach-default");
  const out = i.bag.of("hanger-swung-out");
  const front = (state: string | undefined): Interval | undefined => {
    if (state === "in-place") return reach;
    if (state === "removed") return stub;
    if (state !== "swung") return undefined;
    return { low: stub.low + out.low, nominal: stub.nominal + out.nominal, high: stub.high + out.high };
  };
  const [near, far] = i.equipment.split(" ");
  return {
    depth: i.seatDepth,
    width: i.seatWidth,
    overall: i.overallWidth,
    axle: i.axle,
    diameter: i.wheelDiameter,
    near: front(near),
    far: front(far),
  };
}

/** Defaults of what stands in front of the seat, where it was not written. */
function uses(i: Handed): readonly string[] {
  const states = i.equipment.split(" ").slice(0, 2);
  const names = new Set<string>();
  for (const state of states) {
    if (state === "in-place" && !i.legrestReach) names.add("legrest-reach-default");
    if ((state === "removed" || state === "swung") && !i.hangerStub) names.add("hanger-stub-default");
    if (state === "swung") names.add("hanger-swung-out");
  }
  return [...names];
}

/** The most that can be left: both as small as they may be, and as far apart as their tolerances let them be. */
function farthest(chair: Footprint, thing: Standing): number {
  const x = thing.offX + chair.offX;
  const y = thing.offY + chair.offY;
  // Drawn in by the tolerances the box is what every possible box holds; one too small for that is moved instead.
  const holds = 2 * x <= thing.box.width && 2 * y <= thing.box.depth;
  const box = holds ? enlarged(thing.box, -x, -y) : thing.box;
  const moved = holds ? 0 : Math.hypot(x, y);
  let most = -Infinity;
  for (const pose of chair.poses)
    most = Math.max(most, leastClearance(pose.smallest, box) + pose.between + moved);
  return most;
}

export const roomClearance = derived({
  name: "park.room-clearance",
  dimension: "length",
  says: "least distance between the parked chair and what else stands in the room; below zero they overlap by as much",
  formula: "least distance between the chair's outline, as equipped, and each thing placed in the room",
  source: "plane geometry",
  inputs,
  compute: (i: Handed): Outcome => {
    const turned = signedTurn(
      i.turn,
      i.away,
      Math.max(Math.abs(i.parkingAngle.low), Math.abs(i.parkingAngle.high)),
    );
    if (!turned) return beyondSquare;
    const hip = i.scoot
      ? {
          low: i.hip.low + i.scoot.low,
          nominal: i.hip.nominal + i.scoot.nominal,
          high: i.hip.high + i.scoot.high,
        }
      : i.hip;
    const chair = parkedFootprint({
      chair: outlineOf(i),
      turned,
      gap: i.gap,
      hip,
      along: i.along,
      bed: { x: i["bed at 1"], y: i["bed at 2"], width: i["bed size 1"], length: i["bed size 2"] },
      head: i.head,
      facing: i.facing,
      side: i.bedSide,
    });
    let low = Infinity;
    let high = Infinity;
    let nominal = Infinity;
    let nearest = "";
    const swing = chair.poses.reduce((sum, pose) => sum + pose.between, 0);
    for (const thing of placedOutlines(i)) {
      const now = leastClearance(chair.nominal, thing.box);
      if (now < nominal - 1e-9) {
        nominal = now;
        nearest = thing.name;
      }
      const x = thing.offX + chair.offX;
      const y = thing.offY + chair.offY;
      // Too far away to matter, however the tolerances fall.
      if (now - Math.hypot(x, y) - 2 * swing - chair.offShape > high) continue;
      // At worst both are as large as they may be and as near as their tolerances let them come.
      const worst = enlarged(thing.box, x, y);
      for (const pose of chair.poses) low = Math.min(low, leastClearance(pose.largest, worst) - pose.between);
      high = Math.min(high, farthest(chair, thing));
    }
    const names = uses(i);
    return {
      value: { low: Math.min(low, nominal), nominal, high: Math.max(high, nominal) },
      choice: nearest,
      assumed: i.bag.assumed(names),
      terms: i.bag.terms(names),
    };
  },
});
