/** Reads facts on subjects. One object lives as long as the rule set; `begin` starts a check, and what did not change is read again as the same object. */
import type { Household } from "../../language/model/household.js";
import type { Thing } from "../../language/model/types.js";
import { Workings, type QuantityRule } from "../quantity.js";
import type { Defaults, Scene } from "../scene.js";
import type { Computed } from "../types.js";
import type { Step } from "../../language/vocabulary/verbs.js";
import { facts as factsOfStep } from "../steps/facts.js";
import type { State } from "../steps/state.js";
import type { FactSpec, FactTable } from "./fact-table.js";
import { liftOf } from "./facts-use.js";
import type { Sight } from "./special-fact.js";
import type { Reading } from "./logic.js";
import type { Scope } from "./types.js";
import { choiceReading, missingReading, withoutReading, Written } from "./written.js";

/** Facts of one subject, each read once a check. Of a transfer, the same object while its scene consists of the same objects. */
export interface Facts {
  read(name: string): Reading;
  /** The thing in a role, for messages and places. */
  role(name: string): Thing | undefined;
  readonly sight: Sight;
}

interface Kept {
  readonly depends: readonly unknown[];
  readonly reading: Reading;
}

/** What was read of one transfer; good until anything in its scene is another object. */
interface OfScene {
  scene: Scene;
  readonly workings: Workings;
  facts: FactsOfScene | undefined;
}

class FactsOfScene implements Facts {
  private readonly memo = new Map<string, Reading>();
  /** Facts that look beyond the scene: read anew each check. */
  private readonly wide = new Map<string, Reading>();
  constructor(
    public sight: Sight & { readonly scene: Scene },
    private readonly table: FactTable,
    private readonly ask: (name: string, facts: FactsOfScene) => Reading,
  ) {}

  refresh(sight: Sight & { readonly scene: Scene }): this {
    this.sight = sight;
    this.wide.clear();
    return this;
  }
  role(name: string): Thing | undefined {
    return roleInScene(name, this.sight.scene, this.sight.household);
  }
  read(name: string): Reading {
    let found = this.memo.get(name) ?? this.wide.get(name);
    if (!found) {
      found = this.ask(name, this);
      (this.table.isWide(name, transferScope) ? this.wide : this.memo).set(name, found);
    }
    return found;
  }
}

const transferScope: Scope = { is: "transfer" };
const parts = [
  "direction",
  "transfer",
  "base",
  "from",
  "to",
  "chair",
  "surface",
  "board",
  "belt",
  "lift",
  "helpers",
  "client",
  "room",
  "placed",
  "side",
  "parked",
  "steps",
  "setup",
  "run",
] as const;
const sameScene = (a: Scene, b: Scene): boolean => a === b || parts.every((p) => a[p] === b[p]);

export class FactReader {
  readonly written: Written;
  private specials = new Map<string, Kept>();
  private specialsNow = new Map<string, Kept>();
  private readonly words = new Map<string, Reading>();
  private scenes = new Map<string, OfScene>();
  private scenesNow = new Map<string, OfScene>();
  private begun: Workings[] = [];

  constructor(
    readonly table: FactTable,
    private readonly defaults: Defaults,
  ) {
    this.written = new Written(defaults);
  }

  begin(): void {
    this.specials = this.specialsNow;
    this.specialsNow = new Map();
    this.scenes = this.scenesNow;
    this.scenesNow = new Map();
    this.begun = [];
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
    if (kept.facts)
      return kept.facts.sight.household === sight.household && kept.facts.sight.today === sight.today
        ? kept.facts
        : kept.facts.refresh(sight);
    const quantity = this.quantitiesOf(sight.scene);
    const facts: FactsOfScene = new FactsOfScene(sight, this.table, (name, f) =>
      this.read(name, transferScope, f.sight, (r) => f.role(r), kept.scene.name, quantity),
    );
    kept.facts = facts;
    return facts;
  }

  /** Quantities of a scene. What is asked after the scene has changed is worked out apart, so that the two cannot mix. */
  quantitiesOf(scene: Scene): (q: QuantityRule) => Computed {
    const kept = this.sceneOf(scene);
    const own = kept.scene;
    let apart: Workings | undefined;
    return (q) => {
      try {
        return (kept.scene === own ? kept.workings : (apart ??= new Workings(this.defaults))).of(own, q);
      } catch (e) {
        // A rule set that lacks a default which something computed needs: then the quantity is not known, and says why.
        return missingReading(q.name, e instanceof Error ? e.message : q.name);
      }
    };
  }

  private sceneOf(scene: Scene): OfScene {
    let kept = this.scenesNow.get(scene.name) ?? this.scenes.get(scene.name);
    if (!kept) {
      kept = { scene, workings: new Workings(this.defaults), facts: undefined };
      this.begun.push(kept.workings);
    } else if (!sameScene(kept.scene, scene)) {
      kept.workings.begin();
      kept.scene = scene;
      kept.facts = undefined;
      this.begun.push(kept.workings);
    }
    this.scenesNow.set(scene.name, kept);
    return kept;
  }

  /** Facts of one thing, or of the setup as a whole. */
  ofThing(sight: Sight, scope: Scope, thing?: Thing): Facts {
    const role = (name: string): Thing | undefined =>
      name === "client" ? sight.household.client : name === "review" ? sight.household.review : thing;
    return this.memo(sight, role, (name) => this.read(name, scope, sight, role, thing?.name ?? "setup"));
  }

  /** Facts of a step: those of the state, else those of its transfer. */
  ofStep(scene: Facts, state: State, setup: Scene["setup"], step?: Step): Facts {
    const own = factsOfStep(state, setup, step);
    return {
      get sight() {
        return scene.sight;
      },
      role: (name) => scene.role(name),
      read: (name) => (name.startsWith("step.") ? this.word(name, own(name)) : scene.read(name)),
    };
  }

  /** One object for each word that a step's fact can be. */
  private word(name: string, choice: string | undefined): Reading {
    const key = `${name}\n${choice ?? ""}`;
    let found = this.words.get(key);
    if (!found) {
      found =
        choice === undefined
          ? missingReading(name, name.slice(5).replaceAll("-", " "))
          : choiceReading(name, choice);
      // Texts (why a step cannot be done) come in many wordings; the store must not grow for ever.
      if (this.words.size > 5000) this.words.clear();
      this.words.set(key, found);
    }
    return found;
  }

  private memo(
    sight: Sight,
    role: (name: string) => Thing | undefined,
    read: (name: string) => Reading,
  ): Facts {
    const done = new Map<string, Reading>();
    return {
      sight,
      role,
      read: (name) => {
        let found = done.get(name);
        if (!found) done.set(name, (found = read(name)));
        return found;
      },
    };
  }

  private read(
    name: string,
    scope: Scope,
    sight: Sight,
    role: (name: string) => Thing | undefined,
    subject: string,
    quantity?: (q: QuantityRule) => Computed,
  ): Reading {
    const spec = this.table.spec(name, scope);
    switch (spec?.is) {
      case "quantity":
        return quantity ? quantity(spec.quantity) : missingReading(name, name);
      case "special": {
        const depends = spec.special.depends(sight);
        return this.keep(`${subject}\n${name}`, depends, () => spec.special.read(sight));
      }
      case "written":
        return this.readWritten(name, spec, sight, role, subject);
      default:
        return this.keep(`${subject}\n${name}`, [], () => missingReading(name, name));
    }
  }

  private keep(key: string, depends: readonly unknown[], make: () => Reading): Reading {
    const before = this.specialsNow.get(key) ?? this.specials.get(key);
    const kept =
      before && before.depends.length === depends.length && before.depends.every((d, i) => d === depends[i])
        ? before
        : { depends, reading: make() };
    this.specialsNow.set(key, kept);
    return kept.reading;
  }

  private readWritten(
    name: string,
    spec: FactSpec & { readonly is: "written" },
    sight: Sight,
    role: (name: string) => Thing | undefined,
    subject: string,
  ): Reading {
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
      return this.keep(`${subject}\n${name}`, [scene?.transfer, scene?.base], () =>
        absent(name, spec.role, scene),
      );
    const path = spec.paths.get(thing.kind);
    if (!path)
      return this.keep(`${subject}\n${name}`, [thing], () =>
        withoutReading(
          name,
          `A ${thing.kind} has no ${name.slice(spec.role.length + 1).replaceAll("-", " ")}`,
        ),
      );
    return this.written.read(name, thing, path);
  }
}

/** The thing that plays a role in a transfer. */
export function roleInScene(name: string, scene: Scene, household: Household): Thing | undefined {
  switch (name) {
    case "helper":
      return scene.helpers[0];
    case "lift":
      return liftOf(scene, household.things);
    case "client":
    case "chair":
    case "surface":
    case "from":
    case "to":
    case "board":
    case "belt":
    case "room":
    case "transfer":
      return scene[name];
    default:
      return undefined;
  }
}

const optional: { readonly [role: string]: string } = {
  board: "No board is used",
  belt: "No belt is used",
  helper: "Nobody helps",
  lift: "No lift is named",
};
const words: { readonly [role: string]: { readonly what: string; readonly key: string } } = {
  board: { what: "which board is used (with, or no-board)", key: "with" },
  belt: { what: "whether a belt is used (with)", key: "with" },
  helper: { what: "who helps (with)", key: "with" },
  lift: { what: "whether a lift is used (with)", key: "with" },
  room: { what: "the room in which it is done (room)", key: "room" },
  client: { what: "who is moved (client)", key: "client" },
};

/** A fact of a thing that is not there: because somebody decided so, or because nobody said which. */
function absent(name: string, role: string, scene: Scene | undefined): Reading {
  const decided =
    scene &&
    (role === "board" ? scene.value("no-board").value === true : Array.isArray(scene.value("with").value));
  const without = optional[role];
  if (without !== undefined && decided) return withoutReading(name, without);
  const said = words[role] ?? { what: "from where to where it goes (from)", key: "from" };
  return missingReading(
    name,
    said.what,
    scene && { thing: said.key === "from" ? (scene.base ?? scene.transfer) : scene.transfer, key: said.key },
  );
}
