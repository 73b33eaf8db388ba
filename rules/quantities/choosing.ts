/** What a board's placement is chosen by. All of it acts at nominal values only: the placement is then held. */
import { scale, type Interval } from "../../language/quantity/interval.js";
import type { Choosing } from "../plan/placing.js";
import { sideWindow } from "../plan/chair-solids.js";
import type { Of, Optional } from "../quantity.js";
import type { Scene } from "../scene.js";
import type { Computed } from "../types.js";
import { bag, block, choiceOf, isWritten, type Bag } from "./inputs.js";

export type ChoosingInputs = {
  readonly length: Computed;
  readonly width: Computed;
  readonly seatDepth: Computed;
  readonly seatWidth: Computed;
  /** As it was laid, where that is written. */
  readonly askew: Optional;
  readonly reach: Optional;
  /** The free seat side as taped; else it follows from wheel and rail. */
  readonly window: Optional;
  readonly wheelDiameter: Optional | Computed;
  readonly axle: Optional | Computed;
  readonly railHeight: Optional;
  readonly overallWidth: Optional | Computed;
  readonly scooted: boolean;
  readonly onRail: boolean;
  readonly edge: string | undefined;
  readonly bag: Bag;
};

export const choosingInputs = (of: Of): ChoosingInputs => of.shared(read);

function read(s: Scene, of: Of): ChoosingInputs {
  const { chair, board } = s;
  const wheel = block(chair, "drive-wheel");
  const askew = s.value("board-askew").thing;
  const reach = s.value("board-reach").thing;
  const onRail = isWritten(chair, "rail-height");
  return {
    length: of.written(board, "length", "the board's length"),
    width: of.written(board, "width", "the board's width"),
    seatDepth: of.written(chair, "seat-depth", "the seat's depth"),
    seatWidth: of.written(chair, "seat-width", "the seat's width"),
    askew: of.optional(of.written(askew, "board-askew", "the board's angle to the surface's edge")),
    reach: of.optional(of.written(reach, "board-reach", "how far the board lies in the seat")),
    window: of.optional(of.written(chair, "side-window", "the free seat side in front of the wheel")),
    wheelDiameter: of.optional(of.written(wheel, "diameter", "the drive wheel's diameter")),
    axle: of.optional(of.written(wheel, "axle", "the axle's place under the seat")),
    railHeight: of.optional(
      onRail
        ? of.written(chair, "rail-height", "the rail's height")
        : of.written(chair, "seat-height", "the seat's height"),
    ),
    overallWidth: of.optional(of.written(chair, "overall-width", "the chair's width over the hand rims")),
    scooted: s.parked.scooted,
    onRail,
    edge: choiceOf(s.surface, "edge"),
    bag: bag(of),
  };
}

export interface ChoosingHanded {
  readonly length: Interval;
  readonly width: Interval;
  readonly seatDepth: Interval;
  readonly seatWidth: Interval;
  readonly askew: Interval | undefined;
  readonly reach: Interval | undefined;
  readonly window: Interval | undefined;
  readonly wheelDiameter: Interval | undefined;
  readonly axle: Interval | undefined;
  readonly railHeight: Interval | undefined;
  readonly overallWidth: Interval | undefined;
  readonly scooted: boolean;
  readonly onRail: boolean;
  readonly edge: string | undefined;
  readonly bag: Bag;
}

/** The side window as taped or worked out. `wheel` below: nothing of the wheel is at the board's height. */
export function windowOf(i: ChoosingHanded): ReturnType<typeof sideWindow> | undefined {
  if (i.window) return { window: i.window, wheel: "meets" };
  if (!i.wheelDiameter || !i.axle || !i.railHeight) return undefined;
  return sideWindow(i.seatDepth, i.axle, i.wheelDiameter, i.railHeight);
}

export const setbackLanding = (i: ChoosingHanded): string | undefined =>
  i.edge === undefined ? undefined : `setback-edge-${i.edge}`;

/** Nominal values at a chair's angle and a gap beside the seat's front corner (or rear corner, when turned away). */
export function choosing(i: ChoosingHanded, turned: number, gapCorner: number): Choosing {
  const d = (name: string) => i.bag.of(name).nominal;
  const free = windowOf(i);
  const half = i.seatWidth.nominal / 2;
  const back = setbackLanding(i);
  return {
    turned,
    // Beside the front corner also where the rear one is the nearer.
    gapFront: gapCorner + Math.max(0, -Math.sin(turned)) * i.seatDepth.nominal,
    length: i.length.nominal,
    width: i.width.nominal,
    depth: i.seatDepth.nominal,
    half,
    window: free && free.wheel !== "below" ? free.window.nominal : undefined,
    outward: i.overallWidth ? Math.max(0, i.overallWidth.nominal / 2 - half) : 0,
    clear: d("board-wheel-clearance"),
    hip: d("hip-from-seat-rear") + (i.scooted ? d("scoot-forward") : 0),
    bone: d("seat-bone-from-midline"),
    asked: d("firm-bearing"),
    setbackSeat: i.onRail ? 0 : d("setback-seat"),
    setbackLanding: back ? d(back) : 0,
    angle: i.askew?.nominal,
    inside: i.reach?.nominal,
  };
}

export const halfWidth = (i: ChoosingHanded): Interval => scale(i.seatWidth, 0.5);
