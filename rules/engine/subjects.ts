/** What the rules of a set look at in a household: its transfers, their steps and ends, its things, and the setup itself. */
import type { Household } from "../../language/model/household.js";
import type { StepLine, Thing } from "../../language/model/types.js";
import { placeOfNode } from "../../language/text/tree.js";
import type { Place } from "../../language/text/types.js";
import type { Scene } from "../scene.js";
import { start } from "../steps/state.js";
import type { FactReader, Facts } from "./facts.js";
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
  /** While these are the same objects, names and places are the same. */
  readonly ident: readonly unknown[];
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
  readonly transfers: readonly OfTransfer[];
  readonly setup: Subject;
  things(kind: string): readonly Subject[];
}

/** While the facts of a transfer are the same object, so are its subjects. */
const kept = new WeakMap<Facts, OfTransfer>();

export function subjectsOf(
  household: Household,
  scenes: readonly Scene[],
  reader: FactReader,
  today: string,
): Subjects {
  const transfers = scenes.map((scene) => {
    const facts = reader.ofScene({ household, today, scene });
    let found = kept.get(facts);
    if (!found) kept.set(facts, (found = ofTransfer(scene, facts, reader)));
    return found;
  });
  const byKind = new Map<string, readonly Subject[]>();
  return {
    transfers,
    setup: setupSubject(household, reader, today),
    things(kind) {
      let found = byKind.get(kind);
      if (!found) {
        const scope: Scope = { is: "thing", kind };
        found = household.all
          .filter((t) => t.kind === kind)
          .map((thing) => ({
            is: "thing",
            name: thing.name,
            key: `${kind} ${thing.name}`,
            facts: reader.ofThing({ household, today }, scope, thing),
            thing,
            ident: [thing, household.client],
            place: () => thing.placeOf(),
          }));
        byKind.set(kind, found);
      }
      return found;
    },
  };
}

function ofTransfer(scene: Scene, facts: Facts, reader: FactReader): OfTransfer {
  const ident = [
    scene.transfer,
    scene.base,
    scene.from,
    scene.to,
    scene.board,
    scene.belt,
    scene.client,
    scene.room,
    scene.helpers,
    scene.side,
  ];
  const common = { scene, thing: scene.transfer, ident };
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
      return {
        ...common,
        is: "step",
        name,
        key: name,
        facts: reader.ofStep(facts, state, scene.setup, line.step),
        step: { line, phrase: spell(line.step) },
        stamp: run,
        place: () => placeOfNode(entry, line.node),
      };
    });
    const last = lines[lines.length - 1];
    const end: Subject = {
      ...common,
      is: "end",
      name: scene.name,
      key: `${scene.name} end`,
      facts: reader.ofStep(facts, run.end, scene.setup),
      ...(last && { step: { line: last, phrase: spell(last.step) } }),
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

function setupSubject(household: Household, reader: FactReader, today: string): Subject {
  const first = household.tree.entries[0];
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
  return {
    is: "setup",
    name: "setup",
    key: "setup",
    facts: reader.ofThing({ household, today }, { is: "setup" }),
    ident: [first?.entry, household.client, household.review],
    place: () => (first ? placeOfNode(first.entry, first.entry.node) : nowhere),
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
