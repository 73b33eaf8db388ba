/** The gap between the parked chair and the bed. */
import { add, subtract, type Interval } from "../../language/quantity/interval.js";
import { bestAngle, computedGap, cornerGap, gapOver, measuredGap, seatFront } from "../plan/parking.js";
import { place } from "../plan/placing.js";
import type { Outcome } from "../quantity.js";
import type { Computed } from "../types.js";
import { choosing, choosingInputs, type ChoosingHanded } from "./choosing.js";
import {
  beyondSquare,
  derived,
  isWritten,
  measuredBlock,
  signedTurn,
  turnInputs,
  without,
} from "./inputs.js";
import { park, parkContact, parkedAs, parkingInputs, planWith, type Parking } from "./parked.js";

export const gapComputed = derived({
  name: "gap.corner-computed",
  dimension: "length",
  says: "nearest point of the seat to the edge of the surface beside it, as it follows from the chair's parts",
  formula: "parking clearance + what the first part to touch stands nearer than the seat's corner",
  source: "plane geometry",
  inputs: (_s, of) => ({ contact: of(parkContact), clearance: of.default("parking-clearance") }),
  compute: (i: { contact: Interval; clearance: Interval }) => add(i.contact, i.clearance),
});

export const gapCorner = derived({
  name: "gap.corner",
  dimension: "length",
  says: "nearest point of the seat to the edge of the surface beside it",
  formula: "as measured, else as it follows from the chair's parts",
  source: "plane geometry",
  inputs: (s, of) => {
    const m = measuredBlock(s);
    return { gap: isWritten(m, "gap") ? of.written(m, "gap", "the gap as measured") : of(gapComputed) };
  },
  compute: (i: { gap: Interval }) => i.gap,
});

export const gapDisagreement = derived({
  name: "gap.disagreement",
  dimension: "length",
  says: "the gap as measured less the gap that follows from the chair's parts",
  formula: "measured gap - computed gap",
  source: "difference of two lengths",
  inputs: (s, of): Record<string, Computed> => {
    const m = measuredBlock(s);
    return isWritten(m, "gap")
      ? { measured: of.written(m, "gap", "the gap as measured"), computed: of(gapComputed) }
      : { none: without("the gap was not measured") };
  },
  compute: (i: { measured?: Interval; computed?: Interval }) => subtract(i.measured!, i.computed!),
});

export const gapWithoutLegrest = derived({
  name: "gap.without-legrest",
  dimension: "length",
  says: "what the gap would be with the near leg rest lifted off",
  formula:
    "parking clearance + what the first part to touch, the near leg rest taken off, stands nearer than the seat's corner",
  source: "plane geometry",
  inputs: (_s, of) => ({ contact: of(parkContact) }),
  compute: (i: { contact: Interval }): Outcome => {
    const { from } = parkedAs(i.contact);
    const [near, ...others] = from.equipment.split(" ");
    if (near === "removed" || near === "none") return { without: "the near leg rest is off" };
    const off = park(from, ["removed", ...others].join(" "))!;
    return {
      value: cornerGap(off.plan, off.clearance, off.turned),
      assumed: from.bag.assumed(off.uses),
      terms: from.bag.terms(off.uses),
    };
  },
});

const hip = (rear: Interval, scoot: Interval | undefined): { from: "rear"; x: Interval } => ({
  from: "rear",
  x: scoot
    ? { low: rear.low + scoot.low, nominal: rear.nominal + scoot.nominal, high: rear.high + scoot.high }
    : rear,
});

type Hips = { hipFromRear: Interval; scoot?: Interval } & (
  | { contact: Interval; measured?: undefined }
  | { measured: Interval; turn: Interval; away: boolean; seatDepth: Interval }
);

export const gapHips = derived({
  name: "gap.hips",
  dimension: "length",
  says: "distance from the seat's side to the edge of the other surface, at the client's hip joint",
  formula: "gap at the seat's corner + (distance from the corner to the hip) sin t",
  source: "plane geometry",
  inputs: (s, of) => {
    const hips = {
      hipFromRear: of.default("hip-from-seat-rear"),
      ...(s.parked.scooted && { scoot: of.default("scoot-forward") }),
    };
    const m = measuredBlock(s);
    if (!isWritten(m, "gap") || !s.chair) return { contact: of(parkContact), ...hips };
    return {
      ...turnInputs(s, of),
      seatDepth: of.written(s.chair, "seat-depth", "the seat's depth"),
      measured: of.written(m, "gap", "the gap as measured"),
      ...hips,
    };
  },
  compute: (i: Hips): Outcome => {
    const point = hip(i.hipFromRear, i.scoot);
    if (i.measured) {
      const turned = signedTurn(i.turn, i.away, 0);
      return turned ? { value: gapOver(measuredGap(i.measured, i.seatDepth, point), turned) } : beyondSquare;
    }
    const p = parkedAs(i.contact);
    return { value: gapOver(computedGap(p.plan, p.clearance, point), p.turned) };
  },
});

type Best = Parking & ChoosingHanded & { hipFromRear: Interval; scoot?: Interval; withBoard: boolean };

export const gapAngleBest = derived({
  name: "gap.angle-best",
  dimension: "angle",
  says: "the angle of the chair, front towards the surface, at which the board spans least, or without a board the gap beside the hips is least",
  formula:
    "least board.span (gap.hips without a board) over the angles searched, to 3 deg; of angles within 1/4 in, the smallest",
  source: "search at nominal values",
  inputs: (s, of) => {
    const p = parkingInputs(s, of);
    if ("none" in p) return p;
    return {
      // What both need is required for parking and comes after.
      ...(s.board && choosingInputs(of)),
      ...p,
      // The angle as written does not enter the search.
      turn: undefined,
      away: undefined,
      parkingAngle: undefined,
      withBoard: s.board !== undefined,
      hipFromRear: of.default("hip-from-seat-rear"),
      ...(s.parked.scooted && { scoot: of.default("scoot-forward") }),
    };
  },
  compute: (i: Best): Interval => {
    const plan = planWith(i, i.equipment);
    const range = i.bag.of("best-angle-range");
    const turns = { low: Math.max(0, range.low), nominal: 0, high: Math.min(Math.PI / 2, range.high) };
    const hips = computedGap(plan, i.clearance, hip(i.hipFromRear, i.scoot));
    const corner = computedGap(plan, i.clearance, seatFront);
    // The span hardly depends on the board's own angle to a few degrees; a coarse step finds the chair's angle as well.
    const fixed = i.withBoard ? choosing(i, 0, 0) : undefined;
    const measure = fixed
      ? (t: number) => place({ ...fixed, turned: t, gapFront: corner.at(t) }, 15 * degree).span
      : (t: number) => hips.at(t);
    const steps = Math.max(1, Math.round((turns.high - turns.low) / (3 * degree)));
    const { angle } = bestAngle(measure, turns, { steps, tie: 0.00635 });
    return { low: angle, nominal: angle, high: angle };
  },
});

const degree = Math.PI / 180;
