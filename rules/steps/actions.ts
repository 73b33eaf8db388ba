/**
 * What each step needs to be physically possible, and what it changes. Whether a possible step is wise is for the rules:
 * laying a board over an armrest, or lifting off a leg rest with the brakes open, is possible here.
 */
import type { Step, Verb } from "../../language/vocabulary/verbs.js";
import { canLie, type Side, type StepSetup } from "./setup.js";
import { inChair, onSurface, type State } from "./state.js";

export interface Action {
  /** Why the step cannot be done in this state, in words; undefined where it can. */
  readonly blocked: (state: State, setup: StepSetup, step: Step) => string | undefined;
  readonly effect: (state: State, setup: StepSetup, step: Step) => Partial<State>;
  /** A check that could not be made does not count as made; any other step is taken as done as it was meant. */
  readonly check?: true;
}

const legrest = (side: Side) => (side === "left" ? "legrestLeft" : "legrestRight") as "legrestLeft";
const armrest = (side: Side) => (side === "left" ? "armrestLeft" : "armrestRight") as "armrestLeft";
const sideOf = (step: Step): Side => step.side ?? "left";
const theSurface = (setup: StepSetup): string => `the ${setup.surface.kind}`;

/** The first reason that applies. */
const first = (...reasons: (string | false | undefined)[]): string | undefined =>
  reasons.find((r): r is string => typeof r === "string");

const lying = (s: State) => s.posture === "lying" && "the client is still lying";
const between = (s: State) => s.client === "on-board" && "the client is on the board, between the surfaces";
const noBoard = (s: State, setup: StepSetup) =>
  s.board !== "placed" &&
  (setup.board ? "the board is not under the client yet" : "no board is written for this transfer");
const nobody = (setup: StepSetup) => !setup.helped && "no helper is written for this transfer";

/** Somebody's hands reach the chair: a helper's, those of the client in it, or of the client sitting beside it. */
const handsAtChair = (s: State, setup: StepSetup) => {
  if (setup.helped || inChair(s, setup) || s.client === "on-board") return undefined;
  if (s.posture === "lying") return "nobody is there to reach the chair: the client is alone and lying";
  return s.chair === "away"
    ? "nobody is there to reach the chair: the client is alone and not in it"
    : undefined;
};
const handsAtSurface = (s: State, setup: StepSetup) =>
  !setup.helped && s.posture === "lying" && "nobody is there to reach it: the client is alone and lying";

const otherName = (step: Step, setup: StepSetup) =>
  step.object !== undefined &&
  step.object !== setup.surface.name &&
  step.object !== setup.surface.kind &&
  `this transfer is with ${setup.surface.name}, not with ${step.object}`;

const rolls = (s: State, setup: StepSetup) =>
  first(
    between(s),
    s.board === "placed" && "the board is still placed: it would fall or be dragged",
    s.brakes === "locked" && "the brakes are locked",
    !setup.helped &&
      !inChair(s, setup) &&
      "nobody is there to move the chair: the client is alone and not in it",
  );

/** Feet that stood on the plates hang once no leg rest is in place. */
const withLegrest = (s: State, side: Side, to: State["legrestLeft"]): Partial<State> => {
  const other = s[legrest(side === "left" ? "right" : "left")];
  const feet = s.feet === "plates" && other !== "in-place" && to !== "in-place" ? "hanging" : s.feet;
  return { [legrest(side)]: to, feet };
};

const armrestAway = (kind: "swing-away" | "flip-back" | "removable", does: string): Action => ({
  blocked: (s, setup, step) => first(wrongArmrest(setup, step, kind, does), handsAtChair(s, setup)),
  effect: (_, __, step) => ({ [armrest(sideOf(step))]: "away" }),
});
const wrongArmrest = (setup: StepSetup, step: Step, kind: string, does: string) => {
  const is = setup.armrests?.[sideOf(step)];
  if (is === undefined || is === kind) return undefined;
  return is === "none"
    ? `the chair has no ${sideOf(step)} armrest`
    : `the ${sideOf(step)} armrest is written as ${is}: it does not ${does}`;
};

const helperTo = (helper: State["helper"]): Action => ({
  blocked: (_, setup) => first(nobody(setup)),
  effect: () => ({ helper }),
});
const belt = (to: State["belt"]): Action => ({
  blocked: (_, setup) => first(!setup.belt && "no belt is written for this transfer"),
  effect: () => ({ belt: to }),
});
const castors = (to: State["castors"]): Action => ({
  blocked: (s, setup) =>
    first(s.castors === "none" && `${theSurface(setup)} has no castors`, handsAtSurface(s, setup)),
  effect: () => ({ castors: to }),
});
const scoot = (to: State["scooted"]): Action => ({
  blocked: (s) => first(lying(s), between(s)),
  effect: () => ({ scooted: to, bearingChecked: "no" }),
});
const feetTo = (feet: State["feet"]): Action => ({
  blocked: (s) => first(lying(s)),
  effect: () => ({ feet }),
});
const wayAcross = (s: State, setup: StepSetup) =>
  first(
    lying(s),
    s.client === "on-to" && "the client is already across",
    s.chair === "away" && `the chair is not at ${theSurface(setup)} yet`,
  );

/** One entry for every verb of the vocabulary; the compiler asks for a missing one. */
export const actions: Readonly<Record<Verb, Action>> = {
  "lock brakes": {
    blocked: (s, setup) =>
      first(setup.brakes === "none" && "the chair has no brakes", handsAtChair(s, setup)),
    effect: () => ({ brakes: "locked" }),
  },
  "unlock brakes": {
    blocked: (s, setup) => first(handsAtChair(s, setup)),
    effect: () => ({ brakes: "open", brakesChecked: "no" }),
  },
  "check brakes": {
    check: true,
    blocked: (s, setup) => first(s.brakes === "open" && "the brakes are open", handsAtChair(s, setup)),
    effect: () => ({ brakesChecked: "yes" }),
  },
  approach: {
    blocked: (s, setup, step) => first(otherName(step, setup), rolls(s, setup)),
    effect: () => ({ chair: "at", brakesChecked: "no" }),
  },
  "back-away": {
    blocked: (s, setup) => rolls(s, setup),
    effect: () => ({ chair: "away", brakesChecked: "no" }),
  },
  "remove legrest": {
    blocked: (s, setup, step) => first(wrongLegrest(setup, step, "lift off"), handsAtChair(s, setup)),
    effect: (s, _, step) => withLegrest(s, sideOf(step), "removed"),
  },
  "swing-away legrest": {
    blocked: (s, setup, step) =>
      first(
        wrongLegrest(setup, step, "swing away"),
        s[legrest(sideOf(step))] === "removed" && `the ${sideOf(step)} leg rest is off the chair`,
        handsAtChair(s, setup),
      ),
    effect: (s, _, step) => withLegrest(s, sideOf(step), "swung"),
  },
  "refit legrest": {
    blocked: (s, setup, step) =>
      first(
        setup.legrests?.[sideOf(step)] === "none" && `the chair has no ${sideOf(step)} leg rest`,
        handsAtChair(s, setup),
      ),
    effect: (s, _, step) => withLegrest(s, sideOf(step), "in-place"),
  },
  "swing-away armrest": armrestAway("swing-away", "swing away"),
  "flip-back armrest": armrestAway("flip-back", "flip back"),
  "remove armrest": armrestAway("removable", "lift out"),
  "restore armrest": {
    blocked: (s, setup, step) =>
      first(
        setup.armrests?.[sideOf(step)] === "none" && `the chair has no ${sideOf(step)} armrest`,
        between(s),
        s.board === "placed" && step.side === setup.side && "the board lies where the armrest goes",
        handsAtChair(s, setup),
      ),
    effect: (_, __, step) => ({ [armrest(sideOf(step))]: "in-place" }),
  },
  "footplates up": {
    blocked: (s, setup) =>
      first(
        setup.footplates === "fixed" && "the footplates do not turn up",
        noLegrest(s),
        s.feet === "plates" && "the feet are on the footplates",
        handsAtChair(s, setup),
      ),
    effect: () => ({ footplates: "up" }),
  },
  "footplates down": {
    blocked: (s, setup) => first(noLegrest(s), handsAtChair(s, setup)),
    effect: () => ({ footplates: "down" }),
  },
  "feet on floor": feetTo("floor"),
  "feet supported": feetTo("supported"),
  "feet on plates": {
    blocked: (s, setup) =>
      first(
        lying(s),
        !inChair(s, setup) && "the client is not in the chair",
        s.legrestLeft !== "in-place" && s.legrestRight !== "in-place" && "no leg rest is in place",
        s.footplates === "up" && "the footplates are up",
      ),
    effect: () => ({ feet: "plates" }),
  },
  "place board": {
    blocked: (s, setup) =>
      first(!setup.board && "no board is written for this transfer", wayAcross(s, setup), between(s)),
    effect: () => ({ board: "placed", brakesChecked: "no", bearingChecked: "no" }),
  },
  "check bearing": {
    check: true,
    blocked: (s, setup) => first(noBoard(s, setup)),
    effect: () => ({ bearingChecked: "yes" }),
  },
  "withdraw board": {
    blocked: (s, setup) =>
      first(
        between(s),
        s.board !== "placed" && (setup.board ? "the board is not placed" : noBoard(s, setup)),
      ),
    effect: () => ({ board: "stowed", bearingChecked: "no" }),
  },
  "belt on": belt("on"),
  "belt off": belt("off"),
  "scoot forward": scoot("yes"),
  "scoot back": scoot("no"),
  lean: { blocked: (s) => first(lying(s)), effect: (_, __, step) => ({ lean: sideOf(step) }) },
  "sit upright": { blocked: (s) => first(lying(s)), effect: () => ({ lean: "upright" }) },
  "sit on-edge": {
    blocked: (s, setup) =>
      first(
        !onSurface(s, setup) && `the client is not on ${theSurface(setup)}`,
        !canLie(setup) && "nobody lies here",
      ),
    effect: (s) => (s.posture === "lying" ? { posture: "sitting", feet: "hanging", positioned: "no" } : {}),
  },
  "slide part-way": {
    blocked: (s, setup) => first(wayAcross(s, setup), noBoard(s, setup)),
    effect: () => ({ client: "on-board", lean: "upright" }),
  },
  slide: {
    blocked: (s, setup) => first(wayAcross(s, setup), setup.board && noBoard(s, setup)),
    // The client arrives at the front of the seat, where the board lies clear of the wheel; on a bed, at the edge.
    effect: (_, setup) => ({
      client: "on-to",
      posture: "sitting",
      lean: "upright",
      scooted: setup.direction === "to-chair" ? "yes" : "no",
      positioned: "no",
    }),
  },
  "position in-bed": {
    blocked: (s, setup) =>
      first(
        !canLie(setup) && "this transfer has no bed",
        between(s),
        !onSurface(s, setup) && "the client is not on the bed",
      ),
    effect: (s) => ({ posture: "lying", feet: "supported", lean: "upright", ...settled(s) }),
  },
  "position in-chair": {
    blocked: (s, setup) => first(between(s), !inChair(s, setup) && "the client is not in the chair"),
    effect: (s) => ({ scooted: "no", lean: "upright", ...settled(s) }),
  },
  "helper in-front": helperTo("in-front"),
  "helper behind": helperTo("behind"),
  "helper at-side": helperTo("at-side"),
  "lock castors": castors("locked"),
  "unlock castors": castors("unlocked"),
  "set-height": {
    blocked: (s, setup, step) =>
      first(otherName(step, setup), setup.adjusts === false && `${theSurface(setup)} does not adjust`),
    effect: () => ({ height: "set", bearingChecked: "no" }),
  },
  "move lines": {
    blocked: (s) => first(s.lines === "none" && "no lines or tubes are written for the client"),
    effect: () => ({ lines: "moved" }),
  },
};

const settled = (s: State): Partial<State> => (s.client === "on-to" ? { positioned: "yes" } : {});

function noLegrest(s: State): string | false {
  return s.legrestLeft === "removed" && s.legrestRight === "removed" && "both leg rests are off the chair";
}

/** A swing-away leg rest also lifts off, once swung (common practice); a removable one only lifts off. */
function wrongLegrest(setup: StepSetup, step: Step, does: "lift off" | "swing away"): string | undefined {
  const side = sideOf(step);
  const is = setup.legrests?.[side];
  if (is === "none") return `the chair has no ${side} leg rest`;
  const can = is === undefined || is === "swing-away" || (is === "removable" && does === "lift off");
  return can ? undefined : `the ${side} leg rest is written as ${is}: it does not ${does}`;
}
