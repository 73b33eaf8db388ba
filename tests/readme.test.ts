import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { run } from "./server/command/program.js";

const readme = readFileSync("README.md", "utf8");

describe("The README shows what is really seen", () => {
  it("quotes the output of the demo, line by line and in order", async () => {
    const section = readme.slice(readme.indexOf("## What is seen"), readme.indexOf("## The commands"));
    const quoted = section
      .split("\n")
      .filter((l) => l.startsWith("    ") && l.trim() !== "...")
      .map((l) => l.trim());
    expect(quoted.length).toBeGreaterThan(20);
    const { out } = await run(["check", "samples/first-week", "--on", "2026-03-02"]);
    const lines = out.split("\n").map((l) => l.trim());
    let at = 0;
    for (const line of quoted) {
      const found = lines.indexOf(line, at);
      expect(found, `not in the output from line ${at}: ${line}`).toBeGreaterThanOrEqual(0);
      at = found + 1;
    }
  });

  it("names every command", async () => {
    const { out } = await run(["--help"]);
    for (const command of ["check", "reason", "format", "rules", "serve"]) {
      expect(readme).toContain(`spanwise ${command}`);
      expect(out).toContain(command);
    }
  });
});
