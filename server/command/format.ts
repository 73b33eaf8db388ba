/** `spanwise format`: writes plans in their usual layout. A file is written only when its text changes. */
import { writeFileSync } from "node:fs";
import path from "node:path";
import { formatText } from "../../language/text/format.js";
import { ruleShape } from "../../rules/engine/read.js";
import { filesIn, findPlans, isFault, readPlan } from "../workspace/files.js";
import { Stop } from "./stop.js";
import { harmless } from "./terminal.js";
import type { DeclareCommand, Surroundings } from "./types.js";

export const format: DeclareCommand = (program, around) => {
  program
    .command("format")
    .description("write plans and rule files in their usual layout")
    .argument("[paths...]", "plans, rule files, or folders of them (default: this folder)")
    .option("--dry", "list what would change and write nothing")
    .addHelpText(
      "after",
      "\nEnds with 0; with --dry, with 1 if something would change; with 2 if a file could not be read or written.",
    )
    .action((paths: string[], options: { readonly dry?: boolean }) =>
      formatPlans(paths, options.dry === true, around),
    );
};

function formatPlans(paths: readonly string[], dry: boolean, around: Surroundings): void {
  const given = paths.length > 0 ? paths : ["."];
  const { files, missing } = findPlans(given, around.cwd);
  if (missing.length > 0)
    throw new Stop(
      `There is no file or folder ${missing.map((m) => `"${m}"`).join(", ")}. Nothing was changed.`,
    );
  const folders = given.map((g) => path.resolve(around.cwd, g)).filter((g) => !files.includes(g));
  const all = [...new Set([...files, ...folders.flatMap((f) => filesIn(f, ["spanrules"]))])];
  if (all.length === 0)
    throw new Stop(`There is no plan or rule file in ${given.map((g) => `"${g}"`).join(", ")}.`);
  let code = 0;
  for (const file of all) {
    const shown = harmless(path.relative(around.cwd, file));
    const outcome = formatOne(file, dry);
    if (outcome === "same") continue;
    if (outcome === "changed") {
      around.out(`${dry ? "would change" : "changed"}  ${shown}\n`);
      if (dry) code = Math.max(code, 1);
    } else {
      around.say(`${shown}: ${outcome.why}`);
      code = 2;
    }
  }
  around.exitCode(code);
}

function formatOne(file: string, dry: boolean): "same" | "changed" | { readonly why: string } {
  const got = readPlan(file);
  if (isFault(got)) return { why: "it is not a plain text that can be read; it was left as it is." };
  const text = file.endsWith(".spanrules") ? formatText(got.text, ruleShape.topOnly) : formatText(got.text);
  if (text === got.text) return "same";
  if (dry) return "changed";
  try {
    writeFileSync(file, text);
    return "changed";
  } catch {
    return { why: "it could not be written; it was left as it is." };
  }
}
