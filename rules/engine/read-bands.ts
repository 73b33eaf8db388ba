/** Reads `bands { ... }`. */
import type { Dimension, ShownUnit } from "../../language/quantity/types.js";
import type { Atom, Node } from "../../language/text/types.js";
import type { Grade } from "../types.js";
import { atomText } from "../../language/text/atom.js";
import { isGrade } from "./bands.js";
import type { Page } from "./statements.js";
import type { Band, BandEnd, ChoiceBand } from "./types.js";

/** A limit's name in a band end has value NaN until `resolveBands` puts the limit's value there. */
const nowhere: ShownUnit = { unit: "1" };

interface Ends {
  readonly low: BandEnd;
  readonly high: BandEnd;
}
class Wrong {
  constructor(
    readonly message: string,
    readonly at: Atom | undefined,
  ) {}
}

export function readBands(
  page: Page,
  node: Node,
): { bands: readonly Band[]; choices: readonly ChoiceBand[]; signed: boolean } {
  const bands: Band[] = [];
  const choices: ChoiceBand[] = [];
  let signed = false;
  for (const s of node.children ?? []) {
    const atoms = s.statement.atoms;
    if (atoms.length === 0) continue;
    const at = gradeAt(atoms);
    const level = atoms[at];
    if (level?.type !== "word") {
      page.problem("rules/band", s, "A band ends in holds, advice, caution or stop, and a message.");
      continue;
    }
    const [message, more] = atoms.slice(at + 1);
    const wrong = message && message.type !== "text" ? message : more;
    if (wrong) page.problem("rules/left-over", s, `"${atomText(wrong)}" is left over here.`, wrong);
    const rest = {
      grade: level.word as Grade,
      ...(message?.type === "text" && { message: message.value }),
      at: page.place(s),
    };
    const head = atoms.slice(0, at);
    if (isChoiceBand(head)) {
      choices.push({ choices: head.flatMap((a) => (a.type === "word" ? [a.word] : [])), ...rest });
      continue;
    }
    const ends = new EndReader(head).ends();
    if (ends instanceof Wrong) page.problem("rules/band", s, ends.message, ends.at ?? s.statement);
    else bands.push({ ...ends, ...rest });
    if (head.some((a) => a.type === "word" && (a.word === "up" || a.word === "down"))) signed = true;
  }
  if (bands.length > 0 && choices.length > 0)
    page.problem("rules/band", node, "Bands speak either of values or of words, not of both.");
  if (bands.length + choices.length === 0) page.problem("rules/band", node, "There are no bands here.");
  return { bands, choices, signed };
}

/** The grade is the last grade word before the message. */
function gradeAt(atoms: readonly Atom[]): number {
  for (let i = atoms.length - 1; i >= 0; i--) {
    const a = atoms[i]!;
    if (a.type === "word" && isGrade(a.word)) return i;
  }
  return -1;
}

/** `foam, gel holds`: words and commas only, and none of the words of a range. */
function isChoiceBand(head: readonly Atom[]): boolean {
  const words = new Set(["to", "less", "more", "up", "down", "at", "than"]);
  return (
    head.length > 0 &&
    head.every((a) => (a.type === "word" && !words.has(a.word)) || (a.type === "mark" && a.mark === ","))
  );
}

/** `less than Q`, `more than Q`, `at least Q`, `at most Q`, `Q to Q`; led or not by `up` or `down`, which lasts until the other one. */
class EndReader {
  private i = 0;
  private sign: 1 | -1 = 1;
  private said = false;
  constructor(private readonly atoms: readonly Atom[]) {}

  ends(): Ends | Wrong {
    this.direction();
    const first = this.atoms[this.i];
    const second = this.atoms[this.i + 1];
    const words = first?.type === "word" && second?.type === "word" ? `${first.word} ${second.word}` : "";
    if (["less than", "more than", "at least", "at most"].includes(words)) {
      this.i += 2;
      const end = this.end();
      if (end instanceof Wrong) return end;
      const over = this.over();
      if (over) return over;
      const upwards = words === "more than" || words === "at least";
      const open = (value: number): BandEnd => ({ ...end, value, limit: undefined });
      // Down more than 4 in is below -4 in.
      return upwards === this.sign > 0
        ? { low: end, high: open(Infinity) }
        : { low: open(-Infinity), high: end };
    }
    const a = this.end();
    if (a instanceof Wrong) return a;
    const to = this.atoms[this.i];
    if (to?.type !== "word" || to.word !== "to")
      return new Wrong("A band is written less than A, A to B, or more than A.", to);
    this.i++;
    const b = this.end();
    if (b instanceof Wrong) return b;
    const over = this.over();
    if (over) return over;
    // `down 2 in to 4 in` runs from -4 to -2; with a limit's name on either end the order is settled once its value is known.
    return this.sign < 0 && this.said ? { low: b, high: a } : { low: a, high: b };
  }

  private direction(): void {
    const a = this.atoms[this.i];
    if (a?.type !== "word" || (a.word !== "up" && a.word !== "down")) return;
    this.sign = a.word === "up" ? 1 : -1;
    this.said = true;
    this.i++;
  }
  private end(): BandEnd | Wrong {
    this.direction();
    const a = this.atoms[this.i];
    let sign: number = this.sign;
    if (a?.type === "mark" && a.mark === "-") {
      sign = -sign;
      this.i++;
    }
    const v = this.atoms[this.i];
    this.i++;
    if (v?.type === "measure") return { value: sign * v.value + 0, dimension: v.dimension, unit: v.unit };
    if (v?.type === "number")
      return { value: sign * v.value + 0, dimension: "number" satisfies Dimension, unit: { unit: "1" } };
    // The sign of a limit's name is kept as that of its not yet known value.
    if (v?.type === "word")
      return { value: NaN, limit: sign < 0 ? `-${v.word}` : v.word, dimension: "number", unit: nowhere };
    return new Wrong(
      v
        ? `A value or the name of a limit is expected here, not "${atomText(v)}".`
        : "A value or the name of a limit is missing here.",
      v,
    );
  }
  private over(): Wrong | undefined {
    const a = this.atoms[this.i];
    return a && new Wrong(`"${atomText(a)}" is left over here.`, a);
  }
}

/** Puts the values of limits into band ends; names that are no limit are handed to `missing` and the band is left out. */
export function resolveBands(
  bands: readonly Band[],
  limit: (name: string) => { value: number; dimension: Dimension; unit: ShownUnit } | undefined,
  missing: (name: string, band: Band) => void,
): readonly Band[] {
  const waits = (e: BandEnd): boolean => e.limit !== undefined && Number.isNaN(e.value);
  if (!bands.some((b) => waits(b.low) || waits(b.high))) return bands;
  return bands.flatMap((band) => {
    const end = (e: BandEnd): BandEnd | undefined => {
      if (e.limit === undefined || !waits(e)) return e;
      const minus = e.limit.startsWith("-");
      const name = minus ? e.limit.slice(1) : e.limit;
      const found = limit(name);
      if (!found) {
        missing(name, band);
        return undefined;
      }
      return {
        // Zero has no sign.
        value: minus ? 0 - found.value : found.value,
        dimension: found.dimension,
        unit: found.unit,
        limit: name,
      };
    };
    const low = end(band.low);
    const high = end(band.high);
    if (!low || !high) return [];
    // An unbounded end was made from the other end, and takes its dimension.
    const dimension = Number.isFinite(low.value) ? low.dimension : high.dimension;
    const both = (e: BandEnd): BandEnd =>
      Number.isFinite(e.value) ? e : { value: e.value, dimension, unit: low.unit };
    return [{ ...band, low: both(low), high: both(high) }];
  });
}
