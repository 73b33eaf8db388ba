/** Findings as an editor shows them: each at its line, none hidden by another. */
import {
  DiagnosticSeverity,
  type Diagnostic,
  type DiagnosticRelatedInformation,
  type Range,
} from "vscode-languageserver-protocol";
import { readEntry } from "../../language/model/entry.js";
import { capital } from "../../language/text/capital.js";
import type { Level } from "../../rules/types.js";
import type { Reported } from "../workspace/reported.js";
import { mentionsIn } from "./mentions.js";
import { locate, type Page } from "./page.js";
import { sentence } from "./show.js";
import { rangeOn } from "./where.js";

const severities: Readonly<Record<Level, DiagnosticSeverity>> = {
  stop: DiagnosticSeverity.Error,
  caution: DiagnosticSeverity.Warning,
  advice: DiagnosticSeverity.Information,
};

/** What comes back from the editor with a request for fixes: which finding was meant. */
export interface DiagnosticData {
  readonly rule: string;
  readonly subject: string;
}

/**
 * `uriOf`: the address of a file of the workspace, for related places. Two findings that read alike at one place (the way there
 * and the way back, say) are shown once.
 */
export function diagnostics(page: Page, uriOf: (path: string) => string): Diagnostic[] {
  const shown = new Map<string, Diagnostic>();
  for (const reported of page.reported) {
    const d = diagnosticOf(page, reported, uriOf);
    const { start, end } = d.range;
    const key = `${start.line} ${start.character} ${end.line} ${end.character} ${d.code!}\n${d.message}`;
    if (!shown.has(key)) shown.set(key, d);
  }
  return [...shown.values()];
}

export function diagnosticOf(page: Page, reported: Reported, uriOf: (path: string) => string): Diagnostic {
  const related = relatedOf(page, reported, uriOf);
  return {
    range: rangeHere(page, reported),
    severity: severities[reported.level],
    code: reported.rule,
    source: "spanwise",
    message: wording(reported),
    ...(related.length > 0 && { relatedInformation: related }),
    data: { rule: reported.rule, subject: reported.subject } satisfies DiagnosticData,
  };
}

/** The message, how far it misses, and what must not be done meanwhile: a person may read nothing else. */
export function wording({ message, level, finding }: Reported): string {
  const lines = [message];
  if (finding?.margin && !message.includes(finding.margin.words))
    lines.push(sentence(capital(finding.margin.words)));
  if (finding?.accepted)
    lines.push(
      `Accepted${finding.accepted.until === undefined ? "" : ` until ${finding.accepted.until}`}: ${finding.accepted.because}`,
    );
  if (level === "stop") for (const c of finding?.cautions ?? []) lines.push(`Meanwhile: ${c}`);
  return lines.join("\n");
}

/** Where a finding is shown in this file: its own place, or for one that stands in a used file, where that thing is first named here. */
export function rangeHere(page: Page, reported: Reported): Range {
  if (reported.path === page.path) return reported.range;
  const thing = reported.finding && readEntry(reported.finding.place.entry).thing;
  const named =
    thing && mentionsIn(page.tree, (name) => name === thing.name).find((m) => m.name === thing.name);
  return named?.range ?? rangeOn(0, 0, 0);
}

function relatedOf(
  page: Page,
  reported: Reported,
  uriOf: (path: string) => string,
): DiagnosticRelatedInformation[] {
  const found: DiagnosticRelatedInformation[] = [];
  if (reported.path !== page.path)
    found.push({
      location: { uri: uriOf(reported.path), range: reported.range },
      message: "It is written here.",
    });
  for (const r of reported.finding?.related ?? []) {
    const at = locate(page.household, r.place);
    if (at) found.push({ location: { uri: uriOf(at.path), range: at.range }, message: r.message });
  }
  return found;
}
