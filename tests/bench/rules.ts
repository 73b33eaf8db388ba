/**
 * Rules: judging a whole set on a household whose quantities are known, beside a general rule engine with the same comparisons
 * and beside validating the same content as JSON; reading and checking the set's text, beside a parser library's syntax tree of it
 * and beside its grammar that builds nothing; and how both grow with the number of rules.
 */
import { spawnSync } from "node:child_process";
import { Engine } from "json-rules-engine";
import { getLanguageService } from "vscode-json-languageservice";
import { TextDocument } from "vscode-languageserver-textdocument";
import sets from "virtual:rule-sets";
import { emptyLibrary, householdOf, readSetup } from "../../language/model/household.js";
import { defaultsOf } from "../../rules/engine/check.js";
import { Evaluator, Recorder } from "../../rules/engine/evaluate.js";
import { FactTable } from "../../rules/engine/fact-table.js";
import { FactReader } from "../../rules/engine/facts.js";
import { loadRuleSet } from "../../rules/engine/load.js";
import { rulesByScope, SubjectMaker, type Subject } from "../../rules/engine/subjects.js";
import type { Rule, RuleFile, RuleSet } from "../../rules/engine/types.js";
import { quantities } from "../../rules/quantities/index.js";
import { Scenes } from "../../rules/scenes.js";
import { parseTree, recognise, tokenized } from "./grammar.js";
import { jsonOf, schemaOf, setupOf } from "./household.js";
import { ms, row, sideBySide } from "./measure.js";
import { exponent } from "./reading.js";
import { rulesOf, valuesFor } from "./rules-conditions.js";

const table = new FactTable(quantities);
const released = sets[sets.length - 1]!;

function loaded(files: readonly RuleFile[]): RuleSet {
  const { set, problems } = loadRuleSet(files, table);
  if (!set) throw new Error(problems.map((p) => `${p.path}:${p.line + 1} ${p.message}`).join("\n"));
  return set;
}

/** Everything that the rules of a set look at in a household, each with the rules on it; every fact has been read once. */
function subjectsOf(set: RuleSet, setup: string): readonly (readonly [Subject, readonly Rule[]])[] {
  const household = householdOf("home.span", readSetup(setup), emptyLibrary);
  const reader = new FactReader(table, defaultsOf(set));
  reader.begin(false);
  const subjects = new SubjectMaker(reader).of(household, new Scenes().of(household), "2026-03-02");
  const rules = rulesByScope(set);
  const all: (readonly [Subject, readonly Rule[]])[] = [];
  for (const t of subjects.transfers) {
    all.push([t.transfer, rules.transfer]);
    for (const s of t.steps) all.push([s, rules.steps(s.step!.phrase)]);
    if (t.end) all.push([t.end, rules.end]);
  }
  for (const [kind, of] of rules.things) for (const s of subjects.things(kind)) all.push([s, of]);
  all.push([subjects.setup, rules.setup]);
  return all;
}

function judgeAll(set: RuleSet, all: readonly (readonly [Subject, readonly Rule[]])[]): number {
  const evaluator = new Evaluator(set);
  for (const [subject, rules] of all) for (const rule of rules) evaluator.of(rule, subject);
  return evaluator.judged;
}

async function judging(): Promise<void> {
  const set = loaded(released.files);
  const setup = setupOf(300);
  const all = subjectsOf(set, setup);
  const judged = judgeAll(set, all);
  // One engine for each list of rules, as a step meets only the rules on its verb.
  const engines = new Map<readonly Rule[], Engine>();
  for (const [, rules] of all)
    if (!engines.has(rules))
      engines.set(
        rules,
        new Engine(
          rules.flatMap((r) => rulesOf(r, set)),
          { allowUndefinedFacts: true },
        ),
      );
  const given = all.map(
    ([subject, rules]) => [engines.get(rules)!, valuesFor(rules, new Recorder(subject, set))] as const,
  );
  console.log(
    `${set.rules.length} rules of ${released.name} ${released.version} on ${all.length} subjects of a household of 300 lines: ${judged} judgements, with their evidence`,
  );
  row(
    "Judging all of them anew, facts known; the engine with the same comparisons, facts given as values",
    ...(await sideBySide(
      40,
      15,
      () => judgeAll(set, all),
      async () => {
        for (const [engine, values] of given) await engine.run(values);
      },
    )),
    "json-rules-engine",
  );
  const service = getLanguageService({});
  service.configure({
    validate: true,
    schemas: [{ uri: "spanwise://model", fileMatch: ["*"], schema: schemaOf() }],
  });
  const document = TextDocument.create("file:///home.json", "json", 1, jsonOf(setup));
  row(
    "Judging all of them anew, beside validating the same household as JSON",
    ...(await sideBySide(
      40,
      15,
      () => judgeAll(set, all),
      () => service.doValidation(document, service.parseJSONDocument(document)),
    )),
    "JSON service",
  );
}

async function readingRules(): Promise<void> {
  const { files } = released;
  const text = files.map((f) => f.text).join("\n");
  console.log(
    `rule set of ${text.split("\n").length} lines, ${text.length} characters; the grammar takes it: ${recognise(text) ? "yes" : "no"}, all ${tokenized(text).tokens} tokens up to character ${tokenized(text).upTo}`,
  );
  row(
    "Reading the set from its text, checking it and running its examples, beside the same grammar's syntax tree",
    ...(await sideBySide(
      40,
      40,
      () => loadRuleSet(files, table),
      () => parseTree(text),
    )),
    "plain parse",
  );
  row(
    "The same, beside a grammar that builds nothing",
    ...(await sideBySide(
      40,
      15,
      () => loadRuleSet(files, table),
      () => recognise(text),
    )),
    "bare grammar",
  );
}

/** A set of so many rules, no two of them on one value: else they would be compared with each other, and refused. */
function setOf(n: number): readonly RuleFile[] {
  const rules = Array.from(
    { length: n },
    (_, i) => `rule copy/n${i} {
  title "Rule number ${i}"
  for each transfer
  when board.used is yes
  judge height.rise + ${i} mm
  bands {
    less than ${i} mm                holds
    ${i} mm to ${i + 50} mm          caution  "The body goes {value}, number ${i}."
    more than ${i + 50} mm           stop     "The body goes {value}, number ${i}."
  }
  because "A copy for measuring."
  project-choice "Number ${i}."
  examples {
    board.used yes, ${i} mm: holds
    board.used yes, ${i + 1} mm: caution
    board.used yes, ${i + 50} mm: caution
    board.used yes, ${i + 51} mm: stop
    board.used no, ${i} mm: not-applicable
  }
}
`,
  );
  const text = `ruleset copies 1 { title "Copies" }\n${rules.join("")}`;
  return [{ path: "copies.spanrules", text }];
}

/** Measured in a process of its own, with so much room for what is young that nothing is collected while something is timed. */
const roomy = ["--max-semi-space-size=512", "--min-semi-space-size=512"];

export function growth(): void {
  const least = (rounds: number, work: () => unknown): number => {
    const times = Array.from({ length: rounds }, () => {
      const start = performance.now();
      work();
      return performance.now() - start;
    });
    return Math.min(...times);
  };
  const setup = setupOf(300);
  const points = [300, 1_000, 3_000, 10_000].map((n) => {
    const files = setOf(n);
    const set = loaded(files);
    const all = subjectsOf(set, setup);
    judgeAll(set, all);
    const rounds = n <= 300 ? 12 : 3;
    return {
      n,
      load: least(rounds, () => loadRuleSet(files, table)),
      judge: least(5 * rounds, () => judgeAll(set, all)),
    };
  });
  console.log("Growth with the number of rules (in a process that collects nothing meanwhile)");
  for (const p of points)
    console.log(`  ${String(p.n).padStart(5)} rules  read and checked ${ms(p.load)}   judged ${ms(p.judge)}`);
  console.log(
    `  exponent of the time in the number of rules: read and checked ${exponent(points.map((p) => [p.n, p.load])).toFixed(2)}, judged ${exponent(points.map((p) => [p.n, p.judge])).toFixed(2)} (1 is in proportion)`,
  );
}

export async function rules(): Promise<void> {
  await judging();
  await readingRules();
  spawnSync(process.execPath, [...roomy, process.argv[1]!, "--rules-growth"], { stdio: "inherit" });
}
