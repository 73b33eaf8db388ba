/** What is noted while one entry is read: findings of form, and names to be resolved once all entries are known. */
import { says } from "../text/messages.js";
import { nearest } from "../text/nearest.js";
import type { Atom, Entry, LineProblem, Node, Statement } from "../text/types.js";
import type { KeySpec, Part } from "../vocabulary/types.js";
import type { Value } from "./types.js";
import { readValue, type Reference, type ValueReading } from "./value.js";

export type LocatedProblem = LineProblem & { readonly line: number };
export type LocatedReference = Reference & { readonly line: number };

/** Values by statement, so that a line that did not change gives the same value objects when its block is read again. */
const values = new WeakMap<Statement, Map<KeySpec | Part, ValueReading>>();

/** What a statement says behind its key. `atoms`: its atoms in the one spelling. */
export function valueOf(
  statement: Statement,
  atoms: readonly Atom[],
  from: number,
  spec: KeySpec | Part,
  key: string,
  person = false,
): ValueReading {
  let byKey = values.get(statement);
  if (!byKey) values.set(statement, (byKey = new Map()));
  let reading = byKey.get(spec);
  if (!reading) byKey.set(spec, (reading = readValue(atoms, from, spec.shape, key, statement.end, person)));
  return reading;
}

export class Notes {
  readonly problems: LocatedProblem[];
  readonly references: LocatedReference[] = [];

  constructor(readonly entry: Entry) {
    this.problems = [...entry.problems];
  }

  /** The text of the line on which a statement stands. */
  line(node: Node): string {
    return this.entry.lines[node.line]!.text;
  }

  report(
    node: Node,
    rule: string,
    message: string,
    fixes: LineProblem["fixes"] = [],
    span: { start: number; end: number } = node.statement,
  ): void {
    this.problems.push({ rule, message, fixes, start: span.start, end: span.end, line: node.line });
  }

  wordExpected(node: Node): void {
    const first = node.statement.atoms[0];
    // A statement without atoms was already reported where its line was read.
    if (first)
      this.report(
        node,
        "form/word-expected",
        says["form/word-expected"]({ text: this.line(node).slice(first.start, first.end) }),
        [],
        first,
      );
  }

  unknownWord(node: Node, word: string, where: string, words: readonly string[]): void {
    const near = nearest(word, words);
    this.report(
      node,
      "form/unknown-word",
      says["form/unknown-word"]({ word, where, nearest: near }),
      near ? [{ title: `Write ${near}`, text: near }] : [],
      node.statement.atoms[0]!,
    );
  }

  value(
    node: Node,
    atoms: readonly Atom[],
    from: number,
    spec: KeySpec | Part,
    key: string,
    person = false,
  ): Value | undefined {
    const reading = valueOf(node.statement, atoms, from, spec, key, person);
    for (const p of reading.problems) this.problems.push({ ...p, line: node.line });
    for (const r of reading.references) this.references.push({ ...r, line: node.line });
    return reading.value;
  }
}
