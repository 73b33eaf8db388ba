import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import oniguruma from "vscode-oniguruma";
import textmate from "vscode-textmate";
import type { IGrammar } from "vscode-textmate";

const require = createRequire(import.meta.url);

const FILES: Readonly<Record<string, string>> = {
  "source.span": "client/syntaxes/span.tmLanguage.json",
  "source.spanrules": "client/syntaxes/spanrules.tmLanguage.json",
};

async function registry(): Promise<textmate.Registry> {
  const wasm = readFileSync(require.resolve("vscode-oniguruma/release/onig.wasm"));
  await oniguruma.loadWASM(
    wasm.buffer.slice(wasm.byteOffset, wasm.byteOffset + wasm.byteLength) as ArrayBuffer,
  );
  return new textmate.Registry({
    onigLib: Promise.resolve({
      createOnigScanner: (patterns) => new oniguruma.OnigScanner(patterns),
      createOnigString: (text) => new oniguruma.OnigString(text),
    }),
    loadGrammar: (scope) => {
      const file = FILES[scope];
      return Promise.resolve(file ? textmate.parseRawGrammar(readFileSync(file, "utf8"), file) : null);
    },
  });
}
const shared = registry();

/** The grammar with this scope name, its includes resolved. */
export async function grammar(scope: string): Promise<IGrammar> {
  const found = await (await shared).loadGrammar(scope);
  if (!found) throw new Error(`No grammar ${scope}`);
  return found;
}

/** Every coloured piece of a text as `[piece, innermost scope]`; plain pieces and blanks are left out. */
export function scopesOf(grammar: IGrammar, text: string): [string, string][] {
  const found: [string, string][] = [];
  let state = textmate.INITIAL;
  for (const line of text.split("\n")) {
    const result = grammar.tokenizeLine(line, state);
    state = result.ruleStack;
    for (const token of result.tokens) {
      const piece = line.slice(token.startIndex, token.endIndex);
      const scope = token.scopes.at(-1) ?? "";
      if (piece.trim() !== "" && token.scopes.length > 1) found.push([piece.trim(), scope]);
    }
  }
  return found;
}
