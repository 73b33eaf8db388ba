/** Lengths of the body: as measured, else a part of stature, and then with all the doubt that people differ by. */
import { describe, expect, test } from "vitest";
import type { Interval } from "../../../language/quantity/interval.js";
import { home, sceneFor } from "../scene-for.js";
import { inCar } from "./everything-home.js";

const inch = 0.0254;
const inches = ({ low, nominal, high }: Interval): number[] => [low / inch, nominal / inch, high / inch];
const near = (i: Interval | undefined, expected: readonly number[]): void => {
  for (const [n, x] of inches(i!).entries()) expect(x).toBeCloseTo(expected[n]!, 9);
};
const stature = "  stature 5 ft 9 in\n";
const withKey = (line: string, text = home): string => text.replace(stature, `${stature}  ${line}\n`);
const at = (text: string, name: string, transfer?: string) => sceneFor(text, transfer).get(name);
const names = (assumed: readonly { readonly name: string }[]): string[] => assumed.map((a) => a.name).sort();

describe("where the hip joint must lie", () => {
  test("from stature: the pillow and 44.5 to 52 % of it, and a tape could tell", () => {
    const target = at(home, "landing.target");
    near(target.value, [2 + 0.445 * 68.75, 4 + 0.4825 * 69, 6 + 0.52 * 69.25]);
    expect(target.assumed).toContainEqual(expect.objectContaining({ name: "hip-fraction", tapeable: true }));
  });
  test("as measured from the top of the head it takes the place of the part of stature", () => {
    const target = at(withKey("head-to-hip 33 in ± 1/2 in"), "landing.target");
    near(target.value, [2 + 32.5, 4 + 33, 6 + 33.5]);
    expect(names(target.assumed)).toEqual(["pillow-allowance"]);
  });
  test("measured, it needs no stature; without either it is not known", () => {
    const short = withKey("head-to-hip 33 in ± 1/2 in").replace(stature, "");
    near(at(short, "landing.target").value, [34.5, 37, 39.5]);
    const none = at(home.replace(stature, ""), "landing.target");
    expect(none.value).toBeUndefined();
    expect(none.missing).toMatchObject([{ key: "stature" }]);
  });
  test("written unknown, it is still assumed", () => {
    expect(at(withKey("head-to-hip unknown"), "landing.target").value).toEqual(
      at(home, "landing.target").value,
    );
  });
});

describe("how high an edge is against the hollow of the knee", () => {
  const edge = [19.25, 19.5, 19.75] as const;
  test("from stature: 21.5 to 26.5 % of it, and up to an inch of sole, either of which lifts the knee", () => {
    const over = at(home, "height.over-popliteal");
    near(over.value, [edge[0] - 0.265 * 69.25 - 1, edge[1] - 0.24 * 69 - 0.5, edge[2] - 0.215 * 68.75]);
    expect(names(over.assumed)).toEqual(["popliteal-fraction", "sole-thickness"]);
    expect(over.assumed.find((a) => a.name === "popliteal-fraction")!.tapeable).toBe(true);
  });
  test("as measured in the shoes that are worn, nothing is assumed", () => {
    const over = at(withKey("popliteal-height 17 in"), "height.over-popliteal");
    near(over.value, [edge[0] - 17.25, edge[1] - 17, edge[2] - 16.75]);
    expect(over.assumed).toEqual([]);
  });
  test("is the same on the way back, where the same edge is sat on", () => {
    const text = withKey("popliteal-height 17 in ± 0 in");
    expect(at(text, "height.over-popliteal", "out-of-bed").value).toEqual(
      at(text, "height.over-popliteal").value,
    );
  });
  test("where the bed is set otherwise for this move, the edge moves with it and sinks as measured", () => {
    const set = withKey("popliteal-height 17 in ± 0 in")
      .replace("top 21 in; top-loaded 19 1/2 in", "top 21 in ± 0 in; top-loaded 19 1/2 in ± 0 in")
      .replace("  along 40 in\n", "  along 40 in\n  set bed 23 in ± 0 in\n");
    near(at(set, "height.over-popliteal").value, [4.5, 4.5, 4.5]);
  });
  test("of an edge on which nobody sat it is not known: no usual sinking stands in", () => {
    const over = at(home.replace("top-loaded 19 1/2 in; ", ""), "height.over-popliteal");
    expect(over.value).toBeUndefined();
    expect(over.missing).toMatchObject([{ key: "top-loaded" }]);
  });
  test("without stature or a measurement it is not known", () => {
    expect(at(home.replace(stature, ""), "height.over-popliteal").missing).toMatchObject([
      { key: "stature" },
    ]);
  });
});

describe("what the door of a car leaves to whoever sits in it", () => {
  const measured = inCar.replace(
    "stature 5 ft 9 in",
    "stature 5 ft 9 in; buttock-knee-length 24 in ± 1/4 in",
  );
  test("from stature: 32.5 to 40 % of it, and a tape could tell", () => {
    const left = at(inCar, "door.past-knees", "into-car");
    near(left.value, [29.5 - 0.4 * 69.25, 30 - 0.3625 * 69, 30.5 - 0.325 * 68.75]);
    expect(left.assumed).toMatchObject([{ name: "buttock-knee-fraction", tapeable: true }]);
  });
  test("as measured, nothing is assumed and no stature is needed, there and back", () => {
    for (const text of [measured, measured.replace("stature 5 ft 9 in; ", "")])
      for (const transfer of ["into-car", "out-of-car"]) {
        const left = at(text, "door.past-knees", transfer);
        near(left.value, [29.5 - 24.25, 6, 30.5 - 23.75]);
        expect(left.assumed).toEqual([]);
      }
  });
  test("without the opening, or without stature or a measurement, it is not known", () => {
    const shut = measured.replace("door-opening 30 in ± 1/2 in", "top 22 in");
    expect(at(shut, "door.past-knees", "into-car").missing).toMatchObject([{ key: "door-opening" }]);
    const unmeasured = inCar.replace("stature 5 ft 9 in", "hip-breadth 16 in");
    expect(at(unmeasured, "door.past-knees", "into-car").missing).toMatchObject([{ key: "stature" }]);
  });
  test("beside a bed it does not apply", () => {
    expect(at(home, "door.past-knees").without).toBe("no car takes part");
  });
});
