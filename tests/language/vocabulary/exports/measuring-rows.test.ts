import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { measuringRows } from "../../../../language/vocabulary/exports/measuring-rows.js";
import { household } from "../../form.js";

const rows = (text: string): string[] =>
  measuringRows(household(text)).map((r) => [r.kind, r.name, ...r.within, r.key, r.state].join(" "));

describe("What must still be measured", () => {
  it("is what is written as unknown, and what a tape can measure and nobody wrote", () => {
    const open = rows("bed bed { top 20 in; top-loaded unknown; castors unknown; edge firm }");
    expect(open).toContain("bed bed top-loaded unknown");
    expect(open).toContain("bed bed castors unknown");
    expect(open).toContain("bed bed room-under missing");
    expect(open).not.toContain("bed bed top missing");
    // Nobody needs a tape for the rails: they are asked for elsewhere.
    expect(open).not.toContain("bed bed rails missing");
  });

  it("counts none as looked at", () => {
    const cushion = (text: string): string[] =>
      rows(`wheelchair w { cushion { ${text} } }`).filter((r) => r.includes("cushion"));
    expect(cushion("kind none")).toEqual([]);
    expect(cushion("kind foam")).toContain("wheelchair w cushion thickness missing");
  });

  it("names the block in which a key stands, also where that was not written at all", () => {
    expect(rows("wheelchair w { drive-wheel { diameter 24 in } }")).toContain(
      "wheelchair w drive-wheel axle missing",
    );
    expect(rows("wheelchair w { }")).toContain("wheelchair w drive-wheel diameter missing");
    expect(rows("room r { door hall { clear unknown } }")).toContain("room r door hall clear unknown");
  });

  it("of a way back only what is unknown: the rest is as on the way there", () => {
    const open = rows("way-back out of into { along unknown }");
    expect(open).toEqual(["way-back out along unknown"]);
  });

  it("of the visit before everything is known, says how each is measured and what is written", () => {
    const text = readFileSync(
      path.resolve(import.meta.dirname, "../../../../samples/measuring-visit/home.span"),
      "utf8",
    );
    const all = measuringRows(household(text));
    const loaded = all.find((r) => r.kind === "wheelchair" && r.key === "seat-loaded");
    expect(loaded).toMatchObject({ state: "unknown", need: "required", wants: "a length (in, cm, mm)" });
    expect(loaded?.measure).toMatch(/client sitting/);
    expect(all.filter((r) => r.state === "missing" && r.measure === undefined)).toEqual([]);
    expect(all.find((r) => r.kind === "client" && r.key === "mass")).toMatchObject({ safer: "high" });
  });
});
