/**
 * The language server: wires the features to a connection. Everything it knows comes from the workspace; it computes nothing.
 *
 * Findings are pushed a moment after the last change, for the changed document and for every open one that rests on it. A
 * list is only ever replaced by a whole newer one, so neither a cancelled nor a late check can empty it.
 */
import {
  CodeActionKind,
  DidChangeWatchedFilesNotification,
  DocumentHighlightRequest,
  PositionEncodingKind,
  ResponseError,
  LSPErrorCodes,
  TextDocuments,
  TextDocumentSyncKind,
  type CancellationToken,
  type Connection,
  type InitializeParams,
  type InitializeResult,
} from "vscode-languageserver";
import { TextDocument } from "vscode-languageserver-textdocument";
import { ruleShape } from "../../rules/engine/read.js";
import { SlowWork } from "../workspace/slow.js";
import { Workspace, type Snapshot } from "../workspace/snapshot.js";
import { completion } from "./completion.js";
import { definition, highlights, references } from "./definition.js";
import { diagnostics } from "./diagnostics.js";
import { Addresses, filePath } from "./documents.js";
import { fixes } from "./fixes.js";
import { formatting, formattingIn } from "./formatting.js";
import { hover } from "./hover.js";
import { folding, outline } from "./outline.js";
import { pageOf, type Page } from "./page.js";
import { closeRulePage, ruleDiagnostics, ruleHover, rulePageOf, type RulePage } from "./rule-files.js";

declare const SPANWISE_VERSION: string | undefined;
const version = typeof SPANWISE_VERSION === "string" ? SPANWISE_VERSION : "0.0.0";

/** A round of findings that takes longer than this, in ms, is not begun anew with every letter. */
const quick = 15;
/** The longest that findings wait for typing to pause, in ms. */
const longestPause = 60;
/** How long nobody types before what is slow is worked out, in ms. */
const restBeforeSlow = 400;

export interface ServerOptions {
  readonly workspace?: Workspace;
  /** The bundled program, for a thread of its own; without it what is slow is worked out between two rounds. */
  readonly entry?: URL;
  /** For each fault inside the program; a fault ends one answer, never the server. */
  readonly onFault?: (error: unknown) => void;
}

/** Starts to answer on a connection; the caller then calls `connection.listen()`, or this is given one that listens already. */
export function createServer(connection: Connection, options: ServerOptions = {}): void {
  const workspace = options.workspace ?? new Workspace({ haste: true });
  const server = new Server(
    connection,
    workspace,
    options.onFault ?? ((e) => connection.console.error(inWords(e))),
    options.entry,
  );
  server.wire();
}

const inWords = (e: unknown): string => (e instanceof Error ? (e.stack ?? e.message) : String(e));
const isRuleFile = (file: string): boolean => file.endsWith(".spanrules");

class Server {
  private readonly documents = new TextDocuments(TextDocument);
  private readonly addresses = new Addresses();
  private readonly slow: SlowWork;
  /** What was last pushed, by address: the same result of the same version is not pushed twice. */
  private readonly pushed = new Map<string, { readonly of: Snapshot | string; readonly version: number }>();
  private timer: ReturnType<typeof setTimeout> | undefined;
  /** How long the last whole round took, in ms. */
  private took = 0;
  private round = 0;
  private folders: string[] = [];
  private can = { snippets: false, disabledActions: false, watch: false, folders: false };

  constructor(
    private readonly connection: Connection,
    private readonly workspace: Workspace,
    private readonly fault: (error: unknown) => void,
    entry: URL | undefined,
  ) {
    this.slow = new SlowWork(entry);
  }

  wire(): void {
    const { connection, documents } = this;
    connection.onInitialize((p) => this.initialize(p));
    connection.onInitialized(() => this.initialized());
    documents.onDidOpen(({ document }) => this.addresses.open(this.pathOf(document), document.uri));
    documents.onDidChangeContent(({ document }) => {
      this.workspace.edit(this.pathOf(document), document.getText());
      this.soon();
    });
    documents.onDidClose(({ document }) => this.close(document));
    documents.listen(connection);
    connection.onDidChangeWatchedFiles(({ changes }) => {
      for (const { uri } of changes) this.workspace.changed(filePath(uri) ?? uri);
      this.soon();
    });
    connection.onShutdown(() => clearTimeout(this.timer));
    this.wireFeatures();
  }

  private initialize(p: InitializeParams): InitializeResult {
    const text = p.capabilities.textDocument;
    this.can = {
      snippets: text?.completion?.completionItem?.snippetSupport === true,
      disabledActions: text?.codeAction?.disabledSupport === true,
      watch: p.capabilities.workspace?.didChangeWatchedFiles?.dynamicRegistration === true,
      folders: p.capabilities.workspace?.workspaceFolders === true,
    };
    const roots = p.workspaceFolders?.map((f) => f.uri) ?? (p.rootUri ? [p.rootUri] : []);
    this.setFolders(roots);
    return {
      serverInfo: { name: "Spanwise", version },
      capabilities: {
        positionEncoding: PositionEncodingKind.UTF16,
        textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
        hoverProvider: true,
        completionProvider: { triggerCharacters: [" ", '"'] },
        definitionProvider: true,
        referencesProvider: true,
        documentHighlightProvider: true,
        documentSymbolProvider: true,
        foldingRangeProvider: true,
        codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix] },
        documentFormattingProvider: true,
        documentRangeFormattingProvider: true,
        workspace: { workspaceFolders: { supported: true, changeNotifications: true } },
        experimental: {
          ruleSets: this.workspace.ruleSets
            .list(this.folders[0])
            .map(({ name, version }) => ({ name, version })),
        },
      },
    };
  }

  private initialized(): void {
    const { connection } = this;
    if (this.can.watch)
      connection.client
        .register(DidChangeWatchedFilesNotification.type, {
          watchers: [{ globPattern: "**/*.{span,spanrules}" }],
        })
        .catch(this.fault);
    if (this.can.folders)
      connection.workspace.onDidChangeWorkspaceFolders(({ added, removed }) => {
        const gone = new Set(removed.map((f) => filePath(f.uri)));
        const now = this.folders.filter((f) => !gone.has(f));
        this.folders = [...now, ...added.flatMap((f) => filePath(f.uri) ?? [])];
        this.workspace.setRoots(this.folders);
        this.soon();
      });
  }

  private setFolders(uris: readonly string[]): void {
    this.folders = uris.flatMap((u) => filePath(u) ?? []);
    this.workspace.setRoots(this.folders);
  }

  private pathOf(document: TextDocument): string {
    return this.addresses.pathOf(document.uri, document.languageId);
  }

  private close(document: TextDocument): void {
    const file = this.pathOf(document);
    this.workspace.close(file);
    this.addresses.close(file);
    closeRulePage(file);
    this.pushed.delete(document.uri);
    this.send(document.uri, []);
    this.soon();
  }

  /**
   * Pushes findings once what has come in is read: at once while a round is quick, else after a pause of about twice what the
   * last round took. A change meanwhile starts the wait anew, so that no round is spent on a text that is already gone.
   */
  private soon(): void {
    clearTimeout(this.timer);
    this.slow.stop();
    const round = ++this.round;
    const push = (): void => void this.push(round).catch(this.fault);
    // A timer waits a thousandth of a second at least, which is longer than a quick round takes.
    if (this.took < quick) setImmediate(push);
    else this.timer = setTimeout(push, Math.min(longestPause, 2 * this.took));
  }

  private async push(round: number): Promise<void> {
    if (round !== this.round) return;
    const start = performance.now();
    await this.pushAll(round);
    if (round !== this.round) return;
    this.took = performance.now() - start;
    this.timer = setTimeout(() => void this.settle(round).catch(this.fault), restBeforeSlow);
  }

  /** Works out what takes longer than a keystroke, once nobody has typed for a while; the next change comes before it. */
  private async settle(round: number): Promise<void> {
    for (const document of this.documents.all()) {
      if (round !== this.round) return;
      const file = this.pathOf(document);
      if (isRuleFile(file)) continue;
      const quick = this.workspace.snapshot(file);
      if (quick.result?.complete === false) {
        const texts = this.documents.all().map((d) => [this.pathOf(d), d.getText()] as const);
        const job = { roots: this.folders, today: quick.today, texts, file };
        if (!(await this.slow.start(job)) || round !== this.round) return;
      }
      if (this.workspace.settle(file) !== quick) this.pushOne(document);
      await new Promise((next) => setImmediate(next));
    }
  }

  private async pushAll(round: number): Promise<void> {
    for (const document of this.documents.all()) {
      if (round !== this.round) return;
      try {
        this.pushOne(document);
      } catch (error) {
        this.fault(error);
      }
      // Between two documents, whatever came in meanwhile is taken first.
      await new Promise((next) => setImmediate(next));
    }
  }

  private pushOne(document: TextDocument): void {
    const { uri, version } = document;
    const before = this.pushed.get(uri);
    if (isRuleFile(this.pathOf(document))) {
      const found = ruleDiagnostics(this.rulePage(document));
      const of = JSON.stringify(found);
      if (before?.of === of && before.version === version) return;
      this.pushed.set(uri, { of, version });
      this.send(uri, found, version);
      return;
    }
    const of = this.workspace.snapshot(this.pathOf(document));
    if (before?.of === of && before.version === version) return;
    const found = diagnostics(this.page(document), (f) => this.addresses.uriOf(f));
    this.pushed.set(uri, { of, version });
    this.send(uri, found, version);
  }

  private send(uri: string, found: ReturnType<typeof diagnostics>, version?: number): void {
    this.connection
      .sendDiagnostics({ uri, diagnostics: found, ...(version !== undefined && { version }) })
      .catch(this.fault);
  }

  private page(document: TextDocument): Page {
    return pageOf(this.workspace, this.pathOf(document));
  }
  private rulePage(document: TextDocument): RulePage {
    return rulePageOf(this.workspace, this.pathOf(document), document.getText());
  }

  /** An answer about one document; nothing where it is not open, or where a fault kept it from being made. */
  private about<P extends { readonly textDocument: { readonly uri: string } }, R>(
    answer: { readonly plan: (page: Page, p: P) => R; readonly rules?: (page: RulePage, p: P) => R },
    none: R,
  ): (p: P, token: CancellationToken) => R | ResponseError<void> {
    return (p, token) => {
      if (token.isCancellationRequested)
        return new ResponseError<void>(LSPErrorCodes.RequestCancelled, "No longer wanted.");
      const document = this.documents.get(p.textDocument.uri);
      if (!document) return none;
      try {
        if (!isRuleFile(this.pathOf(document))) return answer.plan(this.page(document), p);
        return answer.rules ? answer.rules(this.rulePage(document), p) : none;
      } catch (error) {
        this.fault(error);
        return none;
      }
    };
  }

  /** Every feature, once. */
  private wireFeatures(): void {
    const { connection } = this;
    const uriOf = (file: string): string => this.addresses.uriOf(file);
    connection.onHover(
      this.about(
        {
          plan: (page, p) => hover(page, p.position) ?? null,
          rules: (page, p) => ruleHover(page, p.position) ?? null,
        },
        null,
      ),
    );
    connection.onCompletion(
      this.about({ plan: (page, p) => completion(page, p.position, { snippets: this.can.snippets }) }, []),
    );
    connection.onDefinition(
      this.about({ plan: (page, p) => definition(page, p.position, uriOf) ?? null }, null),
    );
    connection.onReferences(
      this.about(
        { plan: (page, p) => references(page, p.position, uriOf, p.context.includeDeclaration) },
        [],
      ),
    );
    connection.onRequest(
      DocumentHighlightRequest.type,
      this.about({ plan: (page, p) => highlights(page, p.position) }, []),
    );
    connection.onDocumentSymbol(
      this.about({ plan: (page) => outline(page.tree), rules: (page) => outline(page.tree) }, []),
    );
    connection.onFoldingRanges(
      this.about({ plan: (page) => folding(page.tree), rules: (page) => folding(page.tree) }, []),
    );
    connection.onCodeAction(
      this.about(
        {
          plan: (page, p) =>
            wanted(p.context.only) ? fixes(page, p.range, uriOf, { disabled: this.can.disabledActions }) : [],
        },
        [],
      ),
    );
    connection.onDocumentFormatting(
      this.about(
        { plan: (page) => formatting(page.text), rules: (page) => formatting(page.text, ruleShape.topOnly) },
        [],
      ),
    );
    connection.onDocumentRangeFormatting(
      this.about(
        {
          plan: (page, p) => formattingIn(page.text, p.range),
          rules: (page, p) => formattingIn(page.text, p.range, ruleShape.topOnly),
        },
        [],
      ),
    );
  }
}

/** Whether quick fixes are among the kinds that are asked for. */
const wanted = (only: readonly string[] | undefined): boolean =>
  only === undefined ||
  only.some((k) => CodeActionKind.QuickFix === k || k === "" || CodeActionKind.QuickFix.startsWith(`${k}.`));
