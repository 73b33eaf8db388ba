/**
 * Orders known beforehand: a small ordering puzzle counted by an independent program (8 steps, 8 constraints, 3 valid orders
 * among 40 320; with one more constraint none), and orders that are taught and published.
 */
import { describe, expect, it } from "vitest";
import { spell, type Step } from "../../language/vocabulary/verbs.js";
import { facts } from "../../rules/steps/facts.js";
import { apply, judge, run } from "../../rules/steps/machine.js";
import { start, type State } from "../../rules/steps/state.js";
import type { StepSetup } from "../../rules/steps/setup.js";
import { steps, usualSetup } from "../rules/steps/usual.js";

const setup = usualSetup({ belt: false, armrests: { left: "flip-back", right: "flip-back" } });

/** P park, B brakes, A armrest away, F feet placed, L lay the board, S slide, T take the board out, R restore the armrest. */
const letters: Record<string, Step> = Object.fromEntries(
  "PBAFLSTR"
    .split("")
    .map((letter, i) => [
      letter,
      steps(
        "approach bed; lock brakes; flip-back armrest left; feet on floor; place board; slide; withdraw board; restore armrest left",
      )[i]!,
    ]),
);

/** Only what the machine does not know by itself: B<A, B<F, A<L, F<S. The rest (P<B, L<S, S<T, T<R) is physical. */
type Rule = (f: (name: string) => string | undefined, verb: string) => boolean;
const rules: Rule[] = [
  (f, verb) => !["flip-back-armrest", "feet-on-floor"].includes(verb) || f("step.brakes") === "locked",
  (f, verb) => verb !== "place-board" || f("step.armrest-near") === "away",
  (f, verb) => verb !== "slide" || f("step.feet") === "floor",
];

/** Whether an order can be done, obeys the rules, does something at every step and leaves the armrest in place. */
function valid(order: string, extra: readonly Rule[] = []): boolean {
  let state: State = start(setup);
  for (const letter of order) {
    const step = letters[letter]!;
    if (!judge(state, step, setup).ok) return false;
    const f = facts(state, setup, step);
    if (![...rules, ...extra].every((rule) => rule(f, f("step.verb")!))) return false;
    const next = apply(state, step, setup);
    if (next === state) return false;
    state = next;
  }
  return state.client === "on-to" && state.board === "stowed" && state.armrestLeft === "in-place";
}

function* permutations(rest: string, sofar = ""): Generator<string> {
  if (rest === "") yield sofar;
  for (let i = 0; i < rest.length; i++)
    yield* permutations(rest.slice(0, i) + rest.slice(i + 1), sofar + rest[i]!);
}

describe("Eight steps under eight constraints", () => {
  const all = [...permutations("PBAFLSTR")];

  it("have three valid orders among all 40 320", () => {
    expect(all).toHaveLength(40_320);
    expect(all.filter((order) => valid(order)).sort()).toEqual(["PBAFLSTR", "PBALFSTR", "PBFALSTR"]);
  });

  it("have none once the slide must come before the armrest is moved away", () => {
    const slideFirst: Rule = (f, verb) => verb !== "flip-back-armrest" || f("step.client") === "on-to";
    expect(all.filter((order) => valid(order, [slideFirst]))).toEqual([]);
  });
});

describe("Orders that are taught can be done", () => {
  const helped = usualSetup({ adjusts: true, castors: "unlocked" });
  const orders: [string, StepSetup, string][] = [
    [
      "brakes first, the chair as close as possible (GATE TAP, Transfer boards: safe transferring)",
      helped,
      "approach bed; lock brakes; swing-away armrest left; place board; check bearing; slide; withdraw board",
    ],
    [
      "chair and bed locked, chair arm and footrests off, rail side clear (OSHA 3182, lateral transfer, sitting)",
      helped,
      "lock castors; approach bed; lock brakes; swing-away armrest left; remove legrest left; belt on; place board; slide; withdraw board",
    ],
    [
      "footplates away, chair close, brakes, side panel, board (common practice)",
      usualSetup({ armrests: { left: "removable", right: "removable" } }),
      "remove legrest left; approach bed; lock brakes; remove side panel left; place board; slide; withdraw board; position in-bed",
    ],
    [
      "heights, angle, armrest, brakes, footrests, belt, scoot, lean, board, feet, slide, lean, board out (common practice)",
      helped,
      `set-height bed; approach bed; swing-away armrest left; lock brakes; swing-away legrest left; belt on; scoot forward
       lean right; place board; feet on floor; slide; lean left; withdraw board`,
    ],
  ];
  it.each(orders)("%s", (_, where, text) => {
    const order = steps(text);
    const done = run(order, where);
    expect(
      done.possible.map((p, i) => (p.ok ? "" : `${spell(order[i]!)}: ${p.because}`)).filter(Boolean),
    ).toEqual([]);
    expect(done.end).toMatchObject({ client: "on-to", board: "stowed" });
  });
});
