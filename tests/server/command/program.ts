/** The real program, bundled once for a run of tests, and called as a person calls it. */
import { spawn, spawnSync } from "node:child_process";
import { mkdirSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { build } from "esbuild";
import { ruleSetsForBuild } from "../../../rule-sets.plugin.mjs";

export const root = path.resolve(import.meta.dirname, "../../..");
const folder = path.join(tmpdir(), `spanwise-program-${process.pid}`);
let bundled: Promise<string> | undefined;

/** Bundles `server/command/main.ts` and gives the file. */
export function bundle(): Promise<string> {
  return (bundled ??= (async () => {
    mkdirSync(folder, { recursive: true });
    const outfile = path.join(folder, "spanwise.mjs");
    await build({
      absWorkingDir: root,
      bundle: true,
      platform: "node",
      target: "node20",
      mainFields: ["module", "main"],
      format: "esm",
      banner: {
        js: 'import { createRequire as requireFrom } from "node:module"; const require = requireFrom(import.meta.url);',
      },
      plugins: [ruleSetsForBuild],
      entryPoints: ["server/command/main.ts"],
      outfile,
      logLevel: "error",
    });
    return outfile;
  })());
}

export interface Ended {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs the program; one that hangs is ended after 15 seconds and has no exit code. */
export async function run(args: readonly string[], cwd: string = root): Promise<Ended> {
  const program = await bundle();
  const done = spawnSync(process.execPath, [program, ...args], {
    cwd,
    encoding: "utf8",
    timeout: 15_000,
    maxBuffer: 64 * 1024 * 1024,
    input: "",
    env: { ...process.env, FORCE_COLOR: undefined, NO_COLOR: undefined },
  });
  return { code: done.status, out: done.stdout, err: done.stderr };
}

/** Runs the program and stops reading after its first bytes, as `head` does. */
export async function runAndStopReading(args: readonly string[], cwd: string = root): Promise<Ended> {
  const program = await bundle();
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [program, ...args], { cwd, stdio: ["ignore", "pipe", "pipe"] });
    let err = "";
    child.stderr.on("data", (d: Buffer) => (err += d.toString()));
    child.stdout.once("data", () => child.stdout.destroy());
    child.on("close", (code) => resolve({ code, out: "", err }));
  });
}
