/**
 * The steps of a transfer between a wheelchair and another surface, each declared once: how it is written, what people type
 * for it, what it needs and what it changes. The rows stand in the usual order of work (common practice); completion shows
 * them in that order, and a planned order takes the earlier row where two orders are equally short.
 */

import { across } from "./step-rows-across.js";
import { after } from "./step-rows-after.js";
import { before } from "./step-rows-before.js";
import { lifting } from "./step-rows-lift.js";
import type { PhraseRow } from "./step-row.js";

/** One table in four files, in the usual order of work. */
const rows = [...before, ...across, ...lifting, ...after] as const;

export type Verb = (typeof rows)[number]["verb"];
export interface StepPhrase extends PhraseRow {
  readonly verb: Verb;
}

/** All steps that can be written, in the usual order of work. */
export const stepPhrases: readonly StepPhrase[] = rows;
