/** Who moves and who helps. */
import {
  angle,
  assistanceLevels,
  choice,
  choiceShape,
  code,
  dateShape,
  flag,
  force,
  length,
  lengthShape,
  mass,
  note,
  part,
  parts,
  partsOrNone,
  sidePart,
  text,
  textShape,
  timeShape,
} from "./shapes.js";
import type { BlockSpec, KeySpec } from "./types.js";

const limit: KeySpec = partsOrNone(
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
  measure: "from the prescriber's letter, word for word; it is not judged at the bedside",
});

const line: KeySpec = partsOrNone(
  part(
    "kind",
    choiceShape("catheter", "drain", "drip", "feeding-tube", "oxygen", "pump", "monitor", "stoma", "other"),
  ),
  part("side", choiceShape("left", "right", "middle")),
  part("length", lengthShape(2, 600), { optional: true }),
)(
  "a line or tube: what it is, on which side it leaves the body, and how long it is from there to what it hangs on",
  {
    many: true,
    also: ["tube"],
    measure: "along the line, from where it leaves the body to the bag, the bottle or the socket",
    safer: "low",
  },
);

const today: KeySpec = partsOrNone(
  part("what", choiceShape("medication", "fatigue", "spasm", "pain", "dizziness", "dialysis", "other")),
  part("at", timeShape, { optional: true }),
  part("words", textShape, { optional: true }),
)("what comes and goes with the day, at what time, and what it changes", { many: true });

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
      also: ["weight"],
    }),
    stature: length(36, 90)("standing height, or the length lying", {
      need: "wanted",
      measure: "lying flat on the bed: heel to crown",
      safer: "low",
      also: ["height"],
    }),
    "hip-breadth": length(9, 30)("breadth across the hips, seated", {
      measure: "two books held upright against the hips, tape between them",
      default: "hip-breadth-default",
      also: ["hip-width"],
    }),
    "head-to-hip": length(15, 50)("from the top of the head to the bony point at the side of the hip", {
      measure:
        "lying straight on the back: tape along the bed from a book held against the head; ± 1 in where the bone is hard to feel",
      safer: "low",
      default: "hip-fraction",
      defaultOf: "stature",
      also: ["crown-to-hip"],
    }),
    // No error is the safer one: a smaller value warns sooner of hanging feet, a larger one of hips that bend too far.
    "popliteal-height": length(6, 28)(
      "from the floor to the underside of the thigh behind the knee, seated",
      {
        measure:
          "seated, in the shoes worn while moving, foot flat, knee at a right angle: tape from the floor",
        default: "popliteal-fraction",
        defaultOf: "stature",
        also: ["lower-leg-length"],
      },
    ),
    "buttock-knee-length": length(12, 36)("from the back of the buttocks to the front of the knee, seated", {
      measure:
        "seated upright, a board upright against the back of the hips, knee at a right angle: tape level to the front of the kneecap; longer leg",
      safer: "high",
      default: "buttock-knee-fraction",
      defaultOf: "stature",
      also: ["buttock-to-knee"],
    }),
    waist: length(20, 80)("round the waist, over clothing, where a belt goes", {
      measure: "tape round the waist, seated, two fingers under it",
      safer: "high",
    }),
    "head-to-seat": length(20, 45)("from the seat to the top of the head, sitting", {
      measure: "seated upright, a book level on the head, tape from the seat to the book",
      safer: "high",
      also: ["sitting-height"],
    }),
    "trunk-lean": angle(0, 80)("how far the trunk can lean and come back by itself", {
      measure: "seated, a phone's level held to the breastbone; judged by a therapist",
      safer: "low",
    }),
    "push-up": choice(
      "able",
      "partly",
      "unable",
    )("lifts the hips clear of the seat with both arms", { need: "wanted" }),
    "sitting-balance": choice("good", "fair", "poor")("sits without support at the edge", { need: "wanted" }),
    trunk: choice("good", "fair", "poor")("trunk control: comes back to the middle by itself"),
    "arm-strength": choice("able", "weak")("both arms can take the body's weight in part", {
      need: "wanted",
      also: ["arms"],
    }),
    arm: parts(sidePart, part("strength", choiceShape("able", "weak", "none")))(
      "the strength of one arm, where the two differ",
      { many: true, distinct: "side" },
    ),
    cooperates: flag("follows instructions, and says so when something hurts", { need: "wanted" }),
    skin: choice(
      "intact",
      "at-risk",
      "broken",
    )("skin over the sitting bones and tail bone", { need: "wanted" }),
    "healed-sore": text("where a pressure sore has healed; the skin there stays weak", { many: true }),
    assistance: choice(...assistanceLevels)("help needed for this kind of transfer", { need: "wanted" }),
    limit,
    precaution: text("anything else to be kept in mind", { many: true }),
    line,
    today,
    note,
  },
};

export const helper: BlockSpec = {
  help: "one person who helps, by role",
  name: "required",
  keys: {
    trained: flag("has been shown, and has done it back", { need: "wanted" }),
    "safe-pull": force(1, 120)("the pull that this person can give without harm", {
      need: "wanted",
      measure: "judged by a therapist, with a spring scale hooked to a belt where there is one",
      safer: "low",
    }),
    "safe-push": force(1, 120)("the push that this person can give without harm", {
      measure: "judged by a therapist, with a bathroom scale held upright where there is one",
      safer: "low",
    }),
    "safe-lift": mass(1, 120)("the load that this person can lift without harm", {
      measure: "judged by a therapist",
      safer: "low",
    }),
    "own-limit": text("what this person must not or cannot do: a bad back, a pregnancy", {
      many: true,
      also: ["limit"],
    }),
    hours: parts(part("from", timeShape), part("until", timeShape, { lead: "to" }))(
      "from when until when this person is there: hours 07:00 to 09:00",
      { many: true },
    ),
    present: text("when this person is there, in words"),
    note,
  },
};
