/** What the features of the editor see of one setup: its text read and checked, and what stands around it. */
import path from "node:path";
import type { Range } from "vscode-languageserver-protocol";
import { readEntry } from "../../language/model/entry.js";
import { householdOf, readSetup, type Household, type Library } from "../../language/model/household.js";
import type { Place, Tree } from "../../language/text/types.js";
import type { StepRules } from "../../rules/engine/check.js";
import type { RuleSet } from "../../rules/engine/types.js";
import type { Scene } from "../../rules/scene.js";
import { Scenes } from "../../rules/scenes.js";
import type { Computed } from "../../rules/types.js";
import type { Reported } from "../workspace/reported.js";
import type { Snapshot, Workspace } from "../workspace/snapshot.js";
import { quantitiesOf, stepRulesOf } from "./engine.js";

/** A place in some file of the workspace. */
export interface Located {
  readonly path: string;
  readonly range: Range;
}

export interface Page {
  readonly path: string;
  readonly text: string;
  readonly tree: Tree;
  readonly household: Household;
  /** Transfers and ways back, names resolved and steps run. */
  readonly scenes: readonly Scene[];
  /** The rule set under which the page was checked, or what could be read of it. */
  readonly set?: RuleSet;
  readonly reported: readonly Reported[];
  /** Rule sets that can be named, as `rules` spells them: `home-transfer 2026.1`. The newest comes first. */
  pins(): readonly string[];
  /** Other setups of the folder of plans, as `from` would spell them in this file. */
  files(): readonly string[];
  /** What a file declares, as `from` spells it here. */
  declaredIn(written: string): readonly { readonly name: string; readonly kind: string }[];
  /** The file that `from` means, if it was found. */
  resolve(written: string): string | undefined;
  quantities(scene: Scene): readonly Computed[];
  /** What the rules say of steps in the course of a transfer; undefined where no rule set could be used. */
  rulesOfSteps(scene: Scene, household?: Household): StepRules | undefined;
  /** The scenes that another text of this file would have: to try a change out before it is offered. */
  scenesOf(text: string): { readonly household: Household; readonly scenes: readonly Scene[] };
}

const scenesOnce = new WeakMap<Household, readonly Scene[]>();
function scenesOf(household: Household): readonly Scene[] {
  let scenes = scenesOnce.get(household);
  if (!scenes) scenesOnce.set(household, (scenes = new Scenes().of(household)));
  return scenes;
}

/** The page of a plan as the workspace knows it now. */
export function pageOf(workspace: Workspace, file: string): Page {
  const snapshot: Snapshot = workspace.snapshot(file);
  const { household, ruleSet, result } = snapshot;
  const root = workspace.rootOf(file);
  const set = ruleSet?.set ?? ruleSet?.partial;
  const at = (written: string): string => path.resolve(path.dirname(file), written.replaceAll("\\", "/"));
  const library: Library = {
    open: (written, from) => {
      const found = path.resolve(path.dirname(from), written.replaceAll("\\", "/"));
      const tree = household.uses.get(found);
      return tree ? { path: found, tree } : { problem: "not-found" };
    },
  };
  return {
    path: file,
    text: snapshot.text,
    tree: snapshot.tree,
    household,
    scenes: result?.scenes ?? scenesOf(household),
    ...(set && { set }),
    reported: snapshot.reported,
    pins: () =>
      workspace.ruleSets
        .list(root)
        .map((s) => `${s.name} ${s.version}`)
        .reverse(),
    files: () =>
      workspace
        .plans()
        .filter((p) => p !== file && workspace.rootOf(p) === root)
        .map((p) => path.relative(path.dirname(file), p).split(path.sep).join("/")),
    declaredIn: (written) => {
      const other = at(written);
      if (!workspace.plans().includes(other) || workspace.rootOf(other) !== root) return [];
      return workspace.tree(other).entries.flatMap(({ entry }) => {
        const thing = readEntry(entry).thing;
        return thing ? [{ name: thing.name, kind: thing.kind }] : [];
      });
    },
    resolve: (written) => (household.uses.has(at(written)) ? at(written) : undefined),
    quantities: (scene) => quantitiesOf(result, scene),
    rulesOfSteps: (scene, of = household) =>
      ruleSet?.set ? stepRulesOf(ruleSet.set, of, scene, snapshot.today) : undefined,
    scenesOf: (text) => {
      const other = householdOf(file, readSetup(text, snapshot.tree), library);
      return { household: other, scenes: new Scenes().of(other) };
    },
  };
}

/** A place of the model, which may lie in another file, as a file and a range. */
export function locate(household: Household, place: Place): Located | undefined {
  const at = household.locate(place.entry);
  if (!at) return undefined;
  const line = at.line + place.line;
  return {
    path: at.path,
    range: { start: { line, character: place.start }, end: { line, character: place.end } },
  };
}

/** The text with changes applied; of changes that overlap the later ones are left out. */
export function applyChanges(
  text: string,
  changes: readonly { readonly range: Range; readonly newText: string }[],
): string {
  const starts = [0];
  for (let i = 0; i < text.length; i++)
    if (text[i] === "\n" || (text[i] === "\r" && text[i + 1] !== "\n")) starts.push(i + 1);
  const offset = (p: { line: number; character: number }): number =>
    Math.min(text.length, (starts[p.line] ?? text.length) + p.character);
  const spans = changes.map((c, order) => ({
    from: offset(c.range.start),
    to: offset(c.range.end),
    text: c.newText,
    order,
  }));
  spans.sort((a, b) => a.from - b.from || a.order - b.order);
  let out = "";
  let at = 0;
  for (const s of spans) {
    if (s.from < at) continue;
    out += text.slice(at, s.from) + s.text;
    at = s.to;
  }
  return out + text.slice(at);
}
