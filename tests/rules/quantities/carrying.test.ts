import { describe, expect, test } from "vitest";
import { sceneFor } from "../scene-for.js";
import { mechanics } from "./mechanics-home.js";

const inch = 0.0254;
const degree = Math.PI / 180;
const at = (text: string, name: string, transfer?: string) => sceneFor(text, transfer).get(name);

describe("the board as a beam", () => {
  const exact = mechanics.replace("thickness 3/4 in", "thickness 3/4 in ± 0 in");
  test("is stressed by (3 / 2) P L / (b h^2): worked out from its run, 182 lb x .88 x 1.125", () => {
    const c = sceneFor(exact);
    const run = c.get("board.run").value!.nominal;
    const load = 182 * 4.4482216152605 * c.get("board.load-share").value!.nominal * 1.125;
    const newtonsPerSquareMillimetre = (1.5 * load * run) / (8 * inch * (0.75 * inch) ** 2) / 1e6;
    expect(c.get("board.bending-stress").value!.nominal).toBeCloseTo(newtonsPerSquareMillimetre, 9);
    expect(c.get("board.bending-share").value!.nominal).toBeCloseTo(newtonsPerSquareMillimetre / 51.5, 9);
    const moment = (8 * inch * (0.75 * inch) ** 3) / 12;
    expect(c.get("board.deflection").value!.nominal).toBeCloseTo(
      (load * run ** 3) / (48 * 8.75e9 * moment),
      9,
    );
  });
  test("half as thick is stressed four times and sags eight times as much", () => {
    const half = sceneFor(exact.replace("thickness 3/4 in", "thickness 3/8 in"));
    const whole = sceneFor(exact);
    const ratio = (name: string) => half.get(name).value!.nominal / whole.get(name).value!.nominal;
    expect(ratio("board.bending-stress")).toBeCloseTo(4, 9);
    expect(ratio("board.deflection")).toBeCloseTo(8, 9);
  });
  test("bends over its free span alone where seat and bed sink level on the way, over its run where one stays higher", () => {
    const c = sceneFor(exact);
    expect(c.get("board.rise-start").value!.low).toBeGreaterThan(0);
    expect(c.get("board.rise-end").value!.high).toBeLessThan(0);
    const steep = sceneFor(exact.replace("top 21 in; top-loaded 19 1/2 in", "top 25 in; top-loaded 24 in"));
    const share = (x: typeof c, length: number) =>
      (1.5 * 180 * 4.4482216152605 * x.get("board.load-share").value!.low * length) /
      (8.25 * inch * (0.75 * inch) ** 2) /
      1e6;
    expect(c.get("board.bending-stress").value!.low).toBeCloseTo(share(c, c.get("board.span").value!.low), 9);
    expect(steep.get("board.bending-stress").value!.low).toBeCloseTo(
      share(steep, steep.get("board.run").value!.low),
      9,
    );
  });
  test("has a thickness read on its edge: without a tolerance of its own a sixteenth of an inch", () => {
    const c = at(mechanics, "board.lip").value!;
    expect(c.high / inch).toBeCloseTo(0.75 + 1 / 16, 9);
    expect(c.low / inch).toBeCloseTo((0.75 - 1 / 16) / 4, 9);
    expect(at(mechanics.replace("3/4 in;", "3/4 in ± 1/4 in;"), "board.lip").value!.high / inch).toBeCloseTo(
      1,
      9,
    );
  });
  test("of a material that nobody named is not known to hold, and for a composite there is no handbook", () => {
    expect(at(mechanics.replace(" material plywood;", ""), "board.bending-share").missing).toMatchObject([
      { key: "material" },
    ]);
    expect(at(mechanics.replace("plywood", "composite"), "board.deflection").without).toContain("composite");
    expect(at(mechanics.replace("thickness 3/4 in; ", ""), "board.lip").missing).toMatchObject([
      { key: "thickness" },
    ]);
    expect(
      at(mechanics.replace("thickness 3/4 in", "thickness 0 in ± 0 in"), "board.bending-stress").missing,
    ).toHaveLength(1);
  });
});

describe("the ends of the board", () => {
  test("a board that climbs 2 in over its run tips over the edge by its run times the sine of its slope", () => {
    const c = sceneFor(mechanics);
    const run = c.get("board.run").value!.nominal;
    expect(c.get("board.seesaw").value!.nominal).toBeCloseTo(run * Math.sin(Math.atan((2 * inch) / run)), 9);
  });
  test("the hips pass the wheel by half of the board's width more than the board does, less 5 in behind the hip joint", () => {
    const c = sceneFor(mechanics);
    const wheel = c.get("board.wheel-clearance").value!;
    const hips = c.get("board.hip-clearance").value!;
    expect(hips.nominal).toBeCloseTo(wheel.nominal + 4 * inch - 5 * inch, 9);
    // The board's width is no part of it: its tolerance goes out again.
    const exact = sceneFor(mechanics.replace("width 8 in;", "width 8 in ± 0 in;")).get(
      "board.hip-clearance",
    ).value!;
    expect(hips.high - hips.low).toBeCloseTo(exact.high - exact.low, 9);
  });
});

describe("the turn of the body", () => {
  test("on to a bed is a quarter turn and the chair's angle towards it; turned away it is less", () => {
    expect(at(mechanics, "turn.body").value!.nominal / degree).toBeCloseTo(120, 9);
    expect(
      at(mechanics.replace("30 deg towards", "30 deg away"), "turn.body").value!.nominal / degree,
    ).toBeCloseTo(60, 9);
  });
});

describe("loads", () => {
  test("a lift carries the client's mass and a quarter more while moving", () => {
    const text = mechanics
      .replace("helper daughter", "lift lift-1 { rated-load 400 lb }\nhelper daughter")
      .replace("with board-30, daughter", "with board-30, daughter, lift-1");
    expect(at(text, "load.ratio-lift").value!.high).toBeCloseTo((184 * 1.25) / 400, 9);
    const sling = text
      .replace("lift lift-1", "sling sling-m { rated-load 300 lb }\nlift lift-1")
      .replace("lift-1\n  room", "lift-1, sling-m\n  room");
    expect(at(sling, "load.ratio-sling").value!.high).toBeCloseTo((184 * 1.25) / 300, 9);
    expect(at(mechanics, "load.ratio-lift").without).toBe("no lift is used");
    expect(at(mechanics, "load.ratio-sling").without).toBe("no sling is used");
    expect(at(mechanics, "load.ratio-handle").without).toBe("no handle is used");
  });
  test("a handle carries a quarter to half of the client's mass, and a quarter more while moving", () => {
    const text = mechanics
      .replace("helper daughter", "handle rail { kind overhead; rated-load 150 lb }\nhelper daughter")
      .replace("with board-30, daughter", "with board-30, daughter, rail");
    const ratio = at(text, "load.ratio-handle").value!;
    expect(ratio.low).toBeCloseTo((180 * 0.25) / 150, 9);
    expect(ratio.high).toBeCloseTo((184 * 0.5 * 1.25) / 150, 9);
  });
});
