import { describe, expect, it } from "vitest";
import { emptyLibrary, householdOf, readSetup } from "../../language/model/household.js";
import { surfaceKinds } from "../../language/vocabulary/index.js";
import { Scenes } from "../../rules/scenes.js";

const scenesOf = (text: string) => new Scenes().of(householdOf("home.span", readSetup(text), emptyLibrary));
const things = `wheelchair w { brakes both; armrests removable; legrests removable }
bed b { castors locked }
commode c { castors locked; arms both; arms-kind flip-up }
armchair a { arms left; arms-kind fixed }
lift l { }
sling s { for l }
handle h { kind overhead }
helper one { }
helper two { }
`;

describe("Scenes of any surface", () => {
  it.each(surfaceKinds)("from the chair to a %s and back: it is the surface of both", (kind) => {
    const [there, back] = scenesOf(
      `${things}${kind} end { }\ntransfer t { from w to end }\nway-back r of t { }`,
    );
    expect(there).toMatchObject({ direction: "there", chair: { name: "w" }, surface: { kind, name: "end" } });
    expect(back).toMatchObject({ direction: "back", from: { name: "end" }, to: { name: "w" } });
    expect(there!.setup).toMatchObject({ direction: "from-chair", surface: { name: "end", kind } });
    expect(back!.setup.direction).toBe("to-chair");
  });

  it.each([
    ["b", "c", "to-chair"],
    ["c", "b", "from-chair"],
  ])("from %s to %s no wheelchair takes part, and the commode stands in its place", (from, to, direction) => {
    const [scene] = scenesOf(`${things}transfer t { from ${from} to ${to} }`);
    expect(scene!.chair).toBeUndefined();
    expect([scene!.from!.name, scene!.to!.name]).toEqual([from, to]);
    expect(scene!.setup).toMatchObject({
      direction,
      chair: { name: "c", kind: "commode" },
      surface: { name: "b", kind: "bed" },
      brakes: "both",
      armrests: { left: "flip-back", right: "flip-back" },
      legrests: { left: "none", right: "none" },
    });
  });

  it("the arms of a seat are on the sides that are said, and none on the others", () => {
    const [scene] = scenesOf(`${things}transfer t { from w to a }`);
    expect(scene!.setup.surfaceArms).toEqual({ left: "fixed", right: "none" });
    expect(scenesOf(`${things}transfer t { from w to b }`)[0]!.setup.surfaceArms).toBeUndefined();
  });

  it.each([
    ["side left\n facing same", "right"],
    ["side left\n facing opposite", "left"],
    ["side left\n facing square", undefined],
    ["side left\n facing square\n chair-side right", "right"],
  ])("%s: the seat is on the chair's %s", (keys, side) => {
    const [scene] = scenesOf(`${things}transfer t {\n from w to a\n ${keys}\n}`);
    expect(scene!.side).toBe(side);
    expect(scene!.setup.surfaceSide).toBe("left");
  });

  it("helpers, aids and what is said of lines, water and clothing reach the steps", () => {
    const [scene] = scenesOf(
      `${things}client { line none }\ntransfer t {\n from w to b\n with l, s, h, one, two\n wet yes\n skin-covered no\n}`,
    );
    expect(scene).toMatchObject({ sling: { name: "s" }, handle: { name: "h" }, liftMeant: { name: "l" } });
    expect(scene!.setup).toMatchObject({
      helpers: 2,
      lift: true,
      sling: true,
      lines: false,
      wet: true,
      skinCovered: false,
    });
    const [bare] = scenesOf(`${things}transfer t { from w to b }`);
    for (const key of ["lift", "sling", "lines", "wet", "skinCovered"])
      expect(Object.hasOwn(bare!.setup, key), key).toBe(false);
  });

  it("the lift to which a plan turns when it fails is known", () => {
    const text = `${things}transfer t {\n from w to b\n if-not { stop "pain"; meanwhile "wait"; otherwise l }\n}\nway-back r of t { }`;
    expect(scenesOf(text).map((s) => [s.lift?.name, s.liftMeant?.name])).toEqual([
      [undefined, "l"],
      [undefined, "l"],
    ]);
  });

  it("ways to the room, their ramps and the doors they name belong to the scene, and stay the same objects", () => {
    const rooms = `room hall { door front { clear 33 in } }\nroom bedroom { door in-here { clear 31 in } }\n`;
    const ways = `ramp up { rise 7 in; run 7 ft }\nroute r1 { from "the street"; to bedroom; through front, bedroom.in-here; ramp up }\nroute r2 { from bedroom; to hall }\n`;
    const text = `${things}${rooms}${ways}transfer t { from w to b; room bedroom }`;
    const scenes = new Scenes();
    const tree = readSetup(text);
    const [scene] = scenes.of(householdOf("home.span", tree, emptyLibrary));
    const names = (list: readonly { name: string }[]) => list.map((t) => t.name);
    expect([names(scene!.routes), names(scene!.ramps), names(scene!.wayDoors)]).toEqual([
      ["r1"],
      ["up"],
      ["front", "in-here"],
    ]);
    const edited = readSetup(text.replace("castors locked; arms", "castors none; arms"), tree);
    const [after] = scenes.of(householdOf("home.span", edited, emptyLibrary));
    expect(after!.routes).toBe(scene!.routes);
    expect(after!.ramps).toBe(scene!.ramps);
    expect(after!.wayDoors).toBe(scene!.wayDoors);
  });
});
