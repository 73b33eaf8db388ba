/** What published figures say of a limit or of an end of a default. */
import { fromSi, unitOf } from "../../language/quantity/units.js";
import type { DefaultValue, LimitValue, RuleSet } from "../../rules/engine/types.js";
import { figuresIn, standsFor } from "../outside/published/figures.js";
import { limits as printed } from "../outside/published/index.js";
import { mutantsOfDefault, type DefaultMutant } from "./mutants.js";

/** Whether a limit with this value is another than its source prints, in this version of the rule set. */
export const notAsPrinted =
  (version: string) =>
  (limit: LimitValue): boolean => {
    const row = printed.find((p) => p.name === limit.name && standsFor(p, version));
    if (!row) return false;
    return Math.abs(fromSi(limit.interval.nominal, unitOf(row.unit)) - row.printed) > row.rounding + 1e-9;
  };

/** Whether a citation of the default takes this figure for it, as it is written there: `.878`, `15 %`, `48 in`. */
function takes(d: DefaultValue, value: number): boolean {
  const inUnit = d.unit.unit === "1" ? value : fromSi(value, unitOf(d.unit.unit));
  return d.bases.some(
    (b) =>
      b.citation !== undefined &&
      figuresIn(b.citation.takes).some((n) => typeof n === "number" && Math.abs(n - inUnit) < 1e-9),
  );
}

export interface DefaultOutcome {
  /** Ends of defaults whose figure a citation takes, and which of their mutants would go unnoticed. */
  readonly counted: number;
  readonly unnoticed: readonly DefaultMutant[];
  /** Ends that no citation takes: nothing in the rule set or beside it says what they should be. */
  readonly left: number;
}

export function runDefaults(set: RuleSet): DefaultOutcome {
  let counted = 0;
  let left = 0;
  const unnoticed: DefaultMutant[] = [];
  for (const d of set.defaults.values())
    for (const m of mutantsOfDefault(d)) {
      if (!takes(d, d.interval[m.end])) {
        left++;
        continue;
      }
      counted++;
      if (takes(d, m.value)) unnoticed.push(m);
    }
  return { counted, unnoticed, left };
}
