/** What must still be measured in a home: the keys that are unknown or missing, with how to measure them. */
import type { Household } from "../../model/household.js";
import { isUnknown, type Thing, type Value } from "../../model/types.js";
import type { Place } from "../../text/types.js";
import { blockSpec } from "../index.js";
import type { BlockSpec, KeySpec } from "../types.js";
import { shapeInWords } from "./words.js";

export interface MeasuringRow {
  /** Kind and name of the thing at top level: `bed`, `bed`. */
  readonly kind: string;
  readonly name: string;
  /** Kinds of the blocks that lead to the key, outermost first: `["drive-wheel"]`; with its name where it has one: `["door hall"]`. */
  readonly within: readonly string[];
  readonly key: string;
  /** `unknown` was written; `missing`: nothing was. */
  readonly state: "unknown" | "missing";
  /** How much a plan needs it. */
  readonly need: "required" | "wanted" | "optional";
  readonly help: string;
  /** How to measure it in a home. A missing key has always one; an unknown one may have none. */
  readonly measure?: string;
  /** What is to be written, in words. */
  readonly wants: string;
  readonly safer?: "low" | "high";
  /** The rule set's default that stands in until then. */
  readonly default?: string;
  /** Where it would be written: its line, or the head of its block. */
  readonly place: Place;
}

/**
 * The rows for a household, in the order of its things and of the vocabulary. Things that come from other files are measured
 * where they are kept, and stand in it as well: a plan rests on them.
 */
export function measuringRows(household: Household): readonly MeasuringRow[] {
  return household.all.flatMap((thing) => {
    const spec = blockSpec(thing.kind);
    return spec ? rowsOf(thing, spec, thing, []) : [];
  });
}

/**
 * A kind that is declared `of` another thing (a way back, a trial) has from that one what it does not say itself; and a kind that
 * bears another thing's name tells of it. Of these only what is written as unknown is open.
 */
const standsAlone = (spec: BlockSpec): boolean =>
  typeof spec.name !== "object" && !(spec.head ?? []).some((p) => p.name === "of");

function rowsOf(
  top: Thing,
  spec: BlockSpec,
  thing: Thing,
  within: readonly string[],
  whole = standsAlone(spec),
): MeasuringRow[] {
  // `cushion { kind none }`: somebody looked and there is none, so nothing of it is missing.
  const there = whole && thing.values["kind"] !== "none";
  const own = Object.entries(spec.keys).flatMap(([key, k]) => {
    const instead =
      spec.oneOf?.includes(key) && spec.oneOf.some((other) => thing.values[other] !== undefined);
    const state = stateOf(thing.values[key], k, there && !instead);
    return state ? [row(top, within, key, k, state, thing.placeOf(key))] : [];
  });
  const inside = Object.entries(spec.blocks ?? {}).flatMap(([kind, b]) => {
    const found = thing.inner[kind] ?? [];
    if (found.length > 0)
      return found.flatMap((t) => {
        const label = b.name === "none" ? kind : `${kind} ${t.name}`;
        return rowsOf(top, b, t, [...within, label], there && standsAlone(b));
      });
    // A block that stands once is a group of keys; where it was not written, its keys were not either.
    return there && b.once ? absent(top, b, [...within, kind], thing.placeOf()) : [];
  });
  return [...own, ...inside];
}

const absent = (top: Thing, spec: BlockSpec, within: readonly string[], place: Place): MeasuringRow[] =>
  Object.entries(spec.keys).flatMap(([key, k]) =>
    stateOf(undefined, k, true) ? [row(top, within, key, k, "missing", place)] : [],
  );

function stateOf(value: Value | undefined, k: KeySpec, whole: boolean): MeasuringRow["state"] | undefined {
  if (value === undefined) return whole && k.measure !== undefined ? "missing" : undefined;
  const open = isUnknown(value) || (Array.isArray(value) && (value as readonly Value[]).some(isUnknown));
  return open ? "unknown" : undefined;
}

const row = (
  top: Thing,
  within: readonly string[],
  key: string,
  k: KeySpec,
  state: MeasuringRow["state"],
  place: Place,
): MeasuringRow => ({
  kind: top.kind,
  name: top.name,
  within,
  key,
  state,
  need: k.need ?? "optional",
  help: k.help,
  ...(k.measure !== undefined && { measure: k.measure }),
  wants: shapeInWords(k.shape),
  ...(k.safer && { safer: k.safer }),
  ...(k.default !== undefined && { default: k.default }),
  place,
});
