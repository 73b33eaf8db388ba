/** Runs the steps of one direction of a transfer and says, for each, whether it can be done. */
import type { Step, Verb } from "../../language/vocabulary/verbs.js";
import { actions } from "./actions.js";
import type { StepSetup } from "./setup.js";
import { change, equipmentOf, inChair, start, type State } from "./state.js";
import type { Equipment } from "./types.js";

export interface Possible {
  readonly ok: boolean;
  /** Why not, in words that follow "it cannot be done: ". */
  readonly because?: string;
}

export interface Run {
  readonly setup: StepSetup;
  readonly steps: readonly Step[];
  readonly start: State;
  /** The state before and after each step, by its index. */
  readonly before: readonly State[];
  readonly after: readonly State[];
  readonly possible: readonly Possible[];
  /** False where everything the step is for was so already. */
  readonly changes: readonly boolean[];
  readonly end: State;
}

const possible: Possible = Object.freeze({ ok: true });

/** Whether a step can be done in this state. */
export function judge(state: State, step: Step, setup: StepSetup): Possible {
  const { absent, blocked } = actions[step.verb];
  const because = absent?.(setup, step) ?? blocked(state, setup, step);
  return because === undefined ? possible : { ok: false, because };
}

/** Why a step can never be done with this equipment, whatever the state; undefined where it can. */
export const neverDone = (setup: StepSetup, step: Step): string | undefined =>
  actions[step.verb].absent?.(setup, step);

/** What a step that can be done changes. */
export const effectOf = (state: State, step: Step, setup: StepSetup): Partial<State> =>
  actions[step.verb].effect(state, setup, step);

/** The state after a step that can be done. */
export const apply = (state: State, step: Step, setup: StepSetup): State =>
  change(state, effectOf(state, step, setup));

/**
 * Runs all steps. A step that cannot be done is reported once and then taken as done the way it was meant, so that one
 * missing step does not make every later one impossible too: after `slide` without a board the client counts as across.
 * Checks are the exception: one that could not be made does not count as made, since that would hide what it is there to find.
 */
export function run(steps: readonly Step[], setup: StepSetup): Run {
  const first = start(setup);
  const before: State[] = [];
  const after: State[] = [];
  const verdicts: Possible[] = [];
  const changes: boolean[] = [];
  let state = first;
  for (const step of steps) {
    const verdict = judge(state, step, setup);
    before.push(state);
    const next = verdict.ok || !actions[step.verb].check ? apply(state, step, setup) : state;
    changes.push(next !== state);
    state = next;
    after.push(state);
    verdicts.push(verdict);
  }
  return { setup, steps, start: first, before, after, possible: verdicts, changes, end: state };
}

/**
 * The chair as geometry meets it: as it stands when the board is placed; without a board, when the client slides; without
 * either, at the end of what is written, or at the start where nothing is. Coming to the chair the client lands forward on
 * the seat, so the hips count as forward there.
 * @param verb the step at which to look, if it is in the steps
 */
export function equipmentAt(run: Run, verb: Verb = "place board"): Equipment {
  let at = run.steps.findIndex((s) => s.verb === verb);
  if (at < 0) at = run.steps.findIndex((s) => s.verb === "slide");
  const state = at < 0 ? run.end : run.before[at]!;
  const scooted =
    run.setup.direction === "to-chair" && !inChair(state, run.setup) ? true : state.scooted === "yes";
  return equipmentOf(state, scooted);
}
