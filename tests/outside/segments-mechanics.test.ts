/** What seat and board carry of a body, and where: from printed segment masses and centres, against the rule set's ranges. */
import { describe, expect, test } from "vitest";
import { contains } from "../../language/quantity/interval.js";
import { defaultsWith } from "../rules/scene-for.js";

const range = (name: string) => defaultsWith().get(name)!.interval;

/** Printed parts of body mass, one limb each, and how far along a segment its centre lies. */
interface Table {
  readonly name: string;
  readonly thigh: number;
  readonly shank: number;
  readonly foot: number;
  readonly rest: number;
  readonly thighCentre: number;
}
const tables: readonly Table[] = [
  // Winter, Table 4.1 (after Dempster): trunk .497, head and neck .081, arm .050.
  {
    name: "Winter",
    thigh: 0.1,
    shank: 0.0465,
    foot: 0.0145,
    rest: 0.497 + 0.081 + 2 * 0.05,
    thighCentre: 0.433,
  },
  // De Leva 1996, Table 4: trunk, head, arm.
  {
    name: "de Leva, men",
    thigh: 0.1416,
    shank: 0.0433,
    foot: 0.0137,
    rest: 0.4346 + 0.0694 + 2 * 0.0494,
    thighCentre: 0.4095,
  },
  {
    name: "de Leva, women",
    thigh: 0.1478,
    shank: 0.0481,
    foot: 0.0129,
    rest: 0.4257 + 0.0669 + 2 * 0.0449,
    thighCentre: 0.3612,
  },
  // Plagenhoef 1983: the men's column adds up to 100.7 percent and is made to add up to 100.
  {
    name: "Plagenhoef, men",
    thigh: 0.105,
    shank: 0.0475,
    foot: 0.0143,
    rest: 0.4684 + 0.0896 + 2 * 0.0577,
    thighCentre: 0.433,
  },
  {
    name: "Plagenhoef, women",
    thigh: 0.1175,
    shank: 0.0535,
    foot: 0.0133,
    rest: 0.45 + 0.082 + 2 * 0.0497,
    thighCentre: 0.428,
  },
];
const sum = (t: Table) => t.rest + 2 * (t.thigh + t.shank + t.foot);
/** Thigh of Drillis and Contini: hip .530 less knee .285 of stature. */
const thighLength = 0.53 - 0.285;

describe.each(tables.map((t) => [t.name, t] as const))("%s", (name, t) => {
  test("adds up to the body, but for the men of Plagenhoef, whose column prints 100.7 percent", () => {
    expect(sum(t)).toBeCloseTo(name === "Plagenhoef, men" ? 1.007 : 1, 2);
  });
  test("trunk, head, arms and thighs are .87 to .89 of it: inside the share with the feet on the floor", () => {
    const share = (t.rest + 2 * t.thigh) / sum(t);
    expect(contains(range("load-share-feet-down"), share)).toBe(true);
    expect(share).toBeGreaterThan(0.865);
  });
  test("their middle, the trunk over the hips, lies inside the range ahead of the hip joint", () => {
    const centre = (2 * t.thigh * t.thighCentre * thighLength) / (t.rest + 2 * t.thigh);
    expect(contains(range("seated-centre-feet-down"), centre)).toBe(true);
  });
  test("with shank and foot hanging below the knee or a little ahead of it, the whole body's middle does too", () => {
    for (const ahead of [0, 0.06]) {
      const centre =
        (2 * t.thigh * t.thighCentre * thighLength + 2 * (t.shank + t.foot) * (thighLength + ahead)) / sum(t);
      expect(contains(range("seated-centre-feet-carried"), centre), `${ahead}`).toBe(true);
    }
  });
  test("leaning 30 degrees moves the middle of the load by what the rule set takes", () => {
    // Centre of trunk, head and arms .626 of the way from hip (.530) to shoulder (.818).
    const above = 0.626 * (0.818 - 0.53);
    const shift = (t.rest / (t.rest + 2 * t.thigh)) * above * Math.sin(Math.PI / 6);
    expect(contains(range("lean-shift"), shift)).toBe(true);
  });
});
