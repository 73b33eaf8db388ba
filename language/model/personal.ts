/**
 * Best effort: labels and texts that look like a person's name, a date of birth or a street address. It errs on the side of
 * silence with words that may be roles or places of work, since a plan full of notices is read by nobody.
 */
import { says } from "../text/messages.js";
import type { Atom, Node } from "../text/types.js";
import type { LocatedProblem } from "./notes.js";

const title = String.raw`(?:Mr|Mrs|Ms|Miss|Mx|Dr|Prof|Sir|Madam|Herr|Frau|Señora?|Sra?|Monsieur|Madame|Mme)`;
const street = String.raw`(?:Street|St|Road|Rd|Avenue|Ave|Lane|Ln|Drive|Dr|Way|Court|Ct|Close|Place|Boulevard|Blvd|Terrace|Crescent|Square)`;
const month = String.raw`(?:Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)[a-z]*`;

type Sign = readonly [what: string, pattern: RegExp];
const inTexts: readonly Sign[] = [
  ["a person's name", new RegExp(String.raw`\b${title}\.? \p{Lu}[\p{L}'’-]+`, "u")],
  ["a date of birth", /\b(?:born|date of birth|d\.?o\.?b\.?|birthday)\b/i],
  ["a date of birth", /\b19\d\d-\d\d-\d\d\b|\b\d{1,2}[./]\d{1,2}[./](?:19)\d\d\b/],
  [
    "a date of birth",
    new RegExp(String.raw`\b\d{1,2}\.? ${month} 19\d\d\b|\b${month} \d{1,2}, 19\d\d\b`, "i"),
  ],
  [
    "a street address",
    new RegExp(String.raw`\b\d{1,5}[a-z]?,? \p{Lu}\p{L}+(?: \p{Lu}\p{L}+)? ${street}\b`, "u"),
  ],
  [
    "a street address",
    /(?:^|\s)\p{Lu}[\p{L}-]*(?:straße|strasse|str\.|gasse|allee|platz|weg) \d{1,4}[a-z]?\b/u,
  ],
  ["a street address", /\b\d{1,4},? (?:rue|avenue|chemin|impasse|calle|via) \p{L}+/iu],
];

/** Two words with a capital each, and nothing else: a name, unless one of them says what somebody is. */
const twoNames = /^\p{Lu}\p{Ll}+(?: \p{Lu}\.?)? \p{Lu}[\p{L}'’-]+$/u;
const office =
  /therap|clinic|nurse|nursing|doctor|physician|hospital|service|team|care|centre|center|office|pool|loan|shop|surgeon|pharma|day|night|aid|depot|district|ward|unit|technic|advis|consult/i;

/** Words in a label that lead to a name: `helper mrs-miller`. */
const titled = /^(?:mr|mrs|ms|miss|mx|dr|prof|herr|frau)-\p{L}+/u;
/** A code such as `Miller`: one capital, then small letters, no digit. */
const nameLike = /^\p{Lu}\p{Ll}{2,}$/u;

/** Findings on every text and label of an entry. */
export function personalData(node: Node): LocatedProblem[] {
  const problems: LocatedProblem[] = [];
  const { atoms } = node.statement;
  const say = (a: Atom, what: string, text: string): void => {
    problems.push({
      rule: "form/personal-data",
      message: says["form/personal-data"]({ what, text }),
      start: a.start,
      end: a.end,
      line: node.line,
    });
  };
  for (const [i, a] of atoms.entries()) {
    const before = atoms[i - 1];
    const lead = before?.type === "word" ? before.word : undefined;
    if (a.type === "text") {
      const found = signIn(a.value, lead === "by" || lead === "approved-by" || lead === "code");
      if (found) say(a, found.what, found.text);
    } else if (a.type === "word" && i === 1 && lead !== undefined) {
      if (titled.test(a.word) || (lead === "code" && nameLike.test(a.raw))) say(a, "a person's name", a.raw);
    }
  }
  for (const child of node.children ?? []) problems.push(...personalData(child));
  return problems;
}

/** The first sign in a text. `ofPerson`: a person stands here, under a code or a role. */
function signIn(text: string, ofPerson: boolean): { what: string; text: string } | undefined {
  for (const [what, pattern] of inTexts) {
    const found = pattern.exec(text)?.[0].trim();
    if (found) return { what, text: found };
  }
  if (ofPerson && twoNames.test(text) && !office.test(text)) return { what: "a person's name", text };
  return undefined;
}
