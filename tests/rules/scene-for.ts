/** Scenes for tests: a setup's text goes in, quantities come out, with the defaults and limits of the released rule set. */
import { readFileSync, readdirSync } from "node:fs";
import { emptyLibrary, householdOf, readSetup } from "../../language/model/household.js";
import type { Interval } from "../../language/quantity/interval.js";
import type { Dimension } from "../../language/quantity/types.js";
import type { Tree } from "../../language/text/types.js";
import { readTree } from "../../language/text/tree.js";
import { readRules, ruleShape } from "../../rules/engine/read.js";
import { Workings } from "../../rules/workings.js";
import { quantityNamed } from "../../rules/quantities/index.js";
import type { Defaults, Scene } from "../../rules/scene.js";
import { Scenes } from "../../rules/scenes.js";
import type { Computed } from "../../rules/types.js";

const folder = new URL("../../rules/home-transfer/2026.1/", import.meta.url);
const { set } = readRules(
  readdirSync(folder)
    .filter((path) => /^(defaults|limits)/.test(path))
    .map((path) => ({
      path,
      tree: readTree(readFileSync(new URL(path, folder), "utf8"), ruleShape),
    })),
);

type Given = { readonly interval: Interval; readonly dimension: Dimension; readonly tapeable: boolean };

/** Defaults and limits of the rule set, some of them replaced. */
export const defaultsWith = (replaced: Readonly<Record<string, Interval>> = {}): Defaults => ({
  get(name): Given | undefined {
    const d = set.defaults.get(name);
    const l = d ?? set.limits.get(name);
    if (!l) return undefined;
    return { interval: replaced[name] ?? l.interval, dimension: l.dimension, tapeable: d?.tapeable ?? false };
  },
});

export interface Checked {
  readonly scene: Scene;
  readonly workings: Workings;
  /** A quantity of the scene, by name. */
  get(name: string): Computed;
}

/** Keeps trees, scenes and workings from one text to the next, as an editor does. */
export class Bench {
  private readonly scenes = new Scenes();
  readonly workings: Workings;
  private tree: Tree | undefined;

  constructor(defaults: Defaults = defaultsWith()) {
    this.workings = new Workings(defaults);
  }

  check(text: string, transfer = "into-bed"): Checked {
    this.tree = readSetup(text, this.tree);
    const household = householdOf("home.span", this.tree, emptyLibrary);
    const scene = this.scenes.of(household).find((s) => s.name === transfer);
    if (!scene) throw new Error(`The setup has no transfer named ${transfer}`);
    this.workings.begin();
    return {
      scene,
      workings: this.workings,
      get: (name) => {
        const q = quantityNamed.get(name);
        if (!q) throw new Error(`There is no quantity named ${name}`);
        return this.workings.of(scene, q);
      },
    };
  }
}

/** Checks one text by itself. */
export const sceneFor = (text: string, transfer?: string, defaults?: Defaults): Checked =>
  new Bench(defaults).check(text, transfer);

/** An invented household; pieces of it are replaced by tests. */
export const home = `
client {
  code C-07
  mass 182 lb
  stature 5 ft 9 in
  hip-breadth 16 in
}
bed { top 21 in; top-loaded 19 1/2 in; size 39 in by 80 in; edge firm; rated-load 450 lb }
wheelchair chair-18 {
  seat-height 20 1/2 in
  seat-loaded 19 in
  seat-width 18 in
  seat-depth 18 in
  overall-width 25 in
  drive-wheel { diameter 24 in; axle 0 in }
  cushion { kind foam; thickness 2 in }
  armrests removable
  legrests removable
  hanger-stub 1 in
  hanger-reach 16 in
  rated-load 300 lb
}
board board-30 { length 30 in; width 8 in; rated-load 400 lb }
helper daughter { trained yes }
furniture nightstand { size 18 in by 16 in }
room bedroom {
  walk 12 ft 1 in east, 10 ft 2 in north, 12 ft 1 in west, 10 ft 2 in south
  place bed { head north; at 5 ft, 42 in }
  place nightstand { wall north; at 8 ft 5 in }
}
transfer into-bed {
  from chair-18 to bed
  with board-30, daughter
  room bedroom
  bed-side left
  facing head
  turned 30 deg towards
  along 40 in
  steps {
    lock brakes
    remove legrest left
    remove armrest left
    unlock brakes
    approach bed
    lock brakes
    scoot forward
    place board
    slide
  }
}
way-back out-of-bed of into-bed { steps planned }
`;
