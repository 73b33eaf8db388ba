/** `spanwise compare`: two versions of a rule set, as texts and by what they say of plans. */
import { Option } from "commander";
import { onOption } from "./options.js";
import type { DeclareCommand, Surroundings } from "./types.js";

interface Options {
  readonly as: "text" | "json";
  readonly on?: string;
}

export const compare: DeclareCommand = (program, around) => {
  program
    .command("compare")
    .description("compare two rule sets: what changed, and which plans get other verdicts")
    .argument("<before>", "a rule set, such as home-transfer/2026.1, or its version alone")
    .argument("<after>", "another one")
    .argument("[paths...]", "plans, or folders of plans (default: only the rules are compared)")
    .addOption(
      new Option("--as <form>", "how the result is written").choices(["text", "json"]).default("text"),
    )
    .addOption(onOption(around))
    .addHelpText(
      "after",
      "\nEnds with 0 if no plan gets another verdict, with 1 if one does or cannot be judged by one of the two,\nand with 2 if nothing could be compared.",
    )
    .action((before: string, after: string, paths: string[], options: Options) =>
      run(before, after, paths, options, around),
    );
};

async function run(
  before: string,
  after: string,
  paths: readonly string[],
  options: Options,
  around: Surroundings,
): Promise<void> {
  const { comparison } = await import("./compared.js");
  const compared = comparison({
    before,
    after,
    paths,
    cwd: around.cwd,
    on: options.on ?? around.today(),
  });
  const { comparedJson, comparedText } = await import("./compare-shown.js");
  around.out(options.as === "json" ? comparedJson(compared) : comparedText(compared, around.terminal));
  around.exitCode(compared.plans.every((p) => p.same) ? 0 : 1);
}
