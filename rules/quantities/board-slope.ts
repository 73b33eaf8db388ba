/** The board as an incline: the length over which it rises, and its angle. */
import { larger, negate, type Interval } from "../../language/quantity/interval.js";
import { slope } from "../plan/heights.js";
import type { QuantityRule } from "../quantity.js";
import type { Scene } from "../scene.js";
import { boardRiseEnd, boardRiseStart } from "./board-rise.js";
import { derived, boardOr } from "./inputs.js";
import { ofLaidBoard } from "./laying.js";

/** Middle line from the seat's side to the board's outer end: what rises when the bed is the lower. */
export const runSeatHigher = ofLaidBoard({
  name: "board.run-seat-higher",
  says: "length over which the board rises if the seat is the higher: from the seat's side to its end on the bed",
  formula: "length - inner end from the seat's side / cos psi",
  read: (b) => b.runSeatHigher,
});

export const runBedHigher = ofLaidBoard({
  name: "board.run-bed-higher",
  says: "length over which the board rises if the bed is the higher: from its end on the seat to the edge of the bed",
  formula: "inner end from the seat's side / cos psi + gap at the board / cos phi",
  read: (b) => b.runLandingHigher,
});

/** Whether the client arrives on the chair. */
const towardsChair = (s: Scene): boolean => s.to !== undefined && s.to === s.chair;

type RunHanded = { start: Interval; end: Interval; seatHigher: Interval; bedHigher: Interval; back: boolean };

export const boardRun = derived({
  name: "board.run",
  dimension: "length",
  says: "length over which the board rises: its bearing on the lower surface and its span, along the middle line",
  formula: "from the higher surface's edge to the board's end on the lower surface",
  source: "plane geometry",
  inputs: (s, of): Record<string, unknown> => {
    const b = boardOr(s);
    if ("none" in b) return { none: b.none };
    return {
      start: of(boardRiseStart),
      end: of(boardRiseEnd),
      seatHigher: of(runSeatHigher),
      bedHigher: of(runBedHigher),
      back: towardsChair(s),
    };
  },
  compute: (i: RunHanded): Interval => {
    // The bed is the higher at start or end if the rise towards it is above zero.
    const rises = i.back ? [negate(i.start), negate(i.end)] : [i.start, i.end];
    const bed = rises.some((r) => r.high > 0);
    const seat = rises.some((r) => r.low <= 0);
    const nominal = rises[0]!.nominal > 0 ? i.bedHigher : i.seatHigher;
    const all = [...(bed ? [i.bedHigher] : []), ...(seat ? [i.seatHigher] : [])];
    return {
      low: Math.min(...all.map((x) => x.low)),
      nominal: nominal.nominal,
      high: Math.max(...all.map((x) => x.high)),
    };
  },
});

const slopeAt = (when: "start" | "end", rise: QuantityRule): QuantityRule =>
  derived({
    name: `board.slope-${when}`,
    dimension: "angle",
    says:
      when === "start"
        ? "slope of the board while the client still sits where the transfer starts"
        : "slope of the board when the client is nearly across",
    formula: "tan(slope) = |rise of the board| / run",
    source: "plane geometry",
    inputs: (s, of): Record<string, unknown> => {
      const b = boardOr(s);
      if ("none" in b) return { none: b.none };
      return {
        rise: of(rise),
        seatHigher: of(runSeatHigher),
        bedHigher: of(runBedHigher),
        back: towardsChair(s),
      };
    },
    compute: (i: { rise: Interval; seatHigher: Interval; bedHigher: Interval; back: boolean }): Interval => {
      return slope(i.rise, i.back ? i.seatHigher : i.bedHigher, i.back ? i.bedHigher : i.seatHigher);
    },
  });
export const boardSlopeStart = slopeAt("start", boardRiseStart);
export const boardSlopeEnd = slopeAt("end", boardRiseEnd);

export const boardSlope = derived({
  name: "board.slope",
  dimension: "angle",
  says: "slope of the board, the steeper of start and end",
  formula: "larger of board.slope-start and board.slope-end",
  source: "plane geometry",
  inputs: (_s, of) => ({ start: of(boardSlopeStart), end: of(boardSlopeEnd) }),
  compute: (i: { start: Interval; end: Interval }) => larger(i.start, i.end),
});
