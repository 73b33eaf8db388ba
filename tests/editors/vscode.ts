/** A real VS Code in a headless browser, with the packed extension, on a folder. */
import { spawn, type ChildProcess } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import path from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { chromium, type Browser, type Page } from "playwright-core";
import { CACHE, CHROMIUM, CODE_SERVER_ENTRY, packedExtension, run } from "./install.js";

const SETTINGS = {
  "editor.hover.delay": 100,
  "editor.minimap.enabled": false,
  "extensions.autoCheckUpdates": false,
  "files.autoSave": "afterDelay",
  "files.autoSaveDelay": 100,
  "git.enabled": false,
  "telemetry.telemetryLevel": "off",
  "window.commandCenter": false,
  "workbench.secondarySideBar.defaultVisibility": "hidden",
  "workbench.startupEditor": "none",
};

const BROWSER = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

const START_WITHIN_MS = 60_000;
const STEP_WITHIN_MS = 30_000;

export interface Editor {
  readonly page: Page;
  /** The folder that is open: a copy, free to change. */
  readonly folder: string;
  /** Opens a file from the explorer, folder by folder, as a person does. */
  open(name: string): Promise<void>;
  /** Puts the cursor at the first place of these words in the open file. */
  cursorAt(name: string, words: string): Promise<void>;
  /** What the hover at the cursor says, nothing where there is none; it stays open until the next key. */
  hover(): Promise<string>;
  /** Applies the offer at the cursor whose title has these words. */
  applyFix(title: string): Promise<void>;
  /** What the language status (the braces at the lower right) says. */
  status(): Promise<string>;
  /** The file as it stands on the disk; the editor saves by itself a moment after each change. */
  saved(name: string): string;
  screenshot(name: string): Promise<void>;
  close(): Promise<void>;
}

async function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.on("error", reject);
    server.listen(0, "127.0.0.1", () => {
      const address = server.address();
      server.close(() =>
        address && typeof address === "object" ? resolve(address.port) : reject(new Error("No port")),
      );
    });
  });
}

async function answers(url: string, child: ChildProcess, said: () => string): Promise<void> {
  const end = Date.now() + START_WITHIN_MS;
  while (Date.now() < end) {
    if (child.exitCode !== null) throw new Error(`VS Code ended at once with ${child.exitCode}:\n${said()}`);
    const response = await fetch(url).catch(() => undefined);
    if (response?.ok) return;
    await pause(200);
  }
  throw new Error(`VS Code did not answer within ${START_WITHIN_MS / 1_000} s:\n${said()}`);
}

/** Ends a process and all that it started. */
async function end(child: ChildProcess): Promise<void> {
  if (child.pid === undefined || child.exitCode !== null) return;
  const gone = new Promise<void>((resolve) => child.once("exit", () => resolve()));
  const kill = (signal: NodeJS.Signals) => {
    try {
      process.kill(-(child.pid as number), signal);
    } catch {
      // It is gone already.
    }
  };
  kill("SIGTERM");
  await Promise.race([gone, pause(3_000)]);
  kill("SIGKILL");
}

/**
 * Opens a copy of a folder.
 *
 * @param from the folder to copy, such as `samples/first-week`
 * @param change what to change in the copy before it is opened, file by file
 */
export async function openEditor(
  from: string,
  change: Readonly<Record<string, (text: string) => string>> = {},
): Promise<Editor> {
  const base = mkdtempSync(path.join(tmpdir(), "spanwise-editor-"));
  const folder = path.join(base, "home");
  const extensions = path.join(base, "extensions");
  const user = path.join(base, "user");
  cpSync(from, folder, { recursive: true });
  for (const [name, edit] of Object.entries(change)) {
    const file = path.join(folder, name);
    const before = readFileSync(file, "utf8");
    const after = edit(before);
    if (after === before) throw new Error(`${name} holds nothing of what this test wanted to change`);
    writeFileSync(file, after);
  }
  mkdirSync(path.join(user, "User"), { recursive: true });
  writeFileSync(path.join(user, "User/settings.json"), JSON.stringify(SETTINGS));
  const config = path.join(base, "config.yaml");
  writeFileSync(config, "auth: none\n");
  const places = ["--config", config, "--extensions-dir", extensions, "--user-data-dir", user];

  let child: ChildProcess | undefined;
  let browser: Browser | undefined;
  const close = async () => {
    await browser?.close().catch(() => undefined);
    if (child) await end(child);
    rmSync(base, { recursive: true, force: true, maxRetries: 5 });
  };

  try {
    const vsix = packedExtension();
    const installed = await run(
      process.execPath,
      [CODE_SERVER_ENTRY, ...places, "--install-extension", vsix],
      {
        cwd: base,
        within: START_WITHIN_MS,
      },
    );
    if (!/successfully installed/.test(installed))
      throw new Error(`The extension was not installed:\n${installed}`);

    const port = await freePort();
    let said = "";
    const server = spawn(
      process.execPath,
      [
        CODE_SERVER_ENTRY,
        ...places,
        "--auth=none",
        `--bind-addr=127.0.0.1:${port}`,
        "--disable-telemetry",
        "--disable-update-check",
        "--disable-workspace-trust",
        folder,
      ],
      // A group of its own, so that all it starts can be ended with it.
      { cwd: base, detached: true, stdio: ["ignore", "pipe", "pipe"] },
    );
    child = server;
    server.stdout.on("data", (chunk: Buffer) => (said += chunk.toString()));
    server.stderr.on("data", (chunk: Buffer) => (said += chunk.toString()));
    await answers(`http://127.0.0.1:${port}/healthz`, server, () => said);

    browser = await chromium.launch({ executablePath: CHROMIUM, args: BROWSER, timeout: START_WITHIN_MS });
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    page.setDefaultTimeout(STEP_WITHIN_MS);
    await page.goto(`http://127.0.0.1:${port}/?folder=${encodeURIComponent(folder)}`);
    await page
      .locator(".explorer-folders-view .monaco-list-row")
      .first()
      .waitFor({ timeout: START_WITHIN_MS });
    return windowOn(page, folder, close);
  } catch (error) {
    await close();
    throw error;
  }
}

function windowOn(page: Page, folder: string, close: () => Promise<void>): Editor {
  const saved = (name: string) => readFileSync(path.join(folder, name), "utf8");
  return {
    page,
    folder,
    saved,
    close,
    async open(name) {
      const row = (label: string) =>
        page.locator(`.explorer-folders-view .monaco-list-row[aria-label^="${label}"]`);
      const folders = name.split("/");
      const file = folders.pop() ?? name;
      for (const inside of folders) await row(inside).first().click();
      await row(file).first().dblclick();
      await page.locator(".tab.active", { hasText: file }).waitFor();
      await page.locator(".monaco-editor .view-line").first().waitFor();
    },
    async cursorAt(name, words) {
      const before = saved(name).split(words, 1)[0];
      if (before === undefined || before === saved(name)) throw new Error(`${name} does not say "${words}"`);
      const lines = before.split("\n");
      await page.locator(".monaco-editor .view-lines").first().click();
      await page.keyboard.press("Control+g");
      const box = page.locator(".quick-input-widget input");
      await box.fill(`:${lines.length}:${(lines.at(-1) ?? "").length + 1}`);
      await page.keyboard.press("Enter");
      await page.locator(".quick-input-widget").waitFor({ state: "hidden" });
    },
    async hover() {
      await page.keyboard.press("Escape");
      await page.keyboard.press("Control+k");
      await page.keyboard.press("Control+i");
      const box = page.locator(".monaco-hover:not(.hidden) .hover-contents");
      await box
        .first()
        .waitFor({ timeout: 3_000 })
        .catch(() => undefined);
      // The finding shows at once, the explanation a moment later.
      await pause(500);
      return (await box.allInnerTexts()).join("\n");
    },
    async applyFix(title) {
      await page.keyboard.press("Escape");
      await page.keyboard.press("Control+.");
      const offers = page.locator(".action-widget .monaco-list-row.action");
      await offers.first().waitFor();
      const titles = await offers.allInnerTexts();
      if (!titles.some((offer) => offer.includes(title))) {
        throw new Error(`"${title}" is not among what is offered: ${titles.join(" | ")}`);
      }
      const chosen = page.locator(".action-widget .monaco-list-row.action.focused", { hasText: title });
      for (let press = 0; press < titles.length && (await chosen.count()) === 0; press++) {
        await page.keyboard.press("ArrowDown");
      }
      await page.keyboard.press("Enter");
      await page.locator(".action-widget").waitFor({ state: "hidden" });
    },
    async status() {
      await page.locator(".statusbar-item[id='status.languageStatus']").hover();
      const box = page.locator(".hover-language-status");
      await box.first().waitFor();
      return (await box.allInnerTexts()).join("\n");
    },
    async screenshot(name) {
      mkdirSync(CACHE, { recursive: true });
      await page.screenshot({ path: path.join(CACHE, `${name.replaceAll(/[^a-z0-9]+/gi, "-")}.png`) });
    },
  };
}
