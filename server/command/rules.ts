/** `spanwise rules`: checks rule sets and runs the examples in them. */
import { repositoryOf, byText } from "../workspace/files.js";
import type { DeclareCommand, Surroundings } from "./types.js";
import { Stop } from "./stop.js";

export const rules: DeclareCommand = (program, around) => {
  program
    .command("rules")
    .description("check rule sets and run their examples")
    .argument("[set]", "a rule set, such as home-transfer or home-transfer/2026.1 (default: all)")
    .addHelpText("after", "\nEnds with 0 if every rule set may be used, with 1 if one is refused.")
    .action((set: string | undefined) => checkSets(set, around));
};

async function checkSets(wanted: string | undefined, around: Surroundings): Promise<void> {
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
  around.exitCode(code);
}
