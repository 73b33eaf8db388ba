/** `spanwise export`: the vocabulary and plans as JSON, for other programs. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { Argument } from "commander";
import type { FormProblem, Household } from "../../language/model/household.js";
import { Stop } from "./stop.js";
import type { DeclareCommand, Surroundings } from "./types.js";

type What = "schema" | "model" | "vocabulary";

export const exportCommand: DeclareCommand = (program, around) => {
  program
    .command("export")
    .description("write the JSON Schema of plans, plans, or the vocabulary as JSON")
    .addArgument(
      new Argument("<what>", "schema, model or vocabulary").choices(["schema", "model", "vocabulary"]),
    )
    .argument("[paths...]", "for model: plans, folders of plans, or - for standard input")
    .addHelpText(
      "after",
      "\nschema: the JSON Schema (2020-12) of a plan as JSON, made from the vocabulary.\nmodel: what the plans say, in SI units, with what could not be understood.\nvocabulary: every kind, key, step and unit with its help.\n\nEnds with 0; with 1 if a line of a plan was not understood; with 2 if a plan could not be read.",
    )
    .action(async (what: What, paths: string[]) => {
      if (what !== "model" && paths.length > 0)
        throw new Stop(`spanwise export ${what} takes no paths: it does not depend on any plan.`);
      if (what === "model") return exportModel(paths, around);
      const made =
        what === "schema"
          ? (await import("../../language/vocabulary/exports/json-schema.js")).householdSchema()
          : (await import("../../language/vocabulary/exports/table.js")).vocabularyTable();
      around.out(written(made));
      around.exitCode(0);
    });
};

const written = (made: object): string => `${JSON.stringify(made, undefined, 2)}\n`;

interface Plan {
  /** As it is named in the output. */
  readonly shown: string;
  readonly household: Household;
  /** It is no text, or none that a plan could be. */
  readonly unreadable: boolean;
}

async function exportModel(paths: readonly string[], around: Surroundings): Promise<void> {
  const { exportHousehold } = await import("../../language/model/export.js");
  const plans = await plansOf(paths, around);
  const files = plans.map(({ shown, household }) => ({
    path: shown,
    household: exportHousehold(household),
    problems: household.problems.map(problemJson),
  }));
  around.out(written({ format: 1, files }));
  let code = 0;
  for (const { shown, household, unreadable } of plans) {
    if (unreadable) {
      around.say(`${shown}: ${household.problems[0]?.message ?? "This is no plan."}`);
      code = 2;
    } else if (household.problems.some((p) => p.level !== "advice")) code = Math.max(code, 1);
  }
  around.exitCode(code);
}

/** A finding of form: which line could not be understood and why. Zero-based, in UTF-16 code units. */
const problemJson = (p: FormProblem): object => ({
  rule: p.rule,
  level: p.level,
  range: { start: { line: p.line, character: p.start }, end: { line: p.line, character: p.end } },
  message: p.message,
});

async function plansOf(paths: readonly string[], around: Surroundings): Promise<Plan[]> {
  const { findPlans, isFault, repositoryOf } = await import("../workspace/files.js");
  const { Workspace } = await import("../workspace/snapshot.js");
  const { RuleSets } = await import("../workspace/rule-sets.js");
  const { cwd } = around;
  const given = paths.length > 0 ? paths : ["."];
  const named = given.filter((p) => p !== "-");
  const { files, missing } = findPlans(named, cwd);
  if (missing.length > 0)
    throw new Stop(
      `There is no file or folder ${missing.map((m) => `"${m}"`).join(", ")}. Nothing was exported.`,
    );
  if (files.length === 0 && !given.includes("-"))
    throw new Stop(
      `There is no plan (a file ending in .span) in ${given.map((g) => `"${g}"`).join(", ")}. Nothing was exported.`,
    );
  /** What a plan says does not depend on any rule, so that none is applied. */
  class NoSets extends RuleSets {
    override list(): [] {
      return [];
    }
    override get(): undefined {
      return undefined;
    }
  }
  const roots = [repositoryOf(cwd) ?? cwd];
  const workspace = new Workspace({ roots, today: () => around.today(), ruleSets: new NoSets() });
  const plan = (shown: string, file: string): Plan => ({
    shown,
    household: workspace.snapshot(file).household,
    unreadable: isFault(workspace.text(file)),
  });
  const plans = files.map((f) => plan(path.relative(cwd, f).replaceAll(path.sep, "/"), f));
  if (!given.includes("-")) return plans;
  // What it uses from other files is looked for from the folder of the call.
  const input = path.join(cwd, "standard-input.span");
  workspace.edit(input, standardInput());
  return [...plans, plan("-", input)];
}

/** Bytes that are no text would be mended silently by decoding; a zero byte in their place makes the reader say so. */
function standardInput(): string {
  const bytes = readFileSync(0);
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: false }).decode(bytes);
  } catch {
    return "\0";
  }
}
