/**
 * The build.
 *
 *     node esbuild.config.mjs            everything: the command, the library, the extension's bundles, the packed extension
 *     node esbuild.config.mjs --library FOLDER     the library only, with its types and licences, into a folder
 *     node esbuild.config.mjs --reference          language/REFERENCE.md, made anew from the vocabulary
 *     node esbuild.config.mjs --demo     the command only, then one check of the sample household
 *     node esbuild.config.mjs --bench    the measurements, bundled as the command is, then run
 *
 * Everything shipped is bundled: a loose parser library alone would cost half a second of every start.
 */
import { spawnSync } from "node:child_process";
import { chmodSync, existsSync, mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";
import ts from "typescript";
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

/** The licence texts of every library in some bundles, from the lists of files that went into them. */
function licences(...metafiles) {
  const folders = new Set();
  for (const input of metafiles.flatMap((m) => Object.keys(m.inputs))) {
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

/** `dist/spanwise.mjs`: the command line, with the released rule sets inside. Gives the list of what went into it. */
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
  return result.metafile;
}

/** The library: one module with the released rule sets inside, and the types of what it gives. */
async function buildLibrary(folder) {
  mkdirSync(folder, { recursive: true });
  const outfile = path.join(folder, "library.mjs");
  const result = await build({ ...common, ...asModule, entryPoints: ["server/library.ts"], outfile });
  emitTypes(path.join(ROOT, "server/library.ts"), path.join(folder, "types"));
  return result.metafile;
}

/**
 * The declarations that a program which uses the library needs: those of its entry and of whatever they name, and no others.
 * They may name no package: whoever uses the library installs nothing else.
 */
function emitTypes(entry, folder) {
  const config = ts.readConfigFile(path.join(ROOT, "tsconfig.json"), ts.sys.readFile).config;
  const { options } = ts.convertCompilerOptionsFromJson(config.compilerOptions, ROOT);
  const files = new Map();
  const program = ts.createProgram([entry, path.join(ROOT, "rule-sets.d.ts")], {
    ...options,
    noEmit: false,
    declaration: true,
    emitDeclarationOnly: true,
    rootDir: ROOT,
    outDir: folder,
  });
  const { diagnostics } = program.emit(undefined, (file, text) => files.set(path.normalize(file), text));
  const own = [...program.getSemanticDiagnostics(program.getSourceFile(entry)), ...diagnostics];
  if (own.length > 0)
    throw new Error(`The library's types cannot be made.\n${ts.formatDiagnostics(own, diagnosticsHost)}`);
  rmSync(folder, { recursive: true, force: true });
  const next = [path.join(folder, path.relative(ROOT, entry).replace(/\.ts$/, ".d.ts"))];
  for (const file of next) {
    const text = files.get(file);
    if (text === undefined) throw new Error(`The library's types name ${file}, which was not made.`);
    for (const { fileName: named } of ts.preProcessFile(text, true, true).importedFiles) {
      if (!named.startsWith(".")) throw new Error(`${file} names the package ${named}.`);
      const at = path.join(path.dirname(file), named.replace(/\.js$/, ".d.ts"));
      if (!next.includes(at)) next.push(at);
    }
    mkdirSync(path.dirname(file), { recursive: true });
    writeFileSync(file, text);
  }
}

const diagnosticsHost = {
  getCurrentDirectory: () => ROOT,
  getCanonicalFileName: (file) => file,
  getNewLine: () => "\n",
};

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

/** Writes the reference page; a test fails where it is not what the vocabulary gives. */
async function writeReference() {
  const outfile = path.join(ROOT, ".cache/reference.mjs");
  await build({ ...common, ...asModule, entryPoints: ["language/vocabulary/exports/reference.ts"], outfile });
  const { referencePage } = await import(pathToFileURL(outfile).href);
  writeFileSync(path.join(ROOT, "language/REFERENCE.md"), referencePage());
}

async function buildLibraryAlone() {
  if (!process.argv[3]) throw new Error("Name the folder: node esbuild.config.mjs --library FOLDER");
  const folder = path.resolve(process.argv[3]);
  writeFileSync(path.join(folder, "LICENSES.txt"), licences(await buildLibrary(folder)));
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
  const [command, library] = await Promise.all([
    buildCommand(),
    buildLibrary(path.join(ROOT, "dist")),
    buildClient(),
  ]);
  writeFileSync(path.join(ROOT, "dist/LICENSES.txt"), licences(command, library));
  packClient();
  console.log(`Built dist/spanwise.mjs, dist/library.mjs and dist/spanwise-${version}.vsix`);
}

const tasks = {
  "--demo": runDemo,
  "--bench": runBench,
  "--reference": writeReference,
  "--library": buildLibraryAlone,
};
await (tasks[process.argv[2]] ?? buildAll)();
