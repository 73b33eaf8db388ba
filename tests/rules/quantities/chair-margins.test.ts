import { describe, expect, test } from "vitest";
import { exactly } from "../../../language/quantity/interval.js";
import { defaultsWith, sceneFor } from "../scene-for.js";
import { mechanics } from "./mechanics-home.js";

const inch = 0.0254;
const pound = 0.45359237;
/** Everything exact, so that a hand can follow: castors 14 in ahead of the seat's rear edge, track 23 in, lean 5 in. */
const exact = defaultsWith({
  "load-share-feet-down": exactly(0.88),
  "seated-centre-feet-down": exactly(2 / 69),
  "seated-centre-feet-carried": exactly(4 / 69),
  "lean-shift": exactly(5 / 69),
  "castor-stem": exactly(-2 * inch),
  "castor-trail": exactly(2 * inch),
  "castor-contact-outside": exactly(0.5 * inch),
  "hand-rim-depth": exactly(0.5 * inch),
  "tyre-width-default": exactly(1 * inch),
  "chair-centre-ahead": exactly(3 * inch),
  "hip-from-seat-rear": exactly(5 * inch),
  "scoot-forward": exactly(4 * inch),
  "chair-share-of-push": exactly(0),
  "friction-tyre-floor": exactly(0.6),
  "tolerance-length-measured": exactly(0),
  "tolerance-mass-measured": exactly(0),
  "tolerance-mass-stated": exactly(0),
});
const text = mechanics.replace("    slide\n", "    feet on floor\n    slide\n");
const c = (t = text, transfer?: string) => sceneFor(t, transfer, exact);
const inches = (t: string, name: string, transfer?: string) => c(t, transfer).get(name).value!.nominal / inch;

/** The client's 182 lb x .88 on the seat, the chair's 38 lb: what part of the load is the client's. */
const part = (182 * 0.88) / (182 * 0.88 + 38);

describe("forward", () => {
  test("scooted forward the load lies 11 in ahead of the seat's rear edge, castors 14 in: by moments 4.5 in are left", () => {
    const load = part * 11 + (1 - part) * 3;
    expect(load).toBeCloseTo(9.47, 2);
    expect(
      inches(text.replace("with board-30, daughter", "no-board\n  with daughter"), "chair.forward-margin"),
    ).toBeCloseTo(14 - load, 9);
  });
  test("is least over the seat end of the board where that lies further forward than the client sits", () => {
    const f = c().get("chair.forward-margin");
    expect(["scooted", "over-seat-end"]).toContain(f.choice);
    expect(f.trace.filter((t) => t.label.startsWith("scooted")).length).toBe(1);
    expect(f.unit.unit).toBe("in");
  });
  test("leaning 30 degrees forward takes 5 in of the client's part", () => {
    const none = text.replace("with board-30, daughter", "no-board\n  with daughter");
    expect(inches(none, "chair.forward-margin") - inches(none, "chair.forward-margin-leaning")).toBeCloseTo(
      5 * part,
      9,
    );
  });
  test("feet on the plates carry the whole body on the chair, further forward", () => {
    const whole = 182 / (182 + 38);
    expect(inches(text, "chair.forward-margin-plates")).toBeCloseTo(14 - (whole * 13 + (1 - whole) * 3), 9);
  });
  test("an axle further forward moves neither castors nor client, but the chair's own mass", () => {
    const moved = text
      .replace("axle 0 in", "axle 2 in")
      .replace("with board-30, daughter", "no-board\n  with daughter");
    expect(inches(moved, "chair.forward-margin")).toBeCloseTo(14 - (part * 11 + (1 - part) * 5), 9);
  });
  test("turning castors of 2 in trail forward gains 4 in; a trail that was written counts", () => {
    expect(inches(text, "chair.castor-gain")).toBeCloseTo(4, 9);
    expect(
      c(text.replace("from chair-18 to bed", "from bed to bed")).get("chair.castor-gain").value,
    ).toBeUndefined();
  });
});

describe("sideways", () => {
  test("leaning 30 degrees away, scooted, the line from drive wheel to castor is left by its own distance less 5 in of the client's part", () => {
    // Half track 12.5 - .5 - .5 = 11.5 in at the drive wheels, half seat 9 + .5 = 9.5 in at the castors, 14 in ahead.
    const load = part * 11 + (1 - part) * 3;
    const line = 11.5 + ((9.5 - 11.5) * load) / 14;
    expect(inches(text, "chair.side-margin-leaning")).toBeCloseTo(line - 5 * part, 9);
  });
  test("over the edge of a higher seat the client's part of half of the seat's width counts", () => {
    const higher = text.replace("top 21 in; top-loaded 19 1/2 in", "top 18 in; top-loaded 17 in");
    const s = c(higher);
    expect(s.get("chair.side-margin").choice).toBe("over-seat-end");
    const back = s.get("board.wheel-clearance").value!;
    expect(back).toBeDefined();
    // Straight sideways: wherever along the chair the load is, the line lies between 9.5 and 11.5 in from the middle.
    const margin = s.get("chair.side-margin").value!.nominal / inch;
    expect(margin).toBeGreaterThan(9.5 - part * 9);
    expect(margin).toBeLessThan(11.5 - part * 9);
  });
  test("on a lower seat the board bears at its inner end, further in: more is left", () => {
    const lower = text.replace("top 21 in; top-loaded 19 1/2 in", "top 23 in; top-loaded 22 in");
    const higher = text.replace("top 21 in; top-loaded 19 1/2 in", "top 18 in; top-loaded 17 in");
    expect(inches(lower, "chair.side-margin")).toBeGreaterThan(inches(higher, "chair.side-margin") + 1);
  });
  test("a push away from the bed moves the load away from it and takes nothing from the near side", () => {
    const pushing = defaultsWith({
      ...Object.fromEntries(
        ["load-share-feet-down", "castor-stem", "castor-trail"].map((n) => [n, exact.get(n)!.interval]),
      ),
      "chair-share-of-push": exactly(0.33),
    });
    const still = defaultsWith({
      ...Object.fromEntries(
        ["load-share-feet-down", "castor-stem", "castor-trail"].map((n) => [n, exact.get(n)!.interval]),
      ),
      "chair-share-of-push": exactly(0),
    });
    const higher = text.replace("top 21 in; top-loaded 19 1/2 in", "top 18 in; top-loaded 17 in");
    const near = (d: typeof still) => sceneFor(higher, "into-bed", d).get("chair.side-margin").value!.nominal;
    expect(near(pushing)).toBeGreaterThan(near(still) + inch);
  });
});

describe("the hold of the locked chair", () => {
  test("with no push into the chair, is .6 of what stands on the drive wheels, by moments about the castors", () => {
    const strong = {
      get: (n: string) => (n === "lock-slope" ? { ...exact.get(n)!, interval: exactly(1.5) } : exact.get(n)),
    };
    const s = sceneFor(text, "into-bed", strong);
    const of = (name: string, label: string) =>
      s.get(name).trace.find((t) => t.label === label)!.value!.nominal;
    for (const [label, share] of [
      ["over the seat end of the board", 0.88],
      ["half way over", 0.44],
    ] as const) {
      const weight = (182 * share + 38) * pound * 9.80665;
      const onWheels = of("chair.forward-margin", label) / (14 * inch);
      expect(of("chair.hold", label)).toBeCloseTo(0.6 * weight * onWheels, 6);
    }
  });
  test("locks that hold on 7 degrees hold (182 + 38) lb x sin 7 degrees = 26.8 lbf, where the floor holds more", () => {
    const slope = (7 * Math.PI) / 180;
    const weak = {
      get: (n: string) =>
        n === "lock-slope"
          ? { ...exact.get(n)!, interval: exactly(slope) }
          : n === "friction-tyre-floor"
            ? { ...exact.get(n)!, interval: exactly(50) }
            : exact.get(n),
    };
    const hold = sceneFor(text, "into-bed", weak).get("chair.hold").value!.nominal;
    expect(hold).toBeCloseTo((182 + 38) * pound * 9.80665 * Math.sin(slope), 6);
    expect(hold / 4.4482216152605).toBeCloseTo(26.8, 1);
  });
});

describe("what is not known", () => {
  test("without the axle's place, the client's mass or stature nothing is said of tipping", () => {
    for (const [gone, key] of [
      [/ {2}drive-wheel.*\n/, "drive-wheel"],
      [/ {2}mass 182 lb\n/, "mass"],
      [/ {2}stature.*\n/, "stature"],
    ] as const)
      expect(
        c(text.replace(gone, ""))
          .get("chair.forward-margin")
          .missing.map((m) => m.key),
      ).toContain(key);
  });
  test("bare skin leaves the push open, not the margins: any friction is taken", () => {
    const bare = sceneFor(text.replace("skin-covered yes", "skin-covered no"));
    expect(bare.get("push.peak").value).toBeUndefined();
    expect(bare.get("chair.side-margin").value).toBeDefined();
    expect(bare.get("chair.hold").assumed.map((a) => a.name)).toContain("friction-any");
    expect(
      sceneFor(text)
        .get("chair.hold")
        .assumed.map((a) => a.name),
    ).not.toContain("friction-any");
  });
  test("a chair whose castors would stand behind its drive wheels is not believed", () => {
    const odd = c(text.replace("axle 0 in", "axle 16 in"));
    expect(odd.get("chair.forward-margin").value).toBeUndefined();
    expect(odd.get("chair.forward-margin").missing).toMatchObject([{ key: "drive-wheel" }]);
  });
});
