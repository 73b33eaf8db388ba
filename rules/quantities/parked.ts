/** The parked chair: its solids beside the surface, as the quantities of parking and of the board take it. */
import { exactly, type Interval } from "../../language/quantity/interval.js";
import type { Of, Optional, Outcome } from "../quantity.js";
import type { Scene } from "../scene.js";
import type { ArmrestState, LegRestState } from "../steps/types.js";
import type { Computed } from "../types.js";
import { chairPlan } from "../plan/chair-solids.js";
import { contact, type Contact, type Plan } from "../plan/parking.js";
import { emptySurface } from "./height-empty.js";
import {
  absent,
  bag,
  beyondSquare,
  block,
  derived,
  endsOr,
  equipmentOf,
  signedTurn,
  turnInputs,
  type Bag,
} from "./inputs.js";

export type ParkingInputs = {
  readonly turn: Computed;
  readonly away: boolean;
  readonly seatDepth: Computed;
  readonly seatWidth: Computed;
  readonly overallWidth: Computed;
  readonly wheelDiameter: Computed;
  readonly axle: Computed;
  readonly seatHeight: Computed;
  readonly hangerStub: Optional;
  readonly hangerSwung: Optional;
  readonly legrestReach: Optional;
  readonly rimStandoff: Optional;
  readonly rimDiameter: Optional;
  readonly brakeLever: Optional;
  readonly top: Computed;
  readonly under: Optional;
  readonly equipment: string | Computed;
  readonly clearance: Computed;
  readonly parkingAngle: Computed;
  readonly bag: Bag;
};

export const parkingInputs = (_: Scene, of: Of): ParkingInputs | { readonly none: Computed } =>
  of.shared(read);

function read(s: Scene, of: Of): ParkingInputs | { readonly none: Computed } {
  const ends = endsOr(s);
  if ("none" in ends) return ends;
  const { chair, surface } = ends;
  const wheel = block(chair, "drive-wheel");
  const rim = block(chair, "hand-rim");
  return {
    ...turnInputs(s, of),
    seatDepth: of.written(chair, "seat-depth", "the seat's depth"),
    seatWidth: of.written(chair, "seat-width", "the seat's width"),
    overallWidth: of.written(chair, "overall-width", "the chair's width over the hand rims"),
    wheelDiameter: wheel
      ? of.written(wheel, "diameter", "the drive wheel's diameter")
      : absent(chair, "the drive wheel's diameter", "drive-wheel"),
    axle: wheel
      ? of.written(wheel, "axle", "the axle's place under the seat")
      : absent(chair, "the axle's place under the seat", "drive-wheel"),
    seatHeight: of.written(chair, "seat-height", "the seat's height"),
    hangerStub: of.optional(of.written(chair, "hanger-stub", "the hanger's stub")),
    hangerSwung: of.optional(of.written(chair, "hanger-swung", "the hanger swung away")),
    legrestReach: of.optional(of.written(chair, "hanger-reach", "the leg rest's reach")),
    rimStandoff: of.optional(of.written(rim, "standoff", "how far the hand rim stands out")),
    rimDiameter: of.optional(of.written(rim, "diameter", "the hand rim's diameter")),
    brakeLever: of.optional(of.written(chair, "brake-lever", "how far a brake lever stands out")),
    top: emptySurface(s, of),
    under: of.optional(of.written(surface, "room-under", "the room under the surface")),
    equipment:
      equipmentOf(s, chair) ??
      absent(
        s.transfer,
        "which way the chair faces beside the surface (bed-side or side, and facing)",
        "facing",
      ),
    clearance: of.default("parking-clearance"),
    parkingAngle: of.default("parking-angle"),
    bag: bag(of),
  };
}

/** The same, handed over. */
export interface Parking {
  readonly turn: Interval;
  readonly away: boolean;
  readonly seatDepth: Interval;
  readonly seatWidth: Interval;
  readonly overallWidth: Interval;
  readonly wheelDiameter: Interval;
  readonly axle: Interval;
  readonly seatHeight: Interval;
  readonly hangerStub: Interval | undefined;
  readonly hangerSwung: Interval | undefined;
  readonly legrestReach: Interval | undefined;
  readonly rimStandoff: Interval | undefined;
  readonly rimDiameter: Interval | undefined;
  readonly brakeLever: Interval | undefined;
  readonly top: Interval;
  readonly under: Interval | undefined;
  readonly equipment: string;
  readonly clearance: Interval;
  readonly parkingAngle: Interval;
  readonly bag: Bag;
}

export interface Parked {
  readonly plan: Plan;
  readonly turned: Interval;
  readonly clearance: Interval;
  readonly contact: Contact;
  /** What it was made from. */
  readonly from: Parking;
  /** Defaults on which the first contact may rest. */
  readonly uses: readonly string[];
}

/** The plan and the angle; undefined where the angle is beyond a right angle. */
export function park(i: Parking, equipment = i.equipment): Parked | undefined {
  const turned = signedTurn(
    i.turn,
    i.away,
    Math.max(Math.abs(i.parkingAngle.low), Math.abs(i.parkingAngle.high)),
  );
  if (!turned) return undefined;
  const plan = planWith(i, equipment);
  const touch = contact(plan, turned);
  const uses = new Set<string>();
  for (const solid of touch.perhaps) for (const name of solid.uses) uses.add(name);
  return { plan, turned, clearance: i.clearance, contact: touch, uses: [...uses], from: i };
}

/** Parked chairs by the value of `park.contact`, from which the other quantities of parking take them. */
const byValue = new WeakMap<Interval, Parked>();

export const parkContact = derived({
  name: "park.contact",
  dimension: "length",
  says: "which part of the chair is the first to touch, and how far it stands nearer to the surface than the seat's corner",
  formula: "the greatest of x sin t + y cos t over the chair's parts, less that of the seat's nearest corner",
  source: "plane geometry",
  inputs: parkingInputs,
  compute: (i: Parking): Outcome => {
    const p = park(i);
    if (!p) return beyondSquare;
    byValue.set(p.contact.ahead, p);
    return {
      value: p.contact.ahead,
      choice: p.contact.first.kind,
      assumed: i.bag.assumed(p.uses),
      terms: i.bag.terms(p.uses),
    };
  },
});

/** The parked chair of which `park.contact` is that value. */
export const parkedAs = (contact: Interval): Parked => byValue.get(contact)!;

/** The plan with the equipment standing as given. */
export function planWith(i: Parking, equipment: string): Plan {
  const [nearLegrest, farLegrest, nearArmrest] = equipment.split(" ");
  return chairPlan(
    {
      seatDepth: i.seatDepth,
      seatWidth: i.seatWidth,
      overallWidth: i.overallWidth,
      wheelDiameter: i.wheelDiameter,
      axle: i.axle,
      seatHeight: i.seatHeight,
      hangerStub: i.hangerStub,
      hangerSwung: i.hangerSwung,
      legrestReach: i.legrestReach,
      rimStandoff: i.rimStandoff,
      rimDiameter: i.rimDiameter,
      brakeLever: i.brakeLever,
      nearLegrest: nearLegrest as LegRestState | "none",
      farLegrest: farLegrest as LegRestState | "none",
      nearArmrest: nearArmrest as ArmrestState | "none",
    },
    { top: i.top, under: i.under ?? exactly(0) },
    (name) => i.bag.of(name),
  );
}
