import { exactly, scale, type Interval } from "../../../language/quantity/interval.js";
import { seatAlone, type Plan } from "../../../rules/plan/parking.js";

/** A chair of which only the seat can touch, as where the gap was taped. */
export function seatOnly(depth: Interval, width: Interval): Plan {
  const half = scale(width, 0.5);
  const zero = exactly(0);
  return seatAlone({ depth, half, wide: half, axle: zero, tip: zero, farTip: zero, solids: [] });
}
