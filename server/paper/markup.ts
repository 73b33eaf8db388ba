/** Pieces of a page in HTML. What somebody wrote into a rule set is text, never markup. */
import { capital } from "../../language/text/capital.js";

const named: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
};

/** Characters that no page may hold, or that turn the direction of the writing around them. */
const steering =
  /[\u0000-\u0008\u000B-\u001F\u007F-\u009F\u200E\u200F\u202A-\u202E\u2066-\u2069\uFFFE\uFFFF]/g;

/** For text and for values of attributes in double quotes. */
export const escaped = (text: string): string =>
  text.replaceAll(/[&<>"]/g, (c) => named[c]!).replaceAll(steering, "\uFFFD");

/** A link within the page. */
export const link = (anchor: string, inner: string): string =>
  `<a href="#${escaped(encodeURI(anchor))}">${inner}</a>`;

export const code = (text: string): string => `<code>${escaped(text)}</code>`;

/** A sentence: with a capital in front, and a full stop unless it ends with a mark of its own. */
export const sentence = (text: string): string => {
  const words = capital(text);
  return /[.!?:]["”)]?$/.test(words) ? words : `${words}.`;
};

/** A table with a head that is repeated on every printed page. The first cell of each row names the row. */
export function table(
  caption: string,
  heads: readonly string[],
  rows: readonly { readonly id?: string; readonly cells: readonly string[] }[],
  kind: string,
): string {
  const head = heads.map((h) => `<th scope="col">${escaped(h)}</th>`).join("");
  const body = rows.map(({ id, cells }) => {
    const inner = cells.map((c, i) => (i === 0 ? `<th scope="row">${c}</th>` : `<td>${c}</td>`)).join("");
    return `<tr${id === undefined ? "" : ` id="${escaped(id)}"`}>${inner}</tr>`;
  });
  return `<table class="${kind}"><caption>${escaped(caption)}</caption>\n<thead><tr>${head}</tr></thead>\n<tbody>\n${body.join("\n")}\n</tbody></table>`;
}

/** Breaks a text into lines of about `letters` letters, between words. */
export function broken(text: string, letters: number): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(" ")) {
    const last = lines[lines.length - 1];
    if (last === undefined || last.length + 1 + word.length > letters) lines.push(word);
    else lines[lines.length - 1] = `${last} ${word}`;
  }
  return lines;
}
