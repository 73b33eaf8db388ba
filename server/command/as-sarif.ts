/** The result of `check` as SARIF 2.1.0 (OASIS Standard, 27 March 2020), for services that show findings beside a change. */
import { createHash } from "node:crypto";
import path from "node:path";
import { pathToFileURL } from "node:url";
import type { Finding, Level } from "../../rules/types.js";
import type { Rule, RuleSet } from "../../rules/engine/types.js";
import { gravest } from "../../rules/engine/judge.js";
import { byText } from "../workspace/files.js";
import { identityOf } from "../workspace/rule-sets.js";
import { located, type Range, type Reported } from "../workspace/reported.js";
import { relatedOf } from "./as-json.js";
import { basisText, sourceText } from "./as-text.js";
import type { Checked, CheckedFile } from "./checked.js";
import { overlaysJson } from "./policy.js";
import { version } from "./version.js";

const levels: Record<Level, "error" | "warning" | "note"> = {
  stop: "error",
  caution: "warning",
  advice: "note",
};

export function asSarif(checked: Checked, cwd: string): string {
  const sets = new Map<string, RuleSet>();
  for (const { snapshot } of checked.files)
    if (snapshot.ruleSet?.set) sets.set(identityOf(snapshot.ruleSet), snapshot.ruleSet.set);
  const ids = [...new Set(checked.files.flatMap((f) => f.snapshot.reported.map((r) => r.rule)))].sort(byText);
  const described = new Map<string, { rule: Rule; set: RuleSet }>();
  for (const set of sets.values())
    for (const rule of set.rules) if (!described.has(rule.id)) described.set(rule.id, { rule, set });
  const index = new Map(ids.map((id, i) => [id, i]));
  const run = {
    tool: {
      driver: {
        name: "Spanwise",
        semanticVersion: version,
        rules: ids.map((id) => descriptor(id, described.get(id))),
      },
    },
    columnKind: "utf16CodeUnits",
    artifacts: checked.files.map((f) => ({ location: artifact(f.snapshot.path, cwd), encoding: "utf-8" })),
    results: checked.files.flatMap((f) => resultsOf(f, checked, cwd, index)),
    invocations: [{ executionSuccessful: true }],
    properties: {
      on: checked.on,
      ruleSets: ruleSetsOf(checked),
      cautions: [...new Set([...sets.values()].flatMap((s) => s.cautions))],
      transfers: checked.files.flatMap((f) =>
        (f.snapshot.result?.transfers ?? []).map((t) => ({
          path: f.shown,
          name: t.name,
          cleared: t.cleared,
          left: t.left,
        })),
      ),
    },
  };
  const log = { $schema: "https://json.schemastore.org/sarif-2.1.0.json", version: "2.1.0", runs: [run] };
  return `${JSON.stringify(log, undefined, 2)}\n`;
}

function ruleSetsOf(checked: Checked): object[] {
  const all = new Map<string, object>();
  for (const { snapshot } of checked.files)
    if (snapshot.ruleSet)
      all.set(identityOf(snapshot.ruleSet), {
        name: snapshot.ruleSet.name,
        version: snapshot.ruleSet.version,
        hash: snapshot.ruleSet.hash,
        overlays: overlaysJson(snapshot.ruleSet),
      });
  return [...all.values()];
}

/** A rule with its help: what it asks, why, on what it rests, and what it does not cover. */
function descriptor(id: string, found: { rule: Rule; set: RuleSet } | undefined): object {
  if (!found) return { id, shortDescription: { text: formTitle(id) }, properties: { tags: ["form"] } };
  const { rule, set } = found;
  const rests = rule.bases.map(basisText);
  const cited = [...new Set(rule.bases.flatMap((b) => (b.citation ? [b.citation.id] : [])))];
  const sources = cited.flatMap((c) => set.sources.get(c) ?? []);
  const beyond = rule.notCovered.map((n) => `Not covered: ${n}.`);
  const text = [rule.because, ...rests, ...beyond, ...sources.map(sourceText)].join("\n");
  const list = (title: string, items: readonly string[]): string[] =>
    items.length === 0 ? [] : [`**${title}**`, items.map((i) => `- ${escaped(i)}`).join("\n")];
  const markdown = [
    escaped(rule.because),
    ...list("Rests on", rests),
    ...list("Covers", rule.covers),
    ...list("Does not cover", rule.notCovered),
    ...list("Sources", sources.map(sourceText)),
  ].join("\n\n");
  const worst = gravest(rule);
  return {
    id,
    shortDescription: { text: rule.title },
    fullDescription: { text: rule.because },
    help: { text, markdown },
    defaultConfiguration: { level: worst === "holds" ? "note" : levels[worst] },
    properties: { tags: [id.split("/")[0]!, ...new Set(rule.bases.map((b) => b.basis))], sources: cited },
  };
}

const formTitle = (id: string): string =>
  `How the plan is written: ${id.replace(/^form\//, "").replaceAll("-", " ")}`;

/** Text of a rule set inside Markdown, with nothing in it read as markup. */
const escaped = (text: string): string => text.replaceAll(/[\\`*_[\]<>#]/g, "\\$&");

function resultsOf(
  file: CheckedFile,
  checked: Checked,
  cwd: string,
  index: ReadonlyMap<string, number>,
): object[] {
  const { snapshot } = file;
  const prints = new Fingerprints();
  return snapshot.reported.map((r) => {
    const related = relatedOf(r, checked, snapshot);
    const fixes = fixesOf(r, snapshot, cwd);
    const f = r.finding;
    return {
      ruleId: r.rule,
      ruleIndex: index.get(r.rule),
      level: levels[r.level],
      message: { text: r.message },
      locations: [location(r.path, r.range, cwd)],
      ...(related.length > 0 && {
        relatedLocations: related.map((p, i) => ({
          id: i + 1,
          ...location(path.resolve(cwd, p.path), p.range, cwd),
          message: { text: p.message },
        })),
      }),
      partialFingerprints: { "spanwise/1": prints.of(r, checked.shownPath(r.path), lineOf(r, snapshot)) },
      ...(fixes.length > 0 && { fixes }),
      ...(f?.accepted && { suppressions: [suppression(f, f.accepted)] }),
      properties: {
        verdict: r.verdict,
        best: r.levels.best,
        worst: r.levels.worst,
        subject: r.subject,
        ...(f && { remedies: f.remedies.map((m) => m.title), cautions: f.cautions }),
      },
    };
  });
}

/** A stop stays a stop: that somebody answers for it is told, and the result is not hidden by it. */
const suppression = (
  f: Finding,
  { because, until, approvedBy }: NonNullable<Finding["accepted"]>,
): object => ({
  kind: "inSource",
  status: f.levels.worst === "stop" ? "rejected" : "accepted",
  justification: because,
  properties: { until: until ?? null, approvedBy: approvedBy ?? null },
});

const lineOf = (r: Reported, snapshot: CheckedFile["snapshot"]): string =>
  r.path === snapshot.path ? (snapshot.tree.lines[r.range.start.line]?.text.trim() ?? "") : "";

/**
 * The same finding keeps its fingerprint when lines are added above it. A step is known by its words, since its number
 * changes with the steps before it; a finding of form by the line on which it stands.
 */
class Fingerprints {
  private readonly seen = new Map<string, number>();

  of(r: Reported, shown: string, line: string): string {
    const step = / step \d+$/.test(r.subject);
    const about = r.problem || step ? `${r.subject.replace(/ \d+$/, "")}\0${line}` : r.subject;
    const what = `${r.rule}\0${shown}\0${about}`;
    const nth = (this.seen.get(what) ?? 0) + 1;
    this.seen.set(what, nth);
    return createHash("sha256").update(`${what}\0${nth}`).digest("hex").slice(0, 32);
  }
}

/** Relative to the folder of the call where the file lies in it. */
function artifact(file: string, cwd: string): object {
  const way = path.relative(cwd, file);
  if (way.startsWith("..") || path.isAbsolute(way)) return { uri: pathToFileURL(file).href };
  return { uri: way.split(path.sep).map(encodeURIComponent).join("/"), uriBaseId: "%SRCROOT%" };
}

const location = (file: string, range: Range, cwd: string): { physicalLocation: object } => ({
  physicalLocation: { artifactLocation: artifact(file, cwd), region: region(range) },
});

/** SARIF counts lines and columns from 1. */
const region = ({ start, end }: Range): object => ({
  startLine: start.line + 1,
  startColumn: start.character + 1,
  endLine: end.line + 1,
  endColumn: end.character + 1,
});

function fixesOf(r: Reported, snapshot: CheckedFile["snapshot"], cwd: string): object[] {
  const fix = (title: string, changes: readonly { path: string; range: Range; text: string }[]): object => {
    const files = new Map<string, object[]>();
    for (const c of changes)
      files.set(c.path, [
        ...(files.get(c.path) ?? []),
        { deletedRegion: region(c.range), insertedContent: { text: c.text } },
      ]);
    return {
      description: { text: title },
      artifactChanges: [...files].map(([file, replacements]) => ({
        artifactLocation: artifact(file, cwd),
        replacements,
      })),
    };
  };
  const line = r.range.start.line;
  const ofForm = (r.problem?.fixes ?? []).map((f) =>
    fix(f.title, [
      {
        path: r.path,
        text: f.text,
        range: {
          start: { line, character: f.start ?? r.range.start.character },
          end: { line, character: f.end ?? r.range.end.character },
        },
      },
    ]),
  );
  const ofSubstance = (r.finding?.remedies ?? []).flatMap((m) =>
    m.edits && m.edits.length > 0
      ? [
          fix(
            m.title,
            m.edits.map((e) => ({ ...located(snapshot.household, e.place), text: e.text })),
          ),
        ]
      : [],
  );
  return [...ofForm, ...ofSubstance];
}
