/** Friction between the client and the board. */
import type { Interval } from "../../language/quantity/interval.js";
import { frictionOf } from "../plan/incline.js";
import type { Of, Outcome } from "../quantity.js";
import type { Scene } from "../scene.js";
import type { Computed } from "../types.js";
import { absent, boardOr, choiceOf, derived, isWritten } from "./inputs.js";

const said = (v: unknown, word: "yes" | "no"): boolean => v === word || v === (word === "yes");
/** Surfaces that are wet in use unless somebody says otherwise. */
const wetByUse: ReadonlySet<string> = new Set(["tub", "tub-bench", "shower-seat"]);

/** Wet or bare skin drags otherwise than dry clothing, several times as hard: then only a trial on this board tells. */
function drySkinCovered(s: Scene): Computed | undefined {
  const tried = (what: string): Computed => absent(s.board, what, "slides-at");
  const wet = s.value("wet").value;
  if (said(wet, "yes") || [s.from, s.to].some((t) => said(t?.values["wet"], "yes")))
    return tried("the slope at which the client, wet, slides on the board (slides-at)");
  if (
    !said(wet, "no") &&
    [s.from, s.to].some((t) => t && wetByUse.has(t.kind) && t.values["wet"] === undefined)
  )
    return absent(s.transfer, "whether the board or the skin is wet", "wet");
  const covered = s.value("skin-covered");
  if (said(covered.value, "no")) return tried("the slope at which bare skin slides on the board (slides-at)");
  return said(covered.value, "yes")
    ? undefined
    : absent(
        covered.thing,
        "whether clothing covers the skin that meets the board (skin-covered)",
        "skin-covered",
      );
}

const byMaterial: Readonly<Record<string, string>> = {
  wood: "friction-clothing-wood",
  plywood: "friction-clothing-wood",
  plastic: "friction-clothing-plastic",
};

/** The slope that was tried, or the usual friction of dry clothing on such a board, or what has to be said first. */
export function frictionInputs(
  s: Scene,
  of: Of,
): { readonly slidesAt: Computed } | { readonly mu: Computed } {
  if (isWritten(s.board, "slides-at"))
    return { slidesAt: of.written(s.board, "slides-at", "the slope at which clothing slides on the board") };
  const open = drySkinCovered(s);
  return {
    mu: open ?? of.default(byMaterial[choiceOf(s.board, "material") ?? ""] ?? "friction-clothing-unsaid"),
  };
}

export const pushFriction = derived({
  name: "push.friction",
  dimension: "ratio",
  says: "friction between the client and the board: the part of the weight on it that drags at the skin",
  formula:
    "tan(slope at which clothing starts to slide), where it was tried; else the rule set's range for dry clothing",
  source: "a body at rest on a slope starts to slide when tan(slope) passes the friction",
  inputs: (s, of): Record<string, unknown> => {
    const b = boardOr(s);
    return "none" in b ? { none: b.none } : frictionInputs(s, of);
  },
  compute: (i: { slidesAt?: Interval; mu?: Interval }): Outcome => {
    const value = i.slidesAt ? frictionOf(i.slidesAt) : i.mu;
    return value ? { value } : { missing: [{ what: "a slope below 90 degrees", key: "slides-at" }] };
  },
});
