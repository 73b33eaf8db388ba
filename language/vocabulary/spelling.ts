/**
 * What people type for a key, and the one spelling of it: another word for it, two words for one (`top loaded`), the side first
 * (`left legrest removable`).
 */
import type { Atom, Word } from "../text/types.js";
import type { BlockSpec, KeySpec } from "./types.js";

interface Spellings {
  /** Every word that is read as a key or as a block inside, with that key or kind. */
  readonly words: ReadonlyMap<string, string>;
  /** First words of those that can be written in several. */
  readonly starts: ReadonlySet<string>;
}
const kept = new WeakMap<object, Spellings>();

function spellingsOf(spec: Pick<BlockSpec, "keys" | "blocks">): Spellings {
  let found = kept.get(spec.keys);
  if (!found) {
    const words = new Map<string, string>();
    for (const kind of Object.keys(spec.blocks ?? {})) words.set(kind, kind);
    for (const [key, k] of Object.entries(spec.keys)) for (const also of k.also ?? []) words.set(also, key);
    for (const key of Object.keys(spec.keys)) words.set(key, key);
    const starts = [...words.keys()].filter((w) => w.includes("-")).map((w) => w.split("-")[0]!);
    kept.set(spec.keys, (found = { words, starts: new Set(starts) }));
  }
  return found;
}

/** A key of which the first thing said is a side: `armrest left swing-away`. */
const sided = (k: KeySpec | undefined): boolean => k?.distinct === "side";

/** The most words that make one key: `rated load includes`. */
const longest = 3;

/** The atoms of a statement of this block with its key in the one spelling; the same array where nothing differs. */
export function oneSpelling(
  spec: Pick<BlockSpec, "keys" | "blocks">,
  atoms: readonly Atom[],
): readonly Atom[] {
  const [first, second] = atoms;
  if (first?.type !== "word") return atoms;
  const { words, starts } = spellingsOf(spec);
  if ((first.word === "left" || first.word === "right") && second?.type === "word") {
    const rest = keyFirst(words, starts, atoms.slice(1));
    const key = rest[0] as Word;
    if (Object.hasOwn(spec.keys, key.word) && sided(spec.keys[key.word]))
      return [key, first, ...rest.slice(1)];
  }
  return keyFirst(words, starts, atoms);
}

function keyFirst(
  words: ReadonlyMap<string, string>,
  starts: ReadonlySet<string>,
  atoms: readonly Atom[],
): readonly Atom[] {
  const first = atoms[0] as Word;
  if (starts.has(first.word))
    for (let n = Math.min(longest, atoms.length); n > 1; n--) {
      const said = atoms.slice(0, n);
      if (!said.every((a) => a.type === "word")) continue;
      const key = words.get(said.map((a) => a.word).join("-"));
      if (key !== undefined) return [renamed(first, key, said[n - 1]!.end), ...atoms.slice(n)];
    }
  const key = words.get(first.word);
  return key === undefined || key === first.word
    ? atoms
    : [renamed(first, key, first.end), ...atoms.slice(1)];
}

const renamed = (a: Word, word: string, end: number): Word => ({ ...a, word, raw: word, end });
