/** How far the load on the chair stays inside its wheels. */
import type { Interval } from "../../language/quantity/interval.js";
import { forwardMargin, sideMargin } from "../plan/tipping.js";
import type { Outcome, QuantityRule } from "../quantity.js";
import type { Term } from "../types.js";
import { castorTrail, chairLoad, loadedAs, type ChairLoad, type Stage } from "./chair-load.js";
import { onBoard, sitting, type At } from "./chair-stages.js";
import { derived } from "./inputs.js";

const min = (a: Interval, b: Interval): Interval => ({
  low: Math.min(a.low, b.low),
  nominal: Math.min(a.nominal, b.nominal),
  high: Math.min(a.high, b.high),
});
/** Either of two: which one is not known. The nominal value is the first's. */
const either = (a: Interval, b: Interval): Interval => ({
  low: Math.min(a.low, b.low),
  nominal: a.nominal,
  high: Math.max(a.high, b.high),
});

/**
 * The least over all stages; of several ways in which one stage may be, one is true. The stages with their own margins stand as
 * lines of arithmetic.
 */
export function worst(
  stages: readonly At[],
  margin: (at: At) => Interval | undefined,
  shown: Pick<Term, "dimension" | "unit">,
): Outcome {
  const each = new Map<Stage, Interval>();
  for (const at of stages) {
    const m = margin(at);
    if (!m) return { missing: [{ what: "a chair and a client with masses above zero", key: "mass" }] };
    const other = each.get(at.stage);
    each.set(at.stage, other ? either(other, m) : m);
  }
  const all = [...each];
  if (all.length === 0)
    return { missing: [{ what: "a chair and a client with masses above zero", key: "mass" }] };
  const least = all.reduce((a, b) => (b[1].nominal < a[1].nominal ? b : a));
  return {
    value: all.map(([, m]) => m).reduce(min),
    choice: least[0],
    terms: all.map(([stage, value]) => ({ label: stageWords[stage], value, ...shown })),
  };
}

const stageWords: Readonly<Record<Stage, string>> = {
  back: "sitting back",
  scooted: "scooted forward",
  "over-seat-end": "over the seat end of the board",
  "mid-span": "half way over",
  "last-contact": "the chair left empty",
};

const forward = (at: At): Interval | undefined => forwardMargin(at.along);
function aside(at: At): Interval | undefined {
  const near = sideMargin(at.along, at.across, "near");
  const far = sideMargin(at.along, at.across, "far");
  return near && far && min(near, far);
}

const margin = (q: {
  readonly name: string;
  readonly says: string;
  readonly stages: (l: ChairLoad) => readonly At[];
  readonly of: (at: At) => Interval | undefined;
}): QuantityRule =>
  derived({
    name: q.name,
    dimension: "length",
    says: q.says,
    formula:
      "least, over the stages, from the middle of the load on the chair to the line through its wheels; a push at a height moves it by push x height / load",
    source:
      "statics: a body stands while its load goes through the floor between the points on which it stands",
    // The seat's depth only lends its unit: a margin is shown in that of the tape.
    inputs: (s, of) => ({
      load: of(chairLoad),
      seat: of.optional(of.written(s.chair, "seat-depth", "the seat's depth")),
    }),
    compute: (i: { load: Interval }): Outcome =>
      worst(q.stages(loadedAs(i.load)), q.of, { dimension: "length", unit: { unit: "in" } }),
  });

export const chairForwardMargin = margin({
  name: "chair.forward-margin",
  says: "how far the load on the chair stays behind the castors, trunk upright, at the worst stage; below zero the chair tips forward",
  stages: (l) => [...sitting(l), ...onBoard(l)],
  of: forward,
});
export const chairForwardMarginLeaning = margin({
  name: "chair.forward-margin-leaning",
  says: "the same with the trunk leaning 30 degrees forward; below zero the chair tips forward",
  stages: (l) => [...sitting(l, "forward"), ...onBoard(l, true)],
  of: forward,
});
export const chairForwardMarginPlates = margin({
  name: "chair.forward-margin-plates",
  says: "how far the load stays behind the castors with the feet on the plates, scooted forward, trunk upright; below zero the chair tips forward",
  stages: (l) => sitting(l, undefined, [l.onPlates]),
  of: forward,
});
export const chairSideMargin = margin({
  name: "chair.side-margin",
  says: "how far the load on the chair stays inside the line from drive wheel to castor, measured straight sideways, trunk upright, at the worst stage; below zero the chair tips sideways",
  stages: (l) => [...sitting(l), ...onBoard(l)],
  of: aside,
});
export const chairSideMarginLeaning = margin({
  name: "chair.side-margin-leaning",
  says: "the same with the trunk leaning 30 degrees away from the surface, as when the board is laid; below zero the chair tips sideways",
  stages: (l) => sitting(l, "away"),
  of: aside,
});

export const chairCastorGain = derived({
  name: "chair.castor-gain",
  dimension: "length",
  says: "how much further forward the chair stands on its castors once a short roll back has turned them forward",
  formula: "2 x trail of the castors",
  source: "plane geometry: a castor swings about its swivel from behind it to ahead of it",
  inputs: (s, of) => castorTrail(s, of),
  compute: (i: { trail: Interval }) => ({
    low: 2 * i.trail.low,
    nominal: 2 * i.trail.nominal,
    high: 2 * i.trail.high,
  }),
});
