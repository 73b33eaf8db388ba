/** The gap between the parked chair and the bed, and what decides it. */
import { subtract, type Interval } from "../../language/quantity/interval.js";
import {
  bestAngle,
  computedGap,
  contact,
  cornerGap,
  cornerGapAt,
  gapOver,
  measuredGap,
} from "../plan/parking.js";
import { place } from "../plan/placing.js";
import type { Outcome } from "../quantity.js";
import type { Computed } from "../types.js";
import {
  beyondSquare,
  derived,
  isWritten,
  measuredBlock,
  remember,
  signedTurn,
  turnInputs,
  without,
} from "./inputs.js";
import { parked, parkingKeysWithout, parkingInputs, planWith, type Parking } from "./parked.js";
import { choosing, choosingInputs, type ChoosingHanded } from "./choosing.js";

const rests = (i: Parking, uses: readonly string[]): Pick<Outcome, "assumed" | "terms"> => ({
  assumed: i.bag.assumed(uses),
  terms: i.bag.terms(uses),
});

export const parkContact = derived({
  name: "park.contact",
  dimension: "length",
  says: "which part of the chair is the first to touch, and how far it stands nearer to the bed than the seat's corner",
  formula: "the greatest of x sin t + y cos t over the chair's parts, less that of the seat's nearest corner",
  source: "plane geometry",
  inputs: (s, of) => parkingInputs(s, of),
  compute: (i: Parking): Outcome => {
    const p = parked(i);
    if (!p) return beyondSquare;
    const c = contact(p.plan, p.turned);
    return {
      value: c.ahead,
      choice: c.first.kind,
      ...rests(i, p.uses),
    };
  },
});

export const gapComputed = derived({
  name: "gap.corner-computed",
  dimension: "length",
  says: "nearest point of the seat to the edge of the bed, as it follows from the chair's parts",
  formula: "parking clearance + what the first part to touch stands nearer than the seat's corner",
  source: "plane geometry",
  inputs: (s, of) => parkingInputs(s, of),
  compute: (i: Parking): Outcome => {
    const p = parked(i);
    return p ? { value: cornerGap(p.plan, p.clearance, p.turned), ...rests(i, p.uses) } : beyondSquare;
  },
});

export const gapCorner = derived({
  name: "gap.corner",
  dimension: "length",
  says: "nearest point of the seat to the edge of the bed",
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
  inputs: (s, of) => parkingInputs(s, of),
  compute: (i: Parking): Outcome => {
    const [near, ...others] = i.equipment.split(" ");
    if (near === "removed" || near === "none") return { without: "the near leg rest is off" };
    const off = parked({ ...i, equipment: ["removed", ...others].join(" ") });
    return off
      ? { value: cornerGap(off.plan, off.clearance, off.turned), ...rests(i, off.uses) }
      : beyondSquare;
  },
});

const hip = (rear: Interval, scoot: Interval | undefined): { from: "rear"; x: Interval } => ({
  from: "rear",
  x: scoot
    ? { low: rear.low + scoot.low, nominal: rear.nominal + scoot.nominal, high: rear.high + scoot.high }
    : rear,
});

type Hips = {
  turn: Interval;
  away: boolean;
  seatDepth: Interval;
  hipFromRear: Interval;
  scoot?: Interval;
  measured?: Interval;
};

export const gapHips = derived({
  name: "gap.hips",
  dimension: "length",
  says: "distance from the seat's side to the edge of the bed beside the client's hip joint",
  formula: "gap at the seat's corner + (distance from the corner to the hip) sin t",
  source: "plane geometry",
  inputs: (s, of) => {
    const hips = {
      hipFromRear: of.default("hip-from-seat-rear"),
      ...(s.parked.scooted && { scoot: of.default("scoot-forward") }),
    };
    const m = measuredBlock(s);
    if (!isWritten(m, "gap") || !s.chair) return { ...parkingInputs(s, of), ...hips };
    return {
      ...turnInputs(s, of),
      seatDepth: of.written(s.chair, "seat-depth", "the seat's depth"),
      measured: of.written(m, "gap", "the gap as measured"),
      ...hips,
    };
  },
  compute: (i: Hips & Parking): Outcome => {
    const point = hip(i.hipFromRear, i.scoot);
    if (i.measured) {
      const turned = signedTurn(i.turn, i.away, 0);
      return turned ? { value: gapOver(measuredGap(i.measured, i.seatDepth, point), turned) } : beyondSquare;
    }
    const p = parked(i);
    if (!p) return beyondSquare;
    return { value: gapOver(computedGap(p.plan, p.clearance, point), p.turned), ...rests(i, p.uses) };
  },
});

/** Searched once for what it rests on: the angle as written does not enter it. */
type Best = Parking & ChoosingHanded & { hipFromRear: Interval; scoot?: Interval; withBoard: boolean };
const best = remember<Best, number>(
  [
    ...parkingKeysWithout("turn", "away"),
    "length",
    "width",
    "askew",
    "reach",
    "window",
    "railHeight",
    "hipFromRear",
    "scoot",
    "withBoard",
  ],
  (i) => {
    const plan = planWith(i, i.equipment);
    const range = i.bag.of("best-angle-range");
    const turns = { low: Math.max(0, range.low), nominal: 0, high: Math.min(Math.PI / 2, range.high) };
    const point = computedGap(plan, i.clearance, hip(i.hipFromRear, i.scoot));
    const measure = i.withBoard
      ? (t: number) => place(choosing(i, t, cornerGapAt(plan, i.clearance, t)), (5 * Math.PI) / 180).span
      : (t: number) => point.at(t);
    return bestAngle(measure, turns, { tie: 0.00635 }).angle;
  },
);

export const gapAngleBest = derived({
  name: "gap.angle-best",
  dimension: "angle",
  says: "the angle of the chair, front towards the bed, at which the board spans least, or without a board the gap beside the hips is least",
  formula:
    "least board.span (gap.hips without a board) over the angles searched; of angles within 1/4 in, the smallest",
  source: "search",
  inputs: (s, of) => {
    const p = parkingInputs(s, of);
    if ("none" in p) return p;
    const { turn: _turn, away: _away, ...others } = p;
    return {
      ...others,
      ...(s.board && choosingInputs(s, of, s.board)),
      withBoard: s.board !== undefined,
      hipFromRear: of.default("hip-from-seat-rear"),
      ...(s.parked.scooted && { scoot: of.default("scoot-forward") }),
    };
  },
  compute: (i: Best): Interval => {
    const angle = best(i);
    return { low: angle, nominal: angle, high: angle };
  },
});
