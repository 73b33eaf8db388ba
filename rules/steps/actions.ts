/**
 * What each step needs to be physically possible, and what it changes. Whether a possible step is wise is for the rules:
 * laying a board over an armrest, or lifting off a leg rest with the brakes open, is possible here.
 */
import type { Verb } from "../../language/vocabulary/verbs.js";
import { acrossActions } from "./actions-across.js";
import { chairActions } from "./actions-chair.js";
import { liftActions } from "./actions-lift.js";
import { surfaceActions } from "./actions-surface.js";
import type { Action } from "./reasons.js";

/** One entry for every verb of the vocabulary; the compiler asks for a missing one. */
export const actions: Readonly<Record<Verb, Action>> = {
  ...chairActions,
  ...acrossActions,
  ...surfaceActions,
  ...liftActions,
};
