/** The form of one row of the table of steps. */

export interface PhraseRow {
  /** The formatter's words, without side and name. */
  readonly verb: string;
  /** The client's own left or right must be said. */
  readonly side?: true;
  /** A name may follow: the surface beside which the chair is parked (`approach bed`). */
  readonly object?: "surface";
  /** What people also type, in lower case; compound words are mended first (`leg rest`, `swing-away`). */
  readonly also?: readonly string[];
  readonly help: string;
  readonly needs: string;
  readonly changes: string;
}
