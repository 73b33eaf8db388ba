/** Rule files in the editor: what is wrong with them, and what a rule, a limit, a default, a source or a quantity is. */
import path from "node:path";
import {
  DiagnosticSeverity,
  MarkupKind,
  type Diagnostic,
  type Hover,
  type Position,
} from "vscode-languageserver-protocol";
import { showWithDoubt } from "../../language/quantity/show.js";
import { readTree } from "../../language/text/tree.js";
import type { Tree } from "../../language/text/types.js";
import { isPolicy } from "../../rules/engine/overlay.js";
import { readKept, readRules, ruleShape } from "../../rules/engine/read.js";
import type { LimitValue, RuleSet, SetProblem, Source } from "../../rules/engine/types.js";
import { quantities } from "../../rules/quantities/index.js";
import { stepFacts } from "../../rules/steps/facts.js";
import type { Workspace } from "../workspace/snapshot.js";
import { basesList, ruleSection } from "./hover-findings.js";
import { plain } from "./show.js";
import { hitAt, rangeOn } from "./where.js";

export interface RulePage {
  readonly path: string;
  readonly text: string;
  readonly tree: Tree;
  /** What could be read of the whole folder, or of this file alone where it lies in no folder of rule sets. */
  readonly set: RuleSet;
  readonly problems: readonly SetProblem[];
}

const trees = new Map<string, Tree>();

/** The page of a rule file with the text that the editor holds. */
export function rulePageOf(workspace: Workspace, file: string, text: string): RulePage {
  const tree = readTree(text, ruleShape, trees.get(file));
  trees.set(file, tree);
  const root = workspace.rootOf(file);
  const [name, version] = path.relative(path.join(root, "rules"), path.dirname(file)).split(path.sep);
  const folder =
    name !== undefined && version !== undefined && name !== ".."
      ? workspace.ruleSets.get(name, version, root)
      : undefined;
  if (folder?.folder === path.dirname(file)) {
    const own = path.basename(file);
    return {
      path: file,
      text,
      tree,
      set: folder.partial,
      problems: folder.problems.filter((p) => path.posix.basename(p.path) === own),
    };
  }
  if (isPolicy(tree)) {
    const { set, problems } = workspace.policyAt(file, text, root);
    return { path: file, text, tree, set, problems };
  }
  const alone = readRules([{ path: file, tree }], readKept);
  return { path: file, text, tree, set: alone.set, problems: alone.problems };
}

/** Forgets a file that the editor let go of. */
export const closeRulePage = (file: string): void => void trees.delete(file);

export function ruleDiagnostics(page: RulePage): Diagnostic[] {
  return page.problems.map((p) => ({
    range: rangeOn(p.line, p.start, p.end),
    severity: DiagnosticSeverity.Error,
    code: p.rule,
    source: "spanwise",
    message: p.message,
  }));
}

export function ruleHover(page: RulePage, position: Position): Hover | undefined {
  const hit = hitAt(page.tree, position);
  if (hit?.atom?.type !== "word") return undefined;
  const value = sectionOf(page.set, hit.atom.word);
  return value === undefined
    ? undefined
    : {
        contents: { kind: MarkupKind.Markdown, value },
        range: rangeOn(position.line, hit.atom.start, hit.atom.end),
      };
}

function sectionOf(set: RuleSet, word: string): string | undefined {
  const rule = set.rules.find((r) => r.id === word);
  if (rule) return ruleSection(set, rule);
  const limit = set.limits.get(word);
  if (limit) return valueSection("limit", limit, set);
  const value = set.defaults.get(word);
  if (value) return valueSection(value.tapeable ? "default that a tape can settle" : "default", value, set);
  const source = set.sources.get(word);
  if (source) return sourceSection(source);
  const quantity = quantities.find((q) => q.name === word);
  if (quantity)
    return `**${quantity.name}** — ${plain(quantity.says)}\n\n${plain(quantity.formula)}\n\n${plain(quantity.source)}`;
  const fact = stepFacts.get(word);
  return fact
    ? `**${fact.name}** — ${plain(fact.says)}${fact.choices ? `\n\nOne of: ${fact.choices.join(", ")}.` : ""}`
    : undefined;
}

function valueSection(what: string, v: LimitValue, set: RuleSet): string {
  return [
    `**${v.name}** — ${what}, ${plain(showWithDoubt(v.interval, v.dimension, v.unit))}`,
    plain(v.title),
    basesList(set, v.bases),
  ]
    .filter((l) => l !== "")
    .join("\n\n");
}

const sourceSection = (s: Source): string =>
  [
    `**${s.name}** — ${s.kind}`,
    `${plain(s.by)}: ${plain(s.title)}${s.publishedIn === undefined ? "" : `. ${plain(s.publishedIn)}`}${s.year === undefined ? "" : `, ${s.year}`}`,
    `Read on ${s.read}: ${s.extent.replaceAll("-", " ")}.`,
  ].join("\n\n");
