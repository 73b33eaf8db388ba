/**
 * Rooms, doors, routes, thresholds, ramps and the room under equipment.
 *
 * Millimetres are the figures printed beside the inches, which are rounded: 32 in is printed as 815 mm.
 * In the 2010 Standards an exception stands under its section, so its figures stand at the section too.
 */
import type { Only, Printed, PrintedLimit } from "./figures.js";

const openEdge: Only = { versions: ["2026.2"], because: "ramp/open-edge is new in 2026.2" };

export const places: readonly Printed[] = [
  { source: "ada-2010", at: "302.1", figures: [] },
  { source: "ada-2010", at: "303.2", figures: ["vertical: 1/4 in (6.4 mm) at most"] },
  {
    source: "ada-2010",
    at: "303.2 and 303.3",
    figures: [
      "vertical: 1/4 in (6.4 mm) at most",
      "bevelled: 1/4 in (6.4 mm) to 1/2 in (13 mm), no steeper than 1:2",
    ],
  },
  { source: "ada-2010", at: "304.3.1", figures: ["60 in (1525 mm) across at least"] },
  {
    source: "ada-2010",
    at: "403.5.1",
    figures: [
      "36 in (915 mm) at least",
      "exception: 32 in (815 mm) at least for 24 in (610 mm) at most",
      "between such places 48 in (1220 mm) long, 36 in (915 mm) wide",
    ],
  },
  {
    source: "ada-2010",
    at: "403.5.1, exception",
    figures: [
      "32 in (815 mm) at least for 24 in (610 mm) at most",
      "between such places 48 in (1220 mm) long, 36 in (915 mm) wide",
    ],
  },
  {
    source: "ada-2010",
    at: "404.2.3",
    figures: [
      "32 in (815 mm) at least, door open 90 degrees",
      "deeper than 24 in (610 mm): 36 in (915 mm)",
      "nothing in the way below 34 in (865 mm), 4 in (100 mm) at most from 34 to 80 in (2030 mm)",
    ],
  },
  {
    source: "ada-2010",
    at: "404.2.5 with 303",
    figures: [
      "threshold 1/2 in (13 mm) at most",
      "exception: existing or altered 3/4 in (19 mm) at most, bevelled on each side no steeper than 1:2",
      "vertical: 1/4 in (6.4 mm) at most",
      "bevelled: 1/4 in (6.4 mm) to 1/2 in (13 mm), no steeper than 1:2",
    ],
  },
  {
    source: "ada-2010",
    at: "404.2.5, exception",
    figures: ["existing or altered: 3/4 in (19 mm) at most, bevelled on each side no steeper than 1:2"],
  },
  { source: "ada-2010", at: "405.2", figures: ["no steeper than 1:12"] },
  {
    source: "ada-2010",
    at: "Table 405.2",
    figures: [
      "steeper than 1:12 up to 1:10: rise 6 in (150 mm) at most",
      "steeper than 1:10 up to 1:8: rise 3 in (75 mm) at most",
      "steeper than 1:8: prohibited",
    ],
  },
  {
    source: "ada-2010",
    at: "405.2 and Table 405.2",
    figures: [
      "no steeper than 1:12",
      "existing sites, up to 1:10: rise 6 in (150 mm) at most",
      "existing sites, up to 1:8: rise 3 in (75 mm) at most",
      "steeper than 1:8: prohibited",
    ],
  },
  { source: "ada-2010", at: "405.5", figures: ["36 in (915 mm) at least"] },
  { source: "ada-2010", at: "405.6", figures: ["30 in (760 mm) at most"] },
  { source: "ada-2010", at: "405.7.3", figures: ["60 in (1525 mm) long at least"] },
  // 405.8: handrails complying with 505 above that rise. 505.2: on both sides.
  {
    source: "ada-2010",
    at: "405.8 with 505.2",
    figures: ["rise greater than 6 in (150 mm)"],
    only: openEdge,
  },
  {
    source: "ada-2010",
    at: "405.9",
    figures: [
      "surface 12 in (305 mm) at least beyond the inside face of a handrail",
      "or no 4 in (100 mm) sphere passes within 4 in (100 mm) of the surface",
      "exception: no handrails required and sides no steeper than 1:10",
    ],
    only: openEdge,
  },
  {
    source: "ada-2010",
    at: "806.2.3 with 305.3",
    figures: ["30 in (760 mm) by 48 in (1220 mm) at least, parallel, on both sides of a bed"],
  },
  // Said of things with room for knees and toes under them; the 48 in are the length of the chair's own clear space.
  {
    source: "turning-guide",
    at: "turning space",
    figures: ["overlap about 12 in at most", "48 in long stay clear"],
  },
  {
    source: "wheeled-mobility-2010",
    at: "4.3.5.1",
    figures: [
      "manual and power: 850 mm (33 in) 50 %, 1000 mm (39 in) 95 %",
      "915 mm (36 in): less than 80 %",
      "scooters: 1100 mm (43 in) 95 %",
    ],
    follows: [100], // shares of a hundred
  },
  {
    source: "assisted-transfers-2001",
    at: "recommendations",
    figures: ["24 in at least between the side of the toilet seat and any obstruction"],
  },
  {
    source: "mde-2017",
    at: "M301.4.1",
    figures: ["39 in (990 mm) wide", "6 in (150 mm) high", "36 in (915 mm) deep"],
  },
  { source: "mde-proposal-2012", at: "M301.4 and M302.4", figures: [] },
];

const ada = (name: string, printed: number, unit: string, at: string): PrintedLimit => ({
  name,
  printed,
  unit,
  source: "ada-2010",
  at,
  rounding: 0,
});

export const placeLimits: readonly PrintedLimit[] = [
  ada("door-clear", 32, "in", "404.2.3"),
  ada("route-clear", 36, "in", "403.5.1"),
  ada("route-pinch", 32, "in", "403.5.1, exception"),
  ada("turning-circle", 60, "in", "304.3.1"),
  ada("bedside-width", 30, "in", "806.2.3 with 305.3"),
  ada("threshold-usual", 1 / 2, "in", "404.2.5 with 303"),
  ada("threshold-square", 1 / 4, "in", "303.2"),
  ada("threshold-existing", 3 / 4, "in", "404.2.5, exception"),
  // Slopes are printed as 1:12, 1:10 and 1:8.
  ada("ramp-usual", 100 / 12, "%", "405.2"),
  ada("ramp-short", 100 / 10, "%", "Table 405.2"),
  ada("ramp-steepest", 100 / 8, "%", "Table 405.2"),
  ada("ramp-landing", 60, "in", "405.7.3"),
  ada("ramp-rise", 30, "in", "405.6"),
  {
    name: "turning-left",
    printed: 48,
    unit: "in",
    source: "turning-guide",
    at: "turning space",
    rounding: 0,
  },
  // Printed as 1000 mm beside 39 in, which is 990.6 mm: the metric figure is the one that was measured.
  {
    name: "turn-usual",
    printed: 1000,
    unit: "mm",
    source: "wheeled-mobility-2010",
    at: "4.3.5.1",
    rounding: 0,
  },
  {
    name: "helper-room",
    printed: 24,
    unit: "in",
    source: "assisted-transfers-2001",
    at: "recommendations",
    rounding: 0,
  },
];
