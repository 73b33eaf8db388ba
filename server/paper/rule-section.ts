/** One rule on paper: what it looks at and asks, its bands with every example on them, what it rests on, what would help. */
import { explainRule, type Explanation } from "../../rules/engine/explain.js";
import { basisWords } from "../../rules/engine/explain-words.js";
import type { FactTable } from "../../rules/engine/fact-table.js";
import type { Rule, RuleFile, RuleSet } from "../../rules/engine/types.js";
import { limitAnchor, quantityAnchor } from "./anchors.js";
import { code, escaped, link, sentence } from "./markup.js";
import { bandTable, exampleTable, stripFigure } from "./rule-tables.js";
import { basis, message } from "./texts.js";
import { writtenLines } from "./written-lines.js";

/** A statement and the line at which it is written. */
type Said = readonly [html: string, line?: number | undefined];

export function ruleSection(rule: Rule, set: RuleSet, table: FactTable, files: readonly RuleFile[]): string {
  const e = explainRule(rule, set, table);
  const lines = writtenLines(rule, files);
  const [looks, judges] = [e.says[0]!, e.says[e.says.length - 1]!];
  const conditions = e.says.slice(1, -1);
  const one = (word: string): number | undefined => lines.of([word], 1)[0];
  const many = (texts: readonly string[], word: string, hole = false): readonly Said[] => {
    const at = lines.of([word], texts.length);
    return texts.map((t, i) => [hole ? message(sentence(t)) : escaped(sentence(t)), at[i]]);
  };
  const asks = rule.judged.is === "require" ? "require" : "judge";
  const basisLines = lines.of(Object.keys(basisWords), rule.bases.length);
  const before = [
    part("Looks at", [
      [escaped(looks.replace(/^Looks at /, "").replace(/^./, (c) => c.toUpperCase())), one("for")],
    ]),
    part(
      "When",
      zip(
        conditions.map((c) => escaped(sentence(c.replace(/^Applies where /, "where ")))),
        lines.of(["when"], conditions.length),
      ),
    ),
    part(asks === "require" ? "Requires" : "Judges", [
      [escaped(sentence(judges.replace(/^(Requires that|Judges) /, ""))), one(asks)],
    ]),
  ];
  const after = [
    part("If not known", rule.unknown === undefined ? [] : many([rule.unknown], "unknown", true)),
    part("Why", many([rule.because], "because")),
    part(
      "Rests on",
      zip(
        rule.bases.map((b) => basis(b, set)),
        basisLines,
      ),
    ),
    part("Covers", many(rule.covers, "covers")),
    part("Not covered", many(rule.notCovered, "not-covered")),
    part("Would help", many(e.remedies, "remedy", true)),
    part("Meanwhile", many(rule.cautions, "caution")),
    part(
      "Reads",
      e.reads.map((r) => [read(r), undefined]),
    ),
  ];
  const place = `${rule.at.path}, lines ${lines.first} to ${lines.last}`;
  return `<section class="rule" id="${escaped(rule.id)}">
<header><h3>${escaped(rule.title)}</h3>
<p>${code(rule.id)} · ${escaped(place)}</p></header>
<dl>
${before.filter(Boolean).join("\n")}
</dl>
${bandTable(rule, e, set)}
${e.strip ? stripFigure(e.strip, rule) : exampleTable(rule, e.examples)}
<dl>
${after.filter(Boolean).join("\n")}
</dl>
</section>`;
}

const zip = (texts: readonly string[], at: readonly (number | undefined)[]): readonly Said[] =>
  texts.map((t, i) => [t, at[i]]);

function part(label: string, said: readonly Said[]): string {
  if (said.length === 0) return "";
  const rows = said.map(([html, line]) => `<dd>${lineNumber(line)}${html}</dd>`);
  return `<dt>${label}</dt>${rows.join("\n")}`;
}

const lineNumber = (line: number | undefined): string =>
  line === undefined ? "" : `<span class="n"><span class="away">line </span>${line}</span> `;

function read({ is, name, says }: Explanation["reads"][number]): string {
  const named =
    is === "quantity"
      ? link(quantityAnchor(name), code(name))
      : is === "limit"
        ? link(limitAnchor(name), code(name))
        : code(name);
  const kind = is === "quantity" ? " (worked out)" : is === "limit" ? " (limit)" : "";
  return `${named}${kind}: ${escaped(sentence(says))}`;
}
