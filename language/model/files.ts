/** Files that use each other: which things `from "file" use a, b` takes, and whether the way leads back in a circle. */
import type { Tree } from "../text/types.js";
import { readEntry } from "./entry.js";
import type { Value } from "./types.js";

/** What the surroundings must be able to do: find the text that `from "..."` names. */
export interface Library {
  /** Opens `path` as written in the file `from`. The path that comes back names the file in findings. */
  open(
    path: string,
    from: string,
  ):
    | { readonly path: string; readonly tree: Tree }
    | { readonly problem: "not-found" | "outside" | "unreadable"; readonly why?: string };
}

export const emptyLibrary: Library = { open: () => ({ problem: "not-found" }) };

/** What `from "file" use a, b` says; undefined where a part of it could not be read. */
export function useOf(value: Value): { readonly path: string; readonly use: readonly string[] } | undefined {
  const { path, use } = value as { readonly path?: Value; readonly use?: Value };
  if (typeof path !== "string" || !Array.isArray(use)) return undefined;
  return { path, use: use.map((name) => String(name).toLowerCase()) };
}

/** Whether following `from` from that file leads back to `home`. Each file is visited once. */
export function leadsBack(
  home: string,
  start: { readonly path: string; readonly tree: Tree },
  library: Library,
): boolean {
  const seen = new Set<string>();
  const next = [start];
  while (next.length > 0) {
    const file = next.pop()!;
    if (file.path === home) return true;
    if (seen.has(file.path)) continue;
    seen.add(file.path);
    for (const { entry } of file.tree.entries) {
      const said = readEntry(entry).statement;
      const used = said?.key === "from" ? useOf(said.value) : undefined;
      if (!used) continue;
      const opened = library.open(used.path, file.path);
      if ("tree" in opened) next.push(opened);
    }
  }
  return false;
}
