/** What one measurement may come to: the values that are tried for it, and the household in which it was made. */
import type { Household } from "../../language/model/household.js";
import { isQuantity, type Thing, type Value } from "../../language/model/types.js";
import type { Dimension, Quantity } from "../../language/quantity/types.js";
import type { Place } from "../../language/text/types.js";
import { keySpec } from "../../language/vocabulary/index.js";
import type { KeySpec, Shape } from "../../language/vocabulary/types.js";
import { withBlock, withThing, withValues } from "./variants.js";
import type { RuleSet } from "./types.js";

/** A key of a thing, or of a block inside it, that somebody could measure. */
export interface Measurable {
  /** The thing at top level. */
  readonly owner: Thing;
  /** Where the key stands: the owner, or a block inside it. */
  readonly holder: Thing;
  readonly key: string;
  readonly spec: KeySpec;
}

/** The key that stands, or would stand, at a place. */
export function measurableAt(household: Household, place: Place, key?: string): Measurable | undefined {
  const same = (p: Place): boolean =>
    p.entry === place.entry && p.line === place.line && p.start === place.start;
  for (const owner of household.all) {
    if (owner.entry !== place.entry) continue;
    for (const holder of [owner, ...Object.values(owner.inner).flatMap((t) => t ?? [])]) {
      const keys = key === undefined ? Object.keys(holder.values) : [key];
      for (const k of keys) {
        const spec = keySpec(holder.kind, k);
        if (spec && same(holder.placeOf(k))) return { owner, holder, key: k, spec };
      }
    }
  }
  return undefined;
}

/** The household with the key at this value. */
export function measuredAs(household: Household, m: Measurable, value: Value): Household {
  const holder = withValues(m.holder, { [m.key]: value });
  return withThing(household, m.owner, m.holder === m.owner ? holder : withBlock(m.owner, m.holder, holder));
}

/**
 * Values that a measurement may come to: the ends of what the rule set assumes until then, else two values from what a household
 * can hold, a third from its ends; every choice. None where the key is no measurement.
 */
export function triesFor(m: Measurable, set: RuleSet): readonly Value[] {
  return m.spec.many ? [] : ofShape(m.spec.shape, assumedEnds(m, set));
}

/** The ends of what stands in, in SI; of a part of another key that is not known, none. */
function assumedEnds({ spec, holder }: Measurable, set: RuleSet): readonly number[] | undefined {
  const assumed = spec.default === undefined ? undefined : set.defaults.get(spec.default)?.interval;
  if (!assumed || spec.defaultOf === undefined) return assumed && [assumed.low, assumed.high];
  const whole = holder.values[spec.defaultOf];
  return isQuantity(whole) ? [assumed.low * whole.low, assumed.high * whole.high] : undefined;
}

function ofShape(shape: Shape, among?: readonly number[]): readonly Value[] {
  switch (shape.is) {
    case "choice":
      return shape.choices;
    case "flag":
      return [true, false];
    case "quantity": {
      const [low, high] = shape.plausible ?? [];
      const values =
        among ??
        (low === undefined || high === undefined ? [] : [1 / 3, 2 / 3].map((f) => low + f * (high - low)));
      return [...new Set(values)].map((v) => plain(shape.dimension, v, shape.units[0]));
    }
    case "either":
      return shape.shapes.map((s) => ofShape(s, among)).find((v) => v.length > 0) ?? [];
    default:
      return [];
  }
}

/** As somebody would write it: without a tolerance of its own, so that the rule set's for a measured value counts. */
const plain = (dimension: Dimension, value: number, unit = "1"): Quantity => ({
  type: "quantity",
  dimension,
  low: value,
  nominal: value,
  high: value,
  toleranceGiven: false,
  shape: "plain",
  known: "measured",
  knownGiven: false,
  unit: { unit },
});

/**
 * How exactly somebody can read who takes care, in SI; half of the width that is left. A choice of this program: a sixteenth of an
 * inch on a tape, a degree on a protractor, a pound on a scale, a pound-force on a spring scale.
 */
const careful: Partial<Record<Dimension, number>> = {
  length: 0.0254 / 16,
  angle: Math.PI / 180,
  mass: 0.45359237,
  force: 4.4482216152605,
};

/** A written value as it would be after measuring with care; undefined where it is as exact already, or no measurement. */
export function readWithCare(value: Value | undefined): Quantity | undefined {
  if (!isQuantity(value) || value.shape === "adjusts" || value.known === "stated") return undefined;
  const half = careful[value.dimension];
  if (half === undefined) return undefined;
  if (value.toleranceGiven && value.high - value.low <= 2 * half * (1 + 1e-9)) return undefined;
  const { nominal } = value;
  return {
    ...value,
    low: nominal - half,
    high: nominal + half,
    toleranceGiven: true,
    shape: "plain",
    known: "measured",
  };
}
