import { readFileSync } from "node:fs";
import path from "node:path";
import { globSync } from "tinyglobby";
import { describe, expect, it } from "vitest";
import { exportHousehold } from "../../../../language/model/export.js";
import type { HouseholdJson, QuantityJson, ThingJson } from "../../../../language/model/export-types.js";
import { householdOf, readSetup, type Household } from "../../../../language/model/household.js";
import type { Thing } from "../../../../language/model/types.js";
import { quantitiesIn } from "../../../../language/model/written.js";
import { household } from "../../form.js";

const samples = path.resolve(import.meta.dirname, "../../../../samples");
const files = globSync("**/*.span", { cwd: samples }).sort();
const readSample = (file: string): Household => {
  const tree = (f: string) => readSetup(readFileSync(path.join(samples, f), "utf8"));
  const open = (written: string, from: string) => {
    const at = path.posix.join(path.posix.dirname(from), written);
    return { path: at, tree: tree(at) };
  };
  return householdOf(file, tree(file), { open });
};
const exported = (text: string): HouseholdJson => exportHousehold(household(text));
const bedOf = (text: string): ThingJson => exported(`bed bed { ${text} }`).things["bed"]!["bed"]!;

describe("A quantity leaves in SI, with the text that was written for it", () => {
  const cases: readonly [
    written: string,
    key: string,
    path: readonly string[],
    expected: Partial<QuantityJson>,
  ][] = [
    [
      "top 23 in",
      "top",
      [],
      { low: 0.5842, nominal: 0.5842, high: 0.5842, unit: "m", tolerance: false, as: "23 in" },
    ],
    ["top 19½ in", "top", [], { nominal: 0.4953, as: "19½ in" }],
    ["top 20 in ± 1/4 in", "top", [], { low: 0.50165, high: 0.51435, tolerance: true, as: "20 in ± 1/4 in" }],
    [
      "top about 54 cm to 56 cm estimated",
      "top",
      [],
      {
        low: 0.54,
        nominal: 0.55,
        high: 0.56,
        known: "estimated",
        range: "about",
        as: "about 54 cm to 56 cm estimated",
      },
    ],
    ["adjusts 15 to 26 in", "adjusts", [], { low: 0.381, high: 0.6604, as: "15 to 26 in" }],
    ["size 54 x 75 in", "size", ["first"], { nominal: 1.3716, as: "54 in" }],
    ["size 54 x 75 in", "size", ["second"], { nominal: 1.905, as: "75 in" }],
    [
      'top-loaded 20 in judged by "therapist" on 2026-03-01',
      "top-loaded",
      [],
      { known: "judged", by: "therapist", on: "2026-03-01" },
    ],
    ["rated-load 450 lb stated", "rated-load", [], { nominal: 204.1165665, unit: "kg", known: "stated" }],
  ];
  it.each(cases)("%s", (written, key, parts, expected) => {
    let value: unknown = bedOf(written).values[key];
    for (const p of parts) value = (value as { readonly [part: string]: unknown })[p];
    expect(value).toMatchObject(expected);
  });

  it("also where it is one part of several", () => {
    const { client } = exported(
      'client { limit weight-bearing left 20 lb by "clinic"; limit hip-flexion both 90 deg review 2026-04-01 }',
    ).things;
    expect(client!["client"]!.values["limit"]).toMatchObject([
      { what: "weight-bearing", side: "left", amount: { nominal: 9.0718474, as: '20 lb by "clinic"' } },
      { what: "hip-flexion", side: "both", amount: { unit: "rad", as: "90 deg" }, review: "2026-04-01" },
    ]);
  });

  it("a minus belongs to its number", () => {
    const chair = exported("wheelchair w { drive-wheel { diameter 24 in; axle -1 1/2 in } }").things[
      "wheelchair"
    ]!["w"]!;
    const wheel = chair.parts!["drive-wheel"] as ThingJson;
    expect(wheel.values["axle"]).toMatchObject({ nominal: -0.0381, as: "-1 1/2 in" });
  });
});

describe("Nothing that was understood is lost", () => {
  /** Quantities in a value as JSON, those beside that do not count left out. */
  const count = (x: unknown): number => {
    if (typeof x !== "object" || x === null) return 0;
    const inside = Object.entries(x).filter(([key]) => key !== "notCounted");
    return ("as" in x && "nominal" in x ? 1 : 0) + inside.reduce((n, [, v]) => n + count(v), 0);
  };
  const inThing = (t: Thing): number =>
    Object.values(t.values).reduce((n, v) => n + quantitiesIn(v).length, 0) +
    Object.values(t.inner).reduce((n, list) => n + (list ?? []).reduce((m, i) => m + inThing(i), 0), 0);

  it.each(files)("%s: every quantity is there, with words that stand in a file", (file) => {
    const home = readSample(file);
    const { changes, ...rest } = exportHousehold(home);
    expect(count(rest)).toBe(home.all.reduce((n, t) => n + inThing(t), 0));
    const texts = [file, ...home.uses.keys()]
      .map((f) => readFileSync(path.join(samples, f), "utf8"))
      .join("\n");
    const check = (x: unknown): void => {
      if (typeof x !== "object" || x === null) return;
      const as = (x as { readonly as?: unknown }).as;
      if (typeof as === "string") {
        const found = texts.includes(as) || texts.includes(as.replace(/ [^ ]+$/, ""));
        expect(found, as).toBe(true);
      }
      Object.values(x).forEach(check);
    };
    check([rest, changes]);
  });

  it("an older value that has its date stands beside the one that counts", () => {
    const bed = bedOf("top 23 in on 2026-02-01; top 21 in on 2026-03-01");
    expect(bed.values["top"]).toMatchObject({ nominal: 0.5334 });
    expect(bed.notCounted?.["top"]).toMatchObject([{ nominal: 0.5842, on: "2026-02-01" }]);
  });

  it("of two that contradict each other neither counts, and both are told", () => {
    const bed = bedOf("top 23 in; top 21 in");
    expect(bed.values["top"]).toEqual({ unknown: true });
    expect(bed.notCounted?.["top"]).toMatchObject([{ as: "23 in" }, { as: "21 in" }]);
  });

  it("a thing under a name that is taken, and a second title", () => {
    const home = exported('setup "A"\nsetup "B"\nbed bed { top 20 in }\nbed bed { top 25 in }');
    expect(home.things["bed"]!["bed"]!.values["top"]).toMatchObject({ as: "20 in" });
    expect(home.notCounted?.things?.["bed"]).toMatchObject([{ values: { top: { as: "25 in" } } }]);
    expect(home.statements["setup"]).toBe("A");
    expect(home.notCounted?.statements?.["setup"]).toEqual(["B"]);
  });

  it("names that a program knows by themselves", () => {
    const home = exported("board constructor { length 30 in }\nboard __proto__ { length 24 in }");
    expect(Object.keys(home.things["board"]!)).toEqual(["constructor", "__proto__"]);
    expect(JSON.stringify(home)).toContain('"__proto__":{"name":"__proto__"');
  });
});

describe("What was not understood is said where it stands", () => {
  it("unknown and none are told apart, and a key left out is left out", () => {
    const bed = bedOf("top unknown; rails none");
    expect(bed.values).toEqual({ top: { unknown: true }, rails: "none" });
  });

  it("lines of a block, and lines at top level", () => {
    const bed = bedOf("top 23; tpo 21 in; edge firm");
    expect(bed.values).toEqual({ edge: "firm" });
    expect(bed.notUnderstood).toEqual(["top 23", "tpo 21 in"]);
    expect(exported("besd bed\nvisited tomorrow").notUnderstood).toEqual(["besd bed", "visited tomorrow"]);
  });

  it("a line among the steps keeps its place", () => {
    const { transfer } = exported(
      "transfer t { steps { lock brakes; swirl about; remove footrest on the left } }",
    ).things;
    expect(transfer!["t"]!.parts!["steps"]).toEqual([
      { verb: "lock brakes", text: "lock brakes" },
      { unknown: true, text: "swirl about" },
      expect.objectContaining({ text: "remove footrest on the left" }),
    ]);
  });

  it("a step has its verb in the one spelling, its side, and the words that were written", () => {
    const { transfer } = exported("transfer t { steps { take off left footrest; approach bed } }").things;
    expect(transfer!["t"]!.parts!["steps"]).toEqual([
      { verb: "remove legrest", side: "left", text: "take off left footrest" },
      { verb: "approach", object: "bed", text: "approach bed" },
    ]);
  });
});

describe("The order is that of the vocabulary and of the file", () => {
  it("keys in any order give the same", () => {
    expect(JSON.stringify(bedOf("edge firm; top 20 in"))).toBe(JSON.stringify(bedOf("top 20 in; edge firm")));
  });

  it("no place in a file is part of it: a plan with lines added above is the same", () => {
    const text = readFileSync(path.join(samples, "level-home/home.span"), "utf8");
    expect(exported(`# A line more.\n\n${text}`)).toEqual(exported(text));
  });

  it("what comes from another file says from which, as the plan writes it", () => {
    const home = exportHousehold(readSample("first-week/home.span"));
    expect(home.things["wheelchair"]!["chair-18"]!.from).toBe("../loan-pool.span");
    expect(home.things["bed"]!["bed"]!.from).toBeUndefined();
    expect(home.records["trial"]).toMatchObject([
      { name: "into-bed", values: { on: "2026-03-01", by: "therapist", outcome: "done" } },
    ]);
    expect(home.statements["accept"]).toMatchObject([{ rule: "room/loose-rug", at: "bedroom" }]);
  });
});
