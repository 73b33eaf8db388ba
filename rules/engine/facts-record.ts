/** Facts on what was tried, what a prescriber limits, and what is due. */
import type { Household } from "../../language/model/household.js";
import type { Thing } from "../../language/model/types.js";
import type { Scene } from "../scene.js";
import {
  list,
  onTransfer,
  parts,
  word,
  yes,
  yesNo,
  type Parts,
  type Sight,
  type SpecialFact,
} from "./special-fact.js";
import { choiceReading, missingReading } from "./written.js";

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

export function trial(key: string, says: string, choices: readonly string[]): SpecialFact {
  return onTransfer(
    `trial.${key}`,
    says,
    { choices },
    (s, sight) => [s.transfer, trialOf(s, sight)],
    (s, n, sight) => {
      const found = trialOf(s, sight);
      if (!found) return missingReading(n, `a trial of ${s.name}`, { thing: s.transfer, key: "trial" });
      const value = word(found.values[key]);
      return value === undefined
        ? missingReading(n, `${key} of the trial of ${s.name}`, { thing: found, key })
        : choiceReading(n, value, { thing: found, key }, `${key} of the trial`);
    },
    true,
  );
}

export const limitsOf = (client: Thing | undefined): readonly Parts[] =>
  list(client?.values["limit"]).map(parts);

export const limitOverdue: SpecialFact = {
  name: "limit.overdue",
  says: "whether a prescriber's limit should have been looked at again before today",
  type: yesNo,
  on: "both",
  wide: true,
  depends: ({ household, today }) => [household.client, today],
  read: ({ household, today }) => {
    const overdue = limitsOf(household.client).some(
      (l) => typeof l["review"] === "string" && l["review"] < today,
    );
    return choiceReading(
      "limit.overdue",
      yes(overdue),
      household.client && { thing: household.client, key: "limit" },
    );
  },
};

const reviewDate = (h: Household): string | undefined => word(h.review?.values["on"]);
export const reviewOverdue: SpecialFact = {
  name: "review.overdue",
  says: "whether the day of the review has passed",
  type: yesNo,
  on: "both",
  wide: true,
  depends: ({ household, today }) => [household.review, today],
  read: ({ household, today }) => {
    const on = reviewDate(household);
    return on === undefined
      ? missingReading(
          "review.overdue",
          "the day on which the plan is looked at again (review)",
          household.review && { thing: household.review, key: "on" },
        )
      : choiceReading("review.overdue", yes(on < today), { thing: household.review!, key: "on" });
  },
};
export const reviewGiven: SpecialFact = {
  name: "review.given",
  says: "whether a day is written on which the plan is looked at again",
  type: yesNo,
  on: "both",
  wide: true,
  depends: ({ household }) => [household.review],
  read: ({ household }) =>
    choiceReading(
      "review.given",
      yes(reviewDate(household) !== undefined),
      household.review && { thing: household.review },
    ),
};

export const within = (what: string): SpecialFact =>
  onTransfer(
    `within-reach.${what}`,
    `whether the ${what} lies within reach where the client arrives`,
    yesNo,
    (s, { household }) => [s.to, s.transfer, ...household.all.filter((t) => t.kind === "within-reach")],
    (s, n, { household }) => {
      const blocks = household.all
        .filter((t) => t.kind === "within-reach")
        .flatMap((t) => t.inner["from"] ?? []);
      const block = blocks.find((b) => b.name === s.to?.name);
      return block
        ? choiceReading(n, yes(block.values[what] === true), { thing: block, key: what })
        : missingReading(n, `what lies within reach from ${s.to?.name ?? "the landing"} (within-reach)`, {
            thing: s.transfer,
          });
    },
    true,
  );
