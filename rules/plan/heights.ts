/** Heights, slopes and loads. Metres, radians, kilograms. */
import { larger, negate, type Interval } from "../../language/quantity/interval.js";

/** Where a board rests on a chair: on the rail or on what stands higher than it. A rigid board lies on the higher of two. */
export const boardRest = (rail: Interval | undefined, seat: Interval | undefined): Interval | undefined =>
  rail && seat ? larger(rail, seat) : (rail ?? seat);

/** Angle of a board from its rise and the run over which it rises; 0 without a rise. */
export function slope(rise: Interval, runUp: Interval, runDown: Interval): Interval {
  const up = (r: number, run: number) => (r <= 0 ? 0 : run <= 0 ? Math.PI / 2 : Math.atan(r / run));
  const nominal = rise.nominal >= 0 ? up(rise.nominal, runUp.nominal) : up(-rise.nominal, runDown.nominal);
  const down = negate(rise);
  const high = Math.max(up(rise.high, runUp.low), up(down.high, runDown.low));
  const low = rise.low > 0 ? up(rise.low, runUp.high) : rise.high < 0 ? up(down.low, runDown.high) : 0;
  return { low: Math.min(low, nominal), nominal, high: Math.max(high, nominal) };
}

/** What a thing carries as a part of what it is rated for. */
export function loadRatio(mass: Interval, factor: Interval, rated: Interval): Interval | undefined {
  if (rated.low <= 0) return undefined;
  return {
    low: (mass.low * factor.low) / rated.high,
    nominal: (mass.nominal * factor.nominal) / rated.nominal,
    high: (mass.high * factor.high) / rated.low,
  };
}
