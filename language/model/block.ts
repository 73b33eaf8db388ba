/** Reads a block through the vocabulary: its name, its keys, the blocks inside it, its steps. */
import { unitNamed } from "../quantity/units.js";
import { says } from "../text/messages.js";
import { placeOfNode } from "../text/tree.js";
import type { Atom, LineProblem, Node, Word } from "../text/types.js";
import { setupVocabulary, smallWords } from "../vocabulary/index.js";
import { oneSpelling } from "../vocabulary/spelling.js";
import type { BlockSpec, KeySpec } from "../vocabulary/types.js";
import { readStep } from "../vocabulary/verbs.js";
import { readChange } from "./changes.js";
import { Keeping } from "./keeping.js";
import type { Notes } from "./notes.js";
import type { ChangeLine, StepLine, Thing, Value } from "./types.js";

type Values = { readonly [part: string]: Value | undefined };

/** Reads a block whose head has `used` words before its name. */
export function readBlock(notes: Notes, kind: string, spec: BlockSpec, node: Node, used: number): Thing {
  const named = nameOf(notes, kind, spec, node, used);
  const title = named.name === kind ? kind : `${kind} ${named.name}`;
  const keeping = new Keeping(notes, title);
  const inner: { [kind: string]: Thing[] } = {};
  const head = headParts(notes, spec, node, named.next);
  const steps: StepLine[] = [];
  const changes: ChangeLine[] = [];
  for (const child of node.children ?? []) {
    if (spec.steps) step(notes, child, steps);
    else if (spec.free) readChange(notes, child, changes);
    else member(notes, { kind, title, spec }, child, keeping, inner);
  }
  keeping.finish();
  missing(notes, spec, node, title, keeping);
  besides(notes, spec, title, keeping);
  oneOf(notes, spec, title, keeping);
  const { entry } = notes;
  const { where, before } = keeping;
  return {
    kind,
    name: named.name,
    values: { ...head, ...keeping.values },
    inner,
    ...(spec.steps && { steps }),
    ...(spec.free && { changes }),
    ...(Object.keys(before).length > 0 && { before }),
    entry,
    node,
    placeOf: (key) => placeOfNode(entry, (key !== undefined && where.get(key)) || node),
  };
}

function nameOf(
  notes: Notes,
  kind: string,
  spec: BlockSpec,
  node: Node,
  used: number,
): { name: string; next: number } {
  const a = node.statement.atoms[used];
  if (spec.name === "none") return { name: kind, next: used };
  if (a?.type !== "word") {
    if (spec.name !== "optional")
      notes.report(node, "form/name-missing", says["form/name-missing"]({ kind }));
    return { name: kind, next: used };
  }
  if (typeof spec.name === "object") {
    const { start, end } = a;
    notes.references.push({ name: a.word, kinds: spec.name.of, start, end, line: node.line });
    return { name: a.word, next: used + 1 };
  }
  if (smallWords.has(a.word) || unitNamed(a.word) || /[./]/.test(a.word))
    notes.report(node, "form/name-not-allowed", says["form/name-not-allowed"]({ text: a.raw }), [], a);
  return { name: a.word, next: used + 1 };
}

const headKeys = new WeakMap<BlockSpec, KeySpec>();
function headKey(spec: BlockSpec): KeySpec {
  let key = headKeys.get(spec);
  if (!key) headKeys.set(spec, (key = { shape: { is: "parts", parts: spec.head! }, help: spec.help }));
  return key;
}

function headParts(notes: Notes, spec: BlockSpec, node: Node, from: number): Values {
  const { atoms } = node.statement;
  if (spec.head) {
    const wanted = from < atoms.length || spec.head.some((p) => !p.optional);
    const value = wanted ? notes.value(node, atoms, from, headKey(spec), spec.help) : undefined;
    return typeof value === "object" && !Array.isArray(value) ? (value as Values) : {};
  }
  const left = atoms[from];
  if (left) {
    const line = notes.line(node);
    notes.report(
      node,
      "form/left-over",
      says["form/left-over"]({
        key: line.slice(atoms[0]!.start, left.start).trim(),
        text: line.slice(left.start, atoms[atoms.length - 1]!.end),
      }),
      [],
      { start: left.start, end: node.statement.end },
    );
  }
  return {};
}

interface Around {
  readonly kind: string;
  readonly title: string;
  readonly spec: BlockSpec;
}

function member(
  notes: Notes,
  around: Around,
  node: Node,
  keeping: Keeping,
  inner: { [kind: string]: Thing[] },
): void {
  const { spec, title } = around;
  const atoms = oneSpelling(spec, node.statement.atoms);
  const first = atoms[0];
  if (first?.type !== "word") return notes.wordExpected(node);
  const block = spec.blocks && Object.hasOwn(spec.blocks, first.word) ? spec.blocks[first.word] : undefined;
  if (node.children) return innerBlock(notes, around, node, first, block, inner);
  const key = Object.hasOwn(spec.keys, first.word) ? spec.keys[first.word] : undefined;
  if (!key) {
    if (block)
      notes.report(node, "form/block-needs-braces", says["form/block-needs-braces"]({ kind: first.word }));
    else
      notes.unknownWord(node, first.word, title, [
        ...Object.keys(spec.keys),
        ...Object.keys(spec.blocks ?? {}),
      ]);
    return;
  }
  const person = around.kind === "helper" || around.kind === "client";
  const value = notes.value(node, atoms, 1, key, `${first.word} of ${title}`, person);
  keeping.keep(first.word, key, value, node);
}

function innerBlock(
  notes: Notes,
  { spec, title }: Around,
  node: Node,
  first: Word,
  block: BlockSpec | undefined,
  inner: { [kind: string]: Thing[] },
): void {
  const kind = first.word;
  const before = inner[kind]?.[0];
  if (block?.once && before)
    notes.report(
      node,
      "form/block-twice",
      says["form/block-twice"]({ kind, where: title, line: before.node.line + 1 }),
      [],
      first,
    );
  else if (block) (inner[kind] ??= []).push(readBlock(notes, kind, block, node, wordsOf(node, first)));
  else if (Object.hasOwn(setupVocabulary.blocks, kind))
    notes.report(node, "form/block-not-here", says["form/block-not-here"]({ kind, where: title }), [], first);
  else notes.unknownWord(node, kind, title, Object.keys(spec.blocks ?? {}));
}

/** Of how many written words the kind consists: `drive wheel { }` is a drive-wheel. */
const wordsOf = (node: Node, kind: Atom): number =>
  node.statement.atoms.filter((a) => a.end <= kind.end).length;

function step(notes: Notes, node: Node, steps: StepLine[]): void {
  const { atoms } = node.statement;
  if (atoms.length === 0) return;
  if (node.children || atoms.some((a) => a.type !== "word")) return notes.wordExpected(node);
  const reading = readStep(atoms.map((a) => (a as Word).word));
  if (reading.step) steps.push({ step: reading.step, node });
  else {
    const text = notes.line(node).slice(node.statement.start, node.statement.end);
    const fixes = (reading.nearest ?? []).map((n) => ({ title: `Write ${n}`, text: n }));
    const nearest = reading.nearest?.[0];
    notes.report(node, "form/unknown-step", says["form/unknown-step"]({ text, nearest }), fixes);
  }
}

function missing(notes: Notes, spec: BlockSpec, node: Node, title: string, keeping: Keeping): void {
  const { start, end } = node.statement;
  for (const [key, k] of Object.entries(spec.keys))
    if (k.need === "required" && keeping.values[key] === undefined && !keeping.where.has(key))
      notes.report(
        node,
        "form/key-missing",
        says["form/key-missing"]({ key, where: title, help: k.help }),
        missingFix(key, node, notes.line(node)),
        { start, end },
      );
}

/** Keys that mislead where another one is not given with them. */
function besides(notes: Notes, spec: BlockSpec, title: string, keeping: Keeping): void {
  for (const [key, { beside }] of Object.entries(spec.keys)) {
    if (!beside || keeping.values[key] === undefined || keeping.where.has(beside.key)) continue;
    const node = keeping.where.get(key)!;
    const { end } = node.statement;
    const text = `; ${beside.key} unknown`;
    notes.report(
      node,
      "form/measure-both",
      says["form/measure-both"]({ key, other: beside.key, where: title, why: beside.why }),
      [{ title: `Write ${beside.key} unknown: it must still be measured`, text, start: end, end }],
    );
  }
}

/** Inserts `key unknown` as the first statement of the block, behind its brace. */
function missingFix(key: string, node: Node, line: string): LineProblem["fixes"] {
  const brace = line.indexOf("{", node.statement.end);
  if (!node.children || brace < 0) return [];
  const margin = line.match(/^\s*/)![0];
  const rest = line.slice(brace + 1);
  const alone = /^\s*(#.*)?$/.test(rest);
  const text = alone ? `${rest}\n${margin}  ${key} unknown` : ` ${key} unknown;`;
  const [start, end] = alone ? [brace + 1, line.length] : [brace + 1, brace + 1];
  return [{ title: `Write ${key} unknown: it must still be measured`, text, start, end }];
}

function oneOf(notes: Notes, spec: BlockSpec, title: string, keeping: Keeping): void {
  const [first, second] = (spec.oneOf ?? []).filter((key) => keeping.values[key] !== undefined);
  if (first === undefined || second === undefined) return;
  const node = keeping.where.get(second)!;
  const line = keeping.where.get(first)!.line + 1;
  notes.report(
    node,
    "form/one-of-these",
    says["form/one-of-these"]({ key: second, other: first, where: title, line }),
  );
}
