/**
 * How a derived quantity is declared. `computed.ts` works one out, `workings.ts` keeps what is still good.
 *
 * A quantity is one object in one file under `quantities/`, listed once in `quantities/index.ts`. It names its inputs as a cheap
 * function of a scene; its arithmetic is a pure function of those inputs. A result is kept per subject and used again while
 * every input is the same object, so an edit of a nightstand does not recompute a board.
 */
import type { Interval } from "../language/quantity/interval.js";
import type { Dimension } from "../language/quantity/types.js";
import type { Thing } from "../language/model/types.js";
import type { Assumption, Computed, Missing, Term } from "./types.js";
import type { Scene } from "./scene.js";

/** Marks an input that may be missing: `compute` then gets undefined for it. */
export class Optional {
  constructor(readonly input: Computed) {}
}

/** What `inputs` may hand over: computed values, or anything compared by identity (choices, flags, things). */
export type Inputs = { readonly [name: string]: unknown };
type Handed<I> = {
  [N in keyof I]: I[N] extends Computed ? Interval : I[N] extends Optional ? Interval | undefined : I[N];
};

/** What `compute` returns: an interval, or one with words, extra lines of arithmetic, or the reason why there is none. */
export interface Outcome {
  readonly value?: Interval;
  readonly choice?: string;
  readonly without?: string;
  readonly missing?: readonly Missing[];
  readonly assumed?: readonly Assumption[];
  readonly terms?: readonly Term[];
}

/** Access to written values, defaults and other quantities of the same scene. */
export interface Of {
  (q: QuantityRule): Computed;
  /** A key of a thing as an interval, its tolerance taken from the rule set where none was written. Missing if not written. */
  written(thing: Thing | undefined, key: string, words?: string): Computed;
  /** A key of the transfer (a way back takes it from the transfer it turns round). */
  transfer(key: string, words?: string): Computed;
  /** A value of the rule set. */
  default(name: string): Computed;
  optional(c: Computed): Optional;
  /** What several quantities take from a scene, read once for all of them. */
  shared<T>(make: (s: Scene, of: Of) => T): T;
}

/** Reads what several quantities take from a scene; told apart by the function itself. */
export type SharedInputs = (s: Scene, of: Of) => unknown;

export interface QuantityRule {
  readonly name: string;
  readonly dimension: Dimension;
  /** One sentence: what it is, and its sign. */
  readonly says: string;
  /** The formula in one line of text. */
  readonly formula: string;
  /** Where the formula comes from, or "plane geometry", "statics" where it needs no source. */
  readonly source: string;
  /** Takes longer than a keystroke: left out of a check that is in haste, unless it is known from before. */
  readonly slow?: true;
  readonly inputs: (s: Scene, of: Of) => Inputs;
  readonly compute: (inputs: never) => Interval | Outcome;
}

/** Declares a quantity; only for the types. */
export function quantity<I extends Inputs>(q: {
  readonly name: string;
  readonly dimension: Dimension;
  readonly says: string;
  readonly formula: string;
  readonly source: string;
  readonly slow?: true;
  readonly inputs: (s: Scene, of: Of) => I;
  readonly compute: (inputs: Handed<I>) => Interval | Outcome;
}): QuantityRule {
  return q as unknown as QuantityRule;
}

export const isComputed = (x: unknown): x is Computed =>
  typeof x === "object" && x !== null && "trace" in x && "missing" in x;
