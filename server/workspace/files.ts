/** Plans on disk: finding them, and reading them as text or saying why they are none. */
import { isUtf8 } from "node:buffer";
import { closeSync, existsSync, fstatSync, openSync, readFileSync, realpathSync, statSync } from "node:fs";
import path from "node:path";
import { globSync } from "tinyglobby";

/** A long plan has some ten kilobytes; what is larger than this is something else, or noise. In bytes. */
export const largestPlan = 512 * 1024;

/** Folders that hold no plans of the people who work here. */
const skipped = ["**/node_modules/**", "**/.git/**"];

export type FileFault =
  | { readonly problem: "not-found" }
  | { readonly problem: "unreadable"; readonly why: string }
  | { readonly problem: "not-text"; readonly what: string }
  | { readonly problem: "too-large"; readonly size: string };

export type FileText = { readonly text: string } | FileFault;

export const isFault = (f: FileText): f is FileFault => "problem" in f;

/** Why a file cannot be read, in words, by the system's code for it. */
function whyNot(error: unknown): string {
  const code = (error as { code?: string }).code;
  if (code === "EACCES" || code === "EPERM") return "this account may not read it";
  if (code === "EISDIR") return "it is a folder";
  if (code === "ELOOP") return "its links lead in a circle";
  if (code === "ENAMETOOLONG") return "its name is too long";
  return "the system did not give it";
}

const isMissing = (error: unknown): boolean =>
  ["ENOENT", "ENOTDIR"].includes((error as { code?: string }).code ?? "");

/** In words: `2.4 MB`. */
export const sizeInWords = (bytes: number): string => `${(bytes / (1024 * 1024)).toFixed(1)} MB`;

/** Whether a text is a plain one of a size that a plan can have. A byte order mark at its start is taken off. */
export function asPlan(text: string): FileText {
  // A text in memory is measured in code units: close enough to tell a plan from noise.
  if (text.length > largestPlan) return { problem: "too-large", size: sizeInWords(text.length) };
  if (text.includes("\0")) return { problem: "not-text", what: "null bytes" };
  return { text: text.startsWith("\uFEFF") ? text.slice(1) : text };
}

/** Reads one file. Never throws, never waits: what is not a plain file (a pipe, a device) is not opened. */
export function readPlan(file: string): FileText {
  let handle: number | undefined;
  try {
    if (!statSync(file).isFile()) return { problem: "unreadable", why: "it is not a file" };
    handle = openSync(file, "r");
    const { size } = fstatSync(handle);
    if (size > largestPlan) return { problem: "too-large", size: sizeInWords(size) };
    const bytes = readFileSync(handle);
    if (bytes.includes(0)) return { problem: "not-text", what: "null bytes" };
    if (!isUtf8(bytes)) return { problem: "not-text", what: "bytes that are not UTF-8" };
    return asPlan(bytes.toString("utf8"));
  } catch (error) {
    return isMissing(error) ? { problem: "not-found" } : { problem: "unreadable", why: whyNot(error) };
  } finally {
    if (handle !== undefined) closeSync(handle);
  }
}

/** Changes whenever the file's content may have changed; undefined where there is no file. */
export function stampOf(file: string): string | undefined {
  try {
    const s = statSync(file, { bigint: true });
    return `${s.mtimeNs} ${s.size} ${s.ino}`;
  } catch {
    return undefined;
  }
}

/** Whether `file` lies in the folder `root` or is it, by their names. Both absolute. */
export function isWithin(file: string, root: string): boolean {
  const way = path.relative(root, file);
  return way === "" || (way !== ".." && !way.startsWith(`..${path.sep}`) && !path.isAbsolute(way));
}

/** Whether a file that exists lies in `root` once links are followed. */
export function isReallyWithin(file: string, root: string): boolean {
  try {
    return isWithin(realpathSync(file), realpathSync(root));
  } catch {
    return false;
  }
}

/** The folder of a repository that holds `folder`, if one does. */
export function repositoryOf(folder: string): string | undefined {
  for (let at = folder; ; at = path.dirname(at)) {
    if (existsSync(path.join(at, ".git"))) return at;
    if (path.dirname(at) === at) return undefined;
  }
}

/** Every file with one of these endings in a folder, in the order of their paths. Links to folders are not followed. */
export function filesIn(folder: string, endings: readonly string[] = ["span"]): string[] {
  const patterns = endings.map((e) => `**/*.${e}`);
  return globSync(patterns, {
    cwd: folder,
    absolute: true,
    ignore: skipped,
    followSymbolicLinks: false,
    dot: false,
  })
    .map((f) => path.normalize(f))
    .sort(byText);
}

export const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

export interface Found {
  /** Absolute, each once, in order. */
  readonly files: readonly string[];
  /** Paths that are neither a file nor a folder, as they were given. */
  readonly missing: readonly string[];
}

/** The plans that paths name: files as they are, folders with every plan in them. */
export function findPlans(paths: readonly string[], cwd: string): Found {
  const files = new Set<string>();
  const missing: string[] = [];
  for (const given of paths) {
    const at = path.resolve(cwd, given);
    let kind: "folder" | "other" | "none";
    try {
      kind = statSync(at).isDirectory() ? "folder" : "other";
    } catch (error) {
      kind = isMissing(error) ? "none" : "other";
    }
    if (kind === "none") missing.push(given);
    else if (kind === "folder") for (const f of filesIn(at)) files.add(f);
    else files.add(at);
  }
  return { files: [...files].sort(byText), missing };
}
