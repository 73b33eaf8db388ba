import { chmodSync, symlinkSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import {
  findPlans,
  isWithin,
  isReallyWithin,
  largestPlan,
  readPlan,
  repositoryOf,
} from "../../../server/workspace/files.js";
import { folderOf } from "./folder.js";

describe("a file that is no plan is said to be none, and why", () => {
  const cases: readonly [what: string, content: string | Uint8Array, read: object][] = [
    ["an ordinary plan", 'setup "A"\n', { text: 'setup "A"\n' }],
    ["a byte order mark at the start", '\uFEFFsetup "A"\n', { text: 'setup "A"\n' }],
    ["an empty file", "", { text: "" }],
    ["null bytes", 'setup "A"\0\n', { problem: "not-text", what: "null bytes" }],
    [
      "bytes of another encoding",
      Uint8Array.of(0x73, 0xe9, 0x74),
      { problem: "not-text", what: "bytes that are not UTF-8" },
    ],
    ["a text in UTF-16", Uint8Array.of(0xff, 0xfe, 0x73, 0x00), { problem: "not-text", what: "null bytes" }],
    [
      "ten megabytes of noise",
      new Uint8Array(10 * 1024 * 1024).fill(0x7b),
      { problem: "too-large", size: "10.0 MB" },
    ],
  ];
  it.each(cases)("%s", (_, content, read) => {
    const folder = folderOf({ "home.span": content });
    expect(readPlan(path.join(folder, "home.span"))).toEqual(read);
  });

  it("a folder, a device and a missing file are not read", () => {
    const folder = folderOf({});
    expect(readPlan(folder)).toEqual({ problem: "unreadable", why: "it is not a file" });
    expect(readPlan("/dev/zero")).toEqual({ problem: "unreadable", why: "it is not a file" });
    expect(readPlan(path.join(folder, "no.span"))).toEqual({ problem: "not-found" });
  });

  it("a link that leads to itself is not followed", () => {
    const folder = folderOf({});
    symlinkSync("round.span", path.join(folder, "round.span"));
    expect(readPlan(path.join(folder, "round.span"))).toEqual({
      problem: "unreadable",
      why: "its links lead in a circle",
    });
  });

  // Whoever may do everything may also read every file.
  it.skipIf(process.getuid?.() === 0)("a file that this account may not read", () => {
    const folder = folderOf({ "home.span": "" });
    chmodSync(path.join(folder, "home.span"), 0);
    expect(readPlan(path.join(folder, "home.span"))).toEqual({
      problem: "unreadable",
      why: "this account may not read it",
    });
  });

  it("a text of half a megabyte is read, a larger one is not", () => {
    const folder = folderOf({
      "home.span": "#".repeat(largestPlan),
      "more.span": "#".repeat(largestPlan + 1),
    });
    expect(readPlan(path.join(folder, "home.span"))).toHaveProperty("text");
    expect(readPlan(path.join(folder, "more.span"))).toHaveProperty("problem", "too-large");
  });
});

describe("finding plans", () => {
  it("takes files as named and every plan in a folder, each once, in order, and none of installed packages", () => {
    const folder = folderOf({
      "b/home.span": "",
      "a.span": "",
      "a.txt": "",
      "node_modules/x/home.span": "",
      "rules/s/1/a.spanrules": "",
    });
    const found = findPlans([".", "b/home.span", "a.txt", "gone", "b"], folder);
    expect(found.files.map((f) => path.relative(folder, f))).toEqual([
      "a.span",
      "a.txt",
      path.join("b", "home.span"),
    ]);
    expect(found.missing).toEqual(["gone"]);
  });

  it("finds the repository around a folder", () => {
    const folder = folderOf({ ".git/HEAD": "", "a/b/home.span": "" });
    expect(repositoryOf(path.join(folder, "a/b"))).toBe(folder);
  });
});

describe("inside a folder", () => {
  it.each([
    ["/plans/a.span", true],
    ["/plans/..a.span", true],
    ["/plans", true],
    ["/plans2/a.span", false],
    ["/a.span", false],
  ])("%s in /plans: %s", (file, inside) => expect(isWithin(file, "/plans")).toBe(inside));

  it("a link that leads out of the folder is outside", () => {
    const folder = folderOf({ "plans/own.span": "", "secret.span": "" });
    symlinkSync(path.join(folder, "secret.span"), path.join(folder, "plans/link.span"));
    expect(isReallyWithin(path.join(folder, "plans/own.span"), path.join(folder, "plans"))).toBe(true);
    expect(isReallyWithin(path.join(folder, "plans/link.span"), path.join(folder, "plans"))).toBe(false);
  });
});
