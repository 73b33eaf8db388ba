/** Boards, belts, lifts and what else is used or lent. */
import {
  angle,
  choice,
  choiceShape,
  either,
  flag,
  length,
  lengthRange,
  list,
  massRange,
  name,
  note,
  rangeOfLengths,
  ratedLoad,
  size,
} from "./shapes.js";
import type { BlockSpec } from "./types.js";

export const board: BlockSpec = {
  help: "a sliding board",
  name: "required",
  keys: {
    length: length(14, 48)("its length", { need: "required", measure: "end to end, along the middle" }),
    width: length(5, 16)("its width", { need: "required", measure: "at its narrowest", safer: "low" }),
    thickness: length(0.1, 2)("its thickness at the middle", { measure: "across the edge, at the middle" }),
    material: choice("wood", "plywood", "plastic", "composite")("what it is made of"),
    shape: choice("straight", "curved", "notched")("its shape"),
    "rated-load": ratedLoad(),
    "slides-at": angle(1, 45)("the slope at which clothing starts to slide on it", {
      measure: "the clothing with a bag of rice on the board, one end raised until it slides",
    }),
    note,
  },
};

export const belt: BlockSpec = {
  help: "a transfer belt",
  name: "required",
  keys: {
    fits: length(20, 80)("the longest waist that it fits", {
      measure: "tape along the belt, from the buckle to the last hole",
      safer: "low",
    }),
    handles: flag("has handles"),
    note,
  },
};

export const sheet: BlockSpec = {
  help: "a slide sheet",
  name: "required",
  keys: {
    size: size()("width by length", { measure: "laid flat" }),
    note,
  },
};

export const towel: BlockSpec = {
  help: "a towel or a cover, laid between skin and board",
  name: "required",
  keys: {
    size: size()("width by length", { measure: "laid flat" }),
    note,
  },
};

export const handle: BlockSpec = {
  help: "something fixed to hold: an overhead handle, a grab bar, a bed rail",
  name: "required",
  keys: {
    kind: choice("overhead", "grab-bar", "bed-rail", "floor-pole")("what it is", { need: "required" }),
    height: length(6, 100)("floor to where it is held", {
      need: "wanted",
      measure: "tape upright, from the floor to the grip; of an upright bar, to its lower end",
    }),
    length: length(4, 72)("length of the bar", { measure: "along the part that can be held" }),
    "from-edge": length(-40, 60)(
      "level, from the edge of the bed or seat out to the grip; behind it is a minus",
      {
        measure: "a string with a weight from the grip, tape from there to the edge",
      },
    ),
    "rated-load": ratedLoad(20),
    fixed: flag("was pulled hard and did not give"),
    note,
  },
};

export const lift: BlockSpec = {
  help: "a floor lift",
  name: "required",
  keys: {
    "rated-load": ratedLoad(),
    "leg-height": length(2, 8)("height of its legs, to go under a bed", {
      measure: "floor to the highest part of the legs that goes under",
      safer: "high",
    }),
    "base-width-open": length(20, 60)("width of its base with the legs spread", {
      measure: "outside to outside at the front castors, legs spread",
      safer: "high",
    }),
    "base-width-closed": length(16, 40)("width of its base with the legs closed", {
      measure: "outside to outside, legs closed",
      safer: "high",
    }),
    "base-length": length(28, 72)("length of its base", {
      measure: "level, from the rear castor to the front one",
      safer: "high",
    }),
    reach: length(8, 50)("how far the hanger bar stands ahead of the mast", {
      measure: "arm level: level from the mast to the middle of the hanger bar",
      safer: "low",
    }),
    "lift-range": rangeOfLengths(0, 90)("heights between which the hanger bar moves", {
      measure: "floor to the hooks of the hanger bar, all the way down and all the way up",
    }),
    "moved-by": choice("battery", "hand-pump", "mains")("what lifts"),
    note,
  },
};

export const sling: BlockSpec = {
  help: "the sling of a lift",
  name: "required",
  keys: {
    for: name("lift")("the lift to which it belongs", { need: "wanted" }),
    fits: either(massRange(20, 700), lengthRange(10, 90))(
      "the size range for which it is made: body masses, or lengths from tail bone to crown",
      {
        need: "wanted",
        measure: "on the sling's label",
      },
    ),
    kind: choice("full-body", "toileting", "divided-leg", "standing")("how it carries"),
    "rated-load": ratedLoad(),
    loops: list(choiceShape("shoulder", "leg", "head", "waist"))("its loops or clips"),
    "label-legible": flag("the label can still be read; a sling without one is not used"),
    note,
  },
};

export const ramp: BlockSpec = {
  help: "a ramp, fixed or laid",
  name: "required",
  keys: {
    rise: length(0.25, 60)("the height that it overcomes", {
      need: "required",
      measure: "a straight board laid level from the upper end, tape down to the ground at the lower end",
      safer: "high",
    }),
    run: length(2, 800)("its length, level, from the lower to the upper end", {
      need: "required",
      measure: "level along the ground, not along the slope",
      safer: "low",
    }),
    width: length(16, 96)("clear width between its edges", {
      need: "wanted",
      measure: "inside of one edge to inside of the other, at the narrowest",
      safer: "low",
    }),
    "landing-top": length(0, 240)("level length at its upper end", {
      measure: "from the end of the slope to the door or step, with the door as it opens",
      safer: "low",
    }),
    "landing-bottom": length(0, 600)("level length at its lower end", {
      measure: "from the end of the slope to the first thing in the way",
      safer: "low",
    }),
    edges: flag("has raised edges on both sides"),
    "rated-load": ratedLoad(),
    note,
  },
};
