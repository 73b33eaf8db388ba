/** What is said of the plan itself: reviews, phases, loans, what may change, what is accepted. */
import { kitKinds, thingKinds } from "./kinds.js";
import {
  choiceShape,
  codeShape,
  date,
  dateShape,
  either,
  list,
  mention,
  names,
  note,
  part,
  parts,
  text,
  textShape,
} from "./shapes.js";
import type { BlockSpec, KeySpec } from "./types.js";

export const review: BlockSpec = {
  help: "when the plan is looked at again",
  name: "none",
  once: true,
  keys: {
    on: date("the day", { need: "wanted" }),
    when: list(codeShape)("what brings it forward"),
    by: text("the role of the person who looks at it"),
    note,
  },
};

export const phase: BlockSpec = {
  help: "what holds until a delivery or a date",
  name: "required",
  keys: {
    "holds-from": date("the day from which it holds"),
    until: either(dateShape, textShape)("the day, or the event in words, until which it holds", {
      need: "required",
    }),
    uses: names(...thingKinds)("the things that are used while it lasts", { need: "wanted" }),
    changes: text("what is otherwise while it lasts", { many: true }),
    note,
  },
};

export const kit: BlockSpec = {
  help: "where a thing comes from and when it goes back",
  name: { of: kitKinds },
  oneOf: ["lent", "rented", "bought"],
  keys: {
    lent: mention("is lent"),
    rented: mention("is rented"),
    bought: mention("is bought"),
    by: text("the role of who lends, rents out or sells it"),
    "due-back": date("the day on which it goes back"),
    delivered: parts(
      part("is", choiceShape("yes", "no")),
      part("on", dateShape, { lead: "on", optional: true }),
    )("whether it is there, and since when or on which day it is to come", { need: "wanted" }),
    note,
  },
};

export const mayChange: BlockSpec = {
  help: "what may be changed, and within what limits",
  name: "none",
  keys: {},
  free: "changes",
};

/** Statements that stand alone at top level. */
export const statements: { readonly [key: string]: KeySpec } = {
  setup: text("the title of the plan", { need: "required" }),
  rules: parts(
    part("name", codeShape),
    part("version", codeShape),
    part("policy", textShape, { lead: "with", optional: true }),
  )(
    "the rule set and version under which it was prepared, and the file of the policy that changes it, where there is one",
    { need: "wanted" },
  ),
  visited: date("the day of the visit; what says nothing else was measured then", { need: "wanted" }),
  from: parts(part("path", textShape), part("use", { is: "list", item: codeShape }, { lead: "use" }))(
    "things declared in another file of the same folder",
    { many: true },
  ),
  accept: parts(
    part("rule", codeShape),
    part("at", codeShape, { lead: "at", optional: true }),
    part("until", dateShape, { lead: "until", optional: true }),
    part("approved", textShape, { lead: "approved-by", optional: true }),
    part("because", textShape, { lead: "because", optional: true }),
  )(
    "a finding knowingly accepted: which rule, where, until when, why; one of level stop also needs approved-by and a role",
    { many: true },
  ),
  expect: parts(
    part("rule", codeShape),
    part("verdict", choiceShape("holds", "fails", "unsettled", "unknown", "not-applicable")),
    part("for", codeShape, { lead: "for", optional: true }),
  )("what a verdict should be", { many: true }),
};
