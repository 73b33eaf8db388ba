/** Setups made from the vocabulary: any kinds, any keys, values that fit, written in any of the ways that people write them. */
import fc from "fast-check";
import { unitOf } from "../../../language/quantity/units.js";
import { setupVocabulary } from "../../../language/vocabulary/index.js";
import type { BlockSpec, Shape } from "../../../language/vocabulary/types.js";

const amounts = fc.constantFrom("12", "19 1/2", "19-1/2", "19½", "7.25", "3/8", ".5", "1,200", "61/2");

function spelled(unit: string): fc.Arbitrary<string> {
  const u = unitOf(unit);
  return fc
    .tuple(amounts, fc.constantFrom(...u.spellings), fc.constantFrom(" ", "", "  "))
    .map(([amount, spelling, gap]) =>
      /^[\p{L}%°]/u.test(spelling) ? amount + gap + spelling : amount + spelling,
    );
}

/** A value of this shape, or one that does not quite fit. */
function valueOf(shape: Shape): fc.Arbitrary<string> {
  switch (shape.is) {
    case "quantity": {
      const one = fc.constantFrom(...shape.units).chain(spelled);
      const known = fc.constantFrom(
        "",
        " measured",
        " stated",
        ' judged by "therapist"',
        " on 2026-03-02",
        " ESTIMATED",
      );
      const tolerance = fc.oneof(
        { weight: 3, arbitrary: fc.constant("") },
        { weight: 1, arbitrary: one.map((o) => ` ± ${o}`) },
        { weight: 1, arbitrary: one.map((o) => ` +/- ${o}`) },
        { weight: 1, arbitrary: fc.tuple(one, one).map(([a, b]) => ` + ${a} - ${b}`) },
      );
      return fc.oneof(
        fc.tuple(one, tolerance, known).map((p) => p.join("")),
        fc.tuple(fc.constantFrom("about", "adjusts", ""), one, one).map(([w, a, b]) => `${w} ${a} to ${b}`),
      );
    }
    case "choice":
      return fc.constantFrom(...shape.choices, ...shape.choices.map((c) => c.toUpperCase()), "other");
    case "flag":
      return fc.constantFrom("yes", "no", "Yes");
    case "text":
      return fc.constantFrom('"a text"', "“curly”", '"with \\" and # and {"');
    case "code":
      return fc.constantFrom("C-07", '"C 7"', "12");
    case "date":
      return fc.constantFrom("2026-03-02", "3/4/2026");
    case "name":
      return fc.constantFrom("thing-1", "Thing-2", "nobody");
    case "pair": {
      const one = fc.constantFrom(...shape.units).chain(spelled);
      const joined = shape.joined === "," ? [", ", ","] : [" by ", " x ", "×", " X "];
      return fc.tuple(one, fc.constantFrom(...joined), one).map((p) => p.join(""));
    }
    case "list":
      return fc.array(valueOf(shape.item), { minLength: 1, maxLength: 3 }).map((l) => l.join(" , "));
    case "either":
      return fc.oneof(...shape.shapes.map(valueOf));
    case "parts":
      return fc
        .tuple(...shape.parts.map((p) => valueOf(p.shape).map((v) => (p.lead ? `${p.lead} ${v}` : v))))
        .map((l) => l.join(" "));
    case "mention":
      return fc.constant("");
    // A time of day, and whatever shape is added to the vocabulary later.
    default:
      return fc.constantFrom("08:30", "23:59", "8:5");
  }
}

function bodyOf(spec: BlockSpec, depth: number): fc.Arbitrary<string[]> {
  const lines: fc.Arbitrary<string[]>[] = [fc.constantFrom(["# a comment"], [""], ["gribble 3 in"])];
  if (spec.steps)
    lines.push(
      fc.constantFrom(
        ["lock the brakes"],
        ["remove left leg rest"],
        ["slide; check bearing"],
        ["approach bed  # near"],
      ),
    );
  const keys = Object.entries(spec.keys);
  if (keys.length > 0)
    lines.push(
      fc
        .constantFrom(...keys)
        .chain(([key, k]) =>
          fc
            .tuple(
              fc.constantFrom(key, key.toUpperCase(), ...(k.also ?? [])),
              fc.constantFrom(" ", "    "),
              valueOf(k.shape),
              fc.constantFrom("", "  # said", ";"),
            )
            .map((p) => [p.join("")]),
        ),
    );
  const blocks = Object.entries(spec.blocks ?? {});
  if (blocks.length > 0 && depth < 2)
    lines.push(fc.constantFrom(...blocks).chain(([kind, inner]) => blockOf(kind, inner, depth + 1)));
  return fc.array(fc.oneof(...lines), { maxLength: 6 }).map((l) => l.flat());
}

const blockOf = (kind: string, spec: BlockSpec, depth = 0): fc.Arbitrary<string[]> =>
  fc
    .tuple(
      fc.constantFrom("", " thing-1", " Thing-2", " thing-1 of thing-2"),
      bodyOf(spec, depth),
      fc.constantFrom("\n", "; "),
    )
    .map(([name, body, joint]) =>
      joint === "; "
        ? [`${kind}${name} { ${body.filter((l) => !l.includes("#")).join("; ")} }`]
        : [`${kind}${name}  {`, ...body.map((l) => `   ${l}`), "}"],
    );

export const generatedSetup: fc.Arbitrary<string> = fc
  .array(
    fc.constantFrom(...Object.entries(setupVocabulary.blocks)).chain(([kind, spec]) => blockOf(kind, spec)),
    { maxLength: 6 },
  )
  .map((blocks) => ['setup "Made"', ...blocks.flat()].join("\n"));
