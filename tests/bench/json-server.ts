/** The yardstick through stdio: a language server that only validates JSON against the schema. */
import { getLanguageService } from "vscode-json-languageservice";
import {
  createConnection,
  ProposedFeatures,
  StreamMessageReader,
  StreamMessageWriter,
  TextDocuments,
  TextDocumentSyncKind,
} from "vscode-languageserver/node";
import { TextDocument } from "vscode-languageserver-textdocument";
import { schemaOf } from "./household.js";

export function serveJson(): void {
  const connection = createConnection(
    ProposedFeatures.all,
    new StreamMessageReader(process.stdin),
    new StreamMessageWriter(process.stdout),
  );
  const documents = new TextDocuments(TextDocument);
  const service = getLanguageService({});
  service.configure({
    validate: true,
    schemas: [{ uri: "spanwise://model", fileMatch: ["*"], schema: schemaOf() }],
  });
  connection.onInitialize(() => ({ capabilities: { textDocumentSync: TextDocumentSyncKind.Incremental } }));
  documents.onDidChangeContent(async ({ document }) => {
    const diagnostics = await service.doValidation(document, service.parseJSONDocument(document));
    void connection.sendDiagnostics({ uri: document.uri, version: document.version, diagnostics });
  });
  documents.listen(connection);
  connection.listen();
}
