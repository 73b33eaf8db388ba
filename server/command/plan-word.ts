/** For somebody who asks of a rule set what a key of plans is. */
import { blockSpec, keySpec, setupVocabulary } from "../../language/vocabulary/index.js";

const kinds: ReadonlySet<string> = new Set(
  Object.entries(setupVocabulary.blocks).flatMap(([kind, spec]) => [kind, ...Object.keys(spec.blocks ?? {})]),
);

/** What a key means in each kind of block that has it, and the default that stands in for it. `client.mass` asks of one kind only. */
export function planWord(name: string): string | undefined {
  const dot = name.lastIndexOf(".");
  const key = name.slice(dot + 1);
  const asked = name.slice(0, Math.max(0, dot));
  const of = [...kinds].filter((kind) => keySpec(kind, key) && (asked === kind || !blockSpec(asked)));
  if (of.length === 0) return undefined;
  const means = of.slice(0, 4).map((kind) => {
    const { help, default: stands } = keySpec(kind, key)!;
    return `in ${kind}, ${help}${stands === undefined ? "" : ` (left out: the default ${stands})`}`;
  });
  return `It is a key of plans: ${means.join("; ")}${of.length > means.length ? "; and of others" : ""}.`;
}
