/**
 * Reads one entry (a top-level statement or block) through the vocabulary. What comes out depends on the entry's text alone,
 * so it is kept with the entry; names are resolved later, when all entries and files are known.
 */
import { says } from "../text/messages.js";
import { placeOfNode } from "../text/tree.js";
import type { Atom, Entry, Place } from "../text/types.js";
import { setupVocabulary } from "../vocabulary/index.js";
import { readBlock } from "./block.js";
import { Notes, type LocatedProblem, type LocatedReference } from "./notes.js";
import { personalData } from "./personal.js";
import type { Thing, Value } from "./types.js";
import { wallProblems } from "./walls.js";

export type { LocatedProblem } from "./notes.js";

export interface EntryReading {
  /** For a block. */
  readonly thing?: Thing;
  /** For a statement that stands alone. */
  readonly statement?: { readonly key: string; readonly value: Value; readonly place: Place };
  readonly problems: readonly LocatedProblem[];
  readonly references: readonly LocatedReference[];
}

const kept = new WeakMap<Entry, EntryReading>();

/** What an entry says. The same object for the same entry. */
export function readEntry(entry: Entry): EntryReading {
  let reading = kept.get(entry);
  if (!reading) kept.set(entry, (reading = read(entry)));
  return reading;
}

/** Spelling of a kind in two words: `may change`. */
const kindOf = (atoms: readonly Atom[]): { word: string; used: number } | undefined => {
  const [a, b] = atoms;
  if (a?.type !== "word") return undefined;
  if (a.word === "may" && b?.type === "word" && b.word === "change") return { word: "may-change", used: 2 };
  return { word: a.word, used: 1 };
};

const { blocks, keys } = setupVocabulary;

function read(entry: Entry): EntryReading {
  const notes = new Notes(entry);
  const said = readHead(entry, notes);
  notes.problems.push(...personalData(entry.node));
  if (said.thing?.kind === "room") notes.problems.push(...wallProblems(said.thing));
  return { ...said, problems: notes.problems, references: notes.references };
}

function readHead(entry: Entry, notes: Notes): Pick<EntryReading, "thing" | "statement"> {
  const { node } = entry;
  const head = kindOf(node.statement.atoms);
  if (!head) {
    notes.wordExpected(node);
    return {};
  }
  const block = Object.hasOwn(blocks, head.word) ? blocks[head.word] : undefined;
  const key = Object.hasOwn(keys, head.word) ? keys[head.word] : undefined;
  if (block && node.children) return { thing: readBlock(notes, head.word, block, node, head.used) };
  if (block && !key) {
    const { end } = node.statement;
    notes.report(node, "form/block-needs-braces", says["form/block-needs-braces"]({ kind: head.word }), [
      { title: "Add { }", text: " { }", start: end, end },
    ]);
    return {};
  }
  if (key && !node.children) {
    const value = notes.value(node, node.statement.atoms, head.used, key, head.word);
    return value === undefined
      ? {}
      : { statement: { key: head.word, value, place: placeOfNode(entry, node) } };
  }
  notes.unknownWord(node, head.word, "a setup", [...Object.keys(blocks), ...Object.keys(keys)]);
  return {};
}
