/**
 * Texts with marks for the tests of the editor: `‸` is where the cursor stands, `⟦...⟧a` a place called `a`. The marks are taken
 * out before the text is read.
 */
import { fileURLToPath } from "node:url";
import path from "node:path";
import { expect } from "vitest";
import type { CodeAction, CompletionItem, Position, Range, TextEdit } from "vscode-languageserver-protocol";
import { completion } from "../../../server/editor/completion.js";
import { fixes } from "../../../server/editor/fixes.js";
import { applyChanges, pageOf, type Page } from "../../../server/editor/page.js";
import { RuleSets } from "../../../server/workspace/rule-sets.js";
import { Workspace } from "../../../server/workspace/snapshot.js";

export interface Marked {
  readonly text: string;
  readonly cursor: Position;
  readonly places: { readonly [mark: string]: Range };
}

export function marked(source: string): Marked {
  let text = "";
  let line = 0;
  let character = 0;
  let cursor: Position | undefined;
  const open: Position[] = [];
  const places: { [mark: string]: Range } = {};
  for (let i = 0; i < source.length; i++) {
    const c = source[i]!;
    const here = { line, character };
    if (c === "‸") cursor = here;
    else if (c === "⟦") open.push(here);
    else if (c === "⟧") places[source[++i]!] = { start: open.pop()!, end: here };
    else {
      text += c;
      if (c === "\n") [line, character] = [line + 1, 0];
      else character++;
    }
  }
  return { text, cursor: cursor ?? { line: 0, character: 0 }, places };
}

export const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), "../../..");
export const today = "2026-03-02";
/** Read once for all pages; nothing in it changes. */
const ruleSets = new RuleSets();
const plans = path.resolve(path.sep, "plans");
export const inPlans = (name: string): string => path.join(plans, name);

/** A page of a text that an editor holds, with other texts beside it. */
export function pageWith(text: string, others: { readonly [name: string]: string } = {}): Page {
  const workspace = new Workspace({ roots: [plans], today: () => today, ruleSets });
  for (const [name, other] of Object.entries(others)) workspace.open(inPlans(name), other);
  workspace.open(inPlans("home.span"), text);
  return pageOf(workspace, inPlans("home.span"));
}

/** The page of the same text with edits made, in the same surroundings. */
export const after = (
  page: Page,
  edits: readonly TextEdit[],
  others: { readonly [name: string]: string } = {},
): Page => pageWith(applyChanges(page.text, edits), others);

export const uriOf = (file: string): string => `test:${path.basename(file)}`;

/** What completion offers at the mark. */
export function offersAt(source: string, others: { readonly [name: string]: string } = {}, snippets = false) {
  const { text, cursor } = marked(source);
  const items = completion(pageWith(text, others), cursor, { snippets });
  const labels = items.map((i) => i.label);
  return {
    items,
    labels,
    /** The text with an item taken. */
    taking: (label: string): string =>
      applyChanges(text, [
        editOf(
          items.find((i) => i.label === label),
          label,
        ),
      ]),
  };
}
const editOf = (item: CompletionItem | undefined, label: string): TextEdit => {
  if (!item?.textEdit || !("range" in item.textEdit)) throw new Error(`"${label}" is not offered`);
  return item.textEdit;
};

/** The fixes that touch a place, without those that cannot be taken. */
export const fixesAt = (page: Page, range: Range): CodeAction[] => fixes(page, range, uriOf);

export const editsOf = (action: CodeAction, file = "home.span"): TextEdit[] =>
  action.edit?.changes?.[`test:${file}`] ?? [];

/** Findings of a page as `rule at line`. */
export const rulesOf = (page: Page): string[] => page.reported.map((r) => r.rule);

/** Every offered fix whose title matches is taken by itself; the finding that it answers must then be gone. */
export function expectSettled(
  page: Page,
  range: Range,
  title: RegExp,
  others: { readonly [name: string]: string } = {},
): string {
  const action = fixesAt(page, range).find((a) => title.test(a.title));
  expect(
    action,
    `no fix like ${title} among: ${fixesAt(page, range)
      .map((a) => a.title)
      .join(" | ")}`,
  ).toBeDefined();
  const next = after(page, editsOf(action!), others);
  for (const d of action!.diagnostics ?? []) expect(rulesOf(next)).not.toContain(d.code);
  return next.text;
}
