/**
 * The tree of a text, shared by setups and rule sets.
 *
 * Three levels, each kept as the same object while its text does not change, so that whatever was worked out from it can be
 * kept too: a `Line` (by its text), an `Entry` (a top-level statement or block, by its lines), a `Tree`.
 * Columns are UTF-16 code units within a line; line numbers inside an entry count from the entry's first line.
 */
import type { Dimension, ShownUnit } from "../quantity/types.js";

interface Spot {
  readonly start: number;
  readonly end: number;
}

/** A vocabulary word, a name, or names joined by `.` or `/`: `bed`, `board-30`, `bed.top`, `height/rise`. Lower case unless a code. */
export interface Word extends Spot {
  readonly type: "word";
  /** As the reader takes it: lower case, joined spellings mended. */
  readonly word: string;
  /** As it was typed. */
  readonly raw: string;
}
export interface Text extends Spot {
  readonly type: "text";
  readonly value: string;
}
/** A number with its unit or units: `19 1/2 in`, `5 ft 9 in`, `182 lb`. */
export interface Measure extends Spot {
  readonly type: "measure";
  readonly dimension: Dimension;
  /** In SI units: m, kg, rad, N, 1. */
  readonly value: number;
  /** How it is shown back: unit and the finest fraction of it that was written. */
  readonly unit: ShownUnit;
  /** The formatter's spelling. */
  readonly spelling: string;
}
/**
 * A number without a unit. It is kept as a ratio of whole numbers, both exact, so that a unit said later (`54 by 75 in`) can
 * still be applied exactly.
 */
export interface Bare extends Spot {
  readonly type: "number";
  readonly value: number;
  readonly numerator: number;
  readonly denominator: number;
  readonly raw: string;
}
export interface DateAtom extends Spot {
  readonly type: "date";
  /** ISO 8601 calendar date. */
  readonly date: string;
}
export interface Mark extends Spot {
  readonly type: "mark";
  readonly mark: "," | ":" | "±" | "+" | "-" | "*" | "/" | "(" | ")";
}
export type Atom = Word | Text | Measure | Bare | DateAtom | Mark;

export interface Statement extends Spot {
  readonly type: "statement";
  readonly atoms: readonly Atom[];
  /** A `{` follows the atoms. */
  readonly opens: boolean;
}
export interface Close extends Spot {
  readonly type: "close";
}
export type Item = Statement | Close;

/** A finding of form, before it has a file: where in its line, what, and the fixes that may be offered. */
export interface LineProblem extends Spot {
  readonly rule: string;
  readonly message: string;
  readonly fixes?: readonly Fix[];
}
export interface Fix {
  readonly title: string;
  /** Replaces the problem's span unless a span of its own is given. */
  readonly text: string;
  readonly start?: number;
  readonly end?: number;
}

export interface Line {
  readonly text: string;
  readonly items: readonly Item[];
  readonly comment?: Spot;
  readonly problems: readonly LineProblem[];
}

/** A statement in its place in a block, with the statements inside it if it opens one. */
export interface Node {
  readonly statement: Statement;
  /** Line within the entry. */
  readonly line: number;
  readonly children?: readonly Node[];
  /** Line within the entry, and column after it, of the closing brace; missing where it was never closed. */
  readonly close?: { readonly line: number; readonly start: number };
}

export interface Entry {
  readonly node: Node;
  readonly lines: readonly Line[];
  /** Problems of the lines and of the block structure, with lines counted from the entry's first. */
  readonly problems: readonly (LineProblem & { readonly line: number })[];
}

export interface Tree {
  readonly entries: readonly { readonly entry: Entry; readonly line: number }[];
  readonly lines: readonly Line[];
  /** Problems outside any entry (a stray brace, a line that cannot be read), with absolute lines. */
  readonly problems: readonly (LineProblem & { readonly line: number })[];
}

/** A place that survives moving its entry up or down the file. Windows turn it into a file, line and column. */
export interface Place {
  readonly entry: Entry;
  readonly line: number;
  readonly start: number;
  readonly end: number;
}
