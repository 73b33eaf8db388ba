/** The anchors of the rule book: a rule has its id, everything else its kind and its name. */
import type { RuleSet } from "../../rules/engine/types.js";
import { quantityNamed } from "../../rules/quantities/index.js";
import { code, link } from "./markup.js";

export const limitAnchor = (name: string): string => `limit.${name}`;
export const defaultAnchor = (name: string): string => `default.${name}`;
export const sourceAnchor = (name: string): string => `source.${name}`;
export const quantityAnchor = (name: string): string => `quantity.${name}`;
export const topicAnchor = (topic: string): string => `topic.${topic}`;

/** The name of a rule, limit, default, quantity or source as a link to it; plain where the book has no such thing. */
export function linkTo(name: string, set: RuleSet): string {
  if (set.rules.some((r) => r.id === name)) return link(name, code(name));
  if (set.limits.has(name)) return link(limitAnchor(name), code(name));
  if (quantityNamed.has(name)) return link(quantityAnchor(name), code(name));
  if (set.defaults.has(name)) return link(defaultAnchor(name), code(name));
  return set.sources.has(name) ? link(sourceAnchor(name), code(name)) : code(name);
}
