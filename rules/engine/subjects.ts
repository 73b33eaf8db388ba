/** What the rules of a set look at in a household: its transfers, their steps and ends, its things, and the setup itself. */
import type { Household } from "../../language/model/household.js";
import type { StepLine, Thing } from "../../language/model/types.js";
import { placeOfNode } from "../../language/text/tree.js";
import type { Place } from "../../language/text/types.js";
import type { Scene } from "../scene.js";
import { start } from "../steps/state.js";
import { sameScene, type FactReader } from "./facts.js";
import type { Facts } from "./slots.js";
import { spell } from "../../language/vocabulary/verbs.js";
import type { RuleSet, Scope } from "./types.js";

export interface Subject {
  readonly is: Scope["is"];
  /** `into-bed`, `into-bed step 7`, `bed`, `setup`. */
  readonly name: string;
  /** Tells apart what may have the same name: a transfer and its end. */
  readonly key: string;
  readonly facts: Facts;
  readonly scene?: Scene;
  readonly thing?: Thing;
  readonly step?: { readonly line: StepLine; readonly phrase: string };
  /** While this is the same object, every fact `step.*` is the same. */
  readonly stamp?: object;
  /** Where a finding stands if its rule says nothing else. */
  place(): Place;
}

/** A transfer with its steps in order and its end. */
export interface OfTransfer {
  readonly transfer: Subject;
  readonly steps: readonly Subject[];
  readonly end?: Subject;
}

export interface Subjects {
  /** The first transfer of the household's own file: what was taken from another file is spoken of there. */
  readonly user: Thing | undefined;
  readonly transfers: readonly OfTransfer[];
  readonly setup: Subject;
  things(kind: string): readonly Subject[];
}

/**
 * Makes subjects, and gives the same ones again while what they stand for consists of the same objects: whoever keeps something
 * by a subject may keep it while the subject's facts do not change.
 */
export class SubjectMaker {
  private transfers = new Map<Facts, { readonly scene: Scene; readonly made: OfTransfer }>();
  private things = new Map<Facts, { readonly depends: readonly unknown[]; readonly made: Subject }>();

  constructor(private readonly reader: FactReader) {}

  of(household: Household, scenes: readonly Scene[], today: string): Subjects {
    const [transfersBefore, thingsBefore] = [this.transfers, this.things];
    this.transfers = new Map();
    this.things = new Map();
    const transfers = scenes.map((scene) => {
      const facts = this.reader.ofScene({ household, today, scene });
      const before = transfersBefore.get(facts);
      const kept =
        before && sameScene(before.scene, scene)
          ? before
          : { scene, made: ofTransfer(scene, facts, this.reader) };
      this.transfers.set(facts, kept);
      return kept.made;
    });
    const keep = (facts: Facts, depends: readonly unknown[], make: () => Subject): Subject => {
      const before = thingsBefore.get(facts);
      const same =
        before?.depends.length === depends.length && before.depends.every((d, i) => d === depends[i]);
      const kept = same ? before : { depends, made: make() };
      this.things.set(facts, kept);
      return kept.made;
    };
    const user = userOf(household);
    const byKind = new Map<string, readonly Subject[]>();
    const ofKind = (kind: string): readonly Subject[] => {
      const scope: Scope = { is: "thing", kind };
      const names = new Map<string, number>();
      return household.all
        .filter((t) => t.kind === kind)
        .map((thing) => {
          // Several trials of one transfer have its name.
          const nth = (names.get(thing.name) ?? 0) + 1;
          names.set(thing.name, nth);
          const key = `${kind} ${thing.name}${nth > 1 ? ` ${nth}` : ""}`;
          const facts = this.reader.ofThing({ household, today }, scope, key, thing);
          return keep(facts, [thing, household.client, user], () => ({
            is: "thing",
            name: thing.name,
            key,
            facts,
            thing,
            place: () => thing.placeOf(),
          }));
        });
    };
    return {
      user,
      transfers,
      setup: this.setup(household, today, keep, user),
      things(kind) {
        let found = byKind.get(kind);
        if (!found) byKind.set(kind, (found = ofKind(kind)));
        return found;
      },
    };
  }

  private setup(
    household: Household,
    today: string,
    keep: (facts: Facts, depends: readonly unknown[], make: () => Subject) => Subject,
    user: Thing | undefined,
  ): Subject {
    const first = household.tree.entries[0];
    const facts = this.reader.ofThing({ household, today }, { is: "setup" }, "setup");
    const depends = [first?.entry, household.client, household.review, user];
    return keep(facts, depends, () => ({
      is: "setup",
      name: "setup",
      key: "setup",
      facts,
      place: () => (first ? placeOfNode(first.entry, first.entry.node) : nowhere),
    }));
  }
}

const userOf = (household: Household): Thing | undefined =>
  household.all.find(
    (t) =>
      (t.kind === "transfer" || t.kind === "way-back") && household.locate(t.entry)?.path === household.path,
  );

const nowhere: Place = {
  entry: {
    node: { statement: { type: "statement", atoms: [], opens: false, start: 0, end: 0 }, line: 0 },
    lines: [],
    problems: [],
  },
  line: 0,
  start: 0,
  end: 0,
};

function ofTransfer(scene: Scene, facts: Facts, reader: FactReader): OfTransfer {
  const common = { scene, thing: scene.transfer };
  const transfer: Subject = {
    ...common,
    is: "transfer",
    name: scene.name,
    key: scene.name,
    facts,
    place: () => scene.transfer.placeOf(),
  };
  const { steps: lines, run } = scene;
  if (!lines || !run) return { transfer, steps: [] };
  const entry = scene.transfer.entry;
  // Made when first asked for: trying other values for a transfer asks for its own verdict only, many times.
  let made: { readonly steps: readonly Subject[]; readonly end: Subject } | undefined;
  const parts = () => (made ??= stepsOf());
  const stepsOf = () => {
    const steps = lines.map((line, i): Subject => {
      const name = `${scene.name} step ${i + 1}`;
      const state = run.before[i] ?? start(scene.setup);
      const phrase = spell(line.step);
      return {
        ...common,
        is: "step",
        name,
        key: name,
        facts: reader.ofStep(facts, state, scene.setup, line.step),
        step: { line, phrase },
        stamp: run,
        place: () => placeOfNode(entry, line.node),
      };
    });
    const last = lines[lines.length - 1];
    const phrase = last && spell(last.step);
    const end: Subject = {
      ...common,
      is: "end",
      name: scene.name,
      key: `${scene.name} end`,
      facts: reader.ofStep(facts, run.end, scene.setup),
      ...(last && phrase !== undefined && { step: { line: last, phrase } }),
      stamp: run,
      place: () => (last ? placeOfNode(entry, last.node) : scene.transfer.placeOf("steps")),
    };
    return { steps, end };
  };
  return {
    transfer,
    get steps() {
      return parts().steps;
    },
    get end() {
      return parts().end;
    },
  };
}

/** Rules by what they look at, so that a step meets only the rules on its verb. */
export interface RulesByScope {
  readonly transfer: RuleSet["rules"];
  readonly setup: RuleSet["rules"];
  readonly end: RuleSet["rules"];
  readonly things: ReadonlyMap<string, RuleSet["rules"]>;
  steps(phrase: string): RuleSet["rules"];
}

export function rulesByScope(set: RuleSet): RulesByScope {
  const of = (is: Scope["is"]): RuleSet["rules"] => set.rules.filter((r) => r.scope.is === is);
  const things = new Map<string, RuleSet["rules"][number][]>();
  for (const r of set.rules)
    if (r.scope.is === "thing") things.set(r.scope.kind, [...(things.get(r.scope.kind) ?? []), r]);
  const steps = of("step");
  const byPhrase = new Map<string, RuleSet["rules"]>();
  return {
    transfer: of("transfer"),
    setup: of("setup"),
    end: of("end"),
    things,
    steps(phrase) {
      let found = byPhrase.get(phrase);
      if (!found) {
        found = steps.filter(
          (r) =>
            r.scope.is === "step" &&
            (r.scope.phrases.length === 0 ||
              r.scope.phrases.some((p) => phrase === p || phrase.startsWith(`${p} `))),
        );
        byPhrase.set(phrase, found);
      }
      return found;
    },
  };
}
