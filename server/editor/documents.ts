/** Addresses of documents and paths of files: the workspace knows paths, an editor knows addresses. */
import path from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

/** Where documents without a file are kept: a folder that cannot be one, so that nothing beside them is found. */
const nowhere = path.resolve(path.sep, "\u0000unsaved");

export class Addresses {
  /** The address as the editor spells it, by path, so that findings go back to the document they came from. */
  private readonly uris = new Map<string, string>();
  /** Of files that are not open; every finding asks for those it rests on. */
  private readonly made = new Map<string, string>();

  /** The path of a document; one that is no file gets a path of its own that no file can have. */
  pathOf(uri: string, languageId?: string): string {
    const file = filePath(uri);
    if (file !== undefined) return file;
    const ending = languageId === "spanrules" || uri.endsWith(".spanrules") ? "spanrules" : "span";
    return path.join(nowhere, `${encodeURIComponent(uri)}.${ending}`);
  }
  open(file: string, uri: string): void {
    this.uris.set(file, uri);
  }
  close(file: string): void {
    this.uris.delete(file);
  }
  uriOf(file: string): string {
    const open = this.uris.get(file);
    if (open !== undefined) return open;
    let address = this.made.get(file);
    if (address === undefined) this.made.set(file, (address = pathToFileURL(file).href));
    return address;
  }
}

/** The path behind a `file:` address; undefined for any other, or one that cannot be a path here. */
export function filePath(uri: string): string | undefined {
  if (!uri.startsWith("file:")) return undefined;
  try {
    return path.normalize(fileURLToPath(uri));
  } catch {
    return undefined;
  }
}
