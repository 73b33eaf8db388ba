/** The state that the steps of a transfer act on: flat, frozen, cheap to copy and to tell apart. */
import { canLie, type Found, type StepSetup } from "./setup.js";
import type { Equipment } from "./types.js";

/** Every part of the state with its choices, once; the types, the key and the facts' choices come from here. */
export const stateChoices = {
  chair: ["away", "at"],
  brakes: ["open", "locked"],
  legrestLeft: ["in-place", "swung", "removed"],
  legrestRight: ["in-place", "swung", "removed"],
  armrestLeft: ["in-place", "away"],
  armrestRight: ["in-place", "away"],
  footplates: ["down", "up"],
  /** `hanging`: nothing carries them. `supported`: on a stool, or on the mattress. */
  feet: ["plates", "floor", "supported", "hanging"],
  board: ["stowed", "placed"],
  belt: ["off", "on"],
  castors: ["none", "locked", "unlocked", "unknown"],
  helper: ["none", "in-front", "behind", "at-side"],
  /** `free`: they have not been moved out of the way yet. */
  lines: ["none", "free", "moved", "unknown"],
  client: ["on-from", "on-board", "on-to"],
  posture: ["sitting", "lying"],
  /** By side and not by direction: which side is away depends on where the client sits. */
  lean: ["upright", "left", "right"],
  scooted: ["no", "yes"],
  /** The height of the other surface was set by a step. */
  height: ["as-found", "set"],
  /** Brakes felt to hold since the board was placed and since they were last locked. */
  brakesChecked: ["no", "yes"],
  /** Both ends seen to bear since the board was placed, the client has moved on the seat or the height was set. */
  bearingChecked: ["no", "yes"],
  /** Settled on the surface of arrival. */
  positioned: ["no", "yes"],
} as const;

export type State = { readonly [F in keyof typeof stateChoices]: (typeof stateChoices)[F][number] };

type Field = keyof State;
const places: readonly (readonly [Field, ReadonlyMap<string, number>, number])[] = Object.entries(
  stateChoices,
).map(([field, choices]) => [
  field as Field,
  new Map(choices.map((c, i) => [c as string, i])),
  choices.length,
]);

/** A number that no other state has: the choices as digits of one number, far below 2^53. */
export function keyOf(state: State): number {
  let key = 0;
  for (const [field, digits, base] of places) key = key * base + digits.get(state[field])!;
  return key;
}

/** The state with some parts changed; the same object where nothing differs. */
export function change(state: State, patch: Partial<State>): State {
  for (const field in patch) {
    if (patch[field as Field] !== state[field as Field]) return Object.freeze({ ...state, ...patch });
  }
  return state;
}

export const inChair = (state: State, setup: StepSetup): boolean =>
  state.client === (setup.direction === "from-chair" ? "on-from" : "on-to");
export const onSurface = (state: State, setup: StepSetup): boolean =>
  state.client === (setup.direction === "from-chair" ? "on-to" : "on-from");

/**
 * The state before the first step. From the chair: the client sits in it, feet on the plates, chair away from the surface.
 * To the chair: the client lies in the bed (sits, on any other surface); the chair stands beside it where nobody is there
 * to bring it, else away. Brakes open, leg rests and armrests in place, unless `found` says otherwise: nobody has looked at
 * the brakes yet, so that a step must.
 */
export function start(setup: StepSetup): State {
  const fromChair = setup.direction === "from-chair";
  const found = setup.found ?? {};
  const legrest = (side: "left" | "right"): State["legrestLeft"] =>
    setup.legrests?.[side] === "none" ? "removed" : (found.legrests?.[side] ?? "in-place");
  const armrest = (side: "left" | "right"): State["armrestLeft"] =>
    setup.armrests?.[side] === "none" ? "away" : (found.armrests?.[side] ?? "in-place");
  const left = legrest("left");
  const right = legrest("right");
  const lying = !fromChair && canLie(setup);
  const plates = left === "in-place" || right === "in-place";
  return Object.freeze({
    chair: found.chair ?? (fromChair || setup.helped ? "away" : "at"),
    brakes: found.brakes ?? "open",
    legrestLeft: left,
    legrestRight: right,
    armrestLeft: armrest("left"),
    armrestRight: armrest("right"),
    footplates: found.footplates ?? "down",
    feet: lying
      ? "supported"
      : fromChair
        ? plates && found.footplates !== "up"
          ? "plates"
          : "hanging"
        : "floor",
    board: "stowed",
    belt: "off",
    castors: setup.castors ?? "unknown",
    helper: "none",
    lines: setup.lines === undefined ? "unknown" : setup.lines ? "free" : "none",
    client: "on-from",
    posture: lying ? "lying" : "sitting",
    lean: "upright",
    scooted: "no",
    height: "as-found",
    brakesChecked: "no",
    bearingChecked: "no",
    positioned: "no",
  });
}

/** How a run leaves the chair: what the way back finds. */
export const foundAfter = (end: State): Found => ({
  chair: end.chair,
  brakes: end.brakes,
  footplates: end.footplates,
  legrests: { left: end.legrestLeft, right: end.legrestRight },
  armrests: { left: end.armrestLeft, right: end.armrestRight },
});

/** What geometry reads of a state. */
export const equipmentOf = (state: State, scooted: boolean): Equipment =>
  Object.freeze({
    legrests: Object.freeze({ left: state.legrestLeft, right: state.legrestRight }),
    armrests: Object.freeze({ left: state.armrestLeft, right: state.armrestRight }),
    scooted,
  });
