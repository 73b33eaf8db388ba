/** Ways from door to door. */
import {
  choice,
  choiceShape,
  either,
  flag,
  length,
  lengthShape,
  list,
  nameShape,
  names,
  note,
  part,
  parts,
  text,
  textShape,
} from "./shapes.js";
import type { BlockSpec } from "./types.js";

const roomOrWords = either(nameShape("room"), textShape);

const corridor: BlockSpec = {
  help: "a straight part of the way",
  name: "none",
  keys: {
    width: length(16, 144)("clear width at its narrowest", {
      need: "required",
      measure: "wall to wall, or to what stands out furthest, at the height of the hand rims",
      safer: "low",
    }),
    length: length(6, 2400)("its length", { measure: "along the floor" }),
    note,
  },
};

const turn: BlockSpec = {
  help: "a turn of the way: from one corridor into another, or through a door",
  name: "none",
  keys: {
    "from-width": length(16, 144)("clear width before the turn", {
      need: "required",
      measure: "across the way, just before the corner",
      safer: "low",
    }),
    "to-width": length(16, 144)("clear width after the turn", {
      measure: "across the way, just after the corner",
      safer: "low",
    }),
    "door-clear": length(15, 80)("clear width of the door into which it turns", {
      measure: "face of the open door to the stop on the other side",
      safer: "low",
    }),
    note,
  },
};

const threshold: BlockSpec = {
  help: "something to be rolled over",
  name: "none",
  keys: {
    height: length(0, 10)("its height", {
      need: "required",
      measure: "from the lower floor to its top",
      safer: "high",
    }),
    bevelled: flag("its edges are bevelled", { also: ["beveled"] }),
    at: text("where it is"),
    note,
  },
};

export const route: BlockSpec = {
  help: "a way from door to door, with what lies on it",
  name: "required",
  keys: {
    from: roomOrWords("the room, or the place in words, where it starts", { need: "required" }),
    to: roomOrWords("the room, or the place in words, where it ends", { need: "required" }),
    through: names("door")("the doors on it, in order; room.door where two rooms have one of that name"),
    ramp: names("ramp")("the ramps on it"),
    kerb: parts(part("height", lengthShape(0, 12)), part("where", textShape, { optional: true }))(
      "a kerb or a single step without a ramp",
      {
        many: true,
        measure: "tape upright, from the lower to the upper ground",
        safer: "high",
        also: ["curb"],
      },
    ),
    surface: list(
      choiceShape("carpet", "loose-rug", "wood", "vinyl", "tile", "concrete", "paving", "gravel", "grass"),
    )("what is rolled on"),
    lit: choice("yes", "no", "partly")("whether it is lit at night"),
    note,
  },
  blocks: { corridor, turn, threshold },
};
