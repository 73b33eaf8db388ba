/**
 * Reads a policy file.
 *
 *     policy north-clinic { title "Policy of the north clinic"; for home-transfer 2026.1; by "clinical lead" }
 *     limit close-gap 2 in { because "..." }
 *     rule gap/without-board { examples { board.used no, 2 in: holds ... } }
 *     rule person/no-belt { level caution to stop }
 *     rule room/door-narrow { off; because "..."; approved-by "clinical lead"; until 2027-03-01 }
 */
import { atomText } from "../../language/text/atom.js";
import { readTree, type Shape } from "../../language/text/tree.js";
import type { Node, Tree } from "../../language/text/types.js";
import type { Level } from "../types.js";
import { readBands } from "./read-bands.js";
import { readExamples } from "./read-examples.js";
import { levels } from "./read-rule.js";
import { nameOf, readInterval } from "./read-values.js";
import { Page } from "./statements.js";
import type { Policy, PolicyHead, PolicyLimit, PolicyRule, Reasons } from "./overlay-types.js";
import type { RuleFile, SetProblem } from "./types.js";

/** For `readTree`: these stand only at the top of a policy file. */
export const policyShape: Shape = { topOnly: new Set(["policy", "limit", "rule"]) };

/** Whether a file of rules is a policy: its first block says so. */
export function isPolicy(tree: Tree): boolean {
  const first = tree.entries[0]?.entry.node.statement.atoms[0];
  return first?.type === "word" && first.word === "policy";
}

/** What could be read of it, and what could not. Never throws. */
export function readPolicy(file: RuleFile, tree: Tree = readTree(file.text, policyShape)): Policy {
  const { path } = file;
  const problems: SetProblem[] = [...foreignLetters(path, tree)];
  let head: PolicyHead | undefined;
  const limits = new Map<string, PolicyLimit>();
  const rules = new Map<string, PolicyRule>();
  for (const p of tree.problems) problems.push({ path, ...p });
  for (const { entry, line } of tree.entries) {
    for (const p of entry.problems) problems.push({ path, ...p, line: line + p.line });
    const page = new Page(path, entry, line);
    const node = entry.node;
    const key = page.key(node);
    const twice = (what: string): void =>
      page.problem("rules/given-twice", node, `${what} stands twice in this policy.`);
    if (key !== undefined && !policyShape.topOnly.has(key))
      page.unknownKey(node, key, "A policy", [...policyShape.topOnly]);
    else if (key !== undefined && !node.children)
      page.problem("rules/statement", node, `${key} is a block: what belongs to it stands in { }.`);
    else if (key === "policy") {
      if (head) twice("policy");
      else head = readHead(page, node);
    } else if (key === "limit") {
      const limit = readLimit(page, node);
      if (limit && limits.has(limit.name)) twice(`The limit ${limit.name}`);
      else if (limit) limits.set(limit.name, limit);
    } else if (key === "rule") {
      const rule = readRule(page, node);
      if (rule && rules.has(rule.id)) twice(`The rule ${rule.id}`);
      else if (rule) rules.set(rule.id, rule);
    }
    problems.push(...page.problems);
  }
  return { head, limits: [...limits.values()], rules: [...rules.values()], problems };
}

/**
 * Letters of other alphabets outside of quotes and comments: a name written with them looks like another name and is not it.
 * No name of a rule set has any.
 */
function foreignLetters(path: string, tree: Tree): SetProblem[] {
  return tree.lines.flatMap(({ text }, line) => {
    const bare = text.replace(/"[^"]*"|“[^”]*”|#.*$/gu, (part) => " ".repeat(part.length));
    const found = [...bare.matchAll(/[^\s{};]+/gu)].find((m) => foreignIn(m[0]) !== undefined);
    if (!found) return [];
    const letter = foreignIn(found[0])!;
    return [
      {
        path,
        line,
        start: found.index,
        end: found.index + found[0].length,
        rule: "rules/homograph",
        message: `"${found[0]}" holds the letter "${letter}", which is not one of a to z. It may look like the name of a rule or limit and is not it. Type the name anew.`,
      },
    ];
  });
}

const foreignIn = (word: string): string | undefined =>
  [...word].find((c) => /\p{L}/u.test(c) && !/[A-Za-zµ]/.test(c));

function readHead(page: Page, node: Node): PolicyHead | undefined {
  const name = nameOf(page, node, "policy");
  const sets: { name: string; version: string }[] = [];
  let title: string | undefined;
  let by: string | undefined;
  let issued: string | undefined;
  for (const s of node.children ?? []) {
    const key = page.key(s);
    if (key === "title") title = page.text(s);
    else if (key === "by") by = page.text(s);
    else if (key === "issued") issued = page.date(s);
    else if (key === "for") {
      const [, set, version] = s.statement.atoms;
      const raw = version?.type === "number" || version?.type === "word" ? version.raw : undefined;
      if (set?.type === "word" && raw !== undefined) sets.push({ name: set.word, version: raw });
      else
        page.problem("rules/statement", s, "for names a rule set and its version: for home-transfer 2026.1.");
    } else if (key !== undefined) page.unknownKey(s, key, "A policy", ["title", "for", "by", "issued"]);
  }
  if (!title) page.problem("rules/missing", node, "This policy has no title.");
  if (sets.length === 0)
    page.problem(
      "rules/missing",
      node,
      "This policy does not say for which rule set it is: for home-transfer 2026.1.",
    );
  if (!name || !title) return undefined;
  return {
    name,
    title,
    for: sets,
    ...(by !== undefined && { by }),
    ...(issued !== undefined && { issued }),
    at: page.place(node),
  };
}

const reasonKeys = ["because", "approved-by", "until"];

/** Takes a statement that gives a reason; false where it is another one. */
function takeReason(
  page: Page,
  s: Node,
  key: string,
  into: { -readonly [K in keyof Reasons]: Reasons[K] },
): boolean {
  if (!reasonKeys.includes(key)) return false;
  const text = key === "until" ? page.date(s) : page.text(s);
  if (text === undefined || text.trim() === "") return true;
  if (key === "until") into.until = text;
  else if (key === "because") into.because = text;
  else into.approvedBy = text;
  return true;
}

function readLimit(page: Page, node: Node): PolicyLimit | undefined {
  const name = nameOf(page, node, "limit");
  const read = readInterval(node.statement.atoms.slice(2), "number");
  if (typeof read === "string") page.problem("rules/value-expected", node, `limit ${name ?? ""}: ${read}`);
  else if (read.interval.low !== read.interval.high)
    page.problem("rules/value-expected", node, "A limit is one value, not a range.");
  const reasons: Reasons = {};
  for (const s of node.children ?? []) {
    const key = page.key(s);
    if (key !== undefined && !takeReason(page, s, key, reasons))
      page.unknownKey(s, key, "A limit of a policy", reasonKeys);
  }
  if (!name || typeof read === "string") return undefined;
  return {
    name,
    interval: read.interval,
    dimension: read.dimension,
    unit: read.unit,
    ...reasons,
    at: page.place(node),
  };
}

function readRule(page: Page, node: Node): PolicyRule | undefined {
  const id = nameOf(page, node, "rule");
  const reasons: Reasons = {};
  const changed: { from: Level; to: Level; at: PolicyRule["at"] }[] = [];
  let off = false;
  let bands: PolicyRule["bands"];
  let examples: PolicyRule["examples"];
  for (const s of node.children ?? []) {
    const key = page.key(s);
    if (key === undefined || takeReason(page, s, key, reasons)) continue;
    if (key === "off") {
      off = true;
      const more = s.statement.atoms[1];
      if (more) page.problem("rules/left-over", s, `"${atomText(more)}" is left over here.`, more);
    } else if (key === "level") {
      const level = readLevel(page, s);
      if (level) changed.push({ ...level, at: page.place(s) });
    } else if (key === "bands") bands = { ...readBands(page, s), at: page.place(s) };
    else if (key === "examples") examples = readExamples(page, s);
    else page.unknownKey(s, key, "A rule of a policy", ["level", "bands", "off", "examples", ...reasonKeys]);
  }
  if (!id) return undefined;
  if (off && (changed.length > 0 || bands))
    page.problem("rules/statement", node, "A rule that is switched off cannot be changed as well.");
  return {
    id,
    off,
    levels: changed,
    ...(bands && { bands }),
    ...(examples && { examples }),
    ...reasons,
    at: page.place(node),
  };
}

/** `level caution to stop`: wherever the rule says the first, it says the second. */
function readLevel(page: Page, s: Node): { from: Level; to: Level } | undefined {
  const [, from, to, level, more] = s.statement.atoms;
  const isLevel = (a: typeof from): a is typeof a & { type: "word"; word: Level } =>
    a?.type === "word" && levels.includes(a.word as Level);
  if (isLevel(from) && to?.type === "word" && to.word === "to" && isLevel(level) && !more)
    return { from: from.word, to: level.word };
  page.problem("rules/statement", s, "level takes two of advice, caution, stop: level caution to stop.");
  return undefined;
}
