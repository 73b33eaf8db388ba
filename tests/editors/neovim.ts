/** Neovim, headless, with nothing but its own protocol client and `spanwise serve --stdio`. */
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { NEOVIM, ROOT, run } from "./install.js";

export interface Seen {
  readonly findings: readonly { line: number; message: string; severity: number; code?: string }[];
  readonly hover: { kind?: string; value?: string } | string | null;
  readonly capabilities: readonly string[];
  /** The server ended when it was asked to. */
  readonly stopped: boolean;
}

/** Opens a file, waits for the findings, asks for the hover at a place (line and character from 0) and ends. */
export async function lookInNeovim(file: string, at: { line: number; character: number }): Promise<Seen> {
  const base = mkdtempSync(path.join(tmpdir(), "spanwise-neovim-"));
  const out = path.join(base, "seen.json");
  try {
    await run(NEOVIM, ["--headless", "-u", path.join(ROOT, "tests/editors/neovim.lua")], {
      cwd: base,
      within: 60_000,
      env: {
        SPANWISE_FILE: file,
        SPANWISE_OUT: out,
        SPANWISE_NODE: process.execPath,
        SPANWISE_COMMAND: path.join(ROOT, "dist/spanwise.mjs"),
        SPANWISE_LINE: String(at.line),
        SPANWISE_CHARACTER: String(at.character),
        XDG_STATE_HOME: base,
        XDG_CACHE_HOME: base,
      },
    });
    return JSON.parse(readFileSync(out, "utf8")) as Seen;
  } finally {
    rmSync(base, { recursive: true, force: true });
  }
}
