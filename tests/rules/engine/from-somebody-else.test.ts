/** A rule file may come from anybody: whatever it holds is refused with its reason at its line, and reading and judging it ends. */
import { describe, expect, it } from "vitest";
import { between } from "../../../language/quantity/interval.js";
import { parseLine } from "../../../language/text/line.js";
import type { Expr } from "../../../rules/engine/expression.js";
import { judge } from "../../../rules/engine/judge.js";
import { loadRuleSet } from "../../../rules/engine/load.js";
import { evaluate, type Reader, type Reading } from "../../../rules/engine/logic.js";
import {
  deepest,
  ExpressionError,
  largest,
  parseExpression,
} from "../../../rules/engine/parse-expression.js";
import type { Rule } from "../../../rules/engine/types.js";
import { mostSuggestions } from "../../../rules/engine/verify-names.js";
import { mostOnOneValue } from "../../../rules/engine/verify-pairs.js";
import { good, head, load, refused, said, table } from "./sets.js";

const rule = (id: string, what: string, rest = said): string =>
  `rule a/${id} { title "t"; for each transfer\n  ${what}\n  ${rest} }\n`;
const atMost = (x: string): string =>
  `require height.rise at most ${x} else stop; examples { height.rise 1 in: holds; height.rise 12 in: stop }`;
const limit = (name: string, value = "3 in"): string =>
  `limit ${name} ${value} { title "t"; common-practice "c" }`;

describe("names that stand for something else", () => {
  const rows: readonly (readonly [title: string, text: string, at: Record<string, string>, says: RegExp])[] =
    [
      [
        "a limit that is defined by itself",
        `⟦limit close close⟧a { title "t"; common-practice "c" }\n${rule("p", atMost("3 in"))}`,
        { a: "rules/value-expected" },
        /A value is expected here, not "close"/,
      ],
      [
        "a limit that is defined by another limit",
        `⟦${limit("far")}⟧b\n⟦limit close far⟧a { title "t"; common-practice "c" }\n${rule("p", atMost("far"))}`.replace(
          `⟦${limit("far")}⟧b`,
          limit("far"),
        ),
        { a: "rules/value-expected" },
        /not "far"/,
      ],
      [
        "a Cyrillic letter that looks like a Latin one, in the name of a limit",
        `${limit("close")}\n${limit("⟦с⟧alose")}\n${rule("p", atMost("close"))}`
          .replace("limit ⟦с⟧alose 3 in", "⟦limit ⟦с⟧alose 3 in⟧b")
          .replace("⟦limit ⟦с⟧alose 3 in⟧b", "limit ⟦с⟧alose 3 in"),
        { a: "form/character", "line 3, 0 to 16": "rules/unused" },
        /has no meaning here/,
      ],
      [
        "a dotless i in the name of a limit",
        `${limit("tilt")}\n⟦limit tılt 3 in⟧a { title "t"; common-practice "c" }\n${rule("p", atMost("tilt"))}${rule("q", atMost("tılt").replace("stop", "caution").replace("12 in: stop", "12 in: caution"))}`,
        { a: "rules/name-expected" },
        /letters of other alphabets look alike/,
      ],
      [
        "a limit with the name of a fact, which would be read in its place",
        `⟦limit height.rise 3 in⟧a { title "t"; common-practice "c" }\n${rule("p", "require client.mass at most 200 lb else stop; examples { client.mass 200 lb: holds; client.mass 201 lb: stop }")}`,
        { a: "rules/name-expected", "line 2, 0 to 22": "rules/unused" },
        /a name with a dot is that of a fact/,
      ],
      [
        "a limit with the name of a small word",
        `⟦limit to 3 in⟧a { title "t"; common-practice "c" }\n${rule("p", "judge height.rise; bands { less than to holds; more than to stop }; examples { 3 in: holds; 3 1/8 in: stop }")}`,
        { a: "rules/name-expected" },
        /has a meaning of its own/,
      ],
      [
        "a limit and a default of one name",
        `${limit("close")}\n⟦default close 3 in⟧a { title "t"; common-practice "c" }\n${rule("p", atMost("close"))}`,
        { a: "rules/given-twice" },
        /that of a limit also, in trial.spanrules on line 2/,
      ],
      [
        "a limit written twice, with another value",
        `${limit("close")}\n⟦limit close 4 in⟧a { title "t"; common-practice "c" }\n${rule("p", atMost("close"))}`,
        { a: "rules/given-twice" },
        /also in trial.spanrules on line 2/,
      ],
      [
        "a source written twice",
        `source a-study { kind study; title "A title"; by "b"; read 2026-01-01; extent whole }
⟦source a-study⟧a { kind law; title "Another"; by "c"; read 2026-01-01; extent whole }
${rule("p", atMost("3 in"), `because "b"; message "m"; published a-study at "p. 1" says "x" takes "y"`)}`,
        { a: "rules/given-twice" },
        /The source a-study is written twice/,
      ],
      [
        "a source that is not there, with the one that was probably meant",
        `source a-study { kind study; title "A title"; by "b"; read 2026-01-01; extent whole }
${rule("p", atMost("3 in"), `because "b"; message "m"; published a-study at "p. 1" says "x" takes "y"`)}⟦rule a/q⟧a { title "t"; for each transfer; ${atMost("4 in")}; because "b"; message "m"; published a-studi at "p. 2" says "x" takes "y" }`,
        { a: "rules/unknown-source" },
        /no source called "a-studi". Is "a-study" meant/,
      ],
      [
        "two versions at once",
        `⟦ruleset trial 2⟧a { title "Another" }\n${rule("p", atMost("3 in"))}`,
        { a: "rules/given-twice" },
        /second head: the first is in trial.spanrules on line 1/,
      ],
    ];
  it.each(rows.map((r) => [r[0], r] as const))("%s", (_, [, text, at, says]) => {
    const marks = Object.fromEntries(Object.entries(at).filter(([name]) => name.length === 1));
    const more = Object.entries(at).filter(([name]) => name.length > 1);
    const read =
      more.length === 0
        ? refused(head + text, marks)
        : load((head + text).replace(/⟦([^⟧]*)⟧[a-z]/g, (_all, inner: string) => inner));
    expect(read.set).toBeUndefined();
    expect(read.problems.map((p) => p.rule).sort()).toEqual(Object.values(at).sort());
    expect(read.problems.map((p) => p.message).join("\n")).toMatch(says);
  });

  it("versions that differ from file to file", () => {
    const file = (path: string, text: string) => ({ path, text });
    const read = loadRuleSet(
      [
        file("a.spanrules", head),
        file("b.spanrules", head.replace("trial 1", "trial 2")),
        file("c.spanrules", rule("p", atMost("3 in"))),
        file("d.spanrules", rule("p", atMost("4 in"))),
      ],
      table,
    );
    expect(read.set).toBeUndefined();
    expect(read.problems.map((p) => `${p.path}:${p.line + 1} ${p.message}`)).toEqual([
      "b.spanrules:1 This rule set has a second head: the first is in a.spanrules on line 1.",
      "d.spanrules:1 The rule a/p is written twice: also in c.spanrules on line 1.",
    ]);
  });
});

describe("numbers that are none", () => {
  it.each([
    ["division by zero", "height.rise / ⟦0⟧a", /divides by zero/],
    ["division by what comes to zero", "height.rise / ⟦(3 - 2 - 1)⟧a", /divides by zero/],
    ["division by a limit that is zero", "height.rise / ⟦none⟧a", /divides by zero/],
    ["a product past all numbers", `height.rise + ⟦1 in${" * 999999".repeat(60)}⟧a`, /more than any number/],
  ])("%s", (_, expression, says) => {
    const zero = expression.includes("none") ? `limit none 0 { title "t"; common-practice "c" }\n` : "";
    const text = `${head}${zero}${rule("p", `require ${expression} at most 1 in else stop; examples { height.rise 1 in: unsettled }`)}`;
    const read = load(text.replace(/⟦([^⟧]*)⟧a/, "$1"));
    const line = text.split("\n").findIndex((l) => l.includes("⟦"));
    const start = text.split("\n")[line]!.indexOf("⟦");
    const found = read.problems.find((p) => p.rule === "rules/expression")!;
    expect(found.message).toMatch(says);
    expect([found.line, found.start]).toEqual([line, start + (expression.includes("(3") ? 1 : 0)]);
    expect(read.set).toBeUndefined();
  });

  it("more digits than a number holds", () => {
    const read = load(`${head}${limit("close", `${"9".repeat(400)} in`)}\n${rule("p", atMost("close"))}`);
    expect(read.problems.some((p) => p.rule === "form/number-too-large" && p.line === 1)).toBe(true);
  });

  it("division by a fact that may be nothing settles nothing, and is no fault", () => {
    const set = good(
      head +
        rule(
          "p",
          "require height.rise / chair.stub at most 2 else stop; examples { height.rise 2 in, chair.stub 1 in: holds; height.rise 3 in, chair.stub 1 in: stop; height.rise 2 in, chair.stub 0 in: unsettled; height.rise 2 in, chair.stub 0 in to 1 in: unsettled }",
        ),
    );
    expect(set.rules).toHaveLength(1);
  });
});

const span = { start: 0, end: 0 };
function expressionOf(text: string): Expr {
  const item = parseLine(`judge ${text}`).items[0];
  const expr = parseExpression(item?.type === "statement" ? item.atoms.slice(1) : [], span);
  if (expr instanceof ExpressionError) throw new Error(expr.message);
  return expr;
}
const refusal = (text: string): string => {
  const read = load(`${head}${rule("p", `require ${text} else stop; examples { height.rise 1 in: holds }`)}`);
  const p = read.problems.find((x) => x.rule === "rules/expression")!;
  return `line ${p.line + 1}: ${p.message}`;
};

/** The same tree, in which every look at the kind of a node is counted. */
function counted(expr: Expr): { readonly expr: Expr; readonly looks: () => number; readonly nodes: number } {
  let looks = 0;
  let nodes = 0;
  const wrap = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(wrap);
    if (typeof value !== "object" || value === null) return value;
    const entries = Object.entries(value).map(([k, v]) => [k, k === "op" ? v : wrap(v)] as const);
    const copy = Object.fromEntries(entries) as { op?: unknown };
    if (copy.op === undefined) return copy;
    nodes++;
    const { op } = copy;
    Object.defineProperty(copy, "op", { get: () => (looks++, op), enumerable: true });
    return copy;
  };
  return { expr: wrap(expr) as Expr, looks: () => looks, nodes };
}

const reader: Reader = {
  fact: (name): Reading => ({
    name,
    dimension: "number",
    value: between(1, 2),
    missing: [],
    assumed: [],
    trace: [],
    unit: { unit: "1" },
  }),
  limit: () => undefined,
};
const many = (n: number, part: (i: number) => string, joint: string): string =>
  Array.from({ length: n }, (_, i) => part(i)).join(joint);

describe("expressions of any size", () => {
  it("are refused at their line past a depth and a number of parts", () => {
    const inside = (n: number): string => `${"(".repeat(n)}height.rise${")".repeat(n)} at most 1 in`;
    expect(refusal(inside(deepest + 1))).toMatch(new RegExp(`^line 3: .*more than ${deepest} deep`));
    expect(refusal(inside(100_000))).toMatch(/^line 3: .*deep/);
    expect(refusal(`${"not ".repeat(100_000)}board.used is yes`)).toMatch(/^line 3: .*deep/);
    expect(refusal(`${many(largest, () => "height.rise", " + ")} at most 1 in`)).toMatch(
      new RegExp(`^line 3: .*more than ${largest} parts`),
    );
    expect(refusal(`${many(100_000, () => "height.rise", " + ")} at most 1 in`)).toMatch(/^line 3: .*parts/);
  });

  const nested = (n: number): string => (n === 0 ? "a.x" : `(${nested(n - 1)} + 1)`);
  it.each([
    ["a long sum", many(190, (i) => `a.x${i}`, " + ")],
    ["a deep one", nested(60)],
    ["many conditions", many(100, (i) => `a.x${i} at most 3`, " and ")],
    ["many alternatives, none of them met", many(100, (i) => `a.x${i} more than 3`, " or ")],
    [
      "conditions inside conditions",
      Array.from({ length: 30 }).reduce<string>(
        (e) => `(${e} or a.y more than 9) and a.z at most 9`,
        "a.x at most 3",
      ),
    ],
    ["an extreme of many", `larger of (${many(180, (i) => `a.x${i}`, ", ")})`],
  ])("are evaluated in steps in proportion to their parts: %s", (_, text) => {
    const { expr, looks, nodes } = counted(expressionOf(text));
    evaluate(expr, reader);
    // Every part is looked at once to know what it is, and a few of them again by the part around them.
    expect(looks()).toBeGreaterThanOrEqual(nodes);
    expect(looks()).toBeLessThanOrEqual(3 * nodes);
  });

  it("are judged, with the comparison that turned the verdict, in steps in proportion to their parts", () => {
    for (const n of [10, 30, 90]) {
      const all = expressionOf(many(n, (i) => `a.x${i} at most ${i === n - 1 ? 0 : 3}`, " and "));
      const { expr, looks, nodes } = counted(all);
      const [base] = good(head + rule("p", atMost("3 in"))).rules;
      const judged = { ...base!.judged, expr } as Rule["judged"];
      expect(judge({ ...base!, judged }, reader).verdict).toBe("fails");
      expect(looks()).toBeLessThanOrEqual(8 * nodes + 20);
    }
  });
});

/** Counts how often the checks ask what a fact is: the work that they do on a set. */
function countingTable(): { readonly around: typeof table; readonly asked: () => number } {
  let asked = 0;
  const around = Object.create(table) as typeof table;
  around.fact = (name, scope) => (asked++, table.fact(name, scope));
  return { around, asked: () => asked };
}
const set = (n: number, one: (i: number) => string): string => head + many(n, one, "");

describe("ten thousand rules", () => {
  it("on as many values are checked in steps in proportion to their number, and taken", () => {
    const steps = [1_000, 10_000].map((n) => {
      const { around, asked } = countingTable();
      // Each judges a value of its own, so that none has to be compared with another.
      const one = (i: number): string =>
        rule(
          `n${i}`,
          `require board.length + ${i} in at most ${i + 2} in else stop; examples { board.length 2 in: holds; board.length 3 in: stop }`,
        );
      expect(load(set(n, one), around).problems).toEqual([]);
      return asked();
    });
    expect(steps[1]! / steps[0]!).toBeLessThan(10.5);
  }, 60_000);

  it("on one value are refused past the number that can be compared pair by pair", () => {
    const read = load(
      set(mostOnOneValue + 300, (i) =>
        rule(
          `n${i}`,
          `require height.rise at most ${i + 1} in else stop; examples { height.rise ${i + 1} in: holds; height.rise ${i + 2} in: stop }`,
        ),
      ),
    );
    expect(new Set(read.problems.map((p) => p.rule))).toEqual(new Set(["rules/too-many"]));
    expect(read.problems).toHaveLength(300);
  }, 60_000);

  it("that say the same are reported once each, not pair by pair", () => {
    const read = load(set(10_000, (i) => rule(`n${i}`, atMost("3 in"))));
    expect(read.set).toBeUndefined();
    expect(new Set(read.problems.map((p) => p.rule))).toEqual(new Set(["rules/shadowed"]));
    expect(read.problems).toHaveLength(9_999);
  }, 60_000);

  it("that contradict each other are reported once each", () => {
    const read = load(
      set(2 * mostOnOneValue, (i) =>
        rule(
          `n${i}`,
          i % 2 === 0
            ? atMost(`${100 + i / 2} mm`)
            : `require height.rise at least ${30 + i} in else stop; examples { height.rise ${30 + i} in: holds; height.rise 1 in: stop }`,
        ),
      ),
    );
    const count = (rule: string): number => read.problems.filter((p) => p.rule === rule).length;
    expect(count("rules/contradiction")).toBe(mostOnOneValue - 1);
    expect(count("rules/too-many")).toBe(mostOnOneValue);
  }, 60_000);

  it("that name what there is not are told of likely names only so often", () => {
    const read = load(
      set(2_000, (i) =>
        rule(
          `n${i}`,
          `require height.ris at most ${i + 1} in else stop; examples { height.rise 1 in: holds }`,
        ),
      ),
    );
    const told = read.problems.filter((p) => p.rule === "rules/expression");
    expect(told).toHaveLength(2_000);
    expect(told.filter((p) => /meant\?/.test(p.message))).toHaveLength(mostSuggestions);
  }, 60_000);
});
