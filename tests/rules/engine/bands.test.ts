import { describe, expect, it } from "vitest";
import { exactly, between } from "../../../language/quantity/interval.js";
import { grade, nearestLimit } from "../../../rules/engine/bands.js";
import { good, head } from "./sets.js";

const rule = good(`${head}
rule height/rise {
  title "t"; for each transfer; judge height.rise
  bands {
    down more than 4 in     stop      "a"
    down 2 in to 4 in       caution   "b"
    down 1 in to 2 in       advice    "c"
    down 1 in to up 1 in    holds
    up 1 in to 2 in         caution   "d"
    up more than 2 in       stop      "e"
  }
  because "b"; common-practice "c"
  examples {
    up 1 in: holds; up 1 1/8 in: caution; up 2 in: caution; up 2 1/8 in: stop
    down 1 in: holds; down 1 1/8 in: advice; down 2 in: advice; down 2 1/8 in: caution
    down 4 in: caution; down 4 1/8 in: stop
    up 1 in ± 1/4 in: unsettled
    up 2 in ± 1/4 in: caution to stop
    assumed 0 in: unsettled
    assumed up 3 in: stop
    without: not-applicable
    unknown: unknown
  }
}`).rules[0]!;
const bands = rule.judged.is === "bands" ? rule.judged.bands : [];
const inch = 0.0254;
const graded = (low: number, high: number, assumed = false) => {
  const g = grade(bands, between(low * inch, high * inch), assumed);
  return `${g.verdict} ${g.best}-${g.worst}`;
};

describe("bands", () => {
  it.each([
    [0, 0, "holds holds-holds"],
    [1, 1, "holds holds-holds"],
    [-1, 1, "holds holds-holds"],
    [1.01, 1.01, "fails caution-caution"],
    [0.9, 1.1, "unsettled holds-caution"],
    [0.9, 2.1, "unsettled holds-stop"],
    [1, 2, "unsettled holds-caution"],
    [1.1, 2, "fails caution-caution"],
    [1.1, 2.1, "fails caution-stop"],
    [-2, -2, "fails advice-advice"],
    [-2.1, -2, "fails advice-caution"],
    [-100, 100, "unsettled holds-stop"],
    [-Infinity, Infinity, "unsettled holds-stop"],
  ])("from %f in to %f in: %s", (low, high, verdict) => {
    expect(graded(low, high)).toBe(verdict);
  });

  it("a value on a boundary belongs to the milder band, also with the last digits of a sum wrong", () => {
    for (const e of [0, 5e-10, -5e-10]) {
      expect(grade(bands, exactly(1 * inch + e), false).verdict).toBe("holds");
      expect(grade(bands, exactly(-2 * inch + e), false).worst).toBe("advice");
    }
  });

  it("what rests on something that a tape could measure may fail, but never holds", () => {
    expect(graded(0, 0, true)).toBe("unsettled holds-caution");
    expect(graded(-0.9, -0.9, true)).toBe("unsettled holds-advice");
    expect(graded(3, 3, true)).toBe("fails stop-stop");
    expect(graded(0.9, 1.1, true)).toBe("unsettled holds-caution");
  });

  it.each([
    [0.25, 0.75, 1],
    [-0.25, 0.75, -1],
    [1.5, -0.5, 1],
    [-3, -2, -1],
  ])("%f in is %f in inside the nearest end of what holds", (x, margin, end) => {
    const near = nearestLimit(bands, x * inch)!;
    expect(near.margin / inch).toBeCloseTo(margin, 9);
    expect(near.end.value / inch).toBeCloseTo(end, 9);
  });
});
