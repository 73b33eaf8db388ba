/**
 * Draws true values of everything that a household's quantities read: each written value within its tolerance, each default
 * within its range. What was chosen at nominal values stays chosen: a draw changes the bounds of an input to one true value and
 * leaves its nominal value as it was, as somebody lays a board by the plan and not by the truth.
 */
import { emptyLibrary, householdOf, readSetup, type Household } from "../../../language/model/household.js";
import { isQuantity, type Thing, type Value } from "../../../language/model/types.js";
import type { Quantity } from "../../../language/quantity/types.js";
import type { Interval } from "../../../language/quantity/interval.js";
import { quantityNamed } from "../../../rules/quantities/index.js";
import type { QuantityRule } from "../../../rules/quantity.js";
import { Workings } from "../../../rules/workings.js";
import type { Defaults } from "../../../rules/scene.js";
import { Scenes } from "../../../rules/scenes.js";
import type { Computed } from "../../../rules/types.js";
import { defaultsWith } from "../scene-for.js";

/** One thing that may be otherwise than written or assumed. */
export interface Leaf {
  readonly name: string;
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
}

/** No inputs of a formula, but tolerances of other inputs (drawn with those), search ranges and counts. */
const noInputs =
  /^(tolerance-.*|thickness-read|parking-angle|best-angle-range|helpers-pulling-most|helper-reach|bedside-length)$/;

type Redraw = (slot: string, q: Quantity) => Quantity;

/** The value with its quantities redrawn; the same object where none was. */
function redrawValue(value: Value | undefined, slot: string, redraw: Redraw): Value | undefined {
  if (typeof value !== "object" || value === null) return value;
  if (isQuantity(value)) return redraw(slot, value);
  const parts = Object.entries(value as { readonly [part: string]: Value | undefined });
  const now = parts.map(([part, v]) => [part, redrawValue(v, `${slot} ${part}`, redraw)] as const);
  if (now.every(([, v], n) => v === parts[n]![1])) return value;
  return Array.isArray(value) ? now.map(([, v]) => v!) : Object.fromEntries(now);
}

function redrawThing(thing: Thing, slot: string, redraw: Redraw): Thing {
  const values: Record<string, Value | undefined> = {};
  let changed = false;
  for (const [key, v] of Object.entries(thing.values)) {
    values[key] = redrawValue(v, `${slot}.${key}`, redraw);
    changed ||= values[key] !== v;
  }
  const inner: Record<string, readonly Thing[]> = {};
  for (const [kind, things] of Object.entries(thing.inner))
    if (things) {
      inner[kind] = things.map((t, n) => redrawThing(t, `${slot}.${kind} ${t.name} ${n}`, redraw));
      changed ||= inner[kind].some((t, n) => t !== things[n]);
    }
  return changed ? { ...thing, values, inner } : thing;
}

function redrawHousehold(home: Household, redraw: Redraw): Household {
  const now = new Map<Thing, Thing>();
  const of = (t: Thing): Thing => {
    let found = now.get(t);
    if (!found) now.set(t, (found = redrawThing(t, `${t.kind} ${t.name}`, redraw)));
    return found;
  };
  return {
    ...home,
    things: new Map([...home.things].map(([name, t]) => [name, of(t)])),
    all: home.all.map(of),
    ...(home.client && { client: of(home.client) }),
  };
}

type Working = (q: QuantityRule) => Computed;

export class Drawing {
  readonly leaves: readonly Leaf[];
  private readonly home: Household;
  private readonly scenes = new Scenes();
  private readonly asWritten: Working;
  private readonly slots = new Map<string, number>();
  private readonly given: Defaults;

  /** `parking`: whether the chair may be parked otherwise than planned; where a gap was taped it stands as it stood. */
  constructor(
    text: string,
    private readonly transfer: string,
    parking = true,
  ) {
    const usual = defaultsWith(parking ? {} : { "parking-angle": { low: 0, nominal: 0, high: 0 } });
    const asked = new Set<string>();
    this.given = { get: (name) => (asked.add(name), usual.get(name)) };
    this.home = householdOf("home.span", readSetup(text), emptyLibrary);
    this.asWritten = this.workings(this.home, this.given);
    for (const q of quantityNamed.values()) if (!q.slow) this.asWritten(q);
    const leaves: Leaf[] = [];
    const add = (leaf: Leaf): void => {
      if (!(leaf.low < leaf.high)) return;
      this.slots.set(leaf.name, leaves.length);
      leaves.push(leaf);
    };
    redrawHousehold(this.home, (slot, q) => {
      const off = this.tolerance(slot, q);
      if (off !== undefined) add({ name: slot, low: q.low - off, nominal: q.nominal, high: q.high + off });
      return q;
    });
    for (const name of asked) if (!noInputs.test(name)) add({ name, ...usual.get(name)!.interval });
    this.leaves = leaves;
  }

  /** How far off a written value may be beyond its own bounds; undefined where it is no measurement. */
  private tolerance(slot: string, q: Quantity): number | undefined {
    if (q.shape === "adjusts") return undefined;
    const most = (name: string): number => this.given.get(name)?.interval.high ?? 0;
    if (slot.includes(".turned")) {
      const own = q.toleranceGiven ? 0 : most(`tolerance-angle-${q.known}`);
      return own + most("parking-angle");
    }
    if (q.toleranceGiven) return 0;
    if (slot.endsWith(".rated-load")) return undefined;
    if (/^board .*\.thickness$/.test(slot)) return most("thickness-read");
    return most(`tolerance-${q.dimension}-${q.known}`);
  }

  private workings(home: Household, defaults: Defaults): Working {
    const scene = this.scenes.of(home).find((s) => s.name === this.transfer);
    if (!scene) throw new Error(`The setup has no transfer named ${this.transfer}`);
    const workings = new Workings(defaults);
    workings.begin();
    return (q) => workings.of(scene, q);
  }

  /** The quantity as it is computed from what is written. */
  computed(name: string): Computed {
    return this.asWritten(quantityNamed.get(name)!);
  }

  /**
   * Quantities where everything is as given, in the order of `leaves`. `held`: what was chosen at nominal values stays chosen;
   * else it is chosen for these values.
   */
  at(values: readonly number[], held = true): (name: string) => Computed {
    const working = this.working(values, held);
    return (name) => working(quantityNamed.get(name)!);
  }

  /** What a quantity's arithmetic is handed: as written, or where everything is as given. */
  handed(name: string, values?: readonly number[]): unknown {
    let taken: unknown;
    const spy = (inputs: unknown) => ((taken = inputs), { low: 0, nominal: 0, high: 0 });
    const working = values ? this.working(values, false) : this.asWritten;
    working({ ...quantityNamed.get(name)!, compute: spy as QuantityRule["compute"] });
    return taken;
  }

  private working(values: readonly number[], held: boolean): Working {
    const exact = (n: number, nominal: number): Interval => {
      const x = values[n]!;
      return { low: x, nominal: held ? nominal : x, high: x };
    };
    const home = redrawHousehold(this.home, (slot, q) => {
      const n = this.slots.get(slot);
      return n === undefined ? q : { ...q, ...exact(n, q.nominal), toleranceGiven: true };
    });
    const zero = { low: 0, nominal: 0, high: 0 };
    return this.workings(home, {
      get: (name) => {
        const d = this.given.get(name);
        const n = this.slots.get(name);
        if (!d || (n === undefined && name !== "parking-angle")) return d;
        return { ...d, interval: n === undefined ? zero : exact(n, d.interval.nominal) };
      },
    });
  }

  /** Every leaf within its bounds (`inside`), or each at one of its ends. */
  pick(random: () => number, inside: boolean): number[] {
    return this.leaves.map((l) =>
      inside ? l.low + random() * (l.high - l.low) : random() < 0.5 ? l.low : l.high,
    );
  }
}
