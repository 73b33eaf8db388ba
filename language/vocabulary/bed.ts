/** The bed. */
import {
  choice,
  choiceShape,
  either,
  length,
  lengthRange,
  list,
  mass,
  note,
  part,
  parts,
  ratedLoad,
  sidePart,
  size,
} from "./shapes.js";
import type { BlockSpec } from "./types.js";

export const bed: BlockSpec = {
  help: "a bed",
  name: "optional",
  keys: {
    top: length(8, 48)("floor to the top of the mattress, nobody on it", {
      need: "required",
      measure: "tape upright at the edge, where the person will sit",
    }),
    "top-loaded": length(8, 48)("the same with somebody of like weight sitting on the edge", {
      need: "required",
      measure: "somebody sits on the edge; tape from the floor to the mattress beside the hip",
      default: "sink-edge-*",
    }),
    "loaded-with": mass(40, 700)("what sat on the edge when top-loaded was taken", {
      measure: "the weight of the person who sat there",
      safer: "low",
    }),
    size: size()("width by length of the mattress", {
      need: "required",
      measure: "side to side, then head to foot, along the top of the mattress",
    }),
    edge: choice("firm", "soft", "rounded")("what the edge of the mattress is like", { need: "required" }),
    adjusts: either(choiceShape("no"), lengthRange(6, 48))(
      "whether its height adjusts, and between which heights of the mattress top",
      {
        need: "wanted",
        measure: "drive it all the way down, then up, and tape the mattress top each time",
      },
    ),
    "moved-by": choice(
      "mains",
      "battery",
      "crank",
      "pedal",
    )("what moves it; mains without a battery stops in a power cut"),
    castors: choice("none", "locked", "unlocked")("its castors", { need: "wanted", also: ["casters"] }),
    rails: choice("none", "left", "right", "both")("its rails"),
    rail: parts(sidePart, part("kind", choiceShape("fixed", "folds-down", "lifts-off", "none")))(
      "the rail on one side, and how it is taken out of the way",
      { many: true, distinct: "side" },
    ),
    "room-under": length(0, 30)("clear height under it", {
      measure: "floor to the lowest part of the frame, over the whole depth of a lift's legs",
      safer: "low",
    }),
    "rated-load": ratedLoad(100),
    "rated-load-includes": list(choiceShape("client", "mattress", "rails", "accessories", "helper"))(
      "what the maker counts into the rated load besides the client",
      { measure: "in the data sheet; some ratings include mattress and rails" },
    ),
    note,
  },
};
