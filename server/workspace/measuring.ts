/** What to measure next, of a plan as it is known. */
import { measureNext, type MeasureNext } from "../../rules/engine/measure-next.js";
import { quantities } from "../../rules/quantities/index.js";
import { surroundings } from "./rule-sets.js";
import type { Snapshot } from "./snapshot.js";

const kept = new WeakMap<Snapshot, readonly MeasureNext[]>();

/** The most useful measurement first; empty where nothing is open, or no rule was applied. Worked out once for a snapshot. */
export function measureNextOf(snapshot: Snapshot): readonly MeasureNext[] {
  const { household, result, ruleSet, today } = snapshot;
  if (!result || !ruleSet?.set) return [];
  let found = kept.get(snapshot);
  if (!found) {
    const { set } = ruleSet;
    found = measureNext({ household, set, quantities, table: surroundings, today, result });
    kept.set(snapshot, found);
  }
  return found;
}
