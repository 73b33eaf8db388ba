/**
 * The one vocabulary table. The reader's checks, completion, hover, formatting and exports all come from it; adding a key is
 * one entry in one of the files beside this one.
 */
import * as equipment from "./equipment.js";
import * as moves from "./moves.js";
import * as people from "./people.js";
import * as places from "./places.js";
import type { BlockSpec, KeySpec } from "./types.js";

export interface Vocabulary {
  readonly keys: { readonly [key: string]: KeySpec };
  readonly blocks: { readonly [kind: string]: BlockSpec };
}

export const setupVocabulary: Vocabulary = {
  keys: moves.statements,
  blocks: {
    client: people.client,
    helper: people.helper,
    wheelchair: equipment.wheelchair,
    bed: places.bed,
    board: equipment.board,
    belt: equipment.belt,
    sheet: equipment.sheet,
    lift: equipment.lift,
    furniture: places.furniture,
    room: places.room,
    transfer: moves.transfer,
    "way-back": moves.wayBack,
    trial: moves.trial,
    "within-reach": places.withinReach,
    review: moves.review,
    "may-change": places.mayChange,
  },
};

/** Kinds that stand only at top level: such a line closes whatever was left open before it. */
export const topOnly: ReadonlySet<string> = new Set(Object.keys(setupVocabulary.blocks).concat("may"));

const inner = new Map<string, BlockSpec>();
for (const [kind, spec] of Object.entries(setupVocabulary.blocks)) {
  inner.set(kind, spec);
  for (const [k, b] of Object.entries(spec.blocks ?? {})) if (!inner.has(k)) inner.set(k, b);
}

/** The block of this kind, at top level or inside another. */
export const blockSpec = (kind: string): BlockSpec | undefined => inner.get(kind);
/** What a key of this kind of block takes. */
export const keySpec = (kind: string, key: string): KeySpec | undefined => {
  const keys = inner.get(kind)?.keys;
  return keys && Object.hasOwn(keys, key) ? keys[key] : undefined;
};

/** Words that join values and can never be names. */
export const smallWords: ReadonlySet<string> = new Set(
  "in to from by at on of with and or not none unknown".split(" "),
);
