/**
 * Reads one entry (a top-level statement or block) through the vocabulary. What comes out depends on the entry's text alone,
 * so it is kept with the entry; names are resolved later, when all entries and files are known.
 */
import { says } from "../text/messages.js";
import { nearest } from "../text/nearest.js";
import { placeOfNode } from "../text/tree.js";
import type { Atom, Entry, LineProblem, Node, Place, Statement } from "../text/types.js";
import { unitNamed } from "../quantity/units.js";
import { setupVocabulary, smallWords } from "../vocabulary/index.js";
import type { BlockSpec, KeySpec, Part } from "../vocabulary/types.js";
import { readStep } from "../vocabulary/verbs.js";
import { personalData } from "./personal.js";
import type { StepLine, Thing, Value } from "./types.js";
import { readValue, unknownValue, type Reference, type ValueReading } from "./value.js";

export type LocatedProblem = LineProblem & { readonly line: number };

export interface EntryReading {
  /** For a block. */
  readonly thing?: Thing;
  /** For a statement that stands alone. */
  readonly statement?: { readonly key: string; readonly value: Value; readonly place: Place };
  readonly problems: readonly LocatedProblem[];
  readonly references: readonly (Reference & { readonly line: number })[];
}

const kept = new WeakMap<Entry, EntryReading>();

/** What an entry says. The same object for the same entry. */
export function readEntry(entry: Entry): EntryReading {
  let reading = kept.get(entry);
  if (!reading) kept.set(entry, (reading = new EntryReader(entry).read()));
  return reading;
}

/** Values by statement, so that a line that did not change gives the same value objects when its block is read again. */
const values = new WeakMap<Statement, Map<KeySpec | Part, ValueReading>>();
function valueOf(
  statement: Statement,
  from: number,
  spec: KeySpec | Part,
  key: string,
  person: boolean,
): ValueReading {
  let byKey = values.get(statement);
  if (!byKey) values.set(statement, (byKey = new Map()));
  let reading = byKey.get(spec);
  if (!reading)
    byKey.set(spec, (reading = readValue(statement.atoms, from, spec.shape, key, statement.end, person)));
  return reading;
}

/** Spelling of a kind in two words: `may change`. */
const kindOf = (atoms: readonly Atom[]): { word: string; used: number } | undefined => {
  const [a, b] = atoms;
  if (a?.type !== "word") return undefined;
  if (a.word === "may" && b?.type === "word" && b.word === "change") return { word: "may-change", used: 2 };
  return { word: a.word, used: 1 };
};

class EntryReader {
  private readonly problems: LocatedProblem[];
  private readonly references: (Reference & { line: number })[] = [];

  constructor(private readonly entry: Entry) {
    this.problems = [...entry.problems];
  }

  read(): EntryReading {
    const { node } = this.entry;
    const done = { problems: this.problems, references: this.references };
    const head = kindOf(node.statement.atoms);
    if (!head) {
      this.wordExpected(node);
      return done;
    }
    const block = Object.hasOwn(setupVocabulary.blocks, head.word)
      ? setupVocabulary.blocks[head.word]
      : undefined;
    const key = Object.hasOwn(setupVocabulary.keys, head.word) ? setupVocabulary.keys[head.word] : undefined;
    if (block && (node.children || !key)) {
      if (!node.children)
        this.report(node, "form/block-needs-braces", says["form/block-needs-braces"]({ kind: head.word }), [
          { title: "Add { }", text: " { }", start: node.statement.end, end: node.statement.end },
        ]);
      else return { thing: this.block(head.word, block, node, head.used), ...done };
    } else if (key && !node.children) {
      const reading = this.value(node, head.used, key, head.word);
      if (reading !== undefined)
        return {
          statement: { key: head.word, value: reading, place: placeOfNode(this.entry, node) },
          ...done,
        };
    } else
      this.unknownWord(node, head.word, "a setup", [
        ...Object.keys(setupVocabulary.blocks),
        ...Object.keys(setupVocabulary.keys),
      ]);
    return done;
  }

  private report(
    node: Node,
    rule: string,
    message: string,
    fixes: LineProblem["fixes"] = [],
    span: { start: number; end: number } = node.statement,
  ): void {
    this.problems.push({ rule, message, fixes, start: span.start, end: span.end, line: node.line });
  }

  private wordExpected(node: Node): void {
    const first = node.statement.atoms[0];
    // A statement without atoms was already reported where its line was read.
    if (first)
      this.report(
        node,
        "form/word-expected",
        says["form/word-expected"]({ text: this.lines(node).slice(first.start, first.end) }),
        [],
        first,
      );
  }
  private lines(node: Node): string {
    return this.entry.lines[node.line]!.text;
  }

  private unknownWord(node: Node, word: string, where: string, words: readonly string[]): void {
    const near = nearest(word, words);
    const first = node.statement.atoms[0]!;
    this.report(
      node,
      "form/unknown-word",
      says["form/unknown-word"]({ word, where, nearest: near }),
      near ? [{ title: `Write ${near}`, text: near }] : [],
      first,
    );
  }

  private value(
    node: Node,
    from: number,
    spec: KeySpec | Part,
    key: string,
    person = false,
  ): Value | undefined {
    const reading = valueOf(node.statement, from, spec, key, person);
    for (const p of reading.problems) this.problems.push({ ...p, line: node.line });
    for (const r of reading.references) this.references.push({ ...r, line: node.line });
    return reading.value;
  }

  /** Reads a block whose head has `used` words before its name. */
  private block(kind: string, spec: BlockSpec, node: Node, used: number): Thing {
    const { statement } = node;
    const named = this.nameOf(kind, spec, node, used);
    const keyValues: { [key: string]: Value | undefined } = {};
    const inner: { [kind: string]: Thing[] } = {};
    const where = new Map<string, Node>();
    for (const [part, value] of Object.entries(this.headParts(spec, node, named.next)))
      keyValues[part] = value;
    const title = named.name === kind ? kind : `${kind} ${named.name}`;
    const steps: StepLine[] = [];
    const free: Node[] = [];
    for (const child of node.children ?? []) {
      if (spec.steps) this.step(child, steps);
      else if (spec.free) free.push(child);
      else this.member(kind, title, spec, child, keyValues, inner, where);
    }
    for (const [key, k] of Object.entries(spec.keys))
      if (k.need === "required" && keyValues[key] === undefined && !where.has(key))
        this.report(
          node,
          "form/key-missing",
          says["form/key-missing"]({ key, where: title, help: k.help }),
          missingFix(key, node, this.lines(node)),
          headSpan(statement),
        );
    const entry = this.entry;
    return {
      kind,
      name: named.name,
      values: keyValues,
      inner,
      ...(spec.steps && { steps }),
      ...(spec.free && { free }),
      entry,
      node,
      placeOf: (key) => placeOfNode(entry, (key !== undefined && where.get(key)) || node),
    };
  }

  private nameOf(kind: string, spec: BlockSpec, node: Node, used: number): { name: string; next: number } {
    const a = node.statement.atoms[used];
    if (spec.name === "none") return { name: kind, next: used };
    const isName = a?.type === "word";
    if (!isName) {
      if (spec.name !== "optional")
        this.report(node, "form/name-missing", says["form/name-missing"]({ kind }));
      return { name: kind, next: used };
    }
    if (typeof spec.name === "object") {
      this.references.push({
        name: a.word,
        kinds: spec.name.of,
        start: a.start,
        end: a.end,
        line: node.line,
      });
      return { name: a.word, next: used + 1 };
    }
    if (smallWords.has(a.word) || unitNamed(a.word) || /[./]/.test(a.word))
      this.report(node, "form/name-not-allowed", says["form/name-not-allowed"]({ text: a.raw }), [], a);
    return { name: a.word, next: used + 1 };
  }

  private headParts(spec: BlockSpec, node: Node, from: number): { [part: string]: Value | undefined } {
    const { atoms } = node.statement;
    if (spec.head) {
      const shape = headKey(spec);
      const value =
        from < atoms.length || spec.head.some((p) => !p.optional)
          ? this.value(node, from, shape, spec.help)
          : undefined;
      return typeof value === "object" && !Array.isArray(value)
        ? (value as { [part: string]: Value | undefined })
        : {};
    }
    const left = atoms[from];
    if (left)
      this.report(
        node,
        "form/left-over",
        says["form/left-over"]({
          key: this.lines(node).slice(atoms[0]!.start, left.start).trim(),
          text: this.lines(node).slice(left.start, atoms[atoms.length - 1]!.end),
        }),
        [],
        { start: left.start, end: node.statement.end },
      );
    return {};
  }

  private member(
    kind: string,
    title: string,
    spec: BlockSpec,
    node: Node,
    keyValues: { [key: string]: Value | undefined },
    inner: { [kind: string]: Thing[] },
    where: Map<string, Node>,
  ): void {
    const first = node.statement.atoms[0];
    if (first?.type !== "word") return this.wordExpected(node);
    const word = wholeKey(spec, first.word);
    const blockSpec = spec.blocks && Object.hasOwn(spec.blocks, word) ? spec.blocks[word] : undefined;
    if (node.children) {
      if (blockSpec) {
        const before = inner[word]?.[0];
        if (blockSpec.once && before) {
          const line = before.node.line + 1;
          this.report(
            node,
            "form/block-twice",
            says["form/block-twice"]({ kind: word, where: title, line }),
            [],
            first,
          );
        } else (inner[word] ??= []).push(this.block(word, blockSpec, node, 1));
      } else if (Object.hasOwn(setupVocabulary.blocks, word))
        this.report(
          node,
          "form/block-not-here",
          says["form/block-not-here"]({ kind: word, where: title }),
          [],
          first,
        );
      else this.unknownWord(node, first.word, title, Object.keys(spec.blocks ?? {}));
      return;
    }
    const key = Object.hasOwn(spec.keys, word) ? spec.keys[word] : undefined;
    if (!key) {
      if (blockSpec)
        this.report(node, "form/block-needs-braces", says["form/block-needs-braces"]({ kind: word }));
      else
        this.unknownWord(node, first.word, title, [
          ...Object.keys(spec.keys),
          ...Object.keys(spec.blocks ?? {}),
        ]);
      return;
    }
    const value = this.value(node, 1, key, `${word} of ${title}`, kind === "helper" || kind === "client");
    for (const p of personalData(node.statement.atoms)) this.problems.push({ ...p, line: node.line });
    if (value === undefined) {
      if (!where.has(word)) where.set(word, node);
      return;
    }
    this.keep(word, key, value, node, title, keyValues, where);
  }

  /** Keeps a value. Given twice, the newest of two that carry dates counts; two without cannot both be right, so neither does. */
  private keep(
    word: string,
    key: KeySpec,
    value: Value,
    node: Node,
    title: string,
    keyValues: { [key: string]: Value | undefined },
    where: Map<string, Node>,
  ): void {
    const before = keyValues[word];
    if (key.many) {
      const sided = (v: Value): string | undefined =>
        typeof v === "object" && !Array.isArray(v) && "side" in v && !("what" in v)
          ? (v.side as string)
          : undefined;
      const same = Array.isArray(before)
        ? before.find((v) => sided(v) !== undefined && sided(v) === sided(value))
        : undefined;
      if (same) this.twice(word, title, node, where);
      else keyValues[word] = Array.isArray(before) ? [...before, value] : [value];
      if (!where.has(word)) where.set(word, node);
      return;
    }
    if (before === undefined) {
      keyValues[word] = value;
      where.set(word, node);
      return;
    }
    const day = (v: Value): string | undefined =>
      typeof v === "object" && !Array.isArray(v) ? (v as { on?: string }).on : undefined;
    const [old, now] = [day(before), day(value)];
    if (old !== undefined && now !== undefined && old !== now) {
      if (now > old) {
        keyValues[word] = value;
        where.set(word, node);
      }
    } else {
      this.twice(word, title, node, where);
      keyValues[word] = unknownValue;
    }
  }
  private twice(word: string, title: string, node: Node, where: Map<string, Node>): void {
    const line = (where.get(word)?.line ?? 0) + 1;
    const span = node.statement;
    this.report(
      node,
      "form/given-twice",
      says["form/given-twice"]({ key: word, where: title, line }),
      [],
      span,
    );
  }

  private step(node: Node, steps: StepLine[]): void {
    const { atoms } = node.statement;
    if (atoms.length === 0) return;
    if (node.children || atoms.some((a) => a.type !== "word")) return this.wordExpected(node);
    const reading = readStep(atoms.map((a) => (a as { word: string }).word));
    if (reading.step) steps.push({ step: reading.step, node });
    else {
      const text = this.lines(node).slice(node.statement.start, node.statement.end);
      const fixes = (reading.nearest ?? []).map((n) => ({ title: `Write ${n}`, text: n }));
      this.report(
        node,
        "form/unknown-step",
        says["form/unknown-step"]({ text, nearest: reading.nearest?.[0] }),
        fixes,
      );
    }
  }
}

/** The key that a spelling stands for: another spelling, or a key written with a blank that was joined. */
function wholeKey(spec: BlockSpec, word: string): string {
  if (Object.hasOwn(spec.keys, word)) return word;
  for (const [key, k] of Object.entries(spec.keys)) if (k.also?.includes(word)) return key;
  return word;
}

const headKeys = new WeakMap<BlockSpec, KeySpec>();
function headKey(spec: BlockSpec): KeySpec {
  let key = headKeys.get(spec);
  if (!key) headKeys.set(spec, (key = { shape: { is: "parts", parts: spec.head! }, help: spec.help }));
  return key;
}

const headSpan = (s: Statement): { start: number; end: number } => ({ start: s.start, end: s.end });

/** Inserts `key unknown` as the first statement of the block, behind its brace. */
function missingFix(key: string, node: Node, line: string): LineProblem["fixes"] {
  const brace = line.indexOf("{", node.statement.end);
  if (!node.children || brace < 0) return [];
  const margin = line.match(/^\s*/)![0];
  const alone = /^\s*(#.*)?$/.test(line.slice(brace + 1));
  const rest = line.slice(brace + 1);
  const text = alone ? `${rest}\n${margin}  ${key} unknown` : ` ${key} unknown;`;
  const [start, end] = alone ? [brace + 1, line.length] : [brace + 1, brace + 1];
  return [{ title: `Write ${key} unknown: it must still be measured`, text, start, end }];
}
