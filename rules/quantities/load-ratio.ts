/** What chair, board and bed carry as a part of what they are rated for. */
import { loadRatio } from "../plan/heights.js";
import type { Outcome, QuantityRule } from "../quantity.js";
import { exactly, type Interval } from "../../language/quantity/interval.js";
import { isQuantity } from "../../language/model/types.js";
import { derived, absent, boardOr, endsOr } from "./inputs.js";

const ratio = (what: "chair" | "board" | "surface"): QuantityRule =>
  derived({
    name: `load.ratio-${what}`,
    dimension: "ratio",
    says: `the client's mass, with a factor for moving, as a part of what the ${what === "surface" ? "bed" : what} is rated for`,
    formula: "mass x factor for moving / rated load",
    source: "ratio of two loads; factor from the rule set",
    inputs: (s, of): Record<string, unknown> => {
      let thing;
      if (what === "board") {
        const b = boardOr(s);
        if ("none" in b) return { none: b.none };
        thing = b.board;
      } else {
        const ends = endsOr(s);
        if ("none" in ends) return { none: ends.none };
        thing = ends[what];
      }
      return {
        mass: s.client
          ? of.written(s.client, "mass", "the client's mass")
          : absent(undefined, "the client's mass", "mass"),
        factor: of.default("load-factor"),
        rated: of.written(thing, "rated-load", `the rated load of ${thing.name}`),
        doubtful: isQuantity(thing.values["rated-load"]) && thing.values["rated-load"].toleranceGiven,
      };
    },
    compute: (i: { mass: Interval; factor: Interval; rated: Interval; doubtful: boolean }): Outcome => {
      // A rated load is a limit, not a measurement: without a tolerance of its own it is taken as printed.
      const value = loadRatio(i.mass, i.factor, i.doubtful ? i.rated : exactly(i.rated.nominal));
      return value ? { value } : { missing: [{ what: "a rated load above zero", key: "rated-load" }] };
    },
  });

export const loadRatioChair = ratio("chair");
export const loadRatioBoard = ratio("board");
export const loadRatioSurface = ratio("surface");
