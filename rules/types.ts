/** What a check returns. Windows show these objects and compute nothing of their own. */
import type { Interval } from "../language/quantity/interval.js";
import type { Dimension, ShownUnit } from "../language/quantity/types.js";
import type { Place } from "../language/text/types.js";

export type Level = "advice" | "caution" | "stop";
export type Grade = "holds" | Level;
export type VerdictKind = "holds" | "fails" | "unsettled" | "unknown" | "not-applicable";
export const grades: readonly Grade[] = ["holds", "advice", "caution", "stop"];

export type Basis = "published" | "derived" | "common-practice" | "from-memory" | "project-choice";

/** A value that nobody gave, taken from the rule set. */
export interface Assumption {
  /** Name of the default in the rule set. */
  readonly name: string;
  readonly interval: Interval;
  readonly dimension: Dimension;
  /** A tape can measure it in the home: then it may make a rule fail or stay unsettled, never hold. */
  readonly tapeable: boolean;
}

/** Something that must be measured or decided before a quantity can be known. */
export interface Missing {
  /** In words: "the bed's loaded height (top-loaded)". */
  readonly what: string;
  /** Where it would be written, if that thing exists. */
  readonly place?: Place;
  /** The statement to insert there, e.g. `top-loaded unknown`. */
  readonly key?: string;
}

/** One line of arithmetic, as a hover or a page shows it. */
export interface Term {
  readonly label: string;
  readonly value?: Interval;
  readonly dimension?: Dimension;
  readonly unit?: ShownUnit;
  /** The formula of this line in words and symbols, if it is a step. */
  readonly formula?: string;
  /** Where it was written, or which default or quantity it is. */
  readonly place?: Place;
  readonly default?: string;
  readonly quantity?: string;
}

/** A derived quantity on one subject. */
export interface Computed {
  readonly name: string;
  readonly dimension: Dimension;
  /** Undefined where an input is missing or the quantity does not apply. */
  readonly value: Interval | undefined;
  /** For quantities that name a thing, such as which part touches first. */
  readonly choice?: string;
  /** Why it does not apply (no board, say); then neither value nor missing is set. */
  readonly without?: string;
  readonly missing: readonly Missing[];
  readonly assumed: readonly Assumption[];
  readonly trace: readonly Term[];
  /** The unit in which it is shown: that of the first input. */
  readonly unit: ShownUnit;
}

export interface Citation {
  readonly id: string;
  readonly at: string;
  readonly says: string;
  readonly takes: string;
}

export interface BasisNote {
  readonly basis: Basis;
  readonly text: string;
  readonly citation?: Citation;
}

/** Text to put into a file, by place; several for one remedy are applied together. */
export interface Edit {
  readonly place: Place;
  readonly text: string;
}

export interface Remedy {
  readonly title: string;
  readonly edits?: readonly Edit[];
}

export interface Verdict {
  readonly rule: string;
  /** `into-bed`, `into-bed step 7`, `bed`, `setup`. */
  readonly subject: string;
  readonly verdict: VerdictKind;
  readonly levels: { readonly best: Grade; readonly worst: Grade };
  /** Why it does not apply or is not known. */
  readonly reason?: string;
}

export interface Finding extends Verdict {
  readonly place: Place;
  readonly message: string;
  readonly because: string;
  readonly value: (Interval & { readonly dimension: Dimension; readonly unit: ShownUnit }) | undefined;
  readonly limit:
    | (Interval & { readonly name: string; readonly dimension: Dimension; readonly unit: ShownUnit })
    | undefined;
  /** Signed distance to the nearest bound of `holds`, SI; negative: by how much it misses. In words beside it. */
  readonly margin?: { readonly value: number; readonly words: string };
  readonly bases: readonly BasisNote[];
  readonly related: readonly { readonly place: Place; readonly message: string }[];
  readonly remedies: readonly Remedy[];
  readonly cautions: readonly string[];
  readonly missing: readonly Missing[];
  readonly accepted:
    | { readonly until: string | undefined; readonly because: string; readonly approvedBy?: string }
    | undefined;
}

export interface TransferResult {
  readonly name: string;
  readonly cleared: boolean;
  /** What is left to do, one line each. */
  readonly left: readonly string[];
}
