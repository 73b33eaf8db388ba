/** Values made from a shape of the vocabulary: one that fits, and ones that do not, with the finding that each must give. */
import { showValue } from "../../../language/quantity/show.js";
import { unitOf } from "../../../language/quantity/units.js";
import type { Part, Shape } from "../../../language/vocabulary/types.js";

type QuantityShape = Extract<Shape, { is: "quantity" }>;

/** The middle of what is plausible, in the unit offered first. */
function middle(shape: QuantityShape): string {
  const [low, high] = shape.plausible ?? [0.1, 0.5];
  const unit = shape.units[0]!;
  return showValue((low + high) / 2, shape.dimension, { unit, ...(unit === "in" && { denominator: 4 }) });
}
const bare = (shape: QuantityShape): string => /^-?[\d.]+(?: \d\/\d)?/.exec(middle(shape))![0];

/** The name under which the test's household declares a thing of one of these kinds. */
export const nameOf = (kinds: readonly string[]): string => `a-${kinds[0]!}`;

/** A value that fits. */
export function good(shape: Shape): string {
  switch (shape.is) {
    case "quantity":
      return shape.range ? `${middle(shape)} to ${middle(shape)}` : middle(shape);
    case "choice":
      return shape.choices[0]!;
    case "flag":
      return "yes";
    case "text":
      return '"as seen on the visit"';
    case "code":
      return shape.whole ? "1" : "R-12";
    case "date":
      return "2026-03-02";
    case "time":
      return "07:30";
    case "name":
      return nameOf(shape.of);
    case "pair": {
      const one = good({ is: "quantity", dimension: shape.dimension, units: shape.units });
      return shape.joined === "by" ? `${one} by ${one}` : `${one}, ${one}`;
    }
    case "list":
      return good(shape.item);
    case "either":
      return good(shape.shapes[shape.shapes.length - 1]!);
    case "parts":
      return shape.parts.map((p) => led(p, good(p.shape))).join(" ");
    case "mention":
      return "";
  }
}
const led = (p: Part, value: string): string => (p.lead === undefined ? value : `${p.lead} ${value}`);

export interface Bad {
  /** With the place at fault in marks: `⟦61 x⟧a`. */
  readonly text: string;
  readonly rule: string;
  /** Whether its first quick fix mends it. */
  readonly mended?: true;
}
const at = (text: string, rule: string, mended?: true): Bad => ({
  text: `⟦${text}⟧a`,
  rule,
  ...(mended && { mended }),
});

/** Values that do not fit. */
export function bad(shape: Shape): readonly Bad[] {
  switch (shape.is) {
    case "quantity": {
      const other = shape.dimension === "mass" ? "3 in" : "3 lb";
      const negative = (shape.plausible?.[0] ?? 0) >= 0 && !shape.range;
      return [
        at(bare(shape), "form/no-unit", true),
        at(other, "form/wrong-dimension"),
        at('"about so much"', "form/value-expected"),
        ...(negative ? [at(`-${middle(shape)}`, "form/negative")] : []),
      ];
    }
    case "choice": {
      const word = shape.choices[0]!;
      return [at(`${word}x`, "form/unknown-choice", true)];
    }
    case "flag":
      return [at("perhaps", "form/unknown-choice", true)];
    case "text":
      return [at("loosely", "form/value-expected")];
    case "code":
      return shape.whole ? [at("0", "form/value-expected")] : [at("2026-03-02", "form/value-expected")];
    case "date":
      return [at("soon", "form/value-expected"), at("3/14/2026", "form/date-written-otherwise", true)];
    case "time":
      return [at("25", "form/value-expected")];
    case "name":
      return [at("nobody-known", "form/unknown-name")];
    case "pair":
      return bad({ is: "quantity", dimension: shape.dimension, units: shape.units }).filter(
        (b) => b.rule === "form/wrong-dimension",
      );
    case "list":
      return bad(shape.item);
    case "either": {
      // A word is read by the branch that takes words.
      const last = shape.shapes[shape.shapes.length - 1]!;
      const others = shape.shapes.slice(0, -1);
      const word = others.find((s) => s.is === "choice" || s.is === "name");
      const found = bad(last).filter(
        (b) =>
          b.rule !== "form/wrong-dimension" &&
          !(word && /⟦[a-z]/.test(b.text) && !["parts", "name"].includes(last.is)),
      );
      return word?.is === "name" ? [...found, ...bad(word)] : found;
    }
    case "parts":
      return shape.parts.flatMap((p, i) => {
        const before = shape.parts.slice(0, i).map((q) => `${led(q, good(q.shape))} `);
        // What does not begin an optional part is left over instead.
        const found = p.optional && p.lead === undefined ? [] : bad(p.shape);
        const after = shape.parts.slice(i + 1).map((q) => ` ${led(q, good(q.shape))}`);
        return found.map((b) => ({ ...b, text: before.join("") + led(p, b.text) + after.join("") }));
      });
    case "mention":
      return [at("yes", "form/left-over")];
  }
}

/** Whether the unit of a quantity can be read with a tape, a scale or a level. */
export function measurable(shape: Shape): boolean {
  switch (shape.is) {
    case "quantity":
      return ["length", "mass", "angle", "force", "ratio"].includes(shape.dimension) && hasUnit(shape);
    case "pair":
      return true;
    case "list":
      return measurable(shape.item);
    case "either":
      return shape.shapes.some(measurable);
    case "parts":
      return shape.parts.some((p) => measurable(p.shape));
    default:
      return false;
  }
}
const hasUnit = (shape: QuantityShape): boolean => shape.units.every((u) => unitOf(u) !== undefined);
