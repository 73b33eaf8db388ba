/** Where the hips arrive along the bed, where they should be, and what is left to move. */
import { add, scale, subtract, type Interval } from "../../language/quantity/interval.js";
import { arrival, target } from "../plan/landing.js";
import { bodyPart, headToHip, lengthOf, type BodyPart } from "./body-part.js";
import { derived, absent, isWritten, without } from "./inputs.js";
import { gapHips } from "./gap.js";
import { boardSpan, laidAs } from "./laying.js";

export const landingHips = derived({
  name: "landing.hips",
  dimension: "length",
  says: "distance from the mattress head end to where the hip joint arrives",
  formula:
    "place along the bed before sliding, less (facing the head) or plus what an askew board carries along the edge: tan phi x the way across",
  source: "plane geometry",
  inputs: (s, of): Record<string, unknown> => {
    if (s.surface?.kind !== "bed") return { none: without("no bed takes part") };
    if (s.to === s.chair) return { none: without("the client leaves the bed") };
    const along = of.transfer("along", "the hip joint's place along the bed before sliding (along)");
    if (!s.board) return { along };
    const facing = s.value("facing").value;
    return {
      along,
      span: of(boardSpan),
      gap: of(gapHips),
      breadth: isWritten(s.client, "hip-breadth")
        ? of.written(s.client, "hip-breadth", "the client's breadth across the hips")
        : of.default("hip-breadth-default"),
      facing:
        typeof facing === "string"
          ? facing
          : absent(s.transfer, "which end of the bed the chair faces (facing)", "facing"),
    };
  },
  compute: (i: Carried): Interval => {
    if (!i.span) return i.along;
    const b = laidAs(i.span);
    // From the client's midline over the seat's half and the gap until the whole breadth of the hips is on the bed.
    const across = add(add(i.gap, scale(b.from.seatWidth, 0.5)), scale(i.breadth, 0.5));
    return arrival(i.along, b.laid.angle, across, i.facing);
  },
});

type Carried = { along: Interval } & (
  { span: Interval; gap: Interval; breadth: Interval; facing: "head" | "foot" } | { span?: undefined }
);

export const landingTarget = derived({
  name: "landing.target",
  dimension: "length",
  says: "distance from the mattress head end at which the hip joint must be for the head to lie on the pillow",
  formula:
    "top of the head from the head end + from there to the hip as measured, else part of stature from there to the hip joint x stature",
  source: "addition of lengths; the part of stature is the rule set's",
  inputs: (s, of): Record<string, unknown> => {
    if (s.surface?.kind !== "bed") return { none: without("no bed takes part") };
    return { pillow: of.default("pillow-allowance"), ...bodyPart(s, of, headToHip) };
  },
  compute: (i: { pillow: Interval } & BodyPart): Interval => target(i.pillow, lengthOf(i)),
});

export const landingScoot = derived({
  name: "landing.scoot",
  dimension: "length",
  says: "how far the client must still move up the bed; below zero down",
  formula: "landing.hips - landing.target",
  source: "difference of two lengths",
  inputs: (_s, of) => ({ hips: of(landingHips), target: of(landingTarget) }),
  compute: (i: { hips: Interval; target: Interval }) => subtract(i.hips, i.target),
});
