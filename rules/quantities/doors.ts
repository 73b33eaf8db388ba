/** `door.clear-width`: the narrowest door on the way into the room. */
import type { Interval } from "../../language/quantity/interval.js";
import type { Of, Outcome } from "../quantity.js";
import type { Scene } from "../scene.js";
import { absent, derived } from "./inputs.js";
import type { Inputs } from "./standing.js";
import { doorMissing, doorsIn, item, leastOf, list, listed } from "./way-parts.js";

/**
 * Where a route names its doors, all of them are passed. Where none does and the room has several doors, only one of them need be:
 * then the width on the way in may be that of any, and the interval runs from the narrowest to the widest.
 */
export const doorClearWidth = derived({
  name: "door.clear-width",
  dimension: "length",
  says: "clear width of the narrowest door on the way into the room, with the door open",
  formula: "least clear width of the doors that a route names; without a route, of the room's doors",
  source: "plane geometry",
  inputs: (s: Scene, of: Of): Inputs => {
    const { doors, all, elsewhere } = doorsIn(s);
    if (elsewhere)
      return { none: absent(elsewhere.route, `the clear width of the door ${elsewhere.name}`, "through") };
    if (doors.length === 0) return { none: doorMissing(s) };
    return {
      all,
      ...list(
        "door",
        doors.map((d) => item(of, d, "clear", d.name, `the clear width of the door ${d.name}`)),
      ),
    };
  },
  compute: (i: Readonly<Record<string, unknown>>): Outcome => {
    const doors = listed(i, "door");
    const narrowest = leastOf(doors)!;
    const widest = Math.max(...doors.map((d) => d.value.high));
    const value: Interval =
      i["all"] === true || doors.length === 1 ? narrowest.value : { ...narrowest.value, high: widest };
    return { value, choice: narrowest.name };
  },
});
