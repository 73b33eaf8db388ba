/** What several quantities take from a scene: cheap, and the same objects while nothing that they were read from changes. */
import type { Interval } from "../../language/quantity/interval.js";
import { isQuantity, type Thing, type Value } from "../../language/model/types.js";
import { viewOf } from "../part-view.js";
import type { Of, Outcome, QuantityRule } from "../quantity.js";
import type { Scene, Side } from "../scene.js";
import type { Assumption, Computed, Missing, Term } from "../types.js";

/** The inner block of a kind, if there is one. */
export const block = (thing: Thing | undefined, kind: string): Thing | undefined => thing?.inner[kind]?.[0];

export const choiceOf = (thing: Thing | undefined, key: string): string | undefined => {
  const v = thing?.values[key];
  return typeof v === "string" ? v : undefined;
};

/**
 * The parts of a value in several parts (`turned 30 deg towards`, `size 39 in by 80 in`) as a thing of its own, so that each
 * can be read as an interval. One view per value; its place follows the thing in which the value now stands.
 */
export function partsOf(thing: Thing | undefined, key: string): Thing | undefined {
  const value = thing?.values[key];
  if (!thing || typeof value !== "object" || value === null || Array.isArray(value) || isQuantity(value))
    return undefined;
  if ("type" in value && value.type === "unknown") return undefined;
  return viewOf(value, thing, key);
}

/** Written as a number, not left out and not `unknown`. */
export const isWritten = (thing: Thing | undefined, key: string): thing is Thing =>
  isQuantity(thing?.values[key]);

const empty = (name: string, more: { missing?: readonly Missing[]; without?: string }): Computed => ({
  name,
  dimension: "number",
  value: undefined,
  missing: [],
  assumed: [],
  trace: [],
  unit: { unit: "1" },
  ...more,
});

const saidWithout = new Map<string, Computed>();
/** An input that says why the quantity does not apply. */
export function without(reason: string): Computed {
  let found = saidWithout.get(reason);
  if (!found) saidWithout.set(reason, (found = empty(reason, { without: reason })));
  return found;
}

const nowhere = {};
const gaps = new WeakMap<object, Map<string, Computed>>();
/** An input that is not known, and where it would be written. */
export function absent(thing: Thing | undefined, what: string, key: string): Computed {
  const holder = thing ?? nowhere;
  let inThing = gaps.get(holder);
  if (!inThing) gaps.set(holder, (inThing = new Map()));
  let found = inThing.get(what);
  if (!found) {
    const missing: Missing = thing
      ? {
          what,
          key,
          get place() {
            return thing.placeOf(key);
          },
        }
      : { what, key };
    inThing.set(what, (found = empty(what, { missing: [missing] })));
  }
  return found;
}

/**
 * Defaults that only sometimes matter: the place of a castor that does not touch first, or a figure by which a placement is
 * chosen. Handed over whole, so that a result lists those that it rests on and no others.
 */
export interface Bag {
  of(name: string): Interval;
  assumed(names: Iterable<string>): readonly Assumption[];
  terms(names: Iterable<string>): readonly Term[];
}
const bags = new WeakMap<Computed, Bag>();
export function bag(of: Of): Bag {
  const holder = of.default("parking-clearance");
  let found = bags.get(holder);
  if (!found) {
    const all = new Map<string, Computed>();
    const get = (name: string): Computed => {
      let c = all.get(name);
      if (!c) all.set(name, (c = of.default(name)));
      return c;
    };
    found = {
      of: (name) => get(name).value!,
      assumed: (names) => [...names].flatMap((n) => get(n).assumed),
      terms: (names) => [...names].flatMap((n) => get(n).trace),
    };
    bags.set(holder, found);
  }
  return found;
}

export const noBoard = "no board is used";

/** The board's own keys, or why there is none. */
export function boardOr(s: Scene): { readonly board: Thing } | { readonly none: Computed } {
  if (s.board) return { board: s.board };
  return s.value("no-board").value === true
    ? { none: without(noBoard) }
    : { none: absent(s.transfer, "the board that is used, or that none is", "with") };
}

/** Chair and bed, or what keeps there from being both. */
export function endsOr(
  s: Scene,
): { readonly chair: Thing; readonly surface: Thing } | { readonly none: Computed } {
  if (!s.chair)
    return {
      none:
        s.from && s.to ? without("no wheelchair takes part") : absent(s.transfer, "the wheelchair", "from"),
    };
  if (!s.surface)
    return {
      none:
        s.from && s.to
          ? without("no other surface takes part")
          : absent(s.transfer, "the surface beside the chair", "from"),
    };
  return { chair: s.chair, surface: s.surface };
}

/** The chair's angle: its size, and whether the front is turned away from the edge. */
export function turnInputs(s: Scene, of: Of): { turn: Computed; away: boolean } {
  const { thing } = s.value("turned");
  const words = "the chair's angle to the surface (turned)";
  const parts = partsOf(thing, "turned");
  if (!parts)
    return {
      turn: isWritten(thing, "turned")
        ? of.written(thing, "turned", words)
        : absent(s.transfer, words, "turned"),
      away: false,
    };
  const angle = parts.values["angle"];
  const way = choiceOf(parts, "way");
  if (isQuantity(angle) && angle.nominal !== 0 && way === undefined)
    return {
      turn: absent(s.transfer, "whether the chair's front is turned towards the surface or away", "turned"),
      away: false,
    };
  return { turn: of.written(parts, "angle", words), away: way === "away" };
}

/** The chair's angle as a signed interval: towards the edge is positive. Undefined where no chair can stand so. */
export function signedTurn(turn: Interval, away: boolean, tolerance: number): Interval | undefined {
  const sign = away ? -1 : 1;
  const a = sign * turn.low;
  const b = sign * turn.high;
  const t = {
    low: Math.min(a, b) - tolerance,
    nominal: sign * turn.nominal,
    high: Math.max(a, b) + tolerance,
  };
  const most = Math.PI / 2;
  if (!(Math.abs(t.nominal) <= most)) return undefined;
  return { low: Math.max(-most, t.low), nominal: t.nominal, high: Math.min(most, t.high) };
}
export const beyondSquare: { readonly missing: readonly Missing[] } = {
  missing: [{ what: "an angle of the chair between 0 and 90 degrees", key: "turned" }],
};

const other = (side: Side): Side => (side === "left" ? "right" : "left");

/** How near leg rest, far leg rest and near armrest stand, as one word each; undefined where the side is not known. */
export function equipmentOf(s: Scene, chair: Thing): string | undefined {
  if (!s.side) return undefined;
  const legrest = (side: Side) =>
    kindOn(chair, "legrest", side) === "none" ? "none" : s.parked.legrests[side];
  const armrest = kindOn(chair, "armrest", s.side) === "none" ? "none" : s.parked.armrests[s.side];
  return `${legrest(s.side)} ${legrest(other(s.side))} ${armrest}`;
}

/** The kind of leg rest or armrest on one side: the side's own statement, else that for both. */
export function kindOn(chair: Thing, what: "legrest" | "armrest", side: Side): string | undefined {
  const each = chair.values[what];
  for (const v of Array.isArray(each) ? (each as readonly Value[]) : [each]) {
    if (
      typeof v === "object" &&
      v !== null &&
      "side" in v &&
      v.side === side &&
      "kind" in v &&
      typeof v.kind === "string"
    )
      return v.kind;
  }
  return choiceOf(chair, `${what}s`);
}

/** What was taped with the chair parked: the direction's own, or that of the way there while nothing is set up otherwise. */
export function measuredBlock(s: Scene): Thing | undefined {
  const own = block(s.transfer, "measured");
  if (own || !s.base) return own;
  const changed = [
    "turned",
    "facing",
    "bed-side",
    "along",
    "with",
    "no-board",
    "board-reach",
    "board-askew",
  ].some((k) => s.transfer.values[k] !== undefined);
  return changed ? undefined : block(s.base, "measured");
}

/**
 * Declares a quantity whose inputs depend on what is written, such as a gap that was either measured or follows from the chair.
 * `compute` names what it is handed; the inputs above it must give just that.
 */
export function derived<Handed>(
  q: Omit<QuantityRule, "inputs" | "compute"> & {
    readonly inputs: (s: Scene, of: Of) => Readonly<Record<string, unknown>>;
    readonly compute: (i: Handed) => Interval | Outcome;
  },
): QuantityRule {
  return q as unknown as QuantityRule;
}
