/** How the edge that is sat on lies against the hollow of the client's knee: whether the feet stand, and how far the hips bend. */
import { add, subtract, type Interval } from "../../language/quantity/interval.js";
import type { Thing } from "../../language/model/types.js";
import type { Of } from "../quantity.js";
import type { Scene } from "../scene.js";
import { bodyPart, lengthOf, poplitealHeight, type BodyPart } from "./body-part.js";
import { heightWords, setHeight } from "./height-empty.js";
import { sunkAsMeasured } from "./height-loaded.js";
import { absent, derived, isWritten } from "./inputs.js";

/** The edge from the ground under it: the feet stand there. What nobody sat on is not known; here no usual sinking stands in. */
function edgeInputs(thing: Thing, s: Scene, of: Of): Record<string, unknown> {
  const loaded = of.written(thing, "top-loaded", `${heightWords(thing)} with somebody sitting on its edge`);
  const set = setHeight(thing, s);
  if (!set) return { loaded };
  return {
    loaded,
    before: of.written(thing, "top", heightWords(thing)),
    set: of.written(set, "height", `${heightWords(thing)} as it is set`),
  };
}

type Edge = { loaded: Interval; set?: undefined } | { loaded: Interval; before: Interval; set: Interval };

export const heightOverPopliteal = derived({
  name: "height.over-popliteal",
  dimension: "length",
  says: "how far the edge that is sat on stands above the hollow of the client's knee; below zero it stands lower",
  formula:
    "height as measured with somebody sitting (set otherwise: height as it is set, less what it sank when measured) - popliteal height as measured, else (part of stature to the hollow of the knee x stature + sole of the shoe)",
  source: "difference of two heights; the part of stature is the rule set's",
  inputs: (s, of): Record<string, unknown> => {
    if (!s.surface) return { none: absent(s.transfer, "where the transfer starts and ends", "from") };
    const measured = isWritten(s.client, poplitealHeight.key);
    return {
      ...edgeInputs(s.surface, s, of),
      ...bodyPart(s, of, poplitealHeight),
      // Measured in the shoes that are worn; what is printed was measured on bare feet.
      ...(!measured && { sole: of.default("sole-thickness") }),
    };
  },
  compute: (i: Edge & BodyPart & { sole?: Interval }): Interval => {
    const edge = i.set ? sunkAsMeasured(i.set, i.before, i.loaded) : i.loaded;
    const hollow = lengthOf(i);
    return subtract(edge, i.sole ? add(hollow, i.sole) : hollow);
  },
});
