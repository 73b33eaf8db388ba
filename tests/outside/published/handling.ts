/** Handling people: guidance for helpers, and how much help somebody needs. */
import type { Only, Printed, PrintedLimit } from "./figures.js";

const oneHelper: Only = {
  versions: ["2026.2"],
  because: "person/one-helper-for-most is new in 2026.2",
};

export const handling: readonly Printed[] = [
  { source: "osha-3182", at: "lateral transfer, sitting", figures: [] },
  { source: "osha-3182", at: "Figure 1, seated to seated", figures: [] },
  { source: "vha-2014", at: "Algorithm 1", figures: [] },
  { source: "vha-2014", at: "Algorithm 1, note on seated transfer aids", figures: [] },
  { source: "gate-boards", at: "Checking and setting up", figures: [] },
  { source: "gate-boards", at: "Safe transferring", figures: [] },
  { source: "gate-boards", at: "Assessment interview", figures: [] },
  { source: "waters-2007", at: "abstract and opening", figures: ["35 lb (15.9 kg)"] },
  { source: "home-lift-2014", at: "algorithm", figures: ["35 lb"] },
  { source: "section-gg", at: "codes 04 to 02", figures: [] },
  { source: "section-gg", at: "code 01", figures: [] },
  // Code 02: more than half the effort. Code 01: all of it, "or, the assistance of 2 or more helpers".
  { source: "section-gg", at: "codes 02 and 01", figures: ["2 or more helpers"], only: oneHelper },
];

export const handlingLimits: readonly PrintedLimit[] = [
  {
    name: "lift-by-hand",
    printed: 35,
    unit: "lb",
    source: "waters-2007",
    at: "abstract and opening",
    rounding: 0,
  },
];
