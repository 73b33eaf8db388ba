/** Height of each end with the client sitting on it. */
import { subtract } from "../../language/quantity/interval.js";
import type { Thing } from "../../language/model/types.js";
import { quantity, type Of, type QuantityRule } from "../quantity.js";
import type { Scene } from "../scene.js";
import type { Computed } from "../types.js";
import { absent, block, choiceOf, isWritten } from "./inputs.js";

type LoadedInputs = { readonly loaded: Computed } | { readonly empty: Computed; readonly sink: Computed };

/** The loaded height as measured, or the empty one and the usual sinking. */
export function loadedInputs(thing: Thing | undefined, s: Scene, of: Of): LoadedInputs {
  if (!thing) return { loaded: absent(s.transfer, "where the transfer starts and ends", "from") };
  if (thing.kind === "wheelchair") {
    if (isWritten(thing, "seat-loaded"))
      return { loaded: of.written(thing, "seat-loaded", "the seat with the client sitting") };
    return { empty: of.written(thing, "seat-height", "the seat's height"), sink: seatSink(thing, of) };
  }
  if (isWritten(thing, "top-loaded"))
    return { loaded: of.written(thing, "top-loaded", "the bed with somebody sitting on its edge") };
  const edge = choiceOf(thing, "edge");
  return {
    empty: of.written(thing, "top", "the bed's height"),
    sink: edge
      ? of.default(`sink-edge-${edge}`)
      : absent(thing, "the bed's height with somebody sitting on its edge", "top-loaded"),
  };
}

function seatSink(chair: Thing, of: Of): Computed {
  const kind = choiceOf(block(chair, "cushion"), "kind");
  if (!kind) return absent(chair, "the seat's height with the client sitting", "seat-loaded");
  // Without a cushion the client sits in the sling itself.
  return of.default(
    kind === "none" && choiceOf(chair, "seat") === "sling" ? "sink-sling" : `sink-cushion-${kind}`,
  );
}

const loaded = (end: "from" | "to"): QuantityRule =>
  quantity({
    name: `height.loaded-${end}`,
    dimension: "length",
    says:
      end === "from"
        ? "height of the surface that is left, with the client sitting on it"
        : "height of the surface that is reached, with the client sitting on it",
    formula: "height as measured with somebody sitting, else height with nobody on it - usual sinking",
    source: "the rule set's sinking, where it was not measured",
    inputs: (s, of) => loadedInputs(s[end], s, of),
    compute: (i) => ("loaded" in i ? i.loaded : subtract(i.empty, i.sink)),
  });

export const loadedFrom = loaded("from");
export const loadedTo = loaded("to");
