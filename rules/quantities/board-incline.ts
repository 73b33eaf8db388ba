/** The board's slope with its sign: above zero it climbs in the direction of motion. */
import { inclineOf } from "../plan/incline.js";
import type { Outcome, QuantityRule } from "../quantity.js";
import { boardRiseEnd, boardRiseStart } from "./board-rise.js";
import { slopingInputs, upAndDown, type Sloping } from "./board-slope.js";
import { derived } from "./inputs.js";

const inclineAt = (when: "start" | "end", rise: QuantityRule): QuantityRule =>
  derived({
    name: `board.incline-${when}`,
    dimension: "angle",
    says:
      when === "start"
        ? "slope of the board while the client still sits where the transfer starts; above zero it climbs, below zero it drops"
        : "slope of the board when the client is nearly across; above zero it climbs, below zero it drops",
    formula: "tan(slope) = rise of the board / run",
    source: "plane geometry",
    inputs: (s, of) => slopingInputs(s, of, { rise }),
    compute: (i: Sloping): Outcome => {
      const value = inclineOf(i.rise, ...upAndDown(i));
      return value
        ? { value }
        : {
            missing: [{ what: "a board that reaches beyond the edge of the higher surface", key: "length" }],
          };
    },
  });

export const inclineStart = inclineAt("start", boardRiseStart);
export const inclineEnd = inclineAt("end", boardRiseEnd);
