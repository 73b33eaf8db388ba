/**
 * The yardsticks for reading: a grammar of about the same size over the same tokens, by the parser library whose lexer cuts our
 * lines into tokens. It is run in two ways. The bare grammar only tells whether a file can be read: it builds nothing, says
 * nothing and knows no lines and columns. The plain parse is what the library does unless told otherwise: tokens with their lines
 * and columns, and the whole syntax tree.
 */
import {
  createToken,
  CstParser,
  EmbeddedActionsParser,
  Lexer,
  type CstNode,
  type IParserConfig,
} from "chevrotain";
import * as t from "../../language/text/tokens.js";

/** A whole file is one input here, so the ends of lines count. */
const Break = createToken({ name: "Break", pattern: /\r?\n/, line_breaks: true });
const Comment = createToken({ name: "Comment", pattern: /#[^\n]*/, group: Lexer.SKIPPED });
const left: readonly unknown[] = [t.Break, t.Comment, t.OpenText, t.Invisible, t.PoundsSign, t.Other];
const tokens = [Break, Comment, ...t.tokens.filter((k) => !left.includes(k))];

/** The grammar, over either of the library's parsers: they have the same methods, and differ in what a rule gives. */
function grammarOver(Base: typeof EmbeddedActionsParser) {
  return class Grammar extends Base {
    constructor(config: IParserConfig) {
      super(tokens, config);
      this.performSelfAnalysis();
    }
    file = this.RULE("file", () => {
      this.MANY(() => this.SUBRULE(this.statement));
    });
    readonly statements = [
      { ALT: () => this.CONSUME(t.Semicolon) },
      { ALT: () => this.CONSUME(Break) },
      {
        ALT: () => {
          this.AT_LEAST_ONE(() => this.SUBRULE(this.value));
          this.OPTION(() => this.SUBRULE(this.block));
        },
      },
    ];
    statement = this.RULE("statement", () => {
      this.OR(this.statements);
    });
    block = this.RULE("block", () => {
      this.CONSUME(t.Open);
      this.MANY(() => this.SUBRULE(this.statement));
      this.CONSUME(t.Closed);
    });
    readonly values = [
      { ALT: () => this.CONSUME(t.Word) },
      { ALT: () => this.SUBRULE(this.amount) },
      { ALT: () => this.CONSUME(t.Text) },
      { ALT: () => this.CONSUME(t.IsoDate) },
      { ALT: () => this.CONSUME(t.PlusMinus) },
      { ALT: () => this.CONSUME(t.Sign) },
      { ALT: () => this.CONSUME(t.By) },
    ];
    value = this.RULE("value", () => {
      this.OR(this.values);
    });
    readonly amounts = [
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
    readonly fractions = [{ ALT: () => this.CONSUME1(t.Ratio) }, { ALT: () => this.CONSUME1(t.Vulgar) }];
    readonly marks = [{ ALT: () => this.CONSUME(t.InchMark) }, { ALT: () => this.CONSUME(t.FootMark) }];
    amount = this.RULE("amount", () => {
      this.OR2(this.amounts);
      this.OPTION2(() => this.OR3(this.marks));
    });
  };
}

function bareGrammar() {
  const lexer = new Lexer(tokens, { positionTracking: "onlyOffset", ensureOptimizations: false });
  const Bare = grammarOver(EmbeddedActionsParser);
  return { lexer, parser: new Bare({ recoveryEnabled: false, maxLookahead: 2, skipValidations: true }) };
}

/** The lexer and the parser with the library's own settings. */
function plainGrammar() {
  const Plain = grammarOver(CstParser as unknown as typeof EmbeddedActionsParser);
  return { lexer: new Lexer(tokens), parser: new Plain({}) };
}

let bare: ReturnType<typeof bareGrammar> | undefined;
let plain: ReturnType<typeof plainGrammar> | undefined;

/** Whether the grammar takes the whole text. */
export function recognise(text: string): boolean {
  const { lexer, parser } = (bare ??= bareGrammar());
  const read = lexer.tokenize(text);
  parser.input = read.tokens;
  parser.file();
  return read.errors.length === 0 && parser.errors.length === 0;
}

/** The syntax tree of the whole text, as the library builds it; throws where the grammar does not take it. */
export function parseTree(text: string): CstNode {
  const { lexer, parser } = (plain ??= plainGrammar());
  const read = lexer.tokenize(text);
  parser.input = read.tokens;
  const tree = parser.file() as unknown as CstNode;
  if (read.errors.length + parser.errors.length > 0) throw new Error("The grammar does not take this text.");
  return tree;
}

/** How many tokens the grammar reads, and up to which character. */
export function tokenized(text: string): { readonly tokens: number; readonly upTo: number } {
  const { tokens: all } = (bare ??= bareGrammar()).lexer.tokenize(text);
  const last = all[all.length - 1];
  return { tokens: all.length, upTo: last ? last.startOffset + last.image.length : 0 };
}
