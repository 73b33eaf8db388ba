/** From the files of a rule-set folder to a rule set that may be used, or the reasons why not. */
import { readTree } from "../../language/text/tree.js";
import { readRules, ruleShape, type ReadRules, type RuleTree } from "./read.js";
import { verify, type Surroundings } from "./verify.js";
import type { ReadSet, RuleFile, SetProblem } from "./types.js";

/** Reads and checks a folder's files. Files are taken in the order of their paths. */
export function loadRuleSet(files: readonly RuleFile[], around: Surroundings): ReadSet {
  const sorted = byPath(files);
  return checked(readRules(treesOf(sorted)), sorted[0]?.path, around);
}

/** `first`: the file in which what has no place is said to be. */
function checked(read: ReadRules, first: string | undefined, around: Surroundings): ReadSet {
  const { set, head, problems } = read;
  const all = [...problems, ...verify(set, head, around)]
    .map((p) => (p.path === "" && first !== undefined ? { ...p, path: first } : p))
    .sort(byPlace);
  return { set: all.length === 0 ? set : undefined, partial: set, problems: all };
}

const byPath = (files: readonly RuleFile[]): readonly RuleFile[] =>
  [...files].sort((a, b) => (a.path < b.path ? -1 : a.path > b.path ? 1 : 0));

/** The trees one by one: the rules of a file are read while its tree is at hand, and the tree is not kept. */
function* treesOf(files: readonly RuleFile[]): Iterable<RuleTree> {
  for (const f of files) yield { path: f.path, tree: readTree(f.text, ruleShape) };
}

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
  const sorted = byPath(files);
  const read = readRules(treesOf(sorted));
  return read.problems.length === 0
    ? { set: read.set, partial: read.set, problems: [] }
    : checked(read, sorted[0]?.path, around);
}
