import { describe, expect, it } from "vitest";
import { emptyLibrary, householdOf, readSetup, type Library } from "../../../language/model/household.js";
import { findings, fixed } from "../form.js";

const inch = 0.0254;
const home = `bed bed { edge firm }
board board-30 { length 30 in; width 8 in }
board board-36 { length 36 in; width 8 in }
wheelchair chair { cushion { kind foam } }
furniture nightstand { size 18 in by 16 in }
transfer into-bed { from chair to bed }
`;
const changesOf = (line: string) =>
  findings(`${home}may change { ${line} }`, {}).changes.map(({ place: _, ...change }) => change);

describe("What may be changed is read, with its limits and its names", () => {
  it.each([
    [
      'bed.top 17 in to 23 in "other frame"',
      {
        is: "value",
        thing: "bed",
        key: "top",
        value: { low: 17 * inch, high: 23 * inch, shape: "adjusts" },
        words: "other frame",
      },
    ],
    ["bed.top 17 to 23 in", { is: "value", key: "top", value: { low: 17 * inch, high: 23 * inch } }],
    ["bed.edge firm", { is: "value", thing: "bed", key: "edge", value: "firm" }],
    [
      "chair.cushion.thickness 2 in to 4 in",
      { is: "value", thing: "chair", block: "cushion", key: "thickness", value: { low: 2 * inch } },
    ],
    ["into-bed.turned 0 deg to 45 deg", { is: "value", key: "turned", value: { low: 0, shape: "adjusts" } }],
    ["bed.adjusts 15 in to 26 in", { is: "value", key: "adjusts", value: { high: 26 * inch } }],
    ["board-36 instead-of board-30", { is: "instead", thing: "board-36", of: "board-30" }],
    [
      'nightstand moved "to the other wall"',
      { is: "moved", thing: "nightstand", words: "to the other wall" },
    ],
    ["nightstand removed", { is: "removed", thing: "nightstand" }],
  ])("%s", (line, change) => {
    const near = JSON.parse(JSON.stringify(changesOf(line)), (_, v: unknown) =>
      typeof v === "number" ? Math.round(v * 1e9) / 1e9 : v,
    ) as unknown[];
    expect(near).toMatchObject([
      JSON.parse(JSON.stringify(change), (_, v: unknown) =>
        typeof v === "number" ? Math.round(v * 1e9) / 1e9 : v,
      ),
    ]);
  });

  it.each([
    ["a thing that nobody declared", "⟦board-37⟧a instead-of board-30", "form/unknown-name"],
    ["the thing that it stands for", "board-36 instead-of ⟦board-33⟧a", "form/unknown-name"],
    ["a key that the thing does not have", "⟦bed.topp⟧a 17 in to 23 in", "form/unknown-word"],
    ["a value without a unit", "bed.top ⟦17⟧a", "form/no-unit"],
    ["another kind of quantity", "bed.top ⟦17 lb⟧a", "form/wrong-dimension"],
    ["the limits the wrong way round", "bed.top ⟦23 in to 17 in⟧a", "form/range-reversed"],
    ["no value at all", "⟦bed.top⟧a", "form/value-missing"],
    ["no word of what may change", "⟦nightstand⟧a", "form/change-not-read"],
    ["something behind it", "nightstand moved ⟦away⟧a", "form/left-over"],
  ])("a wrong line spoils itself only: %s", (_title, line, rule) => {
    const found = findings(`${home}may change {\n ${line}\n nightstand removed\n}`, { a: rule });
    expect(found.changes.map((c) => c.is)).toContain("removed");
  });

  it.each([
    ["bed.topp 17 in to 23 in", "form/unknown-word", "bed.top 17 in to 23 in"],
    ["board-36 instead of board-30", "form/change-not-read", "board-36 instead-of board-30"],
    ["nightstand movd", "form/change-not-read", "nightstand moved"],
    ["board-37 instead-of board-30", "form/unknown-name", "board-30 instead-of board-30"],
  ])("%s is mended by its quick fix", (line, rule, after) => {
    expect(fixed(`${home}may change { ${line} }`, rule, /^Write/)).toBe(`${home}may change { ${after} }`);
  });

  it("knows things of other files", () => {
    const library: Library = {
      open: (path) => ({ path, tree: readSetup("board board-40 { length 40 in; width 9 in }") }),
    };
    const text = `from "pool.span" use board-40\n${home}may change { board-40 instead-of board-30 }`;
    expect(findings(text, {}, library).changes).toMatchObject([{ is: "instead", thing: "board-40" }]);
  });

  it("keeps what was read while neither its block nor the kind of its thing changes", () => {
    const text = `${home}may change {\n bed.top 17 in to 23 in\n nightstand moved\n}`;
    const tree = readSetup(text);
    const after = (changed: string) =>
      householdOf("home.span", readSetup(changed, tree), emptyLibrary).changes[0];
    const before = householdOf("home.span", tree, emptyLibrary).changes[0];
    expect(after(text.replace("edge firm", "edge soft"))).toBe(before);
    expect(after(text.replace("bed bed { edge firm }", "toilet bed { top 17 in }"))).not.toBe(before);
  });
});
