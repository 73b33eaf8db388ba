/** The tokens of lines. Setups and rule sets share them. No token holds a line break. One lexer serves the whole process. */
import { createToken, Lexer, type CustomPatternMatcherFunc, type TokenType } from "chevrotain";

/** Inch and foot marks count only directly after a digit; elsewhere a quote starts a text. */
const afterDigit =
  (marks: string): CustomPatternMatcherFunc =>
  (text, offset) => {
    const mark = text[offset]!;
    if (!marks.includes(mark) || offset === 0 || !/[0-9½¼¾⅐-⅞]/.test(text[offset - 1]!)) return null;
    return [mark] as unknown as RegExpExecArray;
  };

const token = (name: string, pattern: RegExp | CustomPatternMatcherFunc, more: object = {}): TokenType =>
  createToken({ name, pattern, line_breaks: false, ...more });

/** Lines are read many at a time; no token goes from one to the next. */
export const Break = token("Break", /\n/, { group: Lexer.SKIPPED });
export const Blank = token("Blank", /[ \t\r\u00a0\u2000-\u200a\u202f\u3000]+/, { group: Lexer.SKIPPED });
const isBlank = (c: string | undefined): boolean =>
  c !== undefined && /[ \t\r\u00a0\u2000-\u200a\u202f\u3000]/.test(c);
/** A line without the blanks at its ends; characters that nobody sees are no blanks. */
export function withoutMargins(text: string): string {
  let [start, end] = [0, text.length];
  while (isBlank(text[start])) start++;
  while (end > start && isBlank(text[end - 1])) end--;
  return text.slice(start, end);
}
export const Invisible = token(
  "Invisible",
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u00ad\u200b-\u200f\u2028\u2029\u202a-\u202e\u2060-\u2069\ufeff\ufffd]+/,
);
export const PoundsSign = token("PoundsSign", poundsSign, { start_chars_hint: ["#"] });
export const Comment = token("Comment", /#[^\n]*/);
export const InchMark = token("InchMark", afterDigit(`"″”`), { start_chars_hint: [`"`, "″", "”"] });
export const FootMark = token("FootMark", afterDigit("'′’"), { start_chars_hint: ["'", "′", "’"] });
export const Text = token("Text", /"[^"\\\n]*(?:\\[^\n][^"\\\n]*)*"|“[^”\n]*”/);
export const OpenText = token("OpenText", /["“][^\n]*/);
export const IsoDate = token("IsoDate", /\d{4}-\d{2}-\d{2}(?![\d-])/);
export const OtherDate = token("OtherDate", /\d{1,2}[/.]\d{1,2}[/.]\d{2,4}(?![\d/])/);
export const Hyphened = token("Hyphened", /\d+-\d+\/\d+/);
export const DecimalComma = token("DecimalComma", /\d+,\d+(?:\.\d+)?/);
export const Ratio = token("Ratio", /\d+[/⁄]\d+/);
export const Decimal = token("Decimal", /\d*\.\d+/);
export const Whole = token("Whole", /\d+/);
export const Vulgar = token("Vulgar", /[½¼¾⅐-⅞]/);
export const Word = token(
  "Word",
  /[A-Za-z\u00c0-\u024f_](?:[A-Za-z0-9\u00c0-\u024f_]|[-./](?=[A-Za-z0-9\u00c0-\u024f_]))*/,
);
export const Open = token("Open", /\{/);
export const Closed = token("Closed", /\}/);
export const Semicolon = token("Semicolon", /;/);
export const PlusMinus = token("PlusMinus", /±|\+[^\S\n]?\/[^\S\n]?[-–−]/);
/** The sign, or the letter x between two digits: `54x75 in`. */
export const By = token("By", timesSign, { start_chars_hint: ["×", "x", "X"] });
export const Sign = token("Sign", /[,:+*/()=%°–−-]/);

/** `182#`: a pound sign straight after a number, and not the start of a comment with a blank before it. */
function poundsSign(text: string, offset: number): RegExpExecArray | null {
  return text[offset] === "#" && offset > 0 && /[0-9]/.test(text[offset - 1]!)
    ? (["#"] as unknown as RegExpExecArray)
    : null;
}

function timesSign(text: string, offset: number): RegExpExecArray | null {
  const between =
    offset > 0 && /[0-9½¼¾⅐-⅞"″”'′’]/.test(text[offset - 1]!) && /[0-9½¼¾⅐-⅞]/.test(text[offset + 1] ?? "");
  return text[offset] === "×" || between ? ([text[offset]!] as unknown as RegExpExecArray) : null;
}

/** A character that begins nothing. No pattern of its own: it is what the others leave. */
export const Other = createToken({ name: "Other", pattern: Lexer.NA });

export const tokens: TokenType[] = [
  Break,
  Blank,
  Invisible,
  PoundsSign,
  Comment,
  FootMark,
  InchMark,
  Text,
  OpenText,
  IsoDate,
  OtherDate,
  Hyphened,
  DecimalComma,
  Ratio,
  Decimal,
  Whole,
  Vulgar,
  By,
  Word,
  Open,
  Closed,
  Semicolon,
  PlusMinus,
  Sign,
  Other,
];

/** Whatever stands in a text, lexing takes time in proportion to its length. */
export const lexer = new Lexer(tokens, {
  ensureOptimizations: false,
  positionTracking: "onlyOffset",
  safeMode: false,
});
