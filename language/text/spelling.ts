/** The one spelling of a line: its pieces as they are written, with where each stood, so that columns set by hand can be kept. */
import { blockSpec, setupVocabulary } from "../vocabulary/index.js";
import { oneSpelling } from "../vocabulary/spelling.js";
import type { BlockSpec, KeySpec, Shape } from "../vocabulary/types.js";
import { readStep, spell } from "../vocabulary/verbs.js";
import { atomText } from "./atom.js";
import { withoutMargins } from "./tokens.js";
import type { Atom, Line, Statement, Word } from "./types.js";

/** Part of a line that is never broken. */
export interface Piece {
  readonly text: string;
  /** Stands directly behind the piece before it. */
  readonly glued: boolean;
  /** Column in the line as it was typed; missing where the spelling is not the writer's own. */
  readonly column?: number;
  /** Blanks in front of it as it was typed. */
  readonly gap: number;
}

/** A line that could not be read: its text in one piece. */
export function plainPieces(line: Line): { readonly pieces: readonly Piece[] } {
  const text = withoutMargins(line.text);
  return { pieces: text === "" ? [] : [{ text, glued: true, gap: 0 }] };
}

/** The pieces of a line that was read. `open`: the kinds of the blocks around it. `setup`: whether the words of setups are meant. */
export function piecesOf(
  line: Line,
  open: readonly string[],
  kindOf: (s: Statement) => string,
  setup: boolean,
): Piece[] {
  const pieces: Piece[] = [];
  let end = 0;
  const put = (text: string, glued: boolean, start?: number, ends?: number): void => {
    const column = start !== undefined && { column: start };
    pieces.push({ text, glued: glued || pieces.length === 0, gap: (start ?? end) - end, ...column });
    if (ends !== undefined) end = ends;
  };
  // Only the innermost blocks of this line are followed; those around it are looked up from the end.
  const own: string[] = [];
  let closed = 0;
  let last: "" | "statement" | "open" | "close" = "";
  for (const item of line.items) {
    if (item.type === "close") {
      put("}", false, item.start, item.end);
      if (own.pop() === undefined) closed++;
      last = "close";
      continue;
    }
    if (last === "statement" || last === "close") put(";", true, end, end + 1);
    const inside = own[own.length - 1] ?? open[open.length - 1 - closed];
    for (const p of statementPieces(item, inside, setup)) put(p.text, p.glued, p.start, p.end);
    if (item.opens) {
      put("{", false, line.text.indexOf("{", item.end), line.text.indexOf("{", item.end) + 1);
      own.push(kindOf(item));
      last = "open";
    } else last = "statement";
  }
  return pieces;
}

interface Written {
  readonly text: string;
  readonly glued: boolean;
  readonly start?: number;
  readonly end: number;
}

function statementPieces(s: Statement, inside: string | undefined, setup: boolean): Written[] {
  if (inside === "steps" && s.atoms.length > 0 && s.atoms.every((a) => a.type === "word")) {
    const step = readStep(s.atoms.map((a) => (a as { word: string }).word)).step;
    if (step) return [{ text: spell(step), glued: false, end: s.end }];
  }
  if (!setup)
    return s.atoms.map((atom, i) => ({
      text: spelling(atom, undefined),
      glued: isGlued(s.atoms, i),
      ...spot(atom),
    }));
  const block = inside === undefined ? undefined : blockSpec(inside);
  // At top level a word or two name a kind, `may change`, and are left as they are.
  const atoms = block ? oneSpelling(block, s.atoms) : s.atoms;
  const keys = block?.keys ?? (inside === undefined ? setupVocabulary.keys : {});
  const spec = specOf(s, atoms, keys);
  // Where the words are put in another order no column was the writer's.
  const moved = atoms.some((a, i) => i > 0 && a.start < atoms[i - 1]!.start);
  return atoms.map((atom, i) => ({
    text: i === 0 && atom.type === "word" ? keySpelling(atom, keys) : spelling(atom, spec),
    glued: isGlued(atoms, i),
    ...(moved ? { end: s.end } : spot(atom)),
  }));
}

const spot = (a: Atom): { start: number; end: number } => ({ start: a.start, end: a.end });

function isGlued(atoms: readonly Atom[], i: number): boolean {
  const atom = atoms[i]!;
  const before = atoms[i - 1];
  if (before === undefined) return false;
  if (atom.type === "mark" && (atom.mark === "," || atom.mark === ":" || atom.mark === ")")) return true;
  if (before.type !== "mark") return false;
  if (before.mark === "(") return true;
  // A time of day, `08:30`: numbers on both sides, typed without a blank.
  if (before.mark === ":")
    return (
      atom.type === "number" &&
      atoms[i - 2]?.type === "number" &&
      atoms[i - 2]!.end === before.start &&
      before.end === atom.start
    );
  return before.mark === "-" && signBefore(atoms, i);
}

/** A sign that can be no difference, or that was typed directly in front of what it may belong to. */
function signBefore(atoms: readonly Atom[], i: number): boolean {
  const before = atoms[i - 2];
  const starts = before === undefined || (before.type === "mark" && startsValue.has(before.mark));
  if (starts && isSize(atoms[i]!)) return true;
  return atoms[i - 1]!.end === atoms[i]!.start && (starts || before.type === "word");
}

/** Behind these a new value starts. */
const startsValue: ReadonlySet<string> = new Set([",", ":", "("]);
const isSize = (a: Atom): boolean => a.type === "number" || a.type === "measure";

/** A key or a kind in small letters; what is neither, as it was typed. */
function keySpelling(a: Word, keys: BlockSpec["keys"]): string {
  return Object.hasOwn(keys, a.word) || blockSpec(a.word) ? a.word : a.raw;
}

/** What a statement of a setup takes, if it is a key of the block in which it stands. */
function specOf(s: Statement, atoms: readonly Atom[], keys: BlockSpec["keys"]): KeySpec | undefined {
  const a = atoms[0];
  return a?.type === "word" && !s.opens && Object.hasOwn(keys, a.word) ? keys[a.word] : undefined;
}

/** The letter or sign between two sizes is written `by`; words of the vocabulary in small letters; codes as they were typed. */
function spelling(a: Atom, spec: KeySpec | undefined): string {
  if (a.type !== "word") return atomText(a);
  if (a.raw === "×" || (a.word === "by" && a.raw.toLowerCase() === "x")) return "by";
  return spec && !holdsCode(spec.shape) ? a.word : a.raw;
}

function holdsCode(shape: Shape): boolean {
  if (shape.is === "code") return true;
  if (shape.is === "list") return holdsCode(shape.item);
  if (shape.is === "either") return shape.shapes.some(holdsCode);
  return shape.is === "parts" && shape.parts.some((p) => holdsCode(p.shape));
}
