/**
 * Writes a correct order of steps for given equipment: the shortest one in which every step can be done and is allowed.
 *
 * Breadth first over states, each step costing one, so the first order found is a shortest one. Where several are equally
 * short, the one that takes the earlier row of the vocabulary at the first difference wins: results repeat, and read in the
 * usual order of work. What is allowed comes from the rules alone; nothing here knows them.
 */
import { spell, type Step, type Verb } from "../../language/vocabulary/verbs.js";
import { candidates, closing, preparing, stages, timely, type Stage } from "./candidates.js";
import { apply, effectOf, judge } from "./machine.js";
import { missingOutright, Refusals } from "./refusals.js";
import {
  hasRim,
  isBed,
  isBench,
  isToilet,
  isUndressedOn,
  kindsOf,
  mayHaveArms,
  surfaceSideOf,
  type StepSetup,
} from "./setup.js";
import { change, keyAfter, keyOf, onSurface, start, type State } from "./state.js";

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

/** What every way across must reach, before any rule is asked: settled on the other surface, nothing still under or around the client. */
const across = (s: State, setup: StepSetup): boolean =>
  s.client === "on-to" &&
  s.positioned === "yes" &&
  s.board === "stowed" &&
  s.belt === "off" &&
  s.sling === "none" &&
  s.lift === "away" &&
  s.sheet === "out" &&
  s.lean === "upright" &&
  s.feet !== "hanging" &&
  s.brakes === "locked" &&
  inside(s, setup);
/** In a tub or a car with both legs, and on the bench inside its rim. */
const inside = (s: State, setup: StepSetup): boolean =>
  !onSurface(s, setup) ||
  ((!hasRim(setup) || (s.legLeft === "in" && s.legRight === "in")) &&
    (!isBench(setup) || s.along === "inside"));

/** The same, and dressed for what the client came for: undressed where one washes or sits to relieve oneself, dressed when back from there. */
export const arrived = (s: State, setup: StepSetup): boolean => {
  if (!across(s, setup)) return false;
  const { from, to } = kindsOf(setup);
  if (isUndressedOn(to)) return s.clothing === "down";
  return !isToilet(from) || s.clothing === "up";
};

interface Reached {
  readonly state: State;
  readonly from: Reached | undefined;
  readonly step: Step | undefined;
}

/** The shortest allowed order, or why there is none, in words. */
export function plan(setup: StepSetup, allowed: Allowed, options: PlanOptions = {}): Plan {
  const missing = unsaid(setup) ?? missingOutright(setup);
  if (missing) return { reason: missing, states: 0 };
  const limit = options.limit ?? 15_000;
  let states = 0;
  let reason = "";
  let before = "";
  for (const stage of stages) {
    const steps = candidates(setup, options.reads, stage);
    // A stage that adds nothing for this equipment has been searched already.
    const same = steps.map(spell).join();
    if (stage !== "all" && stage !== "any time" && same === before) continue;
    before = before || same;
    const found = search(setup, steps, allowed, limit - states, stage);
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
  // In a sling nothing is cleared.
  if (setup.lift) return undefined;
  if (!setup.side)
    return `on which side of the chair the surface lies is not known: write \`facing\` and ${isBed(setup) ? "`bed-side`" : "`side`"}`;
  const parts: string[] = [];
  if (setup.legrests?.[setup.side] === undefined) parts.push(`the kind of the ${setup.side} leg rest`);
  if (setup.armrests?.[setup.side] === undefined) parts.push(`the kind of the ${setup.side} armrest`);
  const beside = surfaceSideOf(setup)!;
  if (mayHaveArms(setup) && setup.surfaceArms?.[beside] === undefined)
    parts.push(`whether ${setup.surface.name} has an arm on its ${beside}, and of which kind,`);
  return parts.length > 0
    ? `${parts.join(" and ")} must be known first: it decides how it is cleared`
    : undefined;
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

/** The order without those of its preparing and closing steps that it can do without. */
function trimmed(order: readonly Step[], setup: StepSetup, allowed: Allowed): readonly Step[] {
  return [...preparing, ...closing].reduce(
    (kept, verb) =>
      kept
        .filter((s) => s.verb === verb)
        .reduce((left, step) => {
          const without = left.filter((s) => s !== step);
          return holds(without, setup, allowed) ? without : left;
        }, kept),
    order,
  );
}

/** Takes those of some steps that can be taken now, in the given order of verbs. */
function taking(
  from: Reached,
  verbs: readonly Verb[],
  steps: readonly Step[],
  setup: StepSetup,
  allowed: Allowed,
): Reached {
  let here = from;
  for (const step of verbs.flatMap((verb) => steps.filter((s) => s.verb === verb))) {
    if (!judge(here.state, step, setup).ok) continue;
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
  const all = stage === "all";
  // Everything the vocabulary has is tried in every order, the preparing and closing steps too.
  const begin: Reached = { state: start(setup), from: undefined, step: undefined };
  const first = all ? begin : taking(begin, preparing, steps, setup, allowed);
  const tried = all ? steps : steps.filter((s) => !closing.includes(s.verb));
  const seen = new Set<number>([keyOf(first.state)]);
  const queue: Reached[] = [first];
  const refusals = new Refusals();
  const finish = (at: Reached): readonly Step[] | undefined => {
    const end = all ? at : taking(at, closing, steps, setup, allowed);
    if (!arrived(end.state, setup)) return undefined;
    const order = wayTo(end);
    if (allowed(end.from!.state, end.step!, end.state, true) !== true) return undefined;
    return trimmed(order, setup, allowed);
  };
  for (let i = 0; i < queue.length && queue.length < limit; i++) {
    const here = queue[i]!;
    const { state } = here;
    for (const step of tried) {
      if (!timely(state, step, setup, stage)) continue;
      const possible = judge(state, step, setup);
      if (!possible.ok) {
        refusals.impossible(step, possible.because!);
        continue;
      }
      const patch = effectOf(state, step, setup);
      const key = keyAfter(state, patch);
      if (seen.has(key)) continue;
      const after = change(state, patch);
      const verdict = allowed(state, step, after, false);
      if (verdict !== true) {
        refusals.refused(step, typeof verdict === "string" ? verdict : "a rule refuses it");
        continue;
      }
      refusals.taken(step);
      const reached: Reached = { state: after, from: here, step };
      if (across(after, setup)) {
        const order = finish(reached);
        if (order) return { steps: order, states: queue.length };
      }
      seen.add(key);
      queue.push(reached);
    }
  }
  if (queue.length >= limit)
    return { reason: `no order was found within ${limit} states of the search`, states: queue.length };
  return { reason: refusals.reason(setup), states: queue.length };
}

function wayTo(last: Reached): Step[] {
  const steps: Step[] = [];
  for (let at: Reached | undefined = last; at?.step; at = at.from) steps.push(at.step);
  return steps.reverse();
}
