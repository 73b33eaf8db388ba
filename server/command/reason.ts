/** `spanwise reason`: a rule, limit, default, source or quantity, explained; with a plan, also with the plan's numbers. */
import { changeInWords, switchedOff } from "./policy.js";
import { onOption } from "./options.js";
import { Stop } from "./stop.js";
import { entry, heading } from "./terminal.js";
import type { DeclareCommand, Surroundings } from "./types.js";

export const reason: DeclareCommand = (program, around) => {
  program
    .command("reason")
    .description("explain a rule, a limit, a default, a source or a derived quantity")
    .argument("<name>", "such as height/rise, firm-bearing or board.bearing-landing")
    .argument("[file]", "a plan: also what comes out for it, with the arithmetic")
    .addOption(onOption(around))
    .action(async (name: string, file: string | undefined, options: { readonly on?: string }) =>
      explain(name.toLowerCase(), file, options.on ?? around.today(), around),
    );
};

async function explain(
  name: string,
  file: string | undefined,
  on: string,
  around: Surroundings,
): Promise<void> {
  const { workspaceAt, checkPlans } = await import("./checked.js");
  const { usualSet } = await import("../workspace/rule-sets.js");
  const { explanation, onPlan, namesLike } = await import("./explanation.js");
  const { planWord } = await import("./plan-word.js");
  const t = around.terminal;
  let checked;
  if (file !== undefined) {
    checked = checkPlans({ paths: [file], cwd: around.cwd, on });
    if (checked.files.length !== 1) throw new Stop(`Name one plan; "${file}" holds ${checked.files.length}.`);
  }
  const plan = checked?.files[0];
  const workspace = workspaceAt(around.cwd, on);
  const root = workspace.rootOf(around.cwd);
  const newest = workspace.ruleSets.newest(usualSet, root);
  const loaded =
    plan?.snapshot.ruleSet ?? (newest && workspace.ruleSets.get(newest.name, newest.version, root));
  if (!loaded) throw new Stop(`There is no rule set to explain "${name}" from.`);
  const text = explanation(name, loaded.set ?? loaded.partial, t);
  const off = switchedOff(loaded, name);
  if (text === undefined && off) {
    around.out(`${heading(t, name)}\n${entry(t, "policy", changeInWords(off))}\n`);
    around.exitCode(0);
    return;
  }
  if (text === undefined) {
    const like = namesLike(name, loaded.partial);
    const word = planWord(name);
    const hint =
      (word === undefined ? "" : ` ${word}`) +
      (like.length === 0 ? "" : ` Is one of these meant: ${like.join(", ")}?`);
    throw new Stop(
      `${loaded.name} ${loaded.version} has no rule, limit, default, source or quantity called "${name}".${hint}`,
    );
  }
  around.out(`${text}\n`);
  if (checked && plan) around.out(`\n${onPlan(name, plan, checked, t)}\n`);
  around.exitCode(0);
}
