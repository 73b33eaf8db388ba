/**
 * How a derived quantity is declared and worked out.
 *
 * A quantity is one object in one file under `quantities/`, listed once in `quantities/index.ts`. It names its inputs as a cheap
 * function of a scene; its arithmetic is a pure function of those inputs. A result is kept per subject and used again while
 * every input is the same object, so an edit of a nightstand does not recompute a board.
 */
import type { Interval } from "../language/quantity/interval.js";
import type { Dimension, Quantity, ShownUnit } from "../language/quantity/types.js";
import { isQuantity, type Thing, type Value } from "../language/model/types.js";
import type { Place } from "../language/text/types.js";
import { isPartView } from "./part-view.js";
import { whoOf } from "./who.js";
import type { Assumption, Computed, Missing, Term } from "./types.js";
import type { Defaults, Scene } from "./scene.js";

/** Marks an input that may be missing: `compute` then gets undefined for it. */
export class Optional {
  constructor(readonly input: Computed) {}
}

/** What `inputs` may hand over: computed values, or anything compared by identity (choices, flags, things). */
type Inputs = { readonly [name: string]: unknown };
type Handed<I> = {
  [N in keyof I]: I[N] extends Computed ? Interval : I[N] extends Optional ? Interval | undefined : I[N];
};

/** What `compute` returns: an interval, or one with words, extra lines of arithmetic, or the reason why there is none. */
export interface Outcome {
  readonly value?: Interval;
  readonly choice?: string;
  readonly without?: string;
  readonly missing?: readonly Missing[];
  readonly assumed?: readonly Assumption[];
  readonly terms?: readonly Term[];
}

/** Access to written values, defaults and other quantities of the same scene. */
export interface Of {
  (q: QuantityRule): Computed;
  /** A key of a thing as an interval, its tolerance taken from the rule set where none was written. Missing if not written. */
  written(thing: Thing | undefined, key: string, words?: string): Computed;
  /** A key of the transfer (a way back takes it from the transfer it turns round). */
  transfer(key: string, words?: string): Computed;
  /** A value of the rule set. */
  default(name: string): Computed;
  optional(c: Computed): Optional;
  /** What several quantities take from a scene, read once for all of them. */
  shared<T>(make: (s: Scene, of: Of) => T): T;
}

/** Reads what several quantities take from a scene; told apart by the function itself. */
type SharedInputs = (s: Scene, of: Of) => unknown;

export interface QuantityRule {
  readonly name: string;
  readonly dimension: Dimension;
  /** One sentence: what it is, and its sign. */
  readonly says: string;
  /** The formula in one line of text. */
  readonly formula: string;
  /** Where the formula comes from, or "plane geometry", "statics" where it needs no source. */
  readonly source: string;
  /** Takes longer than a keystroke: left out of a check that is in haste, unless it is known from before. */
  readonly slow?: true;
  readonly inputs: (s: Scene, of: Of) => Inputs;
  readonly compute: (inputs: never) => Interval | Outcome;
}

/** Declares a quantity; only for the types. */
export function quantity<I extends Inputs>(q: {
  readonly name: string;
  readonly dimension: Dimension;
  readonly says: string;
  readonly formula: string;
  readonly source: string;
  readonly slow?: true;
  readonly inputs: (s: Scene, of: Of) => I;
  readonly compute: (inputs: Handed<I>) => Interval | Outcome;
}): QuantityRule {
  return q as unknown as QuantityRule;
}

const isComputed = (x: unknown): x is Computed =>
  typeof x === "object" && x !== null && "trace" in x && "missing" in x;

/** What was read of a scene, so that it can be asked whether it would be read the same again. */
interface Reads {
  /** Parts of the scene. */
  readonly parts: [string, unknown][];
  /** Values of the transfer, by key. */
  readonly values: [string, Thing, Value | undefined][];
  readonly results: [QuantityRule, Computed][];
  readonly shared: [SharedInputs, unknown][];
}
const nothingRead = (): Reads => ({ parts: [], values: [], results: [], shared: [] });

interface Kept {
  readonly inputs: Inputs;
  readonly result: Computed;
  readonly reads: Reads;
  /** The check for which it was found good. */
  round: number;
}
interface KeptShared {
  readonly value: unknown;
  readonly reads: Reads;
  round: number;
}

/** What is kept of one scene. */
class OfScene {
  readonly results = new Map<QuantityRule, Kept>();
  readonly shared = new Map<SharedInputs, KeptShared>();
}

const sameInputs = (a: Inputs, b: Inputs): boolean => {
  for (const name in b) {
    const x = a[name];
    const y = b[name];
    if (x === y) continue;
    if (x instanceof Optional && y instanceof Optional && x.input === y.input) continue;
    return false;
  }
  // An input that is no longer there is a change too.
  for (const name in a) if (!(name in b)) return false;
  return true;
};

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

/** Works quantities out for the scenes of a household, and keeps what is still good from one check to the next. */
export class Workings {
  private kept = new Map<string, OfScene>();
  private fresh = new Map<string, OfScene>();
  private readonly writtenIn = new WeakMap<Thing, Map<string, Computed>>();
  private readonly writtenOnce = new WeakMap<object, Map<string, Computed>>();
  private readonly notSaidOnce = new Map<string, Computed>();
  /** Things as they are now, by `whoOf`: a kept result may have been worked out from an older block with the same line in it. */
  private readonly now = new Map<string, Thing>();
  private readonly defaultsOnce = new Map<string, Computed>();
  private round = 0;
  /** In haste, what is slow is not worked out anew. */
  haste = false;
  /** Whether something was left out since the last `begin` because of haste. */
  leftOut = false;
  /** How many quantities were worked out since the last `begin`; tests count it. */
  computed = 0;

  constructor(private readonly defaults: Defaults) {}

  /** Starts a check: results of transfers that the check before did not have are dropped. */
  begin(): void {
    this.kept = this.fresh;
    this.fresh = new Map();
    this.round++;
    this.computed = 0;
    this.leftOut = false;
  }

  of(scene: Scene, q: QuantityRule): Computed {
    const result = this.result(scene, q);
    this.reading?.results.push([q, result]);
    return result;
  }

  private result(scene: Scene, q: QuantityRule): Computed {
    const { results } = this.ofScene(scene.name);
    const before = results.get(q);
    if (before && (before.round === this.round || this.same(before.reads, scene))) {
      before.round = this.round;
      return before.result;
    }
    const { value: inputs, reads } = this.watch(scene, (s, of) => q.inputs(s, of));
    const same = before && sameInputs(before.inputs, inputs);
    if (!same && q.slow && this.haste) {
      this.leftOut = true;
      return stillToCome(q);
    }
    const result = same ? before.result : this.work(q, inputs);
    results.set(q, { inputs, result, reads, round: this.round });
    return result;
  }

  private shared<T>(scene: Scene, make: (s: Scene, of: Of) => T): T {
    const { shared } = this.ofScene(scene.name);
    let kept = shared.get(make);
    if (kept && (kept.round === this.round || this.same(kept.reads, scene))) kept.round = this.round;
    else shared.set(make, (kept = { ...this.watch(scene, make), round: this.round }));
    this.reading?.shared.push([make, kept.value]);
    return kept.value as T;
  }

  private ofScene(name: string): OfScene {
    let found = this.fresh.get(name);
    if (!found) this.fresh.set(name, (found = this.kept.get(name) ?? new OfScene()));
    return found;
  }

  /** Whether everything that was read would be read the same now. */
  private same(reads: Reads, scene: Scene): boolean {
    const parts = scene as unknown as { readonly [part: string]: unknown };
    for (const [part, was] of reads.parts) if (parts[part] !== was) return false;
    for (const [key, thing, was] of reads.values) {
      const now = scene.value(key);
      if (now.thing !== thing || now.value !== was) return false;
    }
    const reading = this.reading;
    this.reading = undefined;
    try {
      for (const [q, was] of reads.results) if (this.result(scene, q) !== was) return false;
      for (const [make, was] of reads.shared) if (this.shared(scene, make) !== was) return false;
      return true;
    } finally {
      this.reading = reading;
    }
  }

  /** What is being read now, and by what it is written down. */
  private reading: Reads | undefined;
  private watch<T>(
    scene: Scene,
    make: (s: Scene, of: Of) => T,
  ): { readonly value: T; readonly reads: Reads } {
    const outer = this.reading;
    const reads = (this.reading = nothingRead());
    try {
      const { watched, of } = this.access(scene);
      return { value: make(watched, of), reads };
    } finally {
      this.reading = outer;
    }
  }

  private accessFor: { readonly scene: Scene; readonly watched: Scene; readonly of: Of } | undefined;
  private access(scene: Scene): { readonly scene: Scene; readonly watched: Scene; readonly of: Of } {
    if (this.accessFor?.scene === scene) return this.accessFor;
    const value: Scene["value"] = (key) => {
      const said = scene.value(key);
      this.reading?.values.push([key, said.thing, said.value]);
      return said;
    };
    const watched = new Proxy(scene, {
      get: (_, part: keyof Scene) => {
        if (part === "value") return value;
        const found = scene[part];
        this.reading?.parts.push([part, found]);
        return found;
      },
    });
    const of = ((q: QuantityRule) => this.of(scene, q)) as Of;
    of.written = (thing, key, words) => this.written(thing, key, words);
    of.transfer = (key, words) => this.written(value(key).thing, key, words);
    of.default = (name) => this.default(name);
    of.optional = (c) => new Optional(c);
    of.shared = (make) => this.shared(scene, make);
    return (this.accessFor = { scene, watched, of });
  }

  private work(q: QuantityRule, inputs: Inputs): Computed {
    this.computed++;
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
    if (out.value)
      terms.push({ label: q.name, value: out.value, dimension: q.dimension, formula: q.formula });
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

  private written(thing: Thing | undefined, key: string, words?: string): Computed {
    if (!thing) return this.notSaid(words ?? key.replaceAll("-", " "), undefined, key);
    let inThing = this.writtenIn.get(thing);
    if (!inThing) {
      this.writtenIn.set(thing, (inThing = new Map()));
      if (!isPartView(thing)) this.now.set(whoOf(thing), thing);
    }
    const slot = words === undefined ? key : `${key}\n${words}`;
    let found = inThing.get(slot);
    if (!found) inThing.set(slot, (found = this.inThing(thing, key, words)));
    return found;
  }

  /** The same object as before where the same value stands in a block that was read anew. */
  private inThing(thing: Thing, key: string, words: string | undefined): Computed {
    const who = whoOf(thing);
    const value = thing.values[key];
    const label = words ?? `${key.replaceAll("-", " ")} of ${thing.name}`;
    // A view of parts knows where it stands; every other thing is looked up as it is now.
    const place = (): Place => (isPartView(thing) ? thing : this.now.get(who)!).placeOf(key);
    if (!isQuantity(value))
      return isPartView(thing) ? notSaid(label, place, key) : this.notSaid(label, who, key);
    const holder = isPartView(thing) ? thing : value;
    let once = this.writtenOnce.get(holder);
    if (!once) this.writtenOnce.set(holder, (once = new Map()));
    const slot = `${who} ${key}`;
    let found = once.get(slot);
    if (!found) once.set(slot, (found = writtenValue(label, value, this.defaults, place)));
    return found;
  }

  private notSaid(what: string, who: string | undefined, key: string): Computed {
    const slot = `${who ?? ""}\n${key}\n${what}`;
    let found = this.notSaidOnce.get(slot);
    if (!found)
      this.notSaidOnce.set(
        slot,
        (found = notSaid(what, who === undefined ? undefined : () => this.now.get(who)!.placeOf(key), key)),
      );
    return found;
  }

  private default(name: string): Computed {
    let found = this.defaultsOnce.get(name);
    if (!found) {
      const d = this.defaults.get(name);
      if (!d) throw new Error(`The rule set has no default named ${name}`);
      const unit: ShownUnit = { unit: d.dimension === "length" ? "in" : siUnits[d.dimension] };
      // A part of something is written in percent, of which a whole one is not fine enough: 21.5 is not 22. What is worked out
      // from it is not known that closely.
      const shown: ShownUnit = d.dimension === "ratio" ? { unit: "%", decimals: 1 } : unit;
      found = {
        name,
        dimension: d.dimension,
        value: d.interval,
        missing: [],
        assumed: [{ name, interval: d.interval, dimension: d.dimension, tapeable: d.tapeable }],
        trace: [
          {
            label: name.replaceAll("-", " "),
            value: d.interval,
            dimension: d.dimension,
            unit: shown,
            default: name,
          },
        ],
        unit,
      };
      this.defaultsOnce.set(name, found);
    }
    return found;
  }
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

const toCome = new Map<QuantityRule, Computed>();
/** What stands for a slow quantity while it is worked out: nothing is known of it. */
function stillToCome(q: QuantityRule): Computed {
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

function notSaid(what: string, place: (() => Place) | undefined, key: string): Computed {
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
