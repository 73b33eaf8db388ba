/** The server as an editor meets it: bundled, started as a process of its own, spoken to over its standard input and output. */
import { spawn, type ChildProcess } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, cpSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test, vi } from "vitest";
import {
  createMessageConnection,
  StreamMessageReader,
  StreamMessageWriter,
  type MessageConnection,
} from "vscode-languageserver-protocol/node";
import type {
  CodeAction,
  CompletionItem,
  Diagnostic,
  DocumentSymbol,
  Hover,
  InitializeResult,
  PublishDiagnosticsParams,
} from "vscode-languageserver-protocol";
import { ruleSetsForBuild } from "../../../rule-sets.plugin.mjs";
import { applyChanges } from "../../../server/editor/page.js";
import { root } from "./marked.js";

let folder: string;
let bundle: string;

beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), "spanwise-editor-"));
  bundle = path.join(folder, "server.mjs");
  await build({
    entryPoints: [path.join(root, "client/server.ts")],
    outfile: bundle,
    bundle: true,
    platform: "node",
    target: "node20",
    format: "esm",
    mainFields: ["module", "main"],
    banner: {
      js: 'import { createRequire as requireOf } from "node:module"; const require = requireOf(import.meta.url);',
    },
    define: { SPANWISE_VERSION: '"1.2.3"' },
    plugins: [ruleSetsForBuild],
    logLevel: "error",
  });
  cpSync(path.join(root, "samples"), path.join(folder, "plans"), { recursive: true });
}, 60_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** One running server and what it pushed. */
/** Only a server that hangs takes this long, in milliseconds; on a loaded machine a first answer may take many seconds. */
const patience = 60_000;
vi.setConfig({ testTimeout: 2 * patience, hookTimeout: 2 * patience });

class Editor {
  readonly pushed: PublishDiagnosticsParams[] = [];
  private readonly waiting: (() => void)[] = [];
  readonly ended: Promise<number | null>;
  private errors = "";
  private constructor(
    private readonly process: ChildProcess,
    readonly connection: MessageConnection,
  ) {
    this.ended = new Promise((done) => process.on("exit", done));
    // What was asked of a server that is gone gets no answer: then the test fails at once, with what the server said.
    void this.ended.then(() => connection.dispose());
    process.stderr!.on("data", (d: Buffer) => (this.errors += d.toString()));
    connection.onNotification("textDocument/publishDiagnostics", (p: PublishDiagnosticsParams) => {
      this.pushed.push(p);
      for (const wake of this.waiting.splice(0)) wake();
    });
    connection.onRequest("client/registerCapability", () => null);
    connection.listen();
  }

  static start(): Editor {
    const child = spawn(process.execPath, [bundle, "--stdio"], { stdio: ["pipe", "pipe", "pipe"] });
    return new Editor(
      child,
      createMessageConnection(new StreamMessageReader(child.stdout), new StreamMessageWriter(child.stdin)),
    );
  }
  async initialize(): Promise<InitializeResult> {
    const rootUri = pathToFileURL(path.join(folder, "plans")).href;
    const result = await this.connection.sendRequest<InitializeResult>("initialize", {
      processId: process.pid,
      rootUri,
      workspaceFolders: [{ uri: rootUri, name: "plans" }],
      capabilities: {
        workspace: { workspaceFolders: true, didChangeWatchedFiles: { dynamicRegistration: true } },
        textDocument: { completion: { completionItem: { snippetSupport: true } } },
      },
    });
    await this.connection.sendNotification("initialized", {});
    return result;
  }
  open(uri: string, text: string, languageId = "span"): Promise<void> {
    return this.connection.sendNotification("textDocument/didOpen", {
      textDocument: { uri, languageId, version: 1, text },
    });
  }
  change(uri: string, version: number, contentChanges: readonly object[]): Promise<void> {
    return this.connection.sendNotification("textDocument/didChange", {
      textDocument: { uri, version },
      contentChanges,
    });
  }
  ask<T>(method: string, uri: string, more: object = {}): Promise<T> {
    return this.connection.sendRequest<T>(`textDocument/${method}`, { textDocument: { uri }, ...more });
  }
  /** The findings of a document at that version or a later one. */
  async findings(uri: string, version: number): Promise<readonly Diagnostic[]> {
    const until = Date.now() + patience;
    for (;;) {
      const found = this.pushed.filter((p) => p.uri === uri && (p.version ?? 0) >= version).at(-1);
      if (found) return found.diagnostics;
      const left = until - Date.now();
      if (left <= 0) throw new Error(`No findings came for version ${version}. ${this.errors}`);
      await new Promise<void>((wake) => {
        const timer = setTimeout(wake, left);
        this.waiting.push(() => (clearTimeout(timer), wake()));
      });
    }
  }
  /** Waits until something was pushed that is so. */
  async pushedUntil(so: (p: PublishDiagnosticsParams) => boolean): Promise<void> {
    const until = Date.now() + patience;
    while (!this.pushed.some(so)) {
      if (Date.now() > until) throw new Error(`What was waited for was not pushed. ${this.errors}`);
      await new Promise<void>((wake) => {
        const timer = setTimeout(wake, 1000);
        this.waiting.push(() => (clearTimeout(timer), wake()));
      });
    }
  }
  async stop(): Promise<number | null> {
    await this.connection.sendRequest("shutdown");
    await this.connection.sendNotification("exit");
    return this.ended;
  }
  kill(): void {
    this.connection.dispose();
    this.process.kill();
  }
  get log(): string {
    return this.errors;
  }
}

let editor: Editor;
beforeEach(() => void (editor = Editor.start()));
afterEach(() => editor.kill());

const home = (): { uri: string; text: string } => {
  const file = path.join(folder, "plans/first-week/home.span");
  return { uri: pathToFileURL(file).href, text: readFileSync(file, "utf8") };
};
const positionOf = (text: string, piece: string, into = 0): { line: number; character: number } => {
  const before = text.slice(0, text.indexOf(piece) + into).split("\n");
  return { line: before.length - 1, character: before.at(-1)!.length };
};

describe("a home plan is opened, looked at and mended", () => {
  test("it says what it is, finds what is wrong with numbers and sources, a fix settles a finding, and it ends cleanly", async () => {
    const { uri, text } = home();
    const { serverInfo, capabilities } = await editor.initialize();
    expect(serverInfo).toEqual({ name: "Spanwise", version: "1.2.3" });
    expect(capabilities.positionEncoding).toBe("utf-16");
    expect(capabilities.experimental).toEqual({
      ruleSets: expect.arrayContaining([{ name: "home-transfer", version: "2026.1" }]),
    });

    await editor.open(uri, text);
    const found = await editor.findings(uri, 1);
    const rise = found.find((d) => d.code === "height/rise")!;
    expect(rise.message).toMatch(/\d+ \d\/\d in/);
    expect(rise.source).toBe("spanwise");
    expect(rise.relatedInformation!.some((r) => r.location.uri.endsWith("/loan-pool.span"))).toBe(true);
    // The sample accepts a finding until a day that has passed since it was written; nothing else of its form is wrong.
    expect(
      found
        .map((d) => String(d.code))
        .filter((c) => c.startsWith("form/") && c !== "form/acceptance-expired"),
    ).toEqual([]);

    const hover = await editor.ask<Hover>("hover", uri, { position: rise.range.start });
    expect((hover.contents as { value: string }).value).toMatch(/Rests on:\n- \[[^\]]+\]\(https:[^)]+\), /);

    const unchecked = found.find((d) => d.code === "steps/brakes-not-checked")!;
    const actions = await editor.ask<CodeAction[]>("codeAction", uri, {
      range: unchecked.range,
      context: { diagnostics: [unchecked] },
    });
    const fix = actions.find((a) => a.diagnostics?.some((d) => d.code === unchecked.code))!;
    const edits = fix.edit!.changes![uri]!;
    await editor.change(
      uri,
      2,
      edits.map((e) => ({ range: e.range, text: e.newText })),
    );
    const after = await editor.findings(uri, 2);
    expect(after.map((d) => d.code)).not.toContain("steps/brakes-not-checked");
    expect(after.map((d) => d.code)).toContain("height/rise");

    const symbols = await editor.ask<DocumentSymbol[]>("documentSymbol", uri);
    expect(symbols.map((s) => s.name)).toEqual(expect.arrayContaining(["into-bed", "bedroom"]));
    const items = await editor.ask<CompletionItem[]>("completion", uri, {
      position: positionOf(applyChanges(text, edits), "edge firm", 5),
    });
    expect(items.map((i) => i.label)).toEqual(["firm", "soft", "rounded", "unknown"]);
    const place = await editor.ask<{ uri: string }>("definition", uri, {
      position: positionOf(text, "with board-30", 8),
    });
    expect(place.uri).toMatch(/\/loan-pool\.span$/);

    expect(await editor.stop()).toBe(0);
    expect(editor.log).toBe("");
  });

  test("what is slow comes after the rest, and a letter typed meanwhile does not wait for it", async () => {
    await editor.initialize();
    const { uri, text } = home();
    await editor.open(uri, text);
    const way = (found: readonly Diagnostic[]): Diagnostic[] =>
      found.filter((d) => String(d.code).startsWith("way/"));
    const pending = (found: readonly Diagnostic[]): boolean =>
      way(found).some((d) => String(d.message).includes("still being worked out"));
    expect(pending(await editor.findings(uri, 1))).toBe(true);
    await editor.pushedUntil(
      (p) => p.uri === uri && !pending(p.diagnostics) && way(p.diagnostics).length > 0,
    );
    // The room changes, so the way is worked out anew; the next change comes while that goes on.
    const wall = positionOf(text, "10 ft 2 in north");
    const room = (inches: number): object => ({
      range: { start: wall, end: { ...wall, character: wall.character + "10 ft 2 in".length } },
      text: `10 ft ${inches} in`,
    });
    for (let version = 2; version < 6; version++) {
      await editor.change(uri, version, [room(version + 1)]);
      await editor.findings(uri, version);
      await new Promise((wait) => setTimeout(wait, 450));
    }
    await editor.pushedUntil((p) => p.uri === uri && p.version === 5 && !pending(p.diagnostics));
    expect(await editor.stop()).toBe(0);
  });

  test("a newer rule set is told of also where nothing slow is to be worked out", async () => {
    await editor.initialize();
    const uri = "untitled:Pinned-1";
    await editor.open(uri, 'setup "Pinned"\nrules home-transfer 2026.1\nbed b { edge firm }\n');
    await editor.pushedUntil(
      (p) => p.uri === uri && p.diagnostics.some((d) => d.code === "form/rule-set-newer"),
    );
    expect(await editor.stop()).toBe(0);
  });

  test("a change in a file that a plan uses is found in the plan", async () => {
    const { uri, text } = home();
    const pool = path.join(folder, "plans/loan-pool.span");
    const poolUri = pathToFileURL(pool).href;
    await editor.initialize();
    await editor.open(uri, text);
    const heights = (all: readonly Diagnostic[]): string[] =>
      all.filter((d) => d.code === "height/rise").map((d) => String(d.message));
    const before = heights(await editor.findings(uri, 1));
    await editor.open(poolUri, readFileSync(pool, "utf8"));
    await editor.findings(poolUri, 1);
    const pushes = editor.pushed.length;
    await editor.change(poolUri, 2, [
      { text: readFileSync(pool, "utf8").replace("seat-loaded 19 1/2 in", "seat-loaded 18 1/2 in") },
    ]);
    await editor.findings(poolUri, 2);
    await expect
      .poll(() =>
        heights(
          editor.pushed
            .slice(pushes)
            .filter((p) => p.uri === uri)
            .at(-1)?.diagnostics ?? [],
        ),
      )
      .not.toEqual([]);
    expect(heights(editor.pushed.filter((p) => p.uri === uri).at(-1)!.diagnostics)).not.toEqual(before);
  });

  test("a file that something else writes is read again", async () => {
    const file = path.join(folder, "plans/own.span");
    const used = path.join(folder, "plans/used.span");
    writeFileSync(used, "board x { length 70 cm; width 20 cm }\n");
    const uri = pathToFileURL(file).href;
    await editor.initialize();
    await editor.open(uri, 'setup "T"\nrules home-transfer 2026.1\nfrom "used.span" use x, y\n');
    expect((await editor.findings(uri, 1)).map((d) => d.code)).toContain("form/nothing-called");
    const pushes = editor.pushed.length;
    writeFileSync(used, "board x { length 70 cm; width 20 cm }\nboard y { length 70 cm; width 20 cm }\n");
    await editor.connection.sendNotification("workspace/didChangeWatchedFiles", {
      changes: [{ uri: pathToFileURL(used).href, type: 2 }],
    });
    await expect
      .poll(() => editor.pushed.slice(pushes).filter((p) => p.uri === uri).length)
      .toBeGreaterThan(0);
    expect(editor.pushed.at(-1)!.diagnostics.map((d) => d.code)).not.toContain("form/nothing-called");
  });
});

describe("whatever comes in, it goes on answering", () => {
  const alive = async (): Promise<void> => {
    const uri = "untitled:Alive-1";
    await editor.open(uri, "bed b { edge firm }");
    const hover = await editor.ask<Hover>("hover", uri, { position: { line: 0, character: 10 } });
    expect((hover.contents as { value: string }).value).toContain("**edge**");
  };

  test("an unsaved document is checked, and its findings go when it is closed", async () => {
    await editor.initialize();
    const uri = "untitled:Untitled-1";
    await editor.open(uri, 'bed b { top 24 }\nfrom "../../etc/passwd" use x\nfrom "neighbour.span" use y');
    const codes = (await editor.findings(uri, 1)).map((d) => d.code);
    expect(codes).toEqual(expect.arrayContaining(["form/no-unit"]));
    expect(codes.filter((c) => c === "form/file-outside" || c === "form/file-not-found")).toHaveLength(2);
    await editor.connection.sendNotification("textDocument/didClose", { textDocument: { uri } });
    await expect.poll(() => editor.pushed.at(-1)).toEqual({ uri, diagnostics: [] });
    await alive();
  });

  test("a file outside every folder of plans is checked by itself", async () => {
    await editor.initialize();
    const outside = path.join(mkdtempSync(path.join(folder, "else-")), "a.span");
    writeFileSync(outside, "bed b { top 24 }");
    const uri = pathToFileURL(outside).href;
    await editor.open(uri, "bed b { top 24 }");
    expect((await editor.findings(uri, 1)).map((d) => d.code)).toContain("form/no-unit");
  });

  test("an unknown request is refused, an unknown notification passed over", async () => {
    await editor.initialize();
    await expect(editor.connection.sendRequest("textDocument/noSuchThing", {})).rejects.toMatchObject({
      code: -32601,
    });
    await editor.connection.sendNotification("noSuch/notification", { a: 1 });
    await expect(editor.connection.sendRequest("textDocument/hover", {})).rejects.toBeDefined();
    expect(
      await editor.ask("hover", "file:///not/open.span", { position: { line: 0, character: 0 } }),
    ).toBeNull();
    await alive();
  });

  test.each([
    ["a line of a million characters", `bed b { top ${"9".repeat(1_000_000)} in }\nedge`],
    ["a word of a million letters", `${"a".repeat(1_000_000)}`],
    ["null bytes", "bed b {\u0000 top 24 }\u0000"],
    ["half of a surrogate pair", 'setup "\ud83d"\nbed b { top 24 }'],
    ["ten thousand open braces", "bed b {".repeat(10_000)],
    ["nothing but ends of lines", "\n".repeat(50_000)],
    ["an address that is no path", ""],
  ])("%s", async (name, text) => {
    await editor.initialize();
    const uri = name === "an address that is no path" ? "file://%zz/a.span" : "untitled:Odd-1";
    await editor.open(uri, text);
    await editor.findings(uri, 1);
    for (const character of [0, 5, 999_999]) {
      await editor.ask("hover", uri, { position: { line: 0, character } });
      await editor.ask("completion", uri, { position: { line: 0, character } });
      await editor.ask("codeAction", uri, {
        range: { start: { line: 0, character }, end: { line: 0, character } },
        context: { diagnostics: [] },
      });
    }
    for (const method of ["documentSymbol", "foldingRange", "formatting"])
      await editor.ask(method, uri, { options: { tabSize: 2, insertSpaces: true } });
    await alive();
    expect(await editor.stop()).toBe(0);
  });

  test("quick typing ends with the findings of the last text, and no list between is emptied by a late one", async () => {
    const { uri, text } = home();
    await editor.initialize();
    await editor.open(uri, text);
    await editor.findings(uri, 1);
    const at = positionOf(text, "rails none");
    for (let v = 2; v <= 60; v++) {
      void editor.change(uri, v, [{ range: { start: at, end: at }, text: "x" }]);
      // Nobody waits for what was asked while typing; the editor takes it back.
      const asked = editor.ask("hover", uri, { position: at });
      asked.catch(() => undefined);
      if (v % 7 === 0) await new Promise((next) => setTimeout(next, 15));
    }
    const last = await editor.findings(uri, 60);
    expect(last.find((d) => d.code === "form/unknown-word")!.message).toContain("x".repeat(59));
    for (const p of editor.pushed.filter((p) => p.uri === uri))
      expect(p.diagnostics.map((d) => d.code)).toContain("height/rise");
    const versions = editor.pushed.filter((p) => p.uri === uri).map((p) => p.version!);
    expect(versions).toEqual([...versions].sort((a, b) => a - b));
    expect(versions.length).toBeLessThan(40);
  });

  test("a rule file shows what is wrong with it, and what its words mean", async () => {
    await editor.initialize();
    const uri = "untitled:height.spanrules";
    const text =
      'limit climb 2 in { title "T"; common-practice "x"; covers "y"; not-covered "z" }\nlimt fall 3 in { }\n';
    await editor.open(uri, text, "spanrules");
    const found = await editor.findings(uri, 1);
    expect(found.some((d) => d.range.start.line === 1)).toBe(true);
    const hover = await editor.ask<Hover>("hover", uri, { position: { line: 0, character: 8 } });
    expect((hover.contents as { value: string }).value).toMatch(/\*\*climb\*\* — limit, 2 in/);
    for (const bad of ["", "{", "rule x {", "\u0000", "rule a/b {\n judge (((\n}"]) {
      await editor.change(uri, 2, [{ text: bad }]);
      await editor.ask("hover", uri, { position: { line: 0, character: 6 } });
    }
    await alive();
  });

  test("an editor that goes away takes the server with it", async () => {
    await editor.initialize();
    editor.connection.end();
    expect(await editor.ended).toBe(1);
  });
});
