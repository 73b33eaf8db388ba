/**
 * The values of a block while it is read. A value given twice is an error, unless each carries its own day: then the two are a
 * history, the newest counts, and a jump between them is pointed out.
 */
import { showValue } from "../quantity/show.js";
import { unitOf } from "../quantity/units.js";
import { says } from "../text/messages.js";
import type { Atom, Node } from "../text/types.js";
import type { KeySpec } from "../vocabulary/types.js";
import type { Notes } from "./notes.js";
import { isQuantity, type Value } from "./types.js";
import { unknownValue } from "./value.js";

interface Given {
  readonly value: Value;
  readonly node: Node;
}

export class Keeping {
  readonly values: { [key: string]: Value | undefined } = {};
  /** Older values of a key, the newest of them first. */
  readonly before: { [key: string]: readonly Value[] } = {};
  /** The statement that counts for a key; for a statement that could not be read, that one. */
  readonly where = new Map<string, Node>();
  private readonly given = new Map<string, Given[]>();

  /** `title`: how messages call the block. */
  constructor(
    private readonly notes: Notes,
    private readonly title: string,
  ) {}

  /** Keeps what a statement says; `undefined` where it could not be read. */
  keep(key: string, spec: KeySpec, value: Value | undefined, node: Node): void {
    if (value === undefined) {
      if (!this.where.has(key)) this.where.set(key, node);
      return;
    }
    if (spec.many) this.keepAlso(key, spec, value, node);
    else {
      const all = this.given.get(key);
      if (all) all.push({ value, node });
      else this.given.set(key, [{ value, node }]);
      if (!this.where.has(key)) this.where.set(key, node);
    }
  }

  private keepAlso(key: string, spec: KeySpec, value: Value, node: Node): void {
    const before = this.values[key];
    const list = Array.isArray(before) ? (before as readonly Value[]) : [];
    const of = (v: Value): Value | undefined =>
      typeof v === "object" && !Array.isArray(v)
        ? (v as { readonly [part: string]: Value | undefined })[spec.distinct!]
        : undefined;
    const same = spec.distinct !== undefined && list.some((v) => of(v) !== undefined && of(v) === of(value));
    if (same) this.twice(key, node);
    else this.values[key] = [...list, value];
    if (!this.where.has(key)) this.where.set(key, node);
  }

  /** Settles which value of each key counts. */
  finish(): void {
    for (const [key, all] of this.given) {
      if (all.length === 1) this.values[key] = all[0]!.value;
      else if (isHistory(all)) this.history(key, all);
      else {
        // Two without days cannot both be right, so neither counts.
        this.values[key] = unknownValue;
        for (const g of all.slice(1)) this.twice(key, g.node);
      }
    }
  }

  private history(key: string, all: readonly Given[]): void {
    const newestFirst = [...all].sort((a, b) => (dayOf(a.value)! < dayOf(b.value)! ? 1 : -1));
    const [newest, ...older] = newestFirst as [Given, ...Given[]];
    this.values[key] = newest.value;
    this.where.set(key, newest.node);
    this.before[key] = older.map((g) => g.value);
    for (const [i, old] of older.entries()) this.compare(key, old, newestFirst[i]!);
  }

  private compare(key: string, old: Given, now: Given): void {
    if (!isQuantity(old.value) || !isQuantity(now.value)) return;
    const reach = readingStep(old) + readingStep(now);
    const apart = Math.max(now.value.low - old.value.high, old.value.low - now.value.high);
    if (apart <= reach * (1 + 1e-9)) return;
    const was = showValue(old.value.nominal, old.value.dimension, old.value.unit);
    const is = showValue(now.value.nominal, now.value.dimension, now.value.unit);
    this.notes.report(
      now.node,
      "form/value-jumped",
      says["form/value-jumped"]({ key, where: this.title, was, is, on: dayOf(old.value)! }),
    );
  }

  private twice(key: string, node: Node): void {
    const line = (this.where.get(key)?.line ?? 0) + 1;
    this.notes.report(node, "form/given-twice", says["form/given-twice"]({ key, where: this.title, line }));
  }
}

const dayOf = (v: Value): string | undefined =>
  typeof v === "object" && !Array.isArray(v) ? (v as { on?: string }).on : undefined;

/** Whether each value carries a day of its own. */
function isHistory(all: readonly Given[]): boolean {
  const days = all.map((g) => dayOf(g.value));
  return days.every((d) => d !== undefined) && new Set(days).size === days.length;
}

/**
 * Half of the finest step in which a value was written, where no tolerance says better: `22 3/4 in` was read to a quarter of an
 * inch, `49.5 cm` to a millimetre. In SI.
 */
function readingStep({ value, node }: Given): number {
  if (!isQuantity(value) || value.toleranceGiven) return 0;
  const written = node.statement.atoms.find((a) => a.type === "measure");
  if (!written) return 0;
  return finestStep(written) / 2;
}

function finestStep(a: Extract<Atom, { type: "measure" }>): number {
  const [, decimals, over, symbol] = /(?:\.(\d+)|\/(\d+))? (\S+)$/.exec(a.spelling) ?? [];
  if (symbol === undefined) return 0;
  const u = unitOf(symbol);
  const one = u.times ?? u.factor.valueOf();
  return over !== undefined ? one / Number(over) : one / 10 ** (decimals?.length ?? 0);
}
