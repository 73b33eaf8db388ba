/** How far the board's far end jumps when the client's weight passes the higher edge. */
import { larger, type Interval } from "../../language/quantity/interval.js";
import { seesaw } from "../plan/beam.js";
import { boardRiseEnd, boardRiseStart } from "./board-rise.js";
import { boardRun } from "./board-slope.js";
import { boardOr, derived } from "./inputs.js";

export const boardSeesaw = derived({
  name: "board.seesaw",
  dimension: "length",
  says: "how far the board's low end lifts when the weight passes the higher edge, the greater of start and end",
  formula: "run x sin(slope)",
  source: "a rigid board on the higher edge turns about it",
  inputs: (s, of): Record<string, unknown> => {
    const b = boardOr(s);
    return "none" in b
      ? { none: b.none }
      : { start: of(boardRiseStart), end: of(boardRiseEnd), run: of(boardRun) };
  },
  compute: (i: { start: Interval; end: Interval; run: Interval }) =>
    larger(seesaw(i.start, i.run), seesaw(i.end, i.run)),
});
