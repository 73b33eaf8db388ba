/** `spanwise lock`: writes down the content of released rule sets, so that a change of one is seen. */
import path from "node:path";
import { Option } from "commander";
import type { DeclareCommand, Surroundings } from "./types.js";
import { Stop } from "./stop.js";

interface Options {
  readonly again?: boolean;
  readonly dry?: boolean;
}

export const lock: DeclareCommand = (program, around) => {
  program
    .command("lock")
    .description("write down the content of this folder's rule sets, which may not change from then on")
    .argument("[sets...]", "rule sets to release, such as home-transfer/2026.1 (default: all)")
    .addOption(new Option("--again", "write a rule set that was released with another content down anew"))
    .addOption(new Option("--dry", "only compare: write nothing"))
    .addHelpText(
      "after",
      "\nWrites rules/released.lock.json. Ends with 0 if every released rule set has the content that is written there,\nwith 1 if one has another or is gone, and with 2 if there is nothing to do it with.",
    )
    .action((sets: string[], options: Options) => run(sets, options, around));
};

async function run(wanted: readonly string[], options: Options, around: Surroundings): Promise<void> {
  const { repositoryOf } = await import("../workspace/files.js");
  const { compareLock, lockFile, readLock, rulesIn, writeLock } =
    await import("../workspace/released-lock.js");
  const root = repositoryOf(around.cwd) ?? around.cwd;
  const before = readLock(root);
  if ("problem" in before) throw new Stop(`${lockFile} cannot be read: ${before.problem}.`);
  const now = rulesIn(root);
  const names = wanted.map((w) => w.replace(" ", "/"));
  const missing = names.filter((n) => !now.has(n));
  if (missing.length > 0)
    throw new Stop(
      `There is no rule set ${missing.map((m) => `"${m}"`).join(", ")} in ${path.join("rules")}.`,
    );
  const chosen = [...now.keys()].filter((n) => names.length === 0 || names.includes(n));
  if (chosen.length === 0 && before.released.size === 0)
    throw new Stop("There is no rule set in the folder rules. Nothing was written.");
  const released = new Map(before.released);
  for (const name of chosen) if (options.again || !released.has(name)) released.set(name, now.get(name)!);
  const lines = compareLock(options.dry ? before.released : released, now);
  for (const l of lines) around.out(`${l.is.padEnd(9)}  ${l.name}  ${l.hash}\n`);
  if (!options.dry) writeLock(root, released);
  const faults = lines.filter((l) => l.is === "changed" || l.is === "gone");
  if (faults.length > 0)
    around.say(
      "A released rule set does not change: put it back as it was, and make the change in a new version beside it.",
    );
  around.exitCode(faults.length > 0 ? 1 : 0);
}
