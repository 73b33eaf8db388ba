/** Readings of what is written in a setup, kept by the thing in which it stands. */
import { isQuantity, isUnknown, type Thing, type Value } from "../../language/model/types.js";
import type { Quantity, ShownUnit } from "../../language/quantity/types.js";
import type { Dimension } from "../../language/quantity/types.js";
import type { Place } from "../../language/text/types.js";
import { writtenValue } from "../computed.js";
import type { Defaults } from "../scene.js";
import type { Missing } from "../types.js";
import { whoOf } from "../who.js";
import { holderOf, valueAt, type Path } from "./fact-paths.js";
import type { Reading } from "./logic.js";

const plain: ShownUnit = { unit: "1" };

const base = (name: string, dimension: Dimension = "number"): Reading => ({
  name,
  dimension,
  value: undefined,
  missing: [],
  assumed: [],
  trace: [],
  unit: plain,
});

/** A fact that does not exist here, and why. */
export const withoutReading = (name: string, reason: string): Reading => ({
  ...base(name),
  without: reason,
  given: false,
});

/** Where a reading stands; the block may be read anew while what it says stays the same. */
interface At {
  thing: Thing;
  readonly key?: string | undefined;
}
const standing = new WeakMap<Reading, At>();

/**
 * Whether what was read before still says what is read now, of a block in which another line changed; it then stands where that
 * stands now, and what rests on it need not be judged anew. Only of words and missing values, which rest on no arithmetic.
 */
export function goesOn(before: Reading, now: Reading): boolean {
  const [was, is] = [standing.get(before), standing.get(now)];
  if (was === undefined || is === undefined ? isPlaced(before) || isPlaced(now) : was.key !== is.key)
    return false;
  const same =
    before.value === undefined &&
    now.value === undefined &&
    before.assumed.length === 0 &&
    now.assumed.length === 0 &&
    before.name === now.name &&
    before.choice === now.choice &&
    before.without === now.without &&
    before.given === now.given &&
    before.dimension === now.dimension &&
    before.trace.length === now.trace.length &&
    before.trace.every((t, i) => t.label === now.trace[i]!.label) &&
    before.missing.length === now.missing.length &&
    before.missing.every((m, i) => m.what === now.missing[i]!.what && m.key === now.missing[i]!.key);
  if (same && was && is) was.thing = is.thing;
  return same;
}

const isPlaced = (r: Reading): boolean => r.trace.length > 0 || r.missing.some((m) => "place" in m);

/** A fact that is not known. Its place is asked for when it is shown, so that it is where the text now is. */
export function missingReading(name: string, what: string, at?: At, given = false): Reading {
  const missing: Missing = at
    ? {
        what,
        ...(at.key !== undefined && { key: at.key }),
        get place(): Place {
          return at.thing.placeOf(at.key);
        },
      }
    : { what };
  return standingAt({ ...base(name), missing: [missing], given }, at);
}

/** A word, and where it was written. */
export function choiceReading(name: string, choice: string, at?: At, label = name): Reading {
  const trace = at
    ? [
        {
          label: `${label}: ${choice}`,
          get place(): Place {
            return at.thing.placeOf(at.key);
          },
        },
      ]
    : [];
  return standingAt({ ...base(name), choice, trace, given: true }, at);
}

function standingAt(reading: Reading, at: At | undefined): Reading {
  if (at) standing.set(reading, at);
  return reading;
}

export function numberReading(name: string, value: number): Reading {
  return { ...base(name), value: { low: value, nominal: value, high: value }, given: true };
}

interface Kept {
  readonly value: Value | undefined;
  /** Whether the block in which the key would stand is there. */
  readonly held: boolean;
  readonly at: At;
  readonly reading: Reading;
}

export class Written {
  private readonly ofThing = new WeakMap<Thing, Map<string, Reading>>();
  /** By `whoOf` of the thing, then by fact: what was read of the block as it was before. */
  private readonly before = new Map<string, Map<string, Kept>>();

  constructor(private readonly defaults: Defaults) {}

  /** The fact `name` as written in `thing` under `path`. The same object while what is written is the same. */
  read(name: string, thing: Thing, path: Path): Reading {
    let inThing = this.ofThing.get(thing);
    if (!inThing) this.ofThing.set(thing, (inThing = new Map<string, Reading>()));
    let found = inThing.get(name);
    if (!found) inThing.set(name, (found = this.again(name, thing, path)));
    return found;
  }

  private again(name: string, thing: Thing, path: Path): Reading {
    const who = whoOf(thing);
    // Things come and go while a text is edited; what was said of them must not pile up.
    if (this.before.size > 2000) this.before.clear();
    let facts = this.before.get(who);
    if (!facts) this.before.set(who, (facts = new Map<string, Kept>()));
    const holder = holderOf(thing, path);
    const value = holder && valueAt(holder, path);
    const place = holder ?? thing;
    const kept = facts.get(name);
    if (kept && kept.value === value && kept.held === (holder !== undefined)) {
      kept.at.thing = place;
      return kept.reading;
    }
    const at: At = { thing: place, key: holder ? path.key : path.block };
    const reading = this.make(name, thing, path, holder, value, at);
    facts.set(name, { value, held: holder !== undefined, at, reading });
    return reading;
  }

  private make(
    name: string,
    thing: Thing,
    path: Path,
    holder: Thing | undefined,
    value: Value | undefined,
    at: At,
  ): Reading {
    const words = `${(path.key ?? path.block ?? "").replaceAll("-", " ")} of ${holder && holder !== thing && path.key !== undefined ? `the ${holder.kind.replaceAll("-", " ")} of ` : ""}${thing.name}`;
    if (!holder)
      return missingReading(
        name,
        path.block && path.key
          ? `${path.block.replaceAll("-", " ")} (${path.key.replaceAll("-", " ")}) of ${thing.name}`
          : words,
        at,
      );
    if (path.key === undefined) return choiceReading(name, "yes", at, words);
    if (value === undefined) return missingReading(name, words, at);
    if (isUnknown(value)) return missingReading(name, words, at, true);
    if (isQuantity(value)) return this.quantity(words, value, at);
    return choiceReading(name, wordOf(value), at, words);
  }

  private quantity(label: string, value: Quantity, at: At): Reading {
    return {
      ...writtenValue(label, value, this.defaults, () => at.thing.placeOf(at.key)),
      given: true,
    };
  }
}

function wordOf(value: Value): string {
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "string") return value.toLowerCase();
  return "given";
}
