/** For tests over the whole vocabulary: one plan for each key, with the value that the reference page gives as its example. */
import { setupVocabulary } from "../../../../language/vocabulary/index.js";
import type { BlockSpec, KeySpec } from "../../../../language/vocabulary/types.js";
import { exampleHead, exampleStatement } from "../../../../language/vocabulary/exports/words.js";

export interface KeyCase {
  /** `bed top`, `wheelchair drive-wheel axle`. */
  readonly title: string;
  /** A plan that holds just this key in its block, and the one that belongs beside it. */
  readonly text: string;
  readonly statement: string;
  readonly spec: KeySpec;
  /** Kinds from the top level to the block; empty for a statement at top level. */
  readonly way: readonly string[];
  readonly key: string;
}

export function everyKey(): KeyCase[] {
  const { keys, blocks } = setupVocabulary;
  const top = Object.entries(keys).map(([key, spec]) => {
    const statement = exampleStatement(key, spec);
    return { title: key, text: statement, statement, spec, way: [], key };
  });
  return [...top, ...Object.entries(blocks).flatMap(([kind, spec]) => keysIn([kind], [spec]))];
}

function keysIn(way: readonly string[], specs: readonly BlockSpec[]): KeyCase[] {
  const spec = specs[specs.length - 1]!;
  const own = Object.entries(spec.keys).map(([key, k]) => {
    const statement = exampleStatement(key, k);
    const heads = way.map((kind, i) => exampleHead(kind, specs[i]!));
    const more = k.beside ? `; ${k.beside.key} unknown` : "";
    const text = `${heads.map((h) => `${h} { `).join("")}${statement}${more}${" }".repeat(heads.length)}`;
    return { title: [...way, key].join(" "), text, statement, spec: k, way, key };
  });
  const inner = Object.entries(spec.blocks ?? {}).flatMap(([kind, b]) =>
    keysIn([...way, kind], [...specs, b]),
  );
  return [...own, ...inner];
}

/** Findings that say nothing of how a key is written: a name that stands for nothing here, what else is missing. */
export const beside: ReadonlySet<string> = new Set([
  "form/key-missing",
  "form/unknown-name",
  "form/file-not-found",
]);
