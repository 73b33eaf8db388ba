/** Where a command writes: width, emphasis, and words that cannot harm a terminal. */
import { createColors } from "picocolors";

export interface Terminal {
  /** Columns to wrap at. */
  readonly width: number;
  strong(text: string): string;
  faint(text: string): string;
}

/** In a pipe, so that the same input gives the same bytes. */
const plainWidth = 100;

/** Emphasis only where a person watches; it is never the only sign of anything. */
export function terminalOf(
  stream: { readonly isTTY?: boolean; readonly columns?: number },
  env: NodeJS.ProcessEnv,
): Terminal {
  const watched = stream.isTTY === true;
  const colours = createColors(watched && !env["NO_COLOR"] && env["TERM"] !== "dumb");
  const columns = watched && stream.columns ? stream.columns : plainWidth;
  return { width: Math.min(120, Math.max(40, columns)), strong: colours.bold, faint: colours.dim };
}

export const plainTerminal: Terminal = { width: plainWidth, strong: (t) => t, faint: (t) => t };

/** Characters that steer a terminal or turn the direction of writing; what somebody wrote into a file must not do either. */
const steering = /[\u0000-\u0008\u000B-\u001F\u007F-\u009F\u200E\u200F\u202A-\u202E\u2066-\u2069]/g;
export const harmless = (text: string): string => text.replace(steering, "\uFFFD");

/** Breaks a text into lines of at most `width` characters, between words where it can. Line breaks in it are kept. */
export function wrap(text: string, width: number): string[] {
  return harmless(text)
    .split("\n")
    .flatMap((line) => wrapLine(line, width));
}

const longestWord = 300;

function wrapLine(text: string, width: number): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(/[ \t]+/).filter(Boolean)) {
    if (line !== "" && line.length + 1 + word.length <= width) line += ` ${word}`;
    else {
      if (line !== "") lines.push(line);
      line = word;
      // An address that is broken cannot be followed; only what is far too long for one is cut.
      while (line.length > longestWord) {
        lines.push(line.slice(0, width));
        line = line.slice(width);
      }
    }
  }
  if (line !== "" || lines.length === 0) lines.push(line);
  return lines;
}

const labelWidth = 12;

/** A label in the margin and a text beside it. */
export function entry(
  t: Terminal,
  label: string,
  text: string,
  style: (s: string) => string = t.faint,
): string {
  const margin = " ".repeat(labelWidth);
  const lines = wrap(text, t.width - labelWidth);
  return lines
    .map((l, i) => (i === 0 && label !== "" ? style(label.padEnd(labelWidth)) : margin) + l)
    .join("\n")
    .replaceAll(/[ ]+$/gm, "");
}

/** A heading with a line under it. */
export const heading = (t: Terminal, text: string): string => {
  const lines = wrap(text, t.width);
  return `${lines.map(t.strong).join("\n")}\n${t.faint("─".repeat(Math.min(t.width, Math.max(...lines.map((l) => l.length)))))}`;
};

/** `1 rule`, `3 rules`. */
export const counted = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`;
