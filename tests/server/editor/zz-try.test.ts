import { test } from "vitest";
import { readFileSync } from "node:fs";
import { pageOf, } from "/work/main/server/editor/page.js";
import { Workspace } from "/work/main/server/workspace/snapshot.js";
import { diagnostics } from "/work/main/server/editor/diagnostics.js";
import { hover } from "/work/main/server/editor/hover.js";
import { fixes } from "/work/main/server/editor/fixes.js";
test("try", () => {
  const w = new Workspace({ roots: ["/work/main/samples"], today: () => "2026-03-02" });
  const page = pageOf(w, "/work/main/samples/first-week/home.span");
  for (const d of diagnostics(page, (f) => f)) console.log(d.range.start.line + 1, d.severity, d.code, d.message, d.relatedInformation?.length ?? 0);
  const line = (s: string) => page.tree.lines.findIndex((l) => l.text.includes(s));
  for (const [s, c] of [["transfer into-bed", 3], ["top-loaded", 5], ["top-loaded", 16],["remove legrest", 8], ["with board", 8], ["accept room", 10], ["bearing-landing 2", 16]] as const)
    console.log("=====", s, "\n", (hover(page, { line: line(s), character: c })?.contents as any)?.value);
  for (const d of diagnostics(page, (f) => f)) for (const f of fixes(page, d.range, (f) => f, { disabled: true })) console.log(d.code, "::", f.title, JSON.stringify(f.edit ?? f.disabled).slice(0, 300));
});
