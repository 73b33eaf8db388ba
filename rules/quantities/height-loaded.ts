/** Height of each end with the client sitting on it. */
import { add, subtract, type Interval } from "../../language/quantity/interval.js";
import type { Thing } from "../../language/model/types.js";
import { type Of, type QuantityRule } from "../quantity.js";
import type { Scene } from "../scene.js";
import type { Computed } from "../types.js";
import { emptyFrom, emptyTo, heightWords, levelInput, setHeight } from "./height-empty.js";
import { absent, block, choiceOf, derived, isWritten } from "./inputs.js";

type LoadedInputs = {
  readonly loaded?: Computed;
  readonly empty?: Computed;
  readonly sink?: Computed;
  /** Its height when it was measured with somebody sitting there, where it is set otherwise for this move. */
  readonly before?: Computed;
  readonly level?: Computed;
};

/** Set otherwise than when it was measured, a surface sinks as far as it was measured to sink. */
export const sunkAsMeasured = (set: Interval, before: Interval, loaded: Interval): Interval =>
  subtract(set, subtract(before, loaded));

/** The loaded height as measured, or the empty one and the usual sinking. */
function loadedInputs(s: Scene, of: Of, end: "from" | "to"): LoadedInputs {
  const thing = s[end];
  if (!thing) return { loaded: absent(s.transfer, "where the transfer starts and ends", "from") };
  const empty = (): Computed => of(end === "from" ? emptyFrom : emptyTo);
  if (thing.kind === "wheelchair") {
    if (isWritten(thing, "seat-loaded"))
      return { loaded: of.written(thing, "seat-loaded", "the seat with the client sitting") };
    return { empty: empty(), sink: seatSink(thing, of) };
  }
  const words = `${heightWords(thing)} with somebody sitting on its edge`;
  if (isWritten(thing, "top-loaded")) {
    const loaded = of.written(thing, "top-loaded", words);
    if (!setHeight(thing, s)) return { loaded, ...levelInput(thing, of) };
    if (isWritten(thing, "top"))
      return { loaded, before: of.written(thing, "top", heightWords(thing)), empty: empty() };
  }
  const edge = choiceOf(thing, "edge");
  return {
    empty: empty(),
    sink: edge ? of.default(`sink-edge-${edge}`) : absent(thing, words, "top-loaded"),
  };
}

function loadedHeight(i: { readonly [input in keyof LoadedInputs]?: Interval }): Interval {
  if (i.loaded && i.before) return sunkAsMeasured(i.empty!, i.before, i.loaded);
  if (i.loaded) return i.level ? add(i.loaded, i.level) : i.loaded;
  return subtract(i.empty!, i.sink!);
}

/** How far the seat sinks under somebody, where that was not measured. */
export function seatSink(chair: Thing, of: Of): Computed {
  const kind = choiceOf(block(chair, "cushion"), "kind");
  if (!kind) return absent(chair, "the seat's height with the client sitting", "seat-loaded");
  // Without a cushion the client sits in the sling itself.
  return of.default(
    kind === "none" && choiceOf(chair, "seat") === "sling" ? "sink-sling" : `sink-cushion-${kind}`,
  );
}

const loaded = (end: "from" | "to"): QuantityRule =>
  derived({
    name: `height.loaded-${end}`,
    dimension: "length",
    says:
      end === "from"
        ? "height of the surface that is left, with the client sitting on it"
        : "height of the surface that is reached, with the client sitting on it",
    formula:
      "height as measured with somebody sitting + height of its ground against the chair's, else height with nobody on it - usual sinking",
    source: "the rule set's sinking, where it was not measured",
    inputs: (s, of) => loadedInputs(s, of, end),
    compute: loadedHeight,
  });

export const loadedFrom = loaded("from");
export const loadedTo = loaded("to");
