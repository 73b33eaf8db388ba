/** `height.rise`: what the body climbs. */
import { subtract } from "../../language/quantity/interval.js";
import { quantity } from "../quantity.js";
import { loadedFrom, loadedTo } from "./height-loaded.js";

export const heightRise = quantity({
  name: "height.rise",
  dimension: "length",
  says: "how far the body climbs; below zero it drops",
  formula: "height sat on where it arrives - height sat on where it leaves",
  source: "difference of two heights",
  inputs: (_s, of) => ({ to: of(loadedTo), from: of(loadedFrom) }),
  compute: (i) => subtract(i.to, i.from),
});
