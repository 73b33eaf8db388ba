/**
 * The yardstick for reading: a grammar of about the same size over the same tokens, by the same parser library, that only tells
 * whether a file can be read. It builds nothing and says nothing.
 */
import { createToken, EmbeddedActionsParser, Lexer } from "chevrotain";
import * as t from "../../language/text/tokens.js";

/** A whole file is one input here, so what runs to the end of the line must stop there. */
const Break = createToken({ name: "Break", pattern: /\r?\n/, line_breaks: true });
const Comment = createToken({ name: "Comment", pattern: /#[^\n]*/, group: Lexer.SKIPPED });
const Text = createToken({ name: "Text", pattern: /"[^"\\\n]*(?:\\.[^"\\\n]*)*"/ });
const left: readonly unknown[] = [t.Comment, t.Text, t.OpenText, t.Invisible, t.PoundsSign, t.Other];
const tokens = [Break, Comment, Text, ...t.tokens.filter((k) => !left.includes(k))];
const lexer = new Lexer(tokens, { positionTracking: "onlyOffset", ensureOptimizations: false });

class Recogniser extends EmbeddedActionsParser {
  constructor() {
    super(tokens, { recoveryEnabled: false, maxLookahead: 2, skipValidations: true });
    this.performSelfAnalysis();
  }
  file = this.RULE("file", () => {
    this.MANY(() => this.SUBRULE(this.statement));
  });
  private readonly statements = [
    { ALT: () => this.CONSUME(t.Semicolon) },
    { ALT: () => this.CONSUME(Break) },
    {
      ALT: () => {
        this.AT_LEAST_ONE(() => this.SUBRULE(this.value));
        this.OPTION(() => this.SUBRULE(this.block));
      },
    },
  ];
  private statement = this.RULE("statement", () => {
    this.OR(this.statements);
  });
  private block = this.RULE("block", () => {
    this.CONSUME(t.Open);
    this.MANY(() => this.SUBRULE(this.statement));
    this.CONSUME(t.Closed);
  });
  private readonly values = [
    { ALT: () => this.CONSUME(t.Word) },
    { ALT: () => this.SUBRULE(this.amount) },
    { ALT: () => this.CONSUME(Text) },
    { ALT: () => this.CONSUME(t.IsoDate) },
    { ALT: () => this.CONSUME(t.PlusMinus) },
    { ALT: () => this.CONSUME(t.Sign) },
    { ALT: () => this.CONSUME(t.By) },
  ];
  private value = this.RULE("value", () => {
    this.OR(this.values);
  });
  private readonly amounts = [
    {
      ALT: () => {
        this.CONSUME(t.Whole);
        this.OPTION1(() => this.OR1(this.fractions));
      },
    },
    { ALT: () => this.CONSUME(t.Decimal) },
    { ALT: () => this.CONSUME2(t.Ratio) },
    { ALT: () => this.CONSUME(t.Hyphened) },
    { ALT: () => this.CONSUME2(t.Vulgar) },
  ];
  private readonly fractions = [
    { ALT: () => this.CONSUME1(t.Ratio) },
    { ALT: () => this.CONSUME1(t.Vulgar) },
  ];
  private readonly marks = [{ ALT: () => this.CONSUME(t.InchMark) }, { ALT: () => this.CONSUME(t.FootMark) }];
  private amount = this.RULE("amount", () => {
    this.OR2(this.amounts);
    this.OPTION2(() => this.OR3(this.marks));
  });
}

let parser: Recogniser | undefined;

/** Whether the grammar takes the whole text. */
export function recognise(text: string): boolean {
  parser ??= new Recogniser();
  const read = lexer.tokenize(text);
  parser.input = read.tokens;
  parser.file();
  return read.errors.length === 0 && parser.errors.length === 0;
}
