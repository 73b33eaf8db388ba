/** What else is sat on: toilet, commode, shower seat, tub and bench, armchair, car seat, the floor. */
import {
  choice,
  choiceShape,
  either,
  flag,
  length,
  lengthRange,
  note,
  ratedLoad,
  size,
  slope,
  text,
} from "./shapes.js";
import type { BlockSpec, KeySpec } from "./types.js";

type Keys = { readonly [key: string]: KeySpec };

interface About {
  /** What is sat on, as the help lines call it. */
  readonly seat: string;
  /** Heights of its top that a home can hold, in inches. */
  readonly top: readonly [number, number];
  /** It is upholstered, so that its height with somebody on it is another one. */
  readonly gives: boolean;
}

/** Keys that everything has that is sat on. */
const common = ({ seat, top, gives }: About): Keys => ({
  top: length(...top)(`floor to the top of ${seat}, nobody on it`, {
    need: "required",
    measure: "tape upright at the side on which the client will come",
  }),
  "top-loaded": length(...top)("the same with somebody of like weight sitting on it", {
    need: gives ? "required" : "wanted",
    measure: "somebody sits on it; tape from the floor to the seat beside the hip",
    ...(gives && { default: "sink-edge-*" }),
  }),
  size: size()(`width by depth of ${seat}`, {
    need: "required",
    measure: "side to side, then front to back, where the body bears",
  }),
  edge: choice(
    "firm",
    "soft",
    "rounded",
  )("what the edge is like on which a board would lie", {
    need: "required",
  }),
  adjusts: either(choiceShape("no"), lengthRange(...top))(
    "whether its height adjusts, and between which heights of the top",
    {
      measure: "set it to its lowest, then to its highest, and tape the top each time",
    },
  ),
  arms: choice(
    "none",
    "left",
    "right",
    "both",
  )("arms or sides in the way, the client's own left and right, sitting on it", { need: "wanted" }),
  "arms-kind": choice("fixed", "swing-away", "flip-up", "removable")("how an arm is taken out of the way"),
  "rated-load": ratedLoad(),
  wet: flag("is wet when it is used"),
  "stands-on": text("what it stands on, where that is not the floor of the room: a kerb, a step, the road"),
  level: length(-40, 40)(
    "height of the ground it stands on above the wheelchair's; lower is written with a minus",
    {
      measure: "a straight board laid level from the higher ground, tape down to the lower",
    },
  ),
  "slope-across": slope(-25, 25)("slope of the ground, across the way over; downwards to it is a minus", {
    measure: "a level on a board laid on the ground, from the chair's wheels to it; rise over length",
  }),
  note,
});

const castors = choice("none", "locked", "unlocked")("its castors", { need: "wanted", also: ["casters"] });
const rim = length(8, 30)("floor to the top of the tub's rim, over which the legs go", {
  need: "required",
  measure: "tape upright, outside the tub",
});

export const toilet: BlockSpec = {
  help: "a toilet",
  name: "required",
  keys: {
    ...common({ seat: "the seat, with a raised seat on it if there is one", top: [12, 28], gives: false }),
    "raised-seat": length(0, 10)("height of the raised seat that is on it; none: 0 in", {
      measure: "tape upright, from the bowl's rim to the top of the seat",
    }),
    "wall-left": length(4, 120)("from the seat's middle to the wall or cupboard on the client's left", {
      measure: "level, from the middle of the seat",
      safer: "low",
    }),
    "wall-right": length(4, 120)("from the seat's middle to the wall or cupboard on the client's right", {
      measure: "level, from the middle of the seat",
      safer: "low",
    }),
  },
};

export const commode: BlockSpec = {
  help: "a commode chair",
  name: "required",
  keys: {
    ...common({ seat: "the seat", top: [12, 28], gives: false }),
    castors,
    "over-toilet": flag("is pushed over the toilet with the client on it"),
  },
};

export const showerSeat: BlockSpec = {
  help: "a seat in the shower, on legs or on the wall",
  name: "required",
  keys: {
    ...common({ seat: "the seat", top: [12, 28], gives: false }),
    folds: flag("folds up against the wall"),
  },
};

export const tub: BlockSpec = {
  help: "a bathtub",
  name: "required",
  keys: {
    ...common({
      seat: "what is sat on in it: its bottom, or a seat laid across",
      top: [0, 30],
      gives: false,
    }),
    rim,
    "rim-width": length(0.5, 16)("width of the rim", { measure: "level, across the rim", safer: "low" }),
    "inside-depth": length(4, 30)("from the top of the rim down to the bottom, inside", {
      measure: "tape upright inside, from a ruler laid across the rims",
      safer: "high",
    }),
    length: length(36, 90)("its length inside", { measure: "level, end to end, at the bottom" }),
    water: flag("there is water in it while the client moves"),
  },
};

export const tubBench: BlockSpec = {
  help: "a bench that stands half in and half out of the tub",
  name: "required",
  keys: {
    ...common({ seat: "the bench", top: [12, 28], gives: false }),
    outside: length(0, 36)("the part of the seat that stands outside the tub's rim", {
      need: "required",
      measure: "level, from the outside of the rim to the outer end of the seat",
      safer: "low",
    }),
    rim,
  },
};

export const armchair: BlockSpec = {
  help: "an armchair, a sofa or a chair without wheels",
  name: "required",
  keys: {
    ...common({ seat: "the seat", top: [8, 30], gives: true }),
    rises: flag("has a motor that lifts or tilts the seat"),
  },
};

export const carSeat: BlockSpec = {
  help: "the seat of a car, with its door open",
  name: "required",
  keys: {
    ...common({ seat: "the seat's cushion, from the ground the car stands on", top: [10, 48], gives: true }),
    "sill-gap": length(0, 30)("from the edge of the seat out to the outside of the sill", {
      need: "required",
      measure: "level, from the seat's edge to a stick held upright against the sill",
      safer: "high",
    }),
    "sill-height": length(4, 40)("ground to the top of the sill", { measure: "tape upright at the sill" }),
    "door-opening": length(12, 60)("clear opening with the door as far open as it goes", {
      need: "required",
      measure: "level, from the front pillar or the open door to the rear pillar, at seat height",
      safer: "low",
    }),
    bolster: length(0, 8)("how far the seat's side stands up above its middle; none: 0 in", {
      measure: "a ruler laid across the seat, tape down to the middle",
      safer: "high",
    }),
    roof: length(24, 72)("from the seat to the edge of the roof, over which the head passes", {
      measure: "tape upright from the seat's middle to the underside of the door frame",
      safer: "low",
    }),
  },
};

export const floorPlace: BlockSpec = {
  help: "a place on the floor itself: after a fall, or to sit and play",
  name: "required",
  keys: common({ seat: "the mat that lies there; 0 in where there is none", top: [0, 14], gives: false }),
};
