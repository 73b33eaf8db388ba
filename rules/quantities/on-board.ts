/** Declares a quantity that is read off the laid board. */
import type { Interval } from "../../language/quantity/interval.js";
import type { Of, Outcome, QuantityRule } from "../quantity.js";
import type { Scene } from "../scene.js";
import { derived } from "./inputs.js";
import { layingInputs, onBoard, type LayingHanded, type OnBoard } from "./laying.js";

export function ofLaidBoard<More extends object = object>(q: {
  readonly name: string;
  readonly dimension?: "length" | "angle";
  readonly says: string;
  readonly formula: string;
  /** Inputs besides those of the laid board. */
  readonly more?: (s: Scene, of: Of) => Record<string, unknown>;
  readonly read: (
    b: OnBoard,
    more: { readonly [N in keyof More]: Interval },
    i: LayingHanded,
  ) => Interval | Outcome;
}): QuantityRule {
  return derived({
    name: q.name,
    dimension: q.dimension ?? "length",
    says: q.says,
    formula: q.formula,
    source: "plane geometry",
    inputs: (s, of): Record<string, unknown> => {
      const laying = layingInputs(s, of);
      return q.more && !("none" in laying) ? { ...laying, ...q.more(s, of) } : laying;
    },
    compute: (i: LayingHanded): Outcome => {
      const b = onBoard(i);
      if ("missing" in b) return b;
      const out = q.read(b, i as never, i);
      const outcome: Outcome = "low" in out ? { value: out } : out;
      if (!outcome.value) return outcome;
      return {
        ...outcome,
        assumed: [...i.bag.assumed(b.uses), ...(outcome.assumed ?? [])],
        terms: [...i.bag.terms(b.uses), ...(outcome.terms ?? [])],
      };
    },
  });
}

/** How the board lies, as a line of the arithmetic. */
export const lies = (b: OnBoard): Outcome["terms"] => [
  {
    label: "the board's angle to square on the bed's edge",
    value: b.laid.angle,
    dimension: "angle",
    unit: { unit: "deg" },
  },
  {
    label: "the board's inner end from the seat's near side",
    value: b.laid.inside,
    dimension: "length",
    unit: { unit: "in" },
  },
];
