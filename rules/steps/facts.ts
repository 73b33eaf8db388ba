/** What rules on steps may ask: every fact by name, its choices, and how it is read from a state. */
import { spell, stepPhrases, type Step, type Verb } from "../../language/vocabulary/verbs.js";
import { bySide, fact, type StepFact } from "./fact.js";
import { liftFacts } from "./facts-lift.js";
import { surfaceFacts } from "./facts-surface.js";
import { judge } from "./machine.js";
import { otherSide, surfaceSideOf, type Side, type StepSetup } from "./setup.js";
import { inChair, stateChoices, type State } from "./state.js";

/** A verb as a choice of the rule language: one word, `remove-legrest`. */
export const verbChoice = (verb: Verb): string => verb.replaceAll(" ", "-");

const legrestOf = (s: State, side: Side) => (side === "left" ? s.legrestLeft : s.legrestRight);
const armrestOf = (s: State, side: Side) => (side === "left" ? s.armrestLeft : s.armrestRight);
const farSide = (setup: StepSetup) => setup.side && otherSide(setup.side);

/** Leaning `towards` is towards the surface at the board's far end: the landing before the slide, the side left behind after it. */
export function leanOf(state: State, setup: StepSetup, lean: State["lean"] = state.lean): string | undefined {
  if (lean === "upright") return "upright";
  const inOrFromChair =
    state.client === "on-board" ? setup.direction === "from-chair" : inChair(state, setup);
  const acrossFrom = inOrFromChair ? setup.side : surfaceSideOf(setup);
  if (!acrossFrom) return undefined;
  return lean === acrossFrom ? "towards" : "away";
}

export type { StepFact } from "./fact.js";

const table: readonly StepFact[] = [
  {
    name: "step.verb",
    choices: stepPhrases.map((p) => verbChoice(p.verb)),
    says: "what is done, in one word: `remove-legrest`",
    read: (_, __, step) => step && verbChoice(step.verb),
  },
  {
    name: "step.side",
    choices: ["near", "far", "none"],
    says: "whether the step works on the side of the chair at which the other surface lies; a lean is asked with step.leans",
    read: (_, setup, step) =>
      step && (step.side ? setup.side && (step.side === setup.side ? "near" : "far") : "none"),
  },
  {
    name: "step.leans",
    choices: ["away", "towards", "none"],
    says: "for a lean: to which side of the way across this step leans",
    read: (s, setup, step) =>
      step && (step.verb === "lean" ? leanOf(s, setup, step.side ?? "upright") : "none"),
  },
  {
    name: "step.possible",
    choices: ["yes", "no"],
    says: "whether the step can be done at all as things stand",
    read: (s, setup, step) => step && (judge(s, step, setup).ok ? "yes" : "no"),
  },
  {
    name: "step.because",
    choices: undefined,
    says: "why the step cannot be done, in words; empty where it can",
    read: (s, setup, step) => step && (judge(s, step, setup).because ?? ""),
  },
  {
    name: "step.text",
    choices: undefined,
    says: "the step as it is written",
    read: (_, __, step) => step && spell(step),
  },
  {
    name: "step.direction",
    choices: ["from-chair", "to-chair"],
    says: "whether the client leaves the chair or comes to it",
    read: (_, setup) => setup.direction,
  },
  fact("step.chair", "chair", "where the chair stands"),
  {
    ...fact(
      "step.brakes",
      "brakes",
      "the wheel brakes of the chair; a commode on legs counts as open while it is moved, else as locked",
    ),
    read: (s, setup, step) =>
      setup.brakes === "no-wheels" && (step?.verb === "approach" || step?.verb === "back-away")
        ? "open"
        : s.brakes,
  },
  {
    name: "step.legrest-near",
    choices: stateChoices.legrestLeft,
    says: "the leg rest on the side of the other surface",
    read: (s, setup) => bySide(setup.side, (side) => legrestOf(s, side)),
  },
  {
    name: "step.legrest-far",
    choices: stateChoices.legrestLeft,
    says: "the leg rest on the other side",
    read: (s, setup) => bySide(farSide(setup), (side) => legrestOf(s, side)),
  },
  {
    name: "step.armrest-near",
    choices: stateChoices.armrestLeft,
    says: "the armrest on the side of the other surface",
    read: (s, setup) => bySide(setup.side, (side) => armrestOf(s, side)),
  },
  {
    name: "step.armrest-far",
    choices: stateChoices.armrestLeft,
    says: "the armrest on the other side",
    read: (s, setup) => bySide(farSide(setup), (side) => armrestOf(s, side)),
  },
  {
    name: "step.footplates",
    choices: stateChoices.footplates,
    says: "the footplates; `up` also where no leg rest is in place, since then none is in the way",
    read: (s) => (s.legrestLeft !== "in-place" && s.legrestRight !== "in-place" ? "up" : s.footplates),
  },
  fact("step.feet", "feet", "what carries the feet; `hanging` is nothing"),
  fact("step.board", "board", "the board"),
  fact("step.belt", "belt", "the transfer belt"),
  fact("step.client", "client", "on which surface the client is; `on-board` is part of the way across"),
  fact("step.posture", "posture", "whether the client sits or lies"),
  {
    name: "step.lean",
    choices: ["upright", "away", "towards"],
    says: "how the trunk leans: away from or towards the surface at the board's other end",
    read: (s, setup) => leanOf(s, setup),
  },
  fact("step.scooted", "scooted", "whether the hips are forward"),
  fact("step.castors", "castors", "the castors of the other surface"),
  fact("step.height", "height", "whether a step set the height of the other surface"),
  fact("step.helper", "helper", "where the helper is"),
  fact("step.lines", "lines", "lines and tubes of the client; `checked` after the move"),
  {
    name: "step.lines-written",
    choices: ["yes", "no"],
    says: "whether lines or tubes are written for the client",
    read: (_, setup) => (setup.lines ? "yes" : "no"),
  },
  {
    ...fact(
      "step.brakes-checked",
      "brakesChecked",
      "brakes checked since the board was placed and since they were last locked; a commode on legs needs none",
    ),
    read: (s, setup) => (setup.brakes === "no-wheels" ? "yes" : s.brakesChecked),
  },
  fact(
    "step.bearing-checked",
    "bearingChecked",
    "both ends of the board checked since it was placed or last disturbed",
  ),
  fact("step.positioned", "positioned", "whether the client is settled on the surface of arrival"),
  ...surfaceFacts,
  ...liftFacts,
];

/** Every fact of steps by name: for the checks of a rule set, completion and hover. */
export const stepFacts: ReadonlyMap<string, StepFact> = new Map(table.map((f) => [f.name, f]));

/**
 * The facts of one step, read when asked: the state before it, and the step itself. Without a step (at the end of a
 * transfer) those of the step are unknown.
 */
export function facts(state: State, setup: StepSetup, step?: Step): (name: string) => string | undefined {
  return (name) => stepFacts.get(name)?.read(state, setup, step);
}

/** Whether a step is meant by the words of a rule: `slide` also means `slide part-way`, `scoot` both ways of scooting. */
export const stepIs = (step: { readonly verb: Verb; readonly side?: unknown }, words: string): boolean =>
  step.verb === words || step.verb.startsWith(`${words} `);

/** The words of a rule that mean no step at all, so that a misspelt rule does not simply never apply. */
export const meansNoStep = (words: string): boolean => !stepPhrases.some((p) => stepIs(p, words));
