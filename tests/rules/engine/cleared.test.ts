import { describe, expect, it } from "vitest";
import { Bench, good, head, home, said, summary } from "./sets.js";

const set = good(`${head}
rule bed/rails { title "Rails up"; for each transfer; require surface.rails is none else caution "Rails of {surface} are up"; because "b"; common-practice "c"; at surface.rails
  examples { surface.rails none: holds; surface.rails both: fails; surface.rails unknown: unknown } }
rule chair/brakes { title "Brakes on one wheel"; for each transfer; require chair.brakes is both else stop "One brake only"; because "b"; common-practice "c"
  examples { chair.brakes both: holds; chair.brakes left: fails } }
rule chair/gel { title "t"; for each transfer; require chair.cushion-kind is gel else advice; ${said}
  examples { chair.cushion-kind gel: holds; chair.cushion-kind foam: fails } }`);
const tried = `${home}trial into-bed on 2026-03-01 { by "therapist"; outcome done }\n`;
const rails = tried.replace("rails none", "rails left");
const left = (text: string, today = "2026-03-02"): readonly string[] =>
  new Bench(set, today).check(text).transfers[0]!.left;

describe("a transfer is cleared", () => {
  it("when nothing but advice is found and a good trial is recorded; each direction by itself", () => {
    const r = new Bench(set).check(tried);
    expect(r.transfers.map((t) => `${t.name} ${t.cleared}`)).toEqual(["into-bed true", "out-of-bed false"]);
    expect(r.transfers[1]!.left).toEqual(["Try out-of-bed with the therapist, and record how it went."]);
  });
  it.each([
    ["a caution fails", rails, "Change this, or accept it with a reason: Rails of bed are up."],
    [
      "a stop fails",
      tried.replace("brakes both", "brakes left"),
      "Do not attempt it like this: One brake only.",
    ],
    [
      "something is not known",
      tried.replace("  rails none\n", ""),
      "Find out rails of bed. Needed for: Rails up.",
    ],
    [
      "the trial went wrong",
      tried.replace("outcome done", "outcome failed"),
      "The last trial of into-bed ended as failed. Find out why, and try again with the therapist.",
    ],
    [
      "the trial is still to come",
      tried.replace("2026-03-01", "2026-03-05"),
      "Try into-bed with the therapist, and record how it went.",
    ],
    [
      "a line cannot be read",
      tried.replace("trained yes", "trained perhaps"),
      "Mend the line that cannot be read.",
    ],
  ])("not when %s", (_, text, line) => {
    expect(left(text)).toEqual([line]);
  });
});

describe("acceptances", () => {
  const accept = (rest: string): string => `${rails}accept ${rest}\n`;
  const because = 'because "Let down before each transfer"';
  it("clear a caution at its subject, or at a thing of it, until their day", () => {
    for (const at of ["into-bed", "bed"]) {
      const r = new Bench(set).check(accept(`bed/rails at ${at} until 2026-03-16 ${because}`));
      expect(r.transfers[0]!.cleared).toBe(true);
      expect(r.findings.find((f) => f.rule === "bed/rails")!.accepted).toEqual({
        until: "2026-03-16",
        because: "Let down before each transfer",
      });
    }
  });
  it.each([
    ["expired", `bed/rails at into-bed until 2026-03-01 ${because}`],
    ["unused", `chair/brakes at into-bed until 2026-03-16 ${because}`],
    ["of-unknown-rule", `bed/nails at into-bed until 2026-03-16 ${because}`],
    ["too-broad", `bed/rails until 2026-03-16 ${because}`],
    ["without-end", `bed/rails at into-bed ${because}`],
    ["without-reason", `bed/rails at into-bed until 2026-03-16`],
  ])("one that is %s is a finding of its own and clears nothing", (id, rest) => {
    const r = new Bench(set).check(accept(rest));
    expect(summary(r).filter((s) => s.startsWith("form/"))).toEqual([
      expect.stringContaining(`form/acceptance-${id} `),
    ]);
    expect(r.transfers[0]!.cleared).toBe(false);
  });
  it("a stop needs somebody who answers for it, and even then clears nothing", () => {
    const text = tried.replace("brakes both", "brakes left");
    const line = `accept chair/brakes at into-bed until 2026-03-16 ${because}`;
    expect(summary(new Bench(set).check(`${text}${line}\n`))).toContainEqual(
      expect.stringContaining("form/acceptance-not-approved"),
    );
    const r = new Bench(set).check(`${text}${line.replace("because", 'approved-by "physician" because')}\n`);
    expect(r.findings.find((f) => f.rule === "chair/brakes")!.accepted?.approvedBy).toBe("physician");
    expect(r.transfers[0]!.left).toEqual([
      "Do not attempt it like this: One brake only. (Accepted, but a stop stays a stop.)",
    ]);
  });
});

describe("expected verdicts", () => {
  it.each([
    ["bed/rails fails for into-bed", []],
    ["bed/rails holds for into-bed", ["bed/rails was expected to be holds for into-bed; it is fails."]],
    ["bed/nails holds for into-bed", ["There is no rule called bed/nails."]],
    ["bed/rails holds for elsewhere", ["bed/rails judges nothing called elsewhere here."]],
  ])("expect %s", (line, messages) => {
    const r = new Bench(set).check(`${rails}expect ${line}\n`);
    expect(r.findings.filter((f) => f.rule.startsWith("form/")).map((f) => f.message)).toEqual(messages);
  });
});
