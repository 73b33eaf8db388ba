/** `board.rise-start` and `board.rise-end`: how far the board itself climbs, the client still where it starts and nearly across. */
import { subtract, type Interval } from "../../language/quantity/interval.js";
import type { Thing } from "../../language/model/types.js";
import { boardRest } from "../plan/heights.js";
import type { Of, Optional, QuantityRule } from "../quantity.js";
import type { Scene } from "../scene.js";
import type { Computed } from "../types.js";
import { derived, absent, boardOr, isWritten } from "./inputs.js";
import { emptyFrom, emptyTo, heightWords } from "./height-empty.js";
import { loadedFrom, loadedTo, seatSink } from "./height-loaded.js";
import { boardSpan, laidAs } from "./laying.js";

/** A seat that is not level, measured at its front and at its rear edge: the board rests at its own place between them. */
type Sloping = {
  readonly front: Computed;
  readonly rear: Computed;
  readonly depth: Computed;
  /** The laid board, which tells how far behind the front edge it crosses the seat's side. */
  readonly span: Computed;
  /** How far the seat sinks under somebody: as usual, or from its height beside the hip to that when it is sat on. */
  readonly sink?: Computed;
  readonly beside?: Computed;
  readonly loaded?: Computed;
};
type RestInputs =
  { readonly rail: Optional; readonly seat: Optional } | { readonly rest: Computed } | Sloping;

function slopingSeat(chair: Thing, of: Of, loaded: boolean): Sloping {
  const place = {
    front: of.written(chair, "seat-front", "the seat's height at its front edge"),
    rear: of.written(chair, "seat-rear", "the seat's height at its rear edge"),
    depth: of.written(chair, "seat-depth", "the seat's depth"),
    span: of(boardSpan),
  };
  if (!loaded) return place;
  if (!isWritten(chair, "seat-loaded")) return { ...place, sink: seatSink(chair, of) };
  return {
    ...place,
    beside: of.written(chair, "seat-height", heightWords(chair)),
    loaded: of.written(chair, "seat-loaded", "the seat with the client sitting"),
  };
}

/** Where the board rests on one end. On a chair with a rail that stands clear of the seat, the seat says nothing. */
function restInputs(s: Scene, of: Of, end: "from" | "to", loaded: boolean): RestInputs {
  const thing: Thing | undefined = s[end];
  if (!thing) return { rest: absent(s.transfer, "where the transfer starts and ends", "from") };
  const [empty, sat] = end === "from" ? [emptyFrom, loadedFrom] : [emptyTo, loadedTo];
  const seat = of(loaded ? sat : empty);
  if (thing.kind !== "wheelchair") return { rest: seat };
  if (!isWritten(thing, "rail-height")) {
    const sloping =
      s.board && thing === s.chair && isWritten(thing, "seat-front") && isWritten(thing, "seat-rear");
    // Where the board's place is not known, the height beside the hip stands for it.
    return sloping && of(boardSpan).value ? slopingSeat(thing, of, loaded) : { rest: seat };
  }
  const rail = of.written(thing, "rail-height", "the rail's height");
  if (!seat.value || rail.value!.low >= seat.value.high) return { rest: rail };
  return { rail: of.optional(rail), seat: of.optional(seat) };
}

type SlopingHanded = { readonly [input in keyof Sloping]: Interval };
type RestHanded = { rest?: Interval; rail?: Interval; seat?: Interval } & Partial<SlopingHanded>;

/** The height on a straight line from the front edge to the rear edge; the board's place was chosen and is held. */
function atBoard({ front, rear, depth, span }: SlopingHanded): Interval {
  const { back } = laidAs(span).laid;
  const at = (f: number, r: number, d: number): number => {
    const part = d <= 0 ? 0 : Math.min(1, Math.max(0, back / d));
    return f + (r - f) * part;
  };
  const both = (f: number, r: number): readonly number[] => [at(f, r, depth.low), at(f, r, depth.high)];
  return {
    low: Math.min(...both(front.low, rear.low)),
    nominal: at(front.nominal, rear.nominal, depth.nominal),
    high: Math.max(...both(front.high, rear.high)),
  };
}

function restOn(i: RestHanded): Interval {
  if (i.front) {
    const height = atBoard(i as SlopingHanded);
    if (i.sink) return subtract(height, i.sink);
    return i.beside && i.loaded ? subtract(height, subtract(i.beside, i.loaded)) : height;
  }
  // One of the two is always there: without a seat's height the rail alone was handed over.
  return i.rest ?? boardRest(i.rail, i.seat)!;
}

const rest = (end: "from" | "to", loaded: boolean): QuantityRule =>
  derived({
    name: `height.rest-${loaded ? "loaded" : "empty"}-${end}`,
    dimension: "length",
    says: `height at which the board rests where the client ${end === "from" ? "starts" : "arrives"}, ${loaded ? "the client sitting there" : "nobody sitting there"}`,
    formula:
      "on a chair the higher of rail and seat, the seat's height taken between front and rear at the board's place where both were measured; on the other surface its edge",
    source: "a rigid board lies on the higher of two supports",
    inputs: (s, of) => restInputs(s, of, end, loaded),
    compute: restOn,
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
