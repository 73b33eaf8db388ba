/** The result of `check` as a page for people, read in a terminal or a log. */
import type { MeasureNext } from "../../rules/engine/measure-next.js";
import type { SetProblem, Source } from "../../rules/engine/types.js";
import { grades, type BasisNote, type Finding, type TransferResult } from "../../rules/types.js";
import { measureNextOf } from "../workspace/measuring.js";
import { identityOf, type LoadedSet } from "../workspace/rule-sets.js";
import { policyText } from "./policy.js";
import { wasChecked, type Checked, type CheckedFile } from "./checked.js";
import { located, type Reported } from "../workspace/reported.js";
import { extentInWords } from "./words.js";
import { capital } from "../../language/text/capital.js";
import { counted, entry, heading, wrap, type Terminal } from "./terminal.js";

/** So many findings of form are printed for one file; noise has thousands. How many are left is said. */
const mostOfForm = 100;

export function asText(checked: Checked, t: Terminal): string {
  const parts = checked.files.map((f) => fileText(f, checked, t));
  const sets = [
    ...new Map(
      checked.files.flatMap(({ snapshot: { ruleSet } }) =>
        ruleSet ? [[identityOf(ruleSet), ruleSet] as const] : [],
      ),
    ).values(),
  ];
  const cited = new Set(
    checked.files.flatMap(({ snapshot }) =>
      snapshot.reported.flatMap((r) =>
        (r.finding?.bases ?? []).flatMap((b) => (b.citation ? [b.citation.id] : [])),
      ),
    ),
  );
  const sources = sourcesText(sets, cited, t);
  if (sources) parts.push(sources);
  for (const set of sets) parts.push(setText(set, checked.newerThan(set), t));
  return `${parts.join("\n\n")}\n`;
}

function fileText(file: CheckedFile, checked: Checked, t: Terminal): string {
  const { snapshot } = file;
  const { household, ruleSet, result } = snapshot;
  const title = household.title === undefined ? "" : `: ${household.title}`;
  const by =
    result && ruleSet
      ? `Judged as of ${snapshot.today} by ${ruleSet.name} ${ruleSet.version}${ruleSet.policy ? ` under the policy ${ruleSet.policy.name}` : ""}.`
      : "No rule was applied to this file.";
  const parts = [`${heading(t, file.shown + title)}\n${wrap(`${by} ${summary(file)}`, t.width).join("\n")}`];
  const said = new Map<string, number>();
  const shown = cutForm(sorted(snapshot.reported));
  for (const same of together(shown)) parts.push(findingText(same, file, checked, said, t));
  const left = snapshot.reported.length - shown.length;
  if (left > 0)
    parts.push(
      `${capital(counted(left, "more finding"))} of this kind in this file ${left === 1 ? "is" : "are"} not printed here; --as json lists them all.`,
    );
  if (result && result.transfers.length > 0) parts.push(transfersText(result.transfers, t));
  else if (wasChecked(snapshot)) parts.push(entry(t, "Transfers", "None is planned in this file.", t.strong));
  const measure = measureText(file, checked, t);
  if (measure) parts.push(measure);
  return parts.join("\n\n");
}

/** So many measurements are proposed for one file: what somebody can do on one visit. */
const mostToMeasure = 5;

/** What to measure next, where something is not known or not settled. */
function measureText({ snapshot }: CheckedFile, checked: Checked, t: Terminal): string | undefined {
  const all = measureNextOf(snapshot);
  if (all.length === 0) return undefined;
  const lines = all.slice(0, mostToMeasure).map((m, i) => {
    const at = m.place && located(snapshot.household, m.place);
    const file = at && at.path !== snapshot.path ? `${checked.shownPath(at.path)}, ` : "";
    const where = at ? ` (${file}line ${at.range.start.line + 1})` : "";
    const again = m.state === "inexact" ? ", more exactly" : "";
    const how = m.how === undefined ? "" : ` ${sentence(m.how)}`;
    return entry(
      t,
      `${String(i + 1).padStart(10)}.`,
      `${capital(m.what)}${again}${where}. ${useOf(m)}${how}`,
    );
  });
  const left = all.length - lines.length;
  if (left > 0) lines.push(entry(t, "", `${left} more can be found out; --as json lists them all.`));
  return [t.strong("Measure next"), ...lines].join("\n");
}

function useOf({ settles, settlesAtMost, rules }: MeasureNext): string {
  if (settles > 0) return `Settles ${counted(settles, "judgement")}.`;
  if (settlesAtMost > 0) return `May settle ${counted(settlesAtMost, "judgement")}.`;
  return `${capital(counted(rules.length, "rule"))} ${rules.length === 1 ? "waits" : "wait"} for it, and for more.`;
}

/** The gravest first, then in the order of the file. */
const sorted = (reported: readonly Reported[]): Reported[] =>
  [...reported].sort((a, b) => grades.indexOf(b.level) - grades.indexOf(a.level));

function cutForm(reported: readonly Reported[]): Reported[] {
  let left = mostOfForm;
  return reported.filter((r) => !r.problem || left-- > 0);
}

/** Findings of one rule on one line that say the same of several subjects are printed once. */
function together(reported: readonly Reported[]): Reported[][] {
  const groups = new Map<string, Reported[]>();
  for (const r of reported) {
    const f = r.finding;
    const key = f
      ? JSON.stringify([
          r.level,
          r.path,
          r.range,
          r.rule,
          r.verdict,
          r.message,
          f.remedies.map((m) => m.title),
          f.accepted ?? null,
        ])
      : groups.size;
    const group = groups.get(String(key));
    if (group) group.push(r);
    else groups.set(String(key), [r]);
  }
  return [...groups.values()];
}

function summary({ snapshot }: CheckedFile): string {
  const count = (level: string): number => snapshot.reported.filter((r) => r.level === level).length;
  const counts = (["stop", "caution", "advice"] as const)
    .filter((l) => count(l) > 0)
    .map((l) => `${count(l)} ${l}`);
  const held = snapshot.result?.verdicts.filter((v) => v.verdict === "holds").length ?? 0;
  const found = counts.length === 0 ? "Nothing found" : `Found: ${counts.join(", ")}`;
  return held === 0
    ? `${found}.`
    : `${found}; ${counted(held, "judgement")} ${held === 1 ? "holds" : "hold"}.`;
}

/** How bad what is not known may be. What is not settled says so in its own message. */
function verdictInWords({ verdict, levels }: Reported): string | undefined {
  if (verdict !== "unknown") return undefined;
  return levels.worst === "holds" ? "Not known." : `Not known; at worst ${levels.worst}.`;
}

function findingText(
  same: readonly Reported[],
  file: CheckedFile,
  checked: Checked,
  said: Map<string, number>,
  t: Terminal,
): string {
  const r = same[0]!;
  const own = r.path === file.snapshot.path;
  const line = r.range.start.line + 1;
  const where = own ? `line ${line}` : `${checked.shownPath(r.path)}, line ${line}`;
  const subjects = r.problem ? "" : `, ${listed(same.map((x) => x.subject))}`;
  const parts = [entry(t, capital(r.level), where + subjects, t.strong), entry(t, "", r.message)];
  const verdict = verdictInWords(r);
  if (verdict) parts.push(entry(t, "", verdict));
  if (r.problem)
    for (const [i, fix] of (r.problem.fixes ?? []).slice(0, 3).entries())
      parts.push(entry(t, i === 0 ? "would help" : "", sentence(fix.title)));
  if (r.finding) parts.push(...detail(r.finding, line, said, t));
  return parts.join("\n");
}

const listed = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? "") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)!}`;

function detail(f: Finding, line: number, said: Map<string, number>, t: Terminal): string[] {
  const parts: string[] = [];
  const list = (label: string, texts: readonly string[]): void => {
    for (const [i, text] of texts.entries()) parts.push(entry(t, i === 0 ? label : "", text));
  };
  if (f.margin && !f.message.includes(f.margin.words)) list("margin", [sentence(f.margin.words)]);
  list("to measure", [
    ...new Set(f.missing.filter((m) => !f.message.includes(m.what)).map((m) => sentence(m.what))),
  ]);
  const before = said.get(f.rule);
  if (before === undefined) {
    said.set(f.rule, line);
    list("why", [f.because]);
    list("rests on", [...new Set(f.bases.map(basisText))]);
  } else list("why", [`As said of line ${before} (${f.rule}).`]);
  list(
    "would help",
    f.remedies.map((r) => sentence(r.title)),
  );
  list("meanwhile", f.cautions);
  if (f.accepted) {
    const { because, until, approvedBy } = f.accepted;
    list("accepted", [
      `${sentence(because)}${until === undefined ? "" : ` Until ${until}.`}${approvedBy === undefined ? "" : ` By the ${approvedBy}.`}`,
    ]);
  }
  if (before === undefined) list("rule", [f.rule]);
  return parts;
}

const sentence = (text: string): string => (/[.!?]["”)]?$/.test(text) ? capital(text) : `${capital(text)}.`);

/** What a rule or a limit rests on, in one or two sentences. */
export function basisText(b: BasisNote): string {
  if (b.citation)
    return `Published, ${b.citation.id}, ${b.citation.at}: ${b.citation.says}. Taken from it: ${sentence(b.citation.takes)}`;
  const words = {
    published: "Published",
    derived: "Worked out",
    "common-practice": "Common practice, without a source",
    "from-memory": "From memory, no source at hand",
    "project-choice": "A choice of these rules",
  };
  return `${words[b.basis]}: ${b.text === "" ? "no more is said." : sentence(b.text)}`;
}

function transfersText(transfers: readonly TransferResult[], t: Terminal): string {
  const parts = [t.strong("Transfers")];
  for (const { name, cleared, left } of transfers) {
    const outcome = cleared
      ? "cleared: every rule that can stop it is met, and a good trial is recorded."
      : "not cleared. Left to do:";
    parts.push(wrap(`${name}: ${outcome}`, t.width).join("\n"));
    for (const [i, l] of left.entries()) parts.push(entry(t, `${String(i + 1).padStart(10)}.`, sentence(l)));
  }
  return parts.join("\n");
}

function sourcesText(
  sets: readonly LoadedSet[],
  cited: ReadonlySet<string>,
  t: Terminal,
): string | undefined {
  const sources = new Map<string, Source>();
  for (const { set } of sets) for (const [id, s] of set?.sources ?? []) if (cited.has(id)) sources.set(id, s);
  if (sources.size === 0) return undefined;
  const list = [...sources].sort(([a], [b]) => (a < b ? -1 : 1));
  return [t.strong("Sources"), ...list.map(([id, s]) => `${id}\n${entry(t, "", sourceText(s))}`)].join("\n");
}

export const sourceText = (s: Source): string =>
  [
    `${s.by}: ${s.title}.`,
    s.publishedIn && `${s.publishedIn}.`,
    s.year !== undefined && !s.publishedIn?.includes(String(s.year)) && `${s.year}.`,
    s.address,
    `Read ${s.read}, ${extentInWords(s.extent)}.`,
  ]
    .filter(Boolean)
    .join(" ");

function setText(set: LoadedSet, newer: string | undefined, t: Terminal): string {
  const parts = [
    `${t.strong("Rule set")} ${set.name} ${set.version}${set.folder === undefined ? "" : ", from this folder of plans"}`,
    entry(t, "content", set.hash),
  ];
  const title = set.set?.title;
  if (title) parts.splice(1, 0, entry(t, "title", title));
  if (newer !== undefined)
    parts.push(
      entry(
        t,
        "newer",
        `There is ${set.name} ${newer}. What it would change: spanwise compare ${set.version} ${newer} and these plans.`,
      ),
    );
  if (set.set) parts.push(...policyText(set, t));
  for (const [i, c] of (set.set?.cautions ?? []).entries())
    parts.push(entry(t, i === 0 ? "remember" : "", c));
  return parts.join("\n");
}

/** Why a rule set is refused, file by file and line by line. */
export const setProblemText = (p: SetProblem, t: Terminal): string =>
  entry(t, `line ${p.line + 1}`, p.message, t.strong);
