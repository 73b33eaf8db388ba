/** The form of the vocabulary: what a kind of block may hold, and what each key takes. The table itself is in `index.ts`. */
import type { Dimension } from "../quantity/types.js";

/** What a value may be. */
export type Shape =
  | {
      readonly is: "quantity";
      readonly dimension: Dimension;
      /** What a household can plausibly hold, in SI; outside it is a notice ("is it really ...?"), never a refusal. */
      readonly plausible?: readonly [number, number];
      /** Always a range of choice, such as the heights of a bed that adjusts: `15 in to 26 in` needs no word before it. */
      readonly range?: true;
      /** A slope, kept as a share of its run; one written as an angle is read as its tangent. */
      readonly slope?: true;
      /** The units offered first, in the order of likelihood. */
      readonly units: readonly string[];
    }
  | { readonly is: "choice"; readonly choices: readonly string[] }
  /** `yes` or `no`. */
  | { readonly is: "flag" }
  /** Free text in quotes. */
  | { readonly is: "text" }
  /** A code: a word as typed, or a text. `whole`: a whole number and nothing else, kept as typed. */
  | { readonly is: "code"; readonly whole?: true }
  | { readonly is: "date" }
  /** A time of day, 00:00 to 23:59. Read as it is written: `"08:30"`. */
  | { readonly is: "time" }
  /** The name of a thing of one of these kinds. */
  | { readonly is: "name"; readonly of: readonly string[] }
  /** Two lengths joined by `by`, or by a comma for a place: `39 in by 80 in`. Read as { first, second }. */
  | {
      readonly is: "pair";
      readonly dimension: Dimension;
      readonly joined: "by" | ",";
      readonly units: readonly string[];
      readonly second: "required" | "optional";
    }
  /** Items parted by commas. */
  | { readonly is: "list"; readonly item: Shape }
  /** Any of these, the first that fits. */
  | { readonly is: "either"; readonly shapes: readonly Shape[] }
  /** A value in several parts, some led by a word: `turned 30 deg towards`; `by "role"`. Read as a record. */
  | { readonly is: "parts"; readonly parts: readonly Part[] }
  /** The key alone says it. Read as `true`. */
  | { readonly is: "mention" };

export interface Part {
  readonly name: string;
  /** The word that leads it: `by`, `on`, `until`, `review`. */
  readonly lead?: string;
  readonly shape: Shape;
  readonly optional?: boolean;
}

export interface KeySpec {
  readonly shape: Shape;
  /** `required`: a household without it cannot be checked well and says so; `wanted` is offered first in completion. */
  readonly need?: "required" | "wanted";
  /** May stand several times; its value is then an array. */
  readonly many?: boolean;
  /** Of a key that may stand several times: the part that must differ each time, such as the side of an armrest. */
  readonly distinct?: string;
  readonly help: string;
  /** How to measure it in a home. */
  readonly measure?: string;
  /** Which way an error is the safer one. */
  readonly safer?: "low" | "high";
  /** The rule set's default that stands in for it, if one does. */
  readonly default?: string;
  /** Of a default that is a part of another key of the same block: that key. */
  readonly defaultOf?: string;
  /** Another key of the same block without which this one misleads, and why, in a sentence. */
  readonly beside?: { readonly key: string; readonly why: string };
  /** Other spellings that are read as this key and rewritten by the formatter. */
  readonly also?: readonly string[];
}

export interface BlockSpec {
  readonly help: string;
  /** Whether a name follows the kind. `of`: what follows is the name of a thing of these kinds. */
  readonly name: "required" | "optional" | "none" | { readonly of: readonly string[] };
  /** What may follow on the head line: `way-back X of Y`, `trial X on DATE`. */
  readonly head?: readonly Part[];
  readonly keys: { readonly [key: string]: KeySpec };
  /** Kinds of blocks that may stand inside. */
  readonly blocks?: { readonly [kind: string]: BlockSpec };
  /** Of these keys at most one may be said. */
  readonly oneOf?: readonly string[];
  /** May stand only once in its parent. */
  readonly once?: boolean;
  /** Its statements are steps (`steps { lock brakes; slide }`). */
  readonly steps?: boolean;
  /** Its statements are led by names and not by keys. `changes`: what may be changed (`bed.top 17 in to 23 in`, `nightstand moved`). */
  readonly free?: "changes";
  readonly also?: readonly string[];
}
