/**
 * Closed traverses with printed answers: two surveying courses, bearings and distances given, with the sums of their latitudes and
 * departures, their closure and their precision. Figures as printed; where a printed sum was made of rounded rows, to the last digit.
 */
import { describe, expect, test } from "vitest";
import { exactly } from "../../language/quantity/interval.js";
import { area, closure } from "../../rules/plan/traverse.js";

/** `S 68-05-35 W 472.68`: bearing in degrees, minutes, seconds, and the distance. */
function leg(text: string) {
  const [, ns, bearing, ew, distance] = /^([NS]) ([\d-]+) ([EW]) ([\d.]+)$/.exec(text)!;
  const [d, m = 0, s = 0] = bearing!.split("-").map(Number);
  const angle = ((d! + m / 60 + s / 3600) * Math.PI) / 180;
  const length = Number(distance);
  return {
    east: exactly((ew === "E" ? 1 : -1) * length * Math.sin(angle)),
    north: exactly((ns === "N" ? 1 : -1) * length * Math.cos(angle)),
  };
}

describe("a loop of four lines in feet (Mahun, Traverse Computations, chapter I)", () => {
  const legs = [
    "S 68-05-35 W 472.68",
    "N 19-46-00 W 216.13",
    "N 45-55-20 E 276.52",
    "S 54-59-15 E 382.24",
  ].map(leg);
  test("latitudes and departures, line by line", () => {
    expect(legs.map((l) => l.north.nominal.toFixed(3))).toEqual([
      "-176.357",
      "203.395",
      "192.357",
      "-219.312",
    ]);
    expect(legs.map((l) => l.east.nominal.toFixed(3))).toEqual(["-438.548", "-73.093", "198.651", "313.065"]);
  });
  test("their sums, the closure and its precision", () => {
    const c = closure(legs);
    expect(c.north.nominal).toBeCloseTo(0.083, 3);
    expect(c.east.nominal).toBeCloseTo(0.075, 2);
    expect(c.perimeter.nominal).toBeCloseTo(1347.57, 9);
    expect(c.error.nominal).toBeCloseTo(0.1112, 4);
    expect(c.perimeter.nominal / c.error.nominal / 12116).toBeCloseTo(1, 3);
  });
});

describe("a loop of four lines in metres, that closes badly (a lecture's worked example)", () => {
  const legs = ["N 76 E 80.40", "S 36 E 46.30", "S 61 W 72.80", "N 38 W 68.00"].map(leg);
  test("latitudes as printed", () => {
    expect(legs.map((l) => l.north.nominal.toFixed(3))).toEqual(["19.451", "-37.457", "-35.294", "53.585"]);
  });
  test("sums within the last digit of the printed ones, which were made of rounded rows", () => {
    const c = closure(legs);
    expect(Math.abs(c.north.nominal - 0.285)).toBeLessThan(0.002);
    expect(Math.abs(c.east.nominal + 0.311)).toBeLessThan(0.002);
    expect(Math.abs(c.perimeter.nominal / c.error.nominal - 635.5)).toBeLessThan(0.1);
  });
});

test("a printed table that does not close is found out (five lines; it printed an error of 0.32)", () => {
  const north = [220.77, -74.96, -133.77, -23.14, 11.07];
  const east = [-298.17, -80.81, 40.86, 100.49, 319.67];
  const c = closure(north.map((n, k) => ({ north: exactly(n), east: exactly(east[k]!) })));
  expect(c.north.nominal).toBeCloseTo(-0.03, 6);
  expect(c.east.nominal).toBeCloseTo(82.04, 6);
  expect(c.error.nominal / c.perimeter.nominal).toBeGreaterThan(1 / 20);
});

test("the area inside the adjusted loop is the printed one", () => {
  // A at 500 N, 2000 E; B, C and D after the compass rule, as printed.
  const points = [
    { x: 2000, y: 500 },
    { x: 1561.426, y: 323.614 },
    { x: 1488.321, y: 526.996 },
    { x: 1686.956, y: 719.336 },
  ];
  expect(Math.abs(area(points)) / 102935.7).toBeCloseTo(1, 5);
});
