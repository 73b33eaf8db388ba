/** What an action is, and the reasons for which steps cannot be done that several of them share. */
import type { Step } from "../../language/vocabulary/verbs.js";
import { chairWords, helpersOf, isFloor, surfaceWords, type Side, type StepSetup } from "./setup.js";
import { inChair, type State } from "./state.js";

export interface Action {
  /** Why the step can never be done with this equipment, in words; undefined where it can. */
  readonly absent?: (setup: StepSetup, step: Step) => string | undefined;
  /** Why the step cannot be done in this state, in words; undefined where it can. */
  readonly blocked: (state: State, setup: StepSetup, step: Step) => string | undefined;
  readonly effect: (state: State, setup: StepSetup, step: Step) => Partial<State>;
  /** A check that could not be made does not count as made; any other step is taken as done as it was meant. */
  readonly check?: true;
}

/** The first reason that applies. */
export const first = (...reasons: (string | false | undefined)[]): string | undefined =>
  reasons.find((r): r is string => typeof r === "string");

export const sideOf = (step: Step): Side => step.side ?? "left";
export const armrest = (side: Side) => (side === "left" ? "armrestLeft" : "armrestRight") as "armrestLeft";

export const lying = (s: State) => s.posture === "lying" && "the client is still lying";
export const hanging = (s: State) => s.client === "in-sling" && "the client hangs in the sling";
export const between = (s: State) =>
  s.client === "on-board" ? "the client is on the board, between the surfaces" : hanging(s);
export const noBoard = (s: State) => s.board !== "placed" && "the board is not under the client yet";
export const withoutBoard = (setup: StepSetup) =>
  setup.board ? undefined : "no board is written for this transfer";
export const nobody = (setup: StepSetup) =>
  setup.helped ? undefined : "no helper is written for this transfer";
export const noSecond = (setup: StepSetup) =>
  helpersOf(setup) < 2 ? "a second helper is not written for this transfer" : undefined;
export const hooked = (s: State): boolean => s.sling === "attached" || s.sling === "checked";

/** Somebody's hands reach the chair: a helper's, those of the client in it, or of the client sitting beside it. */
export const handsAtChair = (s: State, setup: StepSetup) => {
  if (setup.helped || inChair(s, setup) || s.client === "on-board") return undefined;
  const chair = chairWords(setup);
  if (s.posture === "lying") return `nobody is there to reach ${chair}: the client is alone and lying`;
  return s.chair === "away"
    ? `nobody is there to reach ${chair}: the client is alone and not in it`
    : undefined;
};
export const handsAtSurface = (s: State, setup: StepSetup) =>
  !setup.helped && s.posture === "lying" && "nobody is there to reach it: the client is alone and lying";

export const otherName = (step: Step, setup: StepSetup) =>
  step.object !== undefined &&
  step.object !== setup.surface.name &&
  step.object !== setup.surface.kind &&
  `this transfer is with ${setup.surface.name}, not with ${step.object}`;

/** What no way across with hips on a surface gets past; a lift has its own. */
export const noSliding = (setup: StepSetup) =>
  isFloor(setup)
    ? "the floor is too far down to slide to or from: that takes a lift, or two helpers together"
    : undefined;
export const wayAcross = (s: State, setup: StepSetup) =>
  first(
    lying(s),
    hanging(s),
    s.client === "on-to" && "the client is already across",
    s.chair === "away" && `${chairWords(setup)} is not at ${surfaceWords(setup)} yet`,
  );
