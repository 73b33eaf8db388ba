import { expect, test } from "vitest";
import { announcement } from "../../client/announcement.js";

const answer = (ruleSets?: { name: string; version: string }[]) => ({
  serverInfo: { name: "Spanwise", version: "0.1.0" },
  capabilities: ruleSets ? { experimental: { ruleSets } } : {},
});

test("the status area says that the checks are alive, with which rule set and version", () => {
  expect(announcement(answer([{ name: "home-transfer", version: "2026.1" }]))).toEqual({
    text: "Spanwise checks with home-transfer 2026.1",
    detail: "Spanwise 0.1.0",
  });
});

test("several rule sets are all named", () => {
  const sets = [
    { name: "home-transfer", version: "2026.1" },
    { name: "home-transfer", version: "2026.2" },
  ];
  expect(announcement(answer(sets)).text).toBe(
    "Spanwise checks with home-transfer 2026.1, home-transfer 2026.2",
  );
});

test.each([
  ["a server that names no rule set", answer()],
  ["a server that has none", answer([])],
  ["no answer at all", undefined],
])("%s is not said to check anything", (_, result) => {
  expect(announcement(result).text).toBe("Spanwise has no rule set");
});
