/** What the steps with the board, the helpers and the client's own moves need and change. */
import type { Verb } from "../../language/vocabulary/verbs.js";
import {
  between,
  first,
  hanging,
  lying,
  nobody,
  noBoard,
  noSecond,
  noSliding,
  sideOf,
  wayAcross,
  withoutBoard,
  type Action,
} from "./reasons.js";
import { canLie, chairWords, isBed, isBench, isCar, surfaceWords, type StepSetup } from "./setup.js";
import { inChair, onSurface, type State } from "./state.js";

const helperTo = (helper: State["helper"]): Action => ({
  absent: nobody,
  blocked: (s) => first(helper !== "at-side" && s.helperTwo === helper && "the second helper is there"),
  effect: () => ({ helper }),
});
const secondTo = (helperTwo: State["helperTwo"]): Action => ({
  absent: noSecond,
  blocked: (s) => first(helperTwo !== "at-side" && s.helper === helperTwo && "the first helper is there"),
  effect: () => ({ helperTwo }),
});
const belt = (to: State["belt"]): Action => ({
  absent: (setup) => (setup.belt ? undefined : "no belt is written for this transfer"),
  blocked: () => undefined,
  effect: () => ({ belt: to }),
});
const scoot = (to: State["scooted"]): Action => ({
  blocked: (s) => first(lying(s), between(s)),
  effect: () => ({ scooted: to, bearingChecked: "no" }),
});
const settled = (s: State): Partial<State> => (s.client === "on-to" ? { positioned: "yes" } : {});

/** The chair is reached over the outer part of the bench only, and through an open car door. */
const outOfReach = (s: State, setup: StepSetup) =>
  first(
    isCar(setup) && s.door === "closed" && "the car door is shut",
    isBench(setup) &&
      onSurface(s, setup) &&
      s.along === "inside" &&
      "the client sits inside the rim, out of reach of the chair",
  );

export const acrossActions = {
  "place board": {
    absent: (setup) => withoutBoard(setup) ?? noSliding(setup),
    blocked: (s, setup) => first(wayAcross(s, setup), between(s), outOfReach(s, setup)),
    effect: () => ({ board: "placed", brakesChecked: "no", bearingChecked: "no" }),
  },
  "cover board": {
    absent: withoutBoard,
    blocked: (s) =>
      first(between(s), s.board === "placed" && s.cover === "off" && "the board lies under the hip already"),
    effect: () => ({ cover: "on" }),
  },
  "check bearing": {
    check: true,
    absent: withoutBoard,
    blocked: (s) => first(noBoard(s)),
    effect: () => ({ bearingChecked: "yes" }),
  },
  "withdraw board": {
    absent: withoutBoard,
    blocked: (s) => first(between(s), s.board !== "placed" && "the board is not placed"),
    effect: () => ({ board: "stowed", bearingChecked: "no" }),
  },
  "belt on": belt("on"),
  "belt off": belt("off"),
  "scoot forward": scoot("yes"),
  "scoot back": scoot("no"),
  lean: {
    blocked: (s) => first(lying(s), hanging(s)),
    effect: (_, __, step) => ({ lean: sideOf(step) }),
  },
  "sit upright": { blocked: (s) => first(lying(s), hanging(s)), effect: () => ({ lean: "upright" }) },
  "sit on-edge": {
    blocked: (s, setup) =>
      first(
        !onSurface(s, setup) && `the client is not on ${surfaceWords(setup)}`,
        !isBed(setup) && "nobody lies here",
      ),
    effect: (s) => (s.posture === "lying" ? { posture: "sitting", feet: "hanging", positioned: "no" } : {}),
  },
  "slide part-way": {
    absent: (setup) => withoutBoard(setup) ?? noSliding(setup),
    blocked: (s, setup) => first(wayAcross(s, setup), noBoard(s), outOfReach(s, setup)),
    effect: () => ({ client: "on-board", lean: "upright" }),
  },
  slide: {
    absent: noSliding,
    blocked: (s, setup) => first(wayAcross(s, setup), setup.board && noBoard(s), outOfReach(s, setup)),
    // The client arrives at the front of the seat, where the board lies clear of the wheel; on a bed, at the edge.
    effect: (_, setup) => ({
      client: "on-to",
      posture: "sitting",
      lean: "upright",
      head: "up",
      scooted: setup.direction === "to-chair" ? "yes" : "no",
      positioned: "no",
    }),
  },
  "position in-bed": {
    absent: (setup) => (isBed(setup) ? undefined : "this transfer has no bed"),
    blocked: (s, setup) => first(between(s), !onSurface(s, setup) && "the client is not on the bed"),
    effect: (s) => ({ posture: "lying", feet: "supported", lean: "upright", ...settled(s) }),
  },
  "position in-chair": {
    blocked: (s, setup) =>
      first(between(s), !inChair(s, setup) && `the client is not in ${chairWords(setup)}`),
    effect: (s) => ({ scooted: "no", lean: "upright", ...settled(s) }),
  },
  "position on-surface": {
    absent: (setup) => (isBed(setup) ? "in a bed it is `position in-bed`" : undefined),
    blocked: (s, setup) =>
      first(between(s), !onSurface(s, setup) && `the client is not on ${surfaceWords(setup)}`),
    effect: (s, setup) => ({
      ...(canLie(setup) && { posture: "lying", feet: "supported" }),
      lean: "upright",
      scooted: "no",
      ...settled(s),
    }),
  },
  "helper in-front": helperTo("in-front"),
  "helper behind": helperTo("behind"),
  "helper at-side": helperTo("at-side"),
  "helper-two in-front": secondTo("in-front"),
  "helper-two behind": secondTo("behind"),
  "helper-two at-side": secondTo("at-side"),
} satisfies Partial<Record<Verb, Action>>;
