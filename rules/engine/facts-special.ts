/**
 * Facts that are neither written under one key nor computed from lengths: what is used, who is there, what was tried, what is
 * overdue. They state what the setup says; whether that is well is said by the rules.
 */
import type { Household } from "../../language/model/household.js";
import type { Thing, Value } from "../../language/model/types.js";
import type { Scene } from "../scene.js";
import { perSide } from "../scenes.js";
import type { FactType } from "./dimensions.js";
import type { Reading } from "./logic.js";
import { choiceReading, missingReading, numberReading } from "./written.js";

/** What a fact may look at. `scene` is undefined for rules on the setup as a whole. */
export interface Sight {
  readonly household: Household;
  /** ISO 8601 calendar date. */
  readonly today: string;
  readonly scene?: Scene;
}

export interface SpecialFact {
  readonly name: string;
  readonly says: string;
  readonly type: FactType;
  /** Where it can be read: on transfers and their steps, on the setup, or on both. */
  readonly on: "transfer" | "setup" | "both";
  /** Looks beyond the things of its transfer: at trials, reviews, other transfers. */
  readonly wide: boolean;
  /** What the answer depends on, compared by identity: the same dependencies give the same reading again. */
  readonly depends: (s: Sight) => readonly unknown[];
  readonly read: (s: Sight) => Reading;
}

const yesNo: FactType = { choices: ["yes", "no"] };
type Parts = { readonly [part: string]: Value | undefined };
const parts = (v: Value | undefined): Parts => (typeof v === "object" && v !== null && !Array.isArray(v) ? (v as Parts) : {});
const word = (v: Value | undefined): string | undefined => (typeof v === "string" ? v : undefined);
const list = (v: Value | undefined): readonly Value[] => (Array.isArray(v) ? v : v === undefined ? [] : [v]);
const yes = (x: boolean): string => (x ? "yes" : "no");

/** On transfers: `read` gets the scene; all that it depends on is listed. */
function onTransfer(name: string, says: string, type: FactType, depends: (s: Scene, sight: Sight) => readonly unknown[], read: (s: Scene, name: string, sight: Sight) => Reading, wide = false): SpecialFact {
  return { name, says, type, wide, on: "transfer", depends: (sight) => (sight.scene ? depends(sight.scene, sight) : []), read: (sight) => (sight.scene ? read(sight.scene, name, sight) : missingReading(name, name)) };
}

/** Something that `with` names or not; where `with` is not written nobody has said what is used. */
function used(name: string, says: string, what: string, of: (s: Scene) => Thing | readonly Thing[] | undefined): SpecialFact {
  const present = (s: Scene): boolean => {
    const found = of(s);
    return Array.isArray(found) ? found.length > 0 : found !== undefined;
  };
  return onTransfer(
    name,
    says,
    yesNo,
    (s) => [s.transfer, s.base, of(s)],
    (s, n) => {
      const said = s.value("with");
      if (present(s)) return choiceReading(n, "yes", { thing: said.thing, key: "with" });
      return Array.isArray(said.value) ? choiceReading(n, "no", { thing: said.thing, key: "with" }) : missingReading(n, `whether ${what} (with)`, { thing: said.thing, key: "with" });
    },
  );
}

const boardUsed = onTransfer(
  "board.used",
  "whether a sliding board is used; unknown until a board or no-board is written",
  yesNo,
  (s) => [s.transfer, s.base, s.board],
  (s, n) => {
    if (s.board) return choiceReading(n, "yes", { thing: s.value("with").thing, key: "with" });
    const none = s.value("no-board");
    if (none.value === true) return choiceReading(n, "no", { thing: none.thing, key: "no-board" });
    return missingReading(n, "whether a board is used (with, or no-board)", { thing: s.transfer, key: "with" });
  },
);

const helpersCount = onTransfer(
  "helpers.count",
  "how many people help",
  { dimension: "number" },
  (s) => [s.transfer, s.base, s.helpers],
  (s, n) => {
    const said = s.value("with");
    if (s.helpers.length === 0 && !Array.isArray(said.value)) return missingReading(n, "who helps (with)", { thing: said.thing, key: "with" });
    return numberReading(n, s.helpers.length);
  },
);

/** The floor lift: named in `with`, or as the other way in `if-not`. */
export function liftOf(s: Scene, things: ReadonlyMap<string, Thing>): Thing | undefined {
  if (s.lift) return s.lift;
  const other = things.get(word(ifNot(s)?.values["otherwise"]) ?? "");
  return other?.kind === "lift" ? other : undefined;
}
const ifNot = (s: Scene): Thing | undefined => s.transfer.inner["if-not"]?.[0] ?? s.base?.inner["if-not"]?.[0];

const liftUsed = onTransfer(
  "lift.used",
  "whether a floor lift is used, or is the other way if it does not go well",
  yesNo,
  (s, { household }) => [s.transfer, s.base, liftOf(s, household.things)],
  (s, n, { household }) => {
    const lift = liftOf(s, household.things);
    const said = s.value("with");
    if (lift) return choiceReading(n, "yes", s.lift ? { thing: said.thing, key: "with" } : { thing: ifNot(s)!, key: "otherwise" });
    return Array.isArray(said.value) ? choiceReading(n, "no", { thing: said.thing, key: "with" }) : missingReading(n, "whether a lift is used (with)", { thing: said.thing, key: "with" });
  },
  true,
);

/** The kind of leg rest or armrest on the side of the surface. */
function near(name: string, one: "legrest" | "armrest", what: string, choices: readonly string[]): SpecialFact {
  return onTransfer(
    name,
    `the kind of ${what} on the side of the other surface`,
    { choices },
    (s) => [s.chair, s.side, s.transfer],
    (s, n) => {
      if (!s.chair) return missingReading(n, "which wheelchair is used (from)", { thing: s.base ?? s.transfer, key: "from" });
      const kinds = perSide(s.chair, one);
      const key = s.chair.values[one] !== undefined ? one : `${one}s`;
      if (!s.side && kinds.left !== kinds.right) return missingReading(n, "on which side of the chair the bed lies (bed-side and facing)", { thing: s.transfer, key: "bed-side" });
      const kind = kinds[s.side ?? "left"];
      return kind === undefined ? missingReading(n, `the kind of the ${what} of ${s.chair.name} on that side (${one}s)`, { thing: s.chair, key }) : choiceReading(n, kind, { thing: s.chair, key }, `${what} of ${s.chair.name}`);
    },
  );
}

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
    return found ? choiceReading(n, "given", { thing: found }) : missingReading(n, `what to do if ${s.name} does not go well (if-not)`, { thing: s.transfer, key: "if-not" });
  },
);

const wayBackWritten = onTransfer(
  "way-back.written",
  "whether a way back of this transfer is written; of a way back itself: yes",
  yesNo,
  (s, { household }) => [s.transfer, household.all.find((t) => t.kind === "way-back" && t.values["of"] === s.name)],
  (s, n, { household }) => {
    const back = s.base ? s.transfer : household.all.find((t) => t.kind === "way-back" && t.values["of"] === s.name);
    return choiceReading(n, yes(back !== undefined), { thing: back ?? s.transfer });
  },
  true,
);

/** The newest trial of this direction up to the day of the check; of two on one day the later written. */
function trialOf(s: Scene, { household, today }: Sight): Thing | undefined {
  let newest: Thing | undefined;
  for (const t of household.trials) {
    const on = word(t.values["on"]);
    if (t.name !== s.name || on === undefined || on > today) continue;
    if (!newest || on >= word(newest.values["on"])!) newest = t;
  }
  return newest;
}

function trial(key: string, says: string, choices: readonly string[]): SpecialFact {
  return onTransfer(
    `trial.${key}`,
    says,
    { choices },
    (s, sight) => [s.transfer, trialOf(s, sight)],
    (s, n, sight) => {
      const found = trialOf(s, sight);
      if (!found) return missingReading(n, `a trial of ${s.name}`, { thing: s.transfer, key: "trial" });
      const value = word(found.values[key]);
      return value === undefined ? missingReading(n, `${key} of the trial of ${s.name}`, { thing: found, key }) : choiceReading(n, value, { thing: found, key }, `${key} of the trial`);
    },
    true,
  );
}

const endKind = (end: "from" | "to"): SpecialFact =>
  onTransfer(
    `${end}.kind`,
    `what kind of surface the client ${end === "from" ? "leaves" : "comes to"}`,
    { choices: ["wheelchair", "bed"] },
    (s) => [s[end], s.transfer],
    (s, n) => (s[end] ? choiceReading(n, s[end]!.kind, { thing: s[end]! }) : missingReading(n, `where ${s.name} ${end === "from" ? "starts" : "ends"} (from)`, { thing: s.base ?? s.transfer, key: "from" })),
  );

const adjustable = onTransfer(
  "surface.adjustable",
  "whether the height of the bed adjusts",
  yesNo,
  (s) => [s.surface, s.transfer],
  (s, n) => {
    if (!s.surface) return missingReading(n, "which bed is used (from)", { thing: s.base ?? s.transfer, key: "from" });
    const at = { thing: s.surface, key: "adjusts" };
    const value = s.surface.values["adjusts"];
    if (value === "no") return choiceReading(n, "no", at);
    return parts(value)["low"] !== undefined ? choiceReading(n, "yes", at) : missingReading(n, `whether the height of ${s.surface.name} adjusts`, at);
  },
);

const railNear = onTransfer(
  "surface.rail-near",
  "whether a rail stands on the side of the bed on which the chair parks",
  yesNo,
  (s) => [s.surface, s.transfer, s.base],
  (s, n) => {
    if (!s.surface) return missingReading(n, "which bed is used (from)", { thing: s.base ?? s.transfer, key: "from" });
    const at = { thing: s.surface, key: "rails" };
    const rails = word(s.surface.values["rails"]);
    const side = word(s.value("bed-side").value);
    if (rails === "none" || rails === "both") return choiceReading(n, yes(rails === "both"), at);
    if (rails === undefined) return missingReading(n, `the rails of ${s.surface.name}`, at);
    return side === undefined ? missingReading(n, "the side of the bed on which the chair parks (bed-side)", { thing: s.transfer, key: "bed-side" }) : choiceReading(n, yes(rails === side), at);
  },
);

const looseRug = onTransfer(
  "room.loose-rug",
  "whether a loose rug lies in the room",
  yesNo,
  (s) => [s.room, s.transfer, s.base],
  (s, n) => {
    if (!s.room) return missingReading(n, "the room in which it is done (room)", { thing: s.transfer, key: "room" });
    const floor = s.room.values["floor"];
    const at = { thing: s.room, key: "floor" };
    return Array.isArray(floor) ? choiceReading(n, yes(floor.includes("loose-rug")), at, "floor") : missingReading(n, `the floor of ${s.room.name}`, at);
  },
);

const limitsOf = (client: Thing | undefined): readonly Parts[] => list(client?.values["limit"]).map(parts);

const weightBearing = onTransfer(
  "client.limit-weight-bearing",
  "how much weight a prescriber allows on the legs: none on at least one, some, or full where no limit is written",
  { choices: ["none", "some", "full"] },
  (s) => [s.client],
  (s, n) => {
    if (!s.client) return missingReading(n, "who is moved (client)");
    const amounts = limitsOf(s.client).filter((l) => l["what"] === "weight-bearing").map((l) => l["amount"]);
    const choice = amounts.includes("none") ? "none" : amounts.some((a) => a !== "full") ? "some" : "full";
    return choiceReading(n, choice, { thing: s.client, key: "limit" });
  },
);

const limitOverdue: SpecialFact = {
  name: "limit.overdue",
  says: "whether a prescriber's limit should have been looked at again before today",
  type: yesNo,
  on: "both",
  wide: true,
  depends: ({ household, today }) => [household.client, today],
  read: ({ household, today }) => {
    const overdue = limitsOf(household.client).some((l) => typeof l["review"] === "string" && l["review"] < today);
    return choiceReading("limit.overdue", yes(overdue), household.client && { thing: household.client, key: "limit" });
  },
};

const reviewDate = (h: Household): string | undefined => word(h.review?.values["on"]);
const reviewOverdue: SpecialFact = {
  name: "review.overdue",
  says: "whether the day of the review has passed",
  type: yesNo,
  on: "both",
  wide: true,
  depends: ({ household, today }) => [household.review, today],
  read: ({ household, today }) => {
    const on = reviewDate(household);
    return on === undefined ? missingReading("review.overdue", "the day on which the plan is looked at again (review)", household.review && { thing: household.review, key: "on" }) : choiceReading("review.overdue", yes(on < today), { thing: household.review!, key: "on" });
  },
};
const reviewGiven: SpecialFact = {
  name: "review.given",
  says: "whether a day is written on which the plan is looked at again",
  type: yesNo,
  on: "both",
  wide: true,
  depends: ({ household }) => [household.review],
  read: ({ household }) => choiceReading("review.given", yes(reviewDate(household) !== undefined), household.review && { thing: household.review }),
};

const within = (what: string): SpecialFact =>
  onTransfer(
    `within-reach.${what}`,
    `whether the ${what} lies within reach where the client arrives`,
    yesNo,
    (s, { household }) => [s.to, s.transfer, ...household.all.filter((t) => t.kind === "within-reach")],
    (s, n, { household }) => {
      const blocks = household.all.filter((t) => t.kind === "within-reach").flatMap((t) => t.inner["from"] ?? []);
      const block = blocks.find((b) => b.name === s.to?.name);
      return block ? choiceReading(n, yes(block.values[what] === true), { thing: block, key: what }) : missingReading(n, `what lies within reach from ${s.to?.name ?? "the landing"} (within-reach)`, { thing: s.transfer });
    },
    true,
  );

export const specialFacts: readonly SpecialFact[] = [
  boardUsed,
  used("belt.used", "whether a transfer belt is used", "a belt is used", (s) => s.belt),
  used("helper.used", "whether somebody helps", "somebody helps", (s) => s.helpers),
  helpersCount,
  liftUsed,
  onTransfer("transfer.direction", "there: from the chair; back: to the chair", { choices: ["there", "back"] }, (s) => [s.direction, s.transfer], (s, n) => choiceReading(n, s.direction, { thing: s.transfer })),
  steps,
  stopPlan,
  wayBackWritten,
  trial("outcome", "how the newest trial of this direction ended", ["done", "stopped", "failed"]),
  trial("skin", "the skin after that trial", ["clear", "marked"]),
  trial("assistance", "the help that was needed in that trial", ["independent", "setup", "supervision", "moderate", "maximal", "dependent"]),
  endKind("from"),
  endKind("to"),
  near("chair.armrest-near", "armrest", "armrest", ["fixed", "swing-away", "flip-back", "removable", "none"]),
  near("chair.legrest-near", "legrest", "leg rest", ["fixed", "swing-away", "removable", "none"]),
  adjustable,
  railNear,
  looseRug,
  weightBearing,
  limitOverdue,
  reviewOverdue,
  reviewGiven,
  ...["phone", "light", "board", "bell", "chair", "drink"].map(within),
];
