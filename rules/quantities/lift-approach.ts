/** `lift.approach`: whether a floor lift can be rolled up to the bed with its legs square to it. */
import { subtract, type Interval } from "../../language/quantity/interval.js";
import type { Of, Outcome } from "../quantity.js";
import type { Scene } from "../scene.js";
import { derived, without } from "./inputs.js";
import { sideClearance } from "./room-side.js";
import type { Inputs } from "./standing.js";

export const liftApproach = derived({
  name: "lift.approach",
  dimension: "length",
  says: "what is left beside the bed when the floor lift stands there with its whole base, before its legs go under; below zero it does not stand there",
  formula: "room.side-clearance - length of the lift's base",
  source: "plane geometry",
  inputs: (s: Scene, of: Of): Inputs => {
    const lift = s.liftMeant;
    if (!lift) return { none: without("no floor lift is used") };
    return {
      side: of(sideClearance),
      base: of.written(lift, "base-length", `the length of the base of ${lift.name}`),
    };
  },
  compute: (i: { readonly side: Interval; readonly base: Interval }): Outcome => ({
    value: subtract(i.side, i.base),
  }),
});
