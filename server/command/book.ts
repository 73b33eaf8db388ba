/** `spanwise book`: a rule set as a book to print and to review. */
import { repositoryOf } from "../workspace/files.js";
import { Stop } from "./stop.js";
import type { DeclareCommand, Surroundings } from "./types.js";

export const book: DeclareCommand = (program, around) => {
  program
    .command("book")
    .description("a rule set as a book to print and review: one page of HTML, written to the standard output")
    .argument("[set]", "a rule set, such as home-transfer or home-transfer/2026.1 (default: the newest)")
    .addHelpText("after", "\nFor example: spanwise book home-transfer/2026.1 > book.html")
    .action((set: string | undefined) => printBook(set, around));
};

async function printBook(wanted: string | undefined, around: Surroundings): Promise<void> {
  const { RuleSets, surroundings, usualSet } = await import("../workspace/rule-sets.js");
  const { ruleBook } = await import("../paper/book.js");
  const root = repositoryOf(around.cwd) ?? around.cwd;
  const sets = new RuleSets();
  const [name = usualSet, version] = (wanted ?? usualSet).split(/[/ ]/);
  const listed = sets.list(root).filter((s) => s.name === name && (!version || s.version === version));
  const newest = listed.at(-1);
  const loaded = newest && sets.get(newest.name, newest.version, root);
  if (!loaded) {
    const known = sets.list(root).map((s) => `${s.name}/${s.version}`);
    throw new Stop(`There is no rule set "${wanted ?? usualSet}". There is: ${known.join(", ") || "none"}.`);
  }
  const { set, hash, files } = loaded;
  if (!set)
    throw new Stop(
      `${loaded.name} ${loaded.version} is refused, so no book is made of it; spanwise rules ${loaded.name}/${loaded.version} says why.`,
      1,
    );
  around.out(ruleBook({ set, hash, files, table: surroundings }));
  around.exitCode(0);
}
