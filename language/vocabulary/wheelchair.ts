/** The wheelchair. */
import {
  angle,
  choice,
  choiceShape,
  flag,
  length,
  mass,
  note,
  part,
  parts,
  ratedLoad,
  sidePart,
} from "./shapes.js";
import type { BlockSpec, KeySpec } from "./types.js";

const armrests = ["fixed", "swing-away", "flip-back", "removable", "none"] as const;
const legrests = ["fixed", "swing-away", "removable", "none"] as const;

const cushion: BlockSpec = {
  help: "the cushion on the seat",
  name: "none",
  once: true,
  keys: {
    kind: choice("foam", "gel", "air", "none")("what it is made of", { need: "required" }),
    thickness: length(0.5, 8)("its thickness with nobody on it", {
      measure: "tape upright at the front edge",
    }),
    loaded: length(0, 8)("its thickness with the client on it", {
      measure: "client sitting: rail to hip beside the thigh, less what the rail stands above the seat",
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

const handRim: BlockSpec = {
  help: "the rims by which the wheels are driven",
  name: "none",
  once: true,
  keys: {
    diameter: length(8, 28)("diameter of the rim", { measure: "outside to outside, through the axle" }),
    standoff: length(0, 4)("how far the rim stands out from the tyre", {
      measure: "level, from the side of the tyre to the outside of the rim",
      safer: "high",
      default: "hand-rim-depth",
    }),
    note,
  },
};

const castor: BlockSpec = {
  help: "the small front wheels",
  name: "none",
  once: true,
  keys: {
    diameter: length(2, 12)("diameter", {
      measure: "floor to top of the wheel",
      default: "castor-height",
    }),
    trail: length(0, 5)("how far the wheel's axle runs behind its swivel", {
      measure: "wheel turned to the rear: level from the middle of the swivel to the axle",
    }),
    width: length(0.5, 4)("width of the tyre", { measure: "across the tyre" }),
    note,
  },
};

const perSide = (kinds: readonly string[], help: string): KeySpec =>
  parts(sidePart, part("kind", choiceShape(...kinds)))(help, { many: true, distinct: "side" });

const onRail = { key: "rail-height", why: "A board rests on the side rail, the client sits lower." };

const heights = {
  "seat-height": length(12, 30)("floor to the top of the seat or cushion, beside the hip, nobody on it", {
    need: "required",
    measure: "tape upright beside the middle of the seat",
    safer: "high",
  }),
  "seat-loaded": length(10, 30)("the same with the client sitting", {
    need: "required",
    measure: "client sitting, a flat hand slid between hip and cushion, tape from the floor to it",
    default: "sink-cushion-*",
  }),
  "seat-front": length(10, 30)("floor to the top of the seat or cushion at its front edge, nobody on it", {
    measure: "tape upright at the middle of the front edge",
  }),
  "seat-rear": length(8, 30)("floor to the top of the seat or cushion at its rear edge, nobody on it", {
    measure: "tape upright beside the back posts",
  }),
  "seat-middle": length(8, 30)("floor to the top of the seat or cushion in the middle, nobody on it", {
    measure: "a ruler laid across the rails, tape down to the cushion, taken from the rail's height",
    beside: onRail,
  }),
  "sling-middle": length(8, 28)("floor to the sling in its middle; a board does not lie there", {
    measure:
      "cushion off, a ruler laid across the rails, tape down to the sling, taken from the rail's height",
    default: "sink-sling",
    beside: onRail,
  }),
  "rail-height": length(10, 28)("floor to the top of the side rail on which a board rests", {
    measure: "tape upright to the top of the rail, in front of the wheel",
  }),
} satisfies { readonly [key: string]: KeySpec };

const outline = {
  seat: choice("sling", "solid")("what carries the cushion"),
  "seat-width": length(10, 32)("width of the seat", {
    need: "required",
    measure: "between the side rails or guards",
  }),
  "seat-depth": length(10, 26)("depth of the seat, rear edge to front edge", {
    need: "required",
    measure: "level, from the back to the front edge of the seat",
  }),
  "overall-width": length(16, 48)("width over the hand rims", {
    need: "required",
    measure: "outside of one hand rim to outside of the other",
    safer: "high",
  }),
  "overall-length": length(24, 60)("length with the leg rests on", {
    measure: "rear of the wheel to the front of the footplates",
    safer: "high",
  }),
  "overall-length-bare": length(20, 50)("length with the leg rests off", {
    measure: "rear of the wheel to the front of the frame or castors",
    safer: "high",
  }),
  "side-window": length(0, 20)("free seat side in front of the wheel", {
    measure: "at seat height: front of the wheel to the front edge of the seat",
    safer: "low",
  }),
  camber: angle(0, 20)("how far the drive wheels lean in at the top", {
    measure:
      "half the difference between the distances of the wheels at the floor and at the top, over their height",
  }),
  "tyre-width": length(0.5, 4)("width of the drive wheels' tyres", {
    measure: "across the tyre",
    also: ["tire-width"],
  }),
} satisfies { readonly [key: string]: KeySpec };

const fittings = {
  armrest: perSide(armrests, "how one armrest is taken out of the way"),
  armrests: choice(...armrests)("how both armrests are taken out of the way", { need: "wanted" }),
  "armrest-post": length(0, 14)("how high what stays behind stands above the seat once the armrest is away", {
    measure: "armrest away: tape upright from the seat to the top of the socket or post",
    safer: "high",
    default: "armrest-socket",
  }),
  legrest: perSide(legrests, "how one leg rest is taken out of the way; a removable one also swings away"),
  legrests: choice(...legrests)(
    "how both leg rests are taken out of the way; removable ones also swing away",
    { need: "wanted", also: ["leg-rests"] },
  ),
  "hanger-reach": length(2, 30)("how far a leg rest in place stands out in front of the seat", {
    measure: "level from the front edge of the seat to the front of the footplate",
    default: "legrest-reach-default",
  }),
  "hanger-stub": length(0, 10)("what still stands out in front of the seat when the leg rest is lifted off", {
    measure: "level from the front edge of the seat to the front of the frame",
    default: "hanger-stub-default",
  }),
  "hanger-swung": length(0, 12)("how far a leg rest that is swung away stands out to the side of the seat", {
    measure: "level from the side of the seat outwards",
    default: "hanger-swung-out",
  }),
  footplates: choice("flip-up", "fixed", "none")("whether the footplates can be lifted", { need: "wanted" }),
  brakes: choice("both", "left", "right", "none")("which wheels can be locked", { need: "required" }),
  "brake-lever": length(0, 8)("how far a brake lever stands out to the side of the seat when it is open", {
    measure: "level from the side of the seat to the end of the open lever",
    safer: "high",
    default: "brake-lever-outside",
  }),
  "anti-tippers": flag("has anti-tippers"),
} satisfies { readonly [key: string]: KeySpec };

export const wheelchair: BlockSpec = {
  help: "a manual wheelchair",
  name: "required",
  keys: {
    ...heights,
    ...outline,
    ...fittings,
    mass: mass(10, 400)("mass of the chair", {
      measure: "in the data sheet, or lifted onto a scale",
      safer: "low",
    }),
    "rated-load": ratedLoad(),
    note,
  },
  blocks: { cushion, "drive-wheel": driveWheel, "hand-rim": handRim, castor },
};
