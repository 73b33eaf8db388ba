/** Says where every order broke off. */
import { stepPhrases, type Step, type Verb } from "../../language/vocabulary/verbs.js";
import { neverDone } from "./machine.js";
import { isBed, isBench, isCar, isFloor, hasRim, type StepSetup } from "./setup.js";
import { start } from "./state.js";

/** What an order gets past one after the other, for this equipment. */
function milestones(setup: StepSetup): Verb[] {
  const toChair = setup.direction === "to-chair";
  const settle: Verb = toChair
    ? "position in-chair"
    : isBed(setup)
      ? "position in-bed"
      : "position on-surface";
  if (setup.lift)
    return [
      "sling under",
      "bring lift",
      "attach sling",
      "raise sling",
      "turn lift",
      "lower sling",
      "detach sling",
      "lift away",
      "sling out",
      settle,
    ];
  const found: Verb[] = [];
  if (toChair && isBed(setup)) found.push("sit on-edge");
  if (start(setup).chair === "away") found.push("approach");
  if (isFloor(setup)) return [...found, "lift together", settle];
  if (isCar(setup)) found.push("open door");
  if (toChair && isBench(setup)) found.push("move-along out");
  if (toChair && hasRim(setup)) found.push("leg out");
  if (setup.board) found.push("place board");
  found.push("slide");
  if (setup.board) found.push("withdraw board");
  if (!toChair && hasRim(setup)) found.push("leg in");
  if (!toChair && isBench(setup)) found.push("move-along in");
  return [...found, settle];
}

/** Why a step of the vocabulary can never be done with this equipment, on either side. */
function never(verb: Verb, setup: StepSetup): string | undefined {
  const { side, object } = stepPhrases.find((p) => p.verb === verb)!;
  return neverDone(setup, {
    verb,
    ...(side && { side: setup.side ?? "left" }),
    ...(object && { object: setup.surface.name }),
  });
}

/** The first need that this equipment cannot meet in any order; undefined where nothing is missing outright. */
export function missingOutright(setup: StepSetup): string | undefined {
  for (const verb of milestones(setup)) {
    const why = never(verb, setup);
    if (why !== undefined) return `no order gets as far as \`${verb}\`: ${why}`;
  }
  return undefined;
}

/** Remembers what stopped each step, to say at the end which need no order meets. */
export class Refusals {
  private readonly why = new Map<Verb, { impossible?: string; rules: Set<string> }>();
  private readonly done = new Set<Verb>();

  private of(verb: Verb): { impossible?: string; rules: Set<string> } {
    let why = this.why.get(verb);
    if (!why) this.why.set(verb, (why = { rules: new Set() }));
    return why;
  }
  impossible(step: Step, because: string): void {
    this.of(step.verb).impossible ??= because;
  }
  refused(step: Step, rule: string): void {
    this.of(step.verb).rules.add(rule);
  }
  taken(step: Step): void {
    this.done.add(step.verb);
  }
  reason(setup: StepSetup): string {
    for (const verb of milestones(setup)) {
      if (this.done.has(verb)) continue;
      // The search first meets what is easily put right; what it met last is what no order gets past.
      const why = [...(this.why.get(verb)?.rules ?? [])].at(-1) ?? this.why.get(verb)?.impossible;
      if (why !== undefined) return `no order gets as far as \`${verb}\`: ${why}`;
    }
    return "every step can be taken, but no order leaves everything as it must be at the end";
  }
}
