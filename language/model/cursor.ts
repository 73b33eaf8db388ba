/** A position among the atoms of one statement, and what is said where they cannot be read. */
import type { Dimension } from "../quantity/types.js";
import { atomText } from "../text/atom.js";
import { says } from "../text/messages.js";
import type { Atom, Fix, LineProblem } from "../text/types.js";
import type { Shape } from "../vocabulary/types.js";

/** A name that must be resolved once all files are read. */
export interface Reference {
  readonly name: string;
  readonly kinds: readonly string[];
  readonly start: number;
  readonly end: number;
}

/** Thrown while a statement is read, to leave it where it cannot be read; `readValue` catches it. */
export class Wrong extends Error {
  constructor(readonly problem: LineProblem) {
    super(problem.rule);
  }
}

export const dimensionWords: { readonly [D in Dimension]: string } = {
  length: "length",
  mass: "mass",
  angle: "angle",
  force: "force",
  ratio: "share",
  duration: "time",
  moment: "moment",
  pressure: "pressure",
  number: "number",
};

/** What a shape wants, in words. */
export function wants(shape: Shape): string {
  switch (shape.is) {
    case "quantity":
      return `a ${dimensionWords[shape.dimension]} with its unit`;
    case "choice":
      return shape.choices.join(", ");
    case "flag":
      return "yes or no";
    case "text":
      return "a text in quotes";
    case "code":
      return shape.whole ? "a whole number" : "a word or a text in quotes";
    case "date":
      return "a date (year-month-day)";
    case "time":
      return "a time of day (08:30)";
    case "name":
      return `the name of a ${shape.of.join(" or ")}`;
    case "pair":
      return shape.joined === "by" ? "two lengths joined by by" : "one length, or two parted by a comma";
    case "list":
      return `${wants(shape.item)}, parted by commas`;
    case "either":
      return shape.shapes.map(wants).join(", or ");
    case "parts":
      return shape.parts.map((p) => (p.lead ? `${p.lead} ` : "") + wants(p.shape)).join(", ");
    case "mention":
      return "nothing more";
  }
}

/** Whether an atom can begin a value of this shape; tells the branch of an `either`, and whether an optional part is there. */
export function begins(shape: Shape, a: Atom): boolean {
  switch (shape.is) {
    case "quantity":
      return a.type === "measure"
        ? a.dimension === shape.dimension || (shape.slope === true && a.dimension === "angle")
        : a.type === "number" || (a.type === "mark" && (a.mark === "-" || a.mark === "+"));
    case "choice":
    case "flag":
    case "name":
    case "mention":
      return a.type === "word";
    case "text":
    case "date":
      return a.type === shape.is;
    case "time":
      return a.type === "number" || (a as { type: string }).type === "time";
    case "code":
      return a.type === "number" || (!shape.whole && (a.type === "word" || a.type === "text"));
    case "pair":
      return a.type === "measure" || a.type === "number";
    case "list":
      return begins(shape.item, a);
    case "either":
      return shape.shapes.some((s) => begins(s, a));
    case "parts":
      return begins(shape.parts[0]!.shape, a);
  }
}

/** Whether an atom is one of the words with which a value of this shape can begin. */
export function isChoiceOf(shape: Shape, a: Atom): boolean {
  if (shape.is === "choice") return a.type === "word" && shape.choices.includes(a.word);
  return shape.is === "parts" && shape.parts[0] !== undefined && isChoiceOf(shape.parts[0].shape, a);
}

export const raw = (a: Atom | undefined): string => (a ? atomText(a) : "");

export class Cursor {
  readonly problems: LineProblem[] = [];
  readonly references: Reference[] = [];

  /** `key`: how messages call what is read. `person`: what is said is said of a person, who carries no label. */
  constructor(
    readonly atoms: readonly Atom[],
    public at: number,
    readonly key: string,
    readonly endOfLine: number,
    readonly person: boolean,
  ) {}

  peek(): Atom | undefined {
    return this.atoms[this.at];
  }
  before(): Atom | undefined {
    return this.atoms[this.at - 1];
  }
  isWord(word: string): boolean {
    const a = this.peek();
    return a?.type === "word" && a.word === word;
  }
  isMark(mark: string): boolean {
    const a = this.peek();
    return a?.type === "mark" && a.mark === mark;
  }
  /** Steps over the word if it stands here. */
  takeWord(word: string): boolean {
    const here = this.isWord(word);
    if (here) this.at++;
    return here;
  }

  problem(
    rule: string,
    message: string,
    first: { start: number },
    last: { end: number },
    fixes: Fix[] = [],
  ): LineProblem {
    return { rule, message, start: first.start, end: last.end, fixes };
  }

  expected(shape: Shape): Wrong {
    const a = this.peek();
    const what = wants(shape);
    if (a)
      return new Wrong(
        this.problem(
          "form/value-expected",
          says["form/value-expected"]({ key: this.key, wants: what, text: raw(a) }),
          a,
          a,
        ),
      );
    return new Wrong({
      rule: "form/value-missing",
      message: says["form/value-missing"]({ key: this.key, wants: what }),
      start: this.before()?.start ?? this.endOfLine,
      end: this.endOfLine,
      fixes: [
        {
          title: "Write unknown: it must still be found out",
          text: " unknown",
          start: this.endOfLine,
          end: this.endOfLine,
        },
      ],
    });
  }
}
