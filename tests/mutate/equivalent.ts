/** Mutants that mean the same as the original, so that no example can tell them from it. */
import type { Kind } from "./expressions.js";

export interface Equivalent {
  /** The rule or limit. */
  readonly of: string;
  readonly kind: Kind;
  readonly said: string;
  readonly reason: string;
}

export const equivalents: readonly Equivalent[] = [];
