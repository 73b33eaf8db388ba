/**
 * One direction of one transfer with everything it touches, names resolved. Quantities and rules read scenes, never texts.
 */
import type { Interval } from "../language/quantity/interval.js";
import type { Dimension } from "../language/quantity/types.js";
import type { Thing, Value } from "../language/model/types.js";
import type { StepLine } from "../language/model/types.js";
import type { Run } from "./steps/machine.js";
import type { StepSetup } from "./steps/setup.js";
import type { Equipment } from "./steps/types.js";

export type Side = "left" | "right";

export interface Scene {
  /** The transfer's or way back's name: the subject of its findings. */
  readonly name: string;
  readonly direction: "there" | "back";
  /** The transfer or way-back block itself. */
  readonly transfer: Thing;
  /** For a way back, the transfer it turns round. */
  readonly base?: Thing;
  readonly from?: Thing;
  readonly to?: Thing;
  /** The wheelchair, whichever end it is. Left out where none takes part, as between a bed and a commode. */
  readonly chair?: Thing;
  /** The end that is not the wheelchair, of any kind; of two other ends, the one that does not stand in the chair's place. */
  readonly surface?: Thing;
  readonly board?: Thing;
  readonly belt?: Thing;
  readonly lift?: Thing;
  readonly sling?: Thing;
  /** Something fixed to hold. */
  readonly handle?: Thing;
  /** The lift that is used, else the one to which `if-not` turns. */
  readonly liftMeant?: Thing;
  readonly helpers: readonly Thing[];
  readonly client?: Thing;
  readonly room?: Thing;
  /** Furniture placed in the room, with its `place` block. */
  readonly placed: readonly { readonly thing: Thing; readonly place: Thing }[];
  /** Routes that lead to the room, and the ramps on them. */
  readonly routes: readonly Thing[];
  readonly ramps: readonly Thing[];
  /** Doors through which those routes lead, in whichever room they are. */
  readonly wayDoors: readonly Thing[];
  /** Side of the chair on which the surface lies, the client's own; undefined where it is not said and does not follow. */
  readonly side?: Side;
  /** Leg rests, armrests and feet as they stand once parked, when the board is placed (from the steps). */
  readonly parked: Equipment;
  /** The steps as written; undefined where none are written, or where they are left to be planned. */
  readonly steps?: readonly StepLine[];
  /** What the steps are run against. */
  readonly setup: StepSetup;
  /** The steps run. The same object while steps and equipment do not change. */
  readonly run?: Run;
  /** A value of the transfer; a way back that does not say it takes it from the transfer it turns round. */
  value(key: string): { readonly thing: Thing; readonly value: Value | undefined };
}

/** Defaults of the rule set, by name. */
export interface Defaults {
  get(
    name: string,
  ): { readonly interval: Interval; readonly dimension: Dimension; readonly tapeable: boolean } | undefined;
}
