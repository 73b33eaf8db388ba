/** The wheelchair and what is lent with it. */
import { angle, choice, choiceShape, flag, length, mass, part, parts, text } from "./shapes.js";
import type { BlockSpec, KeySpec } from "./types.js";

const note = text("a note", { many: true });
const ratedLoad = mass(50, 1500)("the greatest load that its maker allows", {
  need: "wanted",
  measure: "on the label or in the data sheet",
  safer: "low",
});
const side = part("side", choiceShape("left", "right"));
const armrests = choiceShape("fixed", "swing-away", "flip-back", "removable", "none");
const legrests = choiceShape("fixed", "swing-away", "removable", "none");

const cushion: BlockSpec = {
  help: "the cushion on the seat",
  name: "none",
  once: true,
  keys: {
    kind: choice("foam", "gel", "air", "none")("what it is made of", { need: "required" }),
    thickness: length(0.5, 8)("its thickness with nobody on it", {
      measure: "tape upright at the front edge",
    }),
    note,
  },
};

const driveWheel: BlockSpec = {
  help: "the large rear wheels",
  name: "none",
  once: true,
  keys: {
    diameter: length(10, 30)("diameter over the tyre", {
      need: "required",
      measure: "printed on the tyre, or floor to top of the wheel",
    }),
    axle: length(-8, 12)(
      "how far the axle stands ahead of the seat's rear edge; behind it is written with a minus",
      {
        need: "required",
        measure: "level from the rear edge of the seat to the middle of the axle",
      },
    ),
    note,
  },
};

const perSide = (shape: typeof armrests, help: string): KeySpec =>
  parts(side, part("kind", shape))(help, { many: true });

export const wheelchair: BlockSpec = {
  help: "a manual wheelchair",
  name: "required",
  keys: {
    "seat-height": length(12, 30)("floor to the top of the seat or cushion, beside the hip, nobody on it", {
      need: "required",
      measure: "tape upright beside the middle of the seat",
      safer: "high",
    }),
    "seat-loaded": length(10, 30)("the same with the client sitting", {
      need: "required",
      measure: "client sitting, a flat hand slid between hip and cushion, tape from the floor to it",
    }),
    "rail-height": length(10, 28)("floor to the top of the side rail on which a board rests", {
      measure: "tape upright to the top of the rail, in front of the wheel",
    }),
    seat: choice("sling", "solid")("what carries the cushion"),
    "seat-width": length(10, 32)("width of the seat", {
      need: "required",
      measure: "between the side rails or guards",
    }),
    "seat-depth": length(10, 26)("depth of the seat, rear edge to front edge", { need: "required" }),
    "overall-width": length(16, 48)("width over the hand rims", {
      need: "required",
      measure: "outside of one hand rim to outside of the other",
    }),
    "overall-length": length(24, 60)("length with the leg rests on", {
      measure: "rear of the wheel to the front of the footplates",
    }),
    "side-window": length(0, 20)("free seat side in front of the wheel", {
      measure: "at seat height: front of the wheel to the front edge of the seat",
      safer: "low",
    }),
    armrest: perSide(armrests, "how one armrest is taken out of the way"),
    armrests: choice(
      "fixed",
      "swing-away",
      "flip-back",
      "removable",
      "none",
    )("how both armrests are taken out of the way", { need: "wanted" }),
    legrest: perSide(legrests, "how one leg rest is taken out of the way; a removable one also swings away"),
    legrests: choice(
      "fixed",
      "swing-away",
      "removable",
      "none",
    )("how both leg rests are taken out of the way; removable ones also swing away", {
      need: "wanted",
      also: ["leg-rests"],
    }),
    "hanger-reach": length(2, 30)("how far a leg rest in place stands out in front of the seat", {
      measure: "level from the front edge of the seat to the front of the footplate",
    }),
    "hanger-stub": length(0, 10)(
      "what still stands out in front of the seat when the leg rest is lifted off",
      { measure: "level from the front edge of the seat to the front of the frame" },
    ),
    "hanger-swung": length(0, 12)(
      "how far a leg rest that is swung away stands out to the side of the seat",
      { measure: "level from the side of the seat outwards" },
    ),
    footplates: choice(
      "flip-up",
      "fixed",
      "none",
    )("whether the footplates can be lifted", { need: "wanted" }),
    brakes: choice("both", "left", "right", "none")("which wheels can be locked", { need: "required" }),
    "anti-tippers": flag("has anti-tippers"),
    mass: mass(10, 400)("mass of the chair", { safer: "low" }),
    "rated-load": ratedLoad,
    note,
  },
  blocks: { cushion, "drive-wheel": driveWheel },
};

export const board: BlockSpec = {
  help: "a sliding board",
  name: "required",
  keys: {
    length: length(14, 48)("its length", { need: "required" }),
    width: length(5, 16)("its width", { need: "required" }),
    thickness: length(0.1, 2)("its thickness at the middle"),
    material: choice("wood", "plywood", "plastic", "composite")("what it is made of"),
    shape: choice("straight", "curved", "notched")("its shape"),
    "rated-load": ratedLoad,
    "slides-at": angle(1, 45)("the slope at which clothing starts to slide on it", {
      measure: "the clothing with a bag of rice on the board, one end raised until it slides",
    }),
    note,
  },
};

export const belt: BlockSpec = {
  help: "a transfer belt",
  name: "required",
  keys: { fits: length(20, 80)("the waist that it fits"), note },
};
export const sheet: BlockSpec = { help: "a slide sheet", name: "required", keys: { note } };
export const lift: BlockSpec = {
  help: "a floor lift with its sling",
  name: "required",
  keys: {
    "rated-load": ratedLoad,
    "leg-height": length(2, 8)("height of its legs, to go under a bed"),
    note,
  },
};
