/**
 * What may be changed: `bed.top 17 in to 23 in "other frame"`, `board-36 instead-of board-30`, `nightstand moved`. The names are
 * read with the entry; what a value may be is read once it is known which kind of thing bears the name.
 */
import { says } from "../text/messages.js";
import { nearest } from "../text/nearest.js";
import { placeOfNode } from "../text/tree.js";
import type { Entry, LineProblem, Node, Word } from "../text/types.js";
import { blockSpec, keySpec, thingKinds } from "../vocabulary/index.js";
import type { KeySpec, Shape } from "../vocabulary/types.js";
import type { Notes } from "./notes.js";
import { valueOf } from "./notes.js";
import type { Change, ChangeLine, Thing, Value } from "./types.js";

const verbs = ["instead-of", "moved", "removed"] as const;

/** Reads one line of `may change` as far as it can be read by itself. */
export function readChange(notes: Notes, node: Node, lines: ChangeLine[]): void {
  const { atoms } = node.statement;
  const [first, second, third, fourth] = atoms;
  if (node.children || first?.type !== "word") return notes.wordExpected(node);
  const refer = (w: Word, name: string): void => {
    notes.references.push({
      name,
      kinds: thingKinds,
      start: w.start,
      end: w.start + name.length,
      line: node.line,
    });
  };
  const dot = first.word.indexOf(".");
  if (dot > 0) {
    const thing = first.word.slice(0, dot);
    refer(first, thing);
    lines.push({ is: "value", thing, path: first.word.slice(dot + 1), node });
    return;
  }
  const left = (from: number): void => {
    const extra = atoms[from];
    const words = extra?.type === "text" && atoms.length === from + 1;
    if (extra && !words)
      notes.report(
        node,
        "form/left-over",
        says["form/left-over"]({
          key: notes.line(node).slice(first.start, extra.start).trim(),
          text: notes.line(node).slice(extra.start, node.statement.end),
        }),
        [],
        { start: extra.start, end: node.statement.end },
      );
  };
  const words = (i: number): { words?: string } => {
    const a = atoms[i];
    return a?.type === "text" ? { words: a.value } : {};
  };
  refer(first, first.word);
  const verb = second?.type === "word" ? second.word : undefined;
  if (verb === "moved" || verb === "removed") {
    left(2);
    lines.push({ is: verb, thing: first.word, node, ...words(2) });
  } else if (verb === "instead-of" && third?.type === "word") {
    refer(third, third.word);
    left(3);
    lines.push({ is: "instead", thing: first.word, of: third.word, node, ...words(3) });
  } else {
    const apart = verb === "instead" && third?.type === "word" && third.word === "of" && fourth !== undefined;
    const near = verb === undefined ? undefined : nearest(verb, verbs);
    const fixes = apart
      ? [{ title: "Write instead-of", text: "instead-of", start: second!.start, end: third.end }]
      : near
        ? [{ title: `Write ${near}`, text: near, start: second!.start, end: second!.end }]
        : [];
    notes.report(node, "form/change-not-read", says["form/change-not-read"]({ name: first.raw }), fixes);
  }
}

const shapes = new WeakMap<KeySpec, KeySpec>();
/** What may be written for a key here: the same as in its block, a quantity also as a range, and words behind it. */
function changeable(spec: KeySpec): KeySpec {
  let found = shapes.get(spec);
  if (!found) {
    const shape: Shape = {
      is: "parts",
      parts: [
        { name: "value", shape: asRange(spec.shape) },
        { name: "words", shape: { is: "text" }, optional: true },
      ],
    };
    shapes.set(spec, (found = { shape, help: spec.help }));
  }
  return found;
}
function asRange(shape: Shape): Shape {
  if (shape.is === "quantity") return { ...shape, range: true };
  if (shape.is === "either") return { is: "either", shapes: shape.shapes.map(asRange) };
  const lead = shape.is === "parts" ? shape.parts.find((p) => p.shape.is === "quantity") : undefined;
  return lead ? asRange(lead.shape) : shape;
}

const kept = new WeakMap<ChangeLine, { readonly kind: string | undefined; readonly resolved: Resolved }>();
export interface Resolved {
  readonly change?: Change;
  readonly problems: readonly LineProblem[];
}

/** What a line of `may change` says, once the kind of the thing that it names is known. Kept while neither changes. */
export function resolveChange(line: ChangeLine, entry: Entry, thing: Thing | undefined): Resolved {
  const before = kept.get(line);
  if (before && before.kind === thing?.kind) return before.resolved;
  const resolved = resolve(line, entry, thing);
  kept.set(line, { kind: thing?.kind, resolved });
  return resolved;
}

function resolve(line: ChangeLine, entry: Entry, thing: Thing | undefined): Resolved {
  const place = placeOfNode(entry, line.node);
  const { node, ...said } = line;
  if (said.is !== "value") return { change: { ...said, place }, problems: [] };
  // A name that nobody declared is a finding of its own.
  if (!thing) return { problems: [] };
  const first = node.statement.atoms[0]!;
  const [block, key] = said.path.includes(".") ? said.path.split(".", 2) : [undefined, said.path];
  const spec =
    block === undefined
      ? keySpec(thing.kind, key!)
      : blockSpec(thing.kind)?.blocks?.[block] && keySpec(block, key!);
  if (!spec) {
    const words = [
      ...Object.keys(blockSpec(thing.kind)?.keys ?? {}),
      ...Object.entries(blockSpec(thing.kind)?.blocks ?? {}).flatMap(([b, s]) =>
        Object.keys(s.keys).map((k) => `${b}.${k}`),
      ),
    ];
    const near = nearest(said.path, words);
    const fixes = near ? [{ title: `Write ${thing.name}.${near}`, text: `${thing.name}.${near}` }] : [];
    return {
      problems: [
        {
          rule: "form/unknown-word",
          message: says["form/unknown-word"]({
            word: said.path,
            where: `${thing.kind} ${thing.name}`,
            nearest: near,
          }),
          start: first.start,
          end: first.end,
          fixes,
        },
      ],
    };
  }
  const reading = valueOf(
    node.statement,
    node.statement.atoms,
    1,
    changeable(spec),
    `${thing.name}.${said.path}`,
  );
  const read = reading.value as { readonly value?: Value; readonly words?: Value } | undefined;
  const value = read?.value;
  return {
    ...(value !== undefined && {
      change: {
        is: "value",
        thing: said.thing,
        ...(block !== undefined && { block }),
        key: key!,
        value,
        ...(typeof read?.words === "string" && { words: read.words }),
        place,
      },
    }),
    problems: reading.problems,
  };
}
