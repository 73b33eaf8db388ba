/** Hover: what a word means, what a value is worth, how a number came about, what a step needs. One section for each thing there is to say. */
import { MarkupKind, type Hover, type Position, type Range } from "vscode-languageserver-protocol";
import { readEntry } from "../../language/model/entry.js";
import { isQuantity, isUnknown, type Thing, type Value } from "../../language/model/types.js";
import type { Quantity } from "../../language/quantity/types.js";
import type { Node } from "../../language/text/types.js";
import { setupVocabulary } from "../../language/vocabulary/index.js";
import type { BlockSpec, KeySpec } from "../../language/vocabulary/types.js";
import { findingSection, ruleSection } from "./hover-findings.js";
import { arithmetic, numbers } from "./hover-quantities.js";
import { stepSection } from "./hover-steps.js";
import { rangeHere } from "./diagnostics.js";
import { mentionAt, mentionsIn } from "./mentions.js";
import type { Page } from "./page.js";
import { inBoth, plain, toleranceOf } from "./show.js";
import { contains, hitAt, kindOf, rangeOn, type Hit } from "./where.js";

export function hover(page: Page, position: Position): Hover | undefined {
  const hit = hitAt(page.tree, position);
  const sections = hit ? about(page, hit, position) : [];
  const findings = page.reported.filter((r) => r.finding && contains(rangeHere(page, r), position));
  sections.push(...new Set(findings.map((r) => findingSection(page, r.finding!, findings.length === 1))));
  const scene =
    hit && hit.nodes.length === 1 ? page.scenes.find((s) => s.transfer.entry === hit.entry) : undefined;
  if (scene && hit!.index === 0) sections.push(...numbers(page, scene));
  if (scene && hit!.index === 1) sections.push(...arithmetic(page, scene));
  if (sections.length === 0) return undefined;
  const range: Range | undefined = hit?.atom && rangeOn(position.line, hit.atom.start, hit.atom.end);
  return {
    contents: { kind: MarkupKind.Markdown, value: sections.join("\n\n---\n\n") },
    ...(range && { range }),
  };
}

function about(page: Page, hit: Hit, position: Position): string[] {
  const node = hit.nodes[hit.nodes.length - 1]!;
  const specs = specsOf(hit.nodes);
  if (!specs) return [];
  const { spec, key, step, keyName } = specs;
  if (step) {
    const section = stepSection(page, hit);
    return section ? [section] : [];
  }
  if (spec) return onHead(page, hit, node, spec, position);
  if (key) return onKey(page, hit, node, key, keyName, position);
  return [];
}

interface Specs {
  /** The statement opens a block of this kind. */
  readonly spec?: BlockSpec;
  readonly key?: KeySpec;
  readonly step?: boolean;
  readonly keyName: string;
}

/** The vocabulary of the last of some nested statements. */
function specsOf(nodes: readonly Node[]): Specs | undefined {
  let around: BlockSpec | undefined;
  for (const [depth, node] of nodes.entries()) {
    const kind = kindOf(node.statement.atoms)?.kind;
    if (kind === undefined) return undefined;
    const last = depth === nodes.length - 1;
    if (around?.steps) return { step: true, keyName: kind };
    if (around?.free) return undefined;
    const blocks: { readonly [kind: string]: BlockSpec } = around
      ? (around.blocks ?? {})
      : setupVocabulary.blocks;
    const keys: { readonly [key: string]: KeySpec } = around ? around.keys : setupVocabulary.keys;
    const block = Object.hasOwn(blocks, kind) ? blocks[kind] : undefined;
    if (node.children && block) {
      if (last) return { spec: block, keyName: kind };
      around = block;
      continue;
    }
    if (!last) return undefined;
    const key = Object.hasOwn(keys, kind)
      ? keys[kind]
      : Object.values(keys).find((k) => k.also?.includes(kind));
    return key ? { key, keyName: kind } : undefined;
  }
  return undefined;
}

function onHead(page: Page, hit: Hit, node: Node, spec: BlockSpec, position: Position): string[] {
  const { kind } = kindOf(node.statement.atoms)!;
  const sections: string[] = [];
  if (hit.index <= 0)
    sections.push(`**${kind.replaceAll("may-change", "may change")}** — ${plain(spec.help)}`);
  else {
    const named = declared(page, position);
    if (named) sections.push(named);
  }
  return sections;
}

function onKey(
  page: Page,
  hit: Hit,
  node: Node,
  key: KeySpec,
  keyName: string,
  position: Position,
): string[] {
  const about = keyHelp(keyName, key);
  if (hit.index === 0) return [about];
  const rule =
    hit.atom?.type === "word"
      ? page.set?.rules.find((r) => r.id === (hit.atom as { word: string }).word)
      : undefined;
  if (rule) return [ruleSection(page.set, rule)];
  const named = declared(page, position);
  if (named) return [named, about];
  const value = valueOf(hit, keyName, node);
  const quantity = value === undefined ? undefined : quantityAt(value, hit);
  if (quantity) return [`${quantitySection(page, quantity)}\n\n${about}`];
  if (isUnknown(value))
    return [
      `**unknown** — it must still be found out; until then whatever rests on it stays open.\n\n${about}`,
    ];
  return [about];
}

function keyHelp(name: string, key: KeySpec): string {
  const lines = [`**${name}** — ${plain(key.help)}`];
  if (key.measure) lines.push(`How to measure: ${plain(key.measure)}.`);
  if (key.safer)
    lines.push(
      key.safer === "low"
        ? "If in doubt, the smaller value is the safer one."
        : "If in doubt, the larger value is the safer one.",
    );
  if (key.shape.is === "choice") lines.push(`One of: ${key.shape.choices.join(", ")}.`);
  return lines.join("\n\n");
}

function quantitySection(page: Page, q: Quantity): string {
  const exact = { low: q.low, nominal: q.nominal, high: q.high };
  const shown = q.shape === "plain" ? { low: q.nominal, nominal: q.nominal, high: q.nominal } : exact;
  const origin = [
    q.known as string,
    q.by !== undefined ? `by "${plain(q.by)}"` : "",
    q.on !== undefined ? `on ${q.on}` : "",
  ]
    .filter(Boolean)
    .join(" ");
  const said = q.knownGiven ? origin : `${origin} (nothing else is said)`;
  return [`**${inBoth(shown, q.dimension, q.unit)}** — ${said}`, toleranceOf(q, page.set?.defaults)].join(
    "\n\n",
  );
}

/** What the statement at the position says, as the model has it. */
function valueOf(hit: Hit, key: string, node: Node): Value | undefined {
  const reading = readEntry(hit.entry);
  if (hit.nodes.length === 1) return reading.statement?.value;
  const block = hit.nodes[hit.nodes.length - 2]!;
  const thing = reading.thing && thingOf(reading.thing, block);
  const value = thing?.values[key];
  // A repeatable key holds a list, in the order of its statements.
  const many =
    thing &&
    (block.children ?? []).filter(
      (c) => c.statement.atoms[0]?.type === "word" && c.statement.atoms[0].word === key,
    );
  if (Array.isArray(value) && many && many.length === value.length && many.length > 1)
    return value[many.indexOf(node)] as Value;
  return value;
}
function thingOf(thing: Thing, node: Node): Thing | undefined {
  if (thing.node === node) return thing;
  for (const inner of Object.values(thing.inner))
    for (const t of inner ?? []) {
      const found = thingOf(t, node);
      if (found) return found;
    }
  return undefined;
}

/** Of the quantities in a value, the one that the position touches: the first whose written number it is. */
function quantityAt(value: Value, hit: Hit): Quantity | undefined {
  const all = quantitiesIn(value);
  if (all.length <= 1) return all[0];
  const atoms = hit.nodes[hit.nodes.length - 1]!.statement.atoms;
  const before = atoms
    .slice(0, hit.index + 1)
    .filter((a) => a.type === "measure" || a.type === "number").length;
  return all[Math.max(0, Math.min(all.length, before) - 1)];
}
function quantitiesIn(value: Value | undefined): Quantity[] {
  if (value === undefined || typeof value !== "object") return [];
  if (isQuantity(value)) return [value];
  return (Array.isArray(value) ? value : Object.values(value)).flatMap((v) =>
    quantitiesIn(v as Value | undefined),
  );
}

/** A name: what it stands for, with the lines that declare it. */
function declared(page: Page, position: Position): string | undefined {
  const mention = mentionAt(
    mentionsIn(page.tree, (name) => page.household.things.has(name)),
    position,
  );
  const thing = mention && !mention.declares ? page.household.things.get(mention.name) : undefined;
  const at = thing && page.household.locate(thing.entry);
  if (!thing || !at) return undefined;
  const lines = thing.entry.lines.map((l) => l.text).slice(0, 14);
  if (thing.entry.lines.length > lines.length) lines.push("  …");
  const file = at.path === page.path ? "" : ` of ${plain(at.path.split(/[\\/]/).pop()!)}`;
  return `**${thing.name}** — ${thing.kind}, line ${at.line + thing.node.line + 1}${file}\n\n\`\`\`span\n${lines.join("\n")}\n\`\`\``;
}
