/** What the steps of one direction of a transfer are run against: the equipment, and who is there. */
import type { LegRestState, ArmrestState } from "./types.js";

export type Side = "left" | "right";
export const otherSide = (side: Side): Side => (side === "left" ? "right" : "left");

export type LegRestKind = "fixed" | "swing-away" | "removable" | "none";
export type ArmrestKind = "fixed" | "swing-away" | "flip-back" | "removable" | "none";
/** How an arm of the other surface (a commode's, an armchair's, a folding bar beside a toilet) is taken out of the way. */
export type SurfaceArmKind = "fixed" | "swing-away" | "flip-up" | "removable" | "none";

/** How things stand before the first step, where that is not as usual: as the way there left them, say. */
export interface Found {
  readonly chair?: "away" | "at";
  readonly brakes?: "locked" | "open";
  readonly footplates?: "up" | "down";
  readonly legrests?: { readonly left?: LegRestState; readonly right?: LegRestState };
  readonly armrests?: { readonly left?: ArmrestState; readonly right?: ArmrestState };
  readonly surfaceArms?: { readonly left?: ArmrestState; readonly right?: ArmrestState };
  readonly door?: "open" | "closed";
  readonly carSeat?: "as-found" | "back";
  readonly backrest?: "as-found" | "reclined";
}

/** Whatever is undefined is not known: it makes no step impossible, and facts that rest on it are unknown. */
export interface StepSetup {
  /** Whether the client leaves the chair or comes to it. */
  readonly direction: "from-chair" | "to-chair";
  /** Side of the chair on which the other surface lies: the client's own, sitting in the chair. */
  readonly side?: Side;
  /** Side of the other surface on which the chair stands: the client's own, sitting on it; where not said, as if both faced the same way. */
  readonly surfaceSide?: Side;
  /** The other surface, by name and kind. */
  readonly surface: { readonly name: string; readonly kind: string };
  /** What has the chair's part, a wheelchair unless said: between a bed and a commode it is the commode. */
  readonly chair?: { readonly name: string; readonly kind: "wheelchair" | "commode" };
  readonly legrests?: { readonly left?: LegRestKind; readonly right?: LegRestKind };
  readonly armrests?: { readonly left?: ArmrestKind; readonly right?: ArmrestKind };
  readonly surfaceArms?: { readonly left?: SurfaceArmKind; readonly right?: SurfaceArmKind };
  readonly footplates?: "fixed" | "flip-up";
  /** `no-wheels`: a commode on legs, which stands as if locked. */
  readonly brakes?: "both" | "left" | "right" | "none" | "no-wheels";
  /** A helper takes part. */
  readonly helped: boolean;
  /** How many helpers take part; one where only `helped` is said. */
  readonly helpers?: number;
  readonly belt: boolean;
  readonly board: boolean;
  /** A floor lift takes part. An order that is planned with one crosses in its sling. */
  readonly lift?: boolean;
  /** A sling takes part; with a lift there is one unless this says no. */
  readonly sling?: boolean;
  /** A slide sheet takes part. */
  readonly sheet?: boolean;
  readonly lines?: boolean;
  /** Castors of the other surface as found. */
  readonly castors?: "none" | "locked" | "unlocked";
  /** The other surface's height can be set. */
  readonly adjusts?: boolean;
  /** Names of all things of this transfer whose height can be set. */
  readonly adjustable?: readonly string[];
  /** A rim or sill over which the legs are lifted, where the kind of surface does not say it. */
  readonly rim?: boolean;
  /** The other surface is wet, and so is the skin of whoever leaves it. */
  readonly wet?: boolean;
  /** Clothing lies between the skin and the board. */
  readonly skinCovered?: boolean;
  /** The car door as found; shut unless said. */
  readonly door?: "open" | "closed";
  readonly found?: Found;
}

const oneOf =
  (...kinds: string[]) =>
  (setup: StepSetup): boolean =>
    kinds.includes(setup.surface.kind);

export const isBed = oneOf("bed");
export const isFloor = oneOf("floor-place");
export const isCar = oneOf("car-seat");
/** A bench that reaches over the rim of a tub: the client sits down outside and moves along it. */
export const isBench = oneOf("tub-bench");
/** Where people wash: undressed, and with water about. */
export const isBath = oneOf("tub", "tub-bench", "shower-seat");
/** Kinds of surface that often have arms, so that nobody may assume there are none. */
export const mayHaveArms = oneOf("toilet", "commode", "shower-seat", "armchair", "tub-bench");
const mayHaveCastors = oneOf("bed", "commode", "shower-seat");

/** A bed can be lain on, and so can the floor; other surfaces are sat on. */
export const canLie = (setup: StepSetup): boolean => isBed(setup) || isFloor(setup);
/** The legs are lifted over a rim or a sill after sitting down. */
export const hasRim = (setup: StepSetup): boolean =>
  setup.rim ?? (isBench(setup) || isCar(setup) || setup.surface.kind === "tub");
export const castorsOf = (setup: StepSetup): "none" | "locked" | "unlocked" | undefined =>
  setup.castors ?? (mayHaveCastors(setup) ? undefined : "none");
export const helpersOf = (setup: StepSetup): number => setup.helpers ?? (setup.helped ? 1 : 0);
export const hasSling = (setup: StepSetup): boolean => setup.sling ?? setup.lift === true;

/** Side of the other surface on which the chair stands. */
export const surfaceSideOf = (setup: StepSetup): Side | undefined =>
  setup.surfaceSide ?? (setup.side && otherSide(setup.side));

/** The kinds of what is left and of what is come to. */
export const kindsOf = (setup: StepSetup): { readonly from: string; readonly to: string } => {
  const chair = setup.chair?.kind ?? "wheelchair";
  return setup.direction === "from-chair"
    ? { from: chair, to: setup.surface.kind }
    : { from: setup.surface.kind, to: chair };
};
const undressedOn = ["toilet", "commode", "tub", "tub-bench", "shower-seat"];
export const isUndressedOn = (kind: string): boolean => undressedOn.includes(kind);
export const isToilet = (kind: string): boolean => kind === "toilet" || kind === "commode";

/** How the two ends are called in reasons: `the bed`, `the car seat`, `the commode`. */
export const surfaceWords = (setup: StepSetup): string => `the ${setup.surface.kind.replaceAll("-", " ")}`;
export const chairWords = (setup: StepSetup): string =>
  setup.chair?.kind === "commode" ? "the commode" : "the chair";
