/**
 * The one vocabulary table. The reader's checks, completion, hover, formatting and exports all come from it; adding a key is
 * one entry in one of the files beside this one.
 */
import * as aids from "./aids.js";
import { bed } from "./bed.js";
import * as moves from "./moves.js";
import * as people from "./people.js";
import * as record from "./record.js";
import * as room from "./room.js";
import { route } from "./route.js";
import * as surfaces from "./surfaces.js";
import type { BlockSpec, KeySpec } from "./types.js";
import { wheelchair } from "./wheelchair.js";

export { aidKinds, endKinds, kitKinds, placedKinds, seatKinds, surfaceKinds, thingKinds } from "./kinds.js";

export interface Vocabulary {
  readonly keys: { readonly [key: string]: KeySpec };
  readonly blocks: { readonly [kind: string]: BlockSpec };
}

export const setupVocabulary: Vocabulary = {
  keys: record.statements,
  blocks: {
    client: people.client,
    helper: people.helper,
    wheelchair,
    bed,
    toilet: surfaces.toilet,
    commode: surfaces.commode,
    "shower-seat": surfaces.showerSeat,
    tub: surfaces.tub,
    "tub-bench": surfaces.tubBench,
    armchair: surfaces.armchair,
    "car-seat": surfaces.carSeat,
    "floor-place": surfaces.floorPlace,
    board: aids.board,
    belt: aids.belt,
    sheet: aids.sheet,
    towel: aids.towel,
    handle: aids.handle,
    lift: aids.lift,
    sling: aids.sling,
    ramp: aids.ramp,
    furniture: room.furniture,
    room: room.room,
    route,
    transfer: moves.transfer,
    "way-back": moves.wayBack,
    trial: moves.trial,
    "within-reach": room.withinReach,
    phase: record.phase,
    kit: record.kit,
    review: record.review,
    "may-change": record.mayChange,
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

/** Keys in whose place a default gives a part of another key, by the name of that default: what can be measured is the key. */
export const measuredInstead: ReadonlyMap<string, KeySpec> = new Map(
  [...inner.values()].flatMap(({ keys }) =>
    Object.values(keys).flatMap((k) =>
      k.default !== undefined && k.defaultOf ? [[k.default, k] as const] : [],
    ),
  ),
);

/** Words that join values and can never be names. */
export const smallWords: ReadonlySet<string> = new Set(
  "in to from by at on of with and or not none unknown".split(" "),
);
