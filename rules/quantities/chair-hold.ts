/** Whether the parked chair stays where it is while somebody leaves it or comes to it. */
import { scale, smaller, type Interval } from "../../language/quantity/interval.js";
import { floorHold, lockHold } from "../plan/tipping.js";
import type { Outcome } from "../quantity.js";
import { chairLoad, loadedAs } from "./chair-load.js";
import { onBoard, type At } from "./chair-stages.js";
import { worst } from "./chair-margin.js";
import { boardOr, derived } from "./inputs.js";
import { clientWeight, gravity } from "./weight.js";

export const chairHold = derived({
  name: "chair.hold",
  dimension: "force",
  says: "what is left of the hold of the locked chair while somebody pushes off from it or drags on to it, at the worst stage; below zero it slides away",
  formula:
    "smaller of (friction on the floor x load on the drive wheels, what locked wheels hold) - part of the push that goes into the chair",
  source: "statics: friction, and the balance of moments about the castors",
  inputs: (s, of): Record<string, unknown> => {
    const b = boardOr(s);
    if ("none" in b) return { none: b.none };
    return {
      load: of(chairLoad),
      weight: clientWeight(s, of),
      floor: of.default("friction-tyre-floor"),
      locks: of.default("lock-slope"),
    };
  },
  compute: (i: { load: Interval; weight: Interval; floor: Interval; locks: Interval }): Outcome => {
    const load = loadedAs(i.load);
    const chair = scale(load.chairMass, gravity);
    const hold = ({ along: { part: _part, ...along }, share, away }: At): Interval | undefined => {
      const weights = { body: i.weight, share, chair, away };
      const floor = floorHold({ ...along, ...weights, floor: i.floor });
      const locks = lockHold({ ...weights, slope: i.locks });
      return floor && locks && smaller(floor, locks);
    };
    return worst(
      // The chair left empty carries no drag: whoever pushes off from it then pushes it away, and is told so.
      onBoard(load).filter((at) => at.stage !== "last-contact"),
      hold,
      { dimension: "force", unit: { unit: "lbf" } },
    );
  },
});
