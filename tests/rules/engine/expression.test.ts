import { describe, expect, it } from "vitest";
import { parseLine } from "../../../language/text/line.js";
import { ExpressionError, parseExpression } from "../../../rules/engine/parse-expression.js";
import type { Expr } from "../../../rules/engine/expression.js";
import { evaluate, type Evaluated, type Reading } from "../../../rules/engine/logic.js";
import { typeOf, type FactType } from "../../../rules/engine/dimensions.js";

const types: Record<string, FactType> = {
  "a.length": { dimension: "length" },
  "b.length": { dimension: "length" },
  "a.mass": { dimension: "mass" },
  "a.kind": { choices: ["foam", "gel"] },
  "b.kind": { choices: ["foam", "gel"] },
  "a.on": { choices: ["yes", "no"] },
  "a.adjusts": { dimension: "length", choices: ["no"] },
};
const inch = 0.0254;
const base = { dimension: "length", missing: [], assumed: [], trace: [], unit: { unit: "in" } } as const;
const known = (name: string, low: number, high = low): Reading => ({
  ...base,
  name,
  value: { low: low * inch, nominal: ((low + high) / 2) * inch, high: high * inch },
});
const word = (name: string, choice: string): Reading => ({ ...base, name, value: undefined, choice });
const unknown = (name: string): Reading => ({ ...base, name, value: undefined, missing: [{ what: name }] });
const without = (name: string): Reading => ({ ...base, name, value: undefined, without: `no ${name}` });
const taped = (r: Reading): Reading => ({
  ...r,
  assumed: [{ name: "d", interval: { low: 0, nominal: 0, high: 1 }, dimension: "length", tapeable: true }],
});

const fixed = (x: number): string => (x / inch).toFixed(2);

function parse(text: string): Expr | ExpressionError {
  const statement = parseLine(`when ${text}`).items[0];
  const atoms = statement?.type === "statement" ? statement.atoms.slice(1) : [];
  return parseExpression(atoms, { start: 0, end: text.length });
}
function check(text: string): string[] {
  const expr = parse(text);
  if (expr instanceof ExpressionError) return [expr.message];
  const found: string[] = [];
  typeOf(
    expr,
    {
      fact: (n) => types[n],
      limit: (n) => (n === "close" ? { dimension: "length", bare: false } : undefined),
      nearest: () => undefined,
    },
    (p) => found.push(p.message),
  );
  return found;
}
function evaluated(text: string, facts: readonly Reading[]): Evaluated {
  const expr = parse(text);
  if (expr instanceof ExpressionError) throw new Error(expr.message);
  return evaluate(expr, {
    fact: (n) => facts.find((f) => f.name === n) ?? unknown(n),
    limit: (n) =>
      n === "close"
        ? {
            interval: { low: 3 * inch, nominal: 3 * inch, high: 3 * inch },
            dimension: "length",
            unit: { unit: "in" },
          }
        : undefined,
  });
}
function value(text: string, facts: readonly Reading[]): string {
  const e = evaluated(text, facts);
  return e.interval ? `${fixed(e.interval.low)} to ${fixed(e.interval.high)}` : e.is;
}

describe("expressions are checked before they run", () => {
  it.each([
    ["a.length more than b.length + 2 in", []],
    ["a.length at most close", []],
    ["smaller of (a.length, 3 in) * 2 less than close", []],
    ["a.length / b.length at least 1.5", []],
    ["a.kind is one of foam, gel and not (a.on is no or a.length is known)", []],
    ["a.kind is b.kind", []],
    ["a.adjusts is no or a.adjusts more than 3 in", []],
    ["a.length more than a.mass", ["a mass cannot be put together with a length."]],
    ["a.length + 3 more than 2 in", ["a number cannot be put together with a length."]],
    ["a.length * b.length more than 2 in", ["a length times a length is nothing that a rule can judge."]],
    ["a.kind is wood", ['"wood" is not one of foam, gel.']],
    ["a.kind more than 3 in", ["This is a word; a value is expected here."]],
    [
      "a.length is foam",
      [
        "Only something with a choice of words can be compared by is; use at least, at most, more than or less than.",
      ],
    ],
    ["a.depth more than 3 in", ['Nothing is called "a.depth".']],
    ["a.on and a.length more than 3 in", ["Say what it should be: ... is yes, or ... is no."]],
    ["a.length more than", ["The expression is not finished."]],
    ["(a.length more than 3 in", ["A ) is missing."]],
    ["a.length more than 3 in 4 in", ['"4 in" is left over here: nothing may follow the expression.']],
    ["a.length + 3 in is known", ["Only a name can be known."]],
  ])("%s", (text, problems) => {
    expect(check(text)).toEqual(problems);
  });

  it("nesting and size are bounded", () => {
    const deep = `${"(".repeat(100)}a.length${")".repeat(100)} more than 1 in`;
    expect(check(deep)).toEqual(["This expression nests more than 64 deep."]);
    expect(check(`a.length ${"+ 1 in ".repeat(500)} more than 1 in`)).toEqual([
      "This expression has more than 400 parts.",
    ]);
  });
});

describe("expressions over intervals", () => {
  const a = known("a.length", 2, 4);
  const b = known("b.length", 3);
  it.each([
    ["a.length + b.length", "5.00 to 7.00"],
    ["b.length - a.length", "-1.00 to 1.00"],
    ["2 * a.length", "4.00 to 8.00"],
    ["- a.length", "-4.00 to -2.00"],
    ["smaller of (a.length, b.length)", "2.00 to 3.00"],
    ["larger of (a.length, b.length, 10 in)", "10.00 to 10.00"],
    ["b.length / (a.length - 3 in)", "-Infinity to Infinity"],
    ["a.length more than 1 in", "true"],
    ["a.length more than 2 in", "unsettled"],
    ["a.length at least 2 in", "true"],
    ["a.length more than 4 in", "false"],
    ["a.length at most 4 in", "true"],
    ["a.length less than 4 in", "unsettled"],
    ["a.length less than 2 in", "false"],
    ["b.length at most close", "true"],
    ["c.length at most close", "unknown"],
  ])("%s is %s", (text, result) => {
    expect(value(text, [a, b])).toBe(result);
  });

  it.each([
    ["a.length / b.length", "ratio", "1"],
    ["a.length / close", "ratio", "1"],
    ["a.length / b.length - 0.4", "ratio", "1"],
    ["a.length * 0.209", "length", "in"],
    ["2 * a.length", "length", "in"],
    ["a.length / b.length * b.length", "length", "in"],
    ["a.length / 2", "length", "in"],
  ])("%s is a %s", (text, dimension, unit) => {
    expect(evaluated(text, [a, b])).toMatchObject({ is: "interval", dimension, unit: { unit } });
  });

  it("a difference below a nanometre is none", () => {
    expect(value("a.length at least b.length", [known("a.length", 3 - 1e-9), known("b.length", 3)])).toBe(
      "true",
    );
    expect(value("a.length more than b.length", [known("a.length", 3 + 1e-9), known("b.length", 3)])).toBe(
      "false",
    );
  });
});

describe("truth when something is not known", () => {
  const facts = [known("t.x", 5), known("s.x", 2, 4), word("a.kind", "foam"), without("w.x")];
  const T = "t.x more than 3 in";
  const F = "t.x less than 3 in";
  const S = "s.x more than 3 in";
  const U = "u.x more than 3 in";
  const W = "w.x more than 3 in";
  it.each([
    [`${T} and ${U}`, "unknown"],
    [`${F} and ${U}`, "false"],
    [`${T} and ${S}`, "unsettled"],
    [`${S} and ${U}`, "unknown"],
    [`${T} or ${U}`, "true"],
    [`${F} or ${U}`, "unknown"],
    [`${F} or ${S}`, "unsettled"],
    [`not ${U}`, "unknown"],
    [`not ${T}`, "false"],
    [`${W} and ${T}`, "without"],
    [`${W} and ${F}`, "false"],
    [`${W} or ${T}`, "true"],
    [`${W} or ${F}`, "false"],
    ["u.x is known", "false"],
    ["u.x is not known", "true"],
    ["t.x is known", "true"],
    ["a.kind is one of gel, foam", "true"],
    ["a.kind is not foam", "false"],
    ["u.kind is foam", "unknown"],
    ["u.kind is not foam", "unknown"],
    ["w.x is foam", "without"],
  ])("%s is %s", (text, truth) => {
    expect(value(text, facts)).toBe(truth);
  });

  it("an or that is true by something measured does not rest on what was only assumed", () => {
    const expr = parse("a.length more than 1 in or b.length more than 1 in") as Expr;
    const facts = [taped(known("a.length", 2)), known("b.length", 2)];
    const reader = { fact: (n: string) => facts.find((f) => f.name === n)!, limit: () => undefined };
    expect(evaluate(expr, reader).assumed).toEqual([]);
    const both = parse("a.length more than 1 in and b.length more than 1 in") as Expr;
    expect(evaluate(both, reader).assumed).toHaveLength(1);
  });
});
