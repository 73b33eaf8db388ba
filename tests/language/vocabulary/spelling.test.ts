import { describe, expect, it } from "vitest";
import { formatText } from "../../../language/text/format.js";
import { findings } from "../form.js";

const inch = 0.0254;

describe("What people type for a key is read, and the formatter writes one spelling", () => {
  it.each([
    ["bed", "top loaded 21 in", "top-loaded 21 in"],
    ["bed", "room under 6 in", "room-under 6 in"],
    ["bed", "rated load includes client, mattress", "rated-load-includes client, mattress"],
    ["bed", "rated load 450 lb", "rated-load 450 lb"],
    ["bed", "casters none", "castors none"],
    ["wheelchair", "seat height 20 in", "seat-height 20 in"],
    ["wheelchair", "seat solid", "seat solid"],
    ["wheelchair", "left legrest removable", "legrest left removable"],
    ["wheelchair", "right armrest swing-away", "armrest right swing-away"],
    ["wheelchair", "leg rests removable", "legrests removable"],
    ["wheelchair", "tire width 1 in", "tyre-width 1 in"],
    ["client", "left arm weak", "arm left weak"],
    ["client", "weight 182 lb", "mass 182 lb"],
    ["client", "tube drain left 20 in", "line drain left 20 in"],
    ["client", "sitting height 34 in", "head-to-seat 34 in"],
    ["transfer", "bed side left", "bed-side left"],
  ])("%s { %s } is %s", (kind, typed, spelt) => {
    const head = kind === "client" ? "client" : `${kind} own`;
    const home = findings(`${head} { ${typed} }`, {});
    const same = findings(`${head} { ${spelt} }`, {});
    const values = (h: typeof home) => h.all[0]!.values;
    expect(values(home)).toEqual(values(same));
    expect(Object.keys(values(home))).toEqual([spelt.split(" ")[0]]);
    expect(formatText(`${head} { ${typed} }`)).toBe(`${head} { ${spelt} }\n`);
  });

  it("a block in two words is the block", () => {
    const home = findings("wheelchair own { drive wheel { diameter 24 in; axle 0 in } }", {});
    expect(home.things.get("own")!.inner["drive-wheel"]![0]!.values["diameter"]).toMatchObject({
      nominal: expect.closeTo(24 * inch, 9),
    });
  });

  it("two words that make no key are not joined", () => {
    findings("bed own { ⟦top⟧a ⟦unloaded⟧b 21 in }".replace("⟦top⟧a ⟦unloaded⟧b", "top ⟦unloaded⟧a"), {
      a: "form/value-expected",
    });
  });

  it.each([
    ["slope-across 2 %", 0.02],
    ["slope-across 2 deg", Math.tan((2 * Math.PI) / 180)],
    ["slope-across -2 deg", -Math.tan((2 * Math.PI) / 180)],
  ])("%s is a slope, whichever way it was taken", (typed, share) => {
    const home = findings(`toilet t { ${typed} }`, {});
    expect(home.things.get("t")!.values["slope-across"]).toMatchObject({
      dimension: "ratio",
      nominal: expect.closeTo(share, 12),
    });
  });
  it("a slope with its doubt, taken as an angle, keeps the true slope within", () => {
    const home = findings("toilet t { slope-across 2 deg ± 1 deg }", {});
    expect(home.things.get("t")!.values["slope-across"]).toMatchObject({
      low: expect.closeTo(Math.tan(Math.PI / 180), 12),
      high: expect.closeTo(Math.tan((3 * Math.PI) / 180), 12),
    });
  });

  it.each(["07:30", "7:30"])("%s is a time of day", (typed) => {
    const home = findings(`client { today medication ${typed} "before breakfast" }`, {});
    expect(home.client!.values["today"]).toEqual([
      { what: "medication", at: "07:30", words: "before breakfast" },
    ]);
  });
  it.each(["24:00", "7:60", "7:5"])("%s is none", (typed) => {
    const [hour] = typed.split(":");
    findings(`client { today medication ⟦${hour}⟧a:${typed.split(":")[1]} }`, { a: "form/value-expected" });
  });
});
