/**
 * What quantities read of things and of the rule set, each once: the same object again while the same value stands there, also in
 * a block that was read anew because another line of it changed.
 */
import { isQuantity, type Thing } from "../language/model/types.js";
import type { Place } from "../language/text/types.js";
import { defaultValue, notSaid, writtenValue } from "./computed.js";
import { isPartView } from "./part-view.js";
import type { Defaults } from "./scene.js";
import type { Computed } from "./types.js";
import { whoOf } from "./who.js";

export class ReadOnce {
  private readonly writtenIn = new WeakMap<Thing, Map<string, Computed>>();
  private readonly writtenOnce = new WeakMap<object, Map<string, Computed>>();
  private readonly notSaidOnce = new Map<string, Computed>();
  /** Things as they are now, by `whoOf`: a kept result may have been worked out from an older block with the same line in it. */
  private readonly now = new Map<string, Thing>();
  private readonly defaultsOnce = new Map<string, Computed>();

  constructor(private readonly defaults: Defaults) {}

  /** A key of a thing as an interval; missing where it is not written. */
  written(thing: Thing | undefined, key: string, words?: string): Computed {
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

  /** A value of the rule set. */
  default(name: string): Computed {
    let found = this.defaultsOnce.get(name);
    if (!found) {
      const d = this.defaults.get(name);
      if (!d) throw new Error(`The rule set has no default named ${name}`);
      this.defaultsOnce.set(name, (found = defaultValue(name, d)));
    }
    return found;
  }
}
