/** From a name to where it is declared, and to where else it is used; from a file's name to the file. */
import {
  DocumentHighlightKind,
  type DocumentHighlight,
  type Location,
  type Position,
} from "vscode-languageserver-protocol";
import { mentionAt, mentionsIn } from "./mentions.js";
import type { Page } from "./page.js";
import { hitAt, rangeOn } from "./where.js";

type UriOf = (path: string) => string;

export function definition(page: Page, position: Position, uriOf: UriOf): Location | undefined {
  const hit = hitAt(page.tree, position);
  const head = hit?.nodes[0]!.statement.atoms[0];
  if (hit?.atom?.type === "text" && head?.type === "word" && head.word === "from") {
    const path = page.resolve(hit.atom.value);
    return path === undefined ? undefined : { uri: uriOf(path), range: rangeOn(0, 0, 0) };
  }
  const mention = mentionAt(mentionsHere(page), position);
  const thing = mention && page.household.things.get(mention.name);
  const at = thing && page.household.locate(thing.entry);
  if (!at) return undefined;
  const { statement, line } = thing.node;
  const name = statement.atoms.find((a) => a.type === "word" && a.word === thing.name) ?? statement;
  return { uri: uriOf(at.path), range: rangeOn(at.line + line, name.start, name.end) };
}

/** Uses of a name in this file, and its declaration wherever it is. Other files that use it are not searched. */
export function references(page: Page, position: Position, uriOf: UriOf, declaration: boolean): Location[] {
  const mentions = mentionsHere(page);
  const here = mentionAt(mentions, position);
  if (!here) return [];
  const uri = uriOf(page.path);
  const found = mentions
    .filter((m) => m.name === here.name && (declaration || !m.declares))
    .map((m): Location => ({ uri, range: m.range }));
  const declared =
    declaration && !mentions.some((m) => m.declares && m.name === here.name)
      ? definition(page, position, uriOf)
      : undefined;
  return declared ? [declared, ...found] : found;
}

export function highlights(page: Page, position: Position): DocumentHighlight[] {
  const mentions = mentionsHere(page);
  const here = mentionAt(mentions, position);
  if (!here) return [];
  return mentions
    .filter((m) => m.name === here.name)
    .map((m) => ({
      range: m.range,
      kind: m.declares ? DocumentHighlightKind.Write : DocumentHighlightKind.Read,
    }));
}

const mentionsHere = (page: Page) => mentionsIn(page.tree, (name) => page.household.things.has(name));
