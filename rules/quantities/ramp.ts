/** Ramps on the way to the room: their slope, run, width and landings. The worst of several is told. */
import { divide, type Interval } from "../../language/quantity/interval.js";
import type { Thing } from "../../language/model/types.js";
import type { Of, Outcome } from "../quantity.js";
import type { Scene } from "../scene.js";
import { absent, derived, isWritten } from "./inputs.js";
import type { Inputs } from "./standing.js";
import { greatestOf, item, leastOf, list, listed, noRamp, rampsOf } from "./way-parts.js";

type Handed = Readonly<Record<string, unknown>>;

const each = (s: Scene, of: Of, key: string, words: string): Inputs => {
  const ramps = rampsOf(s);
  if (ramps.length === 0) return { none: noRamp };
  return list(
    key,
    ramps.map((r) => item(of, r, key, r.name, `${words} of the ramp ${r.name}`)),
  );
};

/** Rise over run of a ramp: both are positive, so its ends come from opposite ends of theirs. */
export const slopeOf = (rise: Interval, run: Interval): Interval => divide(rise, run);

export const rampSlope = derived({
  name: "ramp.slope",
  dimension: "ratio",
  says: "slope of the steepest ramp on the way to the room, as rise over run: 1:12 is 8.3 %",
  formula: "rise / run, run taken level; the greatest of all ramps",
  source: "plane geometry",
  inputs: (s: Scene, of: Of): Inputs => ({
    ...each(s, of, "rise", "the rise"),
    ...each(s, of, "run", "the run"),
  }),
  compute: (i: Handed): Outcome => {
    const runs = listed(i, "run");
    const flat = runs.find((r) => r.value.low <= 0);
    if (flat) return { missing: [{ what: `the run of the ramp ${flat.name}`, key: "run" }] };
    const worst = greatestOf(
      listed(i, "rise").map((r, n) => ({ name: r.name, value: slopeOf(r.value, runs[n]!.value) })),
    )!;
    return { value: worst.value, choice: worst.name };
  },
});

export const rampRise = derived({
  name: "ramp.rise",
  dimension: "length",
  says: "rise of the highest ramp on the way to the room",
  formula: "greatest of the rises of all ramps",
  source: "difference of heights",
  inputs: (s: Scene, of: Of): Inputs => each(s, of, "rise", "the rise"),
  compute: (i: Handed): Outcome => {
    const worst = greatestOf(listed(i, "rise"))!;
    return { value: worst.value, choice: worst.name };
  },
});

export const rampRun = derived({
  name: "ramp.run",
  dimension: "length",
  says: "level length that the highest ramp on the way to the room asks for at the usual slope",
  formula: "rise / usual slope, 12 x the rise at 1:12; the greatest of all ramps",
  source: "2010 ADA Standards, 405.2",
  inputs: (s: Scene, of: Of): Inputs => ({
    ...each(s, of, "rise", "the rise"),
    usual: of.default("ramp-usual"),
  }),
  compute: (i: Handed): Outcome => {
    const worst = greatestOf(listed(i, "rise"))!;
    return { value: divide(worst.value, i["usual"] as Interval), choice: worst.name };
  },
});

export const rampWidth = derived({
  name: "ramp.width",
  dimension: "length",
  says: "clear width of the narrowest ramp on the way to the room",
  formula: "least clear width of all ramps",
  source: "plane geometry",
  inputs: (s: Scene, of: Of): Inputs => each(s, of, "width", "the clear width"),
  compute: (i: Handed): Outcome => {
    const worst = leastOf(listed(i, "width"))!;
    return { value: worst.value, choice: worst.name };
  },
});

const ends = ["landing-top", "landing-bottom"] as const;
const endWords = { "landing-top": "upper", "landing-bottom": "lower" } as const;

export const landingLength = derived({
  name: "landing.length",
  dimension: "length",
  says: "length of the shortest level place at an end of a ramp on the way to the room",
  formula: "least of the level lengths at the upper and lower ends of all ramps",
  source: "plane geometry",
  inputs: (s: Scene, of: Of): Inputs => {
    const ramps = rampsOf(s);
    if (ramps.length === 0) return { none: noRamp };
    const open = ramps.flatMap((r: Thing) =>
      ends.filter((end) => !isWritten(r, end)).map((end) => ({ ramp: r, end })),
    )[0];
    if (open)
      return {
        none: absent(
          open.ramp,
          `the level length at the ${endWords[open.end]} end of the ramp ${open.ramp.name}`,
          open.end,
        ),
      };
    return list(
      "landing",
      ramps.flatMap((r) =>
        ends.map((end) =>
          item(
            of,
            r,
            end,
            `${endWords[end]} end of the ramp ${r.name}`,
            `the level length at the ${endWords[end]} end of the ramp ${r.name}`,
          ),
        ),
      ),
    );
  },
  compute: (i: Handed): Outcome => {
    const worst = leastOf(listed(i, "landing"))!;
    return { value: worst.value, choice: worst.name };
  },
});
