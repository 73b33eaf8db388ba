import { commands, languages, LanguageStatusSeverity, window, workspace } from "vscode";
import type { ExtensionContext, LanguageStatusItem, LogOutputChannel } from "vscode";
import { LanguageClient, State, TransportKind } from "vscode-languageclient/node";
import type { LanguageClientOptions, ServerOptions } from "vscode-languageclient/node";
import { announcement, type Announcement } from "./announcement.js";

const LANGUAGES = ["span", "spanrules"];

/** How long the server may take to end by itself before it is ended. */
const STOP_WITHIN_MS = 2_000;

let client: LanguageClient | undefined;

export async function activate(context: ExtensionContext): Promise<void> {
  const output = window.createOutputChannel("Spanwise", { log: true });
  const status = languages.createLanguageStatusItem(
    "spanwise.alive",
    LANGUAGES.map((language) => ({ language })),
  );
  status.name = "Spanwise";
  status.command = { command: "spanwise.showOutput", title: "Show what it is doing" };

  client = createClient(context, output);
  client.onDidChangeState(({ newState }) => {
    if (newState === State.Starting) show(status, { text: "Spanwise starts", detail: "", busy: true });
    if (newState === State.Stopped) show(status, STOPPED);
    if (newState === State.Running) {
      const alive = announcement(client?.initializeResult);
      output.info(`${alive.text}. ${alive.detail}`);
      show(status, alive);
    }
  });

  context.subscriptions.push(
    output,
    status,
    commands.registerCommand("spanwise.showOutput", () => output.show(true)),
    commands.registerCommand("spanwise.restart", () => client?.restart()),
  );
  await start(output, status);
}

export async function deactivate(): Promise<void> {
  const running = client;
  client = undefined;
  if (running?.needsStop()) await running.stop(STOP_WITHIN_MS);
}

const STOPPED: Announcement = {
  text: "Spanwise does not check",
  detail: "The checks have stopped. Start them anew from the command palette.",
  stopped: true,
};

function createClient(context: ExtensionContext, output: LogOutputChannel): LanguageClient {
  const module = context.asAbsolutePath("dist/server.cjs");
  const server: ServerOptions = {
    run: { module, transport: TransportKind.stdio },
    debug: { module, transport: TransportKind.stdio, options: { execArgv: ["--enable-source-maps"] } },
  };
  const watched = workspace.createFileSystemWatcher("**/*.{span,spanrules}");
  context.subscriptions.push(watched);
  const options: LanguageClientOptions = {
    documentSelector: LANGUAGES.map((language) => ({ language })),
    synchronize: { configurationSection: "spanwise", fileEvents: watched },
    outputChannel: output,
  };
  return new LanguageClient("spanwise", "Spanwise", server, options);
}

async function start(output: LogOutputChannel, status: LanguageStatusItem): Promise<void> {
  try {
    await client?.start();
  } catch (error) {
    output.error(`The checks could not start: ${error instanceof Error ? error.message : String(error)}`);
    show(status, STOPPED);
    void window.showErrorMessage(
      "Spanwise could not start its checks. Nothing in this file is being checked.",
    );
  }
}

function show(status: LanguageStatusItem, what: Announcement): void {
  status.text = what.text;
  status.detail = what.detail;
  status.busy = what.busy ?? false;
  status.severity = what.stopped ? LanguageStatusSeverity.Error : LanguageStatusSeverity.Information;
}
