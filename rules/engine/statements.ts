/** Reading the statements of rule files: what is common to rules, limits, defaults and sources. */
import type { Atom, Entry, Fix, Node } from "../../language/text/types.js";
import type { BasisNote } from "../types.js";
import { atomText } from "../../language/text/atom.js";
import type { Span } from "./expression.js";
import { nearest } from "../../language/text/nearest.js";
import type { RulePlace, SetProblem, SourceKind } from "./types.js";

/** One entry of a rule file being read. What is wrong is collected; nothing is thrown. */
export class Page {
  readonly problems: SetProblem[] = [];
  constructor(
    readonly path: string,
    readonly entry: Entry,
    readonly line: number,
  ) {}

  place(node: Node): RulePlace {
    return this.spot(node.line, node.statement);
  }
  spot(line: number, span: Span): RulePlace {
    return {
      path: this.path,
      place: { line, start: span.start, end: span.end },
      line: this.line,
    };
  }
  problem(
    rule: string,
    node: Node,
    message: string,
    span: Span = node.statement,
    fixes?: readonly Fix[],
  ): void {
    this.problems.push({
      path: this.path,
      line: this.line + node.line,
      start: span.start,
      end: span.end,
      rule,
      message,
      ...(fixes?.length && { fixes }),
    });
  }
  /** The word that starts a statement; undefined where the statement was spoilt and has been reported. */
  key(node: Node): string | undefined {
    const first = node.statement.atoms[0];
    if (!first) return undefined;
    if (first.type === "word") return first.word;
    this.problem("rules/word-expected", node, `A word is expected here, not "${atomText(first)}".`, first);
    return undefined;
  }
  unknownKey(node: Node, key: string, where: string, known: readonly string[]): void {
    const near = nearest(key, known);
    const span = node.statement.atoms[0]!;
    const message = near
      ? `${where} has no "${key}". Is "${near}" meant?`
      : `${where} has no "${key}". It may hold ${known.join(", ")}.`;
    this.problem(
      "rules/unknown-word",
      node,
      message,
      span,
      near ? [{ title: `Write ${near}`, text: near }] : undefined,
    );
  }
  /** `key "text"`. */
  text(node: Node): string | undefined {
    const [key, value, more] = node.statement.atoms;
    if (value?.type !== "text") {
      this.problem(
        "rules/text-expected",
        node,
        `A text in quotes is expected after ${key ? atomText(key) : "this"}.`,
        value ?? node.statement,
      );
      return undefined;
    }
    if (more) this.problem("rules/left-over", node, `"${atomText(more)}" is left over here.`, more);
    if (value.value.trim() === "") this.problem("rules/text-expected", node, `This text is empty.`, value);
    return value.value;
  }
  /** `key word`, of these words. */
  word<W extends string>(node: Node, words: readonly W[]): W | undefined {
    const [key, value, more] = node.statement.atoms;
    if (value?.type !== "word" || !(words as readonly string[]).includes(value.word)) {
      const near = value?.type === "word" ? nearest(value.word, words) : undefined;
      this.problem(
        "rules/unknown-word",
        node,
        `${key ? atomText(key) : "This"} is one of ${words.join(", ")}.`,
        value ?? node.statement,
        near ? [{ title: `Write ${near}`, text: near }] : undefined,
      );
      return undefined;
    }
    if (more) this.problem("rules/left-over", node, `"${atomText(more)}" is left over here.`, more);
    return value.word as W;
  }
  /** `key date`. */
  date(node: Node): string | undefined {
    const value = node.statement.atoms[1];
    if (value?.type === "date") return value.date;
    this.problem(
      "rules/date-expected",
      node,
      "A date (year-month-day) is expected here.",
      value ?? node.statement,
    );
    return undefined;
  }
}

export const basisKeys = [
  "published",
  "derived",
  "common-practice",
  "from-memory",
  "project-choice",
] as const;
const bases: ReadonlySet<string> = new Set(basisKeys);
export const isBasisKey = (key: string): key is (typeof basisKeys)[number] => bases.has(key);
export const sourceKinds: readonly SourceKind[] = ["standard", "law", "study", "handbook", "guidance"];

/** A basis statement: `published SOURCE at "..." says "..." takes "..."`, or one of the others with a text. */
export function readBasis(page: Page, node: Node, key: (typeof basisKeys)[number]): BasisNote | undefined {
  if (key !== "published") {
    const text = page.text(node);
    return text === undefined ? undefined : { basis: key, text };
  }
  const atoms = node.statement.atoms;
  const source = atoms[1];
  if (source?.type !== "word") {
    page.problem(
      "rules/citation",
      node,
      `published needs the name of a source: published SOURCE at "..." says "..." takes "...".`,
      source ?? node.statement,
    );
    return undefined;
  }
  const found: { at?: string; says?: string; takes?: string } = {};
  let i = 2;
  while (i < atoms.length) {
    const lead = atoms[i]!;
    const part =
      lead.type === "word" && (lead.word === "at" || lead.word === "says" || lead.word === "takes")
        ? lead.word
        : undefined;
    if (!part) {
      page.problem(
        "rules/citation",
        node,
        `"${atomText(lead)}" is left over: a citation says at, says and takes.`,
        lead,
      );
      return undefined;
    }
    const value: Atom[] = [];
    for (
      i++;
      i < atoms.length &&
      !(atoms[i]!.type === "word" && ["at", "says", "takes"].includes((atoms[i] as { word: string }).word));
      i++
    )
      value.push(atoms[i]!);
    const text = value
      .map((a) => (a.type === "text" ? a.value : atomText(a)))
      .join(" ")
      .trim();
    if (text) found[part] = text;
  }
  const lacking = (["at", "says", "takes"] as const).filter((p) => !found[p]);
  if (lacking.length > 0) {
    page.problem(
      "rules/citation",
      node,
      `This citation does not say ${lacking.join(" or ")}: it cannot be reviewed without the place in the source, what the source says and what is taken from it.`,
    );
    return undefined;
  }
  const citation = { id: source.word, at: found.at!, says: found.says!, takes: found.takes! };
  return { basis: "published", text: found.takes!, citation };
}
