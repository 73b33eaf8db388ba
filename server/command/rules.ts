/** `spanwise rules`: checks rule sets and runs the examples in them. */
import path from "node:path";
import { repositoryOf, byText } from "../workspace/files.js";
import type { RuleSets } from "../workspace/rule-sets.js";
import { onOption } from "./options.js";
import { changeInWords } from "./policy.js";
import type { DeclareCommand, Surroundings } from "./types.js";
import { Stop } from "./stop.js";

export const rules: DeclareCommand = (program, around) => {
  program
    .command("rules")
    .description("check rule sets and run their examples")
    .argument("[set]", "a rule set, such as home-transfer or home-transfer/2026.1 (default: all)")
    .addOption(onOption(around))
    .addHelpText(
      "after",
      "\nEnds with 0 if every rule set and every policy may be used, with 1 if one is refused.",
    )
    .action((set: string | undefined, options: { readonly on?: string }) =>
      checkSets(set, options.on ?? around.today(), around),
    );
};

async function checkSets(wanted: string | undefined, on: string, around: Surroundings): Promise<void> {
  const { RuleSets } = await import("../workspace/rule-sets.js");
  const { counted, entry, heading } = await import("./terminal.js");
  const { setProblemText } = await import("./as-text.js");
  const t = around.terminal;
  const root = repositoryOf(around.cwd) ?? around.cwd;
  const sets = new RuleSets(undefined, true);
  const [name, version] = (wanted ?? "").split(/[/ ]/);
  const listed = sets
    .list(root)
    .filter((s) => (!name || s.name === name) && (!version || s.version === version));
  if (listed.length === 0) {
    const known =
      sets
        .list(root)
        .map((s) => `${s.name}/${s.version}`)
        .join(", ") || "none";
    throw new Stop(`There is no rule set "${wanted}". There is: ${known}.`);
  }
  let code = 0;
  for (const l of listed) {
    const loaded = sets.get(l.name, l.version, root);
    if (!loaded) continue;
    const { partial, problems } = loaded;
    const examples = partial.rules.reduce((n, r) => n + r.examples.length, 0);
    const size = `${counted(partial.rules.length, "rule")}, ${counted(examples, "example")}, ${counted(partial.limits.size, "limit")}, ${counted(partial.defaults.size, "default")}, ${counted(partial.sources.size, "source")}.`;
    const lines = [
      heading(t, `${l.name} ${l.version}`),
      entry(t, "holds", size),
      entry(t, "content", loaded.hash),
    ];
    if (problems.length === 0)
      lines.push(
        entry(
          t,
          "outcome",
          "It may be used: every demand on a rule set is met and every example gives what it says.",
        ),
      );
    else {
      code = 1;
      lines.push(entry(t, "outcome", `It is refused, whole: ${counted(problems.length, "reason")}.`));
      for (const file of [...new Set(problems.map((p) => p.path))].sort(byText)) {
        lines.push("", t.strong(file || "The whole set"));
        for (const p of problems) if (p.path === file) lines.push(setProblemText(p, t));
      }
    }
    around.out(`${lines.join("\n")}\n\n`);
  }
  if (!wanted) code = Math.max(code, await checkPolicies(sets, root, on, around));
  around.exitCode(code);
}

/** Every policy of the folder, against the rule sets for which it is. */
async function checkPolicies(
  sets: RuleSets,
  root: string,
  on: string,
  around: Surroundings,
): Promise<number> {
  const { filesIn, isFault, readPlan } = await import("../workspace/files.js");
  const { isPolicy } = await import("../../rules/engine/overlay.js");
  const { policyShape } = await import("../../rules/engine/overlay-read.js");
  const { readTree } = await import("../../language/text/tree.js");
  const { counted, entry, heading } = await import("./terminal.js");
  const { setProblemText } = await import("./as-text.js");
  const t = around.terminal;
  let code = 0;
  for (const file of filesIn(root, ["spanrules"])) {
    const got = readPlan(file);
    if (isFault(got) || !isPolicy(readTree(got.text, policyShape))) continue;
    const shown = path.relative(root, file).split(path.sep).join("/");
    const { set, problems } = sets.policyAlone({ path: shown, text: got.text }, root, on);
    const lines = [heading(t, `Policy ${shown}`)];
    if (problems.length > 0) {
      code = 1;
      lines.push(entry(t, "outcome", `It is refused, whole: ${counted(problems.length, "reason")}.`));
      for (const p of problems) lines.push(setProblemText(p, t));
    } else
      for (const o of set.overlays ?? [])
        for (const [i, c] of o.changes.entries())
          lines.push(entry(t, i === 0 ? "changes" : "", changeInWords(c)));
    around.out(`${lines.join("\n")}\n\n`);
  }
  return code;
}
