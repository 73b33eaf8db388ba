/** A rule set as read from its text. Everything a rule says is here as data; no rule is written in TypeScript. */
import type { Interval } from "../../language/quantity/interval.js";
import type { Dimension, ShownUnit } from "../../language/quantity/types.js";
import type { Fix, Place } from "../../language/text/types.js";
import type { BasisNote, Grade, VerdictKind } from "../types.js";
import type { Expr } from "./expression.js";
import type { Overlay } from "./overlay-types.js";

/** One file of a rule-set folder. */
export interface RuleFile {
  /** As it is shown and linked, such as `home-transfer/2026.1/height.spanrules`. */
  readonly path: string;
  readonly text: string;
}

/** A place in a rule set: in which file, and where. */
export interface RulePlace {
  readonly path: string;
  /** Counted from the line of its entry. */
  readonly place: Pick<Place, "line" | "start" | "end">;
  /** Line of the entry in the file when the set was read, so that a place can be shown without the tree. */
  readonly line: number;
}

/** Why a rule set is refused. Lines count from 0 in the file. */
export interface SetProblem {
  readonly path: string;
  readonly line: number;
  readonly start: number;
  readonly end: number;
  /** `rules/...`: which of the demands on a rule set is not met. */
  readonly rule: string;
  readonly message: string;
  readonly fixes?: readonly Fix[];
}

export type SourceKind = "standard" | "law" | "study" | "handbook" | "guidance";
export type Extent = "whole" | "part" | "abstract" | "through-another";

export interface Source {
  readonly name: string;
  readonly kind: SourceKind;
  readonly title: string;
  readonly by: string;
  readonly publishedIn?: string;
  readonly year?: number;
  readonly address?: string;
  readonly read: string;
  readonly extent: Extent;
  readonly at: RulePlace;
}

export interface LimitValue {
  readonly name: string;
  readonly interval: Interval;
  readonly dimension: Dimension;
  readonly unit: ShownUnit;
  readonly title: string;
  readonly bases: readonly BasisNote[];
  readonly covers: readonly string[];
  readonly notCovered: readonly string[];
  readonly at: RulePlace;
}

/** A value that stands in where nobody gave one. `tapeable`: a tape can measure it in the home, so it never lets a rule hold. */
export interface DefaultValue extends LimitValue {
  readonly tapeable: boolean;
}

/** A value written in a rule: a number, or the name of a limit. */
export interface BandEnd {
  /** SI; unbounded ends are ±Infinity. */
  readonly value: number;
  readonly limit?: string;
  readonly dimension: Dimension;
  readonly unit: ShownUnit;
}

export interface Band {
  readonly low: BandEnd;
  readonly high: BandEnd;
  readonly grade: Grade;
  readonly message?: string;
  readonly at: RulePlace;
}

/** A band over the choices of a judged word, such as the kind of a cushion. */
export interface ChoiceBand {
  readonly choices: readonly string[];
  readonly grade: Grade;
  readonly message?: string;
  readonly at: RulePlace;
}

export interface ExampleValue {
  /** Undefined: the judged expression itself. */
  readonly fact?: string;
  readonly interval?: Interval;
  readonly dimension?: Dimension;
  readonly choice?: string;
  /** The value is missing. */
  readonly unknown?: boolean;
  /** The value does not exist here (`without`). */
  readonly without?: boolean;
  /** The value rests on a default that a tape could measure. */
  readonly assumed?: boolean;
}

export interface Example {
  readonly values: readonly ExampleValue[];
  /** As written, for explanations. */
  readonly text: string;
  readonly verdict: VerdictKind;
  /** What the example says of the grades; both undefined where it says only `fails`, `unsettled`, `unknown` ... */
  readonly best?: Grade;
  readonly worst?: Grade;
  readonly at: RulePlace;
}

export type Judged =
  | {
      readonly is: "bands";
      readonly expr: Expr;
      readonly bands: readonly Band[];
      readonly choices: readonly ChoiceBand[];
      readonly signed: boolean;
      readonly at: RulePlace;
    }
  | {
      readonly is: "require";
      readonly expr: Expr;
      readonly level: Exclude<Grade, "holds">;
      readonly message?: string;
      readonly at: RulePlace;
    };

export type RemedyRule =
  | { readonly is: "text"; readonly text: string }
  | {
      readonly is: "set";
      readonly role: string;
      readonly key: string;
      readonly text: string;
      readonly at: RulePlace;
    }
  | {
      readonly is: "insert" | "move";
      readonly step: string;
      readonly side: "before" | "after";
      readonly at: RulePlace;
    };

/** What a rule looks at, one by one. */
export type Scope =
  | { readonly is: "transfer" }
  | { readonly is: "thing"; readonly kind: string }
  | { readonly is: "setup" }
  /** Steps whose phrase starts with one of these; every step if there are none. */
  | { readonly is: "step"; readonly phrases: readonly string[] }
  | { readonly is: "end" };

export interface Rule {
  readonly id: string;
  readonly title: string;
  readonly scope: Scope;
  readonly when: readonly { readonly expr: Expr; readonly at: RulePlace }[];
  readonly judged: Judged;
  readonly message?: string;
  readonly unknown?: string;
  readonly because: string;
  readonly bases: readonly BasisNote[];
  readonly covers: readonly string[];
  readonly notCovered: readonly string[];
  readonly remedies: readonly RemedyRule[];
  readonly cautions: readonly string[];
  /** `role.key` or `key` of the subject: the first of these that is written is where a finding stands. */
  readonly places: readonly string[];
  readonly examples: readonly Example[];
  readonly at: RulePlace;
  /** Its number in the order of the files, for a stable order of findings. */
  readonly order: number;
}

/** One line of what differs from the version before. */
export interface Change {
  readonly rule: string;
  readonly text: string;
}

export interface RuleSet {
  readonly name: string;
  readonly version: string;
  readonly title: string;
  readonly issued?: string;
  readonly cautions: readonly string[];
  readonly sources: ReadonlyMap<string, Source>;
  readonly limits: ReadonlyMap<string, LimitValue>;
  readonly defaults: ReadonlyMap<string, DefaultValue>;
  readonly rules: readonly Rule[];
  readonly changes: readonly Change[];
  /** Policies under which the set stands; none for a set as it was released. */
  readonly overlays?: readonly Overlay[];
}

export interface ReadSet {
  /** Undefined if there is any problem: a set is used whole or not at all. */
  readonly set: RuleSet | undefined;
  /** What could be read, for editors that show a set while it is written. */
  readonly partial: RuleSet;
  readonly problems: readonly SetProblem[];
}
