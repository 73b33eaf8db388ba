/** Reading and writing the steps of a transfer: what people type is read, one spelling is written. */
import { editDistance } from "../text/nearest.js";
import { stepPhrases, type StepPhrase, type Verb } from "./step-phrases.js";

export { stepPhrases, type StepPhrase, type Verb } from "./step-phrases.js";

/** One step of a transfer as it is understood. */
export interface Step {
  readonly verb: Verb;
  /** The client's own side. */
  readonly side?: "left" | "right";
  /** Name of the surface, where one was written. */
  readonly object?: string;
}

export type ReadStep =
  | { readonly step: Step; readonly problem?: undefined; readonly nearest?: undefined }
  /** `nearest`: up to four spellings that would be read, best first. */
  | { readonly step?: undefined; readonly problem: string; readonly nearest?: readonly string[] };

const byVerb: ReadonlyMap<string, StepPhrase> = new Map(stepPhrases.map((p) => [p.verb, p]));

export const phraseOf = (verb: Verb): StepPhrase => byVerb.get(verb)!;

/** The formatter's spelling: `remove legrest left`, `approach bed`. */
export function spell(step: Step): string {
  return [step.verb, step.object, step.side].filter((part) => part !== undefined).join(" ");
}

/** What completion offers: every step spelled out, both sides, with its line of help. `surface` names the other surface. */
export function phrases(surface = "bed"): readonly { readonly text: string; readonly phrase: StepPhrase }[] {
  return stepPhrases.flatMap((phrase) => spellings(phrase, surface).map((text) => ({ text, phrase })));
}

const sides = ["left", "right"] as const;

function spellings(phrase: StepPhrase, surface: string, side?: "left" | "right"): string[] {
  const object = phrase.object ? surface : undefined;
  if (!phrase.side) return [spell({ verb: phrase.verb, object })];
  return (side ? [side] : sides).map((s) => spell({ verb: phrase.verb, side: s, object }));
}

/** Joined, split and neighbouring spellings of the trade's words, mended before a step is looked up. */
const mended: readonly (readonly [RegExp, string])[] = [
  [/-/g, " "],
  [/\b(the|a|an|clients?|patients?|wheelchair|his|her|their)\b/g, " "],
  [/\bleg ?rests?\b/g, "legrest"],
  [/\b(arm ?rests?|side panels?)\b/g, "armrest"],
  [/\bfoot ?rests?\b/g, "footrest"],
  [/\bfoot ?plates?\b/g, "footplates"],
  [/\b(castors?|casters?)\b/g, "castors"],
  [/\bbrakes?\b/g, "brakes"],
  [/\b(transfer|gait|walking) belt\b/g, "belt"],
  [/\b(slid(e|ing)|transfer) board\b/g, "board"],
  [/\b(take|lift|pull) off\b/g, "remove"],
  [/\bdetach\b(?! sling)/g, "remove"],
  [/\bswing ?(away|out|aside)\b/g, "swing away"],
  [/\b(flip|fold) ?back\b/g, "flip back"],
  [/\bput back\b/g, "refit"],
  [/\binfront\b/g, "in front"],
  [/\bon to\b/g, "onto"],
  [/\s+/g, " "],
];
const mend = (text: string): string =>
  mended.reduce((t, [pattern, word]) => t.replace(pattern, word), text.toLowerCase()).trim();

/** Every accepted spelling in mended form with the step it stands for; tests look for clashes. */
export const acceptedSpellings: readonly { readonly text: string; readonly phrase: StepPhrase }[] =
  stepPhrases.flatMap((phrase) =>
    [phrase.verb, ...(phrase.also ?? [])].map((text) => ({ text: mend(text), phrase })),
  );

/** From every mended spelling to its phrase. A spelling claimed twice would be a guess; a test forbids it. */
const lookup: ReadonlyMap<string, StepPhrase> = new Map(acceptedSpellings.map((a) => [a.text, a.phrase]));

/**
 * Reads the words of one line as a step.
 * @param words lower-case words as the lexer gives them: `["swing-away", "armrest", "left"]`
 */
export function readStep(words: readonly string[]): ReadStep {
  const written = words.join(" ");
  const said = words.filter((w) => w === "left" || w === "right") as ("left" | "right")[];
  const rest = words.filter((w) => w !== "left" && w !== "right");
  if (rest.length === 0) {
    return {
      problem: written === "" ? "No step is written here." : `"${written}" names a side, but no step.`,
    };
  }
  const both = rest.includes("both");
  const found = look(rest) ?? (both ? look(rest.filter((w) => w !== "both")) : undefined);
  const side = said.length === 1 ? said[0] : undefined;
  if (!found) {
    const nearest = nearestSteps(rest, side);
    return {
      problem: `"${written}" is not a step that is known here.`,
      ...(nearest.length > 0 && { nearest }),
    };
  }
  const { phrase, object } = found;
  const readings = spellings(phrase, object ?? "bed");
  if (phrase.side && side === undefined) {
    const why =
      both || said.length > 1
        ? "one step for each side, please."
        : "which side, the client's own left or right?";
    return { problem: `"${written}": ${why}`, nearest: readings };
  }
  if (!phrase.side && said.length > 0) {
    return { problem: `"${written}": \`${phrase.verb}\` has no side.`, nearest: readings };
  }
  return { step: { verb: phrase.verb, ...(side && { side }), ...(object !== undefined && { object }) } };
}

/** Names start with a letter and hold letters, digits and hyphens; the language's joining words are never names. */
const isName = (word: string): boolean =>
  /^\p{L}[\p{L}\p{N}-]*$/u.test(word) &&
  !/^(in|to|from|by|at|on|of|with|and|or|not|none|unknown)$/.test(word);

function look(words: readonly string[]): { phrase: StepPhrase; object?: string } | undefined {
  const whole = lookup.get(mend(words.join(" ")));
  if (whole) return { phrase: whole };
  const object = words.at(-1)!;
  if (!isName(object)) return undefined;
  const phrase = lookup.get(mend(words.slice(0, -1).join(" ")));
  return phrase?.object ? { phrase, object } : undefined;
}

/** Up to four spellings within a third of the letters typed (at least two), nearest first, then in the order of work. */
function nearestSteps(words: readonly string[], side: "left" | "right" | undefined): string[] {
  // A long line is no misspelt step, and comparing it letter by letter would cost more than it could tell.
  const typed = mend(words.join(" ")).slice(0, 60);
  const best = new Map<StepPhrase, number>();
  for (const { text, phrase } of acceptedSpellings) {
    const far = editDistance(typed, text + (phrase.object ? " bed" : ""));
    if (far < (best.get(phrase) ?? Infinity)) best.set(phrase, far);
  }
  const reach = Math.max(2, Math.floor(typed.length / 3));
  return [...best]
    .filter(([, far]) => far <= reach)
    .sort((a, b) => a[1] - b[1])
    .flatMap(([phrase]) => spellings(phrase, "bed", side))
    .slice(0, 4);
}
