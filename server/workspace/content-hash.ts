/** The content of a rule set, in one short text that can stand in every report. */
import { createHash } from "node:crypto";
import path from "node:path";
import type { RuleFile } from "../../rules/engine/types.js";
import { byText } from "./files.js";

/** SHA-256 over the names and texts of its files, in hex. Line ends of any kind count as one; where the folder lies does not count. */
export function contentHash(files: readonly RuleFile[]): string {
  const hash = createHash("sha256");
  const named = files.map((f) => ({
    name: path.posix.basename(f.path),
    text: f.text.replaceAll(/\r\n?/g, "\n"),
  }));
  for (const f of named.sort((a, b) => byText(a.name, b.name))) hash.update(`${f.name}\0${f.text}\0`);
  return hash.digest("hex");
}
