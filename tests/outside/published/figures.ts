/**
 * The form in which printed figures are kept, and how figures are read out of a text.
 *
 * The rows of this folder were copied from the sources, never from the rule set: they are what the rule set is compared with.
 * They are kept by topic, one file each; `index.ts` puts them together.
 */

/** What stands at a place in a source. Places without a figure print words only. */
export interface Printed {
  /** Name of the source, as the rule set names it. */
  readonly source: string;
  /** The place, as a citation names it: section, table, heading. */
  readonly at: string;
  /** The figures as printed there, both units where both are printed. No numbers of sections: they would be read as figures. */
  readonly figures: readonly string[];
  /** Figures that follow by arithmetic from what is printed; the row says how. */
  readonly follows?: readonly number[];
  /** The versions that cite this place, where not all of them do. */
  readonly only?: Only;
}

/** The versions for which a row stands, and why not for the others. */
export interface Only {
  readonly versions: readonly string[];
  readonly because: string;
}

/** Whether a row stands for this version: every row does that names none. */
export const standsFor = (row: { readonly only?: Only }, version: string): boolean =>
  row.only === undefined || row.only.versions.includes(version);

/** A limit that claims to be published, and what its source prints. */
export interface PrintedLimit {
  /** Name of the limit in the rule set. */
  readonly name: string;
  readonly printed: number;
  /** Symbol of the unit in which it is printed. */
  readonly unit: string;
  readonly source: string;
  readonly at: string;
  /** How far the rule set may round it to a mark of the tape, in the printed unit. */
  readonly rounding: number;
  /** The versions that have this limit, where not all of them do. A version with another figure has a row of its own. */
  readonly only?: Only;
}

const figure = /(\d+:\d+)|(?<![.\d])(?:(\d+) )?(\d+)\/(\d+)(?![.\d])|(\d+(?:\.\d+)?|\.\d+)/g;

/**
 * Figures of a text. `3.5`, `.530`, `1/4` and `8 1/3` are read as numbers. `1:12` stays a word: neither its 1 nor its 12 is a
 * figure by itself, or 1:6 would pass where 1:8 and 6 in are printed.
 */
export const figuresIn = (text: string): readonly (number | string)[] =>
  [...text.matchAll(figure)].map(([, ratio, whole, over, under, plain]) => {
    if (ratio !== undefined) return ratio;
    if (plain !== undefined) return Number(plain);
    return Number(whole ?? 0) + Number(over) / Number(under);
  });
