/**
 * The parser of expressions: from the atoms of one statement to a tree.
 *
 *     or     := and { "or" and }
 *     and    := not { "and" not }
 *     not    := "not" not | test
 *     test   := sum [ "is" ["not"] ( "known" | "given" | "one of" words | word ) | "more than" sum | "less than" sum | "at least" sum | "at most" sum ]
 *     sum    := product { (+|-) product }          product := leaf { (*|/) leaf }
 *     leaf   := "(" or ")" | - leaf | "up" leaf | "down" leaf | "smaller of" ( list ) | "larger of" ( list ) | measure | number | name
 *
 * Depth and size are bounded, so whatever is written, reading and evaluating it ends: a rule file is somebody else's data.
 */
import { atomText } from "../../language/text/atom.js";
import type { Atom } from "../../language/text/types.js";
import type { Comparison, Expr, Span } from "./expression.js";

/** How deep parentheses, `not` and signs may nest, and how many parts one expression may have. */
export const deepest = 64;
export const largest = 400;

export class ExpressionError {
  constructor(
    readonly message: string,
    readonly start: number,
    readonly end: number,
  ) {}
}

/** Reads the whole of `atoms` as one expression; an `ExpressionError` says where it stops making sense. */
export function parseExpression(atoms: readonly Atom[], where: Span): Expr | ExpressionError {
  const parser = new Parser(atoms, where);
  try {
    const expr = parser.or();
    return parser.rest() ?? expr;
  } catch (e) {
    if (e instanceof ExpressionError) return e;
    throw e;
  }
}

/** Reads an expression at the start of `atoms`; the number of atoms it took comes with it. */
export function parsePrefix(
  atoms: readonly Atom[],
  where: Span,
): { readonly expr: Expr; readonly taken: number } | ExpressionError {
  const parser = new Parser(atoms, where);
  try {
    const expr = parser.or();
    return { expr, taken: parser.at };
  } catch (e) {
    if (e instanceof ExpressionError) return e;
    throw e;
  }
}

const smallWords = new Set([
  "or",
  "and",
  "not",
  "is",
  "of",
  "more",
  "less",
  "at",
  "least",
  "most",
  "than",
  "one",
  "smaller",
  "larger",
  "up",
  "down",
  "else",
  "to",
]);

class Parser {
  at = 0;
  private depth = 0;
  private size = 0;

  constructor(
    private readonly atoms: readonly Atom[],
    private readonly where: Span,
  ) {}

  rest(): ExpressionError | undefined {
    const next = this.atoms[this.at];
    return (
      next &&
      new ExpressionError(
        `"${atomText(next)}" is left over here: nothing may follow the expression.`,
        next.start,
        next.end,
      )
    );
  }

  or(): Expr {
    return this.several("or", () => this.several("and", () => this.negation()));
  }

  private several(op: "and" | "or", part: () => Expr): Expr {
    const first = part();
    if (!this.isWord(op)) return first;
    const of = [first];
    while (this.takeWord(op)) of.push(part());
    return this.made({ op, of, start: first.start, end: of[of.length - 1]!.end });
  }

  private negation(): Expr {
    const not = this.atoms[this.at];
    if (!this.takeWord("not")) return this.test();
    return this.nested(not!, () => {
      const of = this.negation();
      return this.made({ op: "not", of, start: not!.start, end: of.end });
    });
  }

  private test(): Expr {
    const left = this.sum();
    if (this.takeWord("is")) return this.isTest(left);
    const how = this.comparison();
    if (!how) return left;
    const right = this.sum();
    return this.made({ op: "compare", how, left, right, start: left.start, end: right.end });
  }

  private isTest(of: Expr): Expr {
    const not = this.takeWord("not");
    if (this.isWord("known") || this.isWord("given")) {
      const word = this.atoms[this.at++]!;
      const op = word.type === "word" && word.word === "known" ? "known" : "given";
      return this.made({ op, of, not, start: of.start, end: word.end });
    }
    const words: (Span & { word: string })[] = [];
    if (this.isWord("one") && this.isWord("of", 1)) {
      this.at += 2;
      do words.push(this.choice());
      while (this.takeMark(","));
    } else words.push(this.choice());
    return this.made({ op: "is", of, not, words, start: of.start, end: words[words.length - 1]!.end });
  }

  private choice(): Span & { word: string } {
    const a = this.atoms[this.at];
    if (a?.type !== "word") return this.stop("A word is expected after is", a);
    this.at++;
    return { word: a.word, start: a.start, end: a.end };
  }

  private comparison(): Comparison | undefined {
    for (const [first, second] of [
      ["more", "than"],
      ["less", "than"],
      ["at", "least"],
      ["at", "most"],
    ] as const)
      if (this.isWord(first) && this.isWord(second, 1)) {
        this.at += 2;
        return `${first} ${second}` as Comparison;
      }
    return undefined;
  }

  private sum(): Expr {
    const first = this.product();
    const terms = [{ minus: false, of: first }];
    for (;;) {
      const minus = this.isMark("-");
      if (!minus && !this.isMark("+")) break;
      this.at++;
      terms.push({ minus, of: this.product() });
    }
    return terms.length === 1
      ? first
      : this.made({ op: "sum", terms, start: first.start, end: terms[terms.length - 1]!.of.end });
  }

  private product(): Expr {
    const first = this.leaf();
    const factors = [{ under: false, of: first }];
    for (;;) {
      const under = this.isMark("/");
      if (!under && !this.isMark("*")) break;
      this.at++;
      factors.push({ under, of: this.leaf() });
    }
    return factors.length === 1
      ? first
      : this.made({ op: "product", factors, start: first.start, end: factors[factors.length - 1]!.of.end });
  }

  private leaf(): Expr {
    const a = this.atoms[this.at];
    if (!a) return this.stop("The expression is not finished", undefined);
    this.at++;
    if (a.type === "measure")
      return this.made({
        op: "value",
        value: a.value,
        dimension: a.dimension,
        unit: a.unit,
        bare: false,
        start: a.start,
        end: a.end,
      });
    if (a.type === "number")
      return this.made({
        op: "value",
        value: a.value,
        dimension: "number",
        unit: { unit: "1" },
        bare: true,
        start: a.start,
        end: a.end,
      });
    if (a.type === "mark" && a.mark === "(") return this.nested(a, () => this.closed(this.or()));
    if (a.type === "mark" && a.mark === "-") return this.negative(a);
    if (a.type === "word") {
      if (a.word === "down") return this.negative(a);
      if (a.word === "up") return this.nested(a, () => signed(this.leaf()));
      if ((a.word === "smaller" || a.word === "larger") && this.isWord("of")) return this.extreme(a.word, a);
      if (!smallWords.has(a.word)) return this.made({ op: "name", name: a.word, start: a.start, end: a.end });
    }
    this.at--;
    return this.stop("A value or a name is expected here", a);
  }

  private negative(a: Atom): Expr {
    return this.nested(a, () => {
      const of = this.leaf();
      if (of.op === "value") return { ...of, value: 0 - of.value, start: a.start, signed: true };
      return this.made({ op: "sum", terms: [{ minus: true, of }], start: a.start, end: of.end });
    });
  }

  private extreme(op: "smaller" | "larger", a: Atom): Expr {
    this.at++;
    if (!this.takeMark("(")) return this.stop(`( is expected after ${op} of`, this.atoms[this.at]);
    return this.nested(a, () => {
      const of = [this.sum()];
      while (this.takeMark(",")) of.push(this.sum());
      return this.closed(this.made({ op, of, start: a.start, end: of[of.length - 1]!.end }));
    });
  }

  private closed(expr: Expr): Expr {
    const a = this.atoms[this.at];
    if (!this.takeMark(")")) return this.stop("A ) is missing", a);
    return expr;
  }

  private nested<T>(a: Span, inner: () => T): T {
    if (this.depth >= deepest)
      throw new ExpressionError(`This expression nests more than ${deepest} deep.`, a.start, a.end);
    this.depth++;
    const made = inner();
    this.depth--;
    return made;
  }

  private made(e: Expr): Expr {
    if (++this.size > largest)
      throw new ExpressionError(`This expression has more than ${largest} parts.`, e.start, e.end);
    return e;
  }

  private stop(what: string, a: Atom | undefined): never {
    const last = this.atoms[this.atoms.length - 1];
    if (a) throw new ExpressionError(`${what}, not "${atomText(a)}".`, a.start, a.end);
    throw new ExpressionError(`${what}.`, last?.start ?? this.where.start, last?.end ?? this.where.end);
  }

  private isWord(word: string, ahead = 0): boolean {
    const a = this.atoms[this.at + ahead];
    return a?.type === "word" && a.word === word;
  }
  private takeWord(word: string): boolean {
    if (!this.isWord(word)) return false;
    this.at++;
    return true;
  }
  private isMark(mark: string): boolean {
    const a = this.atoms[this.at];
    return a?.type === "mark" && a.mark === mark;
  }
  private takeMark(mark: string): boolean {
    if (!this.isMark(mark)) return false;
    this.at++;
    return true;
  }
}

const signed = (e: Expr): Expr => (e.op === "value" ? { ...e, signed: true } : e);
