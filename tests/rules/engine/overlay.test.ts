/** A policy beside a rule set: it may ask for more as it likes, and for less only with reasons, an approver and an end. */
import { describe, expect, it } from "vitest";
import { overlaid } from "../../../rules/engine/overlay.js";
import type { OverlaidSet } from "../../../rules/engine/overlay-types.js";
import { Bench, good, head, home, said, summary, table } from "./sets.js";

const base = good(`${head}
limit near 3 in { title "Near"; common-practice "c" }
limit shortest 10 in { title "Shortest"; common-practice "c" }
rule height/rise { title "Climb"; for each transfer; judge height.rise
  bands { less than near holds; near to 6 in caution "far"; more than 6 in stop "too far" }
  because "b"; common-practice "c"
  examples { 3 in: holds; 3 1/8 in: caution; 6 in: caution; 6 1/8 in: stop; 3 in ± 1/4 in: unsettled } }
rule board/short { title "Short"; for each transfer; require board.length at least shortest else caution; ${said}
  examples { board.length 10 in: holds; board.length 9 in: fails } }
rule bed/rails { title "Rails up"; for each transfer; require surface.rails is none else caution; ${said}
  examples { surface.rails none: holds; surface.rails both: fails } }
rule chair/cushion { title "Cushion"; for each transfer; judge chair.cushion-kind
  bands { foam, gel holds; air advice "a"; none caution "n" } because "b"; common-practice "c"
  examples { foam: holds; air: advice; none: caution } }`);

const reasons = 'because "r"; approved-by "clinical lead"; until 2026-06-30';
const policy = (text: string): string =>
  `policy clinic { title "Policy of a clinic"; for trial 1; by "clinical lead" }\n${text}`;
const under = (text: string, today = "2026-03-02"): OverlaidSet =>
  overlaid(base, { path: "policy.spanrules", text: policy(text) }, today, table);
const said1 = (r: OverlaidSet): string[] =>
  r.problems.map((p) => `${p.path} ${p.line + 1} ${p.rule}: ${p.message}`);

const nearer = `limit near 2 in { because "Falls" }
rule height/rise { examples { 2 in: holds; 2 1/8 in: caution; 6 in: caution; 6 1/8 in: stop } }`;

describe("a policy that asks for more needs no reason", () => {
  it.each([
    ["a limit of bands that is lowered", nearer],
    [
      "a limit of a requirement that is raised",
      `limit shortest 12 in { }
rule board/short { examples { board.length 12 in: holds; board.length 11 in: fails } }`,
    ],
    ["a level that is raised", "rule bed/rails { level caution to stop }"],
    ["levels of some bands that are raised", "rule height/rise { level caution to stop }"],
    [
      "bands that are graver everywhere",
      `rule height/rise { bands { less than 1 in holds; 1 in to 6 in caution "c"; more than 6 in stop "s" }
  examples { 1 in: holds; 1 1/8 in: caution; 6 in: caution; 6 1/8 in: stop } }`,
    ],
    [
      "bands over words that are graver",
      `rule chair/cushion { bands { foam, gel holds; air, none caution "n" }
  examples { foam: holds; air: caution } }`,
    ],
  ])("%s", (_, text) => {
    const r = under(text);
    expect(said1(r)).toEqual([]);
    expect(r.overlay!.changes.map((c) => c.loosens)).toEqual([false]);
    expect(r.set!.overlays).toEqual([r.overlay]);
  });
});

describe("a policy that asks for less", () => {
  const looser: readonly [string, string, number][] = [
    [
      "a limit of bands that is raised",
      "limit near 4 in { REASONS }\nrule height/rise { examples { 4 in: holds; 4 1/8 in: caution; 6 in: caution; 6 1/8 in: stop } }",
      2,
    ],
    [
      "a limit of a requirement that is lowered",
      "limit shortest 8 in { REASONS }\nrule board/short { examples { board.length 8 in: holds; board.length 7 in: fails } }",
      2,
    ],
    ["a level that is lowered", "rule bed/rails { level caution to advice; REASONS }", 2],
    ["a rule that is switched off", "rule bed/rails { off; REASONS }", 2],
    [
      "bands that are milder at one place and graver at another",
      `rule height/rise { bands { less than 1 in holds; 1 in to 7 in caution "c"; more than 7 in stop "s" }
  REASONS; examples { 1 in: holds; 1 1/8 in: caution; 7 in: caution; 7 1/8 in: stop } }`,
      2,
    ],
    [
      "bands over words that are milder for one of them",
      `rule chair/cushion { bands { foam, gel, air holds; none stop "n" }
  REASONS; examples { foam: holds; none: stop } }`,
      2,
    ],
  ];
  it.each(looser)("%s: with all three reasons it is taken and listed as such", (_, text) => {
    const r = under(text.replace("REASONS", reasons));
    expect(said1(r)).toEqual([]);
    expect(r.overlay!.changes).toEqual([
      expect.objectContaining({
        loosens: true,
        because: "r",
        approvedBy: "clinical lead",
        until: "2026-06-30",
      }),
    ]);
  });
  it.each(looser)("%s: lacking any of the reasons it is refused at its line", (_, text, line) => {
    for (const part of reasons.split("; ")) {
      const fewer = reasons
        .split("; ")
        .filter((p) => p !== part)
        .join("; ");
      const r = under(text.replace("REASONS", fewer));
      expect(r.set).toBeUndefined();
      expect(said1(r)).toEqual([
        expect.stringMatching(`^policy.spanrules ${line} rules/policy-loosens: .*${part.split(" ")[0]}`),
      ]);
    }
  });
  it("holds to the end of its last day, and no longer", () => {
    const text = `rule bed/rails { off; ${reasons} }`;
    expect(under(text, "2026-06-30").set).toBeDefined();
    expect(said1(under(text, "2026-07-01"))).toEqual([
      "policy.spanrules 2 rules/policy-expired: This ended on 2026-06-30. Decide it anew, or take it out.",
    ]);
  });
});

describe("a policy is refused whole, with every reason at its line", () => {
  it.each([
    [
      "a limit that there is not",
      "limit nearer 2 in { }",
      ['2 rules/unknown-name: trial 1 has no limit called "nearer". Is "near" meant?'],
    ],
    [
      "a rule that there is not",
      "rule bed/nails { off }",
      ['2 rules/unknown-name: trial 1 has no rule called "bed/nails". Is "bed/rails" meant?'],
    ],
    [
      "another kind of quantity",
      "limit near 2 lb { }",
      ["2 rules/dimension: The limit near is 3 in: this is another kind of quantity."],
    ],
    ["a change that changes nothing", "limit near 3 in { }", ["2 rules/policy-without-effect: "]],
    [
      "a level that the rule never gives",
      "rule bed/rails { level stop to caution }",
      ["2 rules/policy-without-effect: "],
    ],
    ["the same limit twice", "limit near 2 in { }\nlimit near 1 in { }", ["3 rules/given-twice: "]],
    ["a default", "default stub 1 in { }", ["2 rules/unknown-word: "]],
    [
      "bands for a rule that has none",
      'rule bed/rails { bands { less than 1 in holds; more than 1 in stop "s" } }',
      ["2 rules/band: "],
    ],
    [
      "a letter that only looks like the right one",
      "limit ne\u0430r 2 in { }",
      ['2 rules/homograph: "ne\u0430r" holds the letter "\u0430"'],
    ],
    [
      "a letter that only looks like the right one, in a rule's name",
      "rule b\u0435d/rails { level caution to stop }",
      ['2 rules/homograph: "b\u0435d/rails"'],
    ],
    [
      "examples of the released rule that no longer give what they say",
      "limit near 2 in { }",
      [
        "2 rules/example-fails: height/rise under this policy: 3 in: holds",
        "2 rules/example-missing: height/rise under this policy: ",
      ],
    ],
    [
      "examples of its own that do not give what they say",
      "rule height/rise { level caution to stop; examples { 3 in: stop } }",
      ["2 rules/example-fails: "],
    ],
    [
      "bands with a gap",
      'rule height/rise { bands { less than 1 in holds; 2 in to 6 in caution "c"; more than 6 in stop "s" }\n  examples { 1 in: holds } }',
      ["rules/band: No band says what holds between 1 in and 2 in."],
    ],
  ])("%s", (_, text, expected) => {
    const r = under(text);
    expect(r.set).toBeUndefined();
    for (const e of expected) expect(said1(r).join("\n")).toContain(e);
    expect(r.problems.every((p) => p.path === "policy.spanrules")).toBe(true);
  });
  it("one for another rule set, or for another version", () => {
    const text = policy("").replace("trial 1", "trial 2");
    const r = overlaid(base, { path: "p.spanrules", text }, "2026-03-02", table);
    expect(said1(r)).toEqual([
      "p.spanrules 1 rules/policy-for-another: This policy is for trial 2, not for trial 1.",
    ]);
  });
  it("one without a head", () => {
    const text = "rule bed/rails { level caution to stop }";
    const r = overlaid(base, { path: "p.spanrules", text }, "2026-03-02", table);
    expect(said1(r)).toEqual([expect.stringContaining("This policy has no head")]);
  });
  it("whatever is written in it, it is read to the end", () => {
    for (const text of [
      "",
      "policy",
      "policy {",
      "policy a { for }",
      "limit",
      "rule { bands { } }",
      "\0",
      "}}}}",
    ])
      expect(overlaid(base, { path: "p.spanrules", text }, "2026-03-02", table).set).toBeUndefined();
  });
});

describe("under a policy", () => {
  const check = (text: string, plan = home): string[] => summary(new Bench(under(text).set!).check(plan));
  const rise = home.replace("top-loaded 19 1/2 in", "top-loaded 21 1/2 in");

  it("plans are judged by what the policy says", () => {
    expect(check("rule bed/rails { level caution to stop }", rise)).not.toContainEqual(
      expect.stringContaining("height/rise"),
    );
    expect(check(nearer, rise)).toContainEqual("height/rise into-bed fails caution-caution");
  });
  it("a rule that is switched off says nothing", () => {
    const rails = home.replace("rails none", "rails both");
    expect(check("rule chair/cushion { level advice to caution }", rails)).toContainEqual(
      expect.stringContaining("bed/rails"),
    );
    expect(check(`rule bed/rails { off; ${reasons} }`, rails)).not.toContainEqual(
      expect.stringContaining("bed/rails"),
    );
  });
  it("an acceptance of a rule that is switched off says by whom", () => {
    const set = under(`rule bed/rails { off; ${reasons} }`).set!;
    const line = 'accept bed/rails at into-bed until 2026-03-16 because "x"\nexpect bed/rails holds\n';
    const found = new Bench(set).check(home + line).findings.filter((f) => f.rule.startsWith("form/"));
    expect(found.map((f) => f.message)).toEqual([
      "The policy clinic switched bed/rails off. This accepts nothing.",
      "The policy clinic switched bed/rails off.",
    ]);
  });
  it("every rule that a limit changes says so among what it rests on, and so does the limit", () => {
    const { set } = under(nearer);
    const note = expect.objectContaining({
      basis: "project-choice",
      text: "The policy clinic decides: The limit near (near) is 2 in in place of 3 in. Because: Falls.",
    }) as unknown;
    expect(set!.rules.find((r) => r.id === "height/rise")!.bases[0]).toEqual(note);
    expect(set!.limits.get("near")!.bases[0]).toEqual(note);
    expect(set!.rules.find((r) => r.id === "bed/rails")!.bases).toHaveLength(1);
    const finding = new Bench(set!).check(rise).findings.find((f) => f.rule === "height/rise")!;
    expect(finding.bases.filter((b) => b.text.startsWith("The policy"))).toHaveLength(1);
  });
  it("the released set stays what it was", () => {
    const before = JSON.stringify(base.rules);
    under(nearer);
    expect(JSON.stringify(base.rules)).toBe(before);
    expect(base.limits.get("near")!.interval.nominal).toBeCloseTo(3 * 0.0254, 12);
  });
});
