/**
 * `npm run mutate`: changes every limit, band end, number, comparison and level of a rule set, one at a time, and shows what no
 * example and no published figure would notice. Exits with 1 if anything goes unnoticed.
 */
import { readFileSync, readdirSync } from "node:fs";
import { FactTable } from "../../rules/engine/fact-table.js";
import { loadRuleSet } from "../../rules/engine/load.js";
import type { RulePlace } from "../../rules/engine/types.js";
import { quantities } from "../../rules/quantities/index.js";
import { notAsPrinted, runDefaults } from "./published.js";
import { runMutants } from "./run.js";

const rules = new URL("../../rules/", import.meta.url);
const folder = process.argv[2] ?? "home-transfer/2026.1";
const files = readdirSync(new URL(`${folder}/`, rules))
  .filter((f) => f.endsWith(".spanrules"))
  .map((f) => ({ path: `${folder}/${f}`, text: readFileSync(new URL(`${folder}/${f}`, rules), "utf8") }));
const table = new FactTable(quantities);
const { partial: set, problems } = loadRuleSet(files, table);
for (const p of problems) console.log(`rules/${p.path}:${p.line + 1} ${p.message}`);

const line = (at: RulePlace): string => `rules/${at.path}:${at.line + at.place.line + 1}`;
const start = performance.now();
const { mutants, told, survivors, same, needless } = runMutants(set, table, notAsPrinted(set.version));
const defaults = runDefaults(set);
const took = performance.now() - start;

const rows = [
  ...survivors.map((m) => [line(m.at), m.of, m.kind, m.said] as const),
  ...defaults.unnoticed.map(
    (m) => [line(m.default.at), m.default.name, `default, ${m.end}`, m.said] as const,
  ),
];
const widths = [0, 1, 2].map((i) => Math.max(0, ...rows.map((r) => r[i]!.length)));
for (const r of rows) console.log(r.map((cell, i) => cell.padEnd(widths[i] ?? 0)).join("  "));
for (const s of same) console.log(`means the same: ${s.mutant.of}, ${s.mutant.said}: ${s.reason}`);
for (const e of needless) console.log(`no such mutant goes unnoticed: ${e.of}, ${e.kind}, ${e.said}`);

const judged = mutants - same.length + defaults.counted;
const noticed = told + defaults.counted - defaults.unnoticed.length;
console.log(
  `${noticed} of ${judged} mutants are noticed (${((100 * noticed) / judged).toFixed(2)} %), ${judged - noticed} are not, ${same.length} mean the same; in ${(took / 1000).toFixed(1)} s.`,
);
console.log(
  `Not counted: ${defaults.left} mutants of defaults whose figure no citation takes (common practice, memory, choice). Examples give facts, not the defaults behind them; the tests of quantities work with the defaults themselves.`,
);
process.exitCode = noticed < judged || needless.length + problems.length > 0 ? 1 : 0;
