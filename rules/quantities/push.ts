/** What it takes to move the client along the board. */
import { larger, multiply, scale, type Interval } from "../../language/quantity/interval.js";
import { mixedFriction, pushRatio, slidingMargin } from "../plan/incline.js";
import type { Of, Outcome, QuantityRule } from "../quantity.js";
import type { Scene } from "../scene.js";
import type { Computed } from "../types.js";
import { inclineEnd, inclineStart } from "./board-incline.js";
import { boardSlope } from "./board-slope.js";
import { pushFriction } from "./friction.js";
import { boardOr, derived } from "./inputs.js";
import { boardLoadShare } from "./load-share.js";
import { clientWeight } from "./weight.js";

const onBoard = (s: Scene, of: Of, more: () => Record<string, Computed>): Record<string, Computed> => {
  const b = boardOr(s);
  return "none" in b ? { none: b.none } : more();
};
const weighed = (s: Scene, of: Of): Record<string, Computed> => ({
  weight: clientWeight(s, of),
  share: of(boardLoadShare),
});

/** Weight on the board, from the weight of the body. */
export const onTheBoard = (weight: Interval, share: Interval): Interval => multiply(weight, share);

type Along = { weight: Interval; share: Interval; mu: Interval; incline: Interval };
const along = (when: "start" | "end", incline: QuantityRule): QuantityRule =>
  derived({
    name: `push.along-board-${when}`,
    dimension: "force",
    says: `push along the board that moves the client, ${when === "start" ? "sitting on it near the start" : "nearly across"}; below zero the client slides unpushed and has to be held back`,
    formula:
      "weight on the board x (sin(slope) + friction x cos(slope)), the slope above zero where it climbs",
    source: "statics of a body on an incline",
    inputs: (s, of) =>
      onBoard(s, of, () => ({ ...weighed(s, of), mu: of(pushFriction), incline: of(incline) })),
    compute: (i: Along) => multiply(onTheBoard(i.weight, i.share), pushRatio(i.mu, i.incline)),
  });
export const pushStart = along("start", inclineStart);
export const pushEnd = along("end", inclineEnd);

type Leaving = Along & { upholstery: Interval; left: Interval };
const leavingInputs = (s: Scene, of: Of): Record<string, Computed> =>
  onBoard(s, of, () => ({
    ...weighed(s, of),
    mu: of(pushFriction),
    incline: of(inclineStart),
    upholstery: of.default("friction-upholstery"),
    left: of.default("still-on-upholstery"),
  }));
export const leavingRatio = (i: Omit<Leaving, "weight" | "share">): Interval =>
  pushRatio(mixedFriction(i.mu, i.upholstery, i.left), i.incline);

export const pushLeaving = derived({
  name: "push.leaving",
  dimension: "force",
  says: "push along the board over the first inches, while part of the sitting area still drags on the upholstery",
  formula:
    "weight on the board x (sin(slope) + friction x cos(slope)), the friction shared between board and upholstery",
  source: "statics of a body on an incline",
  inputs: leavingInputs,
  compute: (i: Leaving) => multiply(onTheBoard(i.weight, i.share), leavingRatio(i)),
});

export const pushLeavingExtra = derived({
  name: "push.leaving-extra",
  dimension: "force",
  says: "how much more the first inches take than the same place once the client sits on the board alone",
  formula:
    "weight on the board x cos(slope) x part still on upholstery x (friction there - friction on the board)",
  source: "statics of a body on an incline",
  inputs: leavingInputs,
  compute: (i: Leaving): Interval => {
    const difference: Interval = {
      low: i.upholstery.low - i.mu.high,
      nominal: i.upholstery.nominal - i.mu.nominal,
      high: i.upholstery.high - i.mu.low,
    };
    const steep = Math.max(Math.abs(i.incline.low), Math.abs(i.incline.high));
    const flat =
      i.incline.low <= 0 && i.incline.high >= 0
        ? 0
        : Math.min(Math.abs(i.incline.low), Math.abs(i.incline.high));
    const cosine: Interval = {
      low: Math.max(0, Math.cos(steep)),
      nominal: Math.max(0, Math.cos(i.incline.nominal)),
      high: Math.cos(flat),
    };
    return multiply(multiply(onTheBoard(i.weight, i.share), cosine), multiply(i.left, difference));
  },
});

export const pushPeak = derived({
  name: "push.peak",
  dimension: "force",
  says: "the greatest push along the board, whoever gives it, the client lifting nothing with the arms",
  formula: "greatest of push.leaving, push.along-board-start and push.along-board-end",
  source: "statics of a body on an incline",
  inputs: (_s, of) => ({ leaving: of(pushLeaving), start: of(pushStart), end: of(pushEnd) }),
  compute: (i: { leaving: Interval; start: Interval; end: Interval }) =>
    larger(i.leaving, larger(i.start, i.end)),
});

export const pushShare = derived({
  name: "push.of-weight",
  dimension: "ratio",
  says: "the greatest push along the board as a part of the client's whole weight",
  formula: "part of the weight on the board x (sin(slope) + friction x cos(slope)), the greatest on the way",
  source: "statics of a body on an incline",
  inputs: (s, of) =>
    onBoard(s, of, () => ({
      share: of(boardLoadShare),
      mu: of(pushFriction),
      incline: of(inclineStart),
      end: of(inclineEnd),
      upholstery: of.default("friction-upholstery"),
      left: of.default("still-on-upholstery"),
    })),
  compute: (i: Omit<Leaving, "weight"> & { end: Interval }): Interval =>
    multiply(i.share, larger(leavingRatio(i), larger(pushRatio(i.mu, i.incline), pushRatio(i.mu, i.end)))),
});

export const pushRunaway = derived({
  name: "push.runaway",
  dimension: "angle",
  says: "how much steeper the board could be before the client slides on it unpushed; below zero the client does",
  formula: "atan(friction) - slope of the board, the steeper of start and end",
  source: "a body at rest on a slope starts to slide when tan(slope) passes the friction",
  inputs: (s, of) => onBoard(s, of, () => ({ mu: of(pushFriction), slope: of(boardSlope) })),
  compute: (i: { mu: Interval; slope: Interval }): Outcome => ({ value: slidingMargin(i.mu, i.slope) }),
});

/** A push shared evenly by a number of people. */
export const sharedBy = (push: Interval, count: number): Interval => scale(push, 1 / count);
