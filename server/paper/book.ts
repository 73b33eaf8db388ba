/**
 * The rule book: a whole rule set on paper, to be reviewed line by line by people who do not program. One file of HTML that holds
 * all it needs, runs nothing, and is the same to the byte for the same rule set.
 */
import { capital } from "../../language/text/capital.js";
import type { FactTable } from "../../rules/engine/fact-table.js";
import type { Rule, RuleFile, RuleSet } from "../../rules/engine/types.js";
import { grades } from "../../rules/types.js";
import { gradeWords } from "../../rules/engine/explain-words.js";
import { quantities } from "../../rules/quantities/index.js";
import { topicAnchor } from "./anchors.js";
import { code, escaped, link, sentence } from "./markup.js";
import {
  changesList,
  defaultsTable,
  limitsTable,
  partLink,
  quantitiesTable,
  sourcesTable,
} from "./reference-tables.js";
import { ruleSection } from "./rule-section.js";
import { hatchings, sample } from "./strip-drawing.js";
import { pageFoot, style } from "./style.js";

export interface BookOf {
  readonly set: RuleSet;
  /** Of the content, as every report carries it. */
  readonly hash: string;
  readonly files: readonly RuleFile[];
  readonly table: FactTable;
}

interface Topic {
  readonly name: string;
  readonly title: string;
  readonly rules: readonly Rule[];
}

/** The rules by the first word of their ids, topics by the alphabet, rules as they are written. */
function topicsOf(set: RuleSet): readonly Topic[] {
  const found = new Map<string, Rule[]>();
  for (const rule of set.rules) {
    const name = rule.id.split("/")[0]!;
    const rules = found.get(name);
    if (rules) rules.push(rule);
    else found.set(name, [rule]);
  }
  return [...found]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([name, rules]) => ({ name, title: capital(name), rules }));
}

export function ruleBook({ set, hash, files, table }: BookOf): string {
  const topics = topicsOf(set);
  const parts = [
    ["limits", "Limits", limitsTable(set)],
    ["defaults", "Defaults", defaultsTable(set)],
    ["quantities", "Quantities", quantitiesTable(set)],
    ["sources", "Sources", sourcesTable(set)],
    ["changes", "Changes", changesList(set)],
  ] as const;
  const body = [
    hatchings,
    front(set, hash),
    contents(topics, parts),
    ...topics.map(
      (t) =>
        `<section id="${escaped(topicAnchor(t.name))}"><h2>${escaped(t.title)}</h2>\n${t.rules.map((r) => ruleSection(r, set, table, files)).join("\n")}\n</section>`,
    ),
    ...parts.map(([id, title, inner]) => `<section id="${id}"><h2>${title}</h2>\n${inner}\n</section>`),
  ];
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(`${set.title}: rule book, ${set.name} ${set.version}`)}</title>
<style>
${style}
${pageFoot(`${set.name} ${set.version}, content ${hash.slice(0, 12)}`)}
</style>
</head>
<body>
<main>
${body.join("\n")}
</main>
</body>
</html>
`;
}

function front(set: RuleSet, hash: string): string {
  const counts = [
    [set.rules.length, "rules"],
    [set.rules.reduce((n, r) => n + r.examples.length, 0), "examples"],
    [set.limits.size, "limits"],
    [set.defaults.size, "defaults"],
    [quantities.length, "quantities"],
    [set.sources.size, "sources"],
  ] as const;
  const facts: readonly (readonly [string, string])[] = [
    ["Rule set", code(`${set.name} ${set.version}`)],
    ...(set.issued === undefined ? [] : [["Issued", escaped(set.issued)] as const]),
    ["Content", `${code(hash)} (SHA-256 of the names and texts of its files)`],
    ["Holds", counts.map(([n, word]) => `${n} ${word}`).join(", ")],
  ];
  return `<section class="front">
<h1>${escaped(set.title)}</h1>
<p>Rule book</p>
<dl>${facts.map(([k, v]) => `<dt>${k}</dt><dd>${v}</dd>`).join("")}</dl>
<h2>Cautions</h2>
<ul class="cautions">${set.cautions.map((c) => `<li>${escaped(sentence(c))}</li>`).join("")}</ul>
${howToRead}
</section>`;
}

const howToRead = `<h2>How to read a rule</h2>
<p>Small numbers in the margin are lines of the file named under the title of the rule.</p>
<table class="grades"><caption>Verdicts, from the mildest to the gravest, and how their bands are hatched</caption>
<thead><tr><th scope="col">Band</th><th scope="col">What it means</th></tr></thead>
<tbody>${grades.map((g) => `<tr><th scope="row">${sample(g)}</th><td>${escaped(sentence(gradeWords[g]))}</td></tr>`).join("")}</tbody></table>
<p>A strip shows which value falls in which band, from low on the left to high on the right. It is no ruler: each band is drawn wide enough for its word. A value exactly on a limit belongs to the milder of the two bands.</p>
<p>A dot is the value of an example. A bar through it is its tolerance: the true value may lie anywhere on the bar. Where a bar reaches from a band that holds into another one, the verdict is <em>unsettled</em>: measure more exactly. <em>Unknown</em>: something is missing; measure it. <em>Does not apply</em>: the rule has nothing to say there.</p>
<p>A word in brackets, such as <var>[value]</var>, stands for what a plan says or what is worked out from it.</p>
<p>What a rule rests on is named before the text: <em>published</em>, with the source and the place in it; <em>derived</em>, arithmetic on published values; <em>common practice</em>, which has no source; <em>from memory</em>; or <em>a choice of this project</em>, with its reason.</p>`;

function contents(
  topics: readonly Topic[],
  parts: readonly (readonly [id: string, title: string, inner: string])[],
): string {
  const rules = topics.map(
    (t) =>
      `<li>${link(topicAnchor(t.name), escaped(t.title))} (${t.rules.length})<ol>${t.rules
        .map((r) => `<li>${link(r.id, escaped(r.title))}</li>`)
        .join("")}</ol></li>`,
  );
  const rest = parts.map(([id, title]) => `<li>${partLink(id, title)}</li>`);
  return `<nav aria-label="Contents"><h2>Contents</h2>
<ol class="topics">${[...rules, ...rest].join("\n")}</ol></nav>`;
}
