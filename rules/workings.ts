/** Works quantities out, and keeps each while everything that it read of its scene would be read the same again. */
import type { Thing, Value } from "../language/model/types.js";
import { stillToCome, workOut } from "./computed.js";
import { Optional, type Inputs, type Of, type QuantityRule, type SharedInputs } from "./quantity.js";
import { ReadOnce } from "./read-once.js";
import type { Defaults, Scene } from "./scene.js";
import type { Computed } from "./types.js";

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

/** Works quantities out for the scenes of a household, and keeps what is still good from one check to the next. */
export class Workings {
  private kept = new Map<string, OfScene>();
  private fresh = new Map<string, OfScene>();
  private readonly read: ReadOnce;
  private round = 0;
  /** In haste, what is slow is not worked out anew. */
  haste = false;
  /** Whether something was left out since the last `begin` because of haste. */
  leftOut = false;
  /** How many quantities were worked out since the last `begin`; tests count it. */
  computed = 0;

  constructor(defaults: Defaults) {
    this.read = new ReadOnce(defaults);
  }

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
    if (!same) this.computed++;
    const result = same ? before.result : workOut(q, inputs);
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
    of.written = (thing, key, words) => this.read.written(thing, key, words);
    of.transfer = (key, words) => this.read.written(value(key).thing, key, words);
    of.default = (name) => this.read.default(name);
    of.optional = (c) => new Optional(c);
    of.shared = (make) => this.shared(scene, make);
    return (this.accessFor = { scene, watched, of });
  }
}
