/** Which facts a rule may read, by name: the type of each, and what it is. Made once for a list of quantities. */
import { endKinds, keySpec, setupVocabulary, surfaceKinds } from "../../language/vocabulary/index.js";
import { stepPhrases } from "../../language/vocabulary/step-phrases.js";
import type { QuantityRule } from "../quantity.js";
import { stepFacts } from "../steps/facts.js";
import type { FactType } from "./dimensions.js";
import { pathIn, pathsOf, type Path } from "./fact-paths.js";
import { specialFacts } from "./facts-special.js";
import type { SpecialFact } from "./special-fact.js";
import type { Scope } from "./types.js";
import type { Surroundings } from "./verify.js";

export type FactSpec =
  | {
      readonly is: "quantity";
      readonly quantity: QuantityRule;
      readonly type: FactType;
      readonly says: string;
    }
  | { readonly is: "special"; readonly special: SpecialFact; readonly type: FactType; readonly says: string }
  | {
      readonly is: "written";
      readonly role: string;
      readonly paths: ReadonlyMap<string, Path>;
      readonly type: FactType;
      readonly says: string;
    }
  | { readonly is: "step"; readonly type: FactType; readonly says: string };

/** What plays a part in a transfer, and which kinds of things can. */
export const roles: ReadonlyMap<string, readonly string[]> = new Map<string, readonly string[]>([
  ["client", ["client"]],
  ["chair", ["wheelchair"]],
  ["surface", surfaceKinds],
  ["from", endKinds],
  ["to", endKinds],
  ["board", ["board"]],
  ["belt", ["belt"]],
  ["lift", ["lift"]],
  ["helper", ["helper"]],
  ["room", ["room"]],
  ["transfer", ["transfer", "way-back"]],
]);

/** Quantities that also name a thing, and what they can name. */
const namingQuantities: ReadonlyMap<string, readonly string[]> = new Map([
  ["park.contact", ["legrest", "hanger", "footplate", "armrest", "wheel", "castor", "seat", "other"]],
]);

const onTransfer = (scope: Scope): boolean =>
  scope.is === "transfer" || scope.is === "step" || scope.is === "end";
const scopeKey = (scope: Scope): string =>
  scope.is === "thing" ? scope.kind : scope.is === "end" ? "step" : scope.is;

/** Roles of a scope with their kinds: those of a transfer; for a rule on things, the thing under its kind and usual role. */
export function rolesOf(scope: Scope): ReadonlyMap<string, readonly string[]> {
  if (onTransfer(scope)) return roles;
  const found = new Map<string, readonly string[]>([
    ["client", ["client"]],
    ["review", ["review"]],
  ]);
  if (scope.is === "thing") {
    found.set(scope.kind, [scope.kind]);
    for (const [role, kinds] of roles)
      if (role !== "from" && role !== "to" && kinds.includes(scope.kind)) found.set(role, [scope.kind]);
    found.set("thing", [scope.kind]);
  }
  return found;
}

/** What was found for a name in a scope, which is always the same. */
class ByScope<T> {
  private readonly scopes = new Map<string, Map<string, T>>();

  of(scope: Scope, name: string, find: () => T): T {
    const key = scopeKey(scope);
    let names = this.scopes.get(key);
    if (!names) this.scopes.set(key, (names = new Map<string, T>()));
    let found = names.get(name);
    if (found === undefined && !names.has(name)) names.set(name, (found = find()));
    return found as T;
  }
}

export class FactTable implements Surroundings {
  readonly kinds: readonly string[] = Object.keys(setupVocabulary.blocks);
  private readonly quantities: ReadonlyMap<string, QuantityRule>;
  private readonly specials: ReadonlyMap<string, SpecialFact> = new Map(specialFacts.map((f) => [f.name, f]));
  /** By scope, then by name. */
  private readonly kept = new ByScope<FactSpec | undefined>();
  private readonly keptSettable = new ByScope<"quantity" | "other" | undefined>();

  /** `used`: names of defaults and limits that quantities read; undefined: whether they are all there is not checked. */
  constructor(
    quantities: readonly QuantityRule[],
    readonly used?: readonly string[],
  ) {
    this.quantities = new Map(quantities.map((q) => [q.name, q]));
  }

  spec(name: string, scope: Scope): FactSpec | undefined {
    return this.kept.of(scope, name, () => this.find(name, scope));
  }

  private find(name: string, scope: Scope): FactSpec | undefined {
    if (scope.is === "step" || scope.is === "end") {
      const step = stepFacts.get(name);
      if (step)
        return {
          is: "step",
          type: step.choices ? { choices: step.choices } : { open: true },
          says: step.says,
        };
    }
    const quantity = onTransfer(scope) ? this.quantities.get(name) : undefined;
    if (quantity) {
      const choices = namingQuantities.get(name);
      return {
        is: "quantity",
        quantity,
        type: { dimension: quantity.dimension, ...(choices && { choices }) },
        says: quantity.says,
      };
    }
    const special = this.specials.get(name);
    if (special && (special.on === "both" || (special.on === "transfer") === onTransfer(scope)))
      return { is: "special", special, type: special.type, says: special.says };
    return this.written(name, scope);
  }

  private written(name: string, scope: Scope): FactSpec | undefined {
    const dot = name.indexOf(".");
    const role = name.slice(0, Math.max(0, dot));
    const kinds = rolesOf(scope).get(role);
    if (!kinds) return undefined;
    const paths = new Map<string, Path>();
    for (const kind of kinds) {
      const path = pathIn(kind, name.slice(dot + 1));
      if (path) paths.set(kind, path);
    }
    const first = [...paths.values()][0];
    if (!first) return undefined;
    return {
      is: "written",
      role,
      paths,
      type: first.type,
      says: saysOf(paths),
    };
  }

  /** Whether a fact looks beyond the things of its transfer. */
  isWide(name: string, scope: Scope): boolean {
    const spec = this.spec(name, scope);
    // What is slow may have been left out by the check before.
    if (spec?.is === "quantity") return spec.quantity.slow === true;
    return spec?.is === "special" ? spec.special.wide : spec?.is === "written" && spec.role === "lift";
  }

  fact(name: string, scope: Scope): FactType | undefined {
    return this.spec(name, scope)?.type;
  }

  *factNames(scope: Scope): Iterable<string> {
    if (scope.is === "step" || scope.is === "end") yield* stepFacts.keys();
    if (onTransfer(scope)) yield* this.quantities.keys();
    for (const f of this.specials.values())
      if (f.on === "both" || (f.on === "transfer") === onTransfer(scope)) yield f.name;
    for (const [role, kinds] of rolesOf(scope))
      for (const kind of kinds) for (const path of pathsOf(kind)) yield `${role}.${path}`;
  }

  settable(role: string, key: string, scope: Scope): "quantity" | "other" | undefined {
    const name = `${role}.${key}`;
    return this.keptSettable.of(scope, name, () => {
      const spec = this.written(name, scope);
      if (spec?.is !== "written") return keySpecOf(role, key, scope) ? "other" : undefined;
      return spec.type.dimension ? "quantity" : "other";
    });
  }

  stepPhrase(phrase: string): boolean {
    return stepPhrases.some((p) => `${p.verb} `.startsWith(`${phrase} `));
  }
}

/** What a key means; where several kinds of things have it and mean different things, each in turn. */
function saysOf(paths: ReadonlyMap<string, Path>): string {
  const kinds = new Map<string, string[]>();
  for (const [kind, { spec, block }] of paths) {
    const help = spec?.help ?? `whether the block ${block ?? ""} is written`;
    kinds.set(help, [...(kinds.get(help) ?? []), kind.replaceAll("-", " ")]);
  }
  const [only] = kinds.size === 1 ? kinds.keys() : [];
  return only ?? [...kinds].map(([help, of]) => `${of.join(", ")}: ${help}`).join("; ");
}

/** Keys that may stand several times are places, though they are no facts. */
function keySpecOf(role: string, key: string, scope: Scope): boolean {
  return (rolesOf(scope).get(role) ?? []).some((kind) => keySpec(kind, key) !== undefined);
}
