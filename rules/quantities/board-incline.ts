/** The board's slope with its sign: above zero it climbs in the direction of motion. */
import type { Interval } from "../../language/quantity/interval.js";
import { inclineOf } from "../plan/incline.js";
import type { Outcome, QuantityRule } from "../quantity.js";
import { boardRiseEnd, boardRiseStart } from "./board-rise.js";
import { runBedHigher, runSeatHigher } from "./board-slope.js";
import { boardOr, derived } from "./inputs.js";

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
    inputs: (s, of): Record<string, unknown> => {
      const b = boardOr(s);
      if ("none" in b) return { none: b.none };
      return {
        rise: of(rise),
        seatHigher: of(runSeatHigher),
        bedHigher: of(runBedHigher),
        back: s.to !== undefined && s.to === s.chair,
      };
    },
    compute: (i: { rise: Interval; seatHigher: Interval; bedHigher: Interval; back: boolean }): Outcome => {
      const value = inclineOf(
        i.rise,
        i.back ? i.seatHigher : i.bedHigher,
        i.back ? i.bedHigher : i.seatHigher,
      );
      return value
        ? { value }
        : {
            missing: [{ what: "a board that reaches beyond the edge of the higher surface", key: "length" }],
          };
    },
  });

export const inclineStart = inclineAt("start", boardRiseStart);
export const inclineEnd = inclineAt("end", boardRiseEnd);
