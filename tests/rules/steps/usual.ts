/** A handful of usual rules (common practice) for trying the machine and the planner; the rules that judge a plan are text elsewhere. */
import { spell, readStep, type Step } from "../../../language/vocabulary/verbs.js";
import { facts } from "../../../rules/steps/facts.js";
import type { Allowed } from "../../../rules/steps/plan.js";
import { run } from "../../../rules/steps/machine.js";
import type { StepSetup } from "../../../rules/steps/setup.js";

/** A household's equipment for tests: bed on the chair's left, everything comes off, a daughter helps. */
export const usualSetup = (changed: Partial<StepSetup> = {}): StepSetup => ({
  direction: "from-chair",
  side: "left",
  surface: { name: "bed", kind: "bed" },
  legrests: { left: "swing-away", right: "swing-away" },
  armrests: { left: "swing-away", right: "swing-away" },
  footplates: "flip-up",
  brakes: "both",
  helped: true,
  belt: true,
  board: true,
  lines: false,
  castors: "none",
  adjusts: false,
  ...changed,
});

/** Steps from text, one a line; throws on a line that is not a step, since a test's text must be right. */
export function steps(text: string): Step[] {
  return text
    .split(/[\n;]/)
    .map((line) => line.trim())
    .filter((line) => line !== "")
    .map((line) => {
      const read = readStep(line.split(/\s+/));
      if (!read.step) throw new Error(`${line}: ${read.problem}`);
      return read.step;
    });
}

type Facts = (name: string) => string | undefined;
interface UsualRule {
  readonly says: string;
  /** Whether it applies to the step. */
  readonly at: (f: Facts, setup: StepSetup) => boolean;
  readonly needs: (f: Facts, setup: StepSetup) => boolean;
}

const verb =
  (...verbs: string[]) =>
  (f: Facts) =>
    verbs.includes(f("step.verb")!);
const legWork = verb("remove-legrest", "swing-away-legrest", "refit-legrest");
const armWork = verb("remove-armrest", "swing-away-armrest", "flip-back-armrest", "restore-armrest");

export const usualRules: readonly UsualRule[] = [
  {
    says: "the brakes are locked before anything is lifted off",
    at: (f) => legWork(f) || armWork(f),
    needs: (f) => f("step.brakes") === "locked",
  },
  {
    says: "the brakes are locked before the client moves or leans in a chair or beside it",
    at: verb("lean", "scoot-forward", "place-board", "withdraw-board", "slide", "slide-part-way"),
    needs: (f) => f("step.brakes") === "locked",
  },
  {
    says: "the brakes stay locked while the board is placed",
    at: verb("unlock-brakes"),
    needs: (f) => f("step.board") === "stowed",
  },
  {
    says: "the near leg rest is away before the chair comes up",
    at: verb("approach"),
    needs: (f) => f("step.legrest-near") !== "in-place",
  },
  {
    says: "the near armrest is away before the board is placed",
    at: verb("place-board"),
    needs: (f) => f("step.armrest-near") === "away",
  },
  {
    says: "the client leans away while the board is placed or withdrawn",
    at: verb("place-board", "withdraw-board"),
    needs: (f) => f("step.lean") === "away",
  },
  {
    says: "the hips are forward before the board is placed",
    at: verb("place-board"),
    needs: (f, s) => s.direction === "to-chair" || f("step.scooted") === "yes",
  },
  {
    says: "the bearing is checked before the slide",
    at: verb("slide", "slide-part-way"),
    needs: (f, s) => !s.board || f("step.bearing-checked") === "yes",
  },
  {
    says: "the brakes are checked again before the slide",
    at: verb("slide", "slide-part-way"),
    needs: (f) => f("step.brakes-checked") === "yes",
  },
  {
    says: "the client slides upright",
    at: verb("slide", "slide-part-way"),
    needs: (f) => f("step.lean") === "upright",
  },
  {
    says: "the feet are carried, and not by the plates, before the slide",
    at: verb("slide", "slide-part-way"),
    needs: (f) => f("step.feet") === "floor" || f("step.feet") === "supported",
  },
  {
    says: "the plates are up before the slide",
    at: verb("slide", "slide-part-way"),
    needs: (f) => f("step.footplates") === "up",
  },
  {
    says: "the near armrest is away before the slide",
    at: verb("slide", "slide-part-way"),
    needs: (f) => f("step.armrest-near") === "away",
  },
  {
    says: "the near leg rest is away before the slide",
    at: verb("slide", "slide-part-way"),
    needs: (f) => f("step.legrest-near") !== "in-place",
  },
  {
    says: "the belt is on before a helper helps across",
    at: verb("slide", "slide-part-way"),
    needs: (f, s) => !s.helped || !s.belt || f("step.belt") === "on",
  },
  {
    says: "castors that lock are locked before the slide",
    at: verb("slide", "slide-part-way"),
    needs: (f) => f("step.castors") !== "unlocked",
  },
  {
    says: "lines are moved before the slide",
    at: verb("slide", "slide-part-way"),
    needs: (f) => f("step.lines") !== "free",
  },
  {
    says: "the board is out before the client is settled",
    at: verb("position-in-bed", "position-in-chair"),
    needs: (f) => f("step.board") === "stowed",
  },
];

/** What must not be left open at the end; asked of the state after the last step. */
const endRules: readonly {
  readonly says: string;
  readonly needs: (f: Facts, setup: StepSetup) => boolean;
}[] = [
  { says: "the board is out at the end", needs: (f) => f("step.board") === "stowed" },
  { says: "the client is across at the end", needs: (f) => f("step.client") === "on-to" },
  { says: "the belt is off at the end", needs: (f) => f("step.belt") === "off" },
  { says: "the brakes are locked at the end", needs: (f) => f("step.brakes") === "locked" },
  {
    says: "the chair is whole again under the client at the end",
    needs: (f, s) =>
      s.direction === "from-chair" ||
      (f("step.legrest-near") === "in-place" &&
        f("step.legrest-far") === "in-place" &&
        f("step.armrest-near") === "in-place" &&
        f("step.armrest-far") === "in-place" &&
        f("step.feet") === "plates"),
  },
];

/** The usual rules as the planner asks them; `without` leaves rules out by a part of their title, `more` adds some. */
export function usual(
  setup: StepSetup,
  more: readonly UsualRule[] = [],
  without: readonly string[] = [],
): Allowed {
  const rules = [...usualRules, ...more].filter((r) => !without.some((w) => r.says.includes(w)));
  const atEnd = endRules.filter((r) => !without.some((w) => r.says.includes(w)));
  return (before, step, after, isEnd) => {
    const f = facts(before, setup, step);
    const broken = rules.find((r) => r.at(f, setup) && !r.needs(f, setup));
    if (broken) return broken.says;
    const end = facts(after, setup);
    return (isEnd && atEnd.find((r) => !r.needs(end, setup))?.says) || true;
  };
}

/** Every finding of an order, one text each: steps that are impossible, rules that are broken, and what is left open. */
export function findings(
  order: readonly Step[],
  setup: StepSetup,
  more: readonly UsualRule[] = [],
): string[] {
  const done = run(order, setup);
  const allowed = usual(setup, more);
  const out = order.flatMap((step, i) => {
    const at = `${i + 1} ${spell(step)}: `;
    const possible = done.possible[i]!;
    if (!possible.ok) return [at + possible.because!];
    const verdict = allowed(done.before[i]!, step, done.after[i]!, false);
    return verdict === true ? [] : [at + String(verdict)];
  });
  const end = facts(done.end, setup);
  return [...out, ...endRules.filter((r) => !r.needs(end, setup)).map((r) => `end: ${r.says}`)];
}

/** The same order on the mirrored setup. */
export const mirrored = (order: readonly Step[]): Step[] =>
  order.map((s) => (s.side ? { ...s, side: s.side === "left" ? "right" : "left" } : s));

export const firstWeek = `
  lock brakes
  remove legrest left
  unlock brakes
  approach bed
  lock brakes
  swing-away armrest left
  belt on
  scoot forward
  lean right
  place board
  sit upright
  check bearing
  feet on floor
  footplates up
  check brakes
  slide
  lean left
  withdraw board
  position in-bed
  belt off
`;
