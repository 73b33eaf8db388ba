/** From the files of a rule-set folder to a rule set that may be used, or the reasons why not. */
import { readTree } from "../../language/text/tree.js";
import { readRules, ruleShape, type RuleTree } from "./read.js";
import { verify, type Surroundings } from "./verify.js";
import type { ReadSet, RuleFile, SetProblem } from "./types.js";

/** Reads and checks the trees of a folder's files. */
export function loadTrees(trees: readonly RuleTree[], around: Surroundings): ReadSet {
  const { set, head, problems } = readRules(trees);
  const all = [...problems, ...verify(set, head, around)]
    .map((p) => (p.path === "" && trees[0] ? { ...p, path: trees[0].path } : p))
    .sort(byPlace);
  return { set: all.length === 0 ? set : undefined, partial: set, problems: all };
}

/** Reads and checks a folder's files. Files are taken in the order of their paths. */
export const loadRuleSet = (files: readonly RuleFile[], around: Surroundings): ReadSet =>
  loadTrees(treesOf(files), around);

const treesOf = (files: readonly RuleFile[]): RuleTree[] =>
  [...files]
    .sort((a, b) => (a.path < b.path ? -1 : a.path > b.path ? 1 : 0))
    .map((f) => ({ path: f.path, tree: readTree(f.text, ruleShape) }));

const byPlace = (a: SetProblem, b: SetProblem): number =>
  a.path < b.path
    ? -1
    : a.path > b.path
      ? 1
      : a.line - b.line ||
        a.start - b.start ||
        (a.rule < b.rule ? -1 : a.rule > b.rule ? 1 : 0) ||
        (a.message < b.message ? -1 : 1);

/**
 * Reads the files of a set that was verified when the program was built. Whatever cannot be read all the same is verified and refused
 * like any other.
 */
export function readReleased(files: readonly RuleFile[], around: Surroundings): ReadSet {
  const trees = treesOf(files);
  const { set, problems } = readRules(trees);
  return problems.length === 0 ? { set, partial: set, problems: [] } : loadTrees(trees, around);
}
