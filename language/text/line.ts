/**
 * Reads lines: tokens to statements. Lines know nothing of each other, so a wrong line spoils itself only, and a line whose text
 * has been seen before is the same object.
 *
 * The grammar takes any token anywhere, so it never fails: what cannot stand where it stands is a finding at its place. It runs
 * over many lines at once, for to start the parser takes as long as some of them; what it meets behind the end of a line begins
 * another.
 */
import { EmbeddedActionsParser, type IToken, type TokenType } from "chevrotain";
import { unitNamed } from "../quantity/units.js";
import { bareNumber, measureOf, type Magnitude } from "./measure.js";
import { says } from "./messages.js";
import { isDay, mistakeOf, unitBehindFeet } from "./mistakes.js";
import * as t from "./tokens.js";
import type { Atom, Item, Line, LineProblem, Mark } from "./types.js";

/** Shared by all lines that hold nothing, and by all that can be read. Nothing is ever put into them. */
const noItems: Item[] = [];
const nothingWrong: LineProblem[] = [];

class LineParser extends EmbeddedActionsParser {
  private texts: readonly string[] = [];
  private lines: Line[] = [];
  private text = "";
  /** Where the line starts, and the one behind it; tokens count from the start of the first line, what is read of them from that of its own. */
  private base = 0;
  private behind = 0;
  private items = noItems;
  private problems = nothingWrong;
  private comment: Line["comment"];
  /**
   * The first `count` of these are the atoms of the statement being read. What stays is a copy: a list that grew by itself keeps
   * room for many more.
   */
  private readonly atoms: Atom[] = [];
  private count = 0;
  /** A mistake inside the statement being read: the statement is dropped, its neighbours are not. */
  private spoilt = false;
  private from = -1;

  constructor() {
    super(t.tokens, { recoveryEnabled: false, maxLookahead: 2, skipValidations: true });
    this.performSelfAnalysis();
  }

  read(texts: readonly string[], tokens: IToken[]): Line[] {
    this.texts = texts;
    this.lines = [];
    this.behind = 0;
    this.begin();
    // What the parser met when it was made, to learn its own grammar, is no part of any text.
    this.clear();
    this.input = tokens;
    this.all();
    while (this.lines.length < texts.length) this.end();
    return this.lines;
  }

  private begin(): void {
    this.text = this.texts[this.lines.length] ?? "";
    this.base = this.behind;
    this.behind = this.base + this.text.length + 1;
    this.items = noItems;
    this.problems = nothingWrong;
    this.comment = undefined;
  }
  private end(): void {
    this.finish(false, this.text.length);
    const { text, items, comment, problems } = this;
    this.lines.push(comment ? { text, items, comment, problems } : { text, items, problems });
    this.begin();
  }
  /** Ends the lines before the one in which a token stands. */
  private reach(k: IToken): void {
    while (k.startOffset >= this.behind) this.end();
  }

  private startOf(k: IToken): number {
    return k.startOffset - this.base;
  }
  private endOf(k: IToken): number {
    return k.startOffset + k.image.length - this.base;
  }
  /** Whether a token that is ahead stands in this line; past the end of all text none does. */
  private isHere(k: IToken): boolean {
    return k.startOffset < this.behind;
  }

  private all = this.RULE("all", () => {
    this.MANY(() => {
      this.OR(this.pieces);
    });
  });
  /** Made once, for every token of every line. */
  private readonly pieces = [
    { ALT: () => this.word(this.CONSUME(t.Word)) },
    { ALT: () => this.SUBRULE(this.number) },
    { ALT: () => this.ending(this.CONSUME(t.Semicolon)) },
    { ALT: () => this.opening(this.CONSUME(t.Open)) },
    { ALT: () => this.closing(this.CONSUME(t.Closed)) },
    { ALT: () => this.freeText(this.CONSUME(t.Text)) },
    { ALT: () => this.date(this.CONSUME(t.IsoDate)) },
    { ALT: () => this.mark(this.CONSUME(t.PlusMinus), "±") },
    { ALT: () => this.sign(this.CONSUME(t.Sign)) },
    { ALT: () => this.by(this.CONSUME(t.By)) },
    { ALT: () => this.remark(this.CONSUME(t.Comment)) },
    { ALT: () => this.wrong(this.CONSUME(t.Invisible)) },
    { ALT: () => this.wrong(this.CONSUME(t.OpenText)) },
    { ALT: () => this.wrong(this.CONSUME(t.OtherDate)) },
    { ALT: () => this.wrong(this.CONSUME(t.DecimalComma)) },
    { ALT: () => this.wrong(this.CONSUME(t.PoundsSign)) },
    { ALT: () => this.wrong(this.CONSUME(t.InchMark)) },
    { ALT: () => this.wrong(this.CONSUME(t.FootMark)) },
    { ALT: () => this.wrong(this.CONSUME(t.Other)) },
  ];
  /** `19 1/2 in`, `5 ft 9 in`, `30"`; or a number whose unit is missing or comes later. */
  private number = this.RULE("number", () => {
    this.ACTION(() => this.reach(this.LA(1)));
    const parts: Magnitude[] = [this.SUBRULE1(this.amount)];
    this.MANY({
      GATE: () => this.continues(parts[parts.length - 1]!),
      DEF: () => parts.push(this.SUBRULE2(this.amount)),
    });
    this.ACTION(() => this.amountOf(parts));
  });

  /** One number, with its unit if it has one. */
  private amount = this.RULE("amount", (): Magnitude => {
    const k = this.OR1(this.magnitudes);
    let part: IToken | undefined;
    this.OPTION1({
      GATE: () => k.tokenType === t.Whole && this.isHere(this.LA(1)),
      DEF: () => (part = this.OR2(this.fractions)),
    });
    let unit: IToken | undefined;
    this.OPTION2({ GATE: () => this.isUnit(), DEF: () => (unit = this.OR3(this.units)) });
    return this.ACTION(() => {
      const kind = part ? "mixed" : kindOf(k.tokenType);
      const image = part ? `${k.image} ${part.image}` : k.image;
      const start = this.startOf(k);
      return unit
        ? { kind, image, start, end: this.endOf(unit), unit: unit.image }
        : { kind, image, start, end: this.endOf(part ?? k) };
    });
  });
  private readonly magnitudes = [
    { ALT: () => this.CONSUME1(t.Whole) },
    { ALT: () => this.CONSUME1(t.Decimal) },
    { ALT: () => this.CONSUME1(t.Ratio) },
    { ALT: () => this.CONSUME1(t.Hyphened) },
    { ALT: () => this.CONSUME1(t.Vulgar) },
  ];
  private readonly fractions = [
    { ALT: () => this.CONSUME2(t.Ratio) },
    { ALT: () => this.CONSUME2(t.Vulgar) },
  ];
  private readonly units = [
    { ALT: () => this.CONSUME3(t.Word) },
    { ALT: () => this.CONSUME3(t.InchMark) },
    { ALT: () => this.CONSUME3(t.FootMark) },
    { ALT: () => this.CONSUME3(t.Sign) },
  ];
  private isUnit(): boolean {
    const next = this.LA(1);
    if (!this.isHere(next)) return false;
    if (next.tokenType === t.InchMark || next.tokenType === t.FootMark) return true;
    const named = next.tokenType === t.Word || next.image === "%" || next.image === "°";
    return named && unitNamed(next.image) !== undefined;
  }
  /** Whether what follows belongs to the same amount: inches after feet, ounces after pounds. */
  private continues(last: Magnitude): boolean {
    const next = this.LA(1);
    if (!last.unit || !this.isHere(next) || !isNumber(next.tokenType)) return false;
    const then = unitNamed(last.unit)?.then;
    const k = then && this.unitAhead();
    return k !== undefined && unitNamed(k.image)?.symbol === then!.unit;
  }
  /** The token behind the number that comes next, a whole number with its fraction being one. */
  private unitAhead(): IToken | undefined {
    const k = this.LA(this.hasFraction() ? 3 : 2);
    return this.isHere(k) && (k.tokenType === t.InchMark || k.tokenType === t.Word) ? k : undefined;
  }
  private hasFraction(): boolean {
    return isFraction(this.LA(2).tokenType) && this.isHere(this.LA(2));
  }

  private amountOf(parts: readonly Magnitude[]): void {
    const first = parts[0]!;
    const last = parts[parts.length - 1]!;
    const next = this.LA(1);
    const feet = last.unit !== undefined && unitNamed(last.unit)!.symbol === "ft";
    if (feet && this.isHere(next) && isNumber(next.tokenType)) {
      const unit = this.unitAhead();
      if (!unit || !unitNamed(unit.image)) {
        const end = this.endOf(this.hasFraction() ? this.LA(2) : next);
        return this.report(unitBehindFeet(last, this.text.slice(this.startOf(next), end), end));
      }
    }
    const written = this.text.slice(first.start, last.end);
    const result = first.unit === undefined ? bareNumber(first, written) : measureOf(parts, written);
    if ("problem" in result) this.report({ ...result.problem, start: first.start, end: last.end });
    else this.add(result);
  }

  private wrong(k: IToken): void {
    this.ACTION(() => {
      this.reach(k);
      const start = this.startOf(k);
      const before = (most: number): string => this.text.slice(Math.max(0, start - most), start);
      this.report(mistakeOf(k.tokenType, k.image, start, before));
    });
  }
  private word(k: IToken): void {
    this.reach(k);
    this.add({
      type: "word",
      word: k.image.toLowerCase(),
      raw: k.image,
      start: this.startOf(k),
      end: this.endOf(k),
    });
  }
  private freeText(k: IToken): void {
    this.ACTION(() => {
      this.reach(k);
      const inner = k.image.slice(1, -1);
      const value = inner.includes("\\") ? inner.replace(/\\([^])/g, "$1") : inner;
      this.add({ type: "text", value, start: this.startOf(k), end: this.endOf(k) });
    });
  }
  private date(k: IToken): void {
    this.ACTION(() => {
      this.reach(k);
      const rule = "form/date-impossible";
      const [start, end] = [this.startOf(k), this.endOf(k)];
      if (isDay(k.image)) this.add({ type: "date", date: k.image, start, end });
      else this.report({ rule, message: says[rule]({ text: k.image }), start, end });
    });
  }
  private mark(k: IToken, mark: Mark["mark"]): void {
    this.reach(k);
    this.add({ type: "mark", mark, start: this.startOf(k), end: this.endOf(k) });
  }
  private by(k: IToken): void {
    this.reach(k);
    this.add({ type: "word", word: "by", raw: k.image, start: this.startOf(k), end: this.endOf(k) });
  }
  private sign(k: IToken): void {
    this.ACTION(() => {
      const sign = k.image === "–" || k.image === "−" ? "-" : k.image;
      if (sign === "=" || sign === "%" || sign === "°") this.wrong(k);
      else this.mark(k, sign as Mark["mark"]);
    });
  }
  private remark(k: IToken): void {
    this.ACTION(() => {
      this.reach(k);
      this.comment = { start: this.startOf(k), end: this.endOf(k) };
    });
  }

  private add(atom: Atom): void {
    if (this.from < 0) this.from = atom.start;
    if (atom.type === "measure" || atom.type === "number") {
      // `54 x 75 in`: the letter between two numbers is the multiplication sign.
      const before = this.count > 1 ? this.atoms[this.count - 1]! : undefined;
      if (before?.type === "word" && before.word === "x")
        this.atoms[this.count - 1] = { ...before, word: "by" };
    }
    this.atoms[this.count++] = atom;
  }
  /** A run of the same wrong characters is one finding. */
  private report(problem: LineProblem): void {
    const last = this.problems[this.problems.length - 1];
    const runs = problem.rule === "form/character" || problem.rule === "form/invisible-character";
    if (runs && this.spoilt && last?.rule === problem.rule && last.end === problem.start)
      this.problems[this.problems.length - 1] = { ...last, end: problem.end };
    else this.putProblem(problem);
    this.spoilt = true;
    if (this.from < 0) this.from = problem.start;
  }
  private ending(k: IToken): void {
    this.ACTION(() => {
      this.reach(k);
      this.finish(false, this.startOf(k));
    });
  }
  private opening(k: IToken): void {
    this.ACTION(() => {
      this.reach(k);
      const [start, end] = [this.startOf(k), this.endOf(k)];
      if (this.count === 0 && !this.spoilt) {
        const rule = "form/brace-without-kind";
        this.putProblem({ rule, message: says[rule](), start, end });
        this.from = start;
      }
      this.finish(true, start);
    });
  }
  private closing(k: IToken): void {
    this.ACTION(() => {
      this.reach(k);
      const [start, end] = [this.startOf(k), this.endOf(k)];
      this.finish(false, start);
      this.put({ type: "close", start, end });
    });
  }
  /** Ends the statement being read. A spoilt one that opens a block still opens it, so that its braces pair up. */
  private finish(opens: boolean, at: number): void {
    const empty = this.count === 0 && !this.spoilt && !opens;
    if (!empty && (opens || !this.spoilt)) {
      const atoms = this.atoms.slice(0, this.count);
      const end = this.count > 0 ? atoms[this.count - 1]!.end : at;
      this.put({ type: "statement", atoms, opens, start: Math.max(0, this.from), end });
    }
    this.clear();
  }
  private clear(): void {
    this.count = 0;
    this.spoilt = false;
    this.from = -1;
  }
  /** Most lines hold one item, and their list has room for no more. */
  private put(item: Item): void {
    if (this.items.length === 0) this.items = [item];
    else this.items.push(item);
  }
  private putProblem(problem: LineProblem): void {
    if (this.problems.length === 0) this.problems = [problem];
    else this.problems.push(problem);
  }
}

const isNumber = (k: TokenType): boolean =>
  k === t.Whole || k === t.Ratio || k === t.Decimal || k === t.Vulgar || k === t.Hyphened;
const isFraction = (k: TokenType): boolean => k === t.Ratio || k === t.Vulgar;
function kindOf(k: TokenType): Magnitude["kind"] {
  if (k === t.Whole) return "whole";
  if (k === t.Decimal) return "decimal";
  if (k === t.Ratio) return "ratio";
  return k === t.Hyphened ? "hyphened" : "vulgar";
}

/** The tokens of a text; characters that no token begins with are tokens of their own, so that nothing typed is passed over. */
function tokensOf(text: string): IToken[] {
  const { tokens, errors } = t.lexer.tokenize(text);
  if (errors.length === 0) return tokens;
  const others = errors.map((e): IToken => ({
    image: text.slice(e.offset, e.offset + e.length),
    startOffset: e.offset,
    tokenType: t.Other,
    tokenTypeIdx: t.Other.tokenTypeIdx!,
  }));
  return [...tokens, ...others].sort((a, b) => a.startOffset - b.startOffset);
}

let parser: LineParser | undefined;

/** Reads lines anew, none of which may hold a line break. Never throws. No token runs past the end of a line. */
export function parseLines(texts: readonly string[]): Line[] {
  parser ??= new LineParser();
  return parser.read(texts, tokensOf(texts.join("\n")));
}

/** Reads one line anew. */
export const parseLine = (text: string): Line => parseLines([text])[0]!;
