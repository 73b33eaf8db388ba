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
import { liftOf, type Sight } from "./facts-special.js";
import type { Reading } from "./logic.js";
import type { Scope } from "./types.js";
import { choiceReading, missingReading, withoutReading, Written } from "./written.js";

/** Facts of one subject, each read once a check. */
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

export class FactReader {
  readonly written: Written;
  private specials = new Map<string, Kept>();
  private specialsNow = new Map<string, Kept>();
  private readonly words = new Map<string, Reading>();
  private round = 0;

  constructor(
    readonly table: FactTable,
    readonly workings: Workings,
    private readonly defaults: Defaults,
  ) {
    this.written = new Written(defaults);
  }

  begin(): void {
    this.round++;
    this.specials = this.specialsNow;
    this.specialsNow = new Map();
  }

  /** Facts of a transfer. */
  ofScene(sight: Sight & { readonly scene: Scene }, scope: Scope): Facts {
    const role = (name: string): Thing | undefined => roleInScene(name, sight.scene, sight.household);
    const quantity = this.quantitiesOf(sight.scene);
    return this.memo(sight, role, (name) => this.read(name, scope, sight, role, sight.scene.name, quantity));
  }

  /**
   * Quantities of a scene. What is asked of a check after a newer one has begun is worked out apart, so that the two cannot mix.
   */
  quantitiesOf(scene: Scene): (q: QuantityRule) => Computed {
    const round = this.round;
    let apart: Workings | undefined;
    return (q) => (round === this.round ? this.workings : (apart ??= new Workings(this.defaults))).of(scene, q);
  }

  /** Facts of one thing, or of the setup as a whole. */
  ofThing(sight: Sight, scope: Scope, thing?: Thing): Facts {
    const role = (name: string): Thing | undefined => (name === "client" ? sight.household.client : name === "review" ? sight.household.review : thing);
    return this.memo(sight, role, (name) => this.read(name, scope, sight, role, thing?.name ?? "setup"));
  }

  /** Facts of a step: those of the state, else those of its transfer. */
  ofStep(scene: Facts, state: State, setup: Scene["setup"], step?: Step): Facts {
    const own = factsOfStep(state, setup, step);
    return {
      sight: scene.sight,
      role: (name) => scene.role(name),
      read: (name) => (name.startsWith("step.") ? this.word(name, own(name)) : scene.read(name)),
    };
  }

  /** One object for each word that a step's fact can be. */
  private word(name: string, choice: string | undefined): Reading {
    const key = `${name}\n${choice ?? ""}`;
    let found = this.words.get(key);
    if (!found) {
      found = choice === undefined ? missingReading(name, name.slice(5).replaceAll("-", " ")) : choiceReading(name, choice);
      // Texts (why a step cannot be done) come in many wordings; the store must not grow for ever.
      if (this.words.size > 5000) this.words.clear();
      this.words.set(key, found);
    }
    return found;
  }

  private memo(sight: Sight, role: (name: string) => Thing | undefined, read: (name: string) => Reading): Facts {
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

  private read(name: string, scope: Scope, sight: Sight, role: (name: string) => Thing | undefined, subject: string, quantity?: (q: QuantityRule) => Computed): Reading {
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
    const kept = before && before.depends.length === depends.length && before.depends.every((d, i) => d === depends[i]) ? before : { depends, reading: make() };
    this.specialsNow.set(key, kept);
    return kept.reading;
  }

  private readWritten(name: string, spec: FactSpec & { readonly is: "written" }, sight: Sight, role: (name: string) => Thing | undefined, subject: string): Reading {
    const scene = sight.scene;
    // A way back that does not say a key of the transfer takes it from the transfer it turns round.
    if (scene && spec.role === "transfer") {
      const path = [...spec.paths.values()][0]!;
      const thing = path.key === undefined ? (scene.transfer.inner[path.block!] ? scene.transfer : (scene.base ?? scene.transfer)) : scene.value(path.key).thing;
      return this.written.read(name, thing, path);
    }
    const thing = role(spec.role);
    if (!thing) return this.keep(`${subject}\n${name}`, [scene?.transfer, scene?.base], () => absent(name, spec.role, scene));
    const path = spec.paths.get(thing.kind);
    if (!path) return this.keep(`${subject}\n${name}`, [thing], () => withoutReading(name, `A ${thing.kind} has no ${name.slice(spec.role.length + 1).replaceAll("-", " ")}`));
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

const optional: { readonly [role: string]: string } = { board: "No board is used", belt: "No belt is used", helper: "Nobody helps", lift: "No lift is named" };
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
  const decided = scene && (role === "board" ? scene.value("no-board").value === true : Array.isArray(scene.value("with").value));
  const without = optional[role];
  if (without !== undefined && decided) return withoutReading(name, without);
  const said = words[role] ?? { what: "from where to where it goes (from)", key: "from" };
  return missingReading(name, said.what, scene && { thing: said.key === "from" ? (scene.base ?? scene.transfer) : scene.transfer, key: said.key });
}
