/** The room of a household: whether it was walked without a slip, what cannot be as written, and what room is left. */
import { describe, expect, test } from "vitest";
import type { Interval } from "../../../language/quantity/interval.js";
import { home, sceneFor } from "../scene-for.js";

const inch = 0.0254;
const near = (i: Interval | undefined, inches: number, digits = 6) =>
  expect(i!.nominal / inch).toBeCloseTo(inches, digits);
const door = "  door hall { wall south; at 18 in; clear 31 1/2 in }\n";
const withDoor = home.replace("  place bed", `${door}  place bed`);
const walked = (walk: string, more = "", text = withDoor) =>
  sceneFor(text.replace(/ {2}walk 12.*\n/, `  walk ${walk}\n${more}`));

describe("walls that do not close", () => {
  test("miss their start by the difference of what faces each other", () => {
    const c = walked("12 ft 1 in east, 10 ft 2 in north, 11 ft 9 in west, 10 ft 5 in south");
    near(c.get("room.misclosure").value, Math.hypot(4, 3));
    expect(c.get("room.misclosure-share").value!.nominal).toBeCloseTo(5 / (145 + 122 + 141 + 125), 9);
    near(sceneFor(withDoor).get("room.misclosure").value, 0);
  });
  test.each([
    // True room 145 by 122 in, diagonal 189.5 in; the third wall was read a foot short.
    [
      "the wall that agrees with the diagonal when mended stands out",
      "12 ft 1 in east, 10 ft 2 in north, 11 ft 1 in west, 10 ft 2 in south",
      "189 1/2 in",
      "third wall, walked to the west",
    ],
    [
      "the first wall, read a foot long",
      "13 ft 1 in east, 10 ft 2 in north, 12 ft 1 in west, 10 ft 2 in south",
      "189 1/2 in",
      "first wall, walked to the east",
    ],
    [
      "the second",
      "12 ft 1 in east, 9 ft 2 in north, 12 ft 1 in west, 10 ft 2 in south",
      "189 1/2 in",
      "second wall, walked to the north",
    ],
  ])("%s", (_, walk, diagonal, wall) => {
    expect(walked(walk, `  diagonal sw-ne ${diagonal}\n`).get("room.misclosure-wall").choice).toBe(wall);
  });
  test.each([
    [
      "without a diagonal both walls that run so may be wrong",
      "13 ft 1 in east, 10 ft 2 in north, 12 ft 1 in west, 10 ft 2 in south",
      "",
    ],
    [
      "a diagonal that fits neither",
      "13 ft 1 in east, 10 ft 2 in north, 12 ft 1 in west, 10 ft 2 in south",
      "  diagonal sw-ne 300 in\n",
    ],
    [
      "an error in both directions needs two wrong walls",
      "13 ft 1 in east, 11 ft 2 in north, 12 ft 1 in west, 10 ft 2 in south",
      "  diagonal sw-ne 189 1/2 in\n",
    ],
    ["walls that close", "12 ft 1 in east, 10 ft 2 in north, 12 ft 1 in west, 10 ft 2 in south", ""],
  ])("none stands out: %s", (_, walk, diagonal) => {
    const r = walked(walk, diagonal).get("room.misclosure-wall");
    expect([r.value, r.without]).toEqual([undefined, "no wall stands out as the one that is wrong"]);
  });
});

describe("what cannot be as it is written", () => {
  const crossed = "12 ft east, 10 ft north, 6 ft west, 14 ft south, 6 ft west, 4 ft north";
  test("walls that cross are named, and nothing is said of the room", () => {
    const c = walked(crossed);
    expect(c.get("room.crossings").value!.nominal).toBe(1);
    expect(c.get("room.crossings").choice).toContain("walls 1 and 4");
    for (const name of ["room.turning-circle", "room.side-clearance", "park.room-clearance", "room.outside"])
      expect(c.get(name).missing, name).toMatchObject([{ key: "walk" }]);
    expect(sceneFor(withDoor).get("room.crossings").value!.nominal).toBe(0);
  });
  test("a nightstand past the east wall", () => {
    const c = sceneFor(withDoor.replace("at 8 ft 5 in", "at 11 ft"));
    expect(c.get("room.outside").choice).toBe("nightstand");
    near(c.get("room.outside").value, 132 + 18 - 145);
  });
  test("a nightstand in the bed", () => {
    const c = sceneFor(withDoor.replace("at 8 ft 5 in", "at 7 ft 6 in"));
    expect(c.get("room.overlap").choice).toBe("bed and nightstand");
    near(c.get("room.overlap").value, 60 + 39 - 90);
  });
  test("a door past the end of its wall", () => {
    const c = sceneFor(withDoor.replace("at 18 in; clear", "at 120 in; clear"));
    near(c.get("door.past-wall").value, 120 + 31.5 - 145);
    near(sceneFor(withDoor).get("door.past-wall").value, 0);
  });
});

describe("room beside the bed", () => {
  test("is told for either side, and for the one on which the chair parks", () => {
    const c = sceneFor(withDoor);
    near(c.get("room.side-clearance-left").value, 145 - 99);
    near(c.get("room.side-clearance-right").value, 60);
    near(c.get("room.side-clearance").value, 46);
    expect(c.get("room.side-clearance").choice).toBe("east wall");
  });
  test("a wardrobe that leaves no strip as long as a chair is what limits it", () => {
    const c = sceneFor(
      withDoor
        .replace("  place nightstand", "  place wardrobe { wall east; at 60 in }\n  place nightstand")
        .replace("room bedroom", "furniture wardrobe { size 40 in by 20 in }\nroom bedroom"),
    );
    near(c.get("room.side-clearance").value, 46 - 20);
    expect(c.get("room.side-clearance").choice).toBe("wardrobe");
  });
  test("is not known until the bed's place is", () => {
    expect(
      sceneFor(withDoor.replace(/ {2}place bed.*\n/, "")).get("room.side-clearance").missing,
    ).toMatchObject([{ key: "place" }]);
  });
});

describe("the turning circle", () => {
  test("lies in the larger free part that the chair can reach", () => {
    const c = sceneFor(withDoor).get("room.turning-circle").value!;
    // West of the bed 60 in are free, with the corner south of it: a little more than 60 in.
    expect(c.nominal / inch).toBeGreaterThan(60);
    expect(c.nominal / inch).toBeLessThan(64);
    expect((c.high - c.low) / inch).toBeLessThan(1);
  });
  test("a wardrobe that shuts off the west part leaves the rest", () => {
    const shut = withDoor
      .replace("room bedroom", "furniture wardrobe { size 60 in by 20 in }\nroom bedroom")
      .replace("  place bed", "  place wardrobe { at 0 in, 30 in }\n  place bed");
    const c = sceneFor(shut).get("room.turning-circle").value!;
    expect(c.nominal / inch).toBeLessThan(60);
  });
  test("needs a door and its place", () => {
    expect(sceneFor(home).get("room.turning-circle").missing).toMatchObject([{ key: "door" }]);
    expect(sceneFor(withDoor.replace("at 18 in; ", "")).get("room.turning-circle").missing).toMatchObject([
      { key: "door" },
    ]);
  });
});

describe("the parked chair against the walls", () => {
  test("a wall of an L that comes near is named", () => {
    const c = walked(
      "12 ft 1 in east, 2 ft north, 6 in west, 8 ft 2 in north, 11 ft 7 in west, 10 ft 2 in south",
      "",
      withDoor.replace(/ {2}place nightstand.*\n/, ""),
    );
    const there = c.get("park.room-clearance");
    expect(there.choice).toBe("wall 4 (east)");
    const wide = sceneFor(withDoor.replace(/ {2}place nightstand.*\n/, "")).get("park.room-clearance");
    expect(wide.choice).toBe("east wall");
    expect((wide.value!.nominal - there.value!.nominal) / inch).toBeCloseTo(6, 6);
  });
  test("a bed against its wall has the chair beside it where a bed placed by its corner has", () => {
    const wall = withDoor.replace(
      "place bed { head north; at 5 ft, 42 in }",
      "place bed { head north; wall north; at 5 ft }",
    );
    expect(sceneFor(wall).get("park.room-clearance").value!.nominal).toBeCloseTo(
      sceneFor(withDoor).get("park.room-clearance").value!.nominal,
      9,
    );
  });
});

describe("room for the helper", () => {
  const helped = withDoor.replace("    scoot forward", "    helper in-front\n    scoot forward");
  test("is looked for where the steps put somebody", () => {
    const free = sceneFor(helped.replace(/ {2}place nightstand.*\n/, "")).get("helper.standing");
    expect(free.choice).toBe("in front of the chair");
    expect(free.value!.nominal / inch).toBeGreaterThan(15);
    expect(sceneFor(withDoor).get("helper.standing").missing).toMatchObject([{ key: "steps" }]);
    expect(
      sceneFor(helped.replace("with board-30, daughter", "with board-30")).get("helper.standing").without,
    ).toBe("nobody helps");
  });
  test("a table in front takes of it", () => {
    const table = helped
      .replace("room bedroom", "furniture table { size 30 in by 20 in }\nroom bedroom")
      .replace("  place bed", "  place table { wall north; at 104 in }\n  place bed")
      .replace(/ {2}place nightstand.*\n/, "");
    const free = sceneFor(helped.replace(/ {2}place nightstand.*\n/, "")).get("helper.standing").value!;
    expect(sceneFor(table).get("helper.standing").value!.nominal).toBeLessThan(free.nominal);
  });
});

test("a floor lift needs its base's length beside the bed", () => {
  const lift = (base: string) =>
    sceneFor(
      withDoor
        .replace("room bedroom", `lift hoist { rated-load 400 lb; ${base} }\nroom bedroom`)
        .replace("with board-30, daughter", "with board-30, daughter, hoist"),
    ).get("lift.approach");
  near(lift("base-length 42 in").value, 4);
  expect(lift("leg-height 4 in").missing).toMatchObject([{ key: "base-length" }]);
  expect(sceneFor(withDoor).get("lift.approach").without).toBe("no floor lift is used");
});
