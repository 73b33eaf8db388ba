/** Reads `examples { ... }`: values, a colon, and the verdict they give. */
import type { Atom, Node } from "../../language/text/types.js";
import type { Grade, VerdictKind } from "../types.js";
import { atomText } from "../../language/text/atom.js";
import { isGrade } from "./bands.js";
import { readInterval } from "./read-values.js";
import type { Page } from "./statements.js";
import type { Example, ExampleValue } from "./types.js";

const verdicts: readonly VerdictKind[] = ["holds", "fails", "unsettled", "unknown", "not-applicable"];

export function readExamples(page: Page, node: Node): readonly Example[] {
  const found: Example[] = [];
  for (const s of node.children ?? []) {
    const atoms = s.statement.atoms;
    if (atoms.length === 0) continue;
    const colon = atoms.findIndex((a) => a.type === "mark" && a.mark === ":");
    const verdict = colon < 0 ? undefined : readVerdict(atoms.slice(colon + 1));
    if (colon < 0 || !verdict) {
      const span = colon < 0 ? undefined : atoms[colon + 1];
      page.problem(
        "rules/example",
        s,
        "An example is written VALUES: VERDICT, with holds, advice, caution, stop, fails, unsettled, unknown, not-applicable, or two grades joined by to.",
        span ?? s.statement,
      );
      continue;
    }
    const values: ExampleValue[] = [];
    let wrong = false;
    for (const part of parts(atoms.slice(0, colon))) {
      const value = readExampleValue(part);
      if (typeof value === "string") {
        page.problem(
          "rules/example",
          s,
          value,
          part[0] ? { start: part[0].start, end: part[part.length - 1]!.end } : s.statement,
        );
        wrong = true;
      } else values.push(value);
    }
    const text = s.statement.atoms.map(atomText).join(" ").replaceAll(" ,", ",").replaceAll(" :", ":");
    if (!wrong) found.push({ values, text, ...verdict, at: page.place(s) });
  }
  return found;
}

function parts(atoms: readonly Atom[]): readonly (readonly Atom[])[] {
  const found: Atom[][] = [[]];
  for (const a of atoms) {
    if (a.type === "mark" && a.mark === ",") found.push([]);
    else found[found.length - 1]!.push(a);
  }
  return found.length === 1 && found[0]!.length === 0 ? [] : found;
}

/** `up 1 in ± 1/4 in`, `unknown`, `board.length 30 in`, `step.brakes locked`, `board.length assumed 28 in to 30 in`, `gap.hips without`. */
function readExampleValue(part: readonly Atom[]): ExampleValue | string {
  const first = part[0];
  if (!first) return "A value is missing beside the comma.";
  const fact = first.type === "word" && first.word.includes(".") ? { fact: first.word } : {};
  const rest = "fact" in fact ? part.slice(1) : part;
  const lead = rest[0];
  if (!lead) return `${atomText(first)}: its value is missing.`;
  if (lead.type === "word" && rest.length === 1) {
    if (lead.word === "unknown") return { ...fact, unknown: true };
    if (lead.word === "without") return { ...fact, without: true };
    return { ...fact, choice: lead.word };
  }
  const assumed = lead.type === "word" && lead.word === "assumed";
  const read = readInterval(assumed ? rest.slice(1) : rest, "number");
  if (typeof read === "string") {
    const choice = assumed && rest[1]?.type === "word" && rest.length === 2 ? rest[1].word : undefined;
    return choice === undefined ? read : { ...fact, choice, assumed };
  }
  return { ...fact, interval: read.interval, dimension: read.dimension, ...(assumed && { assumed }) };
}

function readVerdict(
  atoms: readonly Atom[],
): { verdict: VerdictKind; best?: Grade; worst?: Grade } | undefined {
  const words = atoms.map((a) => (a.type === "word" ? a.word : ""));
  const [first, to, last] = words;
  if (first === undefined) return undefined;
  if (words.length === 1) {
    if (first === "holds") return { verdict: "holds", best: "holds", worst: "holds" };
    if ((verdicts as readonly string[]).includes(first)) return { verdict: first as VerdictKind };
    return isGrade(first) ? { verdict: "fails", best: first as Grade, worst: first as Grade } : undefined;
  }
  if (words.length === 3 && to === "to" && isGrade(first) && isGrade(last!))
    return { verdict: first === "holds" ? "unsettled" : "fails", best: first as Grade, worst: last as Grade };
  return undefined;
}
