/** Computed values as they are made: a quantity from its inputs, a value that was written, one that was not, a default. */
import type { Interval } from "../language/quantity/interval.js";
import type { Dimension, Quantity, ShownUnit } from "../language/quantity/types.js";
import type { Place } from "../language/text/types.js";
import { isComputed, Optional, type Inputs, type Outcome, type QuantityRule } from "./quantity.js";
import type { Defaults } from "./scene.js";
import type { Assumption, Computed, Missing, Term } from "./types.js";

const siUnits: Record<Dimension, string> = {
  length: "m",
  mass: "kg",
  angle: "deg",
  force: "N",
  moment: "N m",
  pressure: "Pa",
  ratio: "1",
  duration: "day",
  number: "1",
};

/** A quantity from its inputs, with all that it rests on. */
export function workOut(q: QuantityRule, inputs: Inputs): Computed {
  const missing: Missing[] = [];
  const assumed: Assumption[] = [];
  const terms: Term[] = [];
  let without: string | undefined;
  let unit: ShownUnit | undefined;
  const handed: Record<string, unknown> = {};
  for (const name in inputs) {
    const input = inputs[name];
    const computed = input instanceof Optional ? input.input : isComputed(input) ? input : undefined;
    if (!computed) {
      handed[name] = input;
      continue;
    }
    handed[name] = computed.value;
    if (computed.value) {
      for (const a of computed.assumed) if (!assumed.some((b) => b.name === a.name)) assumed.push(a);
      terms.push(termOf(computed));
      if (computed.dimension === q.dimension) unit ??= computed.unit;
    } else if (!(input instanceof Optional)) {
      without ??= computed.without;
      for (const m of computed.missing) if (!missing.some((n) => n.what === m.what)) missing.push(m);
    }
  }
  const base = { name: q.name, dimension: q.dimension, unit: unit ?? { unit: siUnits[q.dimension] } };
  if (without !== undefined)
    return { ...base, value: undefined, without, missing: [], assumed, trace: terms };
  if (missing.length > 0) return { ...base, value: undefined, missing, assumed, trace: terms };
  const outcome = q.compute(handed as never);
  const out: Outcome = "low" in outcome ? { value: outcome } : outcome;
  if (out.assumed) assumed.push(...out.assumed);
  if (out.terms) terms.push(...out.terms);
  if (out.value) terms.push({ label: q.name, value: out.value, dimension: q.dimension, formula: q.formula });
  return {
    ...base,
    value: out.value,
    ...(out.choice !== undefined && { choice: out.choice }),
    ...(out.without !== undefined && { without: out.without }),
    missing: out.missing ?? [],
    assumed,
    trace: terms,
  };
}

/**
 * A value as somebody wrote it, with the rule set's tolerance for how it is known where none was written. A range, of doubt or of
 * choice, carries its own. The place is looked up when it is shown: lines may have moved although the value is the same.
 */
export function writtenValue(
  label: string,
  value: Quantity,
  defaults: Defaults,
  place: () => Place,
): Computed {
  const tolerance = value.toleranceGiven
    ? undefined
    : defaults.get(`tolerance-${value.dimension}-${value.known}`);
  const off = tolerance?.interval.high ?? 0;
  const interval: Interval = { low: value.low - off, nominal: value.nominal, high: value.high + off };
  const { dimension, unit } = value;
  const term: Term = {
    label,
    value: interval,
    dimension,
    unit,
    get place() {
      return place();
    },
  };
  return { name: label, dimension, value: interval, missing: [], assumed: [], trace: [term], unit };
}

/** A value of the rule set that stands in for one that was not written. */
export function defaultValue(name: string, d: NonNullable<ReturnType<Defaults["get"]>>): Computed {
  const { interval, dimension, tapeable } = d;
  const unit: ShownUnit = { unit: dimension === "length" ? "in" : siUnits[dimension] };
  // A part of something is written in percent, of which a whole one is not fine enough: 21.5 is not 22. What is worked out
  // from it is not known that closely.
  const shown: ShownUnit = dimension === "ratio" ? { unit: "%", decimals: 1 } : unit;
  return {
    name,
    dimension,
    value: interval,
    missing: [],
    assumed: [{ name, interval, dimension, tapeable }],
    trace: [{ label: name.replaceAll("-", " "), value: interval, dimension, unit: shown, default: name }],
    unit,
  };
}

const toCome = new Map<QuantityRule, Computed>();
/** What stands for a slow quantity while it is worked out: nothing is known of it. */
export function stillToCome(q: QuantityRule): Computed {
  let found = toCome.get(q);
  if (!found) {
    const what = `${q.name}, which is still being worked out`;
    toCome.set(
      q,
      (found = {
        ...notSaid(what, undefined, ""),
        name: q.name,
        dimension: q.dimension,
        missing: [{ what }],
      }),
    );
  }
  return found;
}

export function notSaid(what: string, place: (() => Place) | undefined, key: string): Computed {
  const missing: Missing = place
    ? {
        what,
        key,
        get place() {
          return place();
        },
      }
    : { what, key };
  return {
    name: what,
    dimension: "number",
    value: undefined,
    missing: [missing],
    assumed: [],
    trace: [],
    unit: { unit: "1" },
  };
}

/** The line by which a result appears in the arithmetic of another. */
function termOf(c: Computed): Term {
  const own = c.trace.length === 1 ? c.trace[0] : undefined;
  if (own && own.quantity === undefined && own.formula === undefined) return own;
  return { label: c.name, value: c.value!, dimension: c.dimension, unit: c.unit, quantity: c.name };
}
