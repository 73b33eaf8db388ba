/** Best effort: texts that look like a person's name, a date of birth or a street address. */
import { says } from "../text/messages.js";
import type { Atom, LineProblem } from "../text/types.js";

const signs: readonly (readonly [what: string, pattern: RegExp])[] = [
  ["a person's name", /\b(?:Mr|Mrs|Ms|Miss|Mx|Dr|Herr|Frau|Sr|Sra)\.? [A-Z][a-z]+/],
  ["a date of birth", /\b(?:born|date of birth|d\.?o\.?b\.?)\b/i],
  [
    "a street address",
    /\b\d{1,5} [A-Z][a-z]+(?: [A-Z][a-z]+)? (?:Street|St|Road|Rd|Avenue|Ave|Lane|Ln|Drive|Dr|Way|Court|Ct|Close|Place|Boulevard|Blvd)\b/,
  ],
];

export function personalData(atoms: readonly Atom[]): LineProblem[] {
  const problems: LineProblem[] = [];
  for (const a of atoms) {
    if (a.type !== "text") continue;
    for (const [what, pattern] of signs) {
      const found = a.value.match(pattern)?.[0];
      if (found)
        problems.push({
          rule: "form/personal-data",
          message: says["form/personal-data"]({ what, text: found }),
          start: a.start,
          end: a.end,
        });
    }
  }
  return problems;
}
