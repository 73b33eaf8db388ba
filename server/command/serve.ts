/** `spanwise serve --stdio`: the language server, for any editor that speaks the protocol. */
import { Option } from "commander";
import { Stop } from "./stop.js";
import type { DeclareCommand } from "./types.js";

export const serve: DeclareCommand = (program) => {
  program
    .command("serve")
    .description("run the language server for an editor")
    .addOption(new Option("--stdio", "speak over standard input and output"))
    .action(async (options: { readonly stdio?: boolean }) => {
      if (!options.stdio)
        throw new Stop("The language server speaks over standard input and output only: add --stdio.");
      const { startServer } = await import("../editor/main.js");
      startServer();
    });
};
