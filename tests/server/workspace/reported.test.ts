import { describe, expect, it } from "vitest";
import type { Grade, VerdictKind } from "../../../rules/types.js";
import { atLeast, shownLevel } from "../../../server/workspace/reported.js";

describe("what is not settled stands at the higher of its certain level and one below its worst", () => {
  const cases: readonly [VerdictKind, best: Grade, worst: Grade, shown: string][] = [
    ["fails", "stop", "stop", "stop"],
    ["fails", "caution", "stop", "caution"],
    ["fails", "advice", "stop", "caution"],
    ["fails", "advice", "caution", "advice"],
    ["unsettled", "holds", "stop", "caution"],
    ["unsettled", "holds", "caution", "advice"],
    ["unsettled", "holds", "advice", "advice"],
    ["unsettled", "caution", "stop", "caution"],
    ["unknown", "holds", "stop", "caution"],
    ["unknown", "holds", "caution", "advice"],
  ];
  it.each(cases)("%s, %s to %s: %s", (_, best, worst, shown) => {
    expect(shownLevel({ best, worst })).toBe(shown);
  });
});

it("levels are ordered: advice, caution, stop", () => {
  expect(atLeast("caution", "caution")).toBe(true);
  expect(atLeast("stop", "caution")).toBe(true);
  expect(atLeast("advice", "caution")).toBe(false);
});
