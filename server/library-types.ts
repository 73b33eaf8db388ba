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

export interface MeasureNext {
  /** In words. */
  readonly what: string;
  /** `missing`: nothing is known of it; `assumed`: the rule set's value stands in; `inexact`: it must be read with more care. */
  readonly state: "missing" | "assumed" | "inexact";
  /** The thing, the block inside it and the key, where it is one of the vocabulary. */
  readonly kind: string | null;
  readonly thing: string | null;
  readonly block: string | null;
  readonly key: string | null;
  /** How to measure it in a home. */
  readonly how: string | null;
  /** The file, where it is another one than the plan. */
  readonly path?: string;
  readonly range: Range | null;
  /** Judgements that are settled whichever of the values that were tried comes out, and by the luckiest of them. */
  readonly settles: number;
  readonly settlesAtMost: number;
  /** Rules that wait for it. */
  readonly rules: readonly string[];
}

export interface CheckedPlan {
  readonly path: string;
  /** The day as of which it was judged. */
  readonly on: string;
  /** Null where no rule was applied; `findings` says why, and nothing says that the plan is good. */
  readonly ruleSet: {
    readonly name: string;
    readonly version: string;
    readonly hash: string;
    /** Policies under which the set stands. The library reads no files, so that a plan which names a policy is not judged by it. */
    readonly overlays: readonly object[];
    /** The newest version inside, where there is a newer one. */
    readonly newer: string | null;
  } | null;
  /** Everything that neither holds nor is out of place, findings of form included, in the order of the file. */
  readonly findings: readonly Finding[];
  readonly verdicts: readonly Verdict[];
  readonly transfers: readonly Transfer[];
  readonly quantities: readonly Quantity[];
  /** What is not known or not settled, the most useful measurement first. */
  readonly measureNext: readonly MeasureNext[];
  /** What goes with every result, whatever it says: a plan is no substitute for a trial, a licensed therapist or the makers. */
  readonly cautions: readonly string[];
}
