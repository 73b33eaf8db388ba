/**
 * Reads one line: tokens to statements. Lines know nothing of each other, so a wrong line spoils itself only, and a line whose
 * text has been seen before is the same object.
 */
import { EmbeddedActionsParser, type IToken, type TokenType } from "chevrotain";
import { unitNamed } from "../quantity/units.js";
import { bareNumber, measureOf, type Magnitude } from "./measure.js";
import { says } from "./messages.js";
import * as t from "./tokens.js";
import type { Atom, Fix, Item, Line, LineProblem, Mark, Statement } from "./types.js";

const spot = (k: IToken) => ({ start: k.startOffset, end: k.startOffset + k.image.length });

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
      this.OR([
        { ALT: () => this.ending(this.CONSUME(t.Semicolon)) },
        { ALT: () => this.opening(this.CONSUME(t.Open)) },
        { ALT: () => this.closing(this.CONSUME(t.Closed)) },
        { ALT: () => this.SUBRULE(this.number) },
        { ALT: () => this.word(this.CONSUME(t.Word)) },
        { ALT: () => this.freeText(this.CONSUME(t.Text)) },
        { ALT: () => this.date(this.CONSUME(t.IsoDate)) },
        { ALT: () => this.mark(this.CONSUME(t.PlusMinus), "±") },
        { ALT: () => this.sign(this.CONSUME(t.Sign)) },
        { ALT: () => this.by(this.CONSUME(t.By)) },
        { ALT: () => this.SUBRULE(this.mistake) },
      ]);
    });
    this.ACTION(() => this.finish(false, this.text.length));
  });

  /** `19 1/2 in`, `5 ft 9 in`, `30"`; or a number whose unit is missing or comes later. */
  private number = this.RULE("number", () => {
    const parts: Magnitude[] = [];
    const first = this.SUBRULE1(this.magnitude);
    const unit = this.unitAfter();
    this.ACTION(() => parts.push({ ...first, ...(unit && { unit: unit.unit, end: unit.end }) }));
    this.MANY({
      GATE: () => this.continues(parts[parts.length - 1]),
      DEF: () => {
        const next = this.SUBRULE2(this.magnitude);
        const after = this.unitAfter2();
        this.ACTION(() => parts.push({ ...next, ...(after && { unit: after.unit, end: after.end }) }));
      },
    });
    this.ACTION(() => this.put(parts));
  });

  private magnitude = this.RULE("magnitude", () =>
    this.OR([
      { ALT: () => this.SUBRULE(this.whole) },
      { ALT: () => this.plain(this.CONSUME(t.Decimal), "decimal") },
      { ALT: () => this.plain(this.CONSUME(t.Ratio), "ratio") },
      { ALT: () => this.plain(this.CONSUME(t.Hyphened), "hyphened") },
      { ALT: () => this.plain(this.CONSUME(t.Vulgar), "vulgar") },
    ]),
  );

  private whole = this.RULE("whole", (): Magnitude => {
    const k = this.CONSUME(t.Whole);
    let part: IToken | undefined;
    this.OPTION(() => {
      part = this.OR([{ ALT: () => this.CONSUME(t.Ratio) }, { ALT: () => this.CONSUME(t.Vulgar) }]);
    });
    return this.ACTION(() => ({
      kind: part ? "mixed" : "whole",
      image: part ? `${k.image} ${part.image}` : k.image,
      start: k.startOffset,
      end: part ? spot(part).end : spot(k).end,
    }));
  });

  private plain(k: IToken, kind: Magnitude["kind"]): Magnitude {
    return { kind, image: k.image, ...spot(k) };
  }

  private unitAfter(): { unit: string; end: number } | undefined {
    let found: { unit: string; end: number } | undefined;
    this.OPTION1({
      GATE: () => this.isUnit(),
      DEF: () => (found = this.unitToken(this.SUBRULE1(this.unit))),
    });
    return found;
  }
  private unitAfter2(): { unit: string; end: number } | undefined {
    let found: { unit: string; end: number } | undefined;
    this.OPTION2({
      GATE: () => this.isUnit(),
      DEF: () => (found = this.unitToken(this.SUBRULE3(this.unit))),
    });
    return found;
  }
  private unit = this.RULE("unit", () =>
    this.OR([
      { ALT: () => this.CONSUME(t.Word) },
      { ALT: () => this.CONSUME(t.InchMark) },
      { ALT: () => this.CONSUME(t.FootMark) },
      { ALT: () => this.CONSUME(t.Sign) },
    ]),
  );
  private unitToken(k: IToken | undefined): { unit: string; end: number } | undefined {
    return this.ACTION(() => k && { unit: k.image, end: spot(k).end });
  }
  private isUnit(): boolean {
    const next = this.LA(1);
    if (next.tokenType === t.InchMark || next.tokenType === t.FootMark) return true;
    return (
      (next.tokenType === t.Word || next.image === "%" || next.image === "°") &&
      unitNamed(next.image) !== undefined
    );
  }
  /** Whether what follows belongs to the same amount: inches after feet, ounces after pounds. */
  private continues(last: Magnitude | undefined): boolean {
    if (!last?.unit) return false;
    const then = unitNamed(last.unit)?.then;
    if (!then || !isNumber(this.LA(1).tokenType)) return false;
    for (let i = 2; i <= 3; i++) {
      const k = this.LA(i);
      if (k.tokenType === t.InchMark || k.tokenType === t.Word)
        return unitNamed(k.image)?.symbol === then.unit;
      if (!isNumber(k.tokenType)) return false;
    }
    return false;
  }

  private mistake = this.RULE("mistake", () => {
    this.OR([
      { ALT: () => this.wrong(this.CONSUME(t.Invisible), "form/invisible-character") },
      { ALT: () => this.wrong(this.CONSUME(t.OpenText), "form/text-not-closed") },
      { ALT: () => this.wrong(this.CONSUME(t.OtherDate), "form/date-written-otherwise") },
      { ALT: () => this.wrong(this.CONSUME(t.DecimalComma), "form/decimal-comma") },
      { ALT: () => this.wrong(this.CONSUME(t.PoundsSign), "form/pounds-sign") },
      { ALT: () => this.wrong(this.CONSUME(t.InchMark), "form/character") },
      { ALT: () => this.wrong(this.CONSUME(t.FootMark), "form/character") },
    ]);
  });

  private wrong(
    k: IToken,
    rule:
      | "form/invisible-character"
      | "form/text-not-closed"
      | "form/date-written-otherwise"
      | "form/decimal-comma"
      | "form/pounds-sign"
      | "form/character",
  ) {
    this.ACTION(() => {
      const { start, end } = spot(k);
      const image = k.image;
      if (rule === "form/invisible-character") {
        const code = `U+${image.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0")}`;
        this.report({
          rule,
          message: says[rule]({ code }),
          start,
          end,
          fixes: [{ title: "Delete it", text: "" }],
        });
      } else if (rule === "form/text-not-closed") {
        this.report({
          rule,
          message: says[rule](),
          start,
          end,
          fixes: [{ title: "Close the text", text: `${image}"` }],
        });
      } else if (rule === "form/pounds-sign") {
        const from = this.text
          .slice(0, start)
          .match(/[\d./ ]*$/)![0]
          .trim();
        this.report({
          rule,
          message: says[rule]({ text: `${from}#` }),
          start,
          end,
          fixes: [{ title: `${from} lb`, text: " lb" }],
        });
      } else if (rule === "form/date-written-otherwise") {
        this.report({ rule, message: says[rule]({ text: image }), start, end, fixes: dateReadings(image) });
      } else if (rule === "form/decimal-comma") {
        const fixes = [
          { title: `The number ${image.replace(",", ".")}`, text: image.replace(",", ".") },
          { title: `Two numbers, ${image.replace(",", " and ")}`, text: image.replace(",", ", ") },
        ];
        this.report({ rule, message: says[rule]({ text: image }), start, end, fixes });
      } else this.report({ rule, message: says[rule]({ text: image }), start, end });
    });
  }

  private put(parts: Magnitude[]): void {
    const start = parts[0]!.start;
    const end = parts[parts.length - 1]!.end;
    const written = this.text.slice(start, end);
    const result = parts[0]!.unit === undefined ? bareNumber(parts[0]!, written) : measureOf(parts, written);
    if ("problem" in result) this.report({ ...result.problem, start, end });
    else this.add({ ...result.atom, start, end });
  }
  private word(k: IToken): void {
    this.ACTION(() => this.add({ type: "word", word: k.image.toLowerCase(), raw: k.image, ...spot(k) }));
  }
  private freeText(k: IToken): void {
    this.ACTION(() =>
      this.add({ type: "text", value: k.image.slice(1, -1).replace(/\\(.)/g, "$1"), ...spot(k) }),
    );
  }
  private date(k: IToken): void {
    this.ACTION(() => {
      if (isDay(k.image)) this.add({ type: "date", date: k.image, ...spot(k) });
      else
        this.report({
          rule: "form/date-impossible",
          message: says["form/date-impossible"]({ text: k.image }),
          ...spot(k),
        });
    });
  }
  private mark(k: IToken, mark: Mark["mark"]): void {
    this.ACTION(() => this.add({ type: "mark", mark, ...spot(k) }));
  }
  private by(k: IToken): void {
    this.ACTION(() => this.add({ type: "word", word: "by", raw: k.image, ...spot(k) }));
  }
  private sign(k: IToken): void {
    this.ACTION(() => {
      const mark = k.image === "–" || k.image === "−" ? "-" : k.image;
      if (mark === "=" || mark === "%" || mark === "°") {
        const fixes = mark === "=" ? [{ title: "Leave it out", text: "" }] : [];
        this.report({
          rule: "form/character",
          message: says["form/character"]({ text: mark }),
          ...spot(k),
          fixes,
        });
      } else this.add({ type: "mark", mark: mark as Mark["mark"], ...spot(k) });
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
  private report(problem: LineProblem): void {
    this.problems.push(problem);
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
        atoms: this.spoilt && !opens ? [] : this.atoms,
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

/** Whether the Gregorian calendar has this day. */
export function isDay(iso: string): boolean {
  const day = new Date(`${iso}T00:00:00Z`);
  return !Number.isNaN(day.getTime()) && day.toISOString().startsWith(iso);
}

const months = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
];
function dateReadings(image: string): Fix[] {
  const [a, b, c] = image.split(/[/.]/);
  const year = c!.length === 2 ? `20${c}` : c!;
  const reading = (month: string, day: string): Fix[] => {
    const iso = `${year}-${month.padStart(2, "0")}-${day.padStart(2, "0")}`;
    return isDay(iso) ? [{ title: `${Number(day)} ${months[Number(month) - 1]} ${year}`, text: iso }] : [];
  };
  return a === b ? reading(a!, b!) : [...reading(a!, b!), ...reading(b!, a!)];
}

let parser: LineParser | undefined;

/** Reads a line anew. A text may not hold a line break. Never throws. */
export function parseLine(text: string): Line {
  const { tokens, errors } = t.lexer.tokenize(text);
  const comment = tokens[tokens.length - 1]?.tokenType === t.Comment ? tokens.pop() : undefined;
  parser ??= new LineParser();
  const { items, problems } = parser.read(text, tokens);
  for (const e of errors)
    problems.push({
      rule: "form/character",
      message: says["form/character"]({ text: text.slice(e.offset, e.offset + Math.min(e.length, 20)) }),
      start: e.offset,
      end: e.offset + e.length,
    });
  return { text, items, ...(comment && { comment: spot(comment) }), problems };
}
