/**
 * A policy: a small file beside the plans that changes a released rule set for one place of work. It may ask for more as it likes;
 * to ask for less it must say why, who answers for it, and until when.
 */
import type { Level } from "../types.js";
import type { Band, ChoiceBand, Example, LimitValue, RulePlace, RuleSet, SetProblem } from "./types.js";

/** Why a policy changes something; all three are needed where it asks for less. */
export interface Reasons {
  readonly because?: string;
  /** A role, never a person's name. */
  readonly approvedBy?: string;
  /** ISO 8601; the last day on which it holds. */
  readonly until?: string;
}

export interface PolicyHead {
  readonly name: string;
  readonly title: string;
  /** The rule sets for which it was written. */
  readonly for: readonly { readonly name: string; readonly version: string }[];
  readonly by?: string;
  readonly issued?: string;
  readonly at: RulePlace;
}

export type PolicyLimit = Reasons & Pick<LimitValue, "name" | "interval" | "dimension" | "unit" | "at">;

export interface PolicyRule extends Reasons {
  readonly id: string;
  readonly off: boolean;
  readonly levels: readonly { readonly from: Level; readonly to: Level; readonly at: RulePlace }[];
  readonly bands?: {
    readonly bands: readonly Band[];
    readonly choices: readonly ChoiceBand[];
    readonly signed: boolean;
    readonly at: RulePlace;
  };
  readonly examples?: readonly Example[];
  readonly at: RulePlace;
}

export interface Policy {
  readonly head: PolicyHead | undefined;
  readonly limits: readonly PolicyLimit[];
  readonly rules: readonly PolicyRule[];
  readonly problems: readonly SetProblem[];
}

/** One thing that a policy changes, as every report lists it. */
export interface OverlayChange extends Reasons {
  readonly is: "limit" | "levels" | "bands" | "off";
  /** Name of the limit or id of the rule. */
  readonly name: string;
  /** In one sentence, old and new. */
  readonly text: string;
  /** Whether it asks for less somewhere, or could. */
  readonly loosens: boolean;
  /** The rules that ask otherwise because of it. */
  readonly rules: readonly string[];
  readonly at: RulePlace;
}

/** A policy as it is in force. */
export interface Overlay {
  readonly name: string;
  readonly title: string;
  /** The file, as it is shown. */
  readonly path: string;
  readonly by?: string;
  readonly issued?: string;
  readonly changes: readonly OverlayChange[];
}

/** A rule set under a policy, or why the policy is refused. */
export interface OverlaidSet {
  readonly set: RuleSet | undefined;
  readonly overlay: Overlay | undefined;
  readonly problems: readonly SetProblem[];
}
