/**
 * A rule set that was read, as text: the program carries its released sets like this, so that no start has to read the rule files
 * again. `unpackRuleSet(packRuleSet(set))` equals `set`.
 */
import type { BandEnd, Example, Rule, RuleSet } from "./types.js";

/** The examples, half of all there is, stand apart: a check needs none of them, and reads them when somebody looks at one. */
export interface PackedRuleSet {
  readonly set: string;
  readonly examples: string;
}

/** JSON has no infinite numbers: they become `null`, which no number of a rule set is otherwise. */
export const packRuleSet = (set: RuleSet): PackedRuleSet => ({
  set: JSON.stringify({
    ...set,
    sources: [...set.sources],
    limits: [...set.limits],
    defaults: [...set.defaults],
    rules: set.rules.map(({ examples: _, ...rule }) => rule),
  }),
  examples: JSON.stringify(set.rules.map((r) => [r.id, r.examples])),
});

type Packed = Omit<RuleSet, "sources" | "limits" | "defaults"> & {
  readonly [part in "sources" | "limits" | "defaults"]: never[];
};

interface Open {
  low: number | null;
  high: number | null;
}

/** Reads what `packRuleSet` wrote. Only for text that this program was built with. */
export function unpackRuleSet(from: PackedRuleSet): RuleSet {
  const packed = JSON.parse(from.set) as Packed;
  const set: RuleSet = {
    ...packed,
    sources: new Map(packed.sources),
    limits: new Map(packed.limits),
    defaults: new Map(packed.defaults),
  };
  for (const values of [set.limits, set.defaults]) for (const v of values.values()) openEnds(v.interval);
  let examples: ReadonlyMap<string, readonly Example[]> | undefined;
  // One function for all rules of the set, so that they stay objects of one shape.
  const lookUp = {
    enumerable: true,
    get(this: Rule) {
      return (examples ??= unpackExamples(from.examples)).get(this.id) ?? [];
    },
  };
  for (const rule of set.rules) {
    if (rule.judged.is === "bands")
      for (const { low, high } of rule.judged.bands) {
        openEnd(low, -Infinity);
        openEnd(high, Infinity);
      }
    Object.defineProperty(rule, "examples", lookUp);
  }
  return set;
}

function unpackExamples(text: string): ReadonlyMap<string, readonly Example[]> {
  const examples = new Map(JSON.parse(text) as [string, readonly Example[]][]);
  for (const list of examples.values())
    for (const e of list) for (const v of e.values) if (v.interval) openEnds(v.interval);
  return examples;
}

function openEnd(end: BandEnd, value: number): void {
  if ((end.value as number | null) === null) (end as { value: number }).value = value;
}
function openEnds(interval: object): void {
  const i = interval as Open;
  i.low ??= -Infinity;
  i.high ??= Infinity;
}
