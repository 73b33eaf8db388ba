/** Every place of a setup where a declared thing is named: what definition, references and highlights rest on. */
import type { Position, Range } from "vscode-languageserver-protocol";
import { readEntry } from "../../language/model/entry.js";
import type { Atom, Entry, Tree } from "../../language/text/types.js";
import { setupVocabulary } from "../../language/vocabulary/index.js";
import { kindOf, rangeOn, statementsOf } from "./where.js";

export interface Mention {
  readonly name: string;
  readonly range: Range;
  /** The head of the block that declares it. */
  readonly declares: boolean;
}

type Inside = Omit<Mention, "range"> & {
  readonly line: number;
  readonly start: number;
  readonly end: number;
};
const kept = new WeakMap<Entry, readonly Inside[]>();

/** `known`: names of declared things, for places where any word may stand (`accept`, the object of a step). */
export function mentionsIn(tree: Tree, known: (name: string) => boolean): Mention[] {
  const found: Mention[] = [];
  for (const { entry, line } of tree.entries) {
    let own = kept.get(entry);
    if (!own) kept.set(entry, (own = inEntry(entry)));
    for (const m of own)
      if (m.declares || known(m.name))
        found.push({ name: m.name, declares: m.declares, range: rangeOn(line + m.line, m.start, m.end) });
  }
  return found;
}

function inEntry(entry: Entry): Inside[] {
  const found: Inside[] = [];
  const add = (a: Atom | undefined, line: number, declares: boolean): void => {
    if (a?.type === "word") found.push({ name: a.word, line, start: a.start, end: a.end, declares });
  };
  const reading = readEntry(entry);
  for (const r of reading.references)
    found.push({ name: r.name, line: r.line, start: r.start, end: r.end, declares: false });
  const head = kindOf(entry.node.statement.atoms);
  if (!head) return found;
  const spec = Object.hasOwn(setupVocabulary.blocks, head.kind)
    ? setupVocabulary.blocks[head.kind]
    : undefined;
  const { atoms } = entry.node.statement;
  if (spec && entry.node.children && (spec.name === "required" || spec.name === "optional"))
    add(atoms[head.used], entry.node.line, true);
  if (head.kind === "accept" || head.kind === "expect") {
    const lead = head.kind === "accept" ? "at" : "for";
    add(atoms[atoms.findIndex((a) => a.type === "word" && a.word === lead) + 1], entry.node.line, false);
  }
  if (head.kind === "from") {
    const use = atoms.findIndex((a) => a.type === "word" && a.word === "use");
    if (use > 0) for (const a of atoms.slice(use + 1)) add(a, entry.node.line, false);
  }
  for (const { node, around } of statementsOf(entry.node)) {
    const kind = around.map((n) => kindOf(n.statement.atoms)?.kind);
    if (kind[kind.length - 1] === "steps")
      add(node.statement.atoms[node.statement.atoms.length - 1], node.line, false);
  }
  return found;
}

export const mentionAt = (mentions: readonly Mention[], p: Position): Mention | undefined =>
  mentions.find(
    (m) =>
      m.range.start.line === p.line &&
      m.range.start.character <= p.character &&
      p.character <= m.range.end.character,
  );
