/** "What if it were written otherwise": a household with one value replaced, and how a rule judges it. */
import { isQuantity, type Thing, type Value } from "../../language/model/types.js";
import type { Household } from "../../language/model/household.js";
import type { Quantity } from "../../language/quantity/types.js";
import type { Defaults } from "../scene.js";
import { Scenes } from "../scenes.js";
import type { FactTable } from "./fact-table.js";
import { valueAt, type Path } from "./fact-paths.js";
import { FactReader } from "./facts.js";
import { judge, type Judgement } from "./judge.js";
import { SubjectMaker, type Subject } from "./subjects.js";
import type { Rule, RuleSet } from "./types.js";

/** The key that says the same height with somebody sitting there; it moves along when the height is set otherwise. */
export const loadedWith: { readonly [key: string]: string } = {
  top: "top-loaded",
  "seat-height": "seat-loaded",
};

/** `thing` with some of its values replaced; everything else, places included, is the thing's own. */
export function withValues(thing: Thing, values: { readonly [key: string]: Value | undefined }): Thing {
  return Object.create(thing, {
    values: { value: { ...thing.values, ...values }, enumerable: true },
  }) as Thing;
}

/** `owner` with one of its inner blocks replaced. */
export function withBlock(owner: Thing, old: Thing, made: Thing): Thing {
  const inner = { ...owner.inner, [old.kind]: owner.inner[old.kind]?.map((t) => (t === old ? made : t)) };
  return Object.create(owner, { inner: { value: inner, enumerable: true } }) as Thing;
}

export function withThing(household: Household, old: Thing, made: Thing): Household {
  const swap = (t: Thing): Thing => (t === old ? made : t);
  return {
    ...household,
    all: household.all.map(swap),
    things: new Map([...household.things].map(([n, t]) => [n, swap(t)])),
    ...(household.client && { client: swap(household.client) }),
  };
}

/** The quantity moved to another nominal value, with the doubt that it had. */
export function movedTo(q: Quantity, nominal: number): Quantity {
  const by = nominal - q.nominal;
  return { ...q, low: q.low + by, nominal, high: q.high + by };
}

/** The new values of a thing whose `path` is set to `nominal`. */
export function valuesSet(
  thing: Thing,
  path: Path & { readonly key: string },
  written: Quantity,
  nominal: number,
): { readonly [key: string]: Value | undefined } {
  const now = valueAt(thing, path);
  const value = movedTo(written, nominal);
  const whole =
    path.part === undefined || isQuantity(thing.values[path.key]) || !isQuantity(now)
      ? value
      : { ...(thing.values[path.key] as object), [path.part]: value };
  const other = loadedWith[path.key];
  const beside = other === undefined ? undefined : thing.values[other];
  return {
    [path.key]: whole,
    ...(other !== undefined &&
      isQuantity(beside) &&
      isQuantity(now) && { [other]: movedTo(beside, beside.nominal + nominal - now.nominal) }),
  };
}

/** For a verdict on one transfer no other one is worked out, but for the one that it turns round. */
function onlyWith(household: Household, { is, scene }: Subject): Household {
  if (!scene || (is !== "transfer" && is !== "step" && is !== "end")) return household;
  const wanted = new Set([scene.name, scene.base?.name]);
  const other = (t: Thing): boolean =>
    (t.kind === "transfer" || t.kind === "way-back") && !wanted.has(t.name);
  return { ...household, all: household.all.filter((t) => !other(t)) };
}

export class Variants {
  private readonly scenes = new Scenes();
  private readonly reader: FactReader;
  private readonly subjects: SubjectMaker;

  constructor(
    private readonly set: RuleSet,
    table: FactTable,
    defaults: Defaults,
  ) {
    this.reader = new FactReader(table, defaults, true);
    this.subjects = new SubjectMaker(this.reader);
  }

  /** How `rule` judges the same subject in another household; undefined where the subject is not there. */
  judge(rule: Rule, subject: Subject, household: Household): Judgement | undefined {
    // What is slow is not tried for many values.
    this.reader.begin(true);
    const { today } = subject.facts.sight;
    const ofScene = subject.is === "transfer" || subject.is === "step" || subject.is === "end";
    // Other transfers are made, for the one that is turned round may say what is found, but nothing is worked out of them.
    const scenes = ofScene
      ? this.scenes.of(onlyWith(household, subject)).filter((s) => s.name === subject.scene?.name)
      : [];
    const subjects = this.subjects.of(household, scenes, today);
    const among =
      subject.is === "thing"
        ? subjects.things(subject.thing!.kind)
        : subject.is === "setup"
          ? [subjects.setup]
          : subject.is === "transfer"
            ? subjects.transfers.map((t) => t.transfer)
            : subjects.transfers.flatMap((t) => [...t.steps, ...(t.end ? [t.end] : [])]);
    const same = among.find((s) => s.key === subject.key);
    return same && judge(rule, { fact: (n) => same.facts.read(n), limit: (n) => this.set.limits.get(n) });
  }
}
