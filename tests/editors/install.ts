/** Brings what the editor tests need onto this machine: a VS Code that serves itself to a browser, the browser, and Neovim. */
import { spawn } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import path from "node:path";

export const ROOT = path.resolve(import.meta.dirname, "../..");
export const CACHE = path.join(ROOT, ".cache/editors");

const CODE_SERVER = "4.100.3";
const HOME = path.join(CACHE, `code-server-${CODE_SERVER}`);
const READY = path.join(HOME, "ready");
const VSCODE = path.join(HOME, "node_modules/code-server/lib/vscode");

export const CODE_SERVER_ENTRY = path.join(HOME, "node_modules/code-server/out/node/entry.js");
export const CHROMIUM = "/usr/bin/chromium";
export const NEOVIM = "/usr/bin/nvim";

const INSTALL_WITHIN_MS = 300_000;

/** Runs a program to its end; its output is kept and shown only if it fails or takes too long. */
export function run(
  command: string,
  args: string[],
  options: { cwd: string; within: number; env?: Readonly<Record<string, string>> },
): Promise<string> {
  return new Promise((resolve, reject) => {
    const child = spawn(command, args, {
      cwd: options.cwd,
      stdio: ["ignore", "pipe", "pipe"],
      env: { ...process.env, DEBIAN_FRONTEND: "noninteractive", ...options.env },
    });
    let said = "";
    const keep = (chunk: Buffer) => (said += chunk.toString());
    child.stdout.on("data", keep);
    child.stderr.on("data", keep);
    const called = [path.basename(command), ...args].join(" ");
    const fail = (why: string) => reject(new Error(`${called} ${why}\n${said.slice(-4_000)}`));
    const timer = setTimeout(() => {
      child.kill("SIGKILL");
      fail(`did not end within ${options.within / 1_000} s`);
    }, options.within);
    child.on("error", (error) => {
      clearTimeout(timer);
      fail(`could not be started: ${error.message}`);
    });
    child.on("close", (code) => {
      clearTimeout(timer);
      if (code === 0) resolve(said);
      else fail(`ended with ${code}`);
    });
  });
}

/** The usual install step of this package fetches a binary from elsewhere; these steps need the package registry alone. */
async function installCodeServer(): Promise<void> {
  if (existsSync(READY) && existsSync(CODE_SERVER_ENTRY)) return;
  rmSync(HOME, { recursive: true, force: true });
  mkdirSync(HOME, { recursive: true });
  writeFileSync(path.join(HOME, "package.json"), '{ "private": true }\n');
  const npm = (cwd: string, ...args: string[]) => run("npm", args, { cwd, within: INSTALL_WITHIN_MS });
  await npm(HOME, "install", `code-server@${CODE_SERVER}`, "--ignore-scripts");
  await npm(VSCODE, "install", "--omit=dev", "--ignore-scripts");
  symlinkSync("node_modules", path.join(VSCODE, "node_modules.asar"));
  await npm(VSCODE, "rebuild", "@vscode/spdlog", "native-watchdog", "@parcel/watcher");
  await npm(HOME, "rebuild", "argon2");
  writeFileSync(READY, `${CODE_SERVER}\n`);
}

async function installFromDebian(): Promise<void> {
  const missing = [
    ...(existsSync(CHROMIUM) ? [] : ["chromium", "fonts-dejavu-core"]),
    ...(existsSync(NEOVIM) ? [] : ["neovim"]),
  ];
  if (missing.length === 0) return;
  if (process.getuid?.() !== 0) {
    throw new Error(
      `The editor tests drive ${CHROMIUM} and ${NEOVIM}. Install the packages: ${missing.join(", ")}`,
    );
  }
  const apt = (...args: string[]) => run("apt-get", args, { cwd: ROOT, within: INSTALL_WITHIN_MS });
  await apt("update");
  await apt("install", "--yes", "--no-install-recommends", ...missing);
}

/** The extension as a user would install it. */
export function packedExtension(): string {
  const { version } = JSON.parse(readFileSync(path.join(ROOT, "package.json"), "utf8")) as {
    version: string;
  };
  return path.join(ROOT, `dist/spanwise-${version}.vsix`);
}

/** Run once before the editor tests. */
export default async function install(): Promise<void> {
  const installed = Promise.all([installCodeServer(), installFromDebian()]);
  await run(process.execPath, ["esbuild.config.mjs"], { cwd: ROOT, within: 120_000 });
  await installed;
}
