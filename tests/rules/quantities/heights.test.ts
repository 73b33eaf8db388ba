import { describe, expect, test } from "vitest";
import { home, sceneFor } from "../scene-for.js";

const inch = 0.0254;
const at = (text: string, name: string, transfer?: string) => sceneFor(text, transfer).get(name);
const nominal = (text: string, name: string, transfer?: string) =>
  at(text, name, transfer).value!.nominal / inch;

describe("height sat on", () => {
  test("is as measured where it was measured", () => {
    expect(nominal(home, "height.loaded-from")).toBeCloseTo(19, 9);
    expect(nominal(home, "height.loaded-to")).toBeCloseTo(19.5, 9);
    expect(at(home, "height.rise").assumed).toEqual([]);
  });
  test("is less than the empty one by the usual sinking where it was not, and says so", () => {
    const text = home.replace("top-loaded 19 1/2 in; ", "");
    const loaded = at(text, "height.loaded-to");
    expect(loaded.value!.low / inch).toBeCloseTo(21 - 0.25 - 2, 9);
    expect(loaded.value!.high / inch).toBeCloseTo(21 + 0.25 - 1, 9);
    expect(at(text, "height.rise").assumed).toMatchObject([{ name: "sink-edge-firm", tapeable: true }]);
  });
  test("is not known for a bed whose edge is not described", () => {
    const text = home.replace("top-loaded 19 1/2 in; ", "").replace("edge firm; ", "");
    expect(at(text, "height.loaded-to").missing).toMatchObject([{ key: "top-loaded" }]);
  });
  test("is not known for a chair of which neither loaded height nor cushion is said", () => {
    const text = home.replace("  seat-loaded 19 in\n", "").replace(/ {2}cushion.*\n/, "");
    expect(at(text, "height.rise").missing).toMatchObject([{ key: "seat-loaded" }]);
  });
  test("in a bare sling the client sits lower than its rails", () => {
    const text = home.replace("  seat-loaded 19 in\n", "  seat sling\n").replace("kind foam", "kind none");
    expect(at(text, "height.loaded-from").assumed).toMatchObject([{ name: "sink-sling" }]);
  });
});

describe("rise of body and board", () => {
  test("up is above zero, and the way back is down by as much", () => {
    expect(nominal(home, "height.rise")).toBeCloseTo(0.5, 9);
    expect(nominal(home, "height.rise", "out-of-bed")).toBeCloseTo(-0.5, 9);
  });
  test("the board rises more while the client still sits on the chair and the bed is empty", () => {
    expect(nominal(home, "board.rise-start")).toBeCloseTo(21 - 19, 9);
    expect(nominal(home, "board.rise-end")).toBeCloseTo(19.5 - 20.5, 9);
  });
  test("a board rests on the rail where the sat-on seat is lower, and on the cushion where that is higher", () => {
    const rail = home.replace("  seat-width", "  rail-height 20 in\n  seat-width");
    expect(nominal(rail, "height.rest-empty-from")).toBeCloseTo(20.5, 9);
    expect(nominal(rail, "height.rest-loaded-from")).toBeCloseTo(20, 9);
  });
  test("what the seat sinks says nothing where the board rests on a rail well above it", () => {
    const rail = home.replace("  seat-loaded 19 in\n", "  rail-height 20 1/2 in\n");
    expect(at(rail, "height.rest-loaded-from").assumed).toEqual([]);
  });
  test("on a seat that slopes it rests at its own place between front and rear: 21 in less 4 5/8 of 18 in of the 1 1/2 in", () => {
    const sloping = home.replace("  seat-width", "  seat-front 21 in\n  seat-rear 19 1/2 in\n  seat-width");
    const there = 21 - (1.5 * (4 / Math.cos(Math.PI / 6))) / 18;
    expect(nominal(sloping, "height.rest-empty-from")).toBeCloseTo(there, 9);
    // Sat on, it sinks as far as the seat was measured to sink beside the hip.
    expect(nominal(sloping, "height.rest-loaded-from")).toBeCloseTo(there - 1.5, 9);
    expect(nominal(sloping.replace("  seat-loaded 19 in\n", ""), "height.rest-loaded-from")).toBeCloseTo(
      there - 1.5,
      9,
    );
    expect(nominal(sloping, "height.rise")).toBeCloseTo(0.5, 9);
  });
  test("without a board there is none to rise", () => {
    const none = home.replace("  with board-30, daughter", "  no-board");
    expect(at(none, "board.rise-start").without).toBe("no board is used");
    expect(at(none, "board.slope").without).toBe("no board is used");
    expect(at(home.replace("with board-30, daughter", "with daughter"), "board.slope").missing).toMatchObject(
      [{ key: "with" }],
    );
  });
});

describe("slope", () => {
  test("is taken over the length from the board's lower end to the higher edge", () => {
    const c = sceneFor(home);
    const run = c.get("board.run-bed-higher").value!.nominal;
    expect(c.get("board.slope-start").value!.nominal).toBeCloseTo(Math.atan((2 * inch) / run), 9);
    const other = c.get("board.run-seat-higher").value!.nominal;
    expect(c.get("board.slope-end").value!.nominal).toBeCloseTo(Math.atan(inch / other), 9);
  });
  test("the steeper of start and end is judged", () => {
    const c = sceneFor(home);
    expect(c.get("board.slope").value!.high).toBe(
      Math.max(c.get("board.slope-start").value!.high, c.get("board.slope-end").value!.high),
    );
  });
  test("on the way back the same ends of the board lie where they lay", () => {
    const back = sceneFor(home, "out-of-bed");
    // Start: the bed sat on, the chair empty: 20 1/2 - 19 1/2 = up 1 in towards the chair.
    expect(back.get("board.slope-start").value!.nominal).toBeCloseTo(
      Math.atan(inch / back.get("board.run-seat-higher").value!.nominal),
      9,
    );
  });
});

describe("loads", () => {
  test("the client's mass with the factor for moving, as a part of each rated load", () => {
    const c = sceneFor(home);
    expect(c.get("load.ratio-chair").value!.low).toBeCloseTo(180 / 300, 9);
    expect(c.get("load.ratio-chair").value!.high).toBeCloseTo((184 * 1.25) / 300, 9);
    expect(c.get("load.ratio-board").value!.high).toBeCloseTo((184 * 1.25) / 400, 9);
    expect(c.get("load.ratio-surface").value!.high).toBeCloseTo((184 * 1.25) / 450, 9);
  });
  test("a thing without a rated load is not known to carry anybody", () => {
    const c = sceneFor(home.replace("; rated-load 400 lb", ""));
    expect(c.get("load.ratio-board").value).toBeUndefined();
    expect(c.get("load.ratio-board").missing).toMatchObject([{ key: "rated-load" }]);
  });
});
