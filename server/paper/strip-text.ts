/** The strip of a rule's bands for a terminal, with the margin that other texts there have. */
import { stripOf } from "../../rules/engine/explain-strip.js";
import { stripLines } from "../../rules/engine/explain-strip-text.js";
import type { Rule, RuleSet } from "../../rules/engine/types.js";
import { harmless, type Terminal } from "../command/terminal.js";

const label = "on a line   ";
/** A strip that is wider cannot be taken in at a glance; one that is narrower has no room for its words. */
const widest = 80;
const narrowest = 52;

/** Begins with a line break; empty for a rule without bands over a value. */
export function stripText(rule: Rule, set: RuleSet, t: Terminal): string {
  const strip = stripOf(rule, set.limits);
  if (!strip) return "";
  const width = Math.max(narrowest, Math.min(widest, t.width) - label.length);
  return stripLines(strip, width)
    .map((line, i) => `\n${i === 0 ? t.faint(label) : " ".repeat(label.length)}${harmless(line)}`.trimEnd())
    .join("");
}
