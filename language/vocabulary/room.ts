/** The room, its doors, and what stands in it. */
import { kitKinds, placedKinds } from "./kinds.js";
import {
  choice,
  choiceShape,
  either,
  flag,
  length,
  lengthShape,
  list,
  mention,
  note,
  part,
  parts,
  placeAt,
  size,
  textShape,
  wholeShape,
} from "./shapes.js";
import type { BlockSpec } from "./types.js";

const compass = ["north", "south", "east", "west"] as const;
const wall = either(choiceShape(...compass), wholeShape)(
  "the wall on which it stands: by the side of the room, or by its number on the walk",
  { also: ["against"] },
);

export const furniture: BlockSpec = {
  help: "a piece of furniture",
  name: "required",
  keys: {
    size: size()("width along its wall by depth", {
      need: "required",
      measure: "along the wall, then out from it, at its widest",
    }),
    height: length(2, 100)("its height", { measure: "floor to its top" }),
    "room-under": length(0, 60)("clear height under it, for footplates or a lift's legs", {
      measure: "floor to its lowest part",
      safer: "low",
    }),
    movable: flag("can be moved"),
    note,
  },
};

const door: BlockSpec = {
  help: "a door",
  name: "required",
  keys: {
    wall,
    at: length(0, 600)("from the west (or south) end of the wall to its near side", {
      measure: "along the skirting, from the corner to the near side of the opening",
    }),
    clear: length(15, 80)("clear width with the door open", {
      need: "required",
      measure: "face of the open door to the stop on the other side",
      safer: "low",
    }),
    opens: choice("inward", "outward", "sliding", "none")("which way it opens"),
    hinged: choice(...compass)("the side of its hinges"),
    threshold: length(0, 8)("height of the threshold", {
      measure: "floor to the top of the threshold, on the higher side",
      safer: "high",
    }),
    note,
  },
};

const place: BlockSpec = {
  help: "where a thing stands in the room",
  name: { of: placedKinds },
  keys: {
    head: choice(...compass)("for a bed: the side of the room to which its head points"),
    faces: choice(...compass)("for what is sat on: the side of the room to which the sitter faces"),
    wall,
    at: placeAt(
      "from the west and the south wall to its nearest sides; along a wall, from its west or south end",
      { measure: "along the skirting, from the corner to the near side of the thing" },
    ),
    note,
  },
};

export const room: BlockSpec = {
  help: "a room, walked with a tape",
  name: "required",
  keys: {
    walk: list({
      is: "parts",
      parts: [
        part("length", lengthShape(4, 1200)),
        part("way", choiceShape("east", "north", "west", "south")),
      ],
    })("the walls in order, from the south-west corner, each with the way it runs", {
      need: "wanted",
      measure: "tape along each wall at the skirting",
    }),
    diagonal: parts(part("corners", choiceShape("sw-ne", "nw-se")), part("length", lengthShape(12, 1200)))(
      "a diagonal, to check the corners",
      { many: true, distinct: "corners", measure: "corner to corner, along the floor" },
    ),
    narrowest: parts(part("width", lengthShape(6, 240)), part("where", textShape, { optional: true }))(
      "the narrowest place on the chair's way through the room, and where it is",
      {
        many: true,
        measure: "level, between the two things, at the height of the hand rims and of the footplates",
        safer: "low",
      },
    ),
    floor: list(choiceShape("carpet", "loose-rug", "wood", "vinyl", "tile", "concrete"))(
      "what the floor is, and what lies on it",
      { need: "wanted" },
    ),
    note,
  },
  blocks: { door, place },
};

export const withinReach: BlockSpec = {
  help: "what lies within reach",
  name: "none",
  keys: {},
  blocks: {
    from: {
      help: "what can be reached from there",
      name: { of: kitKinds },
      keys: {
        phone: mention("a telephone"),
        light: mention("a light"),
        board: mention("the board"),
        bell: mention("a bell"),
        chair: mention("the wheelchair"),
        drink: mention("a drink"),
        handset: mention("the handset of the bed or lift"),
        towel: mention("a towel"),
        paper: mention("toilet paper"),
      },
    },
  },
};
