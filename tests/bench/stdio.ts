/** The same keystroke through real stdio: from the change sent to the findings received, in each of two servers. */
import { spawn, type ChildProcessWithoutNullStreams } from "node:child_process";
import path from "node:path";
import { pathToFileURL } from "node:url";
import {
  createMessageConnection,
  StreamMessageReader,
  StreamMessageWriter,
  type MessageConnection,
} from "vscode-jsonrpc/node";
import { jsonOf, setupOf } from "./household.js";
import { row, sideBySide } from "./measure.js";

class Client {
  private readonly process: ChildProcessWithoutNullStreams;
  private readonly connection: MessageConnection;
  private version = 1;
  private wanted: ((version: number | undefined) => void) | undefined;

  constructor(
    args: readonly string[],
    private readonly uri: string,
  ) {
    this.process = spawn(process.execPath, args, { stdio: ["pipe", "pipe", "pipe"] });
    this.process.stderr.resume();
    this.connection = createMessageConnection(
      new StreamMessageReader(this.process.stdout),
      new StreamMessageWriter(this.process.stdin),
    );
    this.connection.onNotification(
      "textDocument/publishDiagnostics",
      (p: { uri: string; version?: number }) => {
        if (p.uri === this.uri) this.wanted?.(p.version);
      },
    );
    this.connection.onRequest(() => null);
    this.connection.listen();
  }

  async start(languageId: string, text: string): Promise<void> {
    const root = pathToFileURL(path.resolve("samples")).href;
    await this.connection.sendRequest("initialize", {
      processId: process.pid,
      rootUri: root,
      capabilities: {},
      workspaceFolders: [{ uri: root, name: "samples" }],
    });
    await this.connection.sendNotification("initialized", {});
    const arrived = this.findings(1);
    await this.connection.sendNotification("textDocument/didOpen", {
      textDocument: { uri: this.uri, languageId, version: 1, text },
    });
    await arrived;
  }

  private findings(version: number): Promise<void> {
    return new Promise((resolve, reject) => {
      const late = setTimeout(() => reject(new Error(`No findings within 10 s (${this.uri})`)), 10_000);
      this.wanted = (v) => {
        if (v !== undefined && v < version) return;
        clearTimeout(late);
        resolve();
      };
    });
  }

  /** Replaces part of one line and waits for the findings of that version. */
  async change(line: number, start: number, end: number, text: string): Promise<void> {
    const version = ++this.version;
    const arrived = this.findings(version);
    const range = { start: { line, character: start }, end: { line, character: end } };
    await this.connection.sendNotification("textDocument/didChange", {
      textDocument: { uri: this.uri, version },
      contentChanges: [{ range, text }],
    });
    await arrived;
  }

  stop(): void {
    this.connection.dispose();
    this.process.kill();
  }
}

function spot(text: string, words: string, digits: string): { line: number; start: number; end: number } {
  const lines = text.split("\n");
  const line = lines.findIndex((l) => l.includes(words));
  const start = lines[line]!.indexOf(digits, lines[line]!.indexOf(words) + words.length - digits.length);
  return { line, start, end: start + digits.length };
}

export async function stdio(): Promise<void> {
  const setup = setupOf(300);
  const json = jsonOf(setup);
  const ours = new Client(
    ["dist/spanwise.mjs", "serve", "--stdio"],
    pathToFileURL(path.resolve("samples/first-week/bench.span")).href,
  );
  const theirs = new Client([process.argv[1]!, "--json-server"], "file:///home.json");
  try {
    await ours.start("span", setup);
    await theirs.start("json", json);
    const a = spot(setup, "top-loaded 23", "23");
    const b = spot(json, '"code": "C-07"', "07");
    const two = (i: number): string => String(20 + (i % 8));
    row(
      "The same keystroke through stdio, change sent to findings received",
      ...(await sideBySide(
        400,
        100,
        (i) => ours.change(a.line, a.start, a.end, two(i)),
        (i) => theirs.change(b.line, b.start, b.end, two(i)),
      )),
      "JSON server",
    );
  } finally {
    ours.stop();
    theirs.stop();
  }
}
