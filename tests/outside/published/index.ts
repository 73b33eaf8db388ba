/** All printed figures and limits, of every topic. A new topic is listed here. */
import type { Printed, PrintedLimit } from "./figures.js";
import { handling, handlingLimits } from "./handling.js";
import { mechanics, mechanicsLimits } from "./mechanics.js";
import { placeLimits, places } from "./places.js";
import { studies, studyLimits } from "./studies.js";
import { surfaceLimits, surfaces } from "./surfaces.js";

export const printed: readonly Printed[] = [...studies, ...surfaces, ...places, ...handling, ...mechanics];

/** Every limit of a rule set that is published, beside what its source prints. */
export const limits: readonly PrintedLimit[] = [
  ...studyLimits,
  ...surfaceLimits,
  ...placeLimits,
  ...handlingLimits,
  ...mechanicsLimits,
];
