import path from "node:path";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { ROOT } from "./install.js";
import { openEditor, type Editor } from "./vscode.js";

const HOME = "first-week/home.span";
/** How long the editor may take from a change to the findings that follow from it. */
const SEEN_WITHIN = { timeout: 15_000, interval: 250 };

describe("the first household in VS Code", () => {
  let editor: Editor;

  beforeAll(async () => {
    // The mass without its unit: a slip that the fixes at its place can mend.
    editor = await openEditor(path.join(ROOT, "samples"), {
      [HOME]: (text) => text.replace("mass 182 lb ± 2 lb", "mass 182"),
    });
    await editor.open(HOME);
    try {
      await editor.page.locator(".squiggly-error, .squiggly-warning").first().waitFor();
    } catch (error) {
      await editor.screenshot("failed nothing underlined");
      throw error;
    }
  });
  afterEach(async ({ task }) => {
    if (task.result?.state === "fail") await editor?.screenshot(`failed ${task.name}`);
  });
  afterAll(async () => {
    await editor?.close();
  });

  test("what a rule finds is underlined, and the hover gives the reason and what it rests on", async () => {
    await editor.cursorAt(HOME, "slide\n    lean left");
    const said = await editor.hover();
    await editor.screenshot("vscode-hover");
    expect(said).toContain("The brakes were not checked since the board was laid");
    expect(said).toContain("Laying the board and leaning push the chair");
    expect(said).toMatch(/common[ -]practice/i);
  });

  test("the offered step is inserted, and the finding goes", async () => {
    await editor.cursorAt(HOME, "slide\n    lean left");
    await editor.applyFix("check brakes");
    await expect.poll(() => editor.saved(HOME), SEEN_WITHIN).toMatch(/check brakes\n {4}slide\n/);
    await editor.cursorAt(HOME, "slide\n    lean left");
    await expect.poll(() => editor.hover(), SEEN_WITHIN).not.toContain("The brakes were not checked");
    await editor.screenshot("vscode-step-inserted");
  });

  test("a mass without its unit is an error whose fix writes pounds", async () => {
    await editor.cursorAt(HOME, "182");
    expect(await editor.hover()).toContain('"182" has no unit');
    await editor.applyFix("182 lb");
    await expect.poll(() => editor.saved(HOME), SEEN_WITHIN).toContain("mass 182 lb\n");
    await editor.cursorAt(HOME, "182 lb");
    await expect.poll(() => editor.hover(), SEEN_WITHIN).not.toContain("has no unit");
    await editor.screenshot("vscode-unit-written");
  });

  test("the status area says with which rule set the checks run", async () => {
    expect(await editor.status()).toContain("Spanwise checks with home-transfer 2026.1");
    await editor.screenshot("vscode-status");
  });
});
