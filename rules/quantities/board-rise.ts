/** `board.rise-start` and `board.rise-end`: how far the board itself climbs, the client still where it starts and nearly across. */
import { subtract, type Interval } from "../../language/quantity/interval.js";
import type { Thing } from "../../language/model/types.js";
import { boardRest } from "../plan/heights.js";
import type { Of, Optional, QuantityRule } from "../quantity.js";
import type { Scene } from "../scene.js";
import type { Computed } from "../types.js";
import { derived, absent, boardOr, isWritten } from "./inputs.js";
import { emptyFrom, emptyTo } from "./height-empty.js";
import { loadedFrom, loadedTo } from "./height-loaded.js";

type RestInputs = { readonly rail: Optional; readonly seat: Optional } | { readonly rest: Computed };

/** Where the board rests on one end. On a chair with a rail that stands clear of the seat, the seat says nothing. */
function restInputs(s: Scene, of: Of, end: "from" | "to", loaded: boolean): RestInputs {
  const thing: Thing | undefined = s[end];
  if (!thing) return { rest: absent(s.transfer, "where the transfer starts and ends", "from") };
  const [empty, sat] = end === "from" ? [emptyFrom, loadedFrom] : [emptyTo, loadedTo];
  const seat = of(loaded ? sat : empty);
  if (thing.kind !== "wheelchair" || !isWritten(thing, "rail-height")) return { rest: seat };
  const rail = of.written(thing, "rail-height", "the rail's height");
  if (!seat.value || rail.value!.low >= seat.value.high) return { rest: rail };
  return { rail: of.optional(rail), seat: of.optional(seat) };
}

const rest = (end: "from" | "to", loaded: boolean): QuantityRule =>
  derived({
    name: `height.rest-${loaded ? "loaded" : "empty"}-${end}`,
    dimension: "length",
    says: `height at which the board rests where the client ${end === "from" ? "starts" : "arrives"}, ${loaded ? "the client sitting there" : "nobody sitting there"}`,
    formula: "on a chair the higher of rail and seat, on a bed the edge",
    source: "a rigid board lies on the higher of two supports",
    inputs: (s, of) => restInputs(s, of, end, loaded),
    // One of the two is always there: without a seat's height the rail alone was handed over.
    compute: (i: { rest?: Interval; rail?: Interval; seat?: Interval }) =>
      i.rest ?? boardRest(i.rail, i.seat)!,
  });

export const restEmptyFrom = rest("from", false);
export const restEmptyTo = rest("to", false);
export const restLoadedFrom = rest("from", true);
export const restLoadedTo = rest("to", true);

export const boardRiseStart = derived({
  name: "board.rise-start",
  dimension: "length",
  says: "how far the board climbs from start to end while the client still sits where the transfer starts; below zero it drops",
  formula: "board's rest at the end, empty - board's rest at the start, sat on",
  source: "difference of two heights",
  inputs: (s, of): { none: Computed } | { to: Computed; from: Computed } => {
    const b = boardOr(s);
    return "none" in b ? { none: b.none } : { to: of(restEmptyTo), from: of(restLoadedFrom) };
  },
  compute: (i: { to?: Interval; from?: Interval }) => subtract(i.to!, i.from!),
});

export const boardRiseEnd = derived({
  name: "board.rise-end",
  dimension: "length",
  says: "how far the board climbs from start to end when the client is nearly across; below zero it drops",
  formula: "board's rest at the end, sat on - board's rest at the start, empty",
  source: "difference of two heights",
  inputs: (s, of): { none: Computed } | { to: Computed; from: Computed } => {
    const b = boardOr(s);
    return "none" in b ? { none: b.none } : { to: of(restLoadedTo), from: of(restEmptyFrom) };
  },
  compute: (i: { to?: Interval; from?: Interval }) => subtract(i.to!, i.from!),
});
