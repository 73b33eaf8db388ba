/** Who moves and who helps. */
import {
  assistanceLevels,
  choice,
  choiceShape,
  code,
  dateShape,
  flag,
  force,
  length,
  mass,
  part,
  parts,
  text,
  textShape,
} from "./shapes.js";
import type { BlockSpec } from "./types.js";

export const client: BlockSpec = {
  help: "the person who is moved, under a code",
  name: "none",
  once: true,
  keys: {
    code: code("the client's code; never a name", { need: "required" }),
    mass: mass(40, 700)("body mass, as last weighed", {
      need: "required",
      measure: "from the last weighing, with its date",
      safer: "high",
    }),
    stature: length(36, 90)("standing height, or the length lying", {
      need: "wanted",
      measure: "lying flat on the bed: heel to crown",
      safer: "low",
    }),
    "hip-breadth": length(9, 30)("breadth across the hips, seated", {
      measure: "two books held upright against the hips, tape between them",
    }),
    "push-up": choice(
      "able",
      "partly",
      "unable",
    )("lifts the hips clear of the seat with both arms", { need: "wanted" }),
    "sitting-balance": choice("good", "fair", "poor")("sits without support at the edge", { need: "wanted" }),
    "arm-strength": choice("able", "weak")("both arms can take the body's weight in part", {
      need: "wanted",
    }),
    cooperates: flag("follows instructions, and says so when something hurts", { need: "wanted" }),
    skin: choice(
      "intact",
      "at-risk",
      "broken",
    )("skin over the sitting bones and tail bone", { need: "wanted" }),
    assistance: choice(...assistanceLevels)("help needed for this kind of transfer", { need: "wanted" }),
    limit: parts(
      part("what", choiceShape("weight-bearing", "hip-flexion", "arm-push", "trunk-turn")),
      part("side", choiceShape("left", "right", "both")),
      part("amount", {
        is: "either",
        shapes: [
          choiceShape("none", "touch", "full"),
          { is: "quantity", dimension: "mass", units: ["lb", "kg"] },
          { is: "quantity", dimension: "ratio", units: ["%"] },
          { is: "quantity", dimension: "angle", units: ["deg"] },
        ],
      }),
      part("by", textShape, { lead: "by", optional: true }),
      part("review", dateShape, { lead: "review", optional: true }),
    )("what a prescriber has limited, which side, how much, by which role, and when it is looked at again", {
      many: true,
    }),
    precaution: text("anything else to be kept in mind", { many: true }),
    note: text("a note", { many: true }),
  },
};

export const helper: BlockSpec = {
  help: "one person who helps, by role",
  name: "required",
  keys: {
    trained: flag("has been shown, and has done it back", { need: "wanted" }),
    "safe-pull": force(1, 120)("the pull that this person can give without harm", {
      need: "wanted",
      measure: "judged by a therapist",
      safer: "low",
    }),
    "safe-push": force(1, 120)("the push that this person can give without harm", { safer: "low" }),
    present: text("when this person is there"),
    note: text("a note", { many: true }),
  },
};
