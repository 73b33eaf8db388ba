/**
 * Where the hips arrive along a bed and where they should be. Distances from the bed's head end in metres.
 */
import { add, multiply, negate, type Interval } from "../../language/quantity/interval.js";

/**
 * Where the hips arrive: a board at an angle to the edge's normal carries them along the edge by tan(angle) times the way
 * across. `angle` above 0 is towards the chair's front; facing the head, that is towards the head end.
 */
export function arrival(
  along: Interval,
  angle: Interval,
  across: Interval,
  facing: "head" | "foot",
): Interval {
  if (angle.low === 0 && angle.high === 0) return along;
  const shift = multiply(
    { low: Math.tan(angle.low), nominal: Math.tan(angle.nominal), high: Math.tan(angle.high) },
    across,
  );
  return add(along, facing === "head" ? negate(shift) : shift);
}

/** Top of the head from the head end, and from there to the hip joint. */
export const target = (pillow: Interval, headToHip: Interval): Interval => add(pillow, headToHip);
