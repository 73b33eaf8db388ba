import { describe, expect, test } from "vitest";
import { inch } from "../sampling.js";
import { home, sceneFor } from "../../scene-for.js";
import { reachedAs } from "../../../../rules/quantities/reach.js";

/** A larger bedroom with a door in its south wall, and nothing at the bed's head. */
const roomy = (door: string): string =>
  home
    .replace(/walk .*/, "walk 14 ft east, 13 ft north, 14 ft west, 13 ft south")
    .replace("at 5 ft, 42 in", "at 5 ft, 76 in")
    .replace(/ {2}place nightstand .*\n/, `  door hall { ${door} }\n`);
const hall = (clear: string, more = "opens outward"): string =>
  roomy(`wall south; at 30 in; clear ${clear}; ${more}`);

describe("the room left on the way from the door to the bed", () => {
  test("in a roomy bedroom is half of what the door is wider than the chair, within the tolerances", () => {
    const { value, choice } = sceneFor(hall("28 in")).get("reach.tightest");
    const exact = 1.5 * inch;
    // Door and chair were each taken with a tape: a quarter inch each way, half of both on each side; and 1 cm of search.
    const off = 0.25 * inch + 0.01;
    expect(value!.nominal).toBeGreaterThan(exact - 0.01);
    expect(value!.nominal).toBeLessThanOrEqual(exact + 1e-9);
    expect(value!.low).toBeGreaterThan(exact - off - 1e-9);
    expect(value!.low).toBeLessThanOrEqual(exact - 0.25 * inch + 1e-9);
    expect(value!.high).toBeLessThan(exact + off + 1e-9);
    expect(value!.high).toBeGreaterThanOrEqual(exact + 0.25 * inch - 1e-9);
    expect(choice).toMatch(/doorway hall|south wall|passage|wall outside/);
  });

  test("is below zero by half of what the chair is wider than the door", () => {
    const c = sceneFor(hall("22 in"));
    const { value } = c.get("reach.tightest");
    expect(value!.high).toBeLessThan(0);
    expect(value!.low).toBeLessThanOrEqual(-1.5 * inch);
    expect(value!.high).toBeGreaterThanOrEqual(-1.5 * inch);
    expect(c.get("reach.turns").without).toMatch(/does not get through/);
  });

  test("is less with a tighter door and never more with more furniture", () => {
    const of = (text: string) => sceneFor(text).get("reach.tightest").value!;
    const wide = of(hall("34 in"));
    expect(of(hall("30 in")).nominal).toBeLessThan(wide.nominal);
    const chest = "furniture chest { size 30 in by 50 in }\nroom bedroom {\n  place chest { at 80 in, 0 in }";
    const fuller = of(hall("34 in").replace("room bedroom {", chest));
    expect(fuller.low).toBeLessThanOrEqual(wide.high);
    expect(fuller.nominal).toBeLessThan(wide.nominal - 0.02);
  });

  test("names what stands at the tightest place", () => {
    // A chest leaves 26 in at the foot of the bed, where a chair 25 in wide has to pass.
    const text = hall("40 in").replace(
      "room bedroom {",
      "furniture chest { size 30 in by 50 in }\nroom bedroom {\n  place chest { at 80 in, 0 in }",
    );
    const c = sceneFor(text);
    const place = c.get("reach.place");
    expect(["chest", "bed"]).toContain(place.choice);
    expect(place.value!.low).toBeLessThanOrEqual(0.5 * inch);
    expect(place.value!.high).toBeGreaterThanOrEqual(0.5 * inch);
    expect(place.value).toEqual(c.get("reach.tightest").value);
  });

  test("where something stands on the parking place itself, that is named, and there is no way", () => {
    const text = hall("40 in").replace(
      "room bedroom {",
      "furniture chest { size 30 in by 60 in }\nroom bedroom {\n  place chest { at 110 in, 80 in }",
    );
    const c = sceneFor(text);
    expect(c.get("reach.place").choice).toBe("chest");
    expect(c.get("reach.tightest").value!.high).toBeLessThan(0);
  });

  test("an open door leaf that stands in the room takes room away", () => {
    const leaf = (more: string) => {
      const { value } = sceneFor(hall("34 in", more)).get("reach.tightest");
      return reachedAs(value!)!.problem.solids.filter((s) => s.name === "the open door hall").length;
    };
    expect(leaf("opens inward; hinged west")).toBe(1);
    expect(leaf("opens inward")).toBe(0);
    expect(leaf("opens outward; hinged west")).toBe(0);
  });

  test("of two doors the better one counts", () => {
    const narrow = sceneFor(hall("26 in")).get("reach.tightest").value!;
    const both = hall("26 in").replace(
      "  door hall",
      "  door porch { wall west; at 40 in; clear 36 in; opens outward }\n  door hall",
    );
    const { value } = sceneFor(both).get("reach.tightest");
    expect(value!.nominal).toBeGreaterThan(narrow.nominal + 0.05);
    expect(reachedAs(value!)!.door).toBe("porch");
  });

  test("is not known without a door, and says what to write", () => {
    const r = sceneFor(home).get("reach.tightest");
    expect(r.value).toBeUndefined();
    expect(r.missing.map((m) => m.key)).toEqual(["door"]);
    expect(
      sceneFor(home)
        .get("reach.turns")
        .missing.map((m) => m.key),
    ).toEqual(["door"]);
  });

  test("a bed that is raised leaves the way as it was found", () => {
    const way = (text: string) => reachedAs(sceneFor(text).get("reach.tightest").value!)!.way;
    const raised = hall("30 in").replace("top 21 in", "top 21 1/4 in");
    expect(way(raised)).toBe(way(hall("30 in")));
  });
});

test("into a roomy bedroom the driver changes direction only a few times", () => {
  const { value } = sceneFor(hall("34 in")).get("reach.turns");
  expect(Number.isInteger(value!.nominal)).toBe(true);
  expect(value!.high).toBeLessThanOrEqual(4);
});
