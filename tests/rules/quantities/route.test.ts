/** The way to the room: doors, corridors, turns, thresholds and ramps, the worst of each. */
import { describe, expect, test } from "vitest";
import type { Interval } from "../../../language/quantity/interval.js";
import { home, sceneFor } from "../scene-for.js";

const inch = 0.0254;
const near = (i: Interval | undefined, inches: number, digits = 6) =>
  expect(i!.nominal / inch).toBeCloseTo(inches, digits);
const rooms = (doors: string) => home.replace("  place bed", `${doors}\n  place bed`);
const hall = "  door hall { wall south; at 18 in; clear 31 1/2 in; threshold 5/8 in }";
const long = (text: string) => text.replace("  overall-width", "  overall-length 42 in\n  overall-width");
const withRoute = (inside: string, more = "") =>
  sceneFor(long(`${rooms(hall)}${more}route in { from "the street"; to bedroom; ${inside} }\n`));

describe("doors", () => {
  test("the only door of the room is the way in", () => {
    const c = sceneFor(rooms(hall));
    near(c.get("door.clear-width").value, 31.5);
    expect(c.get("door.clear-width").choice).toBe("hall");
  });
  test("of several doors any may be the way in: from the narrowest to the widest", () => {
    const c = sceneFor(rooms(`${hall}\n  door bath { wall west; at 10 in; clear 28 in }`)).get(
      "door.clear-width",
    );
    near(c.value, 28);
    expect(c.value!.low / inch).toBeCloseTo(27.75, 6);
    expect(c.value!.high / inch).toBeCloseTo(31.75, 6);
  });
  test("a route that names its doors settles it", () => {
    const two = long(rooms(`${hall}\n  door bath { wall west; at 10 in; clear 28 in }`));
    const c = sceneFor(`${two}route in { from "the street"; to bedroom; through hall }\n`).get(
      "door.clear-width",
    );
    near(c.value, 31.5);
    expect(c.value!.high / inch).toBeCloseTo(31.75, 6);
  });
  test("a door of another room on the route is passed as well", () => {
    const other = "room kitchen { door yard { clear 27 in } }\n";
    const c = sceneFor(
      long(`${rooms(hall)}${other}route in { from "the street"; to bedroom; through kitchen.yard, hall }\n`),
    ).get("door.clear-width");
    near(c.value, 27);
    expect(c.value!.high / inch).toBeCloseTo(27.25, 6);
  });
  test("without a door nothing is known", () => {
    expect(sceneFor(home).get("door.clear-width").missing).toMatchObject([{ key: "door" }]);
  });
});

describe("corridors and narrow places", () => {
  test("the narrowest counts, and says which it is", () => {
    const c = withRoute("corridor { width 38 in }; turn { from-width 36 in; to-width 40 in }").get(
      "route.clear-width",
    );
    near(c.value, 36);
    expect(c.choice).toBe("turn");
  });
  test("a narrow place in the room counts as well", () => {
    const c = sceneFor(rooms(`${hall}\n  narrowest 27 in "between bed and wardrobe"`)).get(
      "route.clear-width",
    );
    near(c.value, 27);
    expect(c.choice).toBe("between bed and wardrobe");
  });
  test("without a route there is nothing to judge; one that says no width is open", () => {
    expect(sceneFor(home).get("route.clear-width").without).toBe("no route to the room is written");
    expect(withRoute("surface wood").get("route.clear-width").missing).toMatchObject([{ key: "corridor" }]);
  });
});

describe("turns", () => {
  test("what is left on each side of a chair of 42 by 25 in, as worked out by hand", () => {
    // Two corridors of 39 in: at 45 degrees (2 x 39 x 0.7071 - 42 x 0.5 - 25) / (1 + 1.4142) = 3.7929 in.
    const c = withRoute("turn { from-width 39 in; to-width 39 in }");
    near(c.get("route.turn").value, (78 * Math.SQRT1_2 - 21 - 25) / (1 + Math.SQRT2), 4);
    near(c.get("route.turn-width").value, 39);
  });
  test("into a door there is at least as much as into a corridor as wide, and at most as much as straight through", () => {
    const c = withRoute("turn { from-width 40 in; door-clear 32 in }");
    const value = c.get("route.turn").value!;
    const corridor = withRoute("turn { from-width 40 in; to-width 32 in }").get("route.turn").value!;
    expect(value.low).toBeCloseTo(corridor.low, 9);
    expect(value.high / inch).toBeCloseTo((32.25 - 24.75) / 2, 6);
    expect(c.get("route.turn-width").without).toBe("no turn is on a route to the room");
  });
  test("needs the chair's length", () => {
    const c = sceneFor(
      `${rooms(hall)}route in { from "x"; to bedroom; turn { from-width 39 in; to-width 39 in } }\n`,
    );
    expect(c.get("route.turn").missing).toMatchObject([{ key: "overall-length" }]);
  });
});

describe("thresholds", () => {
  test("the highest of doors, route and kerbs", () => {
    near(sceneFor(rooms(hall)).get("threshold.height").value, 0.625);
    const c = withRoute(
      'threshold { height 1 in; bevelled no; at "terrace" }; kerb 3 in "kerb at the street"',
    );
    near(c.get("threshold.height").value, 3);
    near(c.get("threshold.unbevelled").value, 1);
    expect(c.get("threshold.unbevelled").choice).toContain("terrace");
  });
  test("one that nobody wrote is not taken for none", () => {
    expect(
      sceneFor(rooms(hall.replace("; threshold 5/8 in", ""))).get("threshold.height").missing,
    ).toMatchObject([{ key: "threshold" }]);
  });
});

describe("ramps", () => {
  const two =
    "ramp porch { rise 6 in; run 72 in; width 36 in; landing-top 60 in; landing-bottom 80 in }\nramp step { rise 3 in; run 24 in; width 30 in; landing-top 40 in; landing-bottom 60 in }\n";
  test("of several the steepest, the narrowest and the shortest landing", () => {
    const c = withRoute("ramp porch, step", two);
    expect(c.get("ramp.slope").value!.nominal).toBeCloseTo(1 / 8, 9);
    expect(c.get("ramp.slope").choice).toBe("step");
    near(c.get("ramp.rise").value, 6);
    near(c.get("ramp.run").value, 72);
    near(c.get("ramp.width").value, 30);
    near(c.get("landing.length").value, 40);
    expect(c.get("landing.length").choice).toBe("upper end of the ramp step");
  });
  test("a ramp that no route to the room names is none of its ramps", () => {
    expect(withRoute("surface wood", two).get("ramp.slope").without).toBe(
      "no ramp is on a route to the room",
    );
  });
  test("a landing that was not measured is open, whatever the other is", () => {
    const c = withRoute("ramp porch", two.replace("landing-bottom 80 in", "rated-load 300 lb"));
    expect(c.get("landing.length").missing).toMatchObject([{ key: "landing-bottom" }]);
  });
  test("a run of nothing has no slope, and no number is made up", () => {
    const c = withRoute("ramp flat", "ramp flat { rise 1 in; run 0 in }\n");
    expect(c.get("ramp.slope").value).toBeUndefined();
    expect(c.get("ramp.slope").missing).toMatchObject([{ key: "run" }]);
  });
});
