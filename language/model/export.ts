/**
 * The household as plain JSON, in a stable order: kinds and keys as the vocabulary has them, things and lists as the file has
 * them. Places in files are not part of it. What was understood is never lost, and what was not understood is listed, so that a
 * program that reads only this cannot take a line that nobody could read for one that was never written.
 */
import type { Entry, Node, Place } from "../text/types.js";
import { blockSpec, setupVocabulary } from "../vocabulary/index.js";
import { oneSpelling } from "../vocabulary/spelling.js";
import type { BlockSpec, KeySpec, Part } from "../vocabulary/types.js";
import { readEntry } from "./entry.js";
import type { ChangeJson, HouseholdJson, StepJson, ThingJson, ValueJson } from "./export-types.js";
import { inOrder, valueJson, type Texts } from "./export-values.js";
import type { Household } from "./household.js";
import type { Change, Thing, Value } from "./types.js";
import { readValue } from "./value.js";
import { quantitiesIn, writtenTexts } from "./written.js";

/** The household as plain JSON. The same household gives the same object, whichever machine reads it. */
export function exportHousehold(household: Household): HouseholdJson {
  const origins = originsOf(household);
  const things = new Map<string, [string, ThingJson][]>();
  const records = new Map<string, ThingJson[]>();
  for (const thing of household.all) {
    const spec = blockSpec(thing.kind);
    const json = thingJson(thing, spec, { from: origins.get(thing), changes: household.changes });
    if (typeof spec?.name === "object") put(records, thing.kind, json);
    else put(things, thing.kind, [thing.name, json]);
  }
  const { statements, extra, unread } = statementsOf(household);
  const shadowed = shadowedThings(household);
  const kinds = Object.keys(setupVocabulary.blocks);
  return {
    format: 1,
    statements,
    things: Object.fromEntries(
      inOrder(kinds, Object.fromEntries(things)).map(([kind, list]) => [kind, Object.fromEntries(list)]),
    ),
    changes: household.changes.map(changeJson),
    records: Object.fromEntries(inOrder(kinds, Object.fromEntries(records))),
    ...((shadowed || extra) && {
      notCounted: { ...(shadowed && { things: shadowed }), ...(extra && { statements: extra }) },
    }),
    ...(unread.length > 0 && { notUnderstood: unread }),
  };
}

function put<T>(map: Map<string, T[]>, key: string, item: T): void {
  const list = map.get(key);
  if (list) list.push(item);
  else map.set(key, [item]);
}

/** For things of other files: the path under which the plan takes them. */
function originsOf(household: Household): ReadonlyMap<Thing, string> {
  const origins = new Map<Thing, string>();
  for (const { entry } of household.tree.entries) {
    const said = readEntry(entry).statement;
    if (said?.key !== "from") continue;
    const { path, use } = said.value as { readonly path?: Value; readonly use?: Value };
    if (typeof path !== "string" || !Array.isArray(use)) continue;
    for (const name of use) {
      const thing = household.things.get(String(name).toLowerCase());
      const own = thing && household.locate(thing.entry)?.path === household.path;
      if (thing && !own && !origins.has(thing)) origins.set(thing, path);
    }
  }
  return origins;
}

/** Things of this file whose name another one bears already. */
function shadowedThings(household: Household): { [kind: string]: ThingJson[] } | undefined {
  const all = new Set(household.all);
  const found: { [kind: string]: ThingJson[] } = {};
  for (const { entry } of household.tree.entries) {
    const { thing } = readEntry(entry);
    if (thing && !all.has(thing)) (found[thing.kind] ??= []).push(thingJson(thing, blockSpec(thing.kind)));
  }
  return Object.keys(found).length > 0 ? found : undefined;
}

interface Statements {
  readonly statements: { readonly [key: string]: ValueJson };
  readonly extra?: { readonly [key: string]: readonly ValueJson[] };
  readonly unread: readonly string[];
}

/** What stands alone at top level. Of a key that stands once, the first counts. */
function statementsOf(household: Household): Statements {
  const said: { [key: string]: ValueJson[] } = {};
  const unread: string[] = [];
  for (const { entry } of household.tree.entries) {
    const { statement, thing } = readEntry(entry);
    if (statement) {
      const spec = setupVocabulary.keys[statement.key];
      const value = valueJson(statement.value, spec?.shape, textsFor(statement.value, entry, entry.node));
      (said[statement.key] ??= []).push(value);
    } else if (!thing && entry.node.statement.atoms.length > 0) unread.push(textOf(entry, entry.node));
  }
  const statements: { [key: string]: ValueJson } = {};
  const extra: { [key: string]: readonly ValueJson[] } = {};
  for (const [key, values] of inOrder(Object.keys(setupVocabulary.keys), said)) {
    if (setupVocabulary.keys[key]?.many) statements[key] = values;
    else {
      statements[key] = values[0]!;
      if (values.length > 1) extra[key] = values.slice(1);
    }
  }
  return { statements, ...(Object.keys(extra).length > 0 && { extra }), unread };
}

/** What of the household a thing needs: the file that it is from, and which of its lines on changes were understood. */
interface Around {
  readonly from?: string;
  readonly changes?: readonly Change[];
}

/** One thing, with the blocks inside it. */
function thingJson(thing: Thing, spec: BlockSpec | undefined, around: Around = {}): ThingJson {
  const head: { readonly [part: string]: Part } = Object.fromEntries(
    (spec?.head ?? []).map((p) => [p.name, p]),
  );
  const keys: { readonly [key: string]: KeySpec } = spec?.keys ?? {};
  const { readings, unread } = linesOf(thing, spec, around.changes ?? []);
  const values: [string, ValueJson][] = [];
  const beside: [string, readonly ValueJson[]][] = [];
  for (const [key, value] of inOrder([...Object.keys(head), ...Object.keys(keys)], thing.values)) {
    const shape = keys[key]?.shape ?? head[key]?.shape;
    const own = readings.filter((r) => r.key === key);
    const one = (v: Value): ValueJson => valueJson(v, shape, textsIn(thing, v, own));
    values.push([key, keys[key]?.many && Array.isArray(value) ? value.map(one) : one(value)]);
    const rest = own.filter((r) => !r.counts).map((r) => valueJson(r.value, shape, r.texts));
    if (rest.length > 0) beside.push([key, rest]);
  }
  const parts = inOrder(Object.keys(spec?.blocks ?? {}), thing.inner).map(
    ([kind, list]) => [kind, partJson(list, spec?.blocks?.[kind])] as const,
  );
  return {
    ...(spec?.name !== "none" && { name: thing.name }),
    ...(around.from !== undefined && { from: around.from }),
    values: Object.fromEntries(values),
    ...(parts.length > 0 && { parts: Object.fromEntries(parts) }),
    ...(thing.steps && { steps: stepsJson(thing) }),
    ...(spec?.free && { lines: nodesOf(thing).map((n) => textOf(thing.entry, n)) }),
    ...(beside.length > 0 && { notCounted: Object.fromEntries(beside) }),
    ...(unread.length > 0 && { notUnderstood: unread }),
  };
}

function partJson(
  list: readonly Thing[],
  spec: BlockSpec | undefined,
): NonNullable<ThingJson["parts"]>[string] {
  const first = list[0]!;
  if (!spec?.once) return list.map((t) => thingJson(t, spec));
  return spec.steps ? stepsJson(first) : thingJson(first, spec);
}

/** The statements and blocks inside a block. */
const nodesOf = (thing: Thing): readonly Node[] =>
  (thing.node.children ?? []).filter((n) => n.statement.atoms.length > 0);

/** The steps in their order; a line among them that is no step keeps its place, so that nobody takes the others for the whole. */
function stepsJson(thing: Thing): StepJson[] {
  const read = new Map((thing.steps ?? []).map((s) => [s.node, s.step]));
  return nodesOf(thing).map((node) => {
    const text = textOf(thing.entry, node);
    const step = read.get(node);
    if (!step) return { unknown: true, text };
    const { verb, side, object } = step;
    return { verb, ...(side && { side }), ...(object !== undefined && { object }), text };
  });
}

/** What one line of a thing says for a key. */
interface Reading {
  readonly key: string;
  readonly value: Value;
  readonly texts: Texts;
  /** It is the value that the household holds, or one of them. */
  counts: boolean;
}

/** Every line of a block: what it says for which key, or that it was not understood. */
function linesOf(
  thing: Thing,
  spec: BlockSpec | undefined,
  changes: readonly Change[],
): { readonly readings: readonly Reading[]; readonly unread: readonly string[] } {
  const readings: Reading[] = [];
  const unread: string[] = [];
  if (!spec || spec.steps) return { readings, unread };
  const inside = Object.values(thing.inner).flatMap((list) => list ?? []);
  const blocks = new Set(inside.map((t) => t.node));
  const person = thing.kind === "helper" || thing.kind === "client";
  for (const node of nodesOf(thing)) {
    if (blocks.has(node)) continue;
    const text = textOf(thing.entry, node);
    if (spec.free) {
      if (!changes.some((c) => standsAt(c.place, thing.entry, node))) unread.push(text);
      continue;
    }
    const atoms = oneSpelling(spec, node.statement.atoms);
    const key = atoms[0]?.type === "word" && !node.children ? atoms[0].word : "";
    const known = Object.hasOwn(spec.keys, key) ? spec.keys[key] : undefined;
    const value = known && readValue(atoms, 1, known.shape, key, node.statement.end, person).value;
    if (value === undefined) unread.push(text);
    else
      readings.push({
        key,
        value,
        texts: writtenTexts(value, atoms, 1, lineOf(thing.entry, node)),
        counts: false,
      });
  }
  return { readings, unread };
}

const standsAt = (place: Place, entry: Entry, { line, statement }: Node): boolean =>
  place.entry === entry &&
  place.line === line &&
  statement.start <= place.start &&
  place.start < Math.max(statement.end, statement.start + 1);

function changeJson(change: Change): ChangeJson {
  const { thing, words } = change;
  const base = { thing, ...(words !== undefined && { words }) };
  if (change.is === "instead") return { is: change.is, ...base, of: change.of };
  if (change.is !== "value") return { is: change.is, ...base };
  const { place, block, key, value } = change;
  const node = place.entry.node.children?.find((n) => standsAt(place, place.entry, n));
  const texts: Texts = node ? textsFor(value, place.entry, node) : new Map();
  return {
    is: "value",
    ...base,
    ...(block !== undefined && { block }),
    key,
    value: valueJson(value, undefined, texts),
  };
}

/** The texts of a value that counts: from the line that says just this, else from the head of the block. */
function textsIn(thing: Thing, value: Value, readings: readonly Reading[]): Texts {
  const same = JSON.stringify(value);
  const reading = readings.find((r) => !r.counts && JSON.stringify(r.value) === same);
  if (!reading) return textsFor(value, thing.entry, thing.node);
  reading.counts = true;
  // The line was read once more; its quantities are others than those of the household, but in the same order.
  const written = quantitiesIn(reading.value).map((q) => reading.texts.get(q));
  return new Map(
    quantitiesIn(value).flatMap((q, i) => (written[i] === undefined ? [] : [[q, written[i]] as const])),
  );
}

const textsFor = (value: Value, entry: Entry, node: Node): Texts =>
  writtenTexts(value, node.statement.atoms, 1, lineOf(entry, node));

const lineOf = (entry: Entry, node: Node): string => entry.lines[node.line]!.text;

/** A statement as it was written. */
const textOf = (entry: Entry, node: Node): string =>
  lineOf(entry, node).slice(node.statement.start, node.statement.end).trim();
