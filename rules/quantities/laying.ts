/** The board as it lies: one piece of arithmetic, from which all quantities of the board in plan are read. */
import { exactly, type Interval } from "../../language/quantity/interval.js";
import { bearings, canLie, wheelClearance, type Bearings, type Laid } from "../plan/board.js";
import { computedGap, cornerGapAt, measuredGap, type SeatPlace } from "../plan/parking.js";
import { place } from "../plan/placing.js";
import type { Of, Outcome, QuantityRule } from "../quantity.js";
import type { Scene } from "../scene.js";
import {
  choosing,
  choosingInputs,
  halfWidth,
  setbackLanding,
  windowOf,
  type ChoosingHanded,
} from "./choosing.js";
import {
  beyondSquare,
  boardOr,
  derived,
  endsOr,
  isWritten,
  measuredBlock,
  signedTurn,
  turnInputs,
} from "./inputs.js";
import { parkContact, parkedAs } from "./parked.js";

type LayingHanded = ChoosingHanded &
  (
    | { readonly contact: Interval; readonly measured?: undefined }
    | { readonly measured: Interval; readonly turn: Interval; readonly away: boolean }
  );

function layingInputs(s: Scene, of: Of): Record<string, unknown> {
  const b = boardOr(s);
  if ("none" in b) return b;
  const ends = endsOr(s);
  if ("none" in ends) return ends;
  const chosen = choosingInputs(of);
  const m = measuredBlock(s);
  if (isWritten(m, "gap"))
    return { ...chosen, ...turnInputs(s, of), measured: of.written(m, "gap", "the gap as measured") };
  return { ...chosen, contact: of(parkContact) };
}

export interface OnBoard extends Bearings {
  readonly laid: Laid;
  /** The chair's angle, with its tolerance. */
  readonly turned: Interval;
  /** From the wheel to the board; undefined where the wheel's place is not known, `clear` where it ends below the board. */
  readonly wheel: Interval | "clear" | undefined;
  readonly from: ChoosingHanded;
}

function lay(i: LayingHanded): OnBoard | undefined | "steep" {
  const chair = i.measured ? undefined : parkedAs(i.contact);
  // A measured gap was taken with the chair as it stood: its angle is as uncertain as it was measured, no more.
  const turned = i.measured ? signedTurn(i.turn, i.away, 0) : chair?.turned;
  if (!turned) return undefined;
  const corner = i.measured?.nominal ?? cornerGapAt(chair!.plan, chair!.clearance, turned.nominal);
  const chosen = place(choosing(i, turned.nominal, corner));
  const laid: Laid = {
    angle: i.askew ?? exactly(chosen.angle),
    inside: i.reach ?? exactly(chosen.inside),
    back: chosen.back,
  };
  if (!canLie(turned, laid.angle)) return "steep";
  const point: SeatPlace = { from: "front", x: exactly(-chosen.back) };
  const back = setbackLanding(i);
  const result = bearings({
    length: i.length,
    width: i.width,
    turned,
    gap: chair
      ? computedGap(chair.plan, chair.clearance, point)
      : measuredGap(i.measured!, i.seatDepth, point),
    laid,
    half: halfWidth(i),
    bone: i.bag.of("seat-bone-from-midline"),
    asked: i.bag.of("firm-bearing"),
    setbackSeat: i.onRail ? exactly(0) : i.bag.of("setback-seat"),
    setbackLanding: back ? i.bag.of(back) : exactly(0),
  });
  return { ...result, laid, turned, wheel: besideWheel(i, laid, turned), from: i };
}

function besideWheel(i: ChoosingHanded, laid: Laid, turned: Interval): OnBoard["wheel"] {
  const free = windowOf(i);
  if (!free) return undefined;
  if (free.wheel === "below") return "clear";
  const half = halfWidth(i);
  const outward = i.overallWidth
    ? {
        low: i.overallWidth.low / 2 - half.high,
        nominal: i.overallWidth.nominal / 2 - half.nominal,
        high: i.overallWidth.high / 2 - half.low,
      }
    : exactly(0);
  return wheelClearance(laid, turned, i.width, free.window, outward);
}

const byValue = new WeakMap<Interval, OnBoard>();

export const boardSpan = derived({
  name: "board.span",
  dimension: "length",
  says: "the free length of the board between the seat and the surface beside it, along its longer long side",
  formula: "gap at the board / cos phi + (width / 2) sin |t| / (cos phi cos psi)",
  source: "plane geometry",
  inputs: layingInputs,
  compute: (i: LayingHanded): Outcome => {
    const b = lay(i);
    if (!b) return beyondSquare;
    if (b === "steep")
      return {
        missing: [
          { what: "a board that lies within 80 degrees of square to both edges", key: "board-askew" },
        ],
      };
    byValue.set(b.span, b);
    return { value: b.span, terms: lies(b) };
  },
});

/** How the board lies, as lines of the arithmetic. */
const lies = (b: OnBoard): Outcome["terms"] => [
  {
    label: "the board's angle to square on the surface's edge (phi)",
    value: b.laid.angle,
    dimension: "angle",
    unit: { unit: "deg" },
  },
  {
    label: "the board's inner end from the seat's near side",
    value: b.laid.inside,
    dimension: "length",
    unit: { unit: "in" },
  },
];

/** The laid board of which `board.span` is that value. */
export const laidAs = (span: Interval): OnBoard => byValue.get(span)!;

/** Declares a quantity that is read off the laid board; `more` are inputs besides it. */
export function ofLaidBoard<More extends object = object>(q: {
  readonly name: string;
  readonly says: string;
  readonly formula: string;
  readonly more?: (s: Scene, of: Of) => Record<string, unknown>;
  readonly read: (b: OnBoard, more: { readonly [N in keyof More]: Interval }) => Interval | Outcome;
}): QuantityRule {
  return derived({
    name: q.name,
    dimension: "length",
    says: q.says,
    formula: q.formula,
    source: "plane geometry",
    inputs: (s, of) => ({ span: of(boardSpan), ...q.more?.(s, of) }),
    compute: (i: { readonly span: Interval }): Outcome => {
      const b = laidAs(i.span);
      const out = q.read(b, i as never);
      const outcome: Outcome = "low" in out ? { value: out } : out;
      return outcome.value ? { ...outcome, terms: [...lies(b)!, ...(outcome.terms ?? [])] } : outcome;
    },
  });
}
