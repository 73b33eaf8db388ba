/** What to measure next: each proposal is tried on the household, and what it settles is counted. */
import { describe, expect, it } from "vitest";
import { emptyLibrary, householdOf, readSetup, type Household } from "../../../language/model/household.js";
import { isQuantity } from "../../../language/model/types.js";
import { keySpec } from "../../../language/vocabulary/index.js";
import { createChecker } from "../../../rules/engine/check.js";
import { FactTable } from "../../../rules/engine/fact-table.js";
import { triesFor } from "../../../rules/engine/measure-next-tries.js";
import { measureNext, type MeasureNext } from "../../../rules/engine/measure-next.js";
import { heightOverPopliteal } from "../../../rules/quantities/height-over-popliteal.js";
import { Bench, good, head, home, load, said, small, table } from "./sets.js";

const set = good(`${head}
default stub 0 in to 2 in { title "Stub"; from-memory "m"; tape yes }
rule height/rise { title "Climb"; for each transfer; judge height.rise
  bands { down more than 30 in caution "d"; down 30 in to up 30 in holds; more than 30 in caution "far" } because "b"; common-practice "c"
  examples { 30 in: holds; 31 in: caution; down 30 in: holds; down 31 in: caution } }
rule height/level { title "Level"; for each transfer; judge height.rise
  bands { less than 1 in holds; more than 1 in caution "far" } because "b"; common-practice "c"
  examples { 1 in: holds; 1 1/8 in: caution } }
rule bed/rails { title "Rails up"; for each transfer; require surface.rails is none else caution; ${said}
  examples { surface.rails none: holds; surface.rails both: fails } }
rule board/fit { title "Fit"; for each transfer; require board.length at least 20 in and board.width at least 6 in else advice; ${said}
  examples { board.length 20 in, board.width 6 in: holds; board.length 19 in, board.width 6 in: fails } }`);

function next(text: string, day?: string): readonly MeasureNext[] {
  const bench = new Bench(set, day);
  const result = bench.check(text);
  const { household, today } = bench;
  return measureNext({ household, set, quantities: small, table, today, result });
}
const householdFrom = (text: string): Household => householdOf("home.span", readSetup(text), emptyLibrary);
const short = (m: MeasureNext): string => `${m.what}: ${m.state}, ${m.settles} to ${m.settlesAtMost}`;

describe("what to measure next", () => {
  it("nothing where every judgement is settled", () => {
    expect(next(home)).toEqual([]);
  });
  it("the height on which two rules in two directions wait comes before the rails on which one waits", () => {
    const text = home.replace(/ {2}top-loaded .*\n/, "").replace("  rails none\n", "");
    expect(next(text).map(short)).toEqual([
      "top loaded of bed: missing, 4 to 4",
      "rails of bed: missing, 2 to 2",
    ]);
  });
  it("says how to measure it, and where it would be written", () => {
    const [first] = next(home.replace(/ {2}top-loaded .*\n/, ""));
    expect(first).toMatchObject({ kind: "bed", thing: "bed", key: "top-loaded" });
    expect(first!.how).toMatch(/tape/);
    expect(first!.place).toBeDefined();
    expect(first!.rules).toEqual(["height/rise", "height/level"]);
  });
  it("a value that is written unknown counts as missing", () => {
    const text = home.replace("top-loaded 19 1/2 in ± 1/8 in", "top-loaded unknown");
    expect(next(text).map(short)).toEqual(["top loaded of bed: missing, 4 to 4"]);
  });
  it("one of two missing values settles nothing by itself in the worst case, and is listed all the same", () => {
    const text = home.replace("length 30 in ± 0 in; width 8 in", "");
    const found = next(text);
    expect(found.map((m) => m.what).sort()).toEqual(["length of board-30", "width of board-30"]);
    for (const m of found) expect(m.settles).toBe(0);
  });
  it("a height that is too inexact is read with more care where that settles something, and not where it does not", () => {
    // 20 in to within 1/2 in, seat 19 in: one inch of climb is the limit, so an exact reading settles it.
    const wide = home.replace("top-loaded 19 1/2 in ± 1/8 in", "top-loaded 19 3/4 in ± 1/2 in");
    expect(next(wide).map(short)).toEqual(["top loaded of bed: inexact, 1 to 1"]);
    const straddling = home.replace("top-loaded 19 1/2 in ± 1/8 in", "top-loaded 20 in ± 1/16 in");
    expect(next(straddling).filter((m) => m.state === "inexact" && m.settles > 0)).toEqual([]);
  });
  it("a length of the body is tried as a part of the stature, and where nothing is known of that, over what is plausible", () => {
    const withBody = [...small, heightOverPopliteal];
    const around = new FactTable(withBody);
    const feet = load(
      `${head}
default popliteal-fraction 20 % to 30 % { title "Part"; from-memory "m"; tape yes }
default sole-thickness 0 in to 0 in { title "Sole"; from-memory "m" }
rule height/feet { title "Feet"; for each transfer; judge height.over-popliteal
  bands { less than 2 in holds; more than 2 in advice "far" } because "b"; common-practice "c"
  examples { 2 in: holds; 3 in: advice } }`,
      around,
    );
    expect(feet.problems).toEqual([]);
    const household = householdFrom(home.replace("code c-1;", "code c-1; stature 60 in ± 0 in;"));
    const result = createChecker(feet.set!, withBody, around).check(household, "2026-03-02");
    const measuring = { household, set: feet.set!, quantities: withBody, table: around, today: "2026-03-02" };
    // An edge 19 1/2 in high: of 60 in of stature 20 % leaves the feet hanging, 30 % does not. Both transfers are settled by it.
    expect(measureNext({ ...measuring, result }).map(short)).toEqual([
      "popliteal height of client: assumed, 2 to 2",
    ]);
    const client = household.client!;
    const spec = keySpec("client", "popliteal-height")!;
    const tried = (holder: typeof client): number[] =>
      triesFor({ owner: holder, holder, key: "popliteal-height", spec }, feet.set!).map((v) =>
        isQuantity(v) ? v.nominal / 0.0254 : NaN,
      );
    expect(tried(client)).toEqual([expect.closeTo(12, 9), expect.closeTo(18, 9)]);
    const [low, high] = tried(householdFrom(home).client!);
    expect([low, high]).toEqual([expect.closeTo(6 + 22 / 3, 9), expect.closeTo(6 + 44 / 3, 9)]);
  });
  it("trying values changes nothing of the household", () => {
    const bench = new Bench(set);
    const text = home.replace(/ {2}top-loaded .*\n/, "");
    const result = bench.check(text);
    const { household, today } = bench;
    const before = JSON.stringify(household.things.get("bed")!.values);
    measureNext({ household, set, quantities: small, table, today, result });
    expect(JSON.stringify(household.things.get("bed")!.values)).toBe(before);
  });
});
