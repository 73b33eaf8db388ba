/** Reads the atoms behind a key as the shape that the vocabulary gives it. Nothing is guessed; what is left over is a finding. */
import { unitOf, unitsOf } from "../quantity/units.js";
import { showValue } from "../quantity/show.js";
import type { Dimension, Known, Quantity, ShownUnit } from "../quantity/types.js";
import { atomText } from "../text/atom.js";
import { says } from "../text/messages.js";
import { nearest } from "../text/nearest.js";
import type { Atom, Bare, Fix, LineProblem, Measure } from "../text/types.js";
import type { Part, Shape } from "../vocabulary/types.js";
import type { Value } from "./types.js";

/** A name that must be resolved once all files are read. */
export interface Reference {
  readonly name: string;
  readonly kinds: readonly string[];
  readonly start: number;
  readonly end: number;
}
export interface ValueReading {
  readonly value?: Value;
  readonly problems: readonly LineProblem[];
  readonly references: readonly Reference[];
}

/** Thrown inside this file to leave a statement that cannot be read; never leaves it. */
class Wrong extends Error {
  constructor(readonly problem: LineProblem) {
    super(problem.rule);
  }
}

const dimensionWords: Record<Dimension, string> = {
  length: "length",
  mass: "mass",
  angle: "angle",
  force: "force",
  ratio: "share",
  duration: "time",
  number: "number",
};

/** What a shape wants, in words. */
export function wants(shape: Shape): string {
  switch (shape.is) {
    case "quantity":
      return `a ${dimensionWords[shape.dimension]} with its unit`;
    case "choice":
      return shape.choices.join(", ");
    case "flag":
      return "yes or no";
    case "text":
      return "a text in quotes";
    case "code":
      return "a word or a text in quotes";
    case "date":
      return "a date (year-month-day)";
    case "name":
      return `the name of a ${shape.of.join(" or ")}`;
    case "pair":
      return shape.joined === "by" ? "two lengths joined by by" : "one length, or two parted by a comma";
    case "list":
      return `${wants(shape.item)}, parted by commas`;
    case "either":
      return shape.shapes.map(wants).join(", or ");
    case "parts":
      return shape.parts.map((p) => (p.lead ? `${p.lead} ` : "") + wants(p.shape)).join(", ");
    case "mention":
      return "nothing more";
  }
}

/** Reads `atoms[from...]` as `shape`. `key` is how messages call it; `person` marks things that carry no label. */
export function readValue(
  atoms: readonly Atom[],
  from: number,
  shape: Shape,
  key: string,
  end: number,
  person = false,
): ValueReading {
  const reader = new ValueReader(atoms, from, key, end, person);
  try {
    const value = reader.whole(shape);
    return { value, problems: reader.problems, references: reader.references };
  } catch (e) {
    if (e instanceof Wrong)
      return { problems: [...reader.problems, e.problem], references: reader.references };
    throw e;
  }
}

class ValueReader {
  readonly problems: LineProblem[] = [];
  readonly references: Reference[] = [];
  constructor(
    private readonly atoms: readonly Atom[],
    private at: number,
    private readonly key: string,
    private readonly endOfLine: number,
    private readonly person: boolean,
  ) {}

  whole(shape: Shape): Value {
    const value =
      this.isWord("unknown") && shape.is !== "mention" ? (this.at++, unknownValue) : this.read(shape);
    const left = this.peek();
    if (left)
      throw new Wrong(
        this.problem(
          "form/left-over",
          says["form/left-over"]({ key: this.key, text: raw(left) }),
          left,
          this.atoms[this.atoms.length - 1]!,
        ),
      );
    return value;
  }

  private peek(): Atom | undefined {
    return this.atoms[this.at];
  }
  private isWord(word: string): boolean {
    const a = this.peek();
    return a?.type === "word" && a.word === word;
  }
  private isMark(mark: string): boolean {
    const a = this.peek();
    return a?.type === "mark" && a.mark === mark;
  }
  private problem(
    rule: string,
    message: string,
    first: { start: number },
    last: { end: number },
    fixes: Fix[] = [],
  ): LineProblem {
    return { rule, message, start: first.start, end: last.end, fixes };
  }
  private expected(shape: Shape): Wrong {
    const a = this.peek();
    const what = wants(shape);
    if (!a) {
      const before = this.atoms[this.at - 1];
      const start = before ? before.start : this.endOfLine;
      return new Wrong({
        rule: "form/value-missing",
        message: says["form/value-missing"]({ key: this.key, wants: what }),
        start,
        end: this.endOfLine,
        fixes: [
          {
            title: "Write unknown: it must still be found out",
            text: " unknown",
            start: this.endOfLine,
            end: this.endOfLine,
          },
        ],
      });
    }
    return new Wrong(
      this.problem(
        "form/value-expected",
        says["form/value-expected"]({ key: this.key, wants: what, text: raw(a) }),
        a,
        a,
      ),
    );
  }

  private read(shape: Shape): Value {
    switch (shape.is) {
      case "quantity":
        return this.quantity(shape.dimension, shape.units, shape.plausible, shape.range);
      case "choice":
        return this.choice(shape.choices, shape);
      case "flag":
        return this.choice(["yes", "no"], shape) === "yes";
      case "text":
        return this.text(shape);
      case "code": {
        const a = this.peek();
        if (a?.type === "word" || a?.type === "text" || a?.type === "number") {
          this.at++;
          return a.type === "text" ? a.value : a.type === "word" ? a.raw : a.raw;
        }
        throw this.expected(shape);
      }
      case "date": {
        const a = this.peek();
        if (a?.type !== "date") throw this.expected(shape);
        this.at++;
        return a.date;
      }
      case "name":
        return this.name(shape.of, shape);
      case "pair":
        return this.pair(shape);
      case "list":
        return this.list(shape.item);
      case "either":
        return this.either(shape.shapes, shape);
      case "parts":
        return this.parts(shape.parts);
      case "mention":
        return true;
    }
  }

  private choice(choices: readonly string[], shape: Shape): string {
    const a = this.peek();
    if (a?.type !== "word") throw this.expected(shape);
    if (choices.includes(a.word)) {
      this.at++;
      return a.word;
    }
    const near = nearest(a.word, choices);
    const list =
      choices.length > 1
        ? `${choices.slice(0, -1).join(", ")} or ${choices[choices.length - 1]}`
        : choices[0]!;
    const fixes = (near ? [near] : choices.slice(0, 4)).map((c) => ({ title: `Write ${c}`, text: c }));
    throw new Wrong(
      this.problem(
        "form/unknown-choice",
        says["form/unknown-choice"]({ key: this.key, text: a.raw, choices: list }),
        a,
        a,
        fixes,
      ),
    );
  }

  private text(shape: Shape): string {
    const a = this.peek();
    if (a?.type !== "text") throw this.expected(shape);
    this.at++;
    return a.value;
  }

  private name(kinds: readonly string[], shape: Shape): string {
    const a = this.peek();
    if (a?.type !== "word") throw this.expected(shape);
    this.at++;
    this.references.push({ name: a.word, kinds, start: a.start, end: a.end });
    return a.word;
  }

  private list(item: Shape): Value[] {
    const values = [this.read(item)];
    while (this.isMark(",")) {
      this.at++;
      values.push(this.read(item));
    }
    return values;
  }

  private either(shapes: readonly Shape[], shape: Shape): Value {
    const a = this.peek();
    if (!a) throw this.expected(shape);
    // The kind of the first atom decides, so that the message speaks of the branch that was meant.
    const fits = shapes.find((s) => {
      const first = s.is === "parts" ? s.parts[0]!.shape : s;
      if (first.is === "quantity")
        return a.type === "measure" ? a.dimension === first.dimension : a.type === "number";
      if (first.is === "choice" || first.is === "flag" || first.is === "name") return a.type === "word";
      return first.is === a.type || first.is === "code";
    });
    if (!fits) throw this.expected(shape);
    return this.read(fits);
  }

  private parts(parts: readonly Part[]): Value {
    const record: { [part: string]: Value | undefined } = {};
    const led = new Map(parts.filter((p) => p.lead).map((p) => [p.lead!, p]));
    for (const p of parts.filter((p) => !p.lead)) {
      const a = this.peek();
      if (p.optional && (!a || (a.type === "word" && led.has(a.word)))) continue;
      record[p.name] = this.read(p.shape);
    }
    for (;;) {
      const a = this.peek();
      const p = a?.type === "word" ? led.get(a.word) : undefined;
      if (!p || record[p.name] !== undefined) break;
      this.at++;
      record[p.name] = this.read(p.shape);
    }
    for (const p of parts)
      if (p.lead && !p.optional && record[p.name] === undefined)
        throw this.expected({ is: "parts", parts: [p] });
    return record;
  }

  private pair(shape: Extract<Shape, { is: "pair" }>): Value {
    const start = this.peek();
    const first = this.magnitude(shape.dimension, shape.units, true);
    const joined = shape.joined === "by" ? this.isWord("by") : this.isMark(",");
    if (!joined) {
      if (shape.second === "required") throw this.expected(shape);
      return { first: this.plain(this.withUnit(first, undefined, shape.units)) };
    }
    this.at++;
    const second = this.magnitude(shape.dimension, shape.units, first.type === "measure");
    const unit = second.type === "measure" ? second.unit : first.type === "measure" ? first.unit : undefined;
    const a = this.plain(this.withUnit(first, unit, shape.units));
    const b = this.plain(this.withUnit(second, unit, shape.units));
    if (
      shape.joined === "by" &&
      start &&
      a.nominal > b.nominal &&
      (this.key.startsWith("size of bed") || this.key.startsWith("size of board"))
    ) {
      const last = this.atoms[this.at - 1]!;
      const text = `${showValue(a.nominal, a.dimension, a.unit)} by ${showValue(b.nominal, b.dimension, b.unit)}`;
      const swapped = `${showValue(b.nominal, b.dimension, b.unit)} by ${showValue(a.nominal, a.dimension, a.unit)}`;
      this.problems.push(
        this.problem("form/longer-across", says["form/longer-across"]({ text }), start, last, [
          { title: `Swap: ${swapped}`, text: swapped },
        ]),
      );
    }
    return { first: a, second: b };
  }

  private magnitude(dimension: Dimension, units: readonly string[], unitMayFollow: boolean): Measure | Bare {
    const a = this.peek();
    if (a?.type === "number") {
      if (!unitMayFollow) throw this.noUnit(a, units);
      this.at++;
      return a;
    }
    return this.measure(dimension, units);
  }

  private measure(dimension: Dimension, units: readonly string[]): Measure {
    const a = this.peek();
    if (a?.type === "number") throw this.noUnit(a, units);
    if (a?.type !== "measure") throw this.expected({ is: "quantity", dimension, units });
    if (a.dimension !== dimension)
      throw new Wrong(
        this.problem(
          "form/wrong-dimension",
          says["form/wrong-dimension"]({
            key: this.key,
            text: a.spelling,
            wants: dimensionWords[dimension],
            is: dimensionWords[a.dimension],
          }),
          a,
          a,
        ),
      );
    this.at++;
    return a;
  }

  private noUnit(a: Bare, units: readonly string[]): Wrong {
    const likely = units.slice(0, 2);
    const other = (u: string): string => {
      const own = unitOf(u);
      const si = toSiBare(a, u);
      const back = likely.find((x) => x !== u) ?? unitsOf(own.dimension)[0]!.symbol;
      return `${a.raw} ${u} (${showValue(si, own.dimension, { unit: back })})`;
    };
    const fixes = likely.map((u) => ({
      title: likely.length > 1 ? other(u) : `${a.raw} ${u}`,
      text: `${a.raw} ${u}`,
    }));
    const question = likely.map((u) => `${a.raw} ${u}`).join(" or ");
    return new Wrong(
      this.problem(
        "form/no-unit",
        says["form/no-unit"]({ key: this.key, text: a.raw, likely: question }),
        a,
        a,
        fixes,
      ),
    );
  }

  private withUnit(m: Measure | Bare, unit: ShownUnit | undefined, units: readonly string[]): Measure {
    if (m.type === "measure") return m;
    if (!unit) throw this.noUnit(m, units);
    const own = unitOf(unit.unit);
    return {
      type: "measure",
      dimension: own.dimension,
      value: toSiBare(m, unit.unit),
      unit,
      spelling: `${m.raw} ${own.symbol}`,
      start: m.start,
      end: m.end,
    };
  }

  private plain(m: Measure): Quantity {
    return {
      type: "quantity",
      dimension: m.dimension,
      low: m.value,
      nominal: m.value,
      high: m.value,
      toleranceGiven: false,
      shape: "plain",
      known: "measured",
      knownGiven: false,
      unit: m.unit,
    };
  }

  /** A quantity with its tolerance or range, how it is known, by whom and when. */
  private quantity(
    dimension: Dimension,
    units: readonly string[],
    plausible?: readonly [number, number],
    range = false,
  ): Quantity {
    const first = this.peek();
    const shape = range || this.isWord("adjusts") ? "adjusts" : this.isWord("about") ? "about" : "plain";
    if (this.isWord("adjusts") || this.isWord("about")) this.at++;
    let sign = 1;
    if (this.isMark("-") || this.isMark("+")) {
      const mark = this.peek()!;
      sign = this.isMark("-") ? -1 : 1;
      this.at++;
      if (sign < 0 && (plausible?.[0] ?? 0) >= 0)
        throw new Wrong(
          this.problem(
            "form/negative",
            says["form/negative"]({ key: this.key, text: `-${raw(this.peek())}` }),
            mark,
            this.peek() ?? mark,
          ),
        );
    }
    const start = this.magnitude(dimension, units, true);
    let low: number, nominal: number, high: number;
    let unit: ShownUnit;
    let toleranceGiven = false;
    if (this.isWord("to")) {
      this.at++;
      const last = this.measure(dimension, units);
      const from = this.withUnit(start, last.unit, units);
      const text = `${from.spelling} to ${last.spelling}`;
      if (shape === "plain")
        throw new Wrong(
          this.problem(
            "form/range-without-reason",
            says["form/range-without-reason"]({ text }),
            start,
            last,
            [
              { title: `It is not known better: about ${text}`, text: `about ${text}` },
              { title: `It can be adjusted: adjusts ${text}`, text: `adjusts ${text}` },
            ],
          ),
        );
      if (from.value > last.value)
        throw new Wrong(
          this.problem("form/range-reversed", says["form/range-reversed"]({ text }), start, last, [
            { title: "Swap them", text: `${last.spelling} to ${from.spelling}` },
          ]),
        );
      [low, high] = [from.value, last.value];
      nominal = (low + high) / 2;
      unit = last.unit;
      toleranceGiven = true;
    } else {
      const m = this.withUnit(start, undefined, units);
      nominal = low = high = sign * m.value;
      unit = m.unit;
      const tolerance = this.tolerance(dimension, units, m.unit);
      if (tolerance) {
        toleranceGiven = true;
        low = nominal - tolerance.below;
        high = nominal + tolerance.above;
        if ((tolerance.unit.denominator ?? 1) > (unit.denominator ?? 1))
          unit = { ...unit, denominator: tolerance.unit.denominator! };
      }
    }
    const known = this.known();
    if (plausible && first && (high < plausible[0] || low > plausible[1])) {
      const text = showValue(nominal, dimension, unit);
      this.problems.push(
        this.problem(
          "form/hardly-plausible",
          says["form/hardly-plausible"]({ key: this.key, text }),
          first,
          this.atoms[this.at - 1]!,
        ),
      );
    }
    return { type: "quantity", dimension, low, nominal, high, toleranceGiven, shape, unit, ...known };
  }

  /** `± 1/4 in`, `+ 1/2 in - 0 in`. A bare number takes the unit of the value: `21 in ± 1/4`. */
  private tolerance(
    dimension: Dimension,
    units: readonly string[],
    unit: ShownUnit,
  ): { below: number; above: number; unit: ShownUnit } | undefined {
    const one = (): Measure => this.withUnit(this.magnitude(dimension, units, true), unit, units);
    if (this.isMark("±")) {
      this.at++;
      const m = one();
      return { below: m.value, above: m.value, unit: m.unit };
    }
    if (!this.isMark("+") && !this.isMark("-")) return undefined;
    let below = 0;
    let above = 0;
    let shown = unit;
    while (this.isMark("+") || this.isMark("-")) {
      const up = this.isMark("+");
      this.at++;
      const m = one();
      if (up) above = m.value;
      else below = m.value;
      shown = m.unit;
    }
    return { below, above, unit: shown };
  }

  private known(): { known: Known; knownGiven: boolean; by?: string; on?: string } {
    let known: Known = "measured";
    let knownGiven = false;
    let by: string | undefined;
    let on: string | undefined;
    for (;;) {
      const a = this.peek();
      if (a?.type !== "word") break;
      if (a.word === "measured" || a.word === "stated" || a.word === "estimated" || a.word === "judged") {
        if (a.word === "stated" && this.person)
          throw new Wrong(
            this.problem("form/stated-by-nobody", says["form/stated-by-nobody"]({ key: this.key }), a, a, [
              { title: "A person judged it", text: 'judged by ""' },
            ]),
          );
        known = a.word;
        knownGiven = true;
        this.at++;
      } else if (a.word === "by") {
        this.at++;
        by = this.text({ is: "text" });
      } else if (a.word === "on") {
        this.at++;
        const d = this.peek();
        if (d?.type !== "date") throw this.expected({ is: "date" });
        on = d.date;
        this.at++;
      } else break;
    }
    if (known === "judged" && by === undefined) {
      const last = this.atoms[this.at - 1]!;
      this.problems.push(
        this.problem("form/who-judged", says["form/who-judged"]({ key: this.key }), last, last, [
          { title: "Name the role", text: ' by ""', start: last.end, end: last.end },
        ]),
      );
    }
    return { known, knownGiven, ...(by !== undefined && { by }), ...(on !== undefined && { on }) };
  }
}

/** One object for every `unknown`: they are all alike. */
export const unknownValue = { type: "unknown" } as const;

const raw = (a: Atom | undefined): string => (a ? atomText(a) : "");
const toSiBare = (b: Bare, symbol: string): number => {
  const u = unitOf(symbol);
  return u.times === undefined
    ? Number(b.numerator * BigInt(Math.round(Number(u.factor.n)))) / Number(b.denominator * u.factor.d)
    : b.value * u.times;
};
