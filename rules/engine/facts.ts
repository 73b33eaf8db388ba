/** Reads facts on subjects. One object lives as long as the rule set; `begin` starts a check, and what did not change is not asked again. */
import type { Thing } from "../../language/model/types.js";
import type { Step } from "../../language/vocabulary/verbs.js";
import type { QuantityRule } from "../quantity.js";
import { Workings } from "../workings.js";
import type { Defaults, Scene } from "../scene.js";
import { facts as factsOfStep } from "../steps/facts.js";
import type { State } from "../steps/state.js";
import type { Computed } from "../types.js";
import type { FactSpec, FactTable } from "./fact-table.js";
import type { Reading } from "./logic.js";
import { absent, roleInScene } from "./roles.js";
import { KeptFacts, type Facts, type Slot } from "./slots.js";
import type { Sight } from "./special-fact.js";
import type { Scope } from "./types.js";
import { choiceReading, missingReading, withoutReading, Written } from "./written.js";

/** What is kept of one transfer: its scene as it was last, what was worked out and what was read of it. */
interface OfScene {
  scene: Scene;
  readonly workings: Workings;
  facts: KeptFacts | undefined;
  /** The check in which its scene last came to consist of other objects. */
  changed: number;
}

/** What is kept of one thing, or of the setup. */
interface OfThing {
  readonly facts: KeptFacts;
  thing: Thing | undefined;
  client: Thing | undefined;
}

type ThingRole = (name: string) => Thing | undefined;

const transferScope: Scope = { is: "transfer" };

/** Whether two scenes consist of the same objects. How a value is looked up follows from these. */
export function sameScene(a: Scene, b: Scene): boolean {
  if (a === b) return true;
  const [x, y] = [a, b] as unknown as readonly { readonly [part: string]: unknown }[];
  for (const part in y) if (part !== "value" && x![part] !== y[part]) return false;
  for (const part in x) if (!(part in y!)) return false;
  return true;
}

/** Facts of a step, or of the end: those of the state, else those of the transfer. */
class StepFacts implements Facts {
  constructor(
    private readonly scene: Facts,
    private readonly own: (name: string) => string | undefined,
    private readonly word: (name: string, choice: string | undefined) => Reading,
  ) {}
  get owner(): object {
    return this.scene.owner;
  }
  get sight(): Sight {
    return this.scene.sight;
  }
  get round(): number {
    return this.scene.round;
  }
  get changed(): number {
    return this.scene.changed;
  }
  role(name: string): Thing | undefined {
    return this.scene.role(name);
  }
  slot(name: string): Slot {
    return this.scene.slot(name);
  }
  read(name: string): Reading {
    return name.startsWith("step.") ? this.word(name, this.own(name)) : this.scene.read(name);
  }
}

export class FactReader {
  readonly written: Written;
  /** The number of the check. */
  private round = 0;
  private scenes = new Map<string, OfScene>();
  private scenesNow = new Map<string, OfScene>();
  private things = new Map<string, OfThing>();
  private thingsNow = new Map<string, OfThing>();
  private readonly words = new Map<string, Map<string, Reading>>();
  private wordCount = 0;
  private begun: Workings[] = [];
  private haste = false;

  constructor(
    readonly table: FactTable,
    private readonly defaults: Defaults,
    /** For trying values, of which a rule reads a few facts at a time. */
    private readonly lazy = false,
  ) {
    this.written = new Written(defaults);
  }

  /** `haste`: what is slow is left out, unless it is known from before. */
  begin(haste = false): void {
    this.round++;
    this.haste = haste;
    this.scenes = this.scenesNow;
    this.scenesNow = new Map();
    this.things = this.thingsNow;
    this.thingsNow = new Map();
    this.begun = [];
  }

  /** Whether a slow quantity was left out of this check. */
  get leftOut(): boolean {
    return [...this.scenesNow.values()].some((s) => s.workings.leftOut);
  }

  /** How many quantities were worked out since the last `begin`. */
  get computed(): number {
    return this.begun.reduce((sum, w) => sum + w.computed, 0);
  }

  /**
   * Facts of a transfer. While its scene consists of the same objects, what was read of it is not even asked again, except for
   * what lies outside the scene: trials, reviews, other transfers.
   */
  ofScene(sight: Sight & { readonly scene: Scene }): Facts {
    const kept = this.sceneOf(sight.scene);
    if (kept.facts) {
      if (kept.facts.round !== this.round) kept.facts.refresh(sight, this.round, kept.changed !== this.round);
      return kept.facts;
    }
    const quantity = (q: QuantityRule): Computed => this.worked(kept.workings, kept.scene, q);
    kept.facts = new KeptFacts(
      sight,
      {
        ask: (slot, f) => this.ask(slot, transferScope, f.sight, (r) => f.role(r), quantity),
        role: (name, f) => roleInScene(name, kept.scene, f.sight.household),
        isWide: (name) => this.table.isWide(name, transferScope),
      },
      this.round,
      this.lazy,
    );
    return kept.facts;
  }

  /** Quantities of a scene. What is asked after the scene has changed is worked out apart, so that the two cannot mix. */
  quantitiesOf(scene: Scene): (q: QuantityRule) => Computed {
    const kept = this.sceneOf(scene);
    const own = kept.scene;
    let apart: Workings | undefined;
    return (q) =>
      this.worked(kept.scene === own ? kept.workings : (apart ??= new Workings(this.defaults)), own, q);
  }

  private worked(workings: Workings, scene: Scene, q: QuantityRule): Computed {
    try {
      return workings.of(scene, q);
    } catch (e) {
      // A rule set that lacks a default which something computed needs: then the quantity is not known, and says why.
      return missingReading(q.name, e instanceof Error ? e.message : q.name);
    }
  }

  private sceneOf(scene: Scene): OfScene {
    const now = this.scenesNow.get(scene.name);
    if (now && (now.scene === scene || sameScene(now.scene, scene))) return now;
    let kept = now ?? this.scenes.get(scene.name);
    if (!kept) {
      kept = { scene, workings: new Workings(this.defaults), facts: undefined, changed: this.round };
      this.begun.push(kept.workings);
    } else if (!sameScene(kept.scene, scene)) {
      kept.workings.begin();
      kept.scene = scene;
      kept.changed = this.round;
      this.begun.push(kept.workings);
    }
    kept.workings.haste = this.haste;
    this.scenesNow.set(scene.name, kept);
    return kept;
  }

  /** Facts of one thing, or of the setup as a whole. `key` tells it apart from every other. */
  ofThing(sight: Sight, scope: Scope, key: string, thing?: Thing): Facts {
    const { client } = sight.household;
    const before = this.things.get(key);
    if (before && !this.thingsNow.has(key)) {
      const same = before.thing === thing && before.client === client;
      before.thing = thing;
      before.client = client;
      before.facts.refresh(sight, this.round, same);
      this.thingsNow.set(key, before);
      return before.facts;
    }
    const role: ThingRole = (name) =>
      name === "client"
        ? kept.facts.sight.household.client
        : name === "review"
          ? kept.facts.sight.household.review
          : kept.thing;
    const facts: KeptFacts = new KeptFacts(
      sight,
      {
        ask: (slot, f) => this.ask(slot, scope, f.sight, role),
        role,
        // The setup as a whole has no things of its own: each of its facts is asked at every check.
        isWide: (name) => thing === undefined || this.table.isWide(name, scope) || name.startsWith("review."),
      },
      this.round,
      this.lazy,
    );
    const kept: OfThing = { facts, thing, client };
    this.thingsNow.set(key, kept);
    return facts;
  }

  /** Facts of a step: those of the state, else those of its transfer. */
  ofStep(scene: Facts, state: State, setup: Scene["setup"], step?: Step): Facts {
    return new StepFacts(scene, factsOfStep(state, setup, step), (name, choice) => this.word(name, choice));
  }

  /** One object for each word that a step's fact can be. */
  private word(name: string, choice: string | undefined): Reading {
    let choices = this.words.get(name);
    if (!choices) this.words.set(name, (choices = new Map<string, Reading>()));
    const key = choice ?? "";
    let found = choices.get(key);
    if (!found) {
      found =
        choice === undefined
          ? missingReading(name, name.slice(5).replaceAll("-", " "))
          : choiceReading(name, choice);
      // Texts (why a step cannot be done) come in many wordings; the store must not grow for ever.
      if (++this.wordCount > 5000) {
        this.words.clear();
        this.wordCount = 0;
      }
      choices.set(key, found);
    }
    return found;
  }

  private ask(
    slot: Slot,
    scope: Scope,
    sight: Sight,
    role: ThingRole,
    quantity?: (q: QuantityRule) => Computed,
  ): Reading {
    const { name } = slot;
    const spec = (slot.spec ??= this.table.spec(name, scope));
    switch (spec?.is) {
      case "quantity":
        return quantity ? quantity(spec.quantity) : missingReading(name, name);
      case "special":
        return unlessSame(slot, spec.special.depends(sight), () => spec.special.read(sight));
      case "written":
        return this.askWritten(slot, spec, sight, role);
      default:
        return unlessSame(slot, [], () => missingReading(name, name));
    }
  }

  private askWritten(
    slot: Slot,
    spec: FactSpec & { readonly is: "written" },
    sight: Sight,
    role: ThingRole,
  ): Reading {
    const { name } = slot;
    const scene = sight.scene;
    // A way back that does not say a key of the transfer takes it from the transfer it turns round.
    if (scene && spec.role === "transfer") {
      const path = [...spec.paths.values()][0]!;
      const thing =
        path.key === undefined
          ? scene.transfer.inner[path.block!]
            ? scene.transfer
            : (scene.base ?? scene.transfer)
          : scene.value(path.key).thing;
      return this.written.read(name, thing, path);
    }
    const thing = role(spec.role);
    if (!thing)
      return unlessSame(slot, [scene?.transfer, scene?.base, scene?.from, scene?.to], () =>
        absent(name, spec.role, scene),
      );
    const path = spec.paths.get(thing.kind);
    if (!path)
      return unlessSame(slot, [thing], () =>
        withoutReading(
          name,
          `A ${thing.kind} has no ${name.slice(spec.role.length + 1).replaceAll("-", " ")}`,
        ),
      );
    return this.written.read(name, thing, path);
  }
}

/** The reading of the check before while everything that it depends on is the same object. */
function unlessSame(slot: Slot, depends: readonly unknown[], make: () => Reading): Reading {
  const before = slot.depends;
  if (before?.length === depends.length && before.every((d, i) => d === depends[i])) return slot.reading;
  slot.depends = depends;
  return make();
}
