/**
 * A strip of bands as a drawing: the bands with their words, the limits in the rule's unit, and one row for each example with its
 * value and its verdict in words. Bands differ by hatching, so that a copier keeps them apart, and always carry their word.
 */
import { scaleOf, type ShownExample, type Strip, type StripScale } from "../../rules/engine/explain-strip.js";
import type { Grade } from "../../rules/types.js";
import { broken, escaped } from "./markup.js";

/** Units of the drawing; it is as wide as the text and one of them is then about a pixel. */
const wide = 680;
const plotEnd = 536;
const lineColumn = 22;
const textColumn = 30;
const verdictColumn = 548;
const letter = 5.6;
const boldLetter = 6.5;
/** The column of examples is as wide as they need, within these. */
const exampleWidth = { least: 80, most: 206 } as const;
const barHeight = 21;
const rowHeight = 15;
const lineHeight = 12;

const fills: Record<Grade, string> = {
  holds: "#fff",
  advice: "url(#hatch-advice)",
  caution: "url(#hatch-caution)",
  stop: "url(#hatch-stop)",
};

/** The hatchings, once for a page. */
export const hatchings = `<svg width="0" height="0" class="away" aria-hidden="true" focusable="false"><defs>
<pattern id="hatch-advice" width="8" height="8" patternUnits="userSpaceOnUse"><rect width="8" height="8" fill="#fff"/><circle cx="2" cy="2" r="0.9" fill="#55534d"/><circle cx="6" cy="6" r="0.9" fill="#55534d"/></pattern>
<pattern id="hatch-caution" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect width="6" height="6" fill="#fff"/><rect width="1.6" height="6" fill="#55534d"/></pattern>
<pattern id="hatch-stop" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect width="5" height="5" fill="#c9c6bd"/><rect width="2" height="5" fill="#23221f"/><rect width="5" height="2" fill="#23221f"/></pattern>
</defs></svg>`;

const round = (x: number): string => String(Math.round(x * 10) / 10);

/** A word on a white plate, so that it can be read on any hatching. */
const plate = (word: string, middle: number, y: number): string => {
  const half = (word.length * letter) / 2 + 3;
  return `<rect x="${round(middle - half)}" y="${y + 4}" width="${round(2 * half)}" height="${barHeight - 8}" fill="#fff"/><text x="${round(middle)}" y="${y + 14.5}" class="m">${escaped(word)}</text>`;
};

/** One grade as it looks in a strip, for the page that says how to read one. */
export const sample = (grade: Grade): string =>
  `<svg class="sample" viewBox="0 0 84 ${barHeight + 2}" role="img" aria-label="${grade}"><rect x="1" y="1" width="82" height="${barHeight}" fill="${fills[grade]}" class="b"/>${plate(grade, 42, 1)}</svg>`;

export function stripDrawing(strip: Strip, id: string, title: string): string {
  const longest = Math.max(0, ...strip.marks.map((m) => m.text.length)) * letter;
  const textWide = Math.min(exampleWidth.most, Math.max(exampleWidth.least, longest));
  const plotFrom = textColumn + textWide + 10;
  const plotWide = plotEnd - plotFrom;
  const scale = scaleOf(strip, leastWidths(strip, plotWide));
  const at = (place: number): number => plotFrom + place * plotWide;
  const parts: string[] = strip.bands.map((b, i) => {
    const [x0, x1] = [at(scale.edges[i]!), at(scale.edges[i + 1]!)];
    return `<rect x="${round(x0)}" y="1" width="${round(x1 - x0)}" height="${barHeight}" fill="${fills[b.grade]}" class="b"/>${plate(b.grade, (x0 + x1) / 2, 1)}`;
  });
  const labels = limitLabels(strip, scale, at);
  parts.push(...labels.parts);
  const top = barHeight + 4 + labels.rows * lineHeight + 4;
  let y = top;
  const rows: string[] = [];
  for (const m of strip.marks) {
    const row = markRow(m, y, textWide, scale, at);
    rows.push(row.text);
    y += row.height;
  }
  for (const e of scale.edges.slice(1, -1)) parts.push(`<path d="M${round(at(e))} ${top}V${y}" class="g"/>`);
  const name = escaped(id);
  return `<svg class="strip" viewBox="0 0 ${wide} ${y + 2}" role="img" aria-labelledby="${name}.title ${name}.desc"><title id="${name}.title">${escaped(title)}</title><desc id="${name}.desc">${escaped(inWords(strip))}</desc>\n${[...parts, ...rows].join("\n")}\n</svg>`;
}

/** Wide enough for its word, and for half of each limit beside it. */
function leastWidths(strip: Strip, plotWide: number): readonly number[] {
  const half = (i: number): number => ((strip.limits[i]?.text.length ?? 0) * boldLetter) / 2 + 3;
  return strip.bands.map((b, i) => Math.max(b.grade.length * letter + 12, half(i - 1) + half(i)) / plotWide);
}

function limitLabels(
  strip: Strip,
  scale: StripScale,
  at: (place: number) => number,
): { readonly parts: readonly string[]; readonly rows: number } {
  const ends: number[] = [];
  const parts = strip.limits.map((l, i) => {
    const x = at(scale.edges[i + 1]!);
    const half = (l.text.length * boldLetter) / 2;
    let row = ends.findIndex((end) => end < x - half - 3);
    if (row < 0) row = ends.length;
    ends[row] = x + half;
    return `<text x="${round(x)}" y="${barHeight + 13 + row * lineHeight}" class="m l">${escaped(l.text)}</text>`;
  });
  return { parts, rows: ends.length };
}

function markRow(
  m: ShownExample,
  y: number,
  textWide: number,
  scale: StripScale,
  at: (place: number) => number,
): { readonly text: string; readonly height: number } {
  const said = broken(m.text, Math.floor(textWide / letter));
  const gives = broken(m.gives, Math.floor((wide - verdictColumn) / letter));
  const tall = Math.max(said.length, gives.length);
  const column = (lines: readonly string[], x: number, kind = ""): string =>
    lines.map((t, i) => `<text x="${x}" y="${y + 11 + i * lineHeight}"${kind}>${escaped(t)}</text>`).join("");
  const value = m.value!;
  const [from, middle, to] = [at(scale.at(value.low)), at(scale.at(value.nominal)), at(scale.at(value.high))];
  const line = y + 7;
  const bar = from < to ? `<path d="M${round(from)} ${line - 4}v8m0 -4H${round(to)}m0 -4v8" class="i"/>` : "";
  const out = scale.beyond(value.nominal) ? arrow(middle, line, scale.at(value.nominal) < 0.5) : "";
  const text = `<text x="${lineColumn}" y="${y + 11}" class="n">${m.line}</text>${column(said, textColumn)}${bar}<circle cx="${round(middle)}" cy="${line}" r="3.2"/>${out}${column(gives, verdictColumn, m.verdict === "fails" ? ' class="v"' : "")}`;
  return { text, height: rowHeight + (tall - 1) * lineHeight };
}

/** Says that a value lies further out than the strip goes. */
const arrow = (x: number, y: number, left: boolean): string => {
  const way = left ? -1 : 1;
  return `<path d="M${round(x + way * 6)} ${y}h${way * 7}m${way * -3} -3l${way * 3} 3l${way * -3} 3" class="i"/>`;
};

/** The drawing in sentences, for whoever does not see it. */
export function inWords(strip: Strip): string {
  const bands = strip.bands.map((b) => `${b.range}: ${b.grade}`).join("; ");
  const marks = strip.marks.map((m) => `${m.text}: ${m.gives}`).join("; ");
  return `Bands from the lowest to the highest value: ${bands}. Examples: ${marks === "" ? "none" : marks}.`;
}
