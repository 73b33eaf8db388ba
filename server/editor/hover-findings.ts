/** A finding or a rule with its reasons: rationale, numbers, what it rests on, what would help, what not to do meanwhile. */
import { show } from "../../language/quantity/show.js";
import type { Rule, RuleSet } from "../../rules/engine/types.js";
import type { BasisNote, Finding } from "../../rules/types.js";
import { arithmeticOf } from "./hover-quantities.js";
import type { Page } from "./page.js";
import { inBoth, plain, reckoned, sentence } from "./show.js";

/** `deep`: the arithmetic down to what was written, not the last line of it only. */
export function findingSection(page: Page, f: Finding, deep = true): string {
  const rule = page.set?.rules.find((r) => r.id === f.rule);
  const level = f.levels.best === f.levels.worst ? f.levels.worst : `${f.levels.best} to ${f.levels.worst}`;
  const lines = [
    `**${plain(rule?.title ?? f.rule)}** — ${f.verdict}, ${level} (\`${f.rule}\`)`,
    plain(f.message),
  ];
  const numbers: string[] = [];
  const signed = rule?.judged.is === "bands" && rule.judged.signed;
  if (f.value)
    numbers.push(`- here: **${plain(reckoned(f.value, f.value.dimension, f.value.unit, signed))}**`);
  if (f.limit)
    numbers.push(
      `- limit: ${plain(signed ? reckoned(f.limit, f.limit.dimension, f.limit.unit, true) : inBoth(f.limit, f.limit.dimension, f.limit.unit))} (\`${f.limit.name}\`)`,
    );
  if (f.margin) numbers.push(`- ${plain(f.margin.words)}`);
  if (numbers.length > 0) lines.push(numbers.join("\n"));
  const scene = page.scenes.find((s) => s.name === f.subject.split(" ")[0]);
  const worked = rule && scene ? arithmeticOf(page, scene, rule, deep) : "";
  if (f.missing.length > 0)
    lines.push(`Still to find out:\n${f.missing.map((m) => `- ${plain(m.what)}`).join("\n")}`);
  lines.push(`Why: ${plain(f.because)}`, basesList(page.set, f.bases));
  if (f.remedies.length > 0)
    lines.push(`What would help:\n${f.remedies.map((r) => `- ${plain(r.title)}`).join("\n")}`);
  if (f.cautions.length > 0) lines.push(`Meanwhile:\n${f.cautions.map((c) => `- ${plain(c)}`).join("\n")}`);
  if (worked !== "") lines.push(`How the number comes about:\n\n${worked}`);
  if (f.accepted)
    lines.push(
      `Accepted${f.accepted.until === undefined ? "" : ` until ${f.accepted.until}`}: ${plain(f.accepted.because)}`,
    );
  return lines.filter((l) => l !== "").join("\n\n");
}

/** A rule as such, without a household. */
export function ruleSection(set: RuleSet | undefined, rule: Rule): string {
  const lines = [
    `**${plain(rule.title)}** (\`${rule.id}\`)`,
    plain(rule.because),
    basesList(set, rule.bases),
  ];
  if (rule.judged.is === "bands") {
    const rows = rule.judged.bands.map(
      (b) =>
        `- ${plain(show({ low: b.low.value, nominal: b.low.value, high: b.high.value }, b.low.dimension, Number.isFinite(b.low.value) ? b.low.unit : b.high.unit))}: ${b.grade}`,
    );
    const choices = rule.judged.choices.map((b) => `- ${b.choices.join(", ")}: ${b.grade}`);
    if (rows.length + choices.length > 0) lines.push([...rows, ...choices].join("\n"));
  } else lines.push(`If it does not hold: ${rule.judged.level}.`);
  if (rule.covers.length > 0) lines.push(`Covers: ${rule.covers.map(plain).join("; ")}`);
  if (rule.notCovered.length > 0) lines.push(`Does not cover: ${rule.notCovered.map(plain).join("; ")}`);
  return lines.filter((l) => l !== "").join("\n\n");
}

/** What a rule rests on, each with its source and section. */
export function basesList(set: RuleSet | undefined, bases: readonly BasisNote[]): string {
  if (bases.length === 0) return "";
  const rows = bases.map((b) => {
    if (!b.citation) return `- ${b.basis.replaceAll("-", " ")}: ${plain(b.text)}`;
    const { id, at, says, takes } = b.citation;
    const source = set?.sources.get(id);
    const title = source
      ? `${plain(source.by)}, ${plain(source.title)}${source.year === undefined ? "" : ` (${source.year})`}`
      : id;
    const named =
      source?.address !== undefined && /^https?:\/\//.test(source.address)
        ? `[${title}](${encodeURI(source.address)})`
        : title;
    const extent = source && source.extent !== "whole" ? `; read: ${source.extent.replaceAll("-", " ")}` : "";
    return `- ${named}, ${plain(at)}${extent}. It says: ${sentence(plain(says))} Taken from it: ${sentence(plain(takes))}`;
  });
  return `Rests on:\n${rows.join("\n")}`;
}
