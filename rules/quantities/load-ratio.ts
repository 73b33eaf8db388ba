/** What everything that carries the client carries as a part of what it is rated for. */
import { loadRatio } from "../plan/heights.js";
import type { Of, Outcome, QuantityRule } from "../quantity.js";
import type { Scene } from "../scene.js";
import { exactly, multiply, type Interval } from "../../language/quantity/interval.js";
import { isQuantity, type Thing } from "../../language/model/types.js";
import type { Computed } from "../types.js";
import { boardOr, derived, endsOr, without } from "./inputs.js";
import { clientMass } from "./weight.js";

type Carrier = "chair" | "board" | "surface" | "lift" | "sling" | "handle";

/** The thing that carries, or why there is none. */
function carrierOr(s: Scene, what: Carrier): { readonly thing: Thing } | { readonly none: Computed } {
  switch (what) {
    case "board": {
      const b = boardOr(s);
      return "none" in b ? b : { thing: b.board };
    }
    case "chair":
    case "surface": {
      const ends = endsOr(s);
      return "none" in ends ? ends : { thing: ends[what] };
    }
    default: {
      const thing = s[what];
      return thing ? { thing } : { none: without(`no ${what} is used`) };
    }
  }
}

const ratio = (what: Carrier): QuantityRule =>
  derived({
    name: `load.ratio-${what}`,
    dimension: "ratio",
    says:
      what === "handle"
        ? "what of the client's mass hangs at the handle, with a factor for moving, as a part of what it is rated for"
        : `the client's mass, with a factor for moving, as a part of what the ${what} is rated for`,
    formula:
      what === "handle"
        ? "mass x part that hangs at a handle x factor for moving / rated load"
        : "mass x factor for moving / rated load",
    source: "ratio of two loads; factor from the rule set",
    inputs: (s: Scene, of: Of): Record<string, unknown> => {
      const carrier = carrierOr(s, what);
      if ("none" in carrier) return { none: carrier.none };
      const { thing } = carrier;
      return {
        mass: clientMass(s, of),
        factor: of.default("load-factor"),
        ...(what === "handle" && { part: of.default("handle-share") }),
        rated: of.written(thing, "rated-load", `the rated load of ${thing.name}`),
        doubtful: isQuantity(thing.values["rated-load"]) && thing.values["rated-load"].toleranceGiven,
      };
    },
    compute: (i: {
      mass: Interval;
      factor: Interval;
      part?: Interval;
      rated: Interval;
      doubtful: boolean;
    }): Outcome => {
      const mass = i.part ? multiply(i.mass, i.part) : i.mass;
      // A rated load is a limit, not a measurement: without a tolerance of its own it is taken as printed.
      const value = loadRatio(mass, i.factor, i.doubtful ? i.rated : exactly(i.rated.nominal));
      return value ? { value } : { missing: [{ what: "a rated load above zero", key: "rated-load" }] };
    },
  });

export const loadRatioChair = ratio("chair");
export const loadRatioBoard = ratio("board");
export const loadRatioSurface = ratio("surface");
export const loadRatioLift = ratio("lift");
export const loadRatioSling = ratio("sling");
export const loadRatioHandle = ratio("handle");
