/**
 * Completion: what may stand at a position, and only that. Worked out from the words before it and the vocabulary, so that it
 * also answers in an empty or a broken file.
 */
import {
  CompletionItemKind,
  InsertTextFormat,
  MarkupKind,
  type CompletionItem,
  type Position,
} from "vscode-languageserver-protocol";
import { setupVocabulary } from "../../language/vocabulary/index.js";
import type { BlockSpec, KeySpec } from "../../language/vocabulary/types.js";
import { stepItems } from "./completion-steps.js";
import { freely, names, proposal, type Proposal } from "./completion-values.js";
import { nextOf } from "./expect.js";
import { formOf } from "./form.js";
import type { Page } from "./page.js";
import { kindOf, rangeOn, specOf, spotAt, type Spot } from "./where.js";

export interface CompletionOptions {
  /** The editor can fill in forms (snippets). */
  readonly snippets: boolean;
}

/** What may stand at the position, the likeliest first. */
export function completion(
  page: Page,
  position: Position,
  options: CompletionOptions = { snippets: false },
): CompletionItem[] {
  const spot = spotAt(page.tree, position);
  if (!spot || spot.inside === "comment") return [];
  return proposals(page, position, spot).map((p, order) => item(p, order, position, spot, options));
}

function item(
  p: Proposal,
  order: number,
  position: Position,
  spot: Spot,
  options: CompletionOptions,
): CompletionItem {
  const snippet = options.snippets ? p.snippet : undefined;
  return {
    label: p.label,
    kind: p.kind,
    sortText: String(order).padStart(4, "0"),
    filterText: p.label,
    ...(p.detail !== undefined && { detail: p.detail }),
    ...(p.help !== undefined && { documentation: { kind: MarkupKind.Markdown, value: p.help } }),
    insertTextFormat: snippet !== undefined ? InsertTextFormat.Snippet : InsertTextFormat.PlainText,
    textEdit: {
      range: rangeOn(position.line, p.from ?? spot.start, spot.end),
      newText: snippet ?? p.text ?? p.label,
    },
  };
}

function proposals(page: Page, position: Position, spot: Spot): readonly Proposal[] {
  if (spot.inside === "text") return inText(page, position, spot);
  if (spot.open.length === 0) return atTop(page, spot);
  const at = specOf(spot.open.map((o) => o.head));
  if (!at) return [];
  if (at.spec.steps) return stepItems(page, position, spot);
  if (at.spec.free) return freely(page, spot);
  return inBlock(page, position, spot, at.kind, at.spec);
}

/** A file after `from "`. */
function inText(page: Page, position: Position, spot: Spot): readonly Proposal[] {
  const [key] = spot.before;
  if (spot.open.length > 0 || key?.type !== "word" || key.word !== "from" || spot.before.length !== 1)
    return [];
  const line = page.tree.lines[position.line]!.text;
  const from = line.lastIndexOf('"', position.character - 1) + 1;
  return page.files().map((path) => ({ label: path, kind: CompletionItemKind.File, from }));
}

function atTop(page: Page, spot: Spot): readonly Proposal[] {
  const { before } = spot;
  if (before.length > 0) {
    const { kind, used } = kindOf(before) ?? { kind: "", used: 0 };
    if (Object.hasOwn(setupVocabulary.blocks, kind))
      return onHead(page, spot, setupVocabulary.blocks[kind]!, used);
    if (kind === "may" && before.length === 1)
      return [{ label: "change", text: "change ", kind: CompletionItemKind.Keyword }];
    const key = Object.hasOwn(setupVocabulary.keys, kind) ? setupVocabulary.keys[kind]! : undefined;
    return key ? values(page, spot, key, used, kind) : [];
  }
  const written = new Set<string>();
  for (const { entry } of page.tree.entries) {
    const kind = kindOf(entry.node.statement.atoms)?.kind;
    // The statement being typed does not count as written.
    if (kind !== undefined) written.add(kind);
  }
  const keys = Object.entries(setupVocabulary.keys).filter(
    ([key, k]) => k.many || !written.has(key) || key === spot.typed.toLowerCase(),
  );
  const blocks = Object.entries(setupVocabulary.blocks).filter(
    ([kind, b]) => !b.once || !written.has(kind) || kind === spot.typed.toLowerCase(),
  );
  const missingFirst = (name: string): number => (written.has(name) ? 1 : 0);
  return [
    ...byNeed(keys)
      .filter(([key]) => missingFirst(key) === 0 && !setupVocabulary.keys[key]!.many)
      .map(([key, k]) => keyProposal(key, k)),
    ...blocks.filter(([kind]) => missingFirst(kind) === 0).map(([kind, b]) => blockProposal(kind, b)),
    ...blocks.filter(([kind]) => missingFirst(kind) === 1).map(([kind, b]) => blockProposal(kind, b)),
    ...keys.filter(([key, k]) => k.many || missingFirst(key) === 1).map(([key, k]) => keyProposal(key, k)),
  ];
}

const rank = (k: KeySpec): number => (k.need === "required" ? 0 : k.need === "wanted" ? 1 : 2);
const byNeed = (keys: readonly (readonly [string, KeySpec])[]): (readonly [string, KeySpec])[] =>
  [...keys].sort(([, a], [, b]) => rank(a) - rank(b));

const needWords = { required: "needed", wanted: "wanted" } as const;
function keyProposal(key: string, k: KeySpec): Proposal {
  return {
    label: key,
    text: k.shape.is === "mention" ? key : `${key} `,
    kind: CompletionItemKind.Property,
    ...(k.need && { detail: needWords[k.need] }),
    help: k.measure ? `${k.help}\n\nHow to measure: ${k.measure}` : k.help,
  };
}
function blockProposal(kind: string, b: BlockSpec): Proposal {
  const words = kind === "may-change" ? "may change" : kind;
  return {
    label: words,
    text: `${words} `,
    snippet: formOf(kind, b),
    kind: CompletionItemKind.Class,
    detail: "form",
    help: b.help,
  };
}

/** Behind a kind: its name where a declared one is meant, then what its head may say. */
function onHead(page: Page, spot: Spot, spec: BlockSpec, used: number): readonly Proposal[] {
  const rest = spot.before.slice(used);
  if (spec.name !== "none" && rest.length === 0)
    return typeof spec.name === "object" ? names(page, spec.name.of, spot) : [];
  const head = spec.head;
  if (!head) return [];
  const next = nextOf({ is: "parts", parts: head }, rest.slice(spec.name === "none" ? 0 : 1));
  return next.flatMap((n) => proposal(page, spot, n, ""));
}

function inBlock(
  page: Page,
  position: Position,
  spot: Spot,
  kind: string,
  spec: BlockSpec,
): readonly Proposal[] {
  const [first] = spot.before;
  if (first) {
    if (first.type !== "word") return [];
    const key = Object.hasOwn(spec.keys, first.word)
      ? spec.keys[first.word]!
      : Object.values(spec.keys).find((k) => k.also?.includes(first.word));
    if (key) return [...values(page, spot, key, 1, first.word), ...unknownToo(spot, key)];
    const inner =
      spec.blocks && Object.hasOwn(spec.blocks, first.word) ? spec.blocks[first.word]! : undefined;
    return inner ? onHead(page, spot, inner, 1) : [];
  }
  const written = writtenIn(page, position, spot);
  const typed = spot.typed.toLowerCase();
  const keys = Object.entries(spec.keys).filter(([key, k]) => k.many || !written.has(key) || key === typed);
  const blocks = Object.entries(spec.blocks ?? {}).filter(
    ([inner, b]) => !b.once || !written.has(inner) || inner === typed,
  );
  // Two ways to say the same thing: once one is used the other is not asked for.
  const open = keys.filter(([key]) => !(key === "steps" && written.has("steps")));
  return [
    ...byNeed(open)
      .filter(([, k]) => k.need)
      .map(([key, k]) => keyProposal(key, k)),
    ...blocks.filter(([inner]) => !written.has(inner)).map(([inner, b]) => blockProposal(inner, b)),
    ...open.filter(([, k]) => !k.need && !k.many).map(([key, k]) => keyProposal(key, k)),
    ...blocks.filter(([inner]) => written.has(inner)).map(([inner, b]) => blockProposal(inner, b)),
    ...open.filter(([, k]) => !k.need && k.many).map(([key, k]) => keyProposal(key, k)),
  ];
}

/** First words of the statements of the block around the position, on both sides of it, without the one being typed. */
function writtenIn(page: Page, position: Position, spot: Spot): ReadonlySet<string> {
  const written = new Set<string>();
  const own = spot.open[spot.open.length - 1]!;
  let depth = 0;
  let inside = false;
  for (let i = own.line; i < page.tree.lines.length; i++) {
    for (const s of page.tree.lines[i]!.items) {
      if (!inside) {
        inside = i === own.line && s.type === "statement" && s.opens && s.start === own.head.start;
        continue;
      }
      if (s.type === "close") {
        if (depth-- === 0) return written;
        continue;
      }
      const word = s.atoms[0];
      const typing = i === position.line && s.start <= position.character && position.character <= s.end;
      if (depth === 0 && word?.type === "word" && !typing) written.add(word.word);
      if (s.opens) depth++;
    }
  }
  return written;
}

/** Nearly every value in a block may be left open in so many words. */
const unknownToo = (spot: Spot, key: KeySpec): readonly Proposal[] =>
  spot.before.length > 1 || ["mention", "text", "code", "date"].includes(key.shape.is)
    ? []
    : [{ label: "unknown", kind: CompletionItemKind.EnumMember, detail: "it must still be found out" }];

/** Behind a key: what its value may be, or how it may go on. */
function values(page: Page, spot: Spot, spec: KeySpec, used: number, key: string): readonly Proposal[] {
  const atoms = spot.before.slice(used);
  if (key === "rules" && atoms.length === 0)
    return page.pins().map((pin) => ({ label: pin, kind: CompletionItemKind.Constant }));
  return nextOf(spec.shape, atoms).flatMap((n) => proposal(page, spot, n, key));
}
