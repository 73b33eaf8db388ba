/** What stands behind the rules: limits, defaults, quantities, sources, and what changed. */
import { limitText, readers, citationsOf } from "../../rules/engine/explain-values.js";
import { lineOf } from "../../rules/engine/explain-strip.js";
import { extentWords, sourceKindWords } from "../../rules/engine/explain-words.js";
import type { DefaultValue, LimitValue, RuleSet, Source } from "../../rules/engine/types.js";
import { quantities } from "../../rules/quantities/index.js";
import type { Dimension } from "../../language/quantity/types.js";
import { defaultAnchor, limitAnchor, linkTo, quantityAnchor, sourceAnchor } from "./anchors.js";
import { code, escaped, link, sentence, table } from "./markup.js";
import { basis, linksTo } from "./texts.js";

const paragraphs = (texts: readonly string[]): string => texts.map((t) => `<p>${t}</p>`).join("");

/** What a value rests on, covers and does not cover. */
const grounds = (v: LimitValue, set: RuleSet): string =>
  paragraphs([
    ...v.bases.map((b) => basis(b, set)),
    ...v.covers.map((c) => `Covers ${escaped(sentence(c)).replace(/^./, (x) => x.toLowerCase())}`),
    ...v.notCovered.map(
      (c) => `Does not cover ${escaped(sentence(c)).replace(/^./, (x) => x.toLowerCase())}`,
    ),
  ]);

const nameCell = (v: LimitValue): string =>
  paragraphs([escaped(v.title), code(v.name), `<span class="n">${escaped(place(v.at))}</span>`]);

const place = (at: LimitValue["at"]): string => `${at.path.replace(/^.*\//, "")}, line ${lineOf(at)}`;

export const limitsTable = (set: RuleSet): string =>
  table(
    "Named values by which rules judge",
    ["Limit", "Value", "Rests on", "Used by"],
    [...set.limits.values()].map((l) => ({
      id: limitAnchor(l.name),
      cells: [
        nameCell(l),
        `<strong>${escaped(limitText(l))}</strong>`,
        grounds(l, set),
        linksTo(readers(l.name, set), set) || "quantities that are worked out",
      ],
    })),
    "values",
  );

export const defaultsTable = (set: RuleSet): string =>
  table(
    "Values that stand in where nobody gave one",
    ["Default", "Value", "Rests on", "A tape can measure it"],
    [...set.defaults.values()].map((d: DefaultValue) => ({
      id: defaultAnchor(d.name),
      cells: [
        nameCell(d),
        `<strong>${escaped(limitText(d))}</strong>`,
        grounds(d, set),
        d.tapeable ? "yes: while it is only assumed, no rule that rests on it holds" : "no",
      ],
    })),
    "values",
  );

const dimensionWords: Record<Dimension, string> = {
  length: "a length",
  mass: "a mass",
  angle: "an angle",
  force: "a force",
  moment: "a moment",
  pressure: "a pressure",
  ratio: "a ratio",
  duration: "a length of time",
  number: "a number",
};

export const quantitiesTable = (set: RuleSet): string =>
  table(
    "Quantities worked out from what is written in a plan",
    ["Quantity", "What it is", "Formula and where it comes from", "Read by"],
    quantities.map((q) => ({
      id: quantityAnchor(q.name),
      cells: [
        paragraphs([code(q.name), dimensionWords[q.dimension]]),
        escaped(sentence(q.says)),
        paragraphs([code(q.formula), escaped(sentence(`From ${q.source}`))]),
        linksTo(readers(q.name, set), set) || "no rule directly",
      ],
    })),
    "quantities",
  );

export const sourcesTable = (set: RuleSet): string =>
  table(
    "Sources and how they were read",
    ["Source", "Where to find it", "How it was read", "Cited by"],
    [...set.sources.values()].map((s) => ({
      id: sourceAnchor(s.name),
      cells: [
        paragraphs([
          `<cite>${escaped(s.title)}</cite>`,
          `${escaped(s.by)}${s.year === undefined ? "" : `, ${s.year}`}`,
          code(s.name),
          `<span class="n">${escaped(place(s.at))}</span>`,
        ]),
        paragraphs([`${sourceKindWords[s.kind]}.`, ...published(s)]),
        `${escaped(extentWords[s.extent])}, on ${escaped(s.read)}`,
        linksTo([...new Set(citationsOf(s.name, set).map((c) => c.by))], set),
      ],
    })),
    "sources",
  );

/** An address of the web can be followed on a screen and read on paper; nothing else becomes a link out of the page. */
function published(s: Source): readonly string[] {
  const address =
    s.address === undefined
      ? []
      : /^https?:\/\//.test(s.address)
        ? [`<a href="${escaped(encodeURI(s.address))}" rel="noreferrer">${escaped(s.address)}</a>`]
        : [escaped(s.address)];
  return [...(s.publishedIn === undefined ? [] : [escaped(sentence(s.publishedIn))]), ...address];
}

export function changesList(set: RuleSet): string {
  if (set.changes.length === 0)
    return "<p>This is the first version of the rule set, or nothing is said of what changed.</p>";
  const rows = set.changes.map((c) => `<li>${linkTo(c.rule, set)}: ${escaped(sentence(c.text))}</li>`);
  return `<ul>${rows.join("\n")}</ul>`;
}

/** Where each part of the book begins, for its contents. */
export const partLink = (id: string, title: string): string => link(id, escaped(title));
