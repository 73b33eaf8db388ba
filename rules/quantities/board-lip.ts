/** What there is to climb or drop at the board's end. */
import { multiply, type Interval } from "../../language/quantity/interval.js";
import { isQuantity } from "../../language/model/types.js";
import { readThickness } from "./bending.js";
import { boardOr, derived } from "./inputs.js";

export const boardLip = derived({
  name: "board.lip",
  dimension: "length",
  says: "thickness of the board at its end, over which the client comes off it and on to it",
  formula: "thickness in the middle x what a tapered end leaves of it; all of it on a plain plank",
  source: "the part from the rule set",
  inputs: (s, of): Record<string, unknown> => {
    const b = boardOr(s);
    if ("none" in b) return { none: b.none };
    const thickness = b.board.values["thickness"];
    return {
      thickness: of.written(b.board, "thickness", "the board's thickness"),
      asRead: of.default("thickness-read"),
      toleranceGiven: isQuantity(thickness) && thickness.toleranceGiven,
      end: of.default("board-end-share"),
    };
  },
  compute: (i: { thickness: Interval; asRead: Interval; toleranceGiven: boolean; end: Interval }) =>
    multiply(readThickness(i), i.end),
});
