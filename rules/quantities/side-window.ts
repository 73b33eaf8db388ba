/** `chair.side-window`: the free side of the seat in front of the wheel, in which a board must lie. */
import type { Interval } from "../../language/quantity/interval.js";
import { sideWindow } from "../plan/chair-solids.js";

import { derived, absent, block, isWritten, without } from "./inputs.js";

export const chairSideWindow = derived({
  name: "chair.side-window",
  dimension: "length",
  says: "free side of the seat in front of the drive wheel, at the height where a board rests",
  formula:
    "as taped, else seat depth - (axle + sqrt(r^2 - (h - r)^2)), h the rail's height and r the wheel's radius; the whole depth where the wheel ends below",
  source: "plane geometry",
  inputs: (s, of): Record<string, unknown> => {
    const chair = s.chair;
    if (!chair) return { none: without("no wheelchair takes part") };
    if (isWritten(chair, "side-window"))
      return { taped: of.written(chair, "side-window", "the free seat side in front of the wheel") };
    const wheel = block(chair, "drive-wheel");
    return {
      depth: of.written(chair, "seat-depth", "the seat's depth"),
      axle: wheel
        ? of.written(wheel, "axle", "the axle's place under the seat")
        : absent(chair, "the axle's place under the seat", "drive-wheel"),
      diameter: wheel
        ? of.written(wheel, "diameter", "the drive wheel's diameter")
        : absent(chair, "the drive wheel's diameter", "drive-wheel"),
      height: isWritten(chair, "rail-height")
        ? of.written(chair, "rail-height", "the rail's height")
        : of.written(chair, "seat-height", "the seat's height"),
    };
  },
  compute: (i: {
    taped?: Interval;
    depth: Interval;
    axle: Interval;
    diameter: Interval;
    height: Interval;
  }): Interval => {
    return i.taped ?? sideWindow(i.depth, i.axle, i.diameter, i.height).window;
  },
});
