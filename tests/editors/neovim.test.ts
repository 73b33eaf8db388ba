import { readFileSync } from "node:fs";
import path from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { ROOT } from "./install.js";
import { lookInNeovim, type Seen } from "./neovim.js";

describe("the first household in Neovim, through the plain protocol", () => {
  const file = path.join(ROOT, "samples/first-week/home.span");
  const lines = readFileSync(file, "utf8").split("\n");
  const slide = lines.findIndex((line) => line.trim() === "slide");
  let seen: Seen;
  beforeAll(async () => {
    seen = await lookInNeovim(file, { line: slide, character: (lines[slide] ?? "").indexOf("slide") });
  });

  test("the findings arrive at their lines, each with the name of its rule", () => {
    expect(seen.findings).toContainEqual(
      expect.objectContaining({ line: slide, code: "steps/brakes-not-checked" }),
    );
    expect(seen.findings.filter(({ code }) => !/^[a-z-]+\/[a-z-]+$/.test(code ?? ""))).toEqual([]);
  });

  test("a hover answers", () => {
    expect(JSON.stringify(seen.hover)).toContain("slide");
  });

  test("the server ends when it is asked to", () => {
    expect(seen.stopped).toBe(true);
  });
});
