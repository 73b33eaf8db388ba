/**
 * The lock of released rule sets: a file that holds the content hash of each. A released version never changes; a correction is a
 * new version beside the old one.
 */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { contentHash } from "./content-hash.js";
import { byText } from "./files.js";

/** In the folder of plans, or of the program's source. */
export const lockFile = "rules/released.lock.json";

export type Hashes = ReadonlyMap<string, string>;

/** The lock of a folder; nothing is released where there is no such file. */
export function readLock(root: string): { readonly released: Hashes } | { readonly problem: string } {
  let text: string;
  try {
    text = readFileSync(path.join(root, lockFile), "utf8");
  } catch (error) {
    return (error as { code?: string }).code === "ENOENT"
      ? { released: new Map() }
      : { problem: "the system did not give it" };
  }
  try {
    const { format, released } = JSON.parse(text) as { format?: unknown; released?: unknown };
    if (format !== 1 || typeof released !== "object" || released === null)
      return { problem: "it is no lock of this form" };
    return { released: new Map(Object.entries(released).map(([k, v]) => [k, String(v)])) };
  } catch {
    return { problem: "it is no JSON" };
  }
}

export function writeLock(root: string, released: Hashes): void {
  const sorted = Object.fromEntries([...released].sort(([a], [b]) => byText(a, b)));
  mkdirSync(path.join(root, "rules"), { recursive: true });
  writeFileSync(
    path.join(root, lockFile),
    `${JSON.stringify({ format: 1, released: sorted }, undefined, 2)}\n`,
  );
}

/** The content of every rule set of a folder, by `name/version`. */
export function rulesIn(root: string): Hashes {
  const folders = (at: string): string[] => {
    try {
      return readdirSync(at, { withFileTypes: true })
        .filter((e) => e.isDirectory())
        .map((e) => e.name)
        .sort(byText);
    } catch {
      return [];
    }
  };
  const found = new Map<string, string>();
  const rules = path.join(root, "rules");
  for (const name of folders(rules))
    for (const version of folders(path.join(rules, name))) {
      const folder = path.join(rules, name, version);
      const files = readdirSync(folder).filter((f) => f.endsWith(".spanrules"));
      if (files.length === 0) continue;
      const texts = files.map((f) => ({ path: f, text: readFileSync(path.join(folder, f), "utf8") }));
      found.set(`${name}/${version}`, contentHash(texts));
    }
  return found;
}

export interface LockLine {
  readonly name: string;
  /** `changed`: its content is not the one that was released. `gone`: it was released and is not there. `open`: not released yet. */
  readonly is: "released" | "changed" | "gone" | "open";
  /** The content that is there now; of one that is gone, the released one. */
  readonly hash: string;
}

export function compareLock(released: Hashes, now: Hashes): readonly LockLine[] {
  return [...new Set([...released.keys(), ...now.keys()])].sort(byText).map((name): LockLine => {
    const [locked, there] = [released.get(name), now.get(name)];
    if (there === undefined) return { name, is: "gone", hash: locked! };
    const is = locked === undefined ? "open" : locked === there ? "released" : "changed";
    return { name, is, hash: there };
  });
}
