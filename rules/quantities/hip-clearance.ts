/** What the buttock passes beside the drive wheel on its way along the board. */
import type { Interval } from "../../language/quantity/interval.js";
import type { Outcome } from "../quantity.js";
import { wheelClearance } from "./board-bearing.js";
import { boardOr, derived } from "./inputs.js";

export const hipClearance = derived({
  name: "board.hip-clearance",
  dimension: "length",
  says: "distance between the drive wheel and the buttock that passes it along the board; below zero the buttock rubs over the wheel",
  formula: "board.wheel-clearance + half of the board's width - what of the body lies behind the hip joint",
  source: "plane geometry; the hip joints travel over the board's middle line",
  inputs: (s, of): Record<string, unknown> => {
    const b = boardOr(s);
    if ("none" in b) return { none: b.none };
    return {
      wheel: of(wheelClearance),
      width: of.written(b.board, "width", "the board's width"),
      behind: of.default("hip-from-seat-rear"),
    };
  },
  // The clearance was measured from the board's side: half of its width is in it, taken away, and is given back here.
  compute: (i: { wheel: Interval; width: Interval; behind: Interval }): Outcome => ({
    value: {
      low: i.wheel.low + i.width.high / 2 - i.behind.high,
      nominal: i.wheel.nominal + i.width.nominal / 2 - i.behind.nominal,
      high: i.wheel.high + i.width.low / 2 - i.behind.low,
    },
  }),
});
