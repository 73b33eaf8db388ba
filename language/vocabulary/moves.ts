/** Transfers, the way back, trials, and what is said about findings. */
import {
  assistanceLevels,
  angle,
  angleShape,
  choice,
  choiceShape,
  dateShape,
  flag,
  length,
  list,
  mention,
  name,
  nameShape,
  part,
  parts,
  text,
  textShape,
} from "./shapes.js";
import type { BlockSpec, KeySpec } from "./types.js";

const surfaces = ["bed", "wheelchair"];
const steps: BlockSpec = { help: "the steps, in order", name: "none", once: true, steps: true, keys: {} };
const measured: BlockSpec = {
  help: "what was taped with the chair parked and the board laid; it counts only with these",
  name: "none",
  once: true,
  keys: {
    gap: length(0, 30)("nearest point of the seat to the edge", {
      measure: "level, from the seat to the mattress, at the narrowest",
    }),
    "bearing-seat": length(0, 30)("how much of the board lies on the seat", {
      measure: "along the shorter long side of the board, beyond the edge of the seat",
    }),
    "bearing-landing": length(0, 40)("how much of the board lies on the bed", {
      measure: "along the shorter long side of the board, beyond the edge of the mattress",
    }),
  },
};
const ifNot: BlockSpec = {
  help: "what to do if it does not go well",
  name: "none",
  once: true,
  keys: {
    stop: text("the signs at which to stop", { need: "required" }),
    meanwhile: text("what to do then", { need: "required" }),
    otherwise: name("lift", "helper", "sheet")("the other way, if there is one"),
  },
};

const shared: { readonly [key: string]: KeySpec } = {
  with: list(nameShape("board", "belt", "helper", "sheet", "lift"))("the equipment used, and who helps", {
    need: "wanted",
  }),
  "no-board": mention("it was decided to use no board"),
  room: name("room")("the room in which it is done", { need: "wanted" }),
  "bed-side": choice("left", "right")("side of the bed, the client's own, lying on the back", {
    need: "wanted",
  }),
  facing: choice("head", "foot")("the end of the bed that the parked chair faces", { need: "wanted" }),
  turned: parts(
    part("angle", angleShape(0, 90)),
    part("way", choiceShape("towards", "away"), { optional: true }),
  )("angle between the chair and the edge of the bed; 0 is parallel", { need: "wanted" }),
  along: length(5, 90)("from the head end of the mattress to the hip joint, before sliding", {
    need: "wanted",
    measure: "along the edge, chair parked",
  }),
  "board-reach": length(0, 24)("how far the board's inner end lies in from the near side of the seat"),
  "board-askew": angle(-60, 60)("how far the board lies off square to the edge of the bed"),
  "skin-covered": flag("clothing lies between the skin and the board", { need: "wanted" }),
  note: text("a note", { many: true }),
};

export const transfer: BlockSpec = {
  help: "a move from one surface to another",
  name: "required",
  keys: {
    from: parts(part("from", nameShape(...surfaces)), part("to", nameShape(...surfaces), { lead: "to" }))(
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
    note: text("a note", { many: true }),
  },
};

export const review: BlockSpec = {
  help: "when the plan is looked at again",
  name: "none",
  once: true,
  keys: {
    on: { shape: dateShape, help: "the day", need: "wanted" },
    when: list({ is: "code" })("what brings it forward"),
  },
};

/** Statements that stand alone at top level. */
export const statements: { readonly [key: string]: KeySpec } = {
  setup: text("the title of the plan", { need: "required" }),
  rules: parts(part("name", { is: "code" }), part("version", { is: "code" }))(
    "the rule set and version under which it was prepared",
    { need: "wanted" },
  ),
  visited: {
    shape: dateShape,
    help: "the day of the visit; what says nothing else was measured then",
    need: "wanted",
  },
  from: parts(part("path", textShape), part("use", { is: "list", item: { is: "code" } }, { lead: "use" }))(
    "things declared in another file of the same folder",
    { many: true },
  ),
  accept: parts(
    part("rule", { is: "code" }),
    part("at", { is: "code" }, { lead: "at", optional: true }),
    part("until", dateShape, { lead: "until", optional: true }),
    part("approved", textShape, { lead: "approved-by", optional: true }),
    part("because", textShape, { lead: "because", optional: true }),
  )(
    "a finding knowingly accepted: which rule, where, until when, why; one of level stop also needs approved-by and a role",
    { many: true },
  ),
  expect: parts(
    part("rule", { is: "code" }),
    part("verdict", choiceShape("holds", "fails", "unsettled", "unknown", "not-applicable")),
    part("for", { is: "code" }, { lead: "for", optional: true }),
  )("what a verdict should be", { many: true }),
};
