/** The parked chair in the room: what its outline is worked out from, for the quantities that ask what is around it. */
import { add, exactly, shift, type Interval } from "../../language/quantity/interval.js";
import { standsInFront } from "../plan/chair-solids.js";
import { parkedFootprint, type ChairOutline, type Footprint } from "../plan/footprint.js";
import type { RoomOutline, ThingOutline } from "../plan/outline.js";
import { seatAlone } from "../plan/parking.js";
import { besideAxes } from "../plan/room.js";
import type { LegRestState } from "../steps/types.js";
import type { Of } from "../quantity.js";
import type { Scene } from "../scene.js";
import { gapCorner } from "./gap.js";
import { absent, isWritten, measuredBlock, signedTurn } from "./inputs.js";
import { parkingInputs, planWith, type Parking } from "./parked.js";
import { bedPlaceOr, type Inputs } from "./standing.js";

/** Needs the chair, how it stands beside the bed, and where the bed stands in the room. */
export function chairInRoomInputs(s: Scene, of: Of): Inputs {
  const parking = parkingInputs(s, of);
  if ("none" in parking) return parking;
  if (!s.room) return { none: absent(s.transfer, "the room in which it is done", "room") };
  const found = bedPlaceOr(s);
  if ("none" in found) return found;
  const said = (key: string, words: string) => {
    const v = s.value(key).value;
    return typeof v === "string" ? v : absent(s.transfer, words, key);
  };
  return {
    ...parking,
    gap: of(gapCorner),
    gapTaped: isWritten(measuredBlock(s), "gap") ? "yes" : undefined,
    hip: of.default("hip-from-seat-rear"),
    scoot: s.parked.scooted ? of.default("scoot-forward") : undefined,
    along: of.transfer("along", "the hip joint's place along the bed before sliding (along)"),
    facing: said("facing", "which end of the bed the chair faces (facing)"),
    bedSide: said("bed-side", "on which side of the bed the chair stands (bed-side)"),
    bed: found.bed.name,
  };
}

export type ChairInRoom = Parking & {
  readonly gap: Interval;
  /** Whether the gap is as taped; else the chair stands as near as its parts let it, by which every angle has a gap of its own. */
  readonly gapTaped?: "yes";
  readonly hip: Interval;
  readonly scoot?: Interval;
  readonly along: Interval;
  readonly facing: "head" | "foot";
  readonly bedSide: "left" | "right";
  /** Name of the bed beside which it stands. */
  readonly bed: string;
};

/** How far each part of the chair stands out in front, by how the leg rests stand. */
export function outlineOf(i: Parking): ChairOutline {
  const front = {
    stub: i.hangerStub ?? i.bag.of("hanger-stub-default"),
    more: i.bag.of("hanger-swung-out"),
    reach: i.legrestReach ?? i.bag.of("legrest-reach-default"),
  };
  const [near, far] = i.equipment.split(" ") as (LegRestState | "none")[];
  return {
    depth: i.seatDepth,
    width: i.seatWidth,
    overall: i.overallWidth,
    axle: i.axle,
    diameter: i.wheelDiameter,
    near: standsInFront(near!, front),
    far: standsInFront(far!, front),
  };
}

/** Defaults of what stands in front of the seat, where it was not written. */
function uses(i: Parking): readonly string[] {
  const states = i.equipment.split(" ").slice(0, 2);
  const names = new Set<string>();
  for (const state of states) {
    if (state === "in-place" && !i.legrestReach) names.add("legrest-reach-default");
    if ((state === "removed" || state === "swung") && !i.hangerStub) names.add("hanger-stub-default");
    if (state === "swung") names.add("hanger-swung-out");
  }
  return [...names];
}

export interface StandingChair {
  readonly footprint: Footprint;
  readonly turned: Interval;
  /** Hip joint ahead of the seat's rear edge. */
  readonly hip: Interval;
  readonly bed: ThingOutline;
  /** Defaults on which its outline rests. */
  readonly uses: readonly string[];
}

/**
 * The chair's outline beside the bed; undefined where its angle is beyond a right angle, or the bed's place is not known. Of the
 * bed only the sides that the chair is measured from count: its long side there and its head end.
 */
export function chairInRoom(i: ChairInRoom, room: RoomOutline): StandingChair | undefined {
  const turned = signedTurn(
    i.turn,
    i.away,
    Math.max(Math.abs(i.parkingAngle.low), Math.abs(i.parkingAngle.high)),
  );
  const bed = room.things.find((t) => t.name === i.bed);
  if (!turned || !bed?.head) return undefined;
  const hip = i.scoot ? add(i.hip, i.scoot) : i.hip;
  const { up, outward } = besideAxes(bed.head, i.bedSide, i.facing);
  const { west, east, south, north } = bed.sides;
  const sized = (low: Interval, high: Interval, towards: number): [Interval, Interval] => {
    const size = high.nominal - low.nominal;
    return [towards > 0 ? shift(high, -size) : low, exactly(size)];
  };
  const [x, ew] = sized(west, east, up.x + outward.x);
  const [y, ns] = sized(south, north, up.y + outward.y);
  const lengthways = up.x !== 0;
  const plan = planWith(i, i.equipment);
  const footprint = parkedFootprint({
    chair: outlineOf(i),
    turned,
    plan: i.gapTaped ? seatAlone(plan) : plan,
    clearance: i.gapTaped ? i.gap : i.clearance,
    hip,
    along: i.along,
    bed: { x, y, width: lengthways ? ns : ew, length: lengthways ? ew : ns },
    head: bed.head,
    facing: i.facing,
    side: i.bedSide,
  });
  return { footprint, turned, hip, bed, uses: uses(i) };
}
