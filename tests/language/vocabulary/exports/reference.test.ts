import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { referencePage } from "../../../../language/vocabulary/exports/reference.js";
import { setupVocabulary } from "../../../../language/vocabulary/index.js";
import { stepPhrases } from "../../../../language/vocabulary/step-phrases.js";
import { household } from "../../form.js";
import { beside, everyKey } from "./every-key.js";

const page = referencePage();

describe("The reference page", () => {
  it("is what the vocabulary gives today", () => {
    const file = path.resolve(import.meta.dirname, "../../../../language/REFERENCE.md");
    const same = readFileSync(file, "utf8") === page;
    expect(same, "language/REFERENCE.md is stale: make it anew with npm run reference").toBe(true);
  });

  it("has a heading for every kind, and names every key and every step with its help", () => {
    for (const kind of Object.keys(setupVocabulary.blocks))
      expect(page).toContain(`\n## ${kind === "may-change" ? "may change" : kind}\n`);
    for (const { key } of everyKey()) expect(page).toContain(`**\`${key}\`** — `);
    for (const p of stepPhrases) {
      expect(page).toContain(`**\`${p.verb}`);
      expect(page).toContain(`- Needs: ${p.needs.slice(0, 1).toUpperCase()}${p.needs.slice(1)}`);
    }
  });

  it("says how each thing that can be taped is measured", () => {
    const taped = everyKey().filter((k) => k.spec.measure !== undefined);
    const lines = page.split("\n").filter((l) => l.startsWith("- Measured: "));
    expect(taped.length).toBeGreaterThan(20);
    expect(lines.length).toBe(taped.length);
  });

  it("gives an example of every key that the reader takes without a finding", () => {
    for (const { title, text, statement } of everyKey()) {
      expect(page, title).toContain(`Example: \`${statement}\`.`);
      const wrong = household(text).problems.filter((p) => !beside.has(p.rule));
      expect(wrong.map((p) => `${title}: ${text}: ${p.message}`)).toEqual([]);
    }
  });

  it("gives examples of what may be changed that the reader takes", () => {
    const line = page.split("\n").find((l) => l.includes("instead-of")) ?? "";
    const examples = [...line.matchAll(/`([^`]+)`/g)].map(([, e]) => e!).filter((e) => !e.includes("{"));
    expect(examples.length).toBe(3);
    const things = "bed bed { }\nboard board-30 { }\nboard board-36 { }\nfurniture nightstand { }\n";
    const home = household(`${things}may change { ${examples.join("; ")} }`);
    expect(home.problems.filter((p) => !beside.has(p.rule)).map((p) => p.message)).toEqual([]);
    expect(home.changes.map((c) => c.is)).toEqual(["value", "instead", "moved"]);
  });

  it("has no link to a heading that is not there", () => {
    const headings = new Set(
      [...page.matchAll(/^#+ (.*)$/gm)].map(([, h]) => h!.toLowerCase().replaceAll(" ", "-")),
    );
    const links = [...page.matchAll(/\]\(#([^)]*)\)/g)].map(([, l]) => l!);
    expect(links.length).toBeGreaterThan(10);
    expect(links.filter((l) => !headings.has(l))).toEqual([]);
  });
});
