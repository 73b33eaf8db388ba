/** The board as an incline: the length over which it rises, and its angle. */
import { larger, negate, type Interval } from "../../language/quantity/interval.js";
import { slope } from "../plan/heights.js";
import type { Of, QuantityRule } from "../quantity.js";
import type { Scene } from "../scene.js";
import { boardRiseEnd, boardRiseStart } from "./board-rise.js";
import { derived, boardOr } from "./inputs.js";
import { ofLaidBoard } from "./laying.js";

/** Middle line from the seat's side to the board's outer end: what rises when the bed is the lower. */
export const runSeatHigher = ofLaidBoard({
  name: "board.run-seat-higher",
  says: "length over which the board rises if the seat is the higher: from the seat's side to its end on the other surface",
  formula: "length - inner end from the seat's side / cos psi",
  read: (b) => b.runSeatHigher,
});

export const runBedHigher = ofLaidBoard({
  name: "board.run-bed-higher",
  says: "length over which the board rises if the other surface is the higher: from its end on the seat to that surface's edge",
  formula: "inner end from the seat's side / cos psi + gap at the board / cos phi",
  read: (b) => b.runLandingHigher,
});

/** The rise asked for, and both lengths over which the board may rise; why there are none where no board is used. */
export function slopingInputs(
  s: Scene,
  of: Of,
  rises: Record<string, QuantityRule>,
): Record<string, unknown> {
  const b = boardOr(s);
  if ("none" in b) return { none: b.none };
  return {
    ...Object.fromEntries(Object.entries(rises).map(([name, q]) => [name, of(q)])),
    seatHigher: of(runSeatHigher),
    bedHigher: of(runBedHigher),
    // Whether the client arrives on the chair.
    back: s.to !== undefined && s.to === s.chair,
  };
}

export interface Sloping {
  readonly rise: Interval;
  readonly seatHigher: Interval;
  readonly bedHigher: Interval;
  readonly back: boolean;
}

/** The length over which the board climbs in the direction of motion, and that over which it drops. */
export const upAndDown = (i: Omit<Sloping, "rise">): readonly [up: Interval, down: Interval] =>
  i.back ? [i.seatHigher, i.bedHigher] : [i.bedHigher, i.seatHigher];

type RunHanded = Omit<Sloping, "rise"> & { readonly start: Interval; readonly end: Interval };

export const boardRun = derived({
  name: "board.run",
  dimension: "length",
  says: "length over which the board rises: its bearing on the lower surface and its span, along the middle line",
  formula: "from the higher surface's edge to the board's end on the lower surface",
  source: "plane geometry",
  inputs: (s, of) => slopingInputs(s, of, { start: boardRiseStart, end: boardRiseEnd }),
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
    inputs: (s, of) => slopingInputs(s, of, { rise }),
    compute: (i: Sloping): Interval => slope(i.rise, ...upAndDown(i)),
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
