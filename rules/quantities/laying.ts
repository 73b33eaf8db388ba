/** The board as it lies: one piece of arithmetic for all quantities of the board in plan. */
import { exactly, type Interval } from "../../language/quantity/interval.js";
import { bearings, canLie, wheelClearance, type Bearings, type Laid } from "../plan/board.js";
import { place, type Chosen } from "../plan/placing.js";
import { computedGap, cornerGap, measuredGap, type Along } from "../plan/parking.js";
import type { Of } from "../quantity.js";
import type { Scene } from "../scene.js";
import type { Missing } from "../types.js";
import {
  choosing,
  choosingInputs,
  choosingKeys,
  halfWidth,
  setbackLanding,
  windowOf,
  type ChoosingHanded,
} from "./choosing.js";
import {
  beyondSquare,
  boardOr,
  endsOr,
  isWritten,
  measuredBlock,
  remember,
  signedTurn,
  turnInputs,
} from "./inputs.js";
import { parked, parkingInputs, parkingKeys, type Parking } from "./parked.js";

const once = new WeakMap<Of, { readonly scene: Scene; readonly inputs: Record<string, unknown> }>();

/** The inputs of every quantity of the laid board, or the reason why there is none. */
export function layingInputs(s: Scene, of: Of): Record<string, unknown> {
  const kept = once.get(of);
  if (kept?.scene === s) return kept.inputs;
  const inputs = read(s, of);
  once.set(of, { scene: s, inputs });
  return inputs;
}

function read(s: Scene, of: Of): Record<string, unknown> {
  const b = boardOr(s);
  if ("none" in b) return { none: b.none };
  const ends = endsOr(s);
  if ("none" in ends) return { none: ends.none };
  const chosen = choosingInputs(s, of, b.board);
  const m = measuredBlock(s);
  if (isWritten(m, "gap"))
    return { ...chosen, ...turnInputs(s, of), measured: of.written(m, "gap", "the gap as measured") };
  // With the gap to be worked out, what the parking needs is no longer optional.
  return { ...chosen, ...(parkingInputs(s, of) as Record<string, unknown>) };
}

export type LayingHanded = ChoosingHanded &
  Pick<Parking, "turn" | "away"> & { readonly measured?: Interval } & Partial<Parking>;

export interface OnBoard extends Bearings {
  readonly laid: Laid;
  readonly chosen: Chosen;
  readonly turned: Interval;
  /** From the wheel to the board; undefined where the wheel's place is not known, `clear` where it ends below the board. */
  readonly wheel: Interval | "clear" | undefined;
  readonly uses: readonly string[];
}

/** Everything about the laid board, or what keeps it from being laid. */
export const onBoard = remember<LayingHanded, OnBoard | { readonly missing: readonly Missing[] }>(
  [...new Set<string>([...choosingKeys, ...parkingKeys, "measured"])] as (keyof LayingHanded)[],
  (i) => {
    const chair = i.measured ? undefined : parked(i as unknown as Parking);
    // A measured gap was taken with the chair as it stood: its angle is as uncertain as it was measured, no more.
    const turned = i.measured ? signedTurn(i.turn, i.away, 0) : chair?.turned;
    if (!turned) return beyondSquare;
    const corner = i.measured ?? cornerGap(chair!.plan, chair!.clearance, turned);
    const chosen = place(choosing(i, turned.nominal, corner.nominal));
    const laid: Laid = {
      angle: i.askew ?? exactly(chosen.angle),
      inside: i.reach ?? exactly(chosen.inside),
      back: chosen.back,
    };
    if (!canLie(turned, laid.angle))
      return {
        missing: [
          { what: "a board that lies within 80 degrees of square to both edges", key: "board-askew" },
        ],
      };
    const point: Along = { from: "front", x: exactly(-chosen.back) };
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
    return { ...result, laid, chosen, turned, wheel: besideWheel(i, laid, turned), uses: chair?.uses ?? [] };
  },
);

function besideWheel(i: LayingHanded, laid: Laid, turned: Interval): OnBoard["wheel"] {
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
