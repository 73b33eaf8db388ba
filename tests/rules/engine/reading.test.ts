import { describe, expect, it } from "vitest";
import { FactTable } from "../../../rules/engine/fact-table.js";
import { good, head, load, refused, said, small } from "./sets.js";

const fine = `
limit close 3 in { title "Close"; project-choice "p" }
rule gap/wide {
  title "A wide gap"; for each transfer
  judge height.rise
  bands { less than close holds; more than close stop "Wide: {value}, {short} over {limit}" }
  because "b"; common-practice "c"
  examples { 3 in: holds; 3 1/8 in: stop; 3 in ± 1/8 in: unsettled; unknown: unknown }
}`;

describe("a rule set that is in order", () => {
  it("is read with its limits in the bands and its rules in order", () => {
    const set = good(head + fine);
    expect([set.name, set.version, set.cautions]).toEqual(["trial", "1", ["Try it with a therapist."]]);
    const judged = set.rules[0]!.judged;
    expect(judged.is === "bands" && judged.bands.map((b) => [b.low.value, b.high.value, b.grade])).toEqual([
      [-Infinity, 0.0762, "holds"],
      [0.0762, Infinity, "stop"],
    ]);
  });

  it("says its examples as they are written", () => {
    const text = fine.replace("3 in: holds;", "3 in: holds; - 4 in: holds; -1/8 in: holds;");
    expect(good(head + text).rules[0]!.examples.map((e) => e.text)).toEqual([
      "3 in: holds",
      "-4 in: holds",
      "-1/8 in: holds",
      "3 1/8 in: stop",
      "3 in ± 1/8 in: unsettled",
      "unknown: unknown",
    ]);
  });

  it("may judge words, require a condition, and look at steps, things, ends and the setup", () => {
    good(
      `${head}
rule chair/cushion { title "t"; for each transfer; judge chair.cushion-kind
  bands { foam, gel, air holds; none stop "No cushion" }
  because "b"; common-practice "c"
  examples { foam: holds; none: stop; unknown: unknown } }
rule bed/rails { title "t"; for each bed; require rails is none else caution "m"; ${said}
  examples { unknown: unknown } }`
        .replace("require rails", "require bed.rails")
        .replace(
          "examples { unknown: unknown } }",
          "examples { bed.rails none: holds; bed.rails both: fails; bed.rails unknown: unknown } }",
        ) +
        `
rule steps/brakes { title "t"; for each step "place board", slide
  when step.chair is at
  require step.brakes is locked else stop "m"; because "b"; common-practice "c"
  remedy insert "lock brakes" before
  examples { step.chair at, step.brakes locked: holds; step.chair at, step.brakes open: fails; step.chair away, step.brakes open: not-applicable } }
rule steps/board-left { title "t"; for end of transfer
  require step.board is stowed else caution; ${said}
  examples { step.board stowed: holds; step.board placed: caution } }
rule record/review { title "t"; for setup
  require review.overdue is no else advice; ${said}
  examples { review.overdue no: holds; review.overdue yes: advice; review.overdue unknown: unknown } }`,
    );
  });
});

describe("a rule set with a fault is refused whole, each fault at its line", () => {
  it("unknown words, with the nearest one offered", () => {
    const read = refused(
      `${head}
rule a/b { title "t"; for each transfer; require height.rise at most 1 in else stop
  ⟦becuase⟧a "b"; because "b"; common-practice "c"; message "m"
  examples { height.rise 1 in: holds; height.rise 2 in: fails }
}
⟦rulle⟧b x/y { title "t" }`,
      { a: "rules/unknown-word", b: "rules/unknown-word" },
    );
    expect(read.problems.map((p) => p.fixes?.[0]?.text)).toEqual(["because", "rule"]);
  });

  it("dimensions, names and choices", () => {
    refused(
      `${head}
rule a/b { title "t"; for each transfer
  when ⟦heigt.rise⟧a is known
  when chair.cushion-kind is ⟦wood⟧b
  require height.rise more than ⟦client.mass⟧c else stop
  ${said}
  examples { height.rise 1 in: holds }
}`,
      { a: "rules/expression", b: "rules/expression", c: "rules/expression" },
    );
  });

  it("bands with a gap, an overlap, an open end or another dimension", () => {
    const rule = (
      id: string,
      bands: string,
    ): string => `rule a/${id} { title "t"; for each transfer; judge height.rise
  bands {
    ${bands}
  }
  ${said}
  examples { 1 in: holds } }\n`;
    refused(
      head +
        rule("gap", `⟦less than 1 in holds⟧x\n    more than 2 in stop`)
          .replace("⟦less than 1 in holds⟧x", "less than 1 in holds")
          .replace("more than 2 in stop", "⟦more than 2 in stop⟧a") +
        rule("overlap", `less than 2 in holds\n    ⟦more than 1 in stop⟧b`) +
        rule("open", `⟦0 in to 2 in holds⟧c\n    more than 2 in stop`) +
        rule("mass", `less than 2 in holds\n    ⟦more than 2 lb stop⟧d`) +
        rule("limit", `⟦less than nowhere holds⟧e\n    ⟦more than 2 in stop⟧f`),
      {
        a: "rules/band",
        b: "rules/band",
        c: "rules/band",
        d: "rules/dimension",
        e: "rules/unknown-name",
        f: "rules/band",
      },
    );
  });

  it("examples that give something else, that miss a side of a boundary, or that name what the rule does not read", () => {
    refused(
      `${head}
⟦rule a/b⟧a { title "t"; for each transfer; judge height.rise
  bands { less than 1 in holds; more than 1 in stop }
  ${said}
  examples {
    1 in: holds
    ⟦1/2 in: stop⟧b
  }
}
rule a/c { title "t"; for each transfer; require height.rise at most 1 in else stop; ${said}
  examples {
    height.rise 1 in: holds
    ⟦client.mass 3 lb: fails⟧c
    ⟦height.rise 3 lb: fails⟧d
    ⟦3 in: fails⟧e
  }
}
⟦rule a/d⟧f { title "t"; for each transfer; require height.rise at most 2 in else stop; ${said}
  examples { height.rise 2 in: holds } }`,
      {
        a: "rules/example-missing",
        b: "rules/example-fails",
        c: "rules/example",
        d: "rules/example",
        e: "rules/example",
        f: "rules/example-missing",
      },
    );
  });

  it("citations that cannot be reviewed, sources that are not there, and rules that rest on nothing", () => {
    refused(
      `${head}
source s { kind study; title "t"; by "b"; read 2026-01-01; extent abstract }
⟦source unused⟧a { kind study; title "t"; by "b"; read 2026-01-01; extent whole }
rule a/b { title "t"; for each transfer; require height.rise at most 1 in else stop
  ⟦published s at "p. 1" says "x"⟧b
  published s at "p. 1" says "x" takes 1 in
  because "b"; message "m"; examples { height.rise 1 in: holds; height.rise 2 in: fails } }
⟦rule a/c⟧c { title "t"; for each transfer; require height.rise at most 2 in else stop
  published nobody at "p. 1" says "x" takes 1 in
  because "b"; message "m"; examples { height.rise 2 in: holds; height.rise 3 in: fails } }
⟦rule a/d⟧d { title "t"; for each transfer; require height.rise at most 3 in else stop
  because "b"; message "m"; examples { height.rise 3 in: holds; height.rise 4 in: fails } }
⟦limit lonely 3 in⟧e { title "t"; common-practice "c" }`,
      {
        a: "rules/unused",
        b: "rules/citation",
        c: "rules/unknown-source",
        d: "rules/no-basis",
        e: "rules/unused",
      },
    );
  });

  it("a common practice cannot carry a source", () => {
    refused(
      `${head}\nlimit a 1 in { title "t"; common-practice "c" ⟦at⟧a "p. 1" }\n${fine.replace("less than close", "less than a").replace("limit close", "⟦limit close").replace("3 in {", "3 in⟧b {")}`
        .replace("more than close", "more than a")
        .replace("3 in: holds; 3 1/8 in: stop; 3 in ± 1/8 in", "1 in: holds; 2 in: stop; 1 in ± 1/8 in"),
      {
        a: "rules/left-over",
        b: "rules/unused",
      },
    );
  });

  it("names given twice, holes that nothing fills, remedies on what cannot be written", () => {
    refused(
      `${head}
rule a/b { title "t"; for each transfer; require height.rise at most 1 in else stop ⟦"{nothing.such}"⟧x
  remedy set ⟦surface.edge⟧b "{range}"
  because "b"; common-practice "c"; examples { height.rise 1 in: holds; height.rise 2 in: fails } }
⟦rule a/b⟧c { title "t"; for each transfer; require height.rise at most 2 in else stop; ${said}
  examples { height.rise 1 in: holds; height.rise 3 in: fails } }`
        .replace('⟦"{nothing.such}"⟧x', '"{nothing.such}"')
        .replace(
          'require height.rise at most 1 in else stop "{',
          '⟦require height.rise at most 1 in else stop "{',
        )
        .replace('such}"', 'such}"⟧a'),
      { a: "rules/unknown-name", b: "rules/unknown-name", c: "rules/given-twice" },
    );
  });

  it("rules that can never apply, contradict each other or say the same twice", () => {
    const bands = (b: string): string => `judge height.rise; bands { ${b} }`;
    const set = `${head}
rule a/never { title "t"; for each transfer
  when board.used is yes
  ⟦when board.used is no⟧a
  require height.rise at most 1 in else stop; ${said}
  examples { height.rise 1 in: holds; height.rise 2 in: fails } }
rule a/low { title "t"; for each transfer; ${bands('less than 1 in holds; more than 1 in stop "x"')}
  ${said}; examples { 1 in: holds; 2 in: stop } }
⟦rule a/high⟧b { title "t"; for each transfer; ${bands('less than 2 in stop "x"; more than 2 in holds')}
  ${said}; examples { 2 in: holds; 1 in: stop } }
⟦rule a/again⟧c { title "t"; for each transfer; ${bands('less than 1 in holds; more than 1 in stop "x"')}
  ${said}; examples { 1 in: holds; 2 in: stop } }
rule a/otherwise { title "t"; for each transfer; when board.used is no; ${bands('less than 2 in stop "x"; more than 2 in holds')}
  ${said}; examples { 2 in: holds; 1 in: stop } }`.replace(
      "for each transfer; when board.used is no; judge",
      "for each transfer; when board.used is yes; judge",
    );
    const read = load(set.replaceAll(/[⟦⟧][abc]?/g, ""));
    expect(read.problems.map((p) => p.rule).sort()).toEqual(
      ["rules/contradiction", "rules/contradiction", "rules/shadowed", "rules/unreachable"].sort(),
    );
    expect(read.problems.find((p) => p.rule === "rules/contradiction")!.message).toBe(
      "No value satisfies both rules: a/low asks for at most 1 in, a/high for at least 2 in.",
    );
  });

  it("defaults that nothing reads, and defaults that something computed needs", () => {
    const text = `${head}${fine}
default stub 1 in to 2 in { title "t"; from-memory "m"; tape yes }
default extra 1 in { title "t"; from-memory "m" }`;
    const read = load(text, new FactTable(small, ["stub", "sink"]));
    expect(read.problems.map((p) => `${p.line + 1} ${p.message}`)).toEqual([
      "1 The default sink is missing: something computed needs it.",
      "12 Nothing uses the default extra.",
    ]);
  });

  it("a wrong line spoils that line only: every other fault is still found", () => {
    refused(
      `${head}
rule a/b { title "t"; for each transfer
  require height.rise at most ⟦1,5⟧a in else stop
  ⟦tittle⟧b "x"
  ${said}
  examples { ⟦height.rise 1 in holds⟧c }
}`.replace("rule a/b", "⟦rule a/b⟧d"),
      { a: "form/decimal-comma", b: "rules/unknown-word", c: "rules/example", d: "rules/missing" },
    );
  });
});
