/** The command line as a function: arguments in, words and an exit code out. Never throws, never prints a trace. */
import { Command, CommanderError } from "commander";
import { commands } from "./list.js";
import { Stop } from "./stop.js";
import { capital } from "../../language/text/capital.js";
import { wrap } from "./terminal.js";
import type { Surroundings } from "./types.js";
import { version } from "./version.js";

export async function runProgram(args: readonly string[], around: Surroundings): Promise<void> {
  const say = (text: string): void => around.say(wrap(text, around.terminal.width).join("\n"));
  const program = new Command("spanwise")
    .description("Plans of wheelchair to bed transfers at home, judged by published rules.")
    .version(version, "--version", "print the version")
    .helpOption("--help", "print this help")
    .helpCommand(false)
    .exitOverride()
    .configureOutput({
      writeOut: (text) => around.out(text),
      writeErr: (text) => around.say(text.trimEnd()),
      outputError: (text) => say(complaint(text)),
    })
    .action(() => {
      throw new Stop(`${program.helpInformation()}\nName a command.`);
    });
  // A word that is no command would otherwise be taken for an argument that is too much.
  program.argument("[command]").allowExcessArguments(true);
  program.action((word: string | undefined) => {
    if (word === undefined) {
      around.say(program.helpInformation().trimEnd());
      around.exitCode(2);
    } else
      throw new Stop(
        `There is no command "${word}". There is: ${program.commands.map((c) => c.name()).join(", ")}.`,
      );
  });
  for (const declare of commands) declare(program, around);
  for (const c of program.commands) {
    c.exitOverride().copyInheritedSettings(program);
    c.allowExcessArguments(false);
  }
  try {
    await program.parseAsync(args, { from: "user" });
  } catch (error) {
    if (error instanceof CommanderError) around.exitCode(error.exitCode === 0 ? 0 : 2);
    else if (error instanceof Stop) {
      say(error.message);
      around.exitCode(error.exitCode);
    } else {
      say(
        `Spanwise stopped because of a fault in the program: ${oneLine(error)}. Nothing that was printed says that a plan is good.`,
      );
      around.exitCode(2);
    }
  }
}

const oneLine = (error: unknown): string =>
  (error instanceof Error ? error.message : String(error)).split("\n")[0]!.replace(/\.$/, "");

/** What the library for command lines complains of, as a sentence. */
function complaint(text: string): string {
  const words = text
    .trim()
    .replace(/^error: /, "")
    .replaceAll("'", '"');
  return capital(/[.?!)]$/.test(words) ? words : `${words}.`);
}
