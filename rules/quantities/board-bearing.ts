/** How much of the board bears at each end: along the board, square to the edge, and on something solid. */
import { cosine, multiply, subtract, type Interval } from "../../language/quantity/interval.js";
import type { Of, Outcome } from "../quantity.js";
import type { Scene } from "../scene.js";
import type { Computed } from "../types.js";
import { derived, absent, boardOr, choiceOf, isWritten, measuredBlock, without } from "./inputs.js";
import { ofLaidBoard } from "./laying.js";

export const bearingSeatComputed = ofLaidBoard({
  name: "board.bearing-seat-computed",
  says: "how much of the board lies on the seat, as it follows from where it is laid",
  formula:
    "inner end from the seat's side / cos psi - (width / 2) tan |psi|, psi the board's angle to square on the seat's side",
  read: (b) => b.seat,
});

export const bearingLandingComputed = ofLaidBoard({
  name: "board.bearing-landing-computed",
  says: "how much of the board lies on the surface beside the chair, as it follows from where it is laid",
  formula:
    "length - inner end from the seat's side / cos psi - gap at the board / cos phi - (width / 2) tan |phi|, phi the board's angle to square on the surface's edge",
  read: (b) => b.landing,
});

/** The bearing as measured, where it was. */
const taped = (s: Scene, of: Of, end: "seat" | "landing"): Computed | undefined => {
  const m = measuredBlock(s);
  return isWritten(m, `bearing-${end}`)
    ? of.written(
        m,
        `bearing-${end}`,
        end === "seat"
          ? "the board's bearing on the seat as measured"
          : "the board's bearing on the surface as measured",
      )
    : undefined;
};

const onEnd = { seat: "on the seat", landing: "on the surface beside the chair" } as const;

const along = (end: "seat" | "landing") =>
  derived({
    name: `board.bearing-${end}`,
    dimension: "length",
    says: `how much of the board lies ${onEnd[end]}: along its shorter long side, beyond the edge`,
    formula: "as measured, else as it follows from where the board is laid",
    source: "plane geometry",
    inputs: (s, of): Record<string, unknown> => {
      const b = boardOr(s);
      if ("none" in b) return { none: b.none };
      return {
        bearing: taped(s, of, end) ?? of(end === "seat" ? bearingSeatComputed : bearingLandingComputed),
      };
    },
    compute: (i: { bearing: Interval }) => i.bearing,
  });
export const bearingSeat = along("seat");
export const bearingLanding = along("landing");

const square = (end: "seat" | "landing") =>
  ofLaidBoard<{ taped: Interval }>({
    name: `board.bearing-${end}-square`,
    says: `the bearing ${onEnd[end]}, square to the edge: how far the edge may draw away before a corner drops`,
    formula: "bearing x cos(the board's angle to square on that edge)",
    more: (s, of) => {
      const measured = taped(s, of, end);
      return measured ? { taped: measured } : {};
    },
    read: (b, more) => {
      if (!more.taped) return end === "seat" ? b.seatSquare : b.landingSquare;
      const psi = {
        low: b.laid.angle.low + b.turned.low,
        nominal: b.laid.angle.nominal + b.turned.nominal,
        high: b.laid.angle.high + b.turned.high,
      };
      return multiply(more.taped, cosine(end === "seat" ? psi : b.laid.angle));
    },
  });
export const bearingSeatSquare = square("seat");
export const bearingLandingSquare = square("landing");

export const bearingSeatFirm = derived({
  name: "board.bearing-seat-firm",
  dimension: "length",
  says: "the bearing on the seat that stands on something solid, square to its side",
  formula: "square bearing - set-back of the seat's side (none on a rail)",
  source: "plane geometry; set-back from the rule set",
  inputs: (s, of): Record<string, Computed> =>
    isWritten(s.chair, "rail-height")
      ? { square: of(bearingSeatSquare) }
      : { square: of(bearingSeatSquare), setback: of.default("setback-seat") },
  compute: (i: { square?: Interval; setback?: Interval }) =>
    i.setback ? subtract(i.square!, i.setback) : i.square!,
});

export const bearingLandingFirm = derived({
  name: "board.bearing-landing-firm",
  dimension: "length",
  says: "the bearing on the surface beside the chair that stands on something solid, square to its edge",
  formula: "square bearing - set-back of a soft or rounded edge",
  source: "plane geometry; set-back from the rule set",
  inputs: (s, of) => ({ square: of(bearingLandingSquare), setback: edgeSetback(s, of) }),
  compute: (i: { square: Interval; setback: Interval }) => subtract(i.square, i.setback),
});

function edgeSetback(s: Scene, of: Of): Computed {
  const edge = choiceOf(s.surface, "edge");
  return edge
    ? of.default(`setback-edge-${edge}`)
    : absent(s.surface, "what the surface's edge is like", "edge");
}

export const bearingLandingPossible = ofLaidBoard<{ asked: Interval; bone: Interval; setback: Interval }>({
  name: "board.bearing-landing-possible",
  says: "the most of the board that could lie on the surface beside the chair while its inner end still bears as asked and lies under the near sitting bone",
  formula:
    "length - the least that must lie on the seat - gap at the board / cos phi - (width / 2) tan |phi|",
  more: (s, of) => ({
    bone: of.default("seat-bone-from-midline"),
    ...(isWritten(s.chair, "rail-height") ? {} : { setback: of.default("setback-seat") }),
  }),
  read: (b) => b.landingPossible,
});

const disagreement = (end: "seat" | "landing") =>
  derived({
    name: `board.bearing-${end}-disagreement`,
    dimension: "length",
    says: `the bearing ${onEnd[end]} as measured less the bearing that follows from where the board is laid`,
    formula: "measured bearing - computed bearing",
    source: "difference of two lengths",
    inputs: (s, of): Record<string, Computed> => {
      const b = boardOr(s);
      if ("none" in b) return { none: b.none };
      const measured = taped(s, of, end);
      return measured
        ? { measured, computed: of(end === "seat" ? bearingSeatComputed : bearingLandingComputed) }
        : { none: without(`the bearing ${onEnd[end]} was not measured`) };
    },
    compute: (i: { measured?: Interval; computed?: Interval }) => subtract(i.measured!, i.computed!),
  });
export const bearingSeatDisagreement = disagreement("seat");
export const bearingLandingDisagreement = disagreement("landing");

export const shortestThatFits = ofLaidBoard({
  name: "board.shortest-that-fits",
  says: "the length of a board of this width for which both ends bear as asked; its greater bound is enough whatever the tolerances",
  formula:
    "the least that must lie on the seat + gap at the board / cos phi + (width / 2) tan |phi| + (bearing asked + set-back) / cos phi",
  more: (s, of) => ({
    bone: of.default("seat-bone-from-midline"),
    setbackLanding: edgeSetback(s, of),
    ...(isWritten(s.chair, "rail-height") ? {} : { setback: of.default("setback-seat") }),
  }),
  read: (b) => b.shortest,
});

export const wheelClearance = ofLaidBoard({
  name: "board.wheel-clearance",
  says: "distance between the board and the drive wheel; below zero the board lies on the wheel",
  formula: "(side window - board's middle behind the seat's front edge) cos psi - width / 2",
  read: (b): Outcome | Interval => {
    if (b.wheel === "clear") return { without: "the wheel ends below the board" };
    return (
      b.wheel ?? {
        missing: [
          {
            what: "the free seat side in front of the wheel (side-window), or the drive wheel and its axle",
            key: "side-window",
          },
        ],
      }
    );
  },
});
