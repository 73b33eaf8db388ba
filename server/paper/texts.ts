/** Texts that several parts of the book write alike. */
import { basisWords, extentWords, messageParts } from "../../rules/engine/explain-words.js";
import type { RuleSet } from "../../rules/engine/types.js";
import type { BasisNote } from "../../rules/types.js";
import { linkTo, sourceAnchor } from "./anchors.js";
import { escaped, link, sentence } from "./markup.js";

/** A text of the rule with its holes named in brackets. */
export const message = (text: string): string =>
  messageParts(text, escaped, (name) => `<var>[${escaped(name)}]</var>`);

/** What something rests on: the kind first, in words; a citation with its source, its section and how it was read. */
export function basis(note: BasisNote, set: RuleSet): string {
  const kind = `<span class="kind">${basisWords[note.basis]}.</span>`;
  const c = note.citation;
  if (!c) return `${kind} ${escaped(sentence(note.text))}`;
  const source = set.sources.get(c.id);
  const named = link(sourceAnchor(c.id), escaped(source?.title ?? c.id));
  const extent = source ? ` (${extentWords[source.extent]})` : "";
  return `${kind} <cite>${named}</cite>, ${escaped(c.at)}${extent}. It says: ${escaped(sentence(c.says))} Taken from it: ${escaped(sentence(c.takes))}`;
}

/** Links to rules and other names, in one line. */
export const linksTo = (names: readonly string[], set: RuleSet): string =>
  names.map((n) => linkTo(n, set)).join(", ");
