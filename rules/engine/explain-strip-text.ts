/** A strip of bands in letters, for a terminal and other places with letters of one width. */
import { scaleOf, type ShownExample, type Strip, type StripScale } from "./explain-strip.js";

/**
 * Lines of at most `width` letters: the bands by their words, the limits under the line on which the bands meet, then one line
 * for each example. `o` is a value, `├─o─┤` a value with its doubt; what is written beside it is the example and its verdict.
 */
export function stripLines(strip: Strip, width: number): readonly string[] {
  const words = strip.bands.map((b) => b.grade);
  const scale = scaleOf(
    strip,
    words.map((w) => (w.length + 2) / width),
  );
  const edges = columnsOf(scale, width);
  const at = (value: number): number => columnOf(value, strip, scale, edges, width);
  const heads = new Row(width);
  words.forEach((w, i) => {
    const [from, to] = [edges[i]!, edges[i + 1]!];
    const room = to - from - 1;
    heads.put(from + 1 + Math.max(0, Math.floor((room - w.length) / 2)), w.slice(0, Math.max(0, room)));
  });
  const line = new Row(width, "─");
  for (const e of edges.slice(1, -1)) line.put(e, "┬");
  const inner = edges.slice(1, -1);
  return [
    heads.text,
    line.text,
    ...limitRows(strip, inner, width),
    ...strip.marks.flatMap((m) => markRows(m, inner, at, width)),
    ...(strip.shared.length > 0 && strip.marks.length > 0
      ? wrapped(`In all of these: ${strip.shared.join(", ")}.`, width)
      : []),
    ...strip.beside.flatMap((b) => wrapped(`Not on the line: ${b.text}: ${b.gives}`, width)),
  ];
}

/** One line of letters that is written into. */
class Row {
  private readonly letters: string[];
  constructor(width: number, fill = " ") {
    this.letters = Array.from({ length: width }, () => fill);
  }
  put(from: number, text: string): void {
    [...text].forEach((c, i) => {
      if (from + i >= 0 && from + i < this.letters.length) this.letters[from + i] = c;
    });
  }
  get text(): string {
    return this.letters.join("").trimEnd();
  }
}

/** The edges as columns, each at least two right of the one before, so that every band has a column of its own. */
function columnsOf(scale: StripScale, width: number): readonly number[] {
  const columns = scale.edges.map((e) => Math.round(e * (width - 1)));
  for (let i = 1; i < columns.length - 1; i++) columns[i] = Math.max(columns[i]!, columns[i - 1]! + 2);
  for (let i = columns.length - 2; i > 0; i--) columns[i] = Math.min(columns[i]!, columns[i + 1]! - 2);
  return columns;
}

/** The column of a value: on the edge if it is exactly the limit, else strictly between the edges of its band. */
function columnOf(
  value: number,
  strip: Strip,
  scale: StripScale,
  edges: readonly number[],
  width: number,
): number {
  const place = scale.at(value);
  const onEdge = scale.edges.indexOf(place);
  if (onEdge >= 0) return edges[onEdge]!;
  const i = scale.edges.findIndex((e, k) => k > 0 && place < e) - 1;
  const column = Math.round(place * (width - 1));
  return Math.min(edges[i + 1]! - 1, Math.max(edges[i]! + 1, column));
}

function limitRows(strip: Strip, columns: readonly number[], width: number): readonly string[] {
  const rows: { row: Row; end: number }[] = [];
  strip.limits.forEach((l, i) => {
    const from = Math.max(
      0,
      Math.min(width - l.text.length, columns[i]! - Math.floor((l.text.length - 1) / 2)),
    );
    let free = rows.find((r) => r.end < from - 1);
    if (!free) rows.push((free = { row: new Row(width), end: -2 }));
    free.row.put(from, l.text);
    free.end = from + l.text.length;
  });
  return rows.map((r) => r.row.text);
}

function markRows(
  m: ShownExample,
  limits: readonly number[],
  at: (value: number) => number,
  width: number,
): readonly string[] {
  const { low, nominal, high } = m.value!;
  const [from, middle, to] = [at(low), at(nominal), at(high)];
  const row = new Row(width);
  for (const c of limits) row.put(c, "·");
  if (from < to) {
    row.put(from, "─".repeat(to - from + 1));
    row.put(from, low === -Infinity ? "<" : "├");
    row.put(to, high === Infinity ? ">" : "┤");
  }
  row.put(middle, "o");
  const label = `${m.text}: ${m.gives}`;
  if (to + 2 + label.length <= width) row.put(to + 2, label);
  else if (label.length + 1 <= from) row.put(from - 1 - label.length, label);
  else return [...wrapped(`${label}:`, width), row.text];
  return [row.text];
}

function wrapped(text: string, width: number): readonly string[] {
  const lines = [""];
  for (const word of text.split(" ")) {
    const last = lines[lines.length - 1]!;
    if (last === "") lines[lines.length - 1] = word;
    else if (last.length + 1 + word.length <= width) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(`  ${word}`);
  }
  return lines;
}
