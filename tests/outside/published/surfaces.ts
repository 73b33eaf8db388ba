/** Heights of beds and seats, and what is in the way at the edge of a surface. */
import type { Only, Printed, PrintedLimit } from "./figures.js";

const guestRooms: Only = {
  versions: ["2026.1"],
  because: "2026.2 has no rule on the height of a bed by itself: what counts is the chair's own seat",
};

export const surfaces: readonly Printed[] = [
  { source: "mde-committee-2013", at: "18 inch low height", figures: ["about 1 in"] },
  { source: "mde-2017", at: "M301.2.4, exception 1", figures: ["3 in (75 mm)"] },
  {
    source: "lodging-bed-heights",
    at: "bed height fact sheet",
    figures: ["17-23 in", "2010 Standards"],
    only: guestRooms,
  },
  { source: "dsouza-2022", at: "Table 2", figures: ["manual, combined: n 277, mean 19.5 in, 16.3-23.9 in"] },
  {
    source: "ada-2010",
    at: "604.4, exception 2",
    figures: ["dwelling units: 15 in (380 mm) to 19 in (485 mm) to the top of the seat"],
  },
  {
    source: "ada-2010",
    at: "610.2 and 610.3",
    figures: [
      "tub: top of the seat 17 in (430 mm) to 19 in (485 mm)",
      "tub: removable 15 to 16 in (380-405 mm) deep, fixed 15 in (380 mm) at least",
      "shower: top of the seat 17 in (430 mm) to 19 in (485 mm) above the floor of the room",
    ],
  },
  { source: "ada-2010", at: "502.4", figures: ["level with the parking space, 1:48 at most"] },
  { source: "ada-2010", at: "403.3", figures: ["running slope 1:20 at most"] },
  { source: "pool-guide", at: "on the armrests of pool lifts", figures: [] },
  { source: "commode-policy", at: "on detachable arms", figures: [] },
];

export const surfaceLimits: readonly PrintedLimit[] = [
  {
    name: "bed-low",
    printed: 17,
    unit: "in",
    source: "lodging-bed-heights",
    at: "bed height fact sheet",
    rounding: 0,
    only: guestRooms,
  },
  {
    name: "bed-high",
    printed: 23,
    unit: "in",
    source: "lodging-bed-heights",
    at: "bed height fact sheet",
    rounding: 0,
    only: guestRooms,
  },
  { name: "chair-lowest", printed: 16.3, unit: "in", source: "dsouza-2022", at: "Table 2", rounding: 1 / 8 },
  { name: "chair-highest", printed: 23.9, unit: "in", source: "dsouza-2022", at: "Table 2", rounding: 1 / 8 },
  { name: "seat-low", printed: 17, unit: "in", source: "ada-2010", at: "610.2 and 610.3", rounding: 0 },
  { name: "seat-high", printed: 19, unit: "in", source: "ada-2010", at: "610.2 and 610.3", rounding: 0 },
  { name: "toilet-low", printed: 15, unit: "in", source: "ada-2010", at: "604.4, exception 2", rounding: 0 },
  { name: "level-ground", printed: 100 / 48, unit: "%", source: "ada-2010", at: "502.4", rounding: 0 },
  { name: "rolling-ground", printed: 100 / 20, unit: "%", source: "ada-2010", at: "403.3", rounding: 0 },
];
