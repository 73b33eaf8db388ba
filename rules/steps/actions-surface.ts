/** What the steps at the other surface need and change: its castors, height and arms, water and clothing, rim, car and lines. */
import type { Step, Verb } from "../../language/vocabulary/verbs.js";
import { between, first, handsAtSurface, lying, otherName, sideOf, type Action } from "./reasons.js";
import {
  castorsOf,
  hasRim,
  isBench,
  isCar,
  mayHaveArms,
  surfaceSideOf,
  surfaceWords,
  type Side,
  type StepSetup,
} from "./setup.js";
import { onSurface, type State } from "./state.js";

const surfaceArm = (side: Side) =>
  (side === "left" ? "surfaceArmLeft" : "surfaceArmRight") as "surfaceArmLeft";
const leg = (side: Side) => (side === "left" ? "legLeft" : "legRight") as "legLeft";

const castors = (to: State["castors"]): Action => ({
  absent: (setup) => (castorsOf(setup) === "none" ? `${surfaceWords(setup)} has no castors` : undefined),
  blocked: (s, setup) => first(handsAtSurface(s, setup)),
  effect: () => ({ castors: to }),
});

const noArm = (setup: StepSetup, step: Step): string | undefined => {
  const is = setup.surfaceArms?.[sideOf(step)];
  if (is === "none") return `${surfaceWords(setup)} has no ${sideOf(step)} arm`;
  if (is === undefined && !mayHaveArms(setup)) return `no arm is written for ${surfaceWords(setup)}`;
  return first(otherName(step, setup));
};
const reachArm = (s: State, setup: StepSetup) =>
  first(
    between(s),
    handsAtSurface(s, setup),
    !setup.helped &&
      s.chair === "away" &&
      !onSurface(s, setup) &&
      "nobody is there to reach it: the client is alone and not beside it",
  );

const noRim = (setup: StepSetup) =>
  hasRim(setup) ? undefined : `${surfaceWords(setup)} has no rim or sill to lift a leg over`;
/** Feet stand inside once both legs are in; with both out nothing carries them until they are placed. */
const legTo = (to: "in" | "out"): Action => ({
  absent: noRim,
  blocked: (s, setup) =>
    first(
      lying(s),
      between(s),
      !onSurface(s, setup) && `the client is not on ${surfaceWords(setup)}`,
      isCar(setup) && s.door === "closed" && "the car door is shut",
    ),
  effect: (s, _, step) => {
    const side = sideOf(step);
    if (s[leg(side)] === to) return {};
    const other = s[leg(side === "left" ? "right" : "left")];
    return {
      [leg(side)]: to,
      ...(other === to && { feet: to === "in" ? "floor" : "hanging" }),
    };
  },
});
const alongTo = (along: State["along"]): Action => ({
  absent: (setup) => (isBench(setup) ? undefined : "there is no bench over a rim to move along"),
  blocked: (s, setup) =>
    first(
      lying(s),
      between(s),
      !onSurface(s, setup) && "the client is not on the bench",
      s.board === "placed" && "the board is still placed",
    ),
  effect: () => ({ along, bearingChecked: "no" }),
});

const noCar = (setup: StepSetup) => (isCar(setup) ? undefined : "this transfer has no car");
const inCar = (effect: Partial<State>): Action => ({
  absent: noCar,
  blocked: (s) => first(between(s)),
  effect: () => effect,
});
const clothing = (to: State["clothing"]): Action => ({
  blocked: (s) => first(between(s)),
  effect: () => ({ clothing: to }),
});
const noLines = (setup: StepSetup) =>
  setup.lines === false ? "no lines or tubes are written for the client" : undefined;

/** Whether a step that names a thing, or none, means the other surface. */
const meansSurface = (setup: StepSetup, step: Step): boolean => !otherName(step, setup);

export const surfaceActions = {
  "lock castors": castors("locked"),
  "unlock castors": castors("unlocked"),
  "set-height": {
    absent: (setup, step) => {
      if (meansSurface(setup, step))
        return setup.adjusts === false ? `${surfaceWords(setup)} does not adjust` : undefined;
      return setup.adjustable?.includes(step.object!) ? undefined : first(otherName(step, setup));
    },
    blocked: () => undefined,
    effect: (_, setup, step) => ({
      ...(meansSurface(setup, step) ? { height: "set" } : { otherHeight: "set" }),
      bearingChecked: "no",
    }),
  },
  "clear arm-of": {
    absent: (setup, step) =>
      noArm(setup, step) ??
      (setup.surfaceArms?.[sideOf(step)] === "fixed"
        ? `the ${sideOf(step)} arm of ${surfaceWords(setup)} is written as fixed: it does not move`
        : undefined),
    blocked: reachArm,
    effect: (_, __, step) => ({ [surfaceArm(sideOf(step))]: "away" }),
  },
  "restore arm-of": {
    absent: noArm,
    blocked: (s, setup, step) =>
      first(
        s.board === "placed" && step.side === surfaceSideOf(setup) && "the board lies where the arm goes",
        reachArm(s, setup),
      ),
    effect: (_, __, step) => ({ [surfaceArm(sideOf(step))]: "in-place" }),
  },
  "wipe-dry": {
    absent: (setup, step) => first(otherName(step, setup)),
    // Whoever sits on it can still have it wiped beside the hips, where the board will lie.
    blocked: (s, setup) =>
      first(between(s), handsAtSurface(s, setup), s.board === "placed" && "the board lies on it"),
    effect: () => ({ surfaceWet: "dry" }),
  },
  "dry skin": { blocked: (s) => first(between(s)), effect: () => ({ skin: "dry" }) },
  "clothing up": clothing("up"),
  "clothing down": clothing("down"),
  "leg in": legTo("in"),
  "leg out": legTo("out"),
  "move-along in": alongTo("inside"),
  "move-along out": alongTo("outside"),
  "open door": inCar({ door: "open" }),
  "close door": {
    absent: noCar,
    blocked: (s, setup) =>
      first(
        between(s),
        s.board === "placed" && "the board lies in the doorway",
        onSurface(s, setup) && (s.legLeft === "out" || s.legRight === "out") && "a leg is still outside",
        s.chair === "at" && "the chair stands in the doorway",
      ),
    effect: () => ({ door: "closed" }),
  },
  "seat rearward": inCar({ carSeat: "back" }),
  "recline backrest": inCar({ backrest: "reclined" }),
  "duck head": {
    absent: noCar,
    blocked: (s) => first(lying(s), between(s)),
    effect: () => ({ head: "ducked" }),
  },
  "move lines": {
    absent: noLines,
    blocked: () => undefined,
    effect: () => ({ lines: "moved" }),
  },
  "check lines": {
    check: true,
    absent: noLines,
    blocked: (s) => first(between(s)),
    effect: () => ({ lines: "checked" }),
  },
} satisfies Partial<Record<Verb, Action>>;
