/** The form of a fact that is neither written under one key nor computed from lengths. */
import type { Household } from "../../language/model/household.js";
import type { Value } from "../../language/model/types.js";
import type { Scene } from "../scene.js";
import type { FactType } from "./dimensions.js";
import type { Reading } from "./logic.js";
import { missingReading } from "./written.js";

/** What a fact may look at. `scene` is undefined for rules on the setup as a whole. */
export interface Sight {
  readonly household: Household;
  /** ISO 8601 calendar date. */
  readonly today: string;
  readonly scene?: Scene;
}

export interface SpecialFact {
  readonly name: string;
  readonly says: string;
  readonly type: FactType;
  /** Where it can be read: on transfers and their steps, on the setup, or on both. */
  readonly on: "transfer" | "setup" | "both";
  /** Looks beyond the things of its transfer: at trials, reviews, other transfers. */
  readonly wide: boolean;
  /** What the answer depends on, compared by identity: the same dependencies give the same reading again. */
  readonly depends: (s: Sight) => readonly unknown[];
  readonly read: (s: Sight) => Reading;
}

export const yesNo: FactType = { choices: ["yes", "no"] };
export type Parts = { readonly [part: string]: Value | undefined };
export const parts = (v: Value | undefined): Parts =>
  typeof v === "object" && v !== null && !Array.isArray(v) ? (v as Parts) : {};
export const word = (v: Value | undefined): string | undefined => (typeof v === "string" ? v : undefined);
export const list = (v: Value | undefined): readonly Value[] =>
  Array.isArray(v) ? v : v === undefined ? [] : [v];
export const yes = (x: boolean): string => (x ? "yes" : "no");

/** On transfers: `read` gets the scene; all that it depends on is listed. */
export function onTransfer(
  name: string,
  says: string,
  type: FactType,
  depends: (s: Scene, sight: Sight) => readonly unknown[],
  read: (s: Scene, name: string, sight: Sight) => Reading,
  wide = false,
): SpecialFact {
  return {
    name,
    says,
    type,
    wide,
    on: "transfer",
    depends: (sight) => (sight.scene ? depends(sight.scene, sight) : []),
    read: (sight) => (sight.scene ? read(sight.scene, name, sight) : missingReading(name, name)),
  };
}
