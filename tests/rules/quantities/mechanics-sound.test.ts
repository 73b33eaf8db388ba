import { describe, expect, test } from "vitest";
import { between, exactly, type Interval } from "../../../language/quantity/interval.js";
import { draws } from "../plan/sampling.js";
import { defaultsWith, sceneFor } from "../scene-for.js";
import { mechanics } from "./mechanics-home.js";

/**
 * What varies, in inches as it stands in the household's text. Nothing by which the place of the board is chosen is among it: that
 * is chosen once and held. How the chair's own measures go into tipping is drawn in tests/rules/plan/tipping.test.ts.
 */
const lengths = [
  ["seat-loaded", 19],
  ["top-loaded", 19.5],
  ["thickness", 0.75],
  ["stature", 69],
] as const;
const base = mechanics
  .replace("  along 40 in", "  along 40 in\n  board-reach 8 in\n  board-askew 5 deg")
  .replace("stature 5 ft 9 in", "stature 69 in")
  .replace("    slide\n", "    feet on floor\n    slide\n");
const write = (text: string, key: string, value: string) =>
  text.replace(new RegExp(`(?<=[ {;\\n])${key} -?[0-9/ .]+ (in|lb)`), `${key} ${value}`);

const names = [
  "board.incline-start",
  "board.incline-end",
  "push.along-board-start",
  "push.along-board-end",
  "push.leaving",
  "push.leaving-extra",
  "push.peak",
  "push.of-weight",
  "push.runaway",
  "helper.expected",
  "client.must-give",
  "board.load-share",
  "board.bending-stress",
  "board.bending-share",
  "board.deflection",
  "board.lip",
  "board.seesaw",
  "board.hip-clearance",
  "chair.load",
  "chair.forward-margin",
  "chair.forward-margin-leaning",
  "chair.forward-margin-plates",
  "chair.side-margin",
  "chair.side-margin-leaning",
  "chair.castor-gain",
  "chair.hold",
  "turn.body",
];
const defaults = [
  "load-factor",
  "load-share-feet-down",
  "seated-centre-feet-down",
  "seated-centre-feet-carried",
  "lean-shift",
  "friction-clothing-wood",
  "friction-upholstery",
  "still-on-upholstery",
  "friction-tyre-floor",
  "lock-slope",
  "chair-share-of-push",
  "board-end-share",
  "strength-plywood",
  "stiffness-plywood",
  "castor-stem",
  "castor-trail",
  "castor-contact-outside",
  "tyre-width-default",
  "chair-centre-ahead",
];

describe("forces, bending and tipping of a whole setup hold every true value of exact inputs", () => {
  test("1,000 draws a quantity", { timeout: 120_000 }, () => {
    const random = draws(53);
    const given = defaultsWith();
    for (let n = 0; n < 10; n++) {
      const nominal = lengths.map(
        ([key, x]) =>
          [
            key,
            +(x + (key === "thickness" ? 0 : random() - 0.5)).toFixed(3),
            +(random() * (key === "thickness" ? 0.1 : 0.5)).toFixed(3),
          ] as const,
      );
      const masses = [
        ["mass 182", +(150 + random() * 60).toFixed(2), 4],
        ["mass 38", +(30 + random() * 12).toFixed(2), 2],
        ["safe-pull 30", +(15 + random() * 20).toFixed(2), 3],
      ] as const;
      const setup = (
        length: (key: string, x: number, t: number) => string,
        mass: (x: number, t: number) => string,
      ): string => {
        let text = base;
        for (const [key, x, t] of nominal) text = write(text, key, length(key, x, t));
        for (const [key, x, t] of masses)
          text = text.replace(new RegExp(`${key} (lbf|lb)`), `${key.split(" ")[0]} ${mass(x, t)} $1 ± 0 $1`);
        return text.replace(/ ± ([0-9.]+) (lbf|lb) ± 0 \2/g, " $2 ± $1 $2");
      };
      const c = sceneFor(
        setup(
          (_k, x, t) => `${x} in ± ${t} in`,
          (x, t) => `${x} ± ${t}`,
        ),
        n % 2 ? "out-of-bed" : "into-bed",
      );
      const found = names.map((name) => {
        const r = c.get(name);
        if (!r.value) expect.fail(`${name}: ${JSON.stringify(r.missing.map((m) => m.what))}`);
        return r.value;
      });
      for (let k = 0; k < 100; k++) {
        const within = (i: Interval) =>
          k % 2 ? i.low + random() * (i.high - i.low) : random() < 0.5 ? i.low : i.high;
        const replaced = Object.fromEntries(
          defaults.map((d) => [d, exactly(within(given.get(d)!.interval))]),
        );
        const e = sceneFor(
          setup(
            (_key, x, t) => `${(x + within(between(-t, t))).toFixed(6)} in ± 0 in`,
            (x, t) => (x + within(between(-t, t))).toFixed(6),
          ),
          n % 2 ? "out-of-bed" : "into-bed",
          defaultsWith(replaced),
        );
        names.forEach((name, j) => {
          const y = e.get(name).value!;
          const size = Math.max(1, Math.abs(found[j]!.low), Math.abs(found[j]!.high));
          expect(y.nominal, name).toBeGreaterThanOrEqual(found[j]!.low - 1e-6 * size);
          expect(y.nominal, name).toBeLessThanOrEqual(found[j]!.high + 1e-6 * size);
        });
      }
    }
  });
});
