/**
 * Every published figure of every version of the rule set beside what its source prints.
 *
 * The tables in `published/` were copied from the sources, not from the rule set: for each place in a source, the figures that
 * stand there. A citation that names another place, or says a figure that does not stand at its place, fails here; so does a
 * limit that claims to be published and is not in the table of limits. A row that stands for some versions only says why.
 */
import { describe, expect, it } from "vitest";
import embedded from "virtual:rule-sets";
import { readTree } from "../../language/text/tree.js";
import { fromSi, unitOf } from "../../language/quantity/units.js";
import { readRules, ruleShape } from "../../rules/engine/read.js";
import { visit } from "../../rules/engine/expression.js";
import type { RuleSet } from "../../rules/engine/types.js";
import type { BasisNote, Citation } from "../../rules/types.js";
import { figuresIn, standsFor } from "./published/figures.js";
import { limits, printed } from "./published/index.js";

const versions = embedded.filter((s) => s.name === "home-transfer").map((s) => s.version);

const read = (version: string) => {
  const { files } = embedded.find((s) => s.name === "home-transfer" && s.version === version)!;
  return readRules(files.map((f) => ({ path: f.path, tree: readTree(f.text, ruleShape) })));
};
const sets = new Map(versions.map((v) => [v, read(v)] as const));

interface Holder {
  readonly name: string;
  readonly bases: readonly BasisNote[];
}
/** Whatever may cite a source. */
const holders = (set: RuleSet): readonly Holder[] => [
  ...[...set.limits.values()].map((l) => ({ name: `limit ${l.name}`, bases: l.bases })),
  ...[...set.defaults.values()].map((d) => ({ name: `default ${d.name}`, bases: d.bases })),
  ...set.rules.map((r) => ({ name: `rule ${r.id}`, bases: r.bases })),
];
const cited = (bases: readonly BasisNote[]): readonly Citation[] =>
  bases.flatMap((b) => (b.citation ? [b.citation] : []));
const named = (rows: readonly { readonly name: string }[]): string[] => rows.map((r) => r.name).sort();

describe("the tables of what is printed", () => {
  it("have each place and each limit once in a version", () => {
    for (const version of versions) {
      const places = printed.filter((p) => standsFor(p, version)).map((p) => `${p.source}, ${p.at}`);
      const names = named(limits.filter((l) => standsFor(l, version)));
      for (const rows of [places, names]) expect(rows.filter((r, i) => rows.indexOf(r) !== i)).toEqual([]);
    }
  });

  it("say of a row that stands for some versions only which, and why", () => {
    for (const { only } of [...printed, ...limits]) {
      if (!only) continue;
      expect(versions).toEqual(expect.arrayContaining([...only.versions]));
      expect(only.versions.length).toBeLessThan(versions.length);
      expect(only.because).not.toBe("");
    }
  });
});

describe.each(versions)("published figures of home-transfer %s", (version) => {
  const { set, problems } = sets.get(version)!;
  const citations = holders(set).flatMap((h) => cited(h.bases).map((c) => ({ by: h.name, citation: c })));
  const places = printed.filter((p) => standsFor(p, version));

  it("are read from a rule set without faults of form", () => {
    expect(problems).toEqual([]);
    expect(citations.length).toBeGreaterThan(60);
  });

  it.each(citations.map((c) => [c.by, c.citation.id, c.citation.at, c.citation] as const))(
    "%s cites %s, %s, with the figures that stand there",
    (_by, id, at, citation) => {
      const place = places.find((p) => p.source === id && p.at === at);
      expect(place, `${id}, ${at}: nothing is on record for this place`).toBeDefined();
      const there = [...place!.figures.flatMap(figuresIn), ...(place!.follows ?? [])];
      for (const n of figuresIn(citation.says))
        expect(there, `${citation.says}: ${n}`).toContainEqual(
          typeof n === "number" ? expect.closeTo(n, 9) : n,
        );
    },
  );

  it("leave no place on record that nothing cites any more", () => {
    expect(
      places.filter((p) => !citations.some((c) => c.citation.id === p.source && c.citation.at === p.at)),
    ).toEqual([]);
  });
});

describe.each(versions)("published limits of home-transfer %s", (version) => {
  const { set } = sets.get(version)!;
  const rows = limits.filter((l) => standsFor(l, version));

  it.each(rows)("$name is $printed $unit as printed in $source, $at", (row) => {
    const limit = set.limits.get(row.name);
    expect(limit, `${row.name}: this version has no such limit`).toBeDefined();
    expect(Math.abs(fromSi(limit!.interval.nominal, unitOf(row.unit)) - row.printed)).toBeLessThanOrEqual(
      row.rounding + 1e-9,
    );
    expect(cited(limit!.bases).some((c) => c.id === row.source && c.at === row.at)).toBe(true);
  });

  it("are all in the table, so that a new one cannot be added without its printed value", () => {
    const published = [...set.limits.values()].filter((l) => l.bases.some((b) => b.basis === "published"));
    expect(named(published)).toEqual(named(rows));
  });

  it("have no source beside them where they are common practice or a choice of the rule set", () => {
    for (const name of ["firm-bearing", "least-bearing", "steep-board", "too-steep-board", "hand-pull"])
      expect(cited(set.limits.get(name)!.bases), name).toEqual([]);
  });
});

/** Ends of the bands of a rule in inches. */
const ends = (set: RuleSet, id: string): number[] => {
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
const factors = (set: RuleSet, id: string): number[] => {
  const found: number[] = [];
  visit(set.rules.find((r) => r.id === id)!.judged.expr, (e) => {
    if (e.op === "value" && e.bare) found.push(e.value);
  });
  return found;
};

/** Lengths in what a rule judges, in inches. */
const lengths = (set: RuleSet, id: string): number[] => {
  const found: number[] = [];
  visit(set.rules.find((r) => r.id === id)!.judged.expr, (e) => {
    if (e.op === "value" && e.dimension === "length") found.push(fromSi(e.value, unitOf("in")));
  });
  return found;
};

/** Where the bands of a rule end, in inches, and on which printed figures each end rests. Down is below zero. */
const bandEnds: readonly {
  readonly rule: string;
  readonly version: string;
  readonly ends: readonly number[];
  readonly because: string;
}[] = [
  {
    rule: "height/rise",
    version: "2026.1",
    ends: [-4, -2, -1, 1, 2],
    because: "1 in: 94 to 95 of 100 could transfer; 2 in: called a serious barrier; 4 in down: a choice",
  },
  {
    rule: "height/rise",
    version: "2026.2",
    ends: [1, 2],
    because: "as in 2026.1, but for the drop, which has a rule of its own",
  },
  {
    rule: "height/drop",
    version: "2026.2",
    ends: [-3, -2, -1],
    because: "new; 3 in down: a quarter got no lower than 22.1 - 19.5 = 2.6 in, rounded up",
  },
];

describe("published figures inside rules", () => {
  it.each(bandEnds)("$rule of $version ends its bands at $ends in: $because", (row) => {
    expect(ends(sets.get(row.version)!.set, row.rule)).toEqual(row.ends);
  });
  it("are on record for the climb and the drop of every version", () => {
    const judged = versions.flatMap((version) =>
      sets
        .get(version)!
        .set.rules.filter((r) => ["height/rise", "height/drop"].includes(r.id))
        .map((r) => `${version} ${r.id}`),
    );
    expect(bandEnds.map((b) => `${b.version} ${b.rule}`).sort()).toEqual(judged.sort());
  });
});

describe.each(versions)("published figures inside rules of home-transfer %s", (version) => {
  const { set } = sets.get(version)!;

  it("allow a short steep ramp 3 in of rise up to 1:8 and 6 in up to 1:10, as printed in Table 405.2", () => {
    expect(lengths(set, "ramp/high-for-its-slope")).toEqual([
      expect.closeTo(3, 9) as number,
      expect.closeTo(6, 9) as number,
    ]);
  });
  it("take the floor beside a bed as long as the printed clear space, 48 in", () => {
    const { interval } = set.defaults.get("bedside-length")!;
    expect(fromSi(interval.nominal, unitOf("in"))).toBeCloseTo(48, 9);
  });
  it("hold the buttock-knee length of 1 to 99 of 100 measured men and women: .330 to .397 of stature", () => {
    const { interval, tapeable } = set.defaults.get("buttock-knee-fraction")!;
    expect(interval.low).toBeLessThanOrEqual(0.33);
    expect(interval.high).toBeGreaterThanOrEqual(0.397);
    expect(tapeable).toBe(true);
  });
  it("hold no length of the body for misread that somebody measured has", () => {
    const measured = {
      "head-to-hip": [1 - 0.57, 1 - 0.455],
      popliteal: [0.197, 0.288],
      "buttock-knee": [0.315, 0.42],
    };
    for (const [length, [least, most]] of Object.entries(measured)) {
      expect(set.limits.get(`${length}-least`)!.interval.nominal, length).toBeLessThanOrEqual(least! + 1e-9);
      expect(set.limits.get(`${length}-most`)!.interval.nominal, length).toBeGreaterThanOrEqual(most! - 1e-9);
    }
  });
  it("take the heavier of two published legs: .1478 + .0481 + .0129 of body mass against .161", () => {
    const [leg] = factors(set, "load/legs-too-heavy-to-lift");
    expect(leg).toBeCloseTo(0.1478 + 0.0481 + 0.0129, 3);
    expect(leg).toBeGreaterThan(0.161);
  });
  it("place the hip at 1 - .530 of stature below the crown, inside the default's bounds", () => {
    const { interval } = set.defaults.get("hip-fraction")!;
    expect(interval.low).toBeLessThanOrEqual(1 - 0.53);
    expect(interval.high).toBeGreaterThanOrEqual(1 - 0.53);
  });
  it("hold the hips of 1 to 99 of 100 measured men and women: 1 - .554 to 1 - .481 of stature below the crown", () => {
    const { interval, tapeable } = set.defaults.get("hip-fraction")!;
    expect(interval.low).toBeLessThanOrEqual(1 - 0.554);
    expect(interval.high).toBeGreaterThanOrEqual(1 - 0.481);
    // The middle lies between the measured medians of women and of men.
    expect(interval.nominal).toBeGreaterThan(1 - 0.519);
    expect(interval.nominal).toBeLessThan(1 - 0.512);
    expect(tapeable).toBe(true);
  });
  it("hold the hollow of the knee of 1 to 99 of 100 measured men and women: .216 to .264 of stature", () => {
    const { interval, tapeable } = set.defaults.get("popliteal-fraction")!;
    expect(interval.low).toBeLessThanOrEqual(0.216);
    expect(interval.high).toBeGreaterThanOrEqual(0.264);
    expect(tapeable).toBe(true);
  });
  it("let the feet stand up to 2 in above the hollow of the knee, within what is measured of the kneecap: 40 to 82 mm", () => {
    const [end, ...more] = ends(set, "height/feet-off-the-floor");
    expect(more).toEqual([]);
    expect(end! * 25.4).toBeGreaterThan(40);
    expect(end! * 25.4).toBeLessThan(58);
  });
  it("hold hips as broad as those of 5 to 95 of 100 measured men and women: 333 to 456 mm", () => {
    const { interval } = set.defaults.get("hip-breadth-default")!;
    expect(interval.low).toBeLessThanOrEqual(0.333);
    expect(interval.high).toBeGreaterThanOrEqual(0.456);
  });
  it("hold the weakest and the stiffest printed wood: 54 and 109 N/mm2, 7.1 and 12.6 thousand N/mm2", () => {
    const strength = set.defaults.get("strength-wood")!.interval;
    expect(strength.low).toBeLessThanOrEqual(54);
    expect(strength.high).toBeGreaterThanOrEqual(109);
    const stiffness = set.defaults.get("stiffness-wood")!.interval;
    expect(stiffness.low).toBeLessThanOrEqual(7.1);
    expect(stiffness.high).toBeGreaterThanOrEqual(12.6);
  });
  it("take 1.3, the most measured on wet skin, as the most that anything drags on the board", () => {
    expect(set.defaults.get("friction-any")!.interval.high).toBeCloseTo(1.3, 9);
  });
});
