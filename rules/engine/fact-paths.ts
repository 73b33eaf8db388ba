/** Facts that are simply written in a setup: `client.mass`, `surface.top-loaded`, `chair.cushion-kind`, `transfer.turned`. */
import { isQuantity, isUnknown, type Thing, type Value } from "../../language/model/types.js";
import { blockSpec, keySpec } from "../../language/vocabulary/index.js";
import type { KeySpec, Shape } from "../../language/vocabulary/types.js";
import type { FactType } from "./dimensions.js";

/** Where in a thing a fact is written. */
export interface Path {
  /** An inner block, such as `cushion`. */
  readonly block?: string;
  /** A key; undefined where the fact is the block itself. */
  readonly key?: string;
  /** A part of the key's value: `angle` of `turned`, `first` of `size`. */
  readonly part?: string;
  readonly type: FactType;
  readonly spec?: KeySpec;
}

const given: FactType = { open: true };

function typeOf(shape: Shape): { readonly type: FactType; readonly part?: string } {
  switch (shape.is) {
    case "quantity":
      return { type: { dimension: shape.dimension } };
    case "choice":
      return { type: { choices: shape.choices } };
    case "flag":
    case "mention":
      return { type: { choices: ["yes", "no"] } };
    case "parts": {
      // The first part that is a quantity stands for the whole: the angle of `turned 30 deg towards`.
      const lead = shape.parts.find((p) => p.shape.is === "quantity") ?? shape.parts[0]!;
      return { type: typeOf(lead.shape).type, part: lead.name };
    }
    case "either": {
      const types = shape.shapes.filter((s) => s.is !== "parts").map((s) => typeOf(s).type);
      const choices = types.flatMap((t) => t.choices ?? []);
      const dimension = types.find((t) => t.dimension)?.dimension;
      return { type: { ...(dimension && { dimension }), ...(choices.length > 0 && { choices }) } };
    }
    default:
      return { type: given };
  }
}

/** How `rest` (`top-loaded`, `cushion-kind`, `size.first`) is written in a thing of this kind; undefined where it cannot be. */
export function pathIn(kind: string, rest: string): Path | undefined {
  const own = keyPath(kind, rest);
  if (own) return own;
  for (const block of Object.keys(blockSpec(kind)?.blocks ?? {})) {
    if (rest === block) return { block, type: given };
    if (!rest.startsWith(`${block}-`) && !rest.startsWith(`${block}.`)) continue;
    const inner = keyPath(block, rest.slice(block.length + 1));
    if (inner) return { ...inner, block };
  }
  return undefined;
}

function keyPath(kind: string, rest: string): Path | undefined {
  const spec = keySpec(kind, rest);
  if (spec) return spec.many ? { key: rest, type: given, spec } : { key: rest, ...typeOf(spec.shape), spec };
  const dot = rest.indexOf(".");
  const whole = dot < 0 ? undefined : keySpec(kind, rest.slice(0, dot));
  if (!whole) return undefined;
  const part = rest.slice(dot + 1);
  const key = rest.slice(0, dot);
  if (whole.shape.is === "pair" && (part === "first" || part === "second"))
    return { key, part, type: { dimension: whole.shape.dimension }, spec: whole };
  const shapes = whole.shape.is === "either" ? whole.shape.shapes : [whole.shape];
  for (const s of shapes) {
    const found = s.is === "parts" ? s.parts.find((p) => p.name === part) : undefined;
    if (found) return { key, part, type: typeOf(found.shape).type, spec: whole };
  }
  return undefined;
}

/** The thing in which the path's key stands: the thing itself, or its inner block. */
export const holderOf = (thing: Thing, path: Path): Thing | undefined =>
  path.block === undefined ? thing : thing.inner[path.block]?.[0];

/** What is written there. */
export function valueAt(holder: Thing, path: Path): Value | undefined {
  const value = path.key === undefined ? undefined : holder.values[path.key];
  if (path.part === undefined || value === undefined || isQuantity(value) || isUnknown(value)) return value;
  return typeof value === "object" && !Array.isArray(value)
    ? (value as { readonly [part: string]: Value | undefined })[path.part]
    : value;
}

/** Every fact of a kind that is written as one value, for completion and nearest spellings. */
export function* pathsOf(kind: string): Iterable<string> {
  const spec = blockSpec(kind);
  if (!spec) return;
  yield* Object.keys(spec.keys);
  for (const [block, inner] of Object.entries(spec.blocks ?? {})) {
    yield block;
    for (const key of Object.keys(inner.keys)) yield `${block}-${key}`;
  }
}
