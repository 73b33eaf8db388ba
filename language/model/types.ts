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
  /** The lines of `may change`. */
  readonly changes?: readonly ChangeLine[];
  /** Older values of keys that were given on several days, the newest of them first; `values` holds the newest. */
  readonly before?: { readonly [key: string]: readonly Value[] | undefined };
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

/** A line of `may change` as far as it can be read by itself: names are not resolved, a value is not read yet. */
export type ChangeLine = { readonly node: Node; readonly thing: string; readonly words?: string } & (
  | { readonly is: "value"; readonly path: string }
  | { readonly is: "instead"; readonly of: string }
  | { readonly is: "moved" | "removed" }
);

/** Something that the consultant is free to change. `words`: what stands behind it in quotes. */
export type Change = { readonly thing: string; readonly words?: string; readonly place: Place } & (
  | {
      readonly is: "value";
      /** The block inside the thing in which the key stands: `cushion`. */
      readonly block?: string;
      readonly key: string;
      /** What it may be: a quantity is a range (`low` to `high`). */
      readonly value: Value;
    }
  /** The thing may be used in place of the other. */
  | { readonly is: "instead"; readonly of: string }
  | { readonly is: "moved" | "removed" }
);

export const isQuantity = (v: Value | undefined): v is Quantity =>
  typeof v === "object" && v !== null && !Array.isArray(v) && (v as { type?: unknown }).type === "quantity";
export const isUnknown = (v: Value | undefined): v is Unknown =>
  typeof v === "object" && v !== null && !Array.isArray(v) && (v as { type?: unknown }).type === "unknown";
