/** A rule set is checked before it runs. Each row is a small rule file with one fault, and a mark where the fault is reported. */
import { describe, expect, it } from "vitest";
import { good, head, refused, said } from "./sets.js";

const rule = (id: string, what: string, rest: string = said): string =>
  `⟦rule a/${id}⟧${id.slice(0, 1)} { title "t"; for each transfer\n  ${what}\n  ${rest} }\n`;
const onlyMark = (text: string, ...kept: string[]): string =>
  text.replace(/⟦([^⟧]*)⟧([a-z])/g, (all, inner: string, name: string) =>
    kept.includes(name) ? all : inner,
  );
const bands = (b: string): string => `judge height.rise; bands { ${b} }`;
const upTo1 = `${bands("less than 1 in holds; more than 1 in stop")}; examples { 1 in: holds; 1 1/8 in: stop }`;
const from2 = `${bands("less than 2 in stop; more than 2 in holds")}; examples { 2 in: holds; 1 7/8 in: stop }`;
const atMost1 =
  "require height.rise at most 1 in else stop; examples { height.rise 1 in: holds; height.rise 2 in: stop }";
const atLeast2 =
  "require height.rise at least 2 in else stop; examples { height.rise 2 in: holds; height.rise 1 in: stop }";

/** Title, rule file, where what is reported, and part of what is said. */
type Row = readonly [title: string, text: string, at: Readonly<Record<string, string>>, says?: RegExp];

const faults: readonly Row[] = [
  [
    "two rules whose bands leave no common value",
    rule("p", upTo1) + rule("q", from2),
    { q: "rules/contradiction" },
    /a\/p asks for at most 1 in, a\/q for at least 2 in/,
  ],
  [
    "bands against a requirement",
    rule("p", upTo1) + rule("q", atLeast2),
    { q: "rules/contradiction" },
    /a\/p asks for at most 1 in, a\/q for at least 2 in/,
  ],
  [
    "two requirements",
    rule("p", atMost1) + rule("q", atLeast2),
    { q: "rules/contradiction" },
    /at most 1 in, a\/q for at least 2 in/,
  ],
  [
    "two requirements that share only the end that one of them leaves out",
    rule("p", atMost1) +
      rule(
        "q",
        "require height.rise more than 1 in else stop; examples { height.rise 2 in: holds; height.rise 1 in: stop }",
      ),
    { q: "rules/contradiction" },
    /at most 1 in, a\/q for more than 1 in/,
  ],
  [
    "a requirement written the other way round",
    rule("p", atMost1) +
      rule(
        "q",
        "require 2 in at most height.rise else stop; examples { height.rise 2 in: holds; height.rise 1 in: stop }",
      ),
    { q: "rules/contradiction" },
    /a\/q for at least 2 in/,
  ],
  [
    "a limit against a number",
    `limit close 3 in { title "t"; common-practice "c" }\n` +
      rule(
        "p",
        "require height.rise at least close else stop; examples { height.rise 3 in: holds; height.rise 2 in: stop }",
      ) +
      rule("q", atMost1),
    { q: "rules/contradiction" },
    /a\/p asks for at least 3 in, a\/q for at most 1 in/,
  ],
  [
    "a part of several demands",
    rule("p", atMost1) +
      rule(
        "q",
        "require board.used is yes and height.rise at least 2 in else stop; examples { board.used yes, height.rise 2 in: holds; board.used no, height.rise 2 in: stop }",
      ),
    { q: "rules/contradiction" },
  ],
  [
    "words that exclude each other",
    rule(
      "p",
      "require board.used is yes else stop; examples { board.used yes: holds; board.used no: stop }",
    ) +
      rule(
        "q",
        "require board.used is no else stop; examples { board.used no: holds; board.used yes: stop }",
      ),
    { q: "rules/contradiction" },
    /a\/p asks for yes, a\/q for no/,
  ],
  [
    "words that together rule out every choice",
    rule(
      "p",
      "require board.used is not yes else stop; examples { board.used no: holds; board.used yes: stop }",
    ) +
      rule(
        "q",
        "require board.used is not no else stop; examples { board.used yes: holds; board.used no: stop }",
      ),
    { q: "rules/contradiction" },
  ],
  [
    "the same bands of the same value twice",
    rule("p", upTo1) + rule("q", upTo1),
    { q: "rules/shadowed" },
    /the same of the same value as a\/p/,
  ],
  ["the same requirement twice", rule("p", atMost1) + rule("q", atMost1), { q: "rules/shadowed" }],
  [
    "conditions on words that exclude each other",
    rule("p", `when board.used is yes\n  ⟦when board.used is no⟧c\n  ${atMost1}`),
    { c: "rules/unreachable" },
    /board used cannot be both yes and no/,
  ],
  [
    "a word that is asked for and ruled out",
    rule("p", `when board.used is yes\n  ⟦when board.used is not yes⟧c\n  ${atMost1}`),
    { c: "rules/unreachable" },
  ],
  [
    "conditions on a value that exclude each other",
    rule("p", `when client.mass more than 200 lb\n  ⟦when client.mass less than 150 lb⟧c\n  ${atMost1}`),
    { c: "rules/unreachable" },
    /client mass cannot be both more than 200 lb and less than 150 lb/,
  ],
  [
    "conditions that share only the end that one of them leaves out",
    rule("p", `when client.mass more than 200 lb\n  ⟦when client.mass at most 200 lb⟧c\n  ${atMost1}`),
    { c: "rules/unreachable" },
  ],
  [
    "something that is to be known and not known",
    rule("p", `when client.mass is known\n  ⟦when client.mass is not known⟧c\n  ${atMost1}`),
    { c: "rules/unreachable" },
  ],
  [
    "a band outside of what the condition leaves",
    rule(
      "p",
      `when height.rise more than 1 in\n  judge height.rise\n  bands {\n    ⟦less than 1 in holds⟧c\n    more than 1 in stop\n  }\n  examples { 1 in: not-applicable; 2 in: stop }`,
    ),
    { c: "rules/unreachable" },
    /applies only where height rise is more than 1 in/,
  ],
  [
    "a band of one value that belongs to its neighbours",
    rule(
      "p",
      "judge height.rise\n  bands {\n    less than 1 in holds\n    ⟦1 in to 1 in stop⟧c\n    more than 1 in caution\n  }\n  examples { 7/8 in: holds; 1 1/8 in: caution }",
    ),
    { c: "rules/unreachable" },
  ],
  [
    "a requirement that the condition has met already",
    rule(
      "p",
      `when board.used is yes\n  ⟦require board.used is yes else stop⟧c; examples { board.used yes: holds; board.used no: not-applicable }`,
    ),
    { c: "rules/unreachable" },
    /can never fail/,
  ],
  [
    "a requirement that the condition rules out",
    rule(
      "p",
      "when height.rise more than 2 in\n  ⟦require height.rise at most 1 in else stop⟧c; examples { height.rise 3 in: stop; height.rise 1 in: not-applicable }",
    ),
    { c: "rules/unreachable" },
    /can never hold/,
  ],
  [
    "bands that overlap",
    rule(
      "p",
      "judge height.rise\n  bands {\n    less than 2 in holds\n    ⟦more than 1 in stop⟧c\n  }\n  examples { 1 in: holds; 3 in: stop }",
    ),
    { c: "rules/band" },
    /Two bands speak of what lies between 1 in and 2 in/,
  ],
  [
    "a word that two bands speak of",
    rule(
      "p",
      "judge board.used\n  bands {\n    yes holds\n    ⟦yes, no stop⟧c\n  }\n  examples { board.used yes: holds; board.used no: stop }",
    ),
    { c: "rules/band" },
    /Two bands speak of yes/,
  ],
  [
    "a limit that nothing uses",
    `⟦limit lonely 3 in⟧l { title "t"; common-practice "c" }\n` + rule("p", atMost1),
    { l: "rules/unused" },
  ],
  [
    "a source that nothing cites",
    `⟦source a-study⟧s { kind study; title "A title"; by "b"; read 2026-01-01; extent whole }\n` +
      rule("p", atMost1),
    { s: "rules/unused" },
  ],
  [
    "a published figure without its section",
    `source a-study { kind study; title "A title"; by "b"; read 2026-01-01; extent whole }\n` +
      rule(
        "p",
        atMost1,
        `because "b"; message "m"; published a-study at "p. 1" says "x" takes "y"\n  ⟦published a-study says "x" takes "y"⟧c`,
      ),
    { c: "rules/citation" },
    /does not say at/,
  ],
  [
    "a published figure whose section is empty",
    `source a-study { kind study; title "A title"; by "b"; read 2026-01-01; extent whole }\n` +
      rule(
        "p",
        atMost1,
        `because "b"; message "m"; published a-study at "p. 1" says "x" takes "y"\n  ⟦published a-study at " " says "x" takes "y"⟧c`,
      ),
    { c: "rules/citation" },
    /does not say at/,
  ],
  [
    "a common practice with a citation behind it",
    rule("p", atMost1, `because "b"; message "m"; common-practice "c" ⟦at⟧c "p. 1"`),
    { c: "rules/left-over" },
  ],
  [
    "a common practice in the place of a citation",
    rule("p", atMost1, `because "b"; message "m"; from-memory "m"; common-practice ⟦a-study⟧c at "p. 1"`),
    { c: "rules/text-expected" },
  ],
  [
    "a common practice whose text names a source",
    `source a-study { kind study; title "A title"; by "b"; read 2026-01-01; extent whole }\n` +
      rule(
        "p",
        atMost1,
        `because "b"; message "m"; published a-study at "p. 1" says "x" takes "y"; common-practice "As in a-study."`,
      ),
    { p: "rules/citation" },
    /names a-study/,
  ],
  [
    "a common practice whose text gives an address",
    rule("p", atMost1, `because "b"; message "m"; common-practice "See https://example.org/heights"`),
    { p: "rules/citation" },
  ],
  [
    "a boundary without the value on it",
    rule(
      "p",
      "judge height.rise; bands { less than 1 in holds; more than 1 in stop }; examples { 1/2 in: holds; 2 in: stop }",
    ),
    { p: "rules/example-missing" },
    /exactly on the boundary 1 in/,
  ],
  [
    "a boundary without a value past it, above",
    rule(
      "p",
      "judge height.rise; bands { less than 1 in holds; more than 1 in stop }; examples { 1 in: holds; 1/2 in: holds }",
    ),
    { p: "rules/example-missing" },
    /just past the boundary 1 in/,
  ],
  [
    "a boundary without a value past it, below",
    rule(
      "p",
      "judge height.rise; bands { less than 1 in stop; more than 1 in holds }; examples { 1 in: holds; 2 in: holds }",
    ),
    { p: "rules/example-missing" },
    /just past the boundary 1 in/,
  ],
  [
    "a boundary shown by a value with a tolerance only",
    rule(
      "p",
      "judge height.rise; bands { less than 1 in holds; more than 1 in stop }; examples { 1 in: holds; 1 1/2 in ± 1/4 in: stop }",
    ),
    { p: "rules/example-missing" },
    /just past the boundary 1 in/,
  ],
  [
    "a word of which no example speaks",
    rule("p", "judge board.used; bands { yes holds; no stop }; examples { board.used yes: holds }"),
    { p: "rules/example-missing" },
    /No example shows no\./,
  ],
  [
    "a requirement that no example shows failing",
    rule("p", "require height.rise at most 1 in else stop; examples { height.rise 1 in: holds }"),
    { p: "rules/example-missing" },
    /when this rule fails/,
  ],
  [
    "a condition that reads nothing of the home",
    rule("p", `⟦when ⟧w⟦1 in at most 3 in⟧c\n  ${atMost1}`),
    { c: "rules/expression" },
    /the same for everybody/,
  ],
];

describe("what is wrong with a rule set is found before it runs", () => {
  it.each(faults.map((f) => [f[0], f] as const))("%s", (_, [, text, at, says]) => {
    const read = refused(head + onlyMark(text, ...Object.keys(at)), at);
    if (says) expect(read.problems.map((p) => p.message).join("\n")).toMatch(says);
  });
});

const inOrder: readonly (readonly [title: string, text: string])[] = [
  [
    "demands that exclude each other on other things",
    rule("p", atMost1).replace("for each transfer", "for each step slide") +
      rule("q", atLeast2).replace("for each transfer", "for each step place board"),
  ],
  [
    "demands that exclude each other where their conditions do",
    rule("p", `when board.used is yes\n  ${atMost1}`) + rule("q", `when board.used is no\n  ${atLeast2}`),
  ],
  [
    "demands that exclude each other where their conditions on a value do",
    rule("p", `when client.mass less than 150 lb\n  ${atMost1}`) +
      rule("q", `when client.mass at least 150 lb\n  ${atLeast2}`),
  ],
  [
    "demands that share the one value on their boundary",
    rule("p", atMost1) +
      rule(
        "q",
        "require height.rise at least 1 in else stop; examples { height.rise 1 in: holds; height.rise 0 in: stop }",
      ),
  ],
  [
    "alternatives, of which nothing can be said one by one",
    rule("p", atMost1) +
      rule(
        "q",
        "require height.rise at least 2 in or board.used is yes else stop; examples { height.rise 2 in, board.used no: holds; height.rise 1 in, board.used no: stop }",
      ),
  ],
  [
    "a graver demand beside a milder one on the same value",
    rule("p", upTo1) +
      rule(
        "q",
        atMost1
          .replace("1 in else stop", "2 in else caution")
          .replaceAll("1 in:", "2 in:")
          .replace("2 in: stop", "3 in: caution"),
      ),
  ],
  [
    "a band of one value that is milder than its neighbours",
    rule(
      "p",
      "judge height.rise; bands { less than 1 in stop; 1 in to 1 in holds; more than 1 in stop }; examples { 1 in: holds; 7/8 in: stop; 1 1/8 in: stop }",
    ),
  ],
];

describe("what only looks like a fault is taken", () => {
  it.each(inOrder)("%s", (_, text) => {
    good(head + onlyMark(text));
  });
});
