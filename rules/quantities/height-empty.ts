/**
 * Height of each end with nobody on it, from the ground on which the wheelchair stands: as written, or as set for this move; a
 * surface that stands on other ground (a car at the kerb, a step) is that much higher or lower.
 */
import { add, type Interval } from "../../language/quantity/interval.js";
import type { Thing } from "../../language/model/types.js";
import type { Of, QuantityRule } from "../quantity.js";
import type { Scene } from "../scene.js";
import type { Computed } from "../types.js";
import { absent, derived } from "./inputs.js";
import { itemsOf } from "./standing.js";

/** The height to which a thing is set for this move, as a thing of its own; undefined where nothing is said. */
export const setHeight = (thing: Thing, s: Scene): Thing | undefined =>
  itemsOf(s.value("set").thing, "set").find((v) => v?.values["what"] === thing.name);

/** How the ground under a thing lies against the wheelchair's. Not there where nobody said that it differs. */
export const levelInput = (thing: Thing, of: Of): { readonly level?: Computed } =>
  thing.values["level"] === undefined
    ? {}
    : { level: of.written(thing, "level", "the ground it stands on, against the chair's") };

/** What a height is called in an explanation. */
export const heightWords = (thing: Thing): string =>
  thing.kind === "wheelchair" ? "the seat's height" : `the ${thing.kind.replaceAll("-", " ")}'s height`;

type EmptyInputs = { readonly height: Computed; readonly level?: Computed };

function emptyInputs(thing: Thing | undefined, s: Scene, of: Of): EmptyInputs {
  if (!thing) return { height: absent(s.transfer, "where the transfer starts and ends", "from") };
  if (thing.kind === "wheelchair") return { height: of.written(thing, "seat-height", heightWords(thing)) };
  const set = setHeight(thing, s);
  const words = heightWords(thing);
  const height = set ? of.written(set, "height", `${words} as it is set`) : of.written(thing, "top", words);
  return { height, ...levelInput(thing, of) };
}

const empty = (end: "from" | "to"): QuantityRule =>
  derived({
    name: `height.empty-${end}`,
    dimension: "length",
    says:
      end === "from"
        ? "height of the surface that is left, nobody on it, from the ground under the wheelchair"
        : "height of the surface that is reached, nobody on it, from the ground under the wheelchair",
    formula: "height as written or as set for this move + height of its ground against the chair's",
    source: "addition of heights",
    inputs: (s, of) => emptyInputs(s[end], s, of),
    compute: ({ height, level }: { height: Interval; level?: Interval }) =>
      level ? add(height, level) : height,
  });

export const emptyFrom = empty("from");
export const emptyTo = empty("to");

/** The same for the end that is not the wheelchair. */
export const emptySurface = (s: Scene, of: Of): Computed => of(s.surface === s.from ? emptyFrom : emptyTo);
