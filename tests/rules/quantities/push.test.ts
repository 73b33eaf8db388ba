import { describe, expect, test } from "vitest";
import { contains } from "../../../language/quantity/interval.js";
import { home, sceneFor } from "../scene-for.js";
import { mechanics } from "./mechanics-home.js";

const pound = 4.4482216152605;
const degree = Math.PI / 180;
const lbf = (text: string, name: string, transfer?: string) =>
  sceneFor(text, transfer).get(name).value!.nominal / pound;

/** Level from seat to mattress, tried at 17 degrees, feet on the floor: what the arithmetic on paper takes. */
const level = mechanics
  .replace("top 21 in; top-loaded 19 1/2 in", "top 20 in; top-loaded 20 in")
  .replace("seat-height 20 1/2 in", "seat-height 20 in")
  .replace("seat-loaded 19 in", "seat-loaded 20 in")
  .replace("material plywood;", "material plywood; slides-at 17 deg;")
  .replace("    slide\n", "    feet on floor\n    slide\n");

describe("the part of the body on the board", () => {
  const share = (text: string) => sceneFor(text).get("board.load-share").value!;
  test("is about .88 with the feet on the floor and all of it while they hang", () => {
    expect(share(level).nominal).toBeCloseTo(0.8775, 9);
    const hanging = level
      .replace("    feet on floor\n", "")
      .replace("remove legrest left\n", "remove legrest left\n    remove legrest right\n");
    expect(share(hanging).high).toBe(1);
  });
  test("is the one or the other where no steps are written", () => {
    const none = share(level.replace(/ {2}steps \{[^}]*\}\n/, ""));
    expect([none.low, none.nominal, none.high]).toEqual([0.865, 1, 1]);
  });
  test("is that of feet on the floor where the steps are left to be planned", () => {
    expect(sceneFor(level, "out-of-bed").get("board.load-share").value!.high).toBe(0.89);
  });
});

describe("friction", () => {
  const of = (text: string) => sceneFor(text).get("push.friction");
  test("is the tangent of the slope that was tried: tan 17 degrees = .306", () => {
    expect(of(level).value!.nominal).toBeCloseTo(0.3057, 4);
    expect(of(level).assumed).toEqual([]);
  });
  test("is the rule set's range for dry clothing on the board's material where none was tried", () => {
    expect(of(mechanics).value).toMatchObject({ low: 0.2, high: 0.4 });
    expect(of(mechanics.replace("plywood", "plastic")).value).toMatchObject({ low: 0.15, high: 0.3 });
    expect(of(mechanics.replace(" material plywood;", "")).value).toMatchObject({ low: 0.15, high: 0.4 });
  });
  test("is not known for bare skin, and not while nobody said whether it is covered", () => {
    expect(of(mechanics.replace("skin-covered yes", "skin-covered no")).missing).toMatchObject([
      { key: "slides-at" },
    ]);
    expect(of(home).missing).toMatchObject([{ key: "skin-covered" }]);
  });
  test("of bare skin is what was tried, where it was tried", () => {
    expect(of(level.replace("skin-covered yes", "skin-covered no")).value!.nominal).toBeCloseTo(0.3057, 4);
  });
});

describe("the push along the board", () => {
  test("on the level is the friction of the weight on it: 182 lb x .8775 x .3057 = 48.8 lbf", () => {
    for (const name of ["push.along-board-start", "push.along-board-end"])
      expect(lbf(level, name)).toBeCloseTo(182 * 0.8775 * Math.tan(17 * degree), 6);
  });
  test("first takes more, while three eighths still drag on cloth of friction .455: 58 lbf", () => {
    const mixed = Math.tan(17 * degree) * 0.625 + 0.455 * 0.375;
    expect(lbf(level, "push.leaving")).toBeCloseTo(182 * 0.8775 * mixed, 6);
    expect(lbf(level, "push.leaving-extra")).toBeCloseTo(
      182 * 0.8775 * 0.375 * (0.455 - Math.tan(17 * degree)),
      6,
    );
    expect(lbf(level, "push.peak")).toBeCloseTo(lbf(level, "push.leaving"), 9);
    expect(sceneFor(level).get("push.of-weight").value!.nominal).toBeCloseTo(0.8775 * mixed, 9);
  });
  test("up a climb takes the sine of the slope besides, down a drop it is less by that", () => {
    const c = sceneFor(level.replace("top 20 in;", "top 22 in;"));
    const t = Math.atan((2 * 0.0254) / c.get("board.run-bed-higher").value!.nominal);
    expect(c.get("board.incline-start").value!.nominal).toBeCloseTo(t, 9);
    const mu = Math.tan(17 * degree);
    expect(c.get("push.along-board-start").value!.nominal / pound).toBeCloseTo(
      182 * 0.8775 * (Math.sin(t) + mu * Math.cos(t)),
      6,
    );
    const back = sceneFor(level.replace("top-loaded 20 in", "top-loaded 22 in"), "out-of-bed");
    const d = back.get("board.incline-start").value!.nominal;
    expect(d).toBeLessThan(0);
    expect(back.get("push.along-board-start").value!.nominal / pound).toBeCloseTo(
      182 * 0.8775 * (Math.sin(d) + mu * Math.cos(d)),
      6,
    );
  });
  test("is shown in pounds of force where the mass was written in pounds, in newtons where in kilograms", () => {
    expect(sceneFor(level).get("push.peak").unit).toEqual({ unit: "lbf" });
    expect(sceneFor(level.replace("mass 182 lb", "mass 82.6 kg")).get("push.peak").unit).toEqual({
      unit: "N",
    });
  });
  test("17 degrees of sliding and a level board leave 17 degrees", () => {
    expect(sceneFor(level).get("push.runaway").value!.nominal / degree).toBeCloseTo(17, 6);
  });
  test("without a board there is none to slide on", () => {
    const none = level.replace("  with board-30, daughter", "  no-board\n  with daughter");
    for (const name of ["push.peak", "push.runaway", "push.friction", "helper.all", "client.must-give"])
      expect(sceneFor(none).get(name).without, name).toBe("no board is used");
  });
});

describe("what helpers pull", () => {
  const two = level
    .replace("helper daughter", "helper son { trained yes; safe-pull 20 lbf }\nhelper daughter")
    .replace("with board-30, daughter", "with board-30, daughter, son");
  test("is half of the greatest push at moderate assistance, all of it for one who is dependent, none at supervision", () => {
    const peak = lbf(level, "push.peak");
    expect(lbf(level, "helper.all")).toBeCloseTo(peak, 9);
    expect(lbf(level, "helper.expected")).toBeCloseTo(peak / 2, 9);
    expect(lbf(level.replace("assistance moderate", "assistance dependent"), "helper.expected")).toBeCloseTo(
      peak,
      9,
    );
    expect(lbf(level.replace("assistance moderate", "assistance supervision"), "helper.expected")).toBe(0);
  });
  test("is halved by a second helper, but not again by a third", () => {
    const peak = lbf(level, "push.peak");
    expect(lbf(two, "helper.all")).toBeCloseTo(peak / 2, 9);
    const three = two
      .replace("helper son", "helper niece { safe-pull 25 lbf }\nhelper son")
      .replace("daughter, son", "daughter, son, niece");
    expect(lbf(three, "helper.all")).toBeCloseTo(peak / 2, 9);
    expect(lbf(level, "helper.expected-of-two")).toBeCloseTo(peak / 4, 9);
  });
  test("leaves to the client what they may not pull: 1 - 30 / 58.0 of it, and 1 - 50 / 58.0 with two", () => {
    const peak = lbf(level, "push.peak");
    expect(sceneFor(level).get("client.must-give").value!.nominal).toBeCloseTo(1 - 30 / peak, 9);
    expect(sceneFor(two).get("client.must-give").value!.nominal).toBeCloseTo(1 - 50 / peak, 9);
    expect(peak).toBeCloseTo(58, 0);
  });
  test("is not known without a level of assistance, nor what is left to the client without the helper's pull", () => {
    expect(
      sceneFor(level.replace("  assistance moderate\n", "")).get("helper.expected").missing,
    ).toMatchObject([{ key: "assistance" }]);
    expect(sceneFor(level.replace("; safe-pull 30 lbf", "")).get("client.must-give").missing).toMatchObject([
      { key: "safe-pull" },
    ]);
  });
  test("is nobody's where nobody helps", () => {
    expect(
      sceneFor(level.replace("with board-30, daughter", "with board-30")).get("helper.all").without,
    ).toBe("nobody helps");
  });
});

test("the mass's tolerance stands in every force once: ±2 lb of 182 widen a level push by no more than that", () => {
  const exact = level.replace("slides-at 17 deg", "slides-at 17 deg ± 0 deg");
  const push = sceneFor(exact).get("push.along-board-end").value!;
  expect(contains(push, 182 * 0.8775 * Math.tan(17 * degree) * pound)).toBe(true);
  const slope = sceneFor(exact).get("board.incline-end").value!;
  expect(push.high).toBeLessThanOrEqual(
    184 * 0.89 * (Math.sin(slope.high) + Math.tan(17 * degree)) * pound + 1e-9,
  );
});
