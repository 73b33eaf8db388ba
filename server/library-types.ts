/**
 * What the library gives: plain data, the same that `spanwise check --as json` prints for one plan. SI units (m, kg, N, rad, s, 1);
 * `null` stands for an unbounded end. Fields may be added; these stay.
 */

/** Zero-based; `character` in UTF-16 code units. */
export interface Position {
  readonly line: number;
  readonly character: number;
}
export interface Range {
  readonly start: Position;
  readonly end: Position;
}

export type Level = "advice" | "caution" | "stop";
export type Grade = "holds" | Level;
export type VerdictKind = "holds" | "fails" | "unsettled" | "unknown";
export type Basis = "published" | "derived" | "common-practice" | "from-memory" | "project-choice";

/** The worst and the best that may be true, for anything within what is known. */
export interface Levels {
  readonly best: Grade;
  readonly worst: Grade;
}

export interface Interval {
  readonly low: number | null;
  readonly nominal: number | null;
  readonly high: number | null;
  readonly unit: string;
}

/** A line that could not be understood, or that is doubtful. */
export interface Problem {
  /** `form/...` */
  readonly rule: string;
  readonly level: "advice" | "caution";
  /** The file in which it stands. */
  readonly path: string;
  readonly range: Range;
  readonly message: string;
}

export interface Finding {
  /** A rule of the rule set, or `form/...`. */
  readonly rule: string;
  /** As it is shown: what is unsettled or unknown stands at the higher of its certain level and one below its worst. */
  readonly level: Level;
  readonly verdict: VerdictKind;
  readonly levels: Levels;
  /** `into-bed`, `into-bed step 7`, `bed`; a finding of form stands at `setup`. */
  readonly subject: string;
  /** The file, where it is another one than the plan. */
  readonly path?: string;
  readonly range: Range;
  readonly message: string;
  readonly value: Interval | null;
  readonly limit: (Interval & { readonly name: string }) | null;
  readonly because: string | null;
  readonly basis: readonly Basis[];
  readonly sources: readonly {
    readonly id: string;
    readonly at: string;
    readonly says: string;
    readonly takes: string;
  }[];
  readonly related: readonly { readonly path: string; readonly range: Range; readonly message: string }[];
  /** What must be measured before it can be judged. */
  readonly missing: readonly string[];
  readonly remedies: readonly { readonly title: string }[];
  /** What a person must not do meanwhile. */
  readonly cautions: readonly string[];
  readonly accepted: {
    readonly because: string;
    readonly until: string | null;
    readonly approvedBy: string | null;
  } | null;
}

/** One rule on one subject, those that hold included. */
export interface Verdict {
  readonly rule: string;
  readonly subject: string;
  readonly verdict: VerdictKind;
  readonly levels: Levels;
}

export interface Transfer {
  readonly name: string;
  readonly cleared: boolean;
  /** What is left to do, one line each. */
  readonly left: readonly string[];
}

/** A derived quantity of one transfer. */
export interface Quantity extends Interval {
  readonly name: string;
  readonly subject: string;
  /** For a quantity that names a thing, such as which part touches first. */
  readonly choice?: string;
}

export interface CheckedPlan {
  readonly path: string;
  /** The day as of which it was judged. */
  readonly on: string;
  /** Null where no rule was applied; `findings` says why, and nothing says that the plan is good. */
  readonly ruleSet: { readonly name: string; readonly version: string; readonly hash: string } | null;
  /** Everything that neither holds nor is out of place, findings of form included, in the order of the file. */
  readonly findings: readonly Finding[];
  readonly verdicts: readonly Verdict[];
  readonly transfers: readonly Transfer[];
  readonly quantities: readonly Quantity[];
  /** What goes with every result, whatever it says: a plan is no substitute for a trial, a licensed therapist or the makers. */
  readonly cautions: readonly string[];
}
