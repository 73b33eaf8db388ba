import type { Atom } from "./types.js";

/** An atom as the formatter writes it and as messages quote it: words as typed, amounts in their one spelling, texts in quotes. */
export function atomText(a: Atom): string {
  switch (a.type) {
    case "word":
      return a.raw;
    case "text":
      return `"${a.value.replace(/["\\]/g, "\\$&")}"`;
    case "measure":
      return a.spelling;
    case "number":
      return a.raw;
    case "date":
      return a.date;
    case "mark":
      return a.mark;
  }
}
