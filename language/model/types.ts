/** The household: things, their values, and where each was written. */
import type { Quantity, Unknown } from "../quantity/types.js";
import type { Entry, Node, Place } from "../text/types.js";
import type { Step } from "../vocabulary/verbs.js";

/** A choice of the vocabulary, a name, a code. */
export type Choice = string;

/** What one key says. Statements with several parts (`turned 30 deg towards`) are records of them. */
export type Value =
  Quantity | Unknown | Choice | boolean | readonly Value[] | { readonly [part: string]: Value | undefined };

/**
 * Something declared: a block of the setup, or one block inside it. Value objects stay the same objects while their line's
 * text does not change, so identity tells whether anything worked out from them is still good.
 */
export interface Thing {
  readonly kind: string;
  /** Its name; an only bed may go unnamed and is then called `bed`. */
  readonly name: string;
  /** By key; a repeatable key holds an array. A key that was not written is absent. */
  readonly values: { readonly [key: string]: Value | undefined };
  /** Blocks inside it, by kind (`cushion`, `drive-wheel`, `door`, `place`). */
  readonly inner: { readonly [kind: string]: readonly Thing[] | undefined };
  /** The steps, for a block that holds steps. */
  readonly steps?: readonly StepLine[];
  /** Statements kept as written, for a block that takes any. */
  readonly free?: readonly Node[];
  readonly entry: Entry;
  readonly node: Node;
  /** Where the key was written, else the head of the block. */
  placeOf(key?: string): Place;
}

/** A step and the line on which it stands. */
export interface StepLine {
  readonly step: Step;
  readonly node: Node;
}

export const isQuantity = (v: Value | undefined): v is Quantity =>
  typeof v === "object" && v !== null && !Array.isArray(v) && (v as { type?: unknown }).type === "quantity";
export const isUnknown = (v: Value | undefined): v is Unknown =>
  typeof v === "object" && v !== null && !Array.isArray(v) && (v as { type?: unknown }).type === "unknown";
