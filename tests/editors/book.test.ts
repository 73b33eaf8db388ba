/** The rule book in a real browser: what it looks like on a screen and on paper. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { chromium, type Browser, type Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { CHROMIUM, ROOT } from "./install.js";

/** What these tests look at in the page; the tests themselves run where there is none. */
interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}
interface Seen {
  readonly id: string;
  readonly tagName: string;
  readonly textContent: string | null;
  readonly viewBox: { readonly baseVal: Box };
  getBoundingClientRect(): { readonly right: number };
  getBBox(): Box;
  closest(selector: string): Seen | null;
  querySelectorAll(selector: string): Iterable<Seen>;
}
declare const document: { querySelectorAll(selector: string): Iterable<Seen> & { readonly length: number } };
declare function getComputedStyle(e: Seen): { readonly color: string; readonly fill: string };

let folder: string;
let browser: Browser;
let page: Page;
const asked: string[] = [];
const said: string[] = [];

beforeAll(async () => {
  const done = spawnSync(process.execPath, [path.join(ROOT, "dist/spanwise.mjs"), "book"], {
    cwd: ROOT,
    encoding: "utf8",
    maxBuffer: 64 * 1024 * 1024,
  });
  expect(done.status, done.stderr).toBe(0);
  folder = mkdtempSync(path.join(tmpdir(), "spanwise-book-"));
  const file = path.join(folder, "book.html");
  writeFileSync(file, done.stdout);
  browser = await chromium.launch({ executablePath: CHROMIUM, args: ["--no-sandbox", "--disable-gpu"] });
  page = await browser.newPage({ viewport: { width: 794, height: 1123 } });
  page.on("request", (r) => asked.push(r.url()));
  page.on("console", (m) => said.push(m.text()));
  await page.goto(pathToFileURL(file).href);
});
afterAll(async () => {
  await browser?.close();
  if (folder) rmSync(folder, { recursive: true, force: true });
});

/** Widths in pixels of 1/96 in: a telephone, and what A4 and Letter leave between margins of 15 mm. */
const widths = [
  ["a telephone", "screen", 390],
  ["A4", "print", 680],
  ["Letter", "print", 702],
  ["a wide screen", "screen", 1600],
] as const;

describe("the rule book", () => {
  it("fetches nothing and has nothing to complain of", () => {
    expect(asked).toHaveLength(1);
    expect(said).toEqual([]);
  });

  it.each(widths)("fits the width of %s", async (_, media, width) => {
    await page.emulateMedia({ media });
    await page.setViewportSize({ width, height: 1123 });
    const wider = await page.evaluate(
      (room) =>
        [...document.querySelectorAll("main *:not(.away):not(.away *):not(figure *)")]
          .filter((e) => e.getBoundingClientRect().right > room + 1)
          .map((e) => `${e.tagName} ${e.textContent?.slice(0, 40)}`),
      width,
    );
    expect(wider).toEqual([]);
  });

  it("draws every strip so that no two texts of it touch and none is cut off", async () => {
    const found = await page.evaluate(() => {
      const faults: string[] = [];
      for (const strip of document.querySelectorAll("svg.strip")) {
        const texts = [...strip.querySelectorAll("text")].map((t) => ({
          said: t.textContent,
          box: t.getBBox(),
        }));
        const { width, height } = strip.viewBox.baseVal;
        texts.forEach(({ said, box: a }, i) => {
          const name = `${strip.closest("section")?.id}: ${said}`;
          if (a.x < 0 || a.y < 0 || a.x + a.width > width || a.y + a.height > height + 2)
            faults.push(`${name} is cut`);
          for (const { said: other, box: b } of texts.slice(i + 1)) {
            const across = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
            const down = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
            // The boxes of lines reach beyond their letters by a little.
            if (across > 0 && down > 4) faults.push(`${name} touches ${other}`);
          }
        });
      }
      return { faults, strips: document.querySelectorAll("svg.strip").length };
    });
    expect(found.faults).toEqual([]);
    expect(found.strips).toBeGreaterThan(50);
  });

  it("writes in ink that can be read: at least 7 to 1 against the paper", async () => {
    const ratios = await page.evaluate(() => {
      const light = (colour: string): number => {
        const [r, g, b] = colour.match(/\d+/g)!.map((c) => {
          const s = Number(c) / 255;
          return s <= 0.04045 ? s / 12.92 : ((s + 0.055) / 1.055) ** 2.4;
        });
        return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
      };
      const inks = new Set(
        [...document.querySelectorAll("main *")].map((e) => {
          const style = getComputedStyle(e);
          return e.tagName === "text" ? style.fill : style.color;
        }),
      );
      return [...inks].map((c) => 1.05 / (light(c) + 0.05));
    });
    expect(Math.min(...ratios)).toBeGreaterThanOrEqual(7);
  });

  it("prints on A4 without a script", async () => {
    const pdf = await page.pdf({ format: "A4" });
    const pages = pdf.toString("latin1").match(/\/Type\s*\/Page\b/g) ?? [];
    expect(pages.length).toBeGreaterThan(50);
    expect(pages.length).toBeLessThan(400);
  });
});
