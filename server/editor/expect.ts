/**
 * What may follow, by the vocabulary: reads the atoms behind a key as the reader of values does, and stops where they end.
 * Kept beside completion because it answers the opposite question: not what was said, but what could be said next.
 */
import { unitsOf } from "../../language/quantity/units.js";
import type { Atom } from "../../language/text/types.js";
import type { Part, Shape } from "../../language/vocabulary/types.js";

/** One thing that could stand next. */
export type Next =
  | { readonly is: "word"; readonly word: string; readonly help?: string; readonly then?: string }
  | { readonly is: "unit"; readonly unit: string; readonly likely: boolean }
  | { readonly is: "name"; readonly of: readonly string[] }
  | { readonly is: "text" }
  | { readonly is: "date" }
  | { readonly is: "code"; readonly part: string | undefined }
  | { readonly is: "number" };

/** What could follow `atoms` (those behind the key) where a value of this shape is written. Empty where nothing could, or where they do not fit. */
export function nextOf(shape: Shape, atoms: readonly Atom[]): readonly Next[] {
  const reader = new NextReader(atoms);
  const first = atoms[0];
  if (first?.type === "word" && first.word === "unknown") return [];
  reader.read(shape, undefined);
  return [...reader.found, ...reader.later];
}

/** `stop`: the atoms ended, or do not fit; `go`: what was read is whole and more may follow. */
type Went = "go" | "stop";

const howKnown: readonly Next[] = [
  { is: "word", word: "measured", help: "with a tape or a scale" },
  { is: "word", word: "stated", help: "on a label or in a data sheet" },
  { is: "word", word: "judged", help: "by a person, whose role is named", then: ' by "$1"' },
  { is: "word", word: "estimated", help: "nobody measured it" },
];

class NextReader {
  readonly found: Next[] = [];
  /** What may always follow a value, behind what this one in particular may be followed by. */
  readonly later: Next[] = [];
  private at = 0;
  constructor(private readonly atoms: readonly Atom[]) {}

  offer(...next: readonly Next[]): void {
    this.found.push(...next);
  }
  private get here(): Atom | undefined {
    return this.atoms[this.at];
  }
  private get ended(): boolean {
    return this.at >= this.atoms.length;
  }
  private takes(word: string): boolean {
    const a = this.here;
    if (a?.type !== "word" || a.word !== word) return false;
    this.at++;
    return true;
  }
  private takesMark(mark: string): boolean {
    const a = this.here;
    if (a?.type !== "mark" || a.mark !== mark) return false;
    this.at++;
    return true;
  }

  read(shape: Shape, part: string | undefined): Went {
    switch (shape.is) {
      case "quantity":
        return this.quantity(shape);
      case "choice":
        return this.oneOf(shape.choices);
      case "flag":
        return this.oneOf(["yes", "no"]);
      case "text":
        return this.atom("text", { is: "text" });
      case "date":
        return this.atom("date", { is: "date" });
      case "time":
        return this.time();
      case "code":
        return this.code(part);
      case "name":
        return this.atom("word", { is: "name", of: shape.of });
      case "pair":
        return this.pair(shape);
      case "list":
        return this.list(shape.item, part);
      case "either":
        return this.either(shape.shapes, part);
      case "parts":
        return this.parts(shape.parts);
      case "mention":
        return "go";
    }
  }

  private oneOf(choices: readonly string[]): Went {
    if (this.ended) {
      this.offer(...choices.map((word): Next => ({ is: "word", word })));
      return "stop";
    }
    const a = this.here!;
    if (a.type !== "word" || !choices.includes(a.word)) return "stop";
    this.at++;
    return "go";
  }

  private atom(type: Atom["type"], next: Next): Went {
    if (this.ended) {
      this.offer(next);
      return "stop";
    }
    if (this.here!.type !== type) return "stop";
    this.at++;
    return "go";
  }

  /** An hour, a colon, a minute. */
  private time(): Went {
    if (this.at + 3 > this.atoms.length) {
      if (this.ended) this.offer({ is: "number" });
      return "stop";
    }
    this.at += 3;
    return "go";
  }

  private code(part: string | undefined): Went {
    if (this.ended) {
      this.offer({ is: "code", part });
      return "stop";
    }
    this.at++;
    return "go";
  }

  private list(item: Shape, part: string | undefined): Went {
    do {
      if (this.read(item, part) === "stop") return "stop";
    } while (this.takesMark(","));
    return "go";
  }

  private either(shapes: readonly Shape[], part: string | undefined): Went {
    if (this.ended) {
      for (const s of shapes) this.read(s, part);
      return "stop";
    }
    const a = this.here!;
    const fits = shapes.find((s) => {
      const first = s.is === "parts" ? s.parts[0]!.shape : s;
      if (first.is === "quantity") return a.type === "measure" || a.type === "number";
      if (first.is === "choice") return a.type === "word" && first.choices.includes(a.word);
      return first.is === a.type || (a.type === "word" && (first.is === "name" || first.is === "flag"));
    });
    return fits ? this.read(fits, part) : "stop";
  }

  /** Parts without a leading word come in their order; led ones after them, in any order. */
  private parts(parts: readonly Part[]): Went {
    for (const p of parts.filter((p) => !p.lead)) {
      if (this.ended && p.optional) this.read(p.shape, p.name);
      else if (!this.ended || !p.optional) {
        const a = this.here;
        const led = a?.type === "word" && parts.some((q) => q.lead === a.word);
        if (p.optional && led) continue;
        if (this.read(p.shape, p.name) === "stop") return "stop";
      }
    }
    const left = parts.filter((p) => p.lead);
    while (left.length > 0) {
      if (this.ended) {
        // A led part that is required comes before those that are not.
        const required = left.filter((p) => !p.optional);
        for (const p of required.length > 0 ? required : left) this.offer({ is: "word", word: p.lead! });
        return required.length > 0 ? "stop" : "go";
      }
      const k = left.findIndex((p) => this.takes(p.lead!));
      if (k < 0) return "go";
      const led = left.splice(k, 1)[0]!;
      if (this.read(led.shape, led.name) === "stop") return "stop";
    }
    return "go";
  }

  private units(shape: {
    readonly dimension: Parameters<typeof unitsOf>[0];
    readonly units: readonly string[];
  }): void {
    for (const unit of shape.units) this.offer({ is: "unit", unit, likely: true });
    for (const u of unitsOf(shape.dimension))
      if (!shape.units.includes(u.symbol)) this.offer({ is: "unit", unit: u.symbol, likely: false });
  }

  /** A number with its unit; a number without one wants its unit next. */
  private amount(shape: Shape & { readonly is: "quantity" | "pair" }): {
    readonly went: Went;
    readonly bare: boolean;
  } {
    if (this.ended) {
      this.offer({ is: "number" });
      return { went: "stop", bare: false };
    }
    if (this.here!.type === "mark" && ["-", "+"].includes((this.here as { mark: string }).mark)) this.at++;
    const a = this.here;
    if (a?.type !== "measure" && a?.type !== "number") return { went: "stop", bare: false };
    this.at++;
    if (this.ended && a.type === "number") this.units(shape);
    return { went: "go", bare: a.type === "number" };
  }

  private pair(shape: Shape & { readonly is: "pair" }): Went {
    const first = this.amount(shape);
    if (first.went === "stop") return "stop";
    if (shape.joined === ",") {
      if (!this.takesMark(",")) return "go";
    } else if (this.ended) {
      this.offer({ is: "word", word: "by" });
      return "stop";
    } else if (!this.takes("by")) return "stop";
    const second = this.amount(shape);
    return second.bare && this.ended ? "stop" : second.went;
  }

  private quantity(shape: Shape & { readonly is: "quantity" }): Went {
    if (this.ended) {
      this.offer(
        { is: "number" },
        { is: "word", word: "about", help: "it is not known better than a range" },
        { is: "word", word: "adjusts", help: "it can be set within a range" },
      );
      return "stop";
    }
    const ranged = this.takes("about") || this.takes("adjusts");
    const first = this.amount(shape);
    if (first.went === "stop") return "stop";
    if (ranged) {
      if (this.ended) {
        this.offer({ is: "word", word: "to" });
        return "stop";
      }
      if (!this.takes("to") || this.amount(shape).went === "stop") return "stop";
    } else if (this.ended) {
      if (first.bare) return "stop";
      this.later.push({ is: "word", word: "±", help: "how far off it may be" });
    } else if (this.takesMark("±") || this.takesMark("+") || this.takesMark("-")) {
      if (this.amount(shape).went === "stop") return "stop";
    }
    return this.knowing();
  }

  /** `measured`, `stated`, `judged by "..."`, `estimated`, `on` a date. */
  private knowing(): Went {
    const taken = new Set<string>();
    for (;;) {
      if (this.ended) {
        if (!taken.has("known")) this.later.push(...howKnown);
        if (taken.has("judged") && !taken.has("by"))
          this.offer({ is: "word", word: "by", help: "the role, in quotes" });
        if (!taken.has("on")) this.later.push({ is: "word", word: "on", help: "the day" });
        return "go";
      }
      const a = this.here!;
      if (a.type !== "word") return "go";
      if (howKnown.some((k) => k.is === "word" && k.word === a.word)) {
        taken.add("known").add(a.word);
        this.at++;
      } else if (a.word === "by" && taken.has("judged")) {
        taken.add("by");
        this.at++;
        if (this.atom("text", { is: "text" }) === "stop") return "stop";
      } else if (a.word === "on") {
        taken.add("on");
        this.at++;
        if (this.atom("date", { is: "date" }) === "stop") return "stop";
      } else return "go";
    }
  }
}
