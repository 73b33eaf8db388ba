/** The bed, what else stands in the room, and the room. */
import {
  choice,
  choiceShape,
  either,
  flag,
  length,
  lengthShape,
  list,
  mass,
  mention,
  part,
  parts,
  placeAt,
  size,
  text,
} from "./shapes.js";
import type { BlockSpec } from "./types.js";

const note = text("a note", { many: true });
const wall = choice("north", "south", "east", "west")("the wall on which it stands, by the side of the room");

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
    }),
    size: size()("width by length of the mattress", { need: "required" }),
    edge: choice("firm", "soft", "rounded")("what the edge of the mattress is like", { need: "required" }),
    adjusts: either(choiceShape("no"), {
      is: "quantity",
      dimension: "length",
      range: true,
      plausible: [6 * 0.0254, 48 * 0.0254],
      units: ["in", "cm", "mm"],
    })("whether its height adjusts, and between which heights of the mattress top", { need: "wanted" }),
    castors: choice("none", "locked", "unlocked")("its castors", { need: "wanted" }),
    rails: choice("none", "left", "right", "both")("its rails"),
    "room-under": length(0, 30)("clear height under it", {
      measure: "floor to the lowest part of the frame",
    }),
    "rated-load": mass(100, 1500)("the greatest load that its maker allows", {
      need: "wanted",
      safer: "low",
      measure: "on the frame's label or in the data sheet",
    }),
    note,
  },
};

export const furniture: BlockSpec = {
  help: "a piece of furniture",
  name: "required",
  keys: {
    size: size()("width along its wall by depth", { need: "required" }),
    height: length(2, 100)("its height"),
    movable: flag("can be moved"),
    note,
  },
};

const door: BlockSpec = {
  help: "a door",
  name: "required",
  keys: {
    wall,
    at: length(0, 600)("from the west (or south) end of the wall to its near side"),
    clear: length(15, 80)("clear width with the door open", {
      need: "required",
      measure: "face of the open door to the stop on the other side",
    }),
    opens: choice("inward", "outward", "sliding", "none")("which way it opens"),
    hinged: choice("north", "south", "east", "west")("the side of its hinges"),
    threshold: length(0, 8)("height of the threshold"),
  },
};
const place: BlockSpec = {
  help: "where a thing stands in the room",
  name: { of: ["bed", "furniture"] },
  keys: {
    head: choice(
      "north",
      "south",
      "east",
      "west",
    )("for a bed: the side of the room to which its head points"),
    wall,
    at: placeAt(
      "from the west and the south wall to its nearest sides; along a wall, from its west or south end",
    ),
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
      { many: true },
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
      name: { of: ["bed", "wheelchair", "furniture"] },
      keys: {
        phone: mention("a telephone"),
        light: mention("a light"),
        board: mention("the board"),
        bell: mention("a bell"),
        chair: mention("the wheelchair"),
        drink: mention("a drink"),
      },
    },
  },
};

export const mayChange: BlockSpec = {
  help: "what may be changed, and within what limits",
  name: "none",
  keys: {},
  free: true,
};
