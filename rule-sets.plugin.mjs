/**
 * The released rule sets, embedded as text.
 *
 * `import sets from "virtual:rule-sets"` gives every rule set under `rules/`, so that neither the bundles
 * nor the tests read files at run time. The build and the tests share this one loader.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
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

const source = () => `export default ${JSON.stringify(readRuleSets())};`;

/** For esbuild. */
export const ruleSetsForBuild = {
  name: "rule-sets",
  setup(build) {
    build.onResolve({ filter: /^virtual:rule-sets$/ }, () => ({ path: MODULE, namespace: "rule-sets" }));
    build.onLoad({ filter: /.*/, namespace: "rule-sets" }, () => ({ contents: source(), loader: "js" }));
  },
};

/** For vitest. */
export const ruleSetsForTests = {
  name: "rule-sets",
  resolveId(id) {
    return id === MODULE ? `\0${MODULE}` : undefined;
  },
  load(id) {
    return id === `\0${MODULE}` ? source() : undefined;
  },
};
