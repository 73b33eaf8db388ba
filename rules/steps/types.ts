/** The state that the steps of a transfer act on, and the part of it that geometry reads. */

/** How a leg rest stands: the hanger and plate in front, swung to the side, or lifted off. */
export type LegRestState = "in-place" | "swung" | "removed";
/** How an armrest stands; `away` covers swung, flipped and removed. */
export type ArmrestState = "in-place" | "away";

/** The chair as the solids in plan see it. */
export interface Equipment {
  readonly legrests: { readonly left: LegRestState; readonly right: LegRestState };
  readonly armrests: { readonly left: ArmrestState; readonly right: ArmrestState };
  /** The client has moved forward on the seat. */
  readonly scooted: boolean;
}
