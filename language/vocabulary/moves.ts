/** Transfers, the way back, and trials. */
import { aidKinds, endKinds, surfaceKinds } from "./kinds.js";
import {
  assistanceLevels,
  angle,
  angleShape,
  choice,
  choiceShape,
  dateShape,
  either,
  flag,
  length,
  lengthShape,
  list,
  mention,
  name,
  nameShape,
  note,
  part,
  parts,
  text,
} from "./shapes.js";
import type { BlockSpec, KeySpec } from "./types.js";

const steps: BlockSpec = { help: "the steps, in order", name: "none", once: true, steps: true, keys: {} };
const measured: BlockSpec = {
  help: "what was taped with the chair parked and the board laid; it counts only with these",
  name: "none",
  once: true,
  keys: {
    gap: length(0, 30)("nearest point of the seat to the edge", {
      measure: "level, from the seat to the edge of the other surface, at the narrowest",
      safer: "high",
    }),
    "bearing-seat": length(0, 30)("how much of the board lies on the seat", {
      measure: "along the shorter long side of the board, beyond the edge of the seat",
      safer: "low",
    }),
    "bearing-landing": length(0, 40)("how much of the board lies on the other surface", {
      measure: "along the shorter long side of the board, beyond the edge of the landing",
      safer: "low",
    }),
    note,
  },
};
const ifNot: BlockSpec = {
  help: "what to do if it does not go well",
  name: "none",
  once: true,
  keys: {
    stop: text("the signs at which to stop", { need: "required" }),
    meanwhile: text("what to do then", { need: "required" }),
    otherwise: name("lift", "helper", "sheet", "transfer")("the other way, if there is one"),
  },
};

const shared: { readonly [key: string]: KeySpec } = {
  with: list(nameShape(...aidKinds, "helper"))("the equipment used, and who helps", { need: "wanted" }),
  "no-board": mention("it was decided to use no board"),
  room: either(choiceShape("none"), nameShape("room"))(
    "the room in which it is done; none where it is done outdoors",
    { need: "wanted" },
  ),
  "bed-side": choice("left", "right")("side of the bed, the client's own, lying on the back", {
    need: "wanted",
  }),
  side: choice(
    "left",
    "right",
  )("for a seat: the side at which the chair stands, the client's own, sitting on the seat"),
  facing: choice(
    "head",
    "foot",
    "same",
    "opposite",
    "square",
  )(
    "which way the parked chair faces: head or foot of a bed; beside a seat the same way as the sitter, opposite, or square to it",
    { need: "wanted" },
  ),
  "chair-side": choice(
    "left",
    "right",
  )("side of the chair on which the other surface lies; needed where the chair stands square to it"),
  turned: parts(
    part("angle", angleShape(0, 90)),
    part("way", choiceShape("towards", "away"), { optional: true }),
  )("angle between the chair and the edge of the other surface; 0 is parallel", {
    need: "wanted",
    measure: "a folded sheet of paper gives 45 and 22 1/2 degrees; or a phone's compass along wheel and edge",
  }),
  along: length(5, 90)("for a bed: from the head end of the mattress to the hip joint, before sliding", {
    need: "wanted",
    measure: "along the edge, chair parked",
  }),
  "board-reach": length(0, 24)("how far the board's inner end lies in from the near side of the seat", {
    measure: "board laid: level, from the side of the seat in to the end of the board",
  }),
  "board-askew": angle(-60, 60)("how far the board lies off square to the edge of the landing", {
    measure: "board laid: a folded sheet of paper in the corner between board and edge",
  }),
  set: parts(part("what", nameShape(...surfaceKinds)), part("height", lengthShape(4, 60)))(
    "the height to which something that adjusts is set for this move",
    {
      many: true,
      distinct: "what",
      measure: "set it, then floor to its top, nobody on it; mark the handset or the leg",
    },
  ),
  wet: flag("the landing, the board or the skin is wet"),
  "skin-covered": flag("clothing lies between the skin and the board", { need: "wanted" }),
  note,
};

export const transfer: BlockSpec = {
  help: "a move from one surface to another",
  name: "required",
  keys: {
    from: parts(part("from", nameShape(...endKinds)), part("to", nameShape(...endKinds), { lead: "to" }))(
      "where it starts and where it ends",
      { need: "required" },
    ),
    ...shared,
  },
  blocks: { measured, steps, "if-not": ifNot },
};

export const wayBack: BlockSpec = {
  help: "the same move turned round; what it does not say is as on the way there",
  name: "required",
  head: [part("of", nameShape("transfer"), { lead: "of" })],
  keys: {
    steps: choice("planned")("the order of steps is left to the tool until it is accepted"),
    ...shared,
  },
  blocks: { measured, steps, "if-not": ifNot },
};

export const trial: BlockSpec = {
  help: "a transfer that was tried, and how it went",
  name: { of: ["transfer", "way-back"] },
  head: [part("on", dateShape, { lead: "on" })],
  keys: {
    by: text("the role of the person who led it", { need: "required" }),
    assistance: choice(...assistanceLevels)("the help that was needed", { need: "wanted" }),
    outcome: choice("done", "stopped", "failed")("how it ended", { need: "required" }),
    skin: choice("clear", "marked")("the skin afterwards"),
    note,
  },
  blocks: { measured },
};
