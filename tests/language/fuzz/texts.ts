/**
 * Texts as nobody means to write them. `SPANWISE_FUZZ` multiplies the number of runs and prints the seed; `SPANWISE_SEED` repeats
 * the runs of that seed.
 */
import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";

const factor = Number(process.env["SPANWISE_FUZZ"] ?? "1");
/** How often a property is tried: `few` times in every test run, many more on request. */
export const runs = (few: number): number => Math.max(1, Math.round(few * factor));
/** How long one property may take, in milliseconds. */
export const patience = 20_000 * Math.max(1, factor);

const asked = process.env["SPANWISE_SEED"];
/** Of the runs asked for; undefined in every other test run, whose runs are the same each time where a test draws for itself. */
export const seed: number | undefined =
  factor > 1 || asked !== undefined ? Number(asked ?? Date.now() % 2 ** 31) : undefined;
if (seed !== undefined) {
  fc.configureGlobal({ seed });
  console.log(`Seed ${seed}: repeat with SPANWISE_SEED=${seed}`);
}

const filesBelow = (folder: string, ending: string): { path: string; text: string }[] =>
  readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((f) => f.endsWith(ending))
    .sort()
    .map((f) => ({ path: `${folder}/${f}`, text: readFileSync(`${folder}/${f}`, "utf8") }));
export const samples = filesBelow("samples", ".span");
export const ruleFiles = filesBelow("rules", ".spanrules");

/** Words that every object of the programming language has of itself, and words that are half of something. */
export const trapWords = [
  "constructor",
  "__proto__",
  "toString",
  "hasOwnProperty",
  "valueOf",
  "prototype",
  "length",
  "unknown",
  "none",
  "may",
  "x",
  "in",
];
const pieces = [
  ...trapWords,
  ..."{ } ; , : # \" “ ” ' ± + - * / ( ) = % ° × ½ ⅞ 1 1/0 61/2 1/2 0 .5 1,2 3/4/2026 2026-02-30 2026-03-02 08:30 -3 1e9 \\ \t \n".split(
    " ",
  ),
  ..."client helper wheelchair bed board room transfer steps from to with at on by of size top adjusts about judged measured stated unknown left right".split(
    " ",
  ),
  ..."in ft lb kg mm deg lbf yes no slide lock brakes approach place".split(" "),
  "999999999999999999999999999 in",
  "0.0000000000000000001 in",
  "1/0 in",
  "\u200b",
  "\u2028",
  "\u00a0",
  "\r\n",
  "\u0000",
  "\ud800",
  "👍",
  '"a \\" b"',
];

/** A text of pieces that mean something, put together without sense. */
export const nonsense = fc
  .array(fc.tuple(fc.constantFrom(...pieces), fc.constantFrom(" ", " ", "\n", "")), { maxLength: 60 })
  .map((list) => list.map(([piece, gap]) => piece + gap).join(""));

/** Splits a text into words, texts, comments, blanks and signs; what comes out is the text again when joined. */
export const tokensOf = (text: string): string[] =>
  text.match(/"[^"\n]*"|#[^\n]*|[\d./½]+|[\p{L}][\p{L}\d-]*|\n|[ \t]+|[^\n]/gu) ?? [];

const sample = fc.constantFrom(...samples).map((s) => s.text);

/** A sample with one to four mishaps: cut short, two words swapped, a word lost, said twice, or something put in. */
export const spoiltSample = fc
  .tuple(
    sample,
    fc.array(
      fc.record({
        what: fc.constantFrom("cut", "swap", "lose", "twice", "put"),
        at: fc.nat(),
        other: fc.nat(),
        piece: fc.constantFrom(...pieces),
      }),
      { minLength: 1, maxLength: 4 },
    ),
  )
  .map(([text, mishaps]) => {
    const tokens = tokensOf(text);
    for (const m of mishaps) {
      const i = m.at % tokens.length;
      const j = m.other % tokens.length;
      if (m.what === "cut") tokens.length = Math.max(1, i);
      else if (m.what === "swap") [tokens[i], tokens[j]] = [tokens[j]!, tokens[i]!];
      else if (m.what === "lose") tokens.splice(i, 1, "");
      else if (m.what === "twice") tokens.splice(i, 0, tokens[i]!, " ");
      else tokens.splice(i, 0, m.piece);
    }
    return tokens.join("");
  });

/** A sample with other blanks between its words, other line ends and comments; it means the same. */
export const respacedSample = fc
  .tuple(sample, fc.infiniteStream(fc.constantFrom(" ", "  ", "    ", "\t", "\u00a0")), fc.boolean())
  .map(([text, gaps, windows]) => {
    const respaced = tokensOf(text)
      .map((t) => (/^[ \t]+$/.test(t) ? (gaps.next().value as string) : t))
      .join("");
    return windows ? respaced.replaceAll("\n", "\r\n") : respaced;
  });

export const anyText = fc.oneof(
  { weight: 1, arbitrary: fc.string({ unit: "binary", maxLength: 200 }) },
  { weight: 3, arbitrary: nonsense },
  { weight: 3, arbitrary: spoiltSample },
);
