/**
 * The released rule sets, embedded as text and, in what is built, as already read.
 *
 * `import sets from "virtual:rule-sets"` gives every rule set under `rules/`, so that neither the bundles
 * nor the tests read files at run time. The build and the tests share this one loader.
 *
 * What is built carries texts compressed, each opened when somebody asks for it: as plain literals they were two thirds of
 * the program, and every start read them all.
 */
import { readFileSync, rmSync } from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { deflateRawSync } from "node:zlib";
import { build } from "esbuild";
import { globSync } from "tinyglobby";

const MODULE = "virtual:rule-sets";
const ROOT = import.meta.dirname;

/**
 * Reads `rules/<name>/<version>/*.spanrules`.
 *
 * @returns {{ name: string, version: string, files: { path: string, text: string }[] }[]}
 *   sets ordered by name and version, files ordered by path; a path is relative to `rules/`, with slashes.
 */
export function readRuleSets(root = ROOT) {
  const base = path.join(root, "rules");
  const sets = new Map();
  for (const file of globSync("*/*/*.spanrules", { cwd: base }).sort()) {
    const [name, version] = file.split("/");
    const key = `${name}/${version}`;
    if (!sets.has(key)) sets.set(key, { name, version, files: [] });
    sets.get(key).files.push({ path: file, text: readFileSync(path.join(base, file), "utf8") });
  }
  return [...sets.values()].sort(
    (a, b) =>
      a.name.localeCompare(b.name, "en") || a.version.localeCompare(b.version, "en", { numeric: true }),
  );
}

const source = (sets) => `export default ${JSON.stringify(sets)};`;

const closed = (text) => JSON.stringify(deflateRawSync(text, { level: 9 }).toString("base64"));

/** The same module with its texts compressed. */
const compressed = (sets) => `import { inflateRawSync } from "node:zlib";
const open = (text) => inflateRawSync(Buffer.from(text, "base64")).toString("utf8");
const set = (name, version, hash, files, packed) => {
  let list;
  return {
    name, version, hash,
    get files() { return (list ??= JSON.parse(open(files))); },
    ...(packed && { packed: {
      get set() { return open(packed[0]); },
      get examples() { return open(packed[1]); },
    } }),
  };
};
export default [${sets
  .map(
    ({ name, version, hash, files, packed }) =>
      `set(${JSON.stringify(name)}, ${JSON.stringify(version)}, ${JSON.stringify(hash)}, ${closed(JSON.stringify(files))}, ${packed ? `[${closed(packed.set)}, ${closed(packed.examples)}]` : "undefined"})`,
  )
  .join(",\n")}];`;

/** The sets with what was read from their texts, by the program's own reader; a set that cannot be read is left as text. */
async function withPacked(sets) {
  const outfile = path.join(ROOT, `.cache/pack-rules-${process.pid}.mjs`);
  await build({
    absWorkingDir: ROOT,
    bundle: true,
    format: "esm",
    platform: "node",
    mainFields: ["module", "main"],
    logLevel: "warning",
    stdin: {
      contents: `export { readReleased } from "./rules/engine/load.js";
        export { contentHash } from "./server/workspace/content-hash.js";
        export { packRuleSet } from "./rules/engine/pack.js";
        export { FactTable } from "./rules/engine/fact-table.js";
        export { quantities } from "./rules/quantities/index.js";`,
      resolveDir: ROOT,
      loader: "ts",
    },
    outfile,
  });
  try {
    const engine = await import(pathToFileURL(outfile).href);
    const around = new engine.FactTable(engine.quantities);
    return sets.map((s) => {
      const { set, problems } = engine.readReleased(s.files, around);
      const hashed = { ...s, hash: engine.contentHash(s.files) };
      return set && problems.length === 0 ? { ...hashed, packed: engine.packRuleSet(set) } : hashed;
    });
  } finally {
    rmSync(outfile, { force: true });
  }
}

let packed;

/** For esbuild. */
export const ruleSetsForBuild = {
  name: "rule-sets",
  setup({ onResolve, onLoad }) {
    onResolve({ filter: /^virtual:rule-sets$/ }, () => ({ path: MODULE, namespace: "rule-sets" }));
    onLoad({ filter: /.*/, namespace: "rule-sets" }, async () => ({
      contents: compressed(await (packed ??= withPacked(readRuleSets()))),
      loader: "js",
      resolveDir: ROOT,
    }));
  },
};

/** For vitest. */
export const ruleSetsForTests = {
  name: "rule-sets",
  resolveId(id) {
    return id === MODULE ? `\0${MODULE}` : undefined;
  },
  load(id) {
    return id === `\0${MODULE}` ? source(readRuleSets()) : undefined;
  },
};
