/** All quantities of a transfer but the way through the room, after an edit that touches many inputs, beside a JSON service. */
import path from "node:path";
import { getLanguageService, TextDocument } from "vscode-json-languageservice";
import { emptyLibrary, householdOf, readSetup } from "../../language/model/household.js";
import type { Tree } from "../../language/text/types.js";
import { quantities } from "../../rules/quantities/index.js";
import { Workings } from "../../rules/workings.js";
import { Scenes } from "../../rules/scenes.js";
import { Workspace } from "../../server/workspace/snapshot.js";
import { jsonOf, schemaOf, setupOf } from "./household.js";
import { row, times } from "./measure.js";

const measured = quantities.filter((q) => !q.slow);

/** One transfer's quantities after each edit; reading the text is no part of what is timed. */
function session() {
  const file = path.resolve("samples/first-week/bench.span");
  const workspace = new Workspace({ roots: [path.resolve("samples")], today: () => "2026-03-02" });
  workspace.open(file, setupOf(150));
  const { partial } = workspace.snapshot(file).ruleSet!;
  const workings = new Workings({ get: (name) => partial.defaults.get(name) ?? limit(name) });
  const limit = (name: string) => {
    const l = partial.limits.get(name);
    return l && { interval: l.interval, dimension: l.dimension, tapeable: false };
  };
  const scenes = new Scenes();
  let tree: Tree | undefined;
  return {
    read(text: string) {
      tree = readSetup(text, tree);
      const household = householdOf(file, tree, emptyLibrary);
      return scenes.of(household).find((s) => s.name === "into-bed")!;
    },
    work(scene: ReturnType<Scenes["of"]>[number]): number {
      workings.begin();
      for (const q of measured) workings.of(scene, q);
      return workings.computed;
    },
  };
}

export async function quantitiesBeside(): Promise<void> {
  const setup = setupOf(150);
  const ours = session();
  // Bed, chair, client and board all change: nearly everything has to be worked out anew.
  const many = (i: number): string =>
    setup
      .replace("top-loaded 23 in", `top-loaded ${21 + (i % 32) / 16} in`)
      .replace("turned 30 deg", `turned ${25 + (i % 16)} deg`)
      .replace("mass 182 lb", `mass ${170 + (i % 24)} lb`)
      .replace("at 5 ft, 42 in", `at 5 ft, ${38 + (i % 8)} in`)
      .replace(/seat-width 18 in/, `seat-width ${17 + (i % 8) / 4} in`);
  const scenes = Array.from({ length: 64 }, (_, i) => many(i));
  const first = ours.work(ours.read(scenes[0]!));
  const counts = scenes.slice(1).map((text) => ours.work(ours.read(text)));
  const still = ours.read(scenes[63]!.replace("code C-07", "code C-08"));
  const untouched = ours.work(still);
  console.log(
    `${measured.length} quantities of one transfer: ${first} worked out at first, ${Math.min(...counts)} to ${Math.max(...counts)} after an edit of bed, chair, client and room, ${untouched} after an edit that none rests on`,
  );
  const service = getLanguageService({});
  service.configure({
    validate: true,
    schemas: [{ uri: "spanwise://model", fileMatch: ["*"], schema: schemaOf() }],
  });
  const json = jsonOf(setup);
  const validate = async (i: number) => {
    const text = json.replace('"code": "C-07"', `"code": "C-${i % 90}"`);
    const document = TextDocument.create("spanwise://home.json", "json", i, text);
    return service.doValidation(document, service.parseJSONDocument(document));
  };
  // Read outside of the clock: the text's own share is measured with the keystroke.
  const [mine, theirs]: [number[], number[]] = [[], []];
  for (let i = 0; i < 400; i++) {
    const scene = ours.read(scenes[(i * 7) % scenes.length]!);
    const start = performance.now();
    ours.work(scene);
    const between = performance.now();
    await validate(i);
    if (i < 100) continue;
    mine.push(between - start);
    theirs.push(performance.now() - between);
  }
  row(
    "All quantities of a transfer but the way, after an edit of many inputs (goal: a ratio of at most 10)",
    times(mine),
    times(theirs),
    "JSON service",
  );
}
