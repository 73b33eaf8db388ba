/** Quick fixes: what would settle a finding, as changes of text. Each kind of fix is one function; they are listed once, at the end. */
import {
  CodeActionKind,
  type CodeAction,
  type Diagnostic,
  type Range,
  type TextEdit,
} from "vscode-languageserver-protocol";
import { capital } from "../../language/text/capital.js";
import type { Reported } from "../workspace/reported.js";
import { diagnosticOf, rangeHere } from "./diagnostics.js";
import { planFixes } from "./fixes-plan.js";
import { locate, type Page } from "./page.js";
import { rangeOn, touches } from "./where.js";

export interface FixContext {
  readonly page: Page;
  readonly range: Range;
  readonly uriOf: (path: string) => string;
}

/** A change as it is offered, before it is an action of the editor. */
export interface Proposed {
  readonly title: string;
  readonly edits: readonly { readonly path: string; readonly edit: TextEdit }[];
  /** The findings that it answers. */
  readonly for: readonly Reported[];
  /** Why it cannot be done, where it should be seen that it was tried. */
  readonly disabled?: string;
  readonly preferred?: boolean;
}

export type FixSource = (context: FixContext, reported: readonly Reported[]) => readonly Proposed[];

/** Code actions for what stands in a range. `disabled`: the editor can show actions that cannot be taken, with the reason. */
export function fixes(
  page: Page,
  range: Range,
  uriOf: (path: string) => string,
  options: { readonly disabled?: boolean } = {},
): CodeAction[] {
  const touched = page.reported.filter((r) => touches(rangeHere(page, r), range));
  return sources
    .flatMap((source) => source({ page, range, uriOf }, touched))
    .filter((p) => options.disabled || p.disabled === undefined)
    .map((p) => actionOf(p, uriOf, (r) => diagnosticOf(page, r, uriOf)));
}

function actionOf(
  p: Proposed,
  uriOf: (path: string) => string,
  shown: (r: Reported) => Diagnostic,
): CodeAction {
  const changes: { [uri: string]: TextEdit[] } = {};
  for (const { path, edit } of p.edits) (changes[uriOf(path)] ??= []).push(edit);
  return {
    title: p.title,
    kind: CodeActionKind.QuickFix,
    ...(p.for.length > 0 && { diagnostics: p.for.map(shown) }),
    ...(p.disabled !== undefined ? { disabled: { reason: p.disabled } } : { edit: { changes } }),
    ...(p.preferred && { isPreferred: true }),
  };
}

/** What the reader of the text offers for a finding of form. */
const formFixes: FixSource = ({ page }, reported) =>
  reported.flatMap((r) => {
    const problem = r.problem;
    if (!problem?.fixes || r.path !== page.path) return [];
    const only = problem.fixes.length === 1;
    return problem.fixes.map((fix): Proposed => {
      const edit = plainEdit(problem.line, fix.start ?? problem.start, fix.end ?? problem.end, fix.text);
      return { title: fix.title, edits: [{ path: page.path, edit }], for: [r], preferred: only };
    });
  });

const plainEdit = (line: number, start: number, end: number, newText: string): TextEdit => ({
  range: rangeOn(line, start, end),
  newText,
});

/** What a rule offers for a finding of substance, where it comes with a change. */
const remedyFixes: FixSource = ({ page }, reported) =>
  reported.flatMap((r) =>
    (r.finding?.remedies ?? []).flatMap((remedy): Proposed[] => {
      const edits = (remedy.edits ?? []).flatMap((e) => {
        const at = locate(page.household, e.place);
        if (!at) return [];
        const range = e.text === "" && at.path === page.path ? withItsLine(page, at.range) : at.range;
        return [{ path: at.path, edit: { range, newText: e.text } }];
      });
      // A remedy half of which has no place would do half of what it says.
      if (edits.length === 0 || edits.length < remedy.edits!.length) return [];
      return [
        {
          title: titleOf(
            remedy.title,
            edits.map((e) => e.edit.newText),
          ),
          edits,
          for: [r],
        },
      ];
    }),
  );

/** A statement that is taken away takes its line along, unless something else stands on it. */
function withItsLine(page: Page, range: Range): Range {
  const { line } = range.start;
  const text = page.tree.lines[line]!.text;
  const alone = (text.slice(0, range.start.character) + text.slice(range.end.character)).trim() === "";
  return alone && line + 1 < page.tree.lines.length
    ? { start: { line, character: 0 }, end: { line: line + 1, character: 0 } }
    : range;
}

/** The remedy in its own words; where it gives a range, also the value that would be written. */
function titleOf(title: string, texts: readonly string[]): string {
  const words = capital(title);
  const values = texts.every((t) => /^\d/.test(t));
  return values ? `${words.replace(/\.$/, "")} (writes ${[...new Set(texts)].join(", ")})` : words;
}

/** Where the order of steps is missing or left to the tool: the planned steps, and a way back for a transfer that has none. */
const plans: FixSource = (context) => planFixes(context);

/** One change that several findings ask for is offered once. */
const once =
  (source: FixSource): FixSource =>
  (context, reported) => {
    const seen = new Map<string, Proposed>();
    for (const p of source(context, reported)) {
      const key = p.title + JSON.stringify(p.edits);
      const before = seen.get(key);
      seen.set(key, before ? { ...before, for: [...before.for, ...p.for] } : p);
    }
    return [...seen.values()];
  };

const sources: readonly FixSource[] = [once(formFixes), once(remedyFixes), plans];
