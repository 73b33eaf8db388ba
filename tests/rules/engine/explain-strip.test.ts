/** Bands as strips: examples stand in the right band, limits are said exactly, and a terminal of 80 columns shows all of it. */
import sets from "virtual:rule-sets";
import { describe, expect, it } from "vitest";
import { milder, rank } from "../../../rules/engine/bands.js";
import { scaleOf, stripOf, type Strip } from "../../../rules/engine/explain-strip.js";
import { stripLines } from "../../../rules/engine/explain-strip-text.js";
import { exactText, messageParts } from "../../../rules/engine/explain-words.js";
import { FactTable } from "../../../rules/engine/fact-table.js";
import { loadRuleSet } from "../../../rules/engine/load.js";
import { quantities } from "../../../rules/quantities/index.js";
import { head, load } from "./sets.js";

const rise = (bands: string, examples: string): Strip => {
  const read = load(
    `${head}rule height/rise { title "Rise"; for each transfer; judge height.rise\n bands {\n${bands}\n}\n because "b"; common-practice "c"; message "m"\n examples {\n${examples}\n}\n}`,
  );
  const { rules, limits } = read.partial;
  return stripOf(rules[0]!, limits)!;
};

const climbing = `down more than 4 in stop
 down 1 in to 4 in caution
 down 1 in to up 1 in holds
 up 1 in to 2 in advice
 up more than 2 in stop`;

const even = (strip: Strip) => strip.bands.map(() => 0.05);

describe("where an example stands", () => {
  const strip = rise(climbing, "0 in: holds");
  const { at, edges } = scaleOf(strip, even(strip));
  const inBand: readonly [value: string, metres: number, band: number][] = [
    ["down 40 in", -40 * 0.0254, 0],
    ["down 4 1/16 in", -4.0625 * 0.0254, 0],
    ["down 3 15/16 in", -3.9375 * 0.0254, 1],
    ["down 2 in", -2 * 0.0254, 1],
    ["down 1 1/16 in", -1.0625 * 0.0254, 1],
    ["level", 0, 2],
    ["up 15/16 in", 0.9375 * 0.0254, 2],
    ["up 1 1/16 in", 1.0625 * 0.0254, 3],
    ["up 2 1/16 in", 2.0625 * 0.0254, 4],
    ["up 200 in", 200 * 0.0254, 4],
  ];
  it.each(inBand)("%s stands inside its band and not on a limit", (_, value, band) => {
    expect(at(value)).toBeGreaterThan(edges[band]!);
    expect(at(value)).toBeLessThan(edges[band + 1]!);
  });
  it.each([
    [-4, 1],
    [-1, 2],
    [1, 3],
    [2, 4],
  ])("%d in stands exactly on its limit", (inches, edge) => {
    expect(at(inches * 0.0254)).toBe(edges[edge]);
  });
  it("what has no end reaches the end of the strip", () => {
    expect([at(-Infinity), at(Infinity)]).toEqual([0, 1]);
  });
  it("a larger value never stands further left", () => {
    const places = Array.from({ length: 2001 }, (_, i) => at((i - 1000) / 1000));
    for (let i = 1; i < places.length; i++) expect(places[i]).toBeGreaterThanOrEqual(places[i - 1]!);
  });
});

describe("bands in words", () => {
  it("say to which band a value on a limit belongs: the milder one", () => {
    expect(rise(climbing, "0 in: holds").bands.map((b) => `${b.range}: ${b.grade}`)).toEqual([
      "down more than 4 in: stop",
      "down more than 1 in to 4 in: caution",
      "down 1 in to up 1 in: holds",
      "up more than 1 in to 2 in: advice",
      "up more than 2 in: stop",
    ]);
  });
  it.each<[value: number, dimension: "ratio" | "length" | "angle", unit: object, text: string]>([
    [1 / 12, "ratio", { unit: "%", denominator: 3 }, "8 1/3 %"],
    [0.125, "ratio", { unit: "%", denominator: 2 }, "12 1/2 %"],
    [0.084, "ratio", { unit: "%", decimals: 1 }, "8.4 %"],
    [0.5, "ratio", { unit: "%" }, "50 %"],
    [0.55, "ratio", { unit: "1" }, "0.55"],
    [3 * 0.0254, "length", { unit: "in" }, "3 in"],
    [16.25 * 0.0254, "length", { unit: "in", denominator: 4 }, "16 1/4 in"],
    [0.3 * 0.0254, "length", { unit: "in", decimals: 1 }, "0.3 in"],
    [-2 * 0.0254, "length", { unit: "in" }, "-2 in"],
    [0.076, "length", { unit: "mm" }, "76 mm"],
    [Math.PI / 6, "angle", { unit: "deg" }, "30 deg"],
  ])("a limit is never rounded: %s %s", (value, dimension, unit, text) => {
    expect(exactText(value, dimension, unit as { unit: string })).toBe(text);
  });
  it("a hole in a message is named, and nothing else is touched", () => {
    expect(messageParts("It is {value}, past {surface.top-loaded}. {Not a hole} {}")).toBe(
      "It is [value], past [surface top loaded]. {Not a hole} {}",
    );
  });
});

describe("a strip in letters", () => {
  const strip = rise(
    climbing,
    "up 1 in: holds\n up 2 in ± 1/4 in: advice to stop\n down 9 in: stop\n unknown: unknown",
  );
  const lines = stripLines(strip, 68);
  it("shows every example with its verdict, each under its own band", () => {
    expect(lines).toEqual([
      "            stop               caution     holds   advice    stop",
      "───────────────────────────┬─────────────┬────────┬───────┬─────────",
      "                       down 4 in     down 1 in         up 2 in",
      "                                               up 1 in",
      "   o down 9 in: stop       ·             ·        ·       ·",
      "                           ·             ·        o up 1 in: holds",
      "                       up 2 in ± 1/4 in: advice to stop ├─o┤",
      "Not on the line: value unknown: unknown",
    ]);
    const row = (text: string) => lines.find((l) => l.includes(text))!;
    const limit = (n: number) => [...lines[1]!].flatMap((c, i) => (c === "┬" ? [i] : []))[n]!;
    expect(row("up 1 in: holds").indexOf("o")).toBe(limit(2));
    expect(row("down 9 in: stop").indexOf("o")).toBeLessThan(limit(0));
    const bar = row("up 2 in ± 1/4 in: advice to stop");
    expect(bar.indexOf("├")).toBeLessThan(limit(3));
    expect(bar.indexOf("┤")).toBeGreaterThan(limit(3));
    expect(lines).toContain("Not on the line: value unknown: unknown");
  });
});

const table = new FactTable(quantities);

describe.each(sets.map((s) => [s.name, s.version, s.files] as const))(
  "the strips of %s %s",
  (_, __, files) => {
    const { partial: set } = loadRuleSet(files, table);
    const drawn = set.rules.flatMap((r) => {
      const strip = stripOf(r, set.limits);
      return strip ? [[r.id, r, strip] as const] : [];
    });

    it.each(drawn)(
      "%s: every example is on it or beside it, and stands where its verdict is",
      (_, rule, strip) => {
        expect(strip.marks.length + strip.beside.length).toBe(rule.examples.length);
        const { at, edges } = scaleOf(strip, even(strip));
        for (const m of strip.marks) {
          const { low, high } = m.value!;
          const [from, to] = [at(low), at(high)];
          // The bands in which the mark lies; on a limit the milder of the two.
          const met = strip.bands.flatMap((b, i) => {
            if (from === to && edges.slice(1, -1).includes(from)) {
              const k = edges.indexOf(from);
              return i === k ? [milder(strip.bands[k - 1]!.grade, strip.bands[k]!.grade)] : [];
            }
            return to > edges[i]! && from < edges[i + 1]! ? [b.grade] : [];
          });
          const ranks = met.map(rank);
          // What is only assumed may hold and still be unsettled, wherever it stands.
          if (m.text.includes("assumed")) continue;
          expect([Math.min(...ranks), Math.max(...ranks)], `${m.text}: ${m.gives}`).toEqual([
            rank(m.best),
            rank(m.worst),
          ]);
        }
      },
    );

    it.each(drawn)("%s: fits a terminal of 80 columns and leaves nothing out", (_, __, strip) => {
      for (const width of [68, 80]) {
        const lines = stripLines(strip, width);
        for (const l of lines) expect([...l].length, l).toBeLessThanOrEqual(width);
        const text = lines.join(" ").replaceAll(/\s+/g, " ");
        for (const b of strip.bands) expect(text).toContain(b.grade);
        for (const l of strip.limits) expect(text).toContain(l.text);
        for (const m of [...strip.marks, ...strip.beside]) expect(text).toContain(`${m.text}: ${m.gives}`);
      }
    });
  },
);
