/** `spanwise check`: judges plans, for people and for programs. */
import { Option } from "commander";
import type { Level } from "../../rules/types.js";
import { onOption } from "./options.js";
import type { DeclareCommand } from "./types.js";

interface Options {
  readonly as: "text" | "json" | "sarif";
  readonly on?: string;
  readonly level: Level;
}

export const check: DeclareCommand = (program, around) => {
  program
    .command("check")
    .description("judge plans by their rule set")
    .argument("[paths...]", "plans, or folders of plans (default: this folder)")
    .addOption(
      new Option("--as <form>", "how the result is written")
        .choices(["text", "json", "sarif"])
        .default("text"),
    )
    .addOption(onOption(around))
    .addOption(
      new Option("--level <level>", "the least level that counts against a plan")
        .choices(["advice", "caution", "stop"])
        .default("caution"),
    )
    .addHelpText(
      "after",
      "\nEnds with 0 if nothing stands at or above the level and every transfer is cleared,\nwith 1 if not, and with 2 if nothing could be checked.",
    )
    .action(async (paths: string[], options: Options) => {
      const { checkPlans, exitCodeOf } = await import("./checked.js");
      const checked = checkPlans({ paths, cwd: around.cwd, on: options.on ?? around.today() });
      if (options.as === "json") around.out((await import("./as-json.js")).asJson(checked));
      else if (options.as === "sarif")
        around.out((await import("./as-sarif.js")).asSarif(checked, around.cwd));
      else around.out((await import("./as-text.js")).asText(checked, around.terminal));
      around.exitCode(exitCodeOf(checked, options.level));
    });
};
