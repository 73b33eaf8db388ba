/** The bands of a rule and its examples as tables, and the strip with what has no place on it. */
import type { Explanation } from "../../rules/engine/explain.js";
import { lineOf, partsOf, type ShownExample, type Strip } from "../../rules/engine/explain-strip.js";
import type { ExampleValue, Rule, RuleSet } from "../../rules/engine/types.js";
import { limitAnchor } from "./anchors.js";
import { code, escaped, link, table } from "./markup.js";
import { stripDrawing } from "./strip-drawing.js";
import { message } from "./texts.js";

const numbered = (line: number): string => `<span class="n">${line}</span>`;
const graded = (grade: string): string => `<span class="grade">${escaped(grade)}</span>`;
/** A number and its unit stay on one line. */
const unbroken = (text: string): string => text.replaceAll(/(\d) (?!to |\d)/g, "$1\u00A0");
const quiet = "Nothing is said.";

/** What a rule says of each band; of a requirement, what it says where it is not met. */
export function bandTable(rule: Rule, e: Explanation, set: RuleSet): string {
  const j = rule.judged;
  const heads = ["Line", j.is === "require" ? "Where" : "Value", "Verdict", "What is said"];
  const said = (text: string | undefined): string => (text === undefined ? quiet : message(text));
  if (j.is === "require")
    return table(
      "Verdicts",
      heads,
      [
        { cells: [numbered(lineOf(j.at)), "It is so", graded("holds"), quiet] },
        { cells: [numbered(lineOf(j.at)), "It is not so", graded(j.level), said(j.message ?? rule.message)] },
      ],
      "bands",
    );
  const names = (low: number, high: number): string =>
    (e.strip?.limits ?? [])
      .filter((l) => l.name !== undefined && set.limits.has(l.name) && (l.value === low || l.value === high))
      .map((l) => link(limitAnchor(l.name!), code(l.name!)))
      .join(", ");
  const rows = [
    ...(e.strip?.bands ?? []).map((b) => {
      const named = names(b.low, b.high);
      const range = `${escaped(unbroken(b.range))}${named === "" ? "" : ` <small>(${named})</small>`}`;
      const text = b.message ?? (b.grade === "holds" ? undefined : rule.message);
      return { cells: [numbered(b.line), range, graded(b.grade), said(text)] };
    }),
    ...j.choices.map((b) => ({
      cells: [
        numbered(lineOf(b.at)),
        escaped(b.choices.join(", ")),
        graded(b.grade),
        said(b.message ?? (b.grade === "holds" ? undefined : rule.message)),
      ],
    })),
  ];
  return table("Verdicts", heads, rows, "bands");
}

/** The strip, then the examples that have no value to place. */
export function stripFigure(strip: Strip, rule: Rule): string {
  const shared =
    strip.shared.length > 0 && strip.marks.length > 0
      ? `<p>In all examples on the strip: ${strip.shared.map(code).join(", ")}.</p>`
      : "";
  const beside = strip.beside.map(
    (b) => `<li>${numbered(b.line)}<span>${escaped(b.text)}: ${graded(b.gives)}</span></li>`,
  );
  const list =
    beside.length === 0
      ? ""
      : `<p class="beside">Examples without a place on the strip:</p><ul class="beside">${beside.join("")}</ul>`;
  return `<figure>${stripDrawing(strip, rule.id, `${rule.title}: bands and examples`)}
<figcaption>${shared}</figcaption></figure>${list}`;
}

/** More facts than this side by side cannot be read on a page; the examples are then written out in one column. */
const mostColumns = 4;

/** The examples of a rule without bands over a value: a column for each fact, then the verdict. */
export function exampleTable(rule: Rule, examples: readonly ShownExample[]): string {
  const facts = [...new Set(rule.examples.flatMap((e) => e.values.map((v) => v.fact)))];
  const verdict = (i: number): string => graded(examples[i]!.gives);
  if (facts.length > mostColumns)
    return table(
      "Examples",
      ["Line", "Given", "Verdict"],
      examples.map((x, i) => ({ cells: [numbered(x.line), escaped(x.text), verdict(i)] })),
      "examples",
    );
  const rows = rule.examples.map((e, i) => {
    const parts = partsOf(e);
    const cell = (fact: string | undefined): string => {
      const at = e.values.findIndex((v) => v.fact === fact);
      return at < 0 ? "not said" : escaped(valueText(e.values[at]!, parts[at]!));
    };
    return { cells: [numbered(examples[i]!.line), ...facts.map(cell), verdict(i)] };
  });
  return table("Examples", ["Line", ...facts.map((f) => f ?? "value judged"), "Verdict"], rows, "examples");
}

/** The value of one fact as written, without the name, which stands above it. */
const valueText = (v: ExampleValue, part: string): string =>
  v.without ? "there is none" : v.fact === undefined ? part : part.slice(v.fact.length).trim();
