/** Reads the files of a rule-set folder into a rule set. Checking whether it may be used is `verify.ts`; `load.ts` does both. */
import type { Entry, Tree } from "../../language/text/types.js";
import type { Shape } from "../../language/text/tree.js";
import { resolveBands } from "./read-bands.js";
import { readChanges, readDefault, readHead, readLimit, readSource, type Head } from "./read-values.js";
import { readRule } from "./read-rule.js";
import { Page } from "./statements.js";
import type {
  Change,
  DefaultValue,
  LimitValue,
  Rule,
  RulePlace,
  RuleSet,
  SetProblem,
  Source,
} from "./types.js";

/** For `readTree`: these stand only at the top of a rule file. */
export const ruleShape: Shape = {
  topOnly: new Set(["ruleset", "source", "limit", "default", "rule", "changes"]),
};

export interface RuleTree {
  readonly path: string;
  readonly tree: Tree;
}

type Made =
  | { readonly is: "head"; readonly head: Head; readonly at: RulePlace }
  | { readonly is: "source"; readonly source: Source }
  | { readonly is: "limit"; readonly limit: LimitValue }
  | { readonly is: "default"; readonly value: DefaultValue }
  | { readonly is: "rule"; readonly rule: Rule }
  | { readonly is: "changes"; readonly changes: readonly Change[] };

interface Kept {
  readonly path: string;
  readonly line: number;
  readonly made: Made | undefined;
  readonly problems: readonly SetProblem[];
}

/** Reading an entry again gives the same, so what was read is kept with it. */
const kept = new WeakMap<Entry, Kept>();

export interface ReadRules {
  readonly set: RuleSet;
  /** Where the head of the set stands. */
  readonly head: RulePlace | undefined;
  readonly problems: readonly SetProblem[];
}

/**
 * What could be read, and what could not. Never throws. `read`: how an entry is read; `readKept` where the same entries may be
 * read again.
 */
export function readRules(trees: Iterable<RuleTree>, read: typeof readEntry = readEntry): ReadRules {
  const problems: SetProblem[] = [];
  const made: Made[] = [];
  for (const { path, tree } of trees) {
    for (const p of tree.problems) problems.push({ path, ...p });
    for (const { entry, line } of tree.entries) {
      for (const p of entry.problems) problems.push({ path, ...p, line: line + p.line });
      const found = read(path, entry, line);
      problems.push(...found.problems);
      if (found.made) made.push(found.made);
    }
  }
  return { ...assemble(made, problems), problems };
}

/** Reads an entry, unless it has been read before in this place. */
export function readKept(path: string, entry: Entry, line: number): Kept {
  let found = kept.get(entry);
  if (!found || found.path !== path || found.line !== line)
    kept.set(entry, (found = readEntry(path, entry, line)));
  return found;
}

function readEntry(path: string, entry: Entry, line: number): Kept {
  const page = new Page(path, entry, line);
  const made = readTop(page);
  return { path, line, made, problems: page.problems };
}

function readTop(page: Page): Made | undefined {
  const node = page.entry.node;
  const key = page.key(node);
  if (key === undefined) return undefined;
  if (!ruleShape.topOnly.has(key)) {
    page.unknownKey(node, key, "A rule file", [...ruleShape.topOnly]);
    return undefined;
  }
  if (!node.children) {
    page.problem("rules/statement", node, `${key} is a block: what belongs to it stands in { }.`);
    return undefined;
  }
  switch (key) {
    case "ruleset": {
      const head = readHead(page, node);
      return head && { is: "head", head, at: page.place(node) };
    }
    case "source": {
      const source = readSource(page, node);
      return source && { is: "source", source };
    }
    case "limit": {
      const limit = readLimit(page, node);
      return limit && { is: "limit", limit };
    }
    case "default": {
      const value = readDefault(page, node);
      return value && { is: "default", value };
    }
    case "rule": {
      const rule = readRule(page, node);
      return rule && { is: "rule", rule };
    }
    default:
      return { is: "changes", changes: readChanges(page, node) };
  }
}

function assemble(
  made: readonly Made[],
  problems: SetProblem[],
): { set: RuleSet; head: RulePlace | undefined } {
  let head: { head: Head; at: RulePlace } | undefined;
  const sources = new Map<string, Source>();
  const limits = new Map<string, LimitValue>();
  const defaults = new Map<string, DefaultValue>();
  const rules = new Map<string, Rule>();
  const changes: Change[] = [];
  const add = <T extends { readonly at: RulePlace }>(
    to: Map<string, T>,
    name: string,
    value: T,
    what: string,
  ): void => {
    const before = to.get(name);
    if (before)
      problems.push(
        problemAt(
          value.at,
          "rules/given-twice",
          `The ${what} ${name} is written twice: also in ${before.at.path} on line ${before.at.line + before.at.place.line + 1}.`,
        ),
      );
    else to.set(name, value);
  };
  for (const m of made) {
    if (m.is === "head") {
      if (head)
        problems.push(
          problemAt(
            m.at,
            "rules/given-twice",
            `This rule set has a second head: the first is in ${head.at.path} on line ${head.at.line + 1}.`,
          ),
        );
      else head = m;
    } else if (m.is === "source") add(sources, m.source.name, m.source, "source");
    else if (m.is === "limit") add(limits, m.limit.name, m.limit, "limit");
    else if (m.is === "default") add(defaults, m.value.name, m.value, "default");
    else if (m.is === "rule") add(rules, m.rule.id, m.rule, "rule");
    else changes.push(...m.changes);
  }
  const resolved = [...rules.values()].map((rule, order) => inSet(rule, order, limits, problems));
  const { name, version, title, issued, cautions } = head?.head ?? {
    name: "",
    version: "",
    title: "",
    issued: undefined,
    cautions: [],
  };
  const set: RuleSet = {
    name,
    version,
    title,
    ...(issued !== undefined && { issued }),
    cautions,
    sources,
    limits,
    defaults,
    rules: resolved,
    changes,
  };
  return { set, head: head?.at };
}

/** A rule with its number in the order of the set, and the values of the limits that its bands name. */
function inSet(
  rule: Rule,
  order: number,
  limits: ReadonlyMap<string, LimitValue>,
  problems: SetProblem[],
): Rule {
  if (rule.judged.is !== "bands") return { ...rule, order };
  const bands = resolveBands(
    rule.judged.bands,
    (name) => {
      const limit = limits.get(name);
      return limit && { value: limit.interval.nominal, dimension: limit.dimension, unit: limit.unit };
    },
    (name, band) =>
      problems.push(problemAt(band.at, "rules/unknown-name", `There is no limit called "${name}".`)),
  );
  const judged = bands === rule.judged.bands ? rule.judged : { ...rule.judged, bands };
  return { ...rule, order, judged };
}

export function problemAt(
  at: RulePlace,
  rule: string,
  message: string,
  more: Partial<SetProblem> = {},
): SetProblem {
  return {
    path: at.path,
    line: at.line + at.place.line,
    start: at.place.start,
    end: at.place.end,
    rule,
    message,
    ...more,
  };
}
