/**
 * A rule set that was read, as one text: the program carries its released sets like this, so that no start has to read the rule
 * files again. `unpackRuleSet(packRuleSet(set))` equals `set`.
 */
import type { BandEnd, RuleSet } from "./types.js";

/** JSON has no infinite numbers: they become `null`, which no number of a rule set is otherwise. */
export const packRuleSet = (set: RuleSet): string =>
  JSON.stringify({
    ...set,
    sources: [...set.sources],
    limits: [...set.limits],
    defaults: [...set.defaults],
  });

type Packed = Omit<RuleSet, "sources" | "limits" | "defaults"> & {
  readonly [part in "sources" | "limits" | "defaults"]: never[];
};

interface Open {
  low: number | null;
  high: number | null;
}

/** Reads what `packRuleSet` wrote. Only for text that this program was built with. */
export function unpackRuleSet(text: string): RuleSet {
  const packed = JSON.parse(text) as Packed;
  const set: RuleSet = {
    ...packed,
    sources: new Map(packed.sources),
    limits: new Map(packed.limits),
    defaults: new Map(packed.defaults),
  };
  for (const values of [set.limits, set.defaults]) for (const v of values.values()) openEnds(v.interval);
  for (const { judged, examples } of set.rules) {
    if (judged.is === "bands")
      for (const { low, high } of judged.bands) {
        openEnd(low, -Infinity);
        openEnd(high, Infinity);
      }
    for (const e of examples) for (const v of e.values) if (v.interval) openEnds(v.interval);
  }
  return set;
}

function openEnd(end: BandEnd, value: number): void {
  if ((end.value as number | null) === null) (end as { value: number }).value = value;
}
function openEnds(interval: object): void {
  const i = interval as Open;
  i.low ??= -Infinity;
  i.high ??= Infinity;
}
