import { describe, expect, it } from "vitest";
import { readSetup, type Library } from "../../../language/model/household.js";
import { findings, household } from "../form.js";

const rooms = `room hall { door front { clear 33 in }; door bath { clear 30 in } }
room bedroom { door bath { clear 29 in } }
`;

describe("Names are found wherever they are declared", () => {
  it("the doors of a way are found in their rooms", () => {
    const home = findings(`${rooms}route way { from "the street"; to hall; through front, hall.bath }`, {});
    expect(home.things.get("way")!.values["through"]).toEqual(["front", "hall.bath"]);
    expect(home.things.get("way")!.values["from"]).toBe("the street");
  });
  it("a door of which two rooms have one is asked after, with both offered", () => {
    const home = findings(`${rooms}route way { from hall; to bedroom; through ⟦bath⟧a }`, {
      a: "form/name-ambiguous",
    });
    const said = home.problems.find((p) => p.rule === "form/name-ambiguous")!;
    expect(said.fixes!.map((f) => f.text)).toEqual(["hall.bath", "bedroom.bath"]);
  });
  it("a door that is nowhere is said, with the near one", () => {
    const home = findings(`${rooms}route way { from hall; to bedroom; through ⟦frnt⟧a }`, {
      a: "form/unknown-name",
    });
    expect(home.problems.find((p) => p.rule === "form/unknown-name")!.fixes![0]!.text).toBe("front");
  });

  it.each([
    ["a ramp", "route way { from hall; to bedroom; ramp ⟦porchh⟧a }", "porch"],
    ["the lift of a sling", "sling blue { for ⟦lift-11⟧a }", "lift-1"],
    ["what a phase uses", 'phase first { until "delivery"; uses ⟦lift-11⟧a }', "lift-1"],
    ["what is lent", "kit ⟦lift-11⟧a { lent }", "lift-1"],
    ["what is set", "transfer t { set ⟦bd⟧a 20 in }", "bed"],
    ["what is used", "transfer t { with ⟦lift-11⟧a }", "lift-1"],
    ["where it ends", "transfer t { from bed to ⟦tiolet⟧a }", "toilet"],
    ["what stands in a room", "room bath { place ⟦tiolet⟧a { wall north } }", "toilet"],
    ["from where things are reached", "within-reach { from ⟦tiolet⟧a { phone } }", "toilet"],
  ])("%s, misspelt, is said with the near name", (_title, text, near) => {
    const things = `ramp porch { rise 7 in; run 7 ft }\nlift lift-1 { }\nbed bed { }\ntoilet toilet { }\n`;
    const home = findings(`${rooms}${things}${text}`, { a: "form/unknown-name" });
    expect(home.problems.find((p) => p.rule === "form/unknown-name")!.fixes![0]!.text).toBe(near);
  });

  it.each([
    ["a board that is nowhere is not the only helper", "helper son { }\ntransfer t { with ⟦board-30⟧a }", []],
    [
      "a chair that is nowhere is not the only bed",
      "bed bed { }\ntransfer t { from ⟦chair-18⟧a to bed }",
      [],
    ],
    [
      "where one kind alone can stand, the only one is meant",
      "lift lift-1 { }\nsling s { for ⟦hoist⟧a }",
      ["lift-1"],
    ],
  ])("%s", (_title, text, offered) => {
    const home = findings(text, { a: "form/unknown-name" });
    const said = home.problems.find((p) => p.rule === "form/unknown-name")!;
    expect(said.fixes!.map((f) => f.text)).toEqual(offered);
  });

  it("a list of many kinds is not read out", () => {
    const home = household("transfer t { with nobody-known }");
    expect(home.problems.find((p) => p.rule === "form/unknown-name")!.message).toBe(
      'There is no thing called "nobody-known".',
    );
  });

  it("trials, kits and places bear the names of other things, and take none from them", () => {
    const home = findings(
      `lift lift-1 { }\nbed bed { }\nwheelchair w { }\ntransfer t { from w to bed }\ntrial t on 2026-03-01 { outcome done }\nkit lift-1 { lent }\nkit bed { bought }`,
      {},
    );
    expect(home.things.get("lift-1")!.kind).toBe("lift");
    expect(home.all.filter((t) => t.kind === "kit").map((t) => t.name)).toEqual(["lift-1", "bed"]);
  });
  it("a kit cannot be taken from another file under the name of the thing it is said of", () => {
    const pool = "lift lift-1 { rated-load 400 lb }\nkit lift-1 { lent }";
    const library: Library = { open: (path) => ({ path, tree: readSetup(pool) }) };
    const home = findings('from "pool.span" use lift-1', {}, library);
    expect(home.things.get("lift-1")!.kind).toBe("lift");
  });

  it("of lent, rented and bought only one is true", () => {
    findings("lift lift-1 { }\nkit lift-1 {\n lent\n ⟦bought⟧a\n}", { a: "form/one-of-these" });
  });
});

describe("Walls are called by their side of the room or by their number on the walk", () => {
  const room = (wall: string): string =>
    `room r {\n walk 4 m east, 3 m north, 4 m west, 3 m south\n door d { wall ${wall}; clear 80 cm }\n}`;
  it.each(["north", "1", "4"])("wall %s", (wall) => {
    expect(findings(room(wall), {}).things.get("r")!.inner["door"]![0]!.values["wall"]).toBe(wall);
  });
  it("a wall that the walk does not have is said", () => {
    findings(room("x").replace("wall x", "⟦wall 5⟧a"), { a: "form/no-such-wall" });
  });
  it("neither half a wall nor none", () => {
    findings(room("⟦0⟧a"), { a: "form/value-expected" });
    findings(room("⟦1.5⟧a"), { a: "form/value-expected" });
  });
});
