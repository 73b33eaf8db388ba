/** Findings as an editor shows them: each at its line, none hidden by another. */
import { DiagnosticSeverity, type Diagnostic } from "vscode-languageserver-protocol";
import type { Level } from "../../rules/types.js";
import type { Noted, Page } from "./page.js";

const severities: Readonly<Record<Level, DiagnosticSeverity>> = {
  stop: DiagnosticSeverity.Error,
  caution: DiagnosticSeverity.Warning,
  advice: DiagnosticSeverity.Information,
};

/** What comes back from the editor with a request for fixes: which finding was meant. */
export interface DiagnosticData {
  readonly finding: number;
  readonly rule: string;
}

/** `uriOf`: the address of a file of the workspace, for related places. */
export function diagnostics(page: Page, uriOf: (path: string) => string): Diagnostic[] {
  return page.noted.map((noted, finding) => ({
    range: noted.range,
    severity: severities[noted.level],
    code: noted.rule,
    source: "spanwise",
    message: wording(noted),
    ...(noted.related.length > 0 && {
      relatedInformation: noted.related.map((r) => ({ location: { uri: uriOf(r.path), range: r.range }, message: r.message })),
    }),
    data: { finding, rule: noted.rule } satisfies DiagnosticData,
  }));
}

/** The message, how far it misses, and what must not be done meanwhile: a person may read nothing else. */
export function wording(noted: Noted): string {
  const { finding } = noted;
  const lines = [noted.message];
  if (finding?.margin && !noted.message.includes(finding.margin.words)) lines.push(sentence(finding.margin.words));
  if (noted.level === "stop") for (const c of finding?.cautions ?? []) lines.push(`Meanwhile: ${c}`);
  return lines.join("\n");
}

const sentence = (words: string): string => {
  const text = words.charAt(0).toUpperCase() + words.slice(1);
  return /[.!?]$/.test(text) ? text : `${text}.`;
};
