/** Starts the language server over standard input and output. */
import { createConnection } from "vscode-languageserver/node";
import { createServer } from "./server.js";

/** Serves until the editor says `exit`, or goes away. A fault is logged; the process goes on. */
export function startServer(): void {
  // Standard output belongs to the protocol: whatever a library prints goes to the other one.
  console.log = console.info = console.debug = console.error;
  const log = (error: unknown): void =>
    console.error(error instanceof Error ? (error.stack ?? error.message) : String(error));
  process.on("uncaughtException", log);
  process.on("unhandledRejection", log);
  // A reader that has gone makes every later write fail; there is nobody left to serve then.
  process.stdout.on("error", () => process.exit(1));
  const connection = createConnection(process.stdin, process.stdout);
  // Only what is bundled can start itself as another thread.
  const entry = new URL(import.meta.url);
  createServer(connection, /\.[cm]js$/.test(entry.pathname) ? { entry } : {});
  connection.listen();
}
