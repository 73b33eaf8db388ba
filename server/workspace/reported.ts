/** One shape for findings of form and findings of substance, with places as lines and columns of a file. */
import type { FormProblem, Household } from "../../language/model/household.js";
import type { Place } from "../../language/text/types.js";
import type { Finding, Grade, Level, VerdictKind } from "../../rules/types.js";
import { grades } from "../../rules/types.js";
import { byText } from "./files.js";

/** Zero-based line; `character` in UTF-16 code units. */
export interface Position {
  readonly line: number;
  readonly character: number;
}
export interface Range {
  readonly start: Position;
  readonly end: Position;
}

export interface Reported {
  /** A rule of the rule set, or `form/...`. */
  readonly rule: string;
  /** As it is shown: what is unsettled or unknown stands at the higher of its certain level and one below its worst. */
  readonly level: Level;
  readonly verdict: VerdictKind;
  readonly levels: { readonly best: Grade; readonly worst: Grade };
  /** `into-bed`, `into-bed step 7`, `bed`; a finding of form stands at `setup`. */
  readonly subject: string;
  /** The file in which it stands: the file checked, or one that it uses. */
  readonly path: string;
  readonly range: Range;
  readonly message: string;
  /** Either of the two, never both. */
  readonly finding?: Finding;
  readonly problem?: FormProblem;
}

/** The level at which a range of levels is shown: the certain one, or one below the worst where that is higher. */
export function shownLevel(levels: { readonly best: Grade; readonly worst: Grade }): Level {
  const [best, worst] = [grades.indexOf(levels.best), grades.indexOf(levels.worst)];
  return grades[Math.max(1, best, worst - 1)] as Level;
}

/** Whether a level is the other one or graver. */
export const atLeast = (level: Level, other: Level): boolean =>
  grades.indexOf(level) >= grades.indexOf(other);

/** Turns a place into a file and a range. A place whose entry is no longer in the household falls back to the file's start. */
export function located(
  household: Household,
  place: Place,
): { readonly path: string; readonly range: Range } {
  const spot = household.locate(place.entry);
  const line = spot ? spot.line + place.line : 0;
  const [from, to] = spot ? [place.start, place.end] : [0, 0];
  return {
    path: spot?.path ?? household.path,
    range: { start: { line, character: from }, end: { line, character: to } },
  };
}

export function reportForm(p: FormProblem): Reported {
  return {
    rule: p.rule,
    level: p.level,
    verdict: "fails",
    levels: { best: p.level, worst: p.level },
    subject: "setup",
    path: p.path,
    range: { start: { line: p.line, character: p.start }, end: { line: p.line, character: p.end } },
    message: p.message,
    problem: p,
  };
}

export function reportFinding(household: Household, f: Finding): Reported {
  return {
    rule: f.rule,
    level: shownLevel(f.levels),
    verdict: f.verdict,
    levels: f.levels,
    subject: f.subject,
    ...located(household, f.place),
    message: f.message,
    finding: f,
  };
}

/** Own file first, then by position, then by rule: the same order for the same content. */
export function inReportOrder(own: string, reported: Reported[]): Reported[] {
  return reported.sort(
    (a, b) =>
      Number(a.path !== own) - Number(b.path !== own) ||
      byText(a.path, b.path) ||
      a.range.start.line - b.range.start.line ||
      a.range.start.character - b.range.start.character ||
      byText(a.rule, b.rule) ||
      byText(a.subject, b.subject),
  );
}
