/** How much of the body rests on the board while the client slides, and where the feet are then. */
import { between, type Interval } from "../../language/quantity/interval.js";
import type { Of } from "../quantity.js";
import type { Scene } from "../scene.js";
import type { Computed } from "../types.js";
import { boardOr, derived } from "./inputs.js";

export type Feet = "down" | "plates" | "hanging";

/**
 * Where the feet are when the client slides; undefined where no such step is written. Steps that are left to be planned put
 * them down first, as every order does that is written here.
 */
export function feetSliding(s: Scene): Feet | undefined {
  if (!s.run && s.transfer.values["steps"] === "planned") return "down";
  const at = s.run?.steps.findIndex((step) => step.verb === "slide") ?? -1;
  const feet: string | undefined = at < 0 ? undefined : s.run!.before[at]!.feet;
  if (feet === "floor" || feet === "supported") return "down";
  return feet === "plates" || feet === "hanging" ? feet : undefined;
}

/** The parts of the body that may rest on the seat or the board: without the lower legs, with them, or either. */
export const shareInputs = (feet: Feet | undefined, of: Of): Record<string, Computed> => ({
  ...(feet !== "hanging" && { down: of.default("load-share-feet-down") }),
  ...(feet !== "down" && feet !== "plates" && { hanging: of.default("load-share-feet-hanging") }),
});

export const boardLoadShare = derived({
  name: "board.load-share",
  dimension: "ratio",
  says: "part of the client's weight that the board carries while sliding, the client sitting and lifting nothing with the arms",
  formula:
    "trunk, head, arms and thighs where the feet stand on the floor or on plates; the whole body where they hang; either where it is not said",
  source: "segment masses, from the rule set",
  inputs: (s, of) => {
    const b = boardOr(s);
    return "none" in b ? { none: b.none } : shareInputs(feetSliding(s), of);
  },
  compute: (i: { down?: Interval; hanging?: Interval }): Interval => {
    const all = [i.down, i.hanging].filter((x) => x !== undefined);
    // Not said: the graver of the two as the nominal value.
    return between(
      Math.min(...all.map((x) => x.low)),
      Math.max(...all.map((x) => x.high)),
      Math.max(...all.map((x) => x.nominal)),
    );
  },
});
