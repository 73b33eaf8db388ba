/**
 * Every published figure of the rule set beside what its source prints.
 *
 * The tables in `published/` were copied from the sources, not from the rule set: for each place in a source, the figures that
 * stand there. A citation that names another place, or says a figure that does not stand at its place, fails here; so does a
 * limit that claims to be published and is not in the table of limits.
 */
import { describe, expect, it } from "vitest";
import embedded from "virtual:rule-sets";
import { readTree } from "../../language/text/tree.js";
import { fromSi, unitOf } from "../../language/quantity/units.js";
import { readRules, ruleShape } from "../../rules/engine/read.js";
import { visit } from "../../rules/engine/expression.js";
import type { BasisNote, Citation } from "../../rules/types.js";
import { figuresIn } from "./published/figures.js";
import { limits, printed } from "./published/index.js";

const files = embedded.find((s) => s.name === "home-transfer" && s.version === "2026.1")!.files;
const { set, problems } = readRules(files.map((f) => ({ path: f.path, tree: readTree(f.text, ruleShape) })));

const holders: readonly { readonly name: string; readonly bases: readonly BasisNote[] }[] = [
  ...[...set.limits.values()].map((l) => ({ name: `limit ${l.name}`, bases: l.bases })),
  ...[...set.defaults.values()].map((d) => ({ name: `default ${d.name}`, bases: d.bases })),
  ...set.rules.map((r) => ({ name: `rule ${r.id}`, bases: r.bases })),
];
const citations: readonly { readonly by: string; readonly citation: Citation }[] = holders.flatMap((h) =>
  h.bases.flatMap((b) => (b.citation ? [{ by: h.name, citation: b.citation }] : [])),
);

describe("published figures of home-transfer 2026.1", () => {
  it("are read from a rule set without faults of form", () => {
    expect(problems).toEqual([]);
    expect(citations.length).toBeGreaterThan(60);
  });

  it.each(citations.map((c) => [c.by, c.citation.id, c.citation.at, c.citation] as const))(
    "%s cites %s, %s, with the figures that stand there",
    (_by, id, at, citation) => {
      const place = printed.find((p) => p.source === id && p.at === at);
      expect(place, `${id}, ${at}: nothing is on record for this place`).toBeDefined();
      const there = [...place!.figures.flatMap(figuresIn), ...(place!.follows ?? [])];
      for (const n of figuresIn(citation.says))
        expect(there, `${citation.says}: ${n}`).toContainEqual(
          typeof n === "number" ? expect.closeTo(n, 9) : n,
        );
    },
  );

  it("has each place on record once", () => {
    const places = printed.map((p) => `${p.source}, ${p.at}`);
    expect(places.filter((p, i) => places.indexOf(p) !== i)).toEqual([]);
  });

  it("leaves no place on record that nothing cites any more", () => {
    expect(
      printed.filter((p) => !citations.some((c) => c.citation.id === p.source && c.citation.at === p.at)),
    ).toEqual([]);
  });
});

describe("published limits", () => {
  it.each(limits)("$name is $printed $unit as printed in $source, $at", (row) => {
    const limit = set.limits.get(row.name)!;
    expect(Math.abs(fromSi(limit.interval.nominal, unitOf(row.unit)) - row.printed)).toBeLessThanOrEqual(
      row.rounding + 1e-9,
    );
    expect(limit.bases.some((b) => b.citation?.id === row.source && b.citation.at === row.at)).toBe(true);
  });

  it("are all in the table, so that a new one cannot be added without its printed value", () => {
    const published = [...set.limits.values()]
      .filter((l) => l.bases.some((b) => b.basis === "published"))
      .map((l) => l.name);
    expect(published.sort()).toEqual(limits.map((l) => l.name).sort());
  });

  it("that are common practice or a choice of the rule set cite no source", () => {
    for (const name of ["firm-bearing", "least-bearing", "steep-board", "too-steep-board", "hand-pull"])
      expect(
        set.limits.get(name)!.bases.filter((b) => b.citation),
        name,
      ).toEqual([]);
  });
});

/** Ends of the bands of a rule in inches. */
const ends = (id: string): number[] => {
  const judged = set.rules.find((r) => r.id === id)!.judged;
  if (judged.is !== "bands") return [];
  return [
    ...new Set(
      judged.bands
        .flatMap((b) => [b.low, b.high])
        .filter((e) => Number.isFinite(e.value))
        .map((e) => Math.round((e.value / 0.0254) * 1e6) / 1e6),
    ),
  ].sort((a, b) => a - b);
};
/** Plain numbers in what a rule judges. */
const factors = (id: string): number[] => {
  const found: number[] = [];
  visit(set.rules.find((r) => r.id === id)!.judged.expr, (e) => {
    if (e.op === "value" && e.bare) found.push(e.value);
  });
  return found;
};

/** Lengths in what a rule judges, in inches. */
const lengths = (id: string): number[] => {
  const found: number[] = [];
  visit(set.rules.find((r) => r.id === id)!.judged.expr, (e) => {
    if (e.op === "value" && e.dimension === "length") found.push(fromSi(e.value, unitOf("in")));
  });
  return found;
};

describe("published figures inside rules", () => {
  it("allows a short steep ramp 3 in of rise up to 1:8 and 6 in up to 1:10, as printed in Table 405.2", () => {
    expect(lengths("ramp/high-for-its-slope")).toEqual([
      expect.closeTo(3, 9) as number,
      expect.closeTo(6, 9) as number,
    ]);
  });
  it("takes the floor beside a bed as long as the printed clear space, 48 in", () => {
    const { interval } = set.defaults.get("bedside-length")!;
    expect(fromSi(interval.nominal, unitOf("in"))).toBeCloseTo(48, 9);
  });
  it("judges the rise of the body at 1 in (within which 94 to 95 of 100 could transfer) and at 2 in (called a serious barrier)", () => {
    expect(ends("height/rise")).toEqual([-4, -2, -1, 1, 2]);
  });
  it("takes knee height as .285 of stature, as printed", () => {
    expect(factors("height/feet-off-the-floor")).toEqual([0.285]);
  });
  it("takes the heavier of two published legs: .1478 + .0481 + .0129 of body mass against .161", () => {
    const [leg] = factors("load/legs-too-heavy-to-lift");
    expect(leg).toBeCloseTo(0.1478 + 0.0481 + 0.0129, 3);
    expect(leg).toBeGreaterThan(0.161);
  });
  it("places the hip at 1 - .530 of stature below the crown, inside the default's bounds", () => {
    const { interval } = set.defaults.get("hip-fraction")!;
    expect(interval.low).toBeLessThanOrEqual(1 - 0.53);
    expect(interval.high).toBeGreaterThanOrEqual(1 - 0.53);
    expect(interval.nominal).toBeCloseTo(0.47, 9);
  });
});
