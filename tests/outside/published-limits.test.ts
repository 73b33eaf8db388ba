/**
 * Every published figure of the rule set beside what its source prints.
 *
 * The table below was copied from the sources, not from the rule set: for each place in a source, the figures that stand there.
 * A citation that names another place, or says a figure that does not stand at its place, fails here; so does a limit that
 * claims to be published and is not in the second table.
 */
import { describe, expect, it } from "vitest";
import embedded from "virtual:rule-sets";
import { readTree } from "../../language/text/tree.js";
import { fromSi, unitOf } from "../../language/quantity/units.js";
import { readRules, ruleShape } from "../../rules/engine/read.js";
import { visit } from "../../rules/engine/expression.js";
import type { BasisNote, Citation } from "../../rules/types.js";

const files = embedded.find((s) => s.name === "home-transfer" && s.version === "2026.1")!.files;
const { set, problems } = readRules(files.map((f) => ({ path: f.path, tree: readTree(f.text, ruleShape) })));

/** What stands at a place in a source. Places without a figure print words only. */
interface Printed {
  readonly source: string;
  readonly at: string;
  readonly figures: readonly string[];
}

const printed: readonly Printed[] = [
  { source: "transfer-setup-1", at: "Conclusions", figures: ["2 in", "2.54 cm"] },
  {
    source: "transfer-setup-1",
    at: "Table 6, adjustable gap protocol",
    figures: [
      "n 114",
      "3.5 in: 108, 95 %",
      "7 in: 92, 81 %, CI 72-87 %",
      "10.5 in: 49 %",
      "14 in: 21 %",
      "17.5 in: 12 %",
    ],
  },
  { source: "transfer-setup-1", at: "lateral grab bar use, text under Table 11", figures: [] },
  { source: "transfer-setup-2", at: "Transfer heights", figures: ["within 1 in: 94 to 95 %"] },
  {
    source: "transfer-setup-2",
    at: "Table 9",
    figures: [
      "no bars, highest: 5th 22.8, 25th 26.0, 50th 28.0 in; n 71",
      "lowest: 5th 22.2 in",
      "mean seat (Table 3): 22.1 in",
      "share at or above the 5th: 95 %",
    ],
  },
  { source: "toro-2013", at: "abstract", figures: ["47 of 113, 42 %", "side guard 6 in"] },
  { source: "tsai-2014", at: "Table 2", figures: ["20 to 45 degrees", "within 3 in", "front two thirds"] },
  { source: "gagnon-2008", at: "abstract", figures: ["0.5 m to 0.6 m: 10 cm"] },
  { source: "wei-2015", at: "results", figures: [] },
  { source: "barbareschi-2018", at: "abstract", figures: [] },
  { source: "mde-committee-2013", at: "18 inch low height", figures: ["about 1 in"] },
  { source: "mde-2017", at: "M301.2.4, exception 1", figures: ["3 in (75 mm)"] },
  {
    source: "mde-2017",
    at: "M301.4.1",
    figures: ["39 in (990 mm) wide", "6 in (150 mm) high", "36 in (915 mm) deep"],
  },
  { source: "ada-2010", at: "302.1", figures: [] },
  { source: "lodging-bed-heights", at: "bed height fact sheet", figures: ["17-23 in", "2010 Standards"] },
  { source: "dsouza-2022", at: "Table 2", figures: ["manual, combined: n 277, mean 19.5 in, 16.3-23.9 in"] },
  { source: "osha-3182", at: "lateral transfer, sitting", figures: [] },
  { source: "osha-3182", at: "Figure 1, seated to seated", figures: [] },
  { source: "vha-2014", at: "Algorithm 1", figures: [] },
  { source: "vha-2014", at: "Algorithm 1, note on seated transfer aids", figures: [] },
  { source: "gate-boards", at: "Checking and setting up", figures: [] },
  { source: "gate-boards", at: "Safe transferring", figures: [] },
  { source: "gate-boards", at: "Assessment interview", figures: [] },
  { source: "waters-2007", at: "abstract and opening", figures: ["35 lb (15.9 kg)"] },
  { source: "home-lift-2014", at: "algorithm", figures: ["35 lb"] },
  { source: "section-gg", at: "codes 04 to 02", figures: [] },
  { source: "section-gg", at: "code 01", figures: [] },
  { source: "winter-fractions", at: "Figure 4.1", figures: ["hip .530", "knee .285"] },
  { source: "winter-fractions", at: "Table 4.1", figures: ["total leg .161", "shank .0465, foot .0145"] },
  {
    source: "de-leva-1996",
    at: "Table 4",
    figures: [
      "thigh, shank, foot, men: .1416 + .0433 + .0137 = .1986, rounded .199",
      "women: .1478 + .0481 + .0129 = .2088, rounded .209",
    ],
  },
  {
    source: "plagenhoef-1983",
    at: "segment masses",
    figures: ["percent, men / women: shank 4.75/5.35, foot 1.43/1.33"],
  },
  {
    source: "seat-friction-2024",
    at: "abstract",
    figures: ["vinyl wheelchair seat cover .503-.572", "woven office seat .336-.448"],
  },
  { source: "skin-friction-2022", at: "abstract", figures: ["static .31-.90", "dynamic .25-.79"] },
  {
    source: "wood-handbook",
    at: "chapter 5, Table 5-3, as others quote it",
    figures: [
      "12 % moisture, N/mm2: beech 102.8, sugar maple 109.0, bur oak 71.0",
      "thousand N/mm2: beech 11.86, sugar maple 12.6, bur oak 7.1",
    ],
  },
  {
    source: "plywood-layups",
    at: "Table 3",
    figures: ["five layups: 37.6-65.7 N/mm2", "6860-8979 N/mm2"],
  },
  { source: "stability-1995", at: "abstract", figures: ["towards the tip: -25.2 to -52.3 %"] },
  { source: "footrests-stability", at: "abstract", figures: [] },
];

/** Figures of a text as numbers: `3.5`, `.530` and `108`; numbers that only name a table or a form are left out by their place. */
const figuresIn = (text: string): readonly number[] =>
  [...text.matchAll(/(?:\d+(?:\.\d+)?|\.\d+)/g)].map((m) => Number(m[0]));
/** Figures that follow from arithmetic on what is printed, each with the arithmetic. */
const derived: Readonly<Record<string, readonly number[]>> = {
  "transfer-setup-1 Conclusions": [2 * 2.54], // the right conversion of 2 in
  "transfer-setup-1 Table 6, adjustable gap protocol": [100], // shares of a hundred
  "transfer-setup-2 Transfer heights": [100],
  "transfer-setup-2 Table 9": [100],
  "toro-2013 abstract": [100],
  "wood-handbook chapter 5, Table 5-3, as others quote it": [103, 11.9, 2], // rounded; N/mm2
  "plywood-layups Table 3": [6.86, 8.98, 2], // thousands, rounded; N/mm2
};

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
      const there = [...place!.figures.flatMap(figuresIn), ...(derived[`${id} ${at}`] ?? [])];
      for (const n of figuresIn(citation.says))
        expect(there, `${citation.says}: ${n}`).toContainEqual(expect.closeTo(n, 9));
    },
  );

  it("leaves no place on record that nothing cites any more", () => {
    expect(
      printed.filter((p) => !citations.some((c) => c.citation.id === p.source && c.citation.at === p.at)),
    ).toEqual([]);
  });
});

/** Published limits: what the source prints, and how far the rule set may round it to a mark of the tape. */
const limits: readonly (readonly [
  name: string,
  printed: number,
  unit: string,
  source: string,
  at: string,
  rounding: number,
])[] = [
  ["close-gap", 3, "in", "tsai-2014", "Table 2", 0],
  ["wide-gap", 7, "in", "transfer-setup-1", "Table 6, adjustable gap protocol", 0],
  ["turned-least", 20, "deg", "tsai-2014", "Table 2", 0],
  ["turned-most", 45, "deg", "tsai-2014", "Table 2", 0],
  ["lift-by-hand", 35, "lb", "waters-2007", "abstract and opening", 0],
  ["bed-low", 17, "in", "lodging-bed-heights", "bed height fact sheet", 0],
  ["bed-high", 23, "in", "lodging-bed-heights", "bed height fact sheet", 0],
  ["chair-lowest", 16.3, "in", "dsouza-2022", "Table 2", 1 / 8],
  ["chair-highest", 23.9, "in", "dsouza-2022", "Table 2", 1 / 8],
];

describe("published limits", () => {
  it.each(limits)("%s is %d %s as printed in %s, %s", (name, value, unit, source, at, rounding) => {
    const limit = set.limits.get(name)!;
    expect(Math.abs(fromSi(limit.interval.nominal, unitOf(unit)) - value)).toBeLessThanOrEqual(
      rounding + 1e-9,
    );
    expect(limit.bases.some((b) => b.citation?.id === source && b.citation.at === at)).toBe(true);
  });

  it("are all in the table, so that a new one cannot be added without its printed value", () => {
    const published = [...set.limits.values()]
      .filter((l) => l.bases.some((b) => b.basis === "published"))
      .map((l) => l.name);
    expect(published.sort()).toEqual(limits.map((l) => l[0]).sort());
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

describe("published figures inside rules", () => {
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
