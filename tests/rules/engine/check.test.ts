import { describe, expect, it } from "vitest";
import { Bench, applied, good, head, home, said, small, summary, table } from "./sets.js";
import { exactly } from "../../../language/quantity/interval.js";
import { createChecker } from "../../../rules/engine/check.js";
import { assumedInWords } from "../../../rules/engine/messages.js";

const rises = `
limit level 1 in { title "Level"; common-practice "An inch" }
rule height/rise {
  title "How far the body climbs"; for each transfer
  judge height.rise
  bands {
    down more than level    advice   "The body goes {value}: {short} past {limit}"
    down level to up level  holds
    up level to 2 in        caution  "The body goes {value} onto {to}: {short} past {limit}"
    up more than 2 in       stop     "Up {value} is too much"
  }
  unknown "Measure both heights with somebody sitting there."
  because "b"; project-choice "c"
  remedy set surface.top "Set {surface} to {range}."
  at surface.top-loaded surface.top
  examples { 1 in: holds; 1 1/8 in: caution; 2 in: caution; up 2 1/8 in: stop; down 1 in: holds; down 1 1/8 in: advice }
}`;
const loaded = (text: string): string => home.replace("19 1/2 in ± 1/8 in", text);

describe("a rule on a value", () => {
  const bench = new Bench(good(head + rises));
  it.each([
    ["19 1/2 in ± 1/8 in", []],
    [
      "20 1/2 in ± 0 in",
      ["height/rise into-bed fails caution-caution", "height/rise out-of-bed fails advice-advice"],
    ],
    [
      "20 in ± 1/8 in",
      ["height/rise into-bed unsettled holds-caution", "height/rise out-of-bed unsettled holds-advice"],
    ],
    [
      "20 1/2 in ± 1 in",
      ["height/rise into-bed unsettled holds-stop", "height/rise out-of-bed unsettled holds-advice"],
    ],
    [
      "22 in ± 1/8 in",
      ["height/rise into-bed fails stop-stop", "height/rise out-of-bed fails advice-advice"],
    ],
    ["unknown", ["height/rise into-bed unknown holds-stop", "height/rise out-of-bed unknown holds-stop"]],
  ])("with the bed sat on at %s", (text, findings) => {
    expect(summary(bench.check(loaded(text)))).toEqual(findings);
  });

  it("says the value, the limit and what is short in the writer's units, at the line at fault", () => {
    const [f] = bench.check(loaded("20 1/2 in ± 0 in")).findings;
    expect(f!.message).toBe("The body goes up 1 1/2 in onto bed: 1/2 in past up 1 in.");
    expect(bench.lineOf(f!)).toBe("top-loaded 20 1/2 in ± 0 in");
    expect(f!.limit?.name).toBe("level");
    expect(f!.bases.map((b) => b.text)).toEqual(["c", "An inch"]);
    expect(f!.related.map((r) => r.message)).toEqual([
      expect.stringContaining("seat loaded of chair: 19 in"),
    ]);
  });

  it("a length divided by a length is a share, and is shown as one", () => {
    const share = new Bench(
      good(`${head}
rule height/share { title "Share"; for each transfer; judge surface.top-loaded / chair.seat-loaded
  bands { less than 100 % holds; more than 100 % advice "{value} of the seat, {short} past {limit}." }
  unknown "Measure both."; because "b"; project-choice "c"
  examples { 100 %: holds; 101 %: advice } }`),
    );
    const [f] = share.check(
      loaded("22 in ± 0 in").replace("seat-loaded 19 in ± 1/8 in", "seat-loaded 20 in ± 0 in"),
    ).findings;
    expect(f!.message).toBe("110 % of the seat, 10 % past 100 %.");
    expect(f!.value).toMatchObject({ dimension: "ratio", unit: { unit: "%" } });
  });

  it("up or down already said in the text is not said again", () => {
    const [f] = bench.check(loaded("22 in ± 0 in")).findings;
    expect(f!.message).toBe("Up 3 in is too much.");
  });

  it("what is missing is named, with the place where it would be written", () => {
    const [f] = bench.check(loaded("unknown")).findings;
    expect(f!.message).toBe("Measure both heights with somebody sitting there. Missing: top loaded of bed.");
    expect(f!.missing[0]!.key).toBe("top-loaded");
  });

  it("the remedy names the values for which the rule holds, and setting one makes it hold", () => {
    const text = loaded("21 in ± 1/8 in");
    const [f] = bench.check(text).findings;
    expect(f!.remedies[0]!.title).toBe("Set bed to 17 1/4 in to 18 3/4 in.");
    const after = applied(text, bench, f!);
    expect(after).toContain("top 18 3/4 in ± 0 in");
    expect(after).toContain("top-loaded 19 3/4 in ± 1/8 in");
    expect(summary(bench.check(after))).toEqual([]);
  });
});

describe("values that were only assumed", () => {
  const bench = new Bench(
    good(`${head}
default stub 1 in to 2 in { title "The hanger's stub"; from-memory "m"; tape yes }
rule gap/stub { title "t"; for each transfer; judge chair.stub
  bands { less than 3 in holds; more than 3 in stop "s" }
  because "b"; common-practice "c"
  examples { 3 in: holds; 3 1/8 in: stop; assumed 1 in: unsettled } }`),
  );
  it("never let a rule hold, and the message says what to measure", () => {
    const [f] = bench.check(home).findings;
    expect(`${f!.verdict} ${f!.levels.best}-${f!.levels.worst}`).toBe("unsettled holds-stop");
    expect(f!.message).toContain("from memory. A tape can measure: The hanger's stub.");
  });
  it("for a part of stature the message names what is measured in its place", () => {
    const part = {
      name: "popliteal-fraction",
      interval: exactly(0.25),
      dimension: "ratio",
      tapeable: true,
    } as const;
    expect(assumedInWords([part], bench.set)).toContain(
      "A tape can measure: From the floor to the underside of the thigh behind the knee, seated.",
    );
  });
  it("measured, the rule holds", () => {
    expect(summary(bench.check(home.replace("brakes both", "brakes both\n  hanger-stub 1 in")))).toEqual([]);
  });
});

describe("rules on steps", () => {
  const set = good(`${head}
rule steps/open { title "Brakes open"; for each step "place board", "slide"
  require step.brakes is locked else stop "At step {step} the brakes are open"; because "b"; common-practice "c"
  remedy insert "lock brakes" before
  examples { step.brakes locked: holds; step.brakes open: stop } }
rule steps/left { title "Board left"; for end of transfer
  require step.board is stowed else advice "The board is still there"; because "b"; common-practice "c"
  remedy insert "withdraw board" after
  examples { step.board stowed: holds; step.board placed: advice } }`);
  const bench = new Bench(set);
  const open = home.replace("    lock brakes\n", "");

  it("are found at their step, under its number", () => {
    const r = bench.check(open);
    expect(summary(r)).toEqual([
      "steps/open into-bed step 2 fails stop-stop",
      "steps/open into-bed step 3 fails stop-stop",
      "steps/left into-bed fails advice-advice",
    ]);
    expect(bench.lineOf(r.findings[0]!)).toBe("place board");
    expect(r.findings[1]!.message).toBe("At step slide the brakes are open.");
  });

  it("the step that is missing is put in, with the indentation kept", () => {
    const [f] = bench.check(open).findings;
    const after = applied(open, bench, f!);
    expect(after).toContain("    approach bed\n    lock brakes\n    place board\n");
    const last = bench.check(after).findings.at(-1)!;
    expect(summary(bench.check(after))).toEqual(["steps/left into-bed fails advice-advice"]);
    expect(applied(after, bench, last)).toContain("    slide\n    withdraw board\n  }");
  });

  it("answer the planner: a step that is certain to break a stop or caution is not allowed", () => {
    const r = bench.check(home);
    const scene = r.scenes[0]!;
    const { allowed, reads } = bench.checker.stepRules(bench.household, scene, "2026-03-02");
    const [before, after] = [scene.run!.before[3]!, scene.run!.after[3]!];
    expect(allowed(before, { verb: "slide" }, after, false)).toBe(true);
    expect(allowed({ ...before, brakes: "open" }, { verb: "slide" }, after, false)).toBe(
      "Brakes open (steps/open)",
    );
    expect(allowed(before, { verb: "slide" }, after, true), "an advice refuses nothing").toBe(true);
    expect([...reads].sort()).toEqual(["step.board", "step.brakes"]);
  });
});

describe("conditions and things", () => {
  it("a rule that does not apply says so; over an unknown it is unknown", () => {
    const set = good(`${head}
rule bed/rise { title "t"; for each transfer; when surface.rails is one of left, both
  require height.rise at most 0 in else caution; ${said}
  examples { surface.rails both, height.rise 0 in: holds; surface.rails both, height.rise 1 in: fails; surface.rails none, height.rise 1 in: not-applicable } }`);
    const bench = new Bench(set);
    const verdict = (text: string): string[] =>
      bench.check(text).verdicts.map((v) => `${v.verdict}: ${v.reason ?? ""}`);
    expect(verdict(home)[0]).toBe("not-applicable: Only where surface rails is left or both");
    expect(verdict(home.replace("rails none", "rails unknown"))[0]).toBe(
      "unknown: It is not known whether surface rails is left or both",
    );
    expect(verdict(home.replace("rails none", "rails both"))[0]).toBe("fails: ");
  });

  it("what nobody said is unknown; what was decided against does not apply", () => {
    const set = good(`${head}
rule board/long { title "t"; for each transfer; require board.length at least 24 in else caution; ${said}
  examples { board.length 24 in: holds; board.length 23 in: fails; board.length without: not-applicable } }`);
    const bench = new Bench(set);
    const verdict = (text: string): string => bench.check(text).verdicts[0]!.verdict;
    expect(verdict(home)).toBe("holds");
    expect(verdict(home.replace("with board-30, daughter", "with daughter"))).toBe("unknown");
    expect(verdict(home.replace("with board-30, daughter", "no-board"))).toBe("not-applicable");
  });

  it("things and the setup are judged under their names", () => {
    const set = good(`${head}
rule bed/rails { title "t"; for each bed; require bed.rails is none else caution; ${said}; at bed.rails
  examples { bed.rails none: holds; bed.rails both: fails } }
rule record/limit { title "t"; for setup; require limit.overdue is no else caution; ${said}
  examples { limit.overdue no: holds; limit.overdue yes: fails } }`);
    const r = new Bench(set).check(home.replace("rails none", "rails both"));
    expect(summary(r).sort()).toEqual([
      "bed/rails bed fails caution-caution",
      "record/limit setup fails caution-caution",
    ]);
    expect(summary(new Bench(set, "2026-01-10").check(home))).toEqual([]);
  });
});

describe("a check after an edit", () => {
  it("judges only what the edit touched, and gives the same as a check from nothing", () => {
    const set = good(`${head + rises}
rule bed/rails { title "t"; for each transfer; require surface.rails is none else caution; ${said}
  examples { surface.rails none: holds; surface.rails both: fails } }`);
    const bench = new Bench(set);
    bench.check(home);
    expect(bench.checker.effort).toEqual({ judged: 4, computed: 2 });
    bench.check(home);
    expect(bench.checker.effort).toEqual({ judged: 0, computed: 0 });
    bench.check(home.replace("trained yes", "trained no"));
    expect(bench.checker.effort).toEqual({ judged: 0, computed: 0 });
    const edited = home.replace("top-loaded 19 1/2 in", "top-loaded 22 in");
    const after = bench.check(edited);
    expect(bench.checker.effort.computed).toBe(2);
    const anew = createChecker(set, small, table).check(bench.household, "2026-03-02");
    expect(
      JSON.stringify(
        after.findings.map((f) => ({ ...f, place: 0, related: f.related.map((r) => r.message), missing: 0 })),
      ),
    ).toBe(
      JSON.stringify(
        anew.findings.map((f) => ({ ...f, place: 0, related: f.related.map((r) => r.message), missing: 0 })),
      ),
    );
  });

  it("a line put in above a value moves the finding and the lines it rests on along, without judging anew", () => {
    const bench = new Bench(good(head + rises));
    const text = home.replace("19 1/2 in", "22 in");
    bench.check(text);
    const [f] = bench.check(
      text
        .replace("bed bed {", "bed bed {\n  # as found")
        .replace("wheelchair chair {", "wheelchair chair {\n  # as lent"),
    ).findings;
    expect(bench.checker.effort.judged).toBe(0);
    expect(bench.lineOf(f!)).toBe("top-loaded 22 in ± 1/8 in");
    expect(f!.related.map((r) => bench.lineOf({ ...f!, place: r.place }))).toEqual([
      "seat-loaded 19 in ± 1/8 in",
    ]);
  });

  it("a block that moved keeps its findings at the moved lines", () => {
    const bench = new Bench(good(head + rises));
    const text = home.replace("19 1/2 in", "22 in");
    bench.check(text);
    const [f] = bench.check(`# one more line\n\n${text}`).findings;
    expect(bench.lineOf(f!)).toBe("top-loaded 22 in ± 1/8 in");
    expect(bench.checker.effort.judged).toBe(0);
  });
});
