/**
 * What kind of quantity a number is. Mixing two of them is an error at the place where it happens. Dates and times of day are
 * no quantities: they are read and compared as they are written.
 */
export type Dimension =
  "length" | "mass" | "angle" | "force" | "moment" | "pressure" | "ratio" | "duration" | "number";

/** How a quantity is shown back to its writer. */
export interface ShownUnit {
  /** A key of the unit table: "in", "ft", "mm", "cm", "m", "lb", "kg", "deg", "%", "lbf", "N", "day" ... */
  readonly unit: string;
  /** For fractions of an inch: the finest denominator written (1, 2, 4, 8, 16 ...). */
  readonly denominator?: number;
  /** For decimal numbers: how many places were written, where it is more than none. */
  readonly decimals?: number;
  /** Feet and inches together, as in `5 ft 9 in`. */
  readonly compound?: boolean;
}

/** How a value is known. */
export type Known = "measured" | "stated" | "judged" | "estimated";

/** A quantity as somebody wrote it. Bounds and nominal value in SI units. */
export interface Quantity {
  readonly type: "quantity";
  readonly dimension: Dimension;
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
  /** Whether a tolerance or a range was written; if not, the rule set's default for `known` applies. */
  readonly toleranceGiven: boolean;
  /** `adjusts 15 in to 26 in` is a range of choice, `about 15 in to 16 in` a range of doubt. */
  readonly shape: "plain" | "adjusts" | "about";
  readonly known: Known;
  /** Whether `known` was written (a bare value counts as measured). */
  readonly knownGiven: boolean;
  readonly by?: string;
  readonly on?: string;
  readonly unit: ShownUnit;
}

/** `unknown`: somebody must still measure. */
export interface Unknown {
  readonly type: "unknown";
}
