import js from "@eslint/js";
import { defineConfig } from "eslint/config";
import prettier from "eslint-config-prettier";
import tseslint from "typescript-eslint";

/** Imports go one way: client, server, rules, language. A layer may not reach a layer before it. */
const reach = (layers, why) => ({
  regex: `^(\\.\\./)+(${layers.join("|")})/`,
  message: why,
});
const NODE = {
  regex:
    "^(node:|vscode|(assert|buffer|child_process|crypto|fs|module|os|path|process|stream|url|util|worker_threads)(/|$))",
  message: "This code must also run in a browser worker: nothing of Node and nothing of an editor.",
};
const EXTENSION = {
  regex: "^\\.{1,2}/.*(?<!\\.(js|mjs|json))$",
  message: "A relative import ends in .js.",
};
/** Taken whole, this library brings the words of forty languages into every bundle. */
const WHOLE_ZOD = {
  name: "zod",
  importNames: ["z", "default"],
  message: 'Write `import * as z from "zod"`: the bundle is five times smaller.',
};
const oneWay = (...patterns) => ({
  "no-restricted-imports": ["error", { paths: [WHOLE_ZOD], patterns: [EXTENSION, ...patterns] }],
});

/** The middle is a pure function: it reads no file, no clock, no environment. */
const PURE = {
  "no-restricted-globals": [
    "error",
    ...["process", "Buffer", "global", "require", "module", "__dirname", "__filename", "setImmediate"].map(
      (name) => ({ name, message: "Nothing of Node in this layer." }),
    ),
  ],
  "no-restricted-syntax": [
    "error",
    {
      selector: "NewExpression[callee.name='Date'][arguments.length=0]",
      message: "No clock in this layer: today is an argument.",
    },
    {
      selector: "CallExpression[callee.object.name='Date'][callee.property.name='now']",
      message: "No clock in this layer: today is an argument.",
    },
    {
      selector: "CallExpression[callee.object.name='Math'][callee.property.name='random']",
      message: "The same input must give the same answer.",
    },
  ],
};

export default defineConfig(
  { ignores: ["**/dist/", ".cache/", "coverage/", "node_modules/"] },
  js.configs.recommended,
  tseslint.configs.recommended,
  {
    languageOptions: { globals: { console: "readonly", process: "readonly", URL: "readonly" } },
    rules: {
      "no-undef": "off",
      // The lexer names the invisible characters that it reports.
      "no-control-regex": "off",
      "@typescript-eslint/no-unused-vars": ["error", { argsIgnorePattern: "^_", varsIgnorePattern: "^_" }],
      "@typescript-eslint/consistent-type-imports": "error",
      eqeqeq: ["error", "always", { null: "ignore" }],
      ...oneWay(),
    },
  },
  {
    files: ["language/**/*.ts"],
    rules: {
      ...PURE,
      ...oneWay(
        reach(["rules", "server", "client", "tests"], "The language knows nothing of rules or windows."),
        NODE,
      ),
    },
  },
  {
    files: ["rules/**/*.ts"],
    rules: {
      ...PURE,
      ...oneWay(reach(["server", "client", "tests"], "The rules know nothing of windows."), NODE),
    },
  },
  {
    files: ["server/**/*.ts"],
    rules: oneWay(reach(["client", "tests"], "The server knows nothing of the extension.")),
  },
  {
    // A promise that nobody waits for swallows its error: in the windows, where promises are, this is checked.
    files: ["server/**/*.ts", "client/**/*.ts"],
    languageOptions: { parserOptions: { projectService: true } },
    rules: {
      "@typescript-eslint/no-floating-promises": "error",
      "@typescript-eslint/await-thenable": "error",
      "@typescript-eslint/no-misused-promises": "error",
    },
  },
  prettier,
);
