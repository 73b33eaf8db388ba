/** The real program, bundled once for a run of tests, and called as a person calls it. */
import { spawn, spawnSync } from "node:child_process";
import { mkdirSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { build } from "esbuild";
import { vi } from "vitest";
import { ruleSetsForBuild } from "../../../rule-sets.plugin.mjs";

export const root = path.resolve(import.meta.dirname, "../../..");
const folder = path.join(tmpdir(), `spanwise-program-${process.pid}`);
/** How long one run may take, in milliseconds: so long that only a run that hangs is ended, however loaded the machine is. */
const runLimit = 60_000;
/** More runs than any one test makes. */
const mostRuns = 12;
// A test may take as long as its runs may, so that a run that hangs is what fails, with its own words.
vi.setConfig({ testTimeout: mostRuns * runLimit, hookTimeout: runLimit });

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

const ofRun = (args: readonly string[]): string => `spanwise ${args.join(" ")}`;
const hung = (args: readonly string[], err: string): Error =>
  new Error(
    `${ofRun(args)} did not end within ${runLimit / 1000} s and was ended. It had said: ${err || "nothing"}`,
  );

/** Runs the program. Throws where it cannot be started, and where it hangs. */
export async function run(
  args: readonly string[],
  cwd: string = root,
  input: string | Uint8Array = "",
): Promise<Ended> {
  const program = await bundle();
  const done = spawnSync(process.execPath, [program, ...args], {
    cwd,
    encoding: "utf8",
    timeout: runLimit,
    maxBuffer: 64 * 1024 * 1024,
    input,
    env: { ...process.env, FORCE_COLOR: undefined, NO_COLOR: undefined },
  });
  const failed = done.error as NodeJS.ErrnoException | undefined;
  if (failed?.code === "ETIMEDOUT") throw hung(args, done.stderr);
  // A program that needed none of its input may have ended before it was given.
  if (failed && failed.code !== "EPIPE") throw new Error(`${ofRun(args)}: ${failed.message}`);
  return { code: done.status, out: done.stdout, err: done.stderr };
}

/** Runs the program and stops reading after its first bytes, as `head` does. */
export async function runAndStopReading(args: readonly string[], cwd: string = root): Promise<Ended> {
  const program = await bundle();
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [program, ...args], { cwd, stdio: ["ignore", "pipe", "pipe"] });
    let err = "";
    const limit = setTimeout(() => {
      child.kill();
      reject(hung(args, err));
    }, runLimit);
    child.stderr.on("data", (d: Buffer) => (err += d.toString()));
    child.stdout.once("data", () => child.stdout.destroy());
    child.on("close", (code) => {
      clearTimeout(limit);
      resolve({ code, out: "", err });
    });
  });
}
