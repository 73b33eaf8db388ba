/** What the steps with a floor lift and its sling, with a slide sheet, and by two helpers together need and change. */
import type { Verb } from "../../language/vocabulary/verbs.js";
import { between, first, hanging, hooked, nobody, noSecond, type Action } from "./reasons.js";
import { canLie, chairWords, hasRim, hasSling, surfaceWords, type StepSetup } from "./setup.js";
import type { State } from "./state.js";

const noLift = (setup: StepSetup) => (setup.lift ? nobody(setup) : "no lift is written for this transfer");
const noSling = (setup: StepSetup) =>
  hasSling(setup) ? nobody(setup) : "no sling is written for this transfer";
const noSheet = (setup: StepSetup) =>
  setup.sheet ? undefined : "no slide sheet is written for this transfer";
const noRaising = (setup: StepSetup) => noLift(setup) ?? noSling(setup);

const over = (s: State): State["lift"] => (s.client === "on-to" ? "at-to" : "at-from");
const liftElsewhere = (s: State) => s.lift !== over(s) && "the lift does not stand over the client";
const castorsLocked = (s: State) => s.liftCastors === "locked" && "the castors of the lift are locked";
const notHanging = (s: State) => s.client !== "in-sling" && "the client does not hang in the sling";

/** How somebody sits who was set down, and not slid: at the back of a seat, the legs inside a tub, on a bed carried whole. */
const setDown = (setup: StepSetup, end: "from" | "to"): Partial<State> => {
  const inChair = (setup.direction === "from-chair") === (end === "from");
  const rim = !inChair && hasRim(setup);
  return {
    client: end === "to" ? "on-to" : "on-from",
    posture: "sitting",
    lean: "upright",
    scooted: "no",
    positioned: "no",
    feet: !inChair && canLie(setup) ? "supported" : rim ? "floor" : "hanging",
    ...(rim && { legLeft: "in", legRight: "in", along: "inside" }),
  };
};

const liftCastors = (to: State["liftCastors"]): Action => ({
  absent: noLift,
  blocked: () => undefined,
  effect: () => ({ liftCastors: to }),
});
const base = (to: State["liftBase"]): Action => ({
  absent: noLift,
  blocked: () => undefined,
  effect: () => ({ liftBase: to }),
});

export const liftActions = {
  "sling under": {
    absent: noSling,
    blocked: (s) => first(between(s)),
    effect: (s) => (s.sling === "none" ? { sling: "under" } : {}),
  },
  "open base": base("open"),
  "close base": base("closed"),
  "bring lift": {
    absent: noLift,
    blocked: (s) => first(between(s), castorsLocked(s)),
    effect: (s) => ({ lift: over(s) }),
  },
  "attach sling": {
    absent: noRaising,
    blocked: (s) =>
      first(hanging(s), s.sling === "none" && "the sling is not under the client yet", liftElsewhere(s)),
    effect: () => ({ sling: "attached" }),
  },
  "check loops": {
    check: true,
    absent: noRaising,
    blocked: (s) => first(!hooked(s) && "the sling is not attached yet"),
    effect: () => ({ sling: "checked" }),
  },
  "lock lift": liftCastors("locked"),
  "unlock lift": liftCastors("unlocked"),
  "raise sling": {
    absent: noRaising,
    blocked: (s) =>
      first(
        between(s),
        s.client === "on-to" && "the client is already across",
        !hooked(s) && "the sling is not attached yet",
        liftElsewhere(s),
        s.board === "placed" && "the board is still under the client",
      ),
    effect: () => ({
      client: "in-sling",
      posture: "sitting",
      lean: "upright",
      feet: "hanging",
      legLeft: "out",
      legRight: "out",
      along: "outside",
      liftedChecked: "no",
      positioned: "no",
    }),
  },
  "check lifted": {
    check: true,
    absent: noRaising,
    blocked: (s) => first(notHanging(s)),
    effect: () => ({ liftedChecked: "yes" }),
  },
  "turn lift": {
    absent: noRaising,
    blocked: (s) => first(notHanging(s), castorsLocked(s)),
    effect: () => ({ lift: "at-to" }),
  },
  "lower sling": {
    absent: noRaising,
    blocked: (s) => first(notHanging(s)),
    effect: (s, setup) => ({
      ...setDown(setup, s.lift === "at-to" ? "to" : "from"),
      liftedChecked: "no",
    }),
  },
  "detach sling": {
    absent: noRaising,
    blocked: (s) => first(hanging(s), !hooked(s) && "the sling is not attached"),
    effect: () => ({ sling: "under" }),
  },
  "lift away": {
    absent: noLift,
    blocked: (s) => first(hanging(s), hooked(s) && "the sling is still hooked to it", castorsLocked(s)),
    effect: () => ({ lift: "away" }),
  },
  "sling out": {
    absent: noSling,
    blocked: (s) =>
      first(
        hanging(s),
        hooked(s) && "the sling is still hooked to the lift",
        s.sling === "none" && "there is no sling under the client",
      ),
    effect: () => ({ sling: "none" }),
  },
  "sheet in": { absent: noSheet, blocked: (s) => first(between(s)), effect: () => ({ sheet: "in" }) },
  "sheet out": {
    absent: noSheet,
    blocked: (s) => first(between(s), s.sheet === "out" && "the slide sheet is not under the client"),
    effect: () => ({ sheet: "out" }),
  },
  "lift together": {
    absent: noSecond,
    blocked: (s, setup) =>
      first(
        between(s),
        s.client === "on-to" && "the client is already across",
        s.chair === "away" && `${chairWords(setup)} is not at ${surfaceWords(setup)} yet`,
        s.board === "placed" && "the board is still under the client",
      ),
    effect: (_, setup) => setDown(setup, "to"),
  },
} satisfies Partial<Record<Verb, Action>>;
