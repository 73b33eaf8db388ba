/**
 * The reference page of the language (`language/REFERENCE.md`), made from the vocabulary: every kind of block with its keys, every
 * step, the units, the small words. A consultant reads it as a page; nothing in it is written by hand.
 */
import { dimensionWords } from "../../model/cursor.js";
import { units } from "../../quantity/units.js";
import { setupVocabulary, smallWords } from "../index.js";
import { stepPhrases, type StepPhrase } from "../step-phrases.js";
import type { BlockSpec, KeySpec } from "../types.js";
import {
  article,
  exampleHead,
  exampleStatement,
  nameOf,
  plausibleInWords,
  sentence,
  shapeInWords,
} from "./words.js";

/** The page in Markdown. The same vocabulary gives the same text. */
export function referencePage(): string {
  const { keys, blocks } = setupVocabulary;
  const kinds = Object.entries(blocks);
  return `${[
    "# What can be written",
    `<!-- Made from the vocabulary by \`npm run reference\`; do not write in it by hand. -->`,
    introduction,
    "## Kinds",
    kinds
      .map(([kind, spec]) => `- [${spelled(kind)}](#${anchor(kind)}): ${plain(spec.help)}`)
      .concat("- [the steps of a transfer](#steps), [units](#units), [small words](#small-words)")
      .join("\n"),
    "## What stands alone",
    "Statements at top level, outside any block.",
    ...Object.entries(keys).map(([key, k]) => keyEntry(key, k)),
    ...kinds.flatMap(([kind, spec]) => blockSection(kind, spec, 2)),
    ...stepsSection(),
    ...unitsSection(),
    ...smallSection(),
  ].join("\n\n")}\n`;
}

const introduction = [
  "One statement a line: a key, then what is said. A block in braces groups what belongs to one thing. `#` starts a comment.",
  "A key that is left out was not looked at, and `unknown` says that somebody must still find out: nothing unknown ever counts as good.",
  "`none` says that somebody looked.",
  'Behind a quantity may stand a tolerance (`21 in ± 1/4 in`), how it is known (`measured`, `stated`, `estimated`, `judged by "role"`) and the day (`on 2026-03-02`).',
  "A range needs its reason: `about 15 in to 16 in` is in doubt, `adjusts 15 in to 26 in` can be set.",
  "Left and right are always the client's own, sitting in the chair or lying on the back in the bed.",
  "The examples are invented.",
].join("\n");

/** A line of the table inside Markdown, with nothing in it read as markup. */
const plain = (text: string): string => text.replaceAll(/[\\*_[\]<>]/g, "\\$&");
const anchor = (heading: string): string => heading.toLowerCase().replaceAll(" ", "-");
const spelled = (kind: string): string => (kind === "may-change" ? "may change" : kind);
const code = (text: string): string => `\`${text}\``;
const codes = (words: readonly string[]): string => words.map(code).join(", ");

function blockSection(kind: string, spec: BlockSpec, depth: number, parent?: string): string[] {
  const title = parent ? `${spelled(kind)} (in ${spelled(parent)})` : spelled(kind);
  const facts = [
    sentence(plain(spec.help)),
    `Written ${code(`${exampleHead(kind, spec)} { ... }`)}${nameInWords(spec)}.`,
    spec.once ? "It stands once." : "",
    spec.also?.length ? `Also read: ${codes(spec.also)}.` : "",
    spec.oneOf?.length ? `At most one of ${codes(spec.oneOf)} is said.` : "",
    spec.steps ? "It holds [steps](#steps), one a line, in their order." : "",
    spec.free ? freeInWords : "",
  ];
  const keys = Object.entries(spec.keys);
  return [
    `${"#".repeat(depth)} ${title}`,
    facts.filter(Boolean).join(" "),
    ...keys.map(([key, k]) => keyEntry(key, k)),
    ...Object.entries(spec.blocks ?? {}).flatMap(([k, b]) =>
      blockSection(k, b, Math.min(6, depth + 1), kind),
    ),
  ];
}

const freeInWords =
  'Each line starts with the thing of which it speaks: `bed.top 17 in to 23 in "other frame"`, `board-36 instead-of board-30`, `nightstand moved`.';

function nameInWords(spec: BlockSpec): string {
  if (spec.name === "optional") return "; an only one may go without a name";
  if (typeof spec.name === "object") return `, with ${nameOf(spec.name.of)}`;
  return spec.name === "required" ? ", with a name of your own" : "";
}

/** One key: what it is, how it is written, how it is measured, which error is the safe one. */
function keyEntry(key: string, k: KeySpec): string {
  const need = { required: " **A full plan needs it.**", wanted: " It is asked for." };
  const written = [`${plain(shapeInWords(k.shape))}.`, `Example: ${code(exampleStatement(key, k))}.`];
  if (k.many) written.push(`It may stand several times${k.distinct ? `, once for each ${k.distinct}` : ""}.`);
  const usual = plausibleInWords(k.shape);
  if (usual) written.push(`Usual: ${usual}.`);
  const lines = [
    `**${code(key)}** — ${sentence(plain(k.help))}${k.need ? need[k.need] : ""}`,
    `- Written: ${written.join(" ")}`,
    k.measure && `- Measured: ${sentence(plain(k.measure))}`,
    k.safer && `- In doubt: the ${k.safer === "low" ? "smaller" : "larger"} value is the safer one.`,
    k.beside && `- Beside it: ${code(k.beside.key)}. ${sentence(plain(k.beside.why))}`,
    k.default &&
      `- Left out: the rule set's ${code(k.default)} stands in for it${k.defaultOf ? `, a part of ${code(k.defaultOf)}` : ""}.`,
    k.also?.length && `- Also read: ${codes(k.also)}.`,
  ];
  return lines.filter(Boolean).join("\n");
}

function stepsSection(): string[] {
  return [
    "## Steps",
    "In the usual order of work, which is common practice. Left or right is said where a step has a side; a name where it has a surface.",
    ...stepPhrases.map(stepEntry),
  ];
}

function stepEntry(p: StepPhrase): string {
  const written = [p.verb, p.object && "bed-1", p.side && "left"].filter(Boolean).join(" ");
  return [
    `**${code(written)}** — ${sentence(plain(p.help))}`,
    `- Needs: ${sentence(plain(p.needs))}`,
    `- Changes: ${sentence(plain(p.changes))}`,
    ...(p.also?.length ? [`- Also read: ${codes(p.also)}.`] : []),
  ].join("\n");
}

function unitsSection(): string[] {
  const rows = units.map((u) => {
    const more = u.then ? `; ${u.then.unit} may follow (${u.then.count} make one)` : "";
    const spellings = u.spellings.filter((s) => s.toLowerCase() !== u.symbol.toLowerCase());
    const also = spellings.length > 0 ? ` Also read: ${spellings.map(quoted).join(", ")}.` : "";
    return `- ${code(u.symbol)}, ${article(dimensionWords[u.dimension])}${more}.${also}`;
  });
  return [
    "## Units",
    "A unit is part of the number, and units may be mixed in one file. A number without its unit is never guessed.",
    rows.join("\n"),
  ];
}

const quoted = (spelling: string): string => (spelling.includes("`") ? spelling : code(spelling));

function smallSection(): string[] {
  return [
    "## Small words",
    `These join what is said and can never be names: ${codes([...smallWords])}. No name is a unit either.`,
    [
      "`in` is only the inch. `to` joins two values or two surfaces. `by` joins two sizes, or names a role. `on` is a day, or belongs to a step.",
      "`from` is a source or a start. `at` is a place. `with` what is used. `of` what it belongs to.",
    ].join("\n"),
  ];
}
