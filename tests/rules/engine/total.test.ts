import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseLine } from "../../../language/text/line.js";
import { ExpressionError, parseExpression } from "../../../rules/engine/parse-expression.js";
import { evaluate, type Reading } from "../../../rules/engine/logic.js";
import { between } from "../../../language/quantity/interval.js";
import { head, load } from "./sets.js";

const base = { dimension: "number", missing: [], assumed: [], trace: [], unit: { unit: "1" } } as const;
const bound = fc.oneof(
  fc.constantFrom(-Infinity, -1, 0, 1, 1e300, -1e300, 5e-324, Infinity),
  fc.double({ noNaN: true }),
);

describe("whatever a rule file holds, reading it ends and throws nothing", () => {
  it("any text", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 300 }), (text) => {
        const read = load(text);
        expect(read.set === undefined).toBe(read.problems.length > 0);
      }),
      { numRuns: 300 },
    );
  });

  it("any arrangement of the words of the rule language", () => {
    const word = fc.constantFrom(
      "rule",
      "a/b",
      "{",
      "}",
      ";",
      "\n",
      "judge",
      "bands",
      "require",
      "else",
      "stop",
      "holds",
      "examples",
      ":",
      ",",
      "height.rise",
      "1 in",
      "up",
      "down",
      "to",
      "more",
      "less",
      "than",
      "is",
      "not",
      "known",
      "(",
      ")",
      "+",
      "-",
      "*",
      "/",
      '"text {value}"',
      "for",
      "each",
      "transfer",
      "limit",
      "published",
      "at",
      "says",
      "takes",
      "±",
      "3",
      "and",
      "or",
      "remedy",
      "set",
      "when",
      "title",
      "because",
    );
    fc.assert(
      fc.property(fc.array(word, { maxLength: 80 }), (words) => {
        const read = load(head + words.join(" "));
        for (const p of read.problems) expect(p.start).toBeLessThanOrEqual(p.end);
      }),
      { numRuns: 500 },
    );
  });

  it("arithmetic over any bounds gives no NaN, and its low end is not above its high end", () => {
    const leaf = fc.constantFrom("a.x", "b.x", "c.x", "2", "0");
    const expression = fc.letrec((tie) => ({
      e: fc.oneof(
        { depthSize: "small" },
        leaf,
        fc
          .tuple(tie("e"), fc.constantFrom("+", "-", "*", "/"), tie("e"))
          .map(([l, o, r]) => `(${l as string} ${o} ${r as string})`),
        fc.tuple(tie("e"), tie("e")).map(([l, r]) => `smaller of (${l as string}, ${r as string})`),
      ),
    })).e as fc.Arbitrary<string>;
    fc.assert(
      fc.property(
        expression,
        fc.tuple(bound, bound, bound, bound, bound, bound),
        (text, [a, b, c, d, e, f]) => {
          const statement = parseLine(`judge ${text}`).items[0];
          const expr = parseExpression(statement?.type === "statement" ? statement.atoms.slice(1) : [], {
            start: 0,
            end: 0,
          });
          if (expr instanceof ExpressionError) return;
          const values = new Map([
            ["a.x", between(a, b)],
            ["b.x", between(c, d)],
            ["c.x", between(e, f)],
          ]);
          const result = evaluate(expr, {
            fact: (n): Reading => ({ ...base, name: n, value: values.get(n) }),
            limit: () => undefined,
          });
          const i = result.interval!;
          expect([i.low, i.nominal, i.high].some(Number.isNaN)).toBe(false);
          expect(i.low).toBeLessThanOrEqual(i.high);
        },
      ),
      { numRuns: 500 },
    );
  });
});
