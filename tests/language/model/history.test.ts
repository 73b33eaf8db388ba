import { describe, expect, it } from "vitest";
import type { Quantity } from "../../../language/quantity/types.js";
import { findings } from "../form.js";

const inch = 0.0254;

describe("A value given on several days is a history", () => {
  it("of which the newest counts, in whatever order they stand, and the older ones are kept", () => {
    const text = `client {
  ⟦mass 171 lb on 2026-03-09⟧b
  mass 184 lb on 2026-01-05
  ⟦mass 178 lb on 2026-02-10⟧a
}`;
    const home = findings(text, { a: "form/value-jumped", b: "form/value-jumped" });
    const pounds = (q: unknown): number => Math.round((q as Quantity).nominal / 0.45359237);
    expect(pounds(home.client!.values["mass"])).toBe(171);
    expect(home.client!.before!["mass"]!.map(pounds)).toEqual([178, 184]);
    expect(home.client!.placeOf("mass").line).toBe(1);
  });

  it.each([
    ["what a tape explains", "top 23 in on 2026-03-01", "top 22 1/2 in on 2026-03-02"],
    ["what the tolerances explain", "top 23 in ± 1/2 in on 2026-03-01", "top 22 in ± 1/2 in on 2026-03-02"],
    ["the same again in other units", "top 23 in on 2026-03-01", "top 58.4 cm on 2026-03-02"],
    ["what is not known now", "top 23 in on 2026-03-01", "top about 20 in to 24 in on 2026-03-02"],
  ])("is not remarked on: %s", (_title, older, newer) => {
    findings(`bed {\n ${older}\n ${newer}\n}`, {});
  });

  it.each([
    ["top 23 in on 2026-03-01", "top 21 in on 2026-03-02"],
    ["top 23 1/4 in on 2026-03-01", "top 23 in ± 1/16 in on 2026-03-02"],
    ["top 58.4 cm on 2026-03-01", "top 58.0 cm on 2026-03-02"],
  ])("%s, then %s: the jump is pointed out at the newer", (older, newer) => {
    const home = findings(`bed {\n ${older}\n ⟦${newer}⟧a\n}`, { a: "form/value-jumped" });
    const said = home.problems.find((p) => p.rule === "form/value-jumped")!;
    expect(said.message).toContain("2026-03-01");
    expect(said.level).toBe("advice");
  });

  it.each([
    ["two on one day", "top 23 in on 2026-03-01", "top 22 in on 2026-03-01"],
    ["one with a day and one without", "top 23 in on 2026-03-01", "top 22 in"],
  ])("and no history: %s", (_title, first, second) => {
    const home = findings(`bed {\n ${first}\n ⟦${second}⟧a\n}`, { a: "form/given-twice" });
    expect(home.things.get("bed")!.values["top"]).toEqual({ type: "unknown" });
  });

  it("says what is said once for each side only once for each side", () => {
    const home = findings(
      `wheelchair w {\n armrest left fixed\n armrest right removable\n ⟦armrest left swing-away⟧a\n}`,
      { a: "form/given-twice" },
    );
    expect(home.things.get("w")!.values["armrest"]).toHaveLength(2);
  });
  it("takes several lines and tubes on one side", () => {
    const home = findings("client { line catheter left 60 cm; line drain left 24 in }", {});
    expect(home.client!.values["line"]).toMatchObject([
      { kind: "catheter", length: { nominal: 0.6 } },
      { kind: "drain", length: { nominal: expect.closeTo(24 * inch, 9) } },
    ]);
  });
});
