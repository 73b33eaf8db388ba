import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { householdOf, readSetup, type Library } from "../../../language/model/household.js";
import { formatText } from "../../../language/text/format.js";
import { Scenes } from "../../../rules/scenes.js";

const folder = new URL("../../../samples/", import.meta.url);
const read = (path: string): string => readFileSync(new URL(path, folder), "utf8");
const library: Library = {
  open: (path) => ({ path, tree: readSetup(read(path.replace("../", ""))) }),
};
const plans = readdirSync(folder, { withFileTypes: true })
  .filter((d) => d.isDirectory())
  .map((d) => `${d.name}/home.span`);
/** Before the visit is complete: what is missing there is meant to be. */
const whole = plans.filter((p) => !p.startsWith("measuring-visit"));

const homeOf = (path: string) => householdOf(path, readSetup(read(path)), library);

describe("The sample households", () => {
  it("are there", () => expect(plans.length).toBeGreaterThan(7));
  it.each(whole)("%s: nothing is wrong with its form, and no required value is left out", (path) => {
    expect(homeOf(path).problems.map((p) => `${p.line + 1}: ${p.message}`)).toEqual([]);
  });
  it.each(plans)("%s is laid out as the formatter lays it out", (path) => {
    expect(formatText(read(path))).toBe(read(path));
  });
  it.each(whole)("%s: every written order can be followed step by step", (path) => {
    for (const scene of new Scenes().of(homeOf(path))) {
      expect(scene.from && scene.to, scene.name).toBeDefined();
      const stuck = (scene.run?.possible ?? []).flatMap((p) => (p.ok ? [] : [p.because]));
      expect(stuck, scene.name).toEqual([]);
    }
  });
  it("show both directions of each kind of surface that is tried", () => {
    const ends = plans.flatMap((path) =>
      new Scenes().of(homeOf(path)).map((s) => `${s.from!.kind} ${s.to!.kind}`),
    );
    for (const kind of ["bed", "toilet", "tub-bench", "car-seat"])
      expect(ends).toEqual(expect.arrayContaining([`wheelchair ${kind}`, `${kind} wheelchair`]));
  });
});
