/**
 * Texts with marks: `⟦the words at fault⟧a` names a span; `findings` checks that just these findings of form stand at just these
 * spans, and nothing else. No setup can hold the marks.
 */
import { expect } from "vitest";
import {
  emptyLibrary,
  householdOf,
  readSetup,
  type Household,
  type Library,
} from "../../language/model/household.js";

export function unmark(marked: string): {
  text: string;
  spans: Map<string, { line: number; start: number; end: number }>;
} {
  const spans = new Map<string, { line: number; start: number; end: number }>();
  const lines = marked.split("\n").map((line, number) => {
    let out = line;
    for (;;) {
      const found = /⟦([^⟦⟧]*)⟧([a-z])/.exec(out);
      if (!found) return out;
      spans.set(found[2]!, { line: number, start: found.index, end: found.index + found[1]!.length });
      out = out.slice(0, found.index) + found[1]! + out.slice(found.index + found[0].length);
    }
  });
  return { text: lines.join("\n"), spans };
}

export const household = (text: string, library: Library = emptyLibrary): Household =>
  householdOf("home.span", readSetup(text), library);

/** Findings of form of a marked text; keys that are merely absent are left out unless asked for. */
export function findings(
  marked: string,
  expected: { readonly [mark: string]: string },
  library: Library = emptyLibrary,
): Household {
  const { text, spans } = unmark(marked);
  const home = household(text, library);
  const found = home.problems
    .filter((p) => p.rule !== "form/key-missing")
    .map((p) => `${p.rule} ${p.line}:${p.start}-${p.end}`);
  const wanted = Object.entries(expected).map(([mark, rule]) => {
    const s = spans.get(mark)!;
    return `${rule} ${s.line}:${s.start}-${s.end}`;
  });
  expect(found.sort()).toEqual(wanted.sort());
  return home;
}

/** The text after the fix of the finding of this rule whose title matches. */
export function fixed(text: string, rule: string, title: RegExp): string {
  const problem = household(text).problems.find((p) => p.rule === rule);
  if (!problem) throw new Error(`No finding ${rule} in ${text}`);
  const fix = problem.fixes?.find((f) => title.test(f.title));
  if (!fix) throw new Error(`No fix like ${title} among ${problem.fixes?.map((f) => f.title).join(" | ")}`);
  const lines = text.split("\n");
  const line = lines[problem.line]!;
  lines[problem.line] =
    line.slice(0, fix.start ?? problem.start) + fix.text + line.slice(fix.end ?? problem.end);
  return lines.join("\n");
}
