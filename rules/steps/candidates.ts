/** Which steps the planner tries, and where in an order it tries them first. */
import { stepPhrases, type Step, type Verb } from "../../language/vocabulary/verbs.js";
import { leanOf } from "./facts.js";
import { neverDone } from "./machine.js";
import {
  isFloor,
  isToilet,
  isUndressedOn,
  kindsOf,
  otherSide,
  surfaceSideOf,
  type StepSetup,
} from "./setup.js";
import type { State } from "./state.js";

/** Steps that a usual order does without. */
const seldom: readonly Verb[] = [
  "feet supported",
  "helper behind",
  "helper at-side",
  "helper-two in-front",
  "helper-two at-side",
  "swing-away legrest",
  "slide part-way",
  "back-away",
  "scoot back",
  "unlock castors",
  "castors forward",
];
/** Steps that an order takes only where nothing else will do: they undo, or they serve nothing that orders are judged by. */
const last: readonly Verb[] = [
  "lock lift",
  "unlock lift",
  "close base",
  "close door",
  "leg in",
  "move-along in",
];

/**
 * The searches, each tried only where those before found no order: the usual steps when they are usually taken; the same at
 * any time; with the leg rest of the far side; with one seldom step; with everything the vocabulary has.
 */
export type Stage = "usual" | "any time" | "far leg rest" | Verb | "all";
export const stages: readonly Stage[] = ["usual", "any time", "far leg rest", ...seldom, "all"];

/** Steps whose only use is a fact that a rule may ask. */
const servesOnly: Partial<Record<Verb, string>> = {
  "move lines": "step.lines",
  "check lines": "step.lines",
  "lock castors": "step.castors",
  "set-height": "step.height",
  "helper in-front": "step.helper",
  "helper behind": "step.helper",
  "helper at-side": "step.helper",
  "helper-two in-front": "step.helper-two",
  "helper-two behind": "step.helper-two",
  "helper-two at-side": "step.helper-two",
  "belt on": "step.belt",
  "scoot forward": "step.scooted",
  "check bearing": "step.bearing-checked",
  "check brakes": "step.brakes-checked",
  lean: "step.lean",
  "castors forward": "step.chair-castors",
  "seat rearward": "step.car-seat",
  "recline backrest": "step.backrest",
  "duck head": "step.head",
  "wipe-dry": "step.surface-wet",
  "dry skin": "step.skin",
  "cover board": "step.cover",
  "sheet in": "step.sheet",
  "open base": "step.base",
  "close base": "step.base",
  "lock lift": "step.lift-castors",
  "check lifted": "step.lifted-checked",
};

/**
 * Steps that prepare the place, which no later step undoes. They are taken first if they are allowed then, and dropped again
 * if the order found holds without them: each of them would else double the states to look at.
 */
export const preparing: readonly Verb[] = [
  "move lines",
  "lock castors",
  "set-height",
  "open door",
  "seat rearward",
  "recline backrest",
  "wipe-dry",
  "dry skin",
  "cover board",
  "clothing up",
  "clear arm-of",
];
/** Steps that put in order what the way across left behind. They are taken last, for the same reason. */
export const closing: readonly Verb[] = ["clothing down", "restore arm-of", "check lines"];

/** In the sling nobody needs a way across a seat's edge. */
const notInSling: readonly Verb[] = [
  "approach",
  "place board",
  "cover board",
  "check bearing",
  "withdraw board",
  "slide",
  "slide part-way",
  "lift together",
  "belt on",
  "scoot forward",
  "lean",
  "clear arm-of",
  "sheet in",
  "duck head",
  "castors forward",
  "remove legrest",
  "swing-away legrest",
  "unlock brakes",
  "back-away",
  "swing-away armrest",
  "flip-back armrest",
  "remove armrest",
  "footplates up",
  "sit on-edge",
  "scoot back",
];

/** Which verbs an order for this equipment may have at all. */
function wanted(verb: Verb, setup: StepSetup): boolean {
  const { from, to } = kindsOf(setup);
  if (verb === "clothing down") return isUndressedOn(to);
  if (verb === "clothing up") return isToilet(from) && !isUndressedOn(to);
  // With a lift at hand nobody is slid or carried; a person is lifted by hand from and to the floor only.
  if (setup.lift) return !notInSling.includes(verb);
  if (verb === "sling under") return false;
  if (verb === "lift together") return isFloor(setup);
  return true;
}

/** The steps tried in one search, in the order of the vocabulary. */
export function candidates(setup: StepSetup, reads: ReadonlySet<string> | undefined, stage: Stage): Step[] {
  const all = stage === "all";
  // Only in a sling the side may be unsaid: then what is put back is put back on both.
  const near = setup.side ?? "left";
  const leaving = setup.direction === "to-chair";
  const sidesOf = (verb: Verb): ("left" | "right")[] => {
    const arm = verb.endsWith("arm-of");
    const first = arm ? (surfaceSideOf(setup) ?? near) : near;
    const both =
      all ||
      !setup.side ||
      verb === "lean" ||
      verb.startsWith("leg ") ||
      verb === "restore arm-of" ||
      (stage === "far leg rest" && verb.endsWith("legrest"));
    return both ? [first, otherSide(first)] : [first];
  };
  return (
    stepPhrases
      .filter(({ verb }) => wanted(verb, setup))
      .filter(({ verb }) => all || verb === stage || !seldom.includes(verb))
      // What goes into a tub or a car is on the way there; what comes out of it on the way back.
      .filter(({ verb }) => all || !last.includes(verb) || (!leaving && /^(leg|move-along) in$/.test(verb)))
      .filter(({ verb }) => all || leaving || !/^(leg|move-along) out$/.test(verb))
      // Nobody wrote that the height can be set: an order must not count on it.
      .filter(({ verb }) => verb !== "set-height" || setup.adjusts === true)
      .filter(({ verb }) => !reads || !servesOnly[verb] || reads.has(servesOnly[verb]))
      .flatMap(({ verb, side, object }): Step[] => {
        const named = object ? { object: setup.surface.name } : {};
        return side ? sidesOf(verb).map((s) => ({ verb, side: s, ...named })) : [{ verb, ...named }];
      })
      .filter((step) => neverDone(setup, step) === undefined)
  );
}

/** Steps that wait until the chair stands ready: nobody is left leaning, or on an edge, while it is still being brought. */
const whenReady: readonly Verb[] = [
  "sit on-edge",
  "move-along out",
  "leg out",
  "helper-two behind",
  "belt on",
  "sheet in",
  "scoot forward",
];
/** Steps that wait until the board lies, or until the chair stands ready where there is none. */
const whenLaid: readonly Verb[] = ["feet on floor", "footplates up", "duck head"];
/** Steps that undo what the way across needed. */
const onceAcross: readonly Verb[] = [
  "belt off",
  "sheet out",
  "withdraw board",
  "restore armrest",
  "refit legrest",
  "footplates down",
  "feet on plates",
];

/** A lean is only there to free the hip under which the board goes. */
const freesHip = (state: State, step: Step, setup: StepSetup): boolean =>
  step.verb !== "lean" || leanOf(state, setup, step.side) === "away";

/** Steps that could as well be taken in another order, when they are usually taken. */
function usually(state: State, step: Step, setup: StepSetup): boolean {
  const { verb } = step;
  const across = state.client === "on-to";
  const ready = state.chair === "at" && state.brakes === "locked";
  if (verb === "unlock brakes") return state.chair === "away";
  // The leg beside the way across comes out first and goes in last.
  const beside = step.side === surfaceSideOf(setup);
  if (verb === "leg out" && !beside && state.legLeft === "in" && state.legRight === "in") return false;
  if (verb === "leg in" && beside && state.legLeft === "out" && state.legRight === "out") return false;
  if (setup.lift) return true;
  // Alone the client has to sit up before anything at the chair can be reached.
  if (verb === "sit on-edge" && !setup.helped) return true;
  if (whenReady.includes(verb)) return ready && state.board === "stowed" && !across;
  if (verb === "lean") return ready;
  if (whenLaid.includes(verb)) return across || (setup.board ? state.board === "placed" : ready);
  return across || !onceAcross.includes(verb);
}

/** Whether a search tries a step in this state: each wait halves the states to look at, for each step that waits. */
export function timely(state: State, step: Step, setup: StepSetup, stage: Stage): boolean {
  if (stage === "all") return true;
  return freesHip(state, step, setup) && (stage !== "usual" || usually(state, step, setup));
}
