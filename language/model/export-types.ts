/** The household as plain JSON: the form in which it leaves the program. Fields may be added; these stay. */

/** Somebody must still find it out. */
export interface UnknownJson {
  readonly unknown: true;
}

/**
 * A quantity. Where no tolerance and no range was written, `low`, `nominal` and `high` are one number: how far off it may be is
 * for the rule set to say, by how it is known.
 */
export interface QuantityJson {
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
  /** SI: `m`, `kg`, `rad`, `N`, `N m`, `Pa`, `s`; `1` for shares and plain numbers. */
  readonly unit: string;
  /** `measured` also where nothing is said. */
  readonly known: "measured" | "stated" | "judged" | "estimated";
  /** Role of whoever judged or measured it. */
  readonly by?: string;
  /** ISO 8601 date. */
  readonly on?: string;
  /** `adjusts`: any value of the range can be chosen. `about`: the true one lies in it. */
  readonly range?: "adjusts" | "about";
  /** A tolerance or a range was written. */
  readonly tolerance: boolean;
  /** As it was written, with its unit. */
  readonly as: string;
}

/** Choices, names, texts and dates are strings, `none` among them; `yes` and `no` are booleans; a key that stands alone is true. */
export type ValueJson =
  | string
  | boolean
  | UnknownJson
  | QuantityJson
  | readonly ValueJson[]
  | { readonly [part: string]: ValueJson };

export interface ValuesJson {
  readonly [key: string]: ValueJson;
}

/** One step of a transfer, or a line among the steps that was not understood. */
export type StepJson =
  | {
      readonly verb: string;
      /** The client's own. */
      readonly side?: "left" | "right";
      /** Name of the surface, where one was written. */
      readonly object?: string;
      readonly text: string;
    }
  | { readonly unknown: true; readonly text: string };

export interface ThingJson {
  /** Left out for a kind that has no names. */
  readonly name?: string;
  /** The file that declares it, as the plan writes its path; left out for what the plan itself declares. */
  readonly from?: string;
  /** By key, in the order of the vocabulary. A key that was not written is left out: nobody looked. */
  readonly values: ValuesJson;
  /**
   * Blocks inside it, by kind: one for a kind that stands only once, else a list. A block of steps is the list of its steps.
   */
  readonly parts?: {
    readonly [kind: string]: ThingJson | readonly ThingJson[] | readonly StepJson[];
  };
  readonly steps?: readonly StepJson[];
  /** Its lines as written, for a block whose lines start with names: `may change`. What they say is in `changes` of the household. */
  readonly lines?: readonly string[];
  /** Values that were understood and do not count: an older one where each has its date, or all that contradict each other. */
  readonly notCounted?: { readonly [key: string]: readonly ValueJson[] };
  /** Lines in it that were not understood, as written. */
  readonly notUnderstood?: readonly string[];
}

/** Something that may be changed, with the words behind it. */
export type ChangeJson = { readonly thing: string; readonly words?: string } & (
  | {
      readonly is: "value";
      /** The block inside the thing in which the key stands. */
      readonly block?: string;
      readonly key: string;
      /** What it may be: of a quantity, the range. */
      readonly value: ValueJson;
    }
  /** The thing may be used in place of the other. */
  | { readonly is: "instead"; readonly of: string }
  | { readonly is: "moved" | "removed" }
);

export interface HouseholdJson {
  readonly format: 1;
  /** What stands alone at top level, by key; a key that may stand several times holds a list. */
  readonly statements: ValuesJson;
  /** By kind, then by name. */
  readonly things: { readonly [kind: string]: { readonly [name: string]: ThingJson } };
  /** What the consultant is free to change, in the order of the file. */
  readonly changes: readonly ChangeJson[];
  /**
   * What is said about a thing and bears its name, by kind, in the order of the file: trials of a transfer (`trial`), and any
   * other kind of which several may stand for one thing.
   */
  readonly records: { readonly [kind: string]: readonly ThingJson[] };
  /** What was declared again under a name that was taken, and statements beside the one that counts. */
  readonly notCounted?: {
    readonly things?: { readonly [kind: string]: readonly ThingJson[] };
    readonly statements?: { readonly [key: string]: readonly ValueJson[] };
  };
  /** Lines at top level that were not understood, as written. */
  readonly notUnderstood?: readonly string[];
}
