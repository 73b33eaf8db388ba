/**
 * Facts that are neither written under one key nor computed from lengths: what is used, who is there, what was tried, what is
 * overdue. They state what the setup says; whether that is well is said by the rules.
 */
import { endKinds } from "../../language/vocabulary/index.js";
import { assistanceLevels } from "../../language/vocabulary/shapes.js";
import { clientFacts } from "./facts-client.js";
import { kitFacts } from "./facts-kit.js";
import { limitOverdue, reviewGiven, reviewOverdue, trial, within } from "./facts-record.js";
import { surfaceFacts } from "./facts-surface.js";
import {
  boardUsed,
  helpersCount,
  doneOutdoors,
  ifNot,
  indoors,
  liftCarries,
  liftUsed,
  near,
  outdoors,
  slingFacts,
  used,
} from "./facts-use.js";
import { onTransfer, yes, yesNo, type SpecialFact } from "./special-fact.js";
import { choiceReading, missingReading, withoutReading } from "./written.js";

const steps = onTransfer(
  "transfer.steps",
  "whether the steps are written, left to be planned, or neither",
  { choices: ["written", "planned", "none"] },
  (s) => [s.transfer, s.steps],
  (s, n) => {
    const choice = s.steps ? "written" : s.transfer.values["steps"] === "planned" ? "planned" : "none";
    return choiceReading(n, choice, { thing: s.transfer, key: "steps" });
  },
);

const stopPlan = onTransfer(
  "transfer.if-not",
  "whether it is written what to do if it does not go well",
  { open: true },
  (s) => [ifNot(s), s.transfer],
  (s, n) => {
    const found = ifNot(s);
    return found
      ? choiceReading(n, "given", { thing: found })
      : missingReading(n, `what to do if ${s.name} does not go well (if-not)`, {
          thing: s.transfer,
          key: "if-not",
        });
  },
);

const wayBackWritten = onTransfer(
  "way-back.written",
  "whether a way back of this transfer is written; of a way back itself: yes",
  yesNo,
  (s, { household }) => [
    s.transfer,
    s.base,
    household.all.find((t) => t.kind === "way-back" && t.values["of"] === s.name),
  ],
  (s, n, { household }) => {
    const back = s.base
      ? s.transfer
      : household.all.find((t) => t.kind === "way-back" && t.values["of"] === s.name);
    return choiceReading(n, yes(back !== undefined), { thing: back ?? s.transfer });
  },
  true,
);

const endKind = (end: "from" | "to"): SpecialFact =>
  onTransfer(
    `${end}.kind`,
    `what kind of surface the client ${end === "from" ? "leaves" : "comes to"}`,
    { choices: endKinds },
    (s) => [s[end], s.transfer, s.base],
    (s, n) =>
      s[end]
        ? choiceReading(n, s[end]!.kind, { thing: s[end]! })
        : missingReading(n, `where ${s.name} ${end === "from" ? "starts" : "ends"} (from)`, {
            thing: s.base ?? s.transfer,
            key: "from",
          }),
  );

const looseRug = onTransfer(
  "room.loose-rug",
  "whether a loose rug lies in the room",
  yesNo,
  (s) => [s.room, s.transfer, s.base],
  (s, n) => {
    if (outdoors(s)) return withoutReading(n, doneOutdoors);
    if (!s.room)
      return missingReading(n, "the room in which it is done (room)", { thing: s.transfer, key: "room" });
    const floor = s.room.values["floor"];
    const at = { thing: s.room, key: "floor" };
    return Array.isArray(floor)
      ? choiceReading(n, yes(floor.includes("loose-rug")), at, "floor")
      : missingReading(n, `the floor of ${s.room.name}`, at);
  },
);

export const specialFacts: readonly SpecialFact[] = [
  boardUsed,
  used("belt.used", "whether a transfer belt is used", "a belt is used", (s) => s.belt),
  used("helper.used", "whether somebody helps", "somebody helps", (s) => s.helpers),
  helpersCount,
  liftUsed,
  liftCarries,
  ...slingFacts,
  indoors,
  onTransfer(
    "transfer.direction",
    "there: from the chair; back: to the chair",
    { choices: ["there", "back"] },
    (s) => [s.direction, s.transfer],
    (s, n) => choiceReading(n, s.direction, { thing: s.transfer }),
  ),
  steps,
  stopPlan,
  wayBackWritten,
  trial("outcome", "how the newest trial of this direction ended", ["done", "stopped", "failed"]),
  trial("skin", "the skin after that trial", ["clear", "marked"]),
  trial("assistance", "the help that was needed in that trial", assistanceLevels),
  endKind("from"),
  endKind("to"),
  near("chair.armrest-near", "armrest", "armrest", ["fixed", "swing-away", "flip-back", "removable", "none"]),
  near("chair.legrest-near", "legrest", "leg rest", ["fixed", "swing-away", "removable", "none"]),
  ...surfaceFacts,
  looseRug,
  ...clientFacts,
  ...kitFacts,
  limitOverdue,
  reviewOverdue,
  reviewGiven,
  ...["phone", "light", "board", "bell", "chair", "drink"].map(within),
];
