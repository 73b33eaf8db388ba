/**
 * Writes a correct order of steps for given equipment: the shortest one in which every step can be done and is allowed.
 *
 * Breadth first over states, each step costing one, so the first order found is a shortest one. Where several are equally
 * short, the one that takes the earlier row of the vocabulary at the first difference wins: results repeat, and read in the
 * usual order of work. What is allowed comes from the rules alone; nothing here knows them.
 */
import { stepPhrases, type Step, type Verb } from "../../language/vocabulary/verbs.js";
import { leanOf } from "./facts.js";
import { apply, judge } from "./machine.js";
import { canLie, otherSide, type StepSetup } from "./setup.js";
import { inChair, keyOf, start, type State } from "./state.js";

/**
 * Whether the rules let a step be taken; a text says which rule refuses. `isEnd`: the plan would end after this step, so
 * what must not be left open at the end is judged too.
 */
export type Allowed = (before: State, step: Step, after: State, isEnd: boolean) => boolean | string;

export interface PlanOptions {
  /** Names of the facts that the rules ask. Steps that only serve facts nobody asks for are left out of the search. */
  readonly reads?: ReadonlySet<string>;
  /** How many states may be looked at before giving up. */
  readonly limit?: number;
}

export type Plan =
  | { readonly steps: readonly Step[]; readonly reason?: undefined; readonly states: number }
  | { readonly steps?: undefined; readonly reason: string; readonly states: number };

/** What every order must reach, before any rule is asked: settled on the other surface, nothing still under or around the client. */
export const arrived = (s: State, setup: StepSetup): boolean =>
  s.client === "on-to" &&
  (s.positioned === "yes" || !(inChair(s, setup) || canLie(setup))) &&
  s.board === "stowed" &&
  s.belt === "off" &&
  s.lean === "upright" &&
  s.feet !== "hanging" &&
  s.brakes === "locked";

/** Steps that a usual order does without. */
const seldom: readonly Verb[] = [
  "feet supported",
  "helper behind",
  "helper at-side",
  "swing-away legrest",
  "slide part-way",
  "back-away",
  "scoot back",
  "unlock castors",
];

/**
 * The searches, each tried only where those before found no order: the usual steps; with the leg rest of the far side; with
 * one seldom step; with everything the vocabulary has.
 */
type Stage = "usual" | "far leg rest" | Verb | "all";
const stages: readonly Stage[] = ["usual", "far leg rest", ...seldom, "all"];

/** Steps whose only use is a fact that a rule may ask. */
const servesOnly: Partial<Record<Verb, string>> = {
  "move lines": "step.lines",
  "lock castors": "step.castors",
  "set-height": "step.height",
  "helper in-front": "step.helper",
  "helper behind": "step.helper",
  "helper at-side": "step.helper",
  "belt on": "step.belt",
  "scoot forward": "step.scooted",
  "check bearing": "step.bearing-checked",
  "check brakes": "step.brakes-checked",
  lean: "step.lean",
};

/**
 * Steps that prepare the place, which no later step undoes. They are taken first if they are allowed then, and dropped again
 * if the order found holds without them: each of them would else double the states to look at.
 */
const preparing: readonly Verb[] = ["move lines", "lock castors", "set-height"];

interface Reached {
  readonly state: State;
  readonly from: Reached | undefined;
  readonly step: Step | undefined;
}

/** The shortest allowed order, or why there is none, in words. */
export function plan(setup: StepSetup, allowed: Allowed, options: PlanOptions = {}): Plan {
  const missing = unsaid(setup);
  if (missing) return { reason: missing, states: 0 };
  const limit = options.limit ?? 15_000;
  let states = 0;
  let reason = "";
  for (const stage of stages) {
    const found = search(setup, candidates(setup, options, stage), allowed, limit - states, stage);
    states += found.states;
    if (found.steps) return { ...found, states };
    // Why the usual order breaks off says most; the wider searches only confirm it.
    reason ||= found.reason;
    if (states >= limit) break;
  }
  return { reason, states };
}

/** What has to be said before an order can be written; a guess here would put a step on the wrong side. */
function unsaid(setup: StepSetup): string | undefined {
  if (!setup.side)
    return "on which side of the chair the surface lies is not known: write `facing` and `bed-side`";
  const parts: string[] = [];
  if (setup.legrests?.[setup.side] === undefined) parts.push(`the kind of the ${setup.side} leg rest`);
  if (setup.armrests?.[setup.side] === undefined) parts.push(`the kind of the ${setup.side} armrest`);
  return parts.length > 0
    ? `${parts.join(" and ")} must be known first: it decides how it is cleared`
    : undefined;
}

function candidates(setup: StepSetup, options: PlanOptions, stage: Stage): Step[] {
  const near = setup.side!;
  const all = stage === "all";
  return (
    stepPhrases
      .filter((p) => all || p.verb === stage || !seldom.includes(p.verb))
      // Nobody wrote that the height can be set: an order must not count on it.
      .filter((p) => p.verb !== "set-height" || setup.adjusts === true)
      .filter((p) => !options.reads || !servesOnly[p.verb] || options.reads.has(servesOnly[p.verb]!))
      .flatMap((p): Step[] => {
        if (p.object) return [{ verb: p.verb, object: setup.surface.name }];
        if (!p.side) return [{ verb: p.verb }];
        const bothSides =
          all || p.verb === "lean" || (stage === "far leg rest" && p.verb.endsWith("legrest"));
        return (bothSides ? [near, otherSide(near)] : [near]).map((side) => ({ verb: p.verb, side }));
      })
  );
}

/** Whether every step of an order can be done and is allowed, and the order ends where it should. */
export function holds(order: readonly Step[], setup: StepSetup, allowed: Allowed): boolean {
  let state = start(setup);
  return order.every((step, i) => {
    if (!judge(state, step, setup).ok) return false;
    const before = state;
    state = apply(state, step, setup);
    const isEnd = i === order.length - 1;
    return (!isEnd || arrived(state, setup)) && allowed(before, step, state, isEnd) === true;
  });
}

/** The order without those of its preparing steps that it can do without. */
function trimmed(order: readonly Step[], setup: StepSetup, allowed: Allowed): readonly Step[] {
  return preparing.reduce((kept, verb) => {
    const without = kept.filter((s) => s.verb !== verb);
    return without.length < kept.length && holds(without, setup, allowed) ? without : kept;
  }, order);
}

function prepared(setup: StepSetup, steps: readonly Step[], allowed: Allowed): Reached {
  let here: Reached = { state: start(setup), from: undefined, step: undefined };
  for (const step of steps) {
    if (!preparing.includes(step.verb) || !judge(here.state, step, setup).ok) continue;
    const state = apply(here.state, step, setup);
    if (state !== here.state && allowed(here.state, step, state, false) === true)
      here = { state, from: here, step };
  }
  return here;
}

function search(
  setup: StepSetup,
  steps: readonly Step[],
  allowed: Allowed,
  limit: number,
  stage: Stage,
): Plan {
  // Everything the vocabulary has is tried in every order, the preparing steps too.
  const first = prepared(setup, stage === "all" ? [] : steps, allowed);
  const seen = new Set<number>([keyOf(first.state)]);
  const queue: Reached[] = [first];
  const refusals = new Refusals();
  for (let i = 0; i < queue.length && queue.length < limit; i++) {
    const here = queue[i]!;
    const { state } = here;
    for (const step of steps) {
      // Short of everything, a lean is only there to free the hip under which the board goes.
      if (stage !== "all" && step.verb === "lean" && leanOf(state, setup, step.side) !== "away") continue;
      const possible = judge(state, step, setup);
      if (!possible.ok) {
        refusals.note(step, possible.because!, false);
        continue;
      }
      const after = apply(state, step, setup);
      if (after === state) continue;
      const key = keyOf(after);
      if (seen.has(key)) continue;
      const isEnd = arrived(after, setup);
      if (isEnd && allowed(state, step, after, true) === true) {
        const order = wayTo({ state: after, from: here, step });
        return { steps: trimmed(order, setup, allowed), states: queue.length };
      }
      const verdict = allowed(state, step, after, false);
      if (verdict !== true) {
        refusals.note(step, typeof verdict === "string" ? verdict : "a rule refuses it", true);
        continue;
      }
      refusals.taken(step);
      seen.add(key);
      queue.push({ state: after, from: here, step });
    }
  }
  if (queue.length >= limit) {
    return { reason: `no order was found within ${limit} states of the search`, states: queue.length };
  }
  return { reason: refusals.reason(setup), states: queue.length };
}

function wayTo(last: Reached): Step[] {
  const steps: Step[] = [];
  for (let at: Reached | undefined = last; at?.step; at = at.from) steps.push(at.step);
  return steps.reverse();
}

/** Remembers what stopped each step, to say at the end where every order broke off. */
class Refusals {
  private readonly why = new Map<Verb, { impossible?: string; rules: Set<string> }>();
  private readonly done = new Set<Verb>();

  note(step: Step, text: string, byRule: boolean): void {
    let why = this.why.get(step.verb);
    if (!why) this.why.set(step.verb, (why = { rules: new Set() }));
    if (byRule) why.rules.add(text);
    else why.impossible ??= text;
  }
  taken(step: Step): void {
    this.done.add(step.verb);
  }
  reason(setup: StepSetup): string {
    const milestones: Verb[] = [];
    const toChair = setup.direction === "to-chair";
    if (toChair && canLie(setup)) milestones.push("sit on-edge");
    if (start(setup).chair === "away") milestones.push("approach");
    if (setup.board) milestones.push("place board");
    milestones.push("slide");
    if (setup.board) milestones.push("withdraw board");
    if (toChair || canLie(setup)) milestones.push(toChair ? "position in-chair" : "position in-bed");
    for (const verb of milestones) {
      if (this.done.has(verb)) continue;
      // The search first meets what is easily put right; what it met last is what no order gets past.
      const why = [...(this.why.get(verb)?.rules ?? [])].at(-1) ?? this.why.get(verb)?.impossible;
      if (why !== undefined) return `no order gets as far as \`${verb}\`: ${why}`;
    }
    return "every step can be taken, but no order leaves everything as it must be at the end";
  }
}
