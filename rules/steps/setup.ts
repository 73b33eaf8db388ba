/** What the steps of one direction of a transfer are run against: the equipment, and who is there. */
import type { LegRestState, ArmrestState } from "./types.js";

export type Side = "left" | "right";
export const otherSide = (side: Side): Side => (side === "left" ? "right" : "left");

export type LegRestKind = "fixed" | "swing-away" | "removable" | "none";
export type ArmrestKind = "fixed" | "swing-away" | "flip-back" | "removable" | "none";

/** How the chair stands before the first step, where it is not as it leaves the workshop: as the way there left it, say. */
export interface Found {
  readonly chair?: "away" | "at";
  readonly brakes?: "locked" | "open";
  readonly footplates?: "up" | "down";
  readonly legrests?: { readonly left?: LegRestState; readonly right?: LegRestState };
  readonly armrests?: { readonly left?: ArmrestState; readonly right?: ArmrestState };
}

/** Whatever is undefined is not known: it makes no step impossible, and facts that rest on it are unknown. */
export interface StepSetup {
  /** Whether the client leaves the chair or comes to it. */
  readonly direction: "from-chair" | "to-chair";
  /** Side of the chair on which the other surface lies: the client's own, sitting in the chair. */
  readonly side?: Side;
  /** The other surface, by name and kind. */
  readonly surface: { readonly name: string; readonly kind: string };
  readonly legrests?: { readonly left?: LegRestKind; readonly right?: LegRestKind };
  readonly armrests?: { readonly left?: ArmrestKind; readonly right?: ArmrestKind };
  readonly footplates?: "fixed" | "flip-up";
  readonly brakes?: "both" | "left" | "right" | "none";
  /** A helper takes part. */
  readonly helped: boolean;
  readonly belt: boolean;
  readonly board: boolean;
  readonly lines?: boolean;
  /** Castors of the other surface as found. */
  readonly castors?: "none" | "locked" | "unlocked";
  /** The other surface's height can be set. */
  readonly adjusts?: boolean;
  readonly found?: Found;
}

/** The side towards which the client moves, the client's own, sitting in the chair and afterwards on the other surface. */
export const sideOfMotion = (setup: StepSetup): Side | undefined =>
  setup.side === undefined || setup.direction === "from-chair" ? setup.side : otherSide(setup.side);

/** A bed can be lain on; other surfaces are sat on. */
export const canLie = (setup: StepSetup): boolean => setup.surface.kind === "bed";
