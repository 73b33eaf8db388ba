/** The state that the steps of a transfer act on: flat, frozen, cheap to copy and to tell apart. */
import {
  canLie,
  castorsOf,
  hasRim,
  isBath,
  isBench,
  isUndressedOn,
  kindsOf,
  type Found,
  type StepSetup,
} from "./setup.js";
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
  /** Castors of the chair: `forward` after it was rolled back a little, so that it tips forward less easily. */
  chairCastors: ["as-rolled", "forward"],
  /** `hanging`: nothing carries them. `supported`: on a stool, or on the mattress. */
  feet: ["plates", "floor", "supported", "hanging"],
  board: ["stowed", "placed"],
  /** A towel or cloth lies on the board, or would if it were laid. */
  cover: ["off", "on"],
  sheet: ["out", "in"],
  belt: ["off", "on"],
  castors: ["none", "locked", "unlocked", "unknown"],
  /** Arms of the other surface, by the side of whoever sits on it. */
  surfaceArmLeft: ["in-place", "away"],
  surfaceArmRight: ["in-place", "away"],
  /** Of the other surface. Where nobody said whether it is wet, the fact is unknown until it was dried. */
  surfaceWet: ["dry", "wet"],
  skin: ["dry", "wet"],
  /** `down`: skin is bare where the client sits. */
  clothing: ["up", "down"],
  /** Over the rim of a tub or the sill of a car. */
  legLeft: ["out", "in"],
  legRight: ["out", "in"],
  /** On a bench over the rim: on the part outside the tub, or inside. */
  along: ["outside", "inside"],
  /** Of a car; its seat and backrest follow. */
  door: ["closed", "open"],
  carSeat: ["as-found", "back"],
  backrest: ["as-found", "reclined"],
  head: ["up", "ducked"],
  helper: ["none", "in-front", "behind", "at-side"],
  helperTwo: ["none", "in-front", "behind", "at-side"],
  /** `checked`: every loop seen to sit in its hook since it was attached. */
  sling: ["none", "under", "attached", "checked"],
  lift: ["away", "at-from", "at-to"],
  liftBase: ["closed", "open"],
  liftCastors: ["unlocked", "locked"],
  /** Stopped just clear of the surface and looked again. */
  liftedChecked: ["no", "yes"],
  /** `free`: they have not been moved out of the way yet. `checked`: seen to be in order after the move. */
  lines: ["none", "free", "moved", "checked", "unknown"],
  client: ["on-from", "on-board", "in-sling", "on-to"],
  posture: ["sitting", "lying"],
  /** By side and not by direction: which side is away depends on where the client sits. */
  lean: ["upright", "left", "right"],
  scooted: ["no", "yes"],
  /** The height of the other surface was set by a step. */
  height: ["as-found", "set"],
  /** The height of anything else was set by a step: of a chair, of a commode that has the chair's part. */
  otherHeight: ["as-found", "set"],
  /** Brakes felt to hold since the board was placed and since they were last locked. */
  brakesChecked: ["no", "yes"],
  /** Both ends seen to bear since the board was placed, the client has moved on the seat or the height was set. */
  bearingChecked: ["no", "yes"],
  /** Settled on the surface of arrival. */
  positioned: ["no", "yes"],
} as const;

export type State = { readonly [F in keyof typeof stateChoices]: (typeof stateChoices)[F][number] };

type Field = keyof State;
interface Digits {
  readonly of: ReadonlyMap<string, number>;
  readonly weight: number;
}
let weight = 1;
/** Each part of the state as one digit of a number; the digits together stay below 2^53, which a test holds. */
const places: ReadonlyMap<string, Digits> = new Map(
  Object.entries(stateChoices).map(([field, choices]): [string, Digits] => {
    const digits = { of: new Map(choices.map((c, i): [string, number] => [c, i])), weight };
    weight *= choices.length;
    return [field, digits];
  }),
);
/** How many states can be told apart. */
export const countOfStates: number = weight;

const digit = (field: string, choice: string): number => {
  const place = places.get(field)!;
  return place.of.get(choice)! * place.weight;
};

const keys = new WeakMap<State, number>();

/** A number that no other state has. */
export function keyOf(state: State): number {
  let key = keys.get(state);
  if (key !== undefined) return key;
  key = 0;
  for (const field of places.keys()) key += digit(field, state[field as Field]);
  // Only what cannot change may be remembered.
  if (Object.isFrozen(state)) keys.set(state, key);
  return key;
}

/** The key of the state with some parts changed, without making it: a search meets most states many times. */
export function keyAfter(state: State, patch: Partial<State>): number {
  let key = keyOf(state);
  for (const field in patch) {
    const now = patch[field as Field]!;
    const was = state[field as Field];
    if (now !== was) key += digit(field, now) - digit(field, was);
  }
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
 * the brakes yet, so that a step must. Who leaves a tub or a car has both legs in it; who leaves a toilet, a commode or a bath
 * has the clothing down.
 */
export function start(setup: StepSetup): State {
  const fromChair = setup.direction === "from-chair";
  const found = setup.found ?? {};
  const legrest = (side: "left" | "right"): State["legrestLeft"] =>
    setup.legrests?.[side] === "none" ? "removed" : (found.legrests?.[side] ?? "in-place");
  const armrest = (side: "left" | "right"): State["armrestLeft"] =>
    setup.armrests?.[side] === "none" ? "away" : (found.armrests?.[side] ?? "in-place");
  const surfaceArm = (side: "left" | "right"): State["surfaceArmLeft"] =>
    setup.surfaceArms?.[side] === "none" ? "away" : (found.surfaceArms?.[side] ?? "in-place");
  const [left, right] = [legrest("left"), legrest("right")];
  const lying = !fromChair && canLie(setup);
  const plates = left === "in-place" || right === "in-place";
  const inside = !fromChair && hasRim(setup) ? "in" : "out";
  const stands = setup.brakes === "no-wheels";
  const mayBeWet = setup.wet ?? isBath(setup);
  return Object.freeze({
    chair: found.chair ?? (fromChair || setup.helped ? "away" : "at"),
    brakes: stands ? "locked" : (found.brakes ?? "open"),
    legrestLeft: left,
    legrestRight: right,
    armrestLeft: armrest("left"),
    armrestRight: armrest("right"),
    footplates: found.footplates ?? "down",
    chairCastors: "as-rolled",
    feet: lying
      ? "supported"
      : fromChair && setup.chair?.kind !== "commode"
        ? plates && found.footplates !== "up"
          ? "plates"
          : "hanging"
        : "floor",
    board: "stowed",
    cover: "off",
    sheet: "out",
    belt: "off",
    castors: castorsOf(setup) ?? "unknown",
    surfaceArmLeft: surfaceArm("left"),
    surfaceArmRight: surfaceArm("right"),
    surfaceWet: mayBeWet ? "wet" : "dry",
    skin: mayBeWet && !fromChair ? "wet" : "dry",
    clothing: setup.skinCovered === false || isUndressedOn(kindsOf(setup).from) ? "down" : "up",
    legLeft: inside,
    legRight: inside,
    along: !fromChair && isBench(setup) ? "inside" : "outside",
    door: found.door ?? setup.door ?? "closed",
    carSeat: found.carSeat ?? "as-found",
    backrest: found.backrest ?? "as-found",
    head: "up",
    helper: "none",
    helperTwo: "none",
    sling: "none",
    lift: "away",
    liftBase: "closed",
    liftCastors: "unlocked",
    liftedChecked: "no",
    lines: setup.lines === undefined ? "unknown" : setup.lines ? "free" : "none",
    client: "on-from",
    posture: lying ? "lying" : "sitting",
    lean: "upright",
    scooted: "no",
    height: "as-found",
    otherHeight: "as-found",
    brakesChecked: "no",
    bearingChecked: "no",
    positioned: "no",
  });
}

/** How a run leaves things: what the way back finds. */
export const foundAfter = (end: State): Found => ({
  chair: end.chair,
  brakes: end.brakes,
  footplates: end.footplates,
  legrests: { left: end.legrestLeft, right: end.legrestRight },
  armrests: { left: end.armrestLeft, right: end.armrestRight },
  surfaceArms: { left: end.surfaceArmLeft, right: end.surfaceArmRight },
  door: end.door,
  carSeat: end.carSeat,
  backrest: end.backrest,
});
/** What geometry reads of a state. */
export const equipmentOf = (state: State, scooted: boolean): Equipment =>
  Object.freeze({
    legrests: Object.freeze({ left: state.legrestLeft, right: state.legrestRight }),
    armrests: Object.freeze({ left: state.armrestLeft, right: state.armrestRight }),
    scooted,
  });
