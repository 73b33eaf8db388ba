import { describe, expect, it } from "vitest";
import { chairSide } from "../../../language/model/sides.js";
import { findings, fixed } from "../form.js";

describe("On which side of the chair the other surface lies", () => {
  it.each([
    ["left", "head", undefined, "left"],
    ["left", "foot", undefined, "right"],
    ["left", "same", undefined, "right"],
    ["right", "same", undefined, "left"],
    ["left", "opposite", undefined, "left"],
    ["right", "opposite", undefined, "right"],
    ["left", "square", undefined, undefined],
    ["left", "square", "right", "right"],
    [undefined, "same", undefined, undefined],
    ["left", undefined, undefined, undefined],
  ])("chair at the %s side, facing %s, said %s: %s", (side, facing, said, expected) => {
    expect(chairSide(side, facing, said)).toBe(expected);
  });
});

const things = `wheelchair w { armrests removable }
bed bed { edge firm }
toilet toilet { top 17 in }
`;
const transfer = (to: string, keys: string, step: string): string =>
  `${things}transfer t {\n  from w to ${to}\n${keys}\n  steps {\n    ${step}\n  }\n}`;

describe("Side, facing and steps that cannot all be right are named, both lines of them", () => {
  it.each([
    ["toilet", "  side left\n  facing same", "remove armrest left", "remove armrest right", 7],
    ["toilet", "  side left\n  facing opposite", "remove armrest right", "remove armrest left", 7],
    [
      "toilet",
      "  side left\n  facing square\n  chair-side left",
      "remove armrest right",
      "remove armrest left",
      8,
    ],
    ["bed", "  bed-side left\n  facing foot", "remove armrest left", "remove armrest right", 7],
  ])("%s, %s: %s", (to, keys, step, instead, line) => {
    const home = findings(transfer(to, keys, `⟦${step}⟧a`), { a: "form/side-contradicts" });
    const said = home.problems.find((p) => p.rule === "form/side-contradicts")!;
    expect(said.message).toContain(`line ${line}`);
    expect(said.message).toContain(`the ${to} being`);
    expect(fixed(transfer(to, keys, step), "form/side-contradicts", /Write/)).toBe(
      transfer(to, keys, instead),
    );
  });

  it("nothing is said where the chair stands square and nobody said more", () => {
    findings(transfer("toilet", "  side left\n  facing square", "remove armrest left"), {});
  });
  it("nothing is said of both armrests", () => {
    findings(
      transfer("toilet", "  side left\n  facing same", "remove armrest left\n    remove armrest right"),
      {},
    );
  });

  it.each([
    ["bed", "  bed-side left\n  facing head\n  ⟦side right⟧a", "side left"],
    ["toilet", "  side left\n  facing same\n  ⟦chair-side left⟧a", "chair-side right"],
  ])("a side that is said twice and differently: %s", (to, keys, instead) => {
    const text = transfer(to, keys, "lock brakes");
    const home = findings(text, { a: "form/side-contradicts" });
    const said = home.problems.find((p) => p.rule === "form/side-contradicts")!;
    expect(said.fixes!.map((f) => f.text)).toEqual([instead]);
  });

  it.each([
    ["toilet", "⟦facing head⟧a", ["facing same", "facing opposite", "facing square"]],
    ["bed", "⟦facing same⟧a", ["facing head", "facing foot"]],
  ])("a way of facing that does not fit: beside the %s, %s", (to, facing, offered) => {
    const home = findings(transfer(to, `  ${facing}`, "lock brakes"), { a: "form/facing-unfit" });
    expect(home.problems.find((p) => p.rule === "form/facing-unfit")!.fixes!.map((f) => f.text)).toEqual(
      offered,
    );
  });
  it.each([
    ["toilet", "⟦bed-side left⟧a", "side left"],
    ["bed", "⟦side right⟧a", "bed-side right"],
  ])("a side called otherwise beside the %s: %s", (to, side, offered) => {
    const home = findings(transfer(to, `  ${side}`, "lock brakes"), { a: "form/side-unfit" });
    expect(home.problems.find((p) => p.rule === "form/side-unfit")!.fixes!.map((f) => f.text)).toEqual([
      offered,
    ]);
  });
  it("the way back is compared with what it takes from the way there", () => {
    const there = "transfer t {\n  from w to toilet\n  side left\n  facing same\n}";
    const back = "way-back b of t {\n  steps {\n    ⟦remove armrest left⟧a\n  }\n}";
    const home = findings(`${things}${there}\n${back}`, { a: "form/side-contradicts" });
    expect(home.problems.find((p) => p.rule === "form/side-contradicts")!.message).toContain("line 7");
  });
});
