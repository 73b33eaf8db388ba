/** What the door opening of a car leaves to somebody who sits in it lengthwise, from the back of the buttocks to the front of the knee. */
import { subtract, type Interval } from "../../language/quantity/interval.js";
import { bodyPart, buttockKneeLength, lengthOf, type BodyPart } from "./body-part.js";
import { absent, derived, without } from "./inputs.js";

export const doorPastKnees = derived({
  name: "door.past-knees",
  dimension: "length",
  says: "how much longer a car's door opening is than the client sitting in it, from the back of the buttocks to the front of the knee; below zero it is shorter",
  formula:
    "door opening - buttock-knee length as measured, else part of stature to the front of the knee x stature",
  source: "difference of two lengths; the part of stature is the rule set's",
  inputs: (s, of): Record<string, unknown> => {
    if (!s.surface) return { none: absent(s.transfer, "where the transfer starts and ends", "from") };
    if (s.surface.kind !== "car-seat") return { none: without("no car takes part") };
    return {
      opening: of.written(s.surface, "door-opening", "the clear opening of the car's door"),
      ...bodyPart(s, of, buttockKneeLength),
    };
  },
  compute: (i: { opening: Interval } & BodyPart): Interval => subtract(i.opening, lengthOf(i)),
});
