/**
 * Reads one line: tokens to statements. Lines know nothing of each other, so a wrong line spoils itself only, and a line whose
 * text has been seen before is the same object.
 */
import { EmbeddedActionsParser, type IToken, type TokenType } from "chevrotain";
import { unitNamed } from "../quantity/units.js";
import { bareNumber, measureOf, type Magnitude } from "./measure.js";
import { says } from "./messages.js";
import { isDay, mistakeOf, unitBehindFeet } from "./mistakes.js";
import * as t from "./tokens.js";
import type { Atom, Item, Line, LineProblem, Mark, Statement } from "./types.js";

const endOf = (k: IToken): number => k.startOffset + k.image.length;
const spot = (k: IToken) => ({ start: k.startOffset, end: endOf(k) });

class LineParser extends EmbeddedActionsParser {
  private items: Item[] = [];
  private problems: LineProblem[] = [];
  private atoms: Atom[] = [];
  private text = "";
  /** A mistake inside the statement being read: the statement is dropped, its neighbours are not. */
  private spoilt = false;
  private from = -1;

  constructor() {
    super(t.tokens, { recoveryEnabled: false, maxLookahead: 2, skipValidations: true });
    this.performSelfAnalysis();
  }

  read(text: string, tokens: IToken[]): { items: Item[]; problems: LineProblem[] } {
    this.items = [];
    this.problems = [];
    this.atoms = [];
    this.text = text;
    this.spoilt = false;
    this.from = -1;
    this.input = tokens;
    this.line();
    return { items: this.items, problems: this.problems };
  }

  private line = this.RULE("line", () => {
    this.MANY(() => {
      this.OR(this.pieces);
    });
    this.ACTION(() => this.finish(false, this.text.length));
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
    const parts: Magnitude[] = [this.SUBRULE1(this.amount)];
    this.MANY({
      GATE: () => this.continues(parts[parts.length - 1]!),
      DEF: () => parts.push(this.SUBRULE2(this.amount)),
    });
    this.ACTION(() => this.put(parts));
  });

  /** One number, with its unit if it has one. */
  private amount = this.RULE("amount", (): Magnitude => {
    const magnitude = this.OR(this.magnitudes);
    let unit: IToken | undefined;
    this.OPTION({ GATE: () => this.isUnit(), DEF: () => (unit = this.SUBRULE(this.unit)) });
    return this.ACTION(() => (unit ? { ...magnitude, unit: unit.image, end: endOf(unit) } : magnitude));
  });
  private readonly magnitudes = [
    { ALT: () => this.SUBRULE(this.whole) },
    { ALT: () => this.plain(this.CONSUME(t.Decimal), "decimal") },
    { ALT: () => this.plain(this.CONSUME(t.Ratio), "ratio") },
    { ALT: () => this.plain(this.CONSUME(t.Hyphened), "hyphened") },
    { ALT: () => this.plain(this.CONSUME(t.Vulgar), "vulgar") },
  ];

  private whole = this.RULE("whole", (): Magnitude => {
    const k = this.CONSUME(t.Whole);
    let part: IToken | undefined;
    this.OPTION(() => (part = this.OR(this.fractions)));
    return this.ACTION(() =>
      part
        ? { kind: "mixed", image: `${k.image} ${part.image}`, start: k.startOffset, end: endOf(part) }
        : { kind: "whole", image: k.image, ...spot(k) },
    );
  });
  private readonly fractions = [{ ALT: () => this.CONSUME(t.Ratio) }, { ALT: () => this.CONSUME(t.Vulgar) }];
  private plain(k: IToken, kind: Magnitude["kind"]): Magnitude {
    return { kind, image: k.image, ...spot(k) };
  }

  private unit = this.RULE("unit", () => this.OR(this.unitTokens));
  private readonly unitTokens = [
    { ALT: () => this.CONSUME(t.Word) },
    { ALT: () => this.CONSUME(t.InchMark) },
    { ALT: () => this.CONSUME(t.FootMark) },
    { ALT: () => this.CONSUME(t.Sign) },
  ];
  private isUnit(): boolean {
    const next = this.LA(1);
    if (next.tokenType === t.InchMark || next.tokenType === t.FootMark) return true;
    return (
      (next.tokenType === t.Word || next.image === "%" || next.image === "°") &&
      unitNamed(next.image) !== undefined
    );
  }
  /** Whether what follows belongs to the same amount: inches after feet, ounces after pounds. */
  private continues(last: Magnitude): boolean {
    if (!last.unit || !isNumber(this.LA(1).tokenType)) return false;
    const then = unitNamed(last.unit)?.then;
    const k = then && this.unitAhead();
    return k !== undefined && unitNamed(k.image)?.symbol === then!.unit;
  }
  /** The token behind the number that comes next, a whole number with its fraction being one. */
  private unitAhead(): IToken | undefined {
    const k = this.LA(isFraction(this.LA(2).tokenType) ? 3 : 2);
    return k.tokenType === t.InchMark || k.tokenType === t.Word ? k : undefined;
  }

  private put(parts: Magnitude[]): void {
    const start = parts[0]!.start;
    const last = parts[parts.length - 1]!;
    const next = this.LA(1);
    if (unitNamed(last.unit ?? "")?.symbol === "ft" && isNumber(next.tokenType)) {
      const unit = this.unitAhead();
      if (!unit || !unitNamed(unit.image)) {
        const end = spot(isFraction(this.LA(2).tokenType) ? this.LA(2) : next).end;
        return this.report(unitBehindFeet(last, this.text.slice(next.startOffset, end), end));
      }
    }
    const written = this.text.slice(start, last.end);
    const result = parts[0]!.unit === undefined ? bareNumber(parts[0]!, written) : measureOf(parts, written);
    if ("problem" in result) this.report({ ...result.problem, start, end: last.end });
    else this.add(result.atom);
  }

  private wrong(k: IToken): void {
    this.ACTION(() =>
      this.report(
        mistakeOf(k.tokenType, k.image, k.startOffset, (most) =>
          this.text.slice(Math.max(0, k.startOffset - most), k.startOffset),
        ),
      ),
    );
  }
  private word(k: IToken): void {
    this.add({
      type: "word",
      word: k.image.toLowerCase(),
      raw: k.image,
      start: k.startOffset,
      end: endOf(k),
    });
  }
  private freeText(k: IToken): void {
    this.ACTION(() => {
      const inner = k.image.slice(1, -1);
      this.add({
        type: "text",
        value: inner.includes("\\") ? inner.replace(/\\([^])/g, "$1") : inner,
        ...spot(k),
      });
    });
  }
  private date(k: IToken): void {
    this.ACTION(() => {
      const rule = "form/date-impossible";
      if (isDay(k.image)) this.add({ type: "date", date: k.image, ...spot(k) });
      else this.report({ rule, message: says[rule]({ text: k.image }), ...spot(k) });
    });
  }
  private mark(k: IToken, mark: Mark["mark"]): void {
    this.add({ type: "mark", mark, start: k.startOffset, end: endOf(k) });
  }
  private by(k: IToken): void {
    this.add({ type: "word", word: "by", raw: k.image, start: k.startOffset, end: endOf(k) });
  }
  private sign(k: IToken): void {
    this.ACTION(() => {
      const sign = k.image === "–" || k.image === "−" ? "-" : k.image;
      if (sign === "=" || sign === "%" || sign === "°") this.wrong(k);
      else this.add({ type: "mark", mark: sign as Mark["mark"], ...spot(k) });
    });
  }

  private add(atom: Atom): void {
    if (this.from < 0) this.from = atom.start;
    // `54 x 75 in`: the letter between two numbers is the multiplication sign.
    const before = this.atoms[this.atoms.length - 1];
    if (
      (atom.type === "measure" || atom.type === "number") &&
      before?.type === "word" &&
      before.word === "x" &&
      this.atoms.length > 1
    )
      this.atoms[this.atoms.length - 1] = { ...before, word: "by" };
    this.atoms.push(atom);
  }
  /** A run of the same wrong characters is one finding. */
  private report(problem: LineProblem): void {
    const last = this.problems[this.problems.length - 1];
    const runs = problem.rule === "form/character" || problem.rule === "form/invisible-character";
    if (runs && this.spoilt && last?.rule === problem.rule && last.end === problem.start)
      this.problems[this.problems.length - 1] = { ...last, end: problem.end };
    else this.problems.push(problem);
    this.spoilt = true;
    if (this.from < 0) this.from = problem.start;
  }
  private ending(k: IToken): void {
    this.ACTION(() => this.finish(false, k.startOffset));
  }
  private opening(k: IToken): void {
    this.ACTION(() => {
      if (this.atoms.length === 0 && !this.spoilt) {
        this.problems.push({
          rule: "form/brace-without-kind",
          message: says["form/brace-without-kind"](),
          ...spot(k),
        });
        this.from = k.startOffset;
      }
      this.finish(true, k.startOffset);
    });
  }
  private closing(k: IToken): void {
    this.ACTION(() => {
      this.finish(false, k.startOffset);
      this.items.push({ type: "close", ...spot(k) });
    });
  }
  /** Ends the statement being read. A spoilt one that opens a block still opens it, so that its braces pair up. */
  private finish(opens: boolean, at: number): void {
    const empty = this.atoms.length === 0 && !this.spoilt && !opens;
    if (!empty && (opens || !this.spoilt)) {
      const end = this.atoms[this.atoms.length - 1]?.end ?? at;
      const statement: Statement = {
        type: "statement",
        atoms: this.atoms,
        opens,
        start: Math.max(0, this.from),
        end,
      };
      this.items.push(statement);
    }
    this.atoms = [];
    this.spoilt = false;
    this.from = -1;
  }
}

const isNumber = (k: TokenType): boolean =>
  k === t.Whole || k === t.Ratio || k === t.Decimal || k === t.Vulgar || k === t.Hyphened;
const isFraction = (k: TokenType): boolean => k === t.Ratio || k === t.Vulgar;

/** The tokens of a line; characters that no token begins with are tokens of their own, so that nothing typed is passed over. */
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

/** Shared by all lines that can be read. */
const nothingWrong: readonly LineProblem[] = [];
let parser: LineParser | undefined;

/** Reads a line anew. A text may not hold a line break. Never throws. */
export function parseLine(text: string): Line {
  const tokens = tokensOf(text);
  const comment = tokens[tokens.length - 1]?.tokenType === t.Comment ? tokens.pop() : undefined;
  parser ??= new LineParser();
  const { items, problems } = parser.read(text, tokens);
  return {
    text,
    items,
    ...(comment && { comment: spot(comment) }),
    problems: problems.length > 0 ? problems : nothingWrong,
  };
}
