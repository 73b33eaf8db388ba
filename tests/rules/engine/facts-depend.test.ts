/**
 * A fact is not read again while all that it says it depends on is the same. So whatever part of a scene it looks at must be among
 * these: held against what it does look at, in every sample and with each of its lines left out.
 */
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { householdOf, readSetup, type Library } from "../../../language/model/household.js";
import type { Tree } from "../../../language/text/types.js";
import { specialFacts } from "../../../rules/engine/facts-special.js";
import type { Scene } from "../../../rules/scene.js";
import { Scenes } from "../../../rules/scenes.js";

const samples = readdirSync("samples", { withFileTypes: true })
  .filter((f) => f.isDirectory())
  .map((f) => path.resolve("samples", f.name, "home.span"));
const trees = new Map<string, Tree>();
const library: Library = {
  open: (written, from) => {
    const file = path.resolve(path.dirname(from), written);
    if (!trees.has(file)) trees.set(file, readSetup(readFileSync(file, "utf8")));
    return { path: file, tree: trees.get(file)! };
  },
};

/** The scene, and which of its parts are looked at; a value of the transfer is one of the transfer and of the one it turns round. */
function watched(scene: Scene): { readonly scene: Scene; readonly parts: ReadonlySet<string> } {
  const parts = new Set<string>();
  const value: Scene["value"] = (key) => {
    parts.add("transfer").add("base");
    return scene.value(key);
  };
  const seen = new Proxy(scene, {
    get: (_, part: keyof Scene) => {
      if (part === "value") return value;
      parts.add(part);
      return scene[part];
    },
  });
  return { scene: seen, parts };
}

/** What a scene is called, and what follows from its transfer and from where it goes. */
const ofItself = new Set(["name", "direction"]);

describe("a fact depends on every part of a scene that it looks at", () => {
  it.each(samples.map((file) => [path.basename(path.dirname(file)), file] as const))("%s", (_, file) => {
    const whole = readFileSync(file, "utf8").split("\n");
    const unsaid = new Set<string>();
    for (let left = -1; left < whole.length; left++) {
      const text = whole.filter((_, i) => i !== left).join("\n");
      const household = householdOf(file, readSetup(text), library);
      for (const scene of new Scenes().of(household))
        for (const fact of specialFacts) {
          if (fact.on === "setup") continue;
          const [read, said] = [watched(scene), watched(scene)];
          const sight = { household, today: "2026-03-02" };
          fact.read({ ...sight, scene: read.scene });
          fact.depends({ ...sight, scene: said.scene });
          for (const part of read.parts)
            if (!said.parts.has(part) && !ofItself.has(part)) unsaid.add(`${fact.name}: ${part}`);
        }
    }
    expect([...unsaid]).toEqual([]);
  });
});
