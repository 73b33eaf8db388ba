/**
 * The build.
 *
 *     node esbuild.config.mjs            everything: the command, the extension's bundles, the packed extension
 *     node esbuild.config.mjs --demo     the command only, then one check of the sample household
 *     node esbuild.config.mjs --bench    the measurements, bundled as the command is, then run
 *
 * Everything shipped is bundled: a loose parser library alone would cost half a second of every start.
 */
import { spawnSync } from "node:child_process";
import { chmodSync, existsSync, mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import { build } from "esbuild";
import { ruleSetsForBuild } from "./rule-sets.plugin.mjs";

const ROOT = import.meta.dirname;
const { version } = JSON.parse(readFileSync(path.join(ROOT, "package.json"), "utf8"));

/** Libraries that are CommonJS ask for `require`, which a module does not have by itself. */
const REQUIRE =
  'import { createRequire } from "node:module"; const require = createRequire(import.meta.url);';

const common = {
  absWorkingDir: ROOT,
  bundle: true,
  platform: "node",
  target: "node20",
  // The module form of a library first: some of the CommonJS forms cannot be bundled.
  mainFields: ["module", "main"],
  minify: true,
  // The licences of what is bundled are written beside each bundle, whole.
  legalComments: "none",
  metafile: true,
  logLevel: "warning",
  define: { SPANWISE_VERSION: JSON.stringify(version) },
  plugins: [ruleSetsForBuild],
};

const asModule = { format: "esm", banner: { js: REQUIRE } };

/** The licence texts of every library in a bundle, from the list of files that went into it. */
function licences(metafile) {
  const folders = new Set();
  for (const input of Object.keys(metafile.inputs)) {
    const found = /^(.*node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(input);
    if (found) folders.add(found[1]);
  }
  const parts = [...folders].sort().map((folder) => {
    const manifest = JSON.parse(readFileSync(path.join(ROOT, folder, "package.json"), "utf8"));
    const file = readdirSync(path.join(ROOT, folder)).find((name) => /^licen[cs]e/i.test(name));
    const text = file
      ? readFileSync(path.join(ROOT, folder, file), "utf8").trim()
      : `Licence: ${manifest.license}`;
    return `${manifest.name} ${manifest.version} (${manifest.license})\n\n${text}\n`;
  });
  return parts.join(`\n${"-".repeat(78)}\n\n`);
}

/** `dist/spanwise.mjs`: the command line, with the released rule sets inside. */
async function buildCommand() {
  const entry = path.join(ROOT, "server/command/main.ts");
  const outfile = path.join(ROOT, "dist/spanwise.mjs");
  const ownShebang = readFileSync(entry, "utf8").startsWith("#!");
  const result = await build({
    ...common,
    ...asModule,
    banner: { js: (ownShebang ? "" : "#!/usr/bin/env node\n") + REQUIRE },
    entryPoints: [entry],
    outfile,
  });
  chmodSync(outfile, 0o755);
  // The program trusts the rule sets that it carries, so none is packed that does not pass.
  const verified = spawnSync(process.execPath, [outfile, "rules"], { cwd: ROOT, encoding: "utf8" });
  if (verified.status !== 0)
    throw new Error(`The rule sets cannot be packed.\n${verified.stdout}${verified.stderr}`);
  writeFileSync(path.join(ROOT, "dist/LICENSES.txt"), licences(result.metafile));
}

/** The extension and the server that it starts. */
async function buildClient() {
  const result = await build({
    ...common,
    format: "cjs",
    // A module knows its own address; in a CommonJS bundle it is that of the bundle.
    banner: { js: 'const ownAddress = require("node:url").pathToFileURL(__filename).href;' },
    define: { ...common.define, "import.meta.url": "ownAddress" },
    entryPoints: { extension: "client/extension.ts", server: "client/server.ts" },
    outdir: "client/dist",
    outExtension: { ".js": ".cjs" },
    external: ["vscode"],
  });
  writeFileSync(path.join(ROOT, "client/dist/LICENSES.txt"), licences(result.metafile));
}

/** `dist/spanwise-<version>.vsix`: the extension as an editor installs it. */
function packClient() {
  const out = path.join(ROOT, `dist/spanwise-${version}.vsix`);
  const vsce = path.join(ROOT, "node_modules/@vscode/vsce/vsce");
  const done = spawnSync(
    process.execPath,
    [vsce, "package", "--no-dependencies", "--allow-missing-repository", "--out", out],
    { cwd: path.join(ROOT, "client"), encoding: "utf8", stdio: ["ignore", "pipe", "pipe"], timeout: 120_000 },
  );
  if (done.status !== 0 || !existsSync(out)) {
    throw new Error(`The extension could not be packed.\n${done.stdout}${done.stderr}`);
  }
}

async function runDemo() {
  await buildCommand();
  const call = ["check", "samples/first-week", "--on", "2026-03-02"];
  console.log(`spanwise ${call.join(" ")}\n`);
  spawnSync(process.execPath, ["dist/spanwise.mjs", ...call], { cwd: ROOT, stdio: "inherit" });
}

async function runBench() {
  await buildCommand();
  const outfile = path.join(ROOT, ".cache/bench.mjs");
  await build({ ...common, ...asModule, entryPoints: ["tests/bench/main.ts"], outfile });
  const done = spawnSync(process.execPath, [outfile, ...process.argv.slice(3)], {
    cwd: ROOT,
    stdio: "inherit",
  });
  process.exitCode = done.status ?? 1;
}

async function buildAll() {
  for (const folder of ["dist", "client/dist"]) {
    rmSync(path.join(ROOT, folder), { recursive: true, force: true });
    mkdirSync(path.join(ROOT, folder), { recursive: true });
  }
  await Promise.all([buildCommand(), buildClient()]);
  packClient();
  console.log(`Built dist/spanwise.mjs and dist/spanwise-${version}.vsix`);
}

const task = { "--demo": runDemo, "--bench": runBench }[process.argv[2]] ?? buildAll;
await task();
