import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, test } from "vitest";

interface Manifest {
  version: string;
  license: string;
  activationEvents: string[];
  contributes: {
    languages: { id: string; extensions: string[]; configuration: string }[];
    grammars: { language: string; scopeName: string; path: string }[];
    commands: { command: string }[];
  };
}

const read = <T>(file: string) => JSON.parse(readFileSync(file, "utf8")) as T;
const manifest = read<Manifest>("client/package.json");
const root = read<{ version: string; license: string }>("package.json");

describe("the extension's manifest", () => {
  test("has the version and the licence of the project", () => {
    expect([manifest.version, manifest.license]).toEqual([root.version, root.license]);
    expect(readFileSync("client/LICENSE", "utf8")).toBe(readFileSync("LICENSE", "utf8"));
  });

  test("starts the checks on opening a file of each of its languages", () => {
    const languages = manifest.contributes.languages.map(({ id }) => id);
    expect(languages).toEqual(["span", "spanrules"]);
    expect(manifest.activationEvents).toEqual(languages.map((id) => `onLanguage:${id}`));
    expect(manifest.contributes.grammars.map(({ language }) => language)).toEqual(languages);
  });

  test("names only files that are there", () => {
    const { languages, grammars } = manifest.contributes;
    const named = [
      ...languages.map(({ configuration }) => configuration),
      ...grammars.map((grammar) => grammar.path),
    ];
    expect(named.filter((file) => !existsSync(path.join("client", file)))).toEqual([]);
  });

  test("offers each command that the extension answers, and no other", () => {
    const answered = [...readFileSync("client/extension.ts", "utf8").matchAll(/registerCommand\("([^"]+)"/g)];
    expect(answered.map(([, command]) => command).sort()).toEqual(
      manifest.contributes.commands.map(({ command }) => command).sort(),
    );
  });
});

describe("what an editor does while typing", () => {
  const configuration = read<{
    wordPattern: { pattern: string; flags: string };
    indentationRules: { increaseIndentPattern: string; decreaseIndentPattern: string };
  }>("client/language-configuration.json");
  const opens = new RegExp(configuration.indentationRules.increaseIndentPattern);
  const closes = new RegExp(configuration.indentationRules.decreaseIndentPattern);

  test.each([
    ["bed bed {", true],
    ['  if-not { stop "pain" }', false],
    ["  top 23 in", false],
    ["# a note {", false],
    ['  stop "a { in a text"', false],
    ['  stop "a text" ; steps {', true],
  ])("after %j the next line is indented: %s", (line, indented) => {
    expect(opens.test(line)).toBe(indented);
  });

  test("a closing brace goes back out", () => {
    expect([closes.test("  }"), closes.test("  top 23 in }")]).toEqual([true, false]);
  });

  test.each([
    ["  with board-30, belt-2", ["with", "board-30", "belt-2"]],
    ["accept room/loose-rug at bed.top", ["accept", "room/loose-rug", "at", "bed.top"]],
    ["  top 21.5 in", ["top", "21.5", "in"]],
  ])("the words of %j are selected whole", (line, words) => {
    const { pattern, flags } = configuration.wordPattern;
    expect(line.match(new RegExp(pattern, `${flags}g`))).toEqual(words);
  });
});
