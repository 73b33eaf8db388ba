/** What the steps at the chair itself need and change. */
import type { Step, Verb } from "../../language/vocabulary/verbs.js";
import {
  armrest,
  between,
  first,
  handsAtChair,
  lying,
  otherName,
  sideOf,
  hanging,
  type Action,
} from "./reasons.js";
import { chairWords, surfaceWords, type Side, type StepSetup } from "./setup.js";
import { inChair, type State } from "./state.js";

const legrest = (side: Side) => (side === "left" ? "legrestLeft" : "legrestRight") as "legrestLeft";

const rolls = (s: State, setup: StepSetup) =>
  first(
    between(s),
    s.board === "placed" && "the board is still placed: it would fall or be dragged",
    s.brakes === "locked" && setup.brakes !== "no-wheels" && "the brakes are locked",
    !setup.helped &&
      !inChair(s, setup) &&
      `nobody is there to move ${chairWords(setup)}: the client is alone and not in it`,
  );
const noWheels = (setup: StepSetup) =>
  setup.brakes === "no-wheels" ? `${chairWords(setup)} has no wheels` : undefined;

/** Feet that stood on the plates hang once no leg rest is in place. */
const withLegrest = (s: State, side: Side, to: State["legrestLeft"]): Partial<State> => {
  const other = s[legrest(side === "left" ? "right" : "left")];
  const feet = s.feet === "plates" && other !== "in-place" && to !== "in-place" ? "hanging" : s.feet;
  return { [legrest(side)]: to, feet };
};

/** A swing-away leg rest also lifts off, once swung (common practice); a removable one only lifts off. */
function wrongLegrest(setup: StepSetup, step: Step, does: "lift off" | "swing away"): string | undefined {
  const side = sideOf(step);
  const is = setup.legrests?.[side];
  if (is === "none") return `${chairWords(setup)} has no ${side} leg rest`;
  const can = is === undefined || is === "swing-away" || (is === "removable" && does === "lift off");
  return can ? undefined : `the ${side} leg rest is written as ${is}: it does not ${does}`;
}
const noneThere = (what: "leg rest" | "armrest") => (setup: StepSetup, step: Step) => {
  const is = (what === "armrest" ? setup.armrests : setup.legrests)?.[sideOf(step)];
  return is === "none" ? `${chairWords(setup)} has no ${sideOf(step)} ${what}` : undefined;
};
const noLegrest = (s: State) =>
  s.legrestLeft === "removed" && s.legrestRight === "removed" && "both leg rests are off the chair";

const armrestAway = (kind: "swing-away" | "flip-back" | "removable", does: string): Action => ({
  absent: (setup, step) => {
    const is = setup.armrests?.[sideOf(step)];
    if (is === undefined || is === kind) return undefined;
    return (
      noneThere("armrest")(setup, step) ??
      `the ${sideOf(step)} armrest is written as ${is}: it does not ${does}`
    );
  },
  blocked: (s, setup) => first(handsAtChair(s, setup)),
  effect: (_, __, step) => ({ [armrest(sideOf(step))]: "away" }),
});

const feetTo = (feet: State["feet"]): Action => ({
  blocked: (s) => first(lying(s), hanging(s)),
  effect: () => ({ feet }),
});

export const chairActions = {
  "lock brakes": {
    absent: (setup) => (setup.brakes === "none" ? `${chairWords(setup)} has no brakes` : noWheels(setup)),
    blocked: (s, setup) => first(handsAtChair(s, setup)),
    effect: () => ({ brakes: "locked" }),
  },
  "unlock brakes": {
    absent: noWheels,
    blocked: (s, setup) => first(handsAtChair(s, setup)),
    effect: () => ({ brakes: "open", brakesChecked: "no" }),
  },
  "check brakes": {
    check: true,
    absent: noWheels,
    blocked: (s, setup) => first(s.brakes === "open" && "the brakes are open", handsAtChair(s, setup)),
    effect: () => ({ brakesChecked: "yes" }),
  },
  approach: {
    absent: (setup, step) => first(otherName(step, setup)),
    blocked: (s, setup) => rolls(s, setup),
    effect: () => ({ chair: "at", chairCastors: "as-rolled", brakesChecked: "no" }),
  },
  "back-away": {
    blocked: (s, setup) => rolls(s, setup),
    effect: () => ({ chair: "away", chairCastors: "as-rolled", brakesChecked: "no" }),
  },
  "castors forward": {
    absent: (setup) =>
      setup.chair?.kind === "commode" ? "that is for the front castors of a wheelchair" : undefined,
    blocked: (s, setup) =>
      first(s.chair === "away" && `the chair is not at ${surfaceWords(setup)} yet`, rolls(s, setup)),
    effect: () => ({ chairCastors: "forward", brakesChecked: "no" }),
  },
  "remove legrest": {
    absent: (setup, step) => wrongLegrest(setup, step, "lift off"),
    blocked: (s, setup) => first(handsAtChair(s, setup)),
    effect: (s, _, step) => withLegrest(s, sideOf(step), "removed"),
  },
  "swing-away legrest": {
    absent: (setup, step) => wrongLegrest(setup, step, "swing away"),
    blocked: (s, setup, step) =>
      first(
        s[legrest(sideOf(step))] === "removed" && `the ${sideOf(step)} leg rest is off the chair`,
        handsAtChair(s, setup),
      ),
    effect: (s, _, step) => withLegrest(s, sideOf(step), "swung"),
  },
  "refit legrest": {
    absent: noneThere("leg rest"),
    blocked: (s, setup) => first(handsAtChair(s, setup)),
    effect: (s, _, step) => withLegrest(s, sideOf(step), "in-place"),
  },
  "swing-away armrest": armrestAway("swing-away", "swing away"),
  "flip-back armrest": armrestAway("flip-back", "flip back"),
  "remove armrest": armrestAway("removable", "lift out"),
  "restore armrest": {
    absent: noneThere("armrest"),
    blocked: (s, setup, step) =>
      first(
        between(s),
        s.board === "placed" && step.side === setup.side && "the board lies where the armrest goes",
        handsAtChair(s, setup),
      ),
    effect: (_, __, step) => ({ [armrest(sideOf(step))]: "in-place" }),
  },
  "footplates up": {
    absent: (setup) => (setup.footplates === "fixed" ? "the footplates do not turn up" : undefined),
    blocked: (s, setup) =>
      first(noLegrest(s), s.feet === "plates" && "the feet are on the footplates", handsAtChair(s, setup)),
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
        !inChair(s, setup) && `the client is not in ${chairWords(setup)}`,
        s.legrestLeft !== "in-place" && s.legrestRight !== "in-place" && "no leg rest is in place",
        s.footplates === "up" && "the footplates are up",
      ),
    effect: () => ({ feet: "plates" }),
  },
} satisfies Partial<Record<Verb, Action>>;
