/** What each helper has to pull, and what is left to the client. */
import { add, exactly, multiply, type Interval } from "../../language/quantity/interval.js";
import { beyond } from "../plan/incline.js";
import type { Of, Outcome } from "../quantity.js";
import type { Scene } from "../scene.js";
import type { Computed } from "../types.js";
import { absent, boardOr, choiceOf, derived, without } from "./inputs.js";
import { pushPeak, sharedBy } from "./push.js";

/** Who helps, or why nobody does; `with` that is not written leaves it open. */
function helped(s: Scene, of: Of, more: () => Record<string, unknown>): Record<string, unknown> {
  const b = boardOr(s);
  if ("none" in b) return { none: b.none };
  if (s.helpers.length > 0)
    return {
      push: of(pushPeak),
      count: s.helpers.length,
      most: of.default("helpers-pulling-most"),
      ...more(),
    };
  const said = s.value("with");
  return {
    none: Array.isArray(said.value) ? without("nobody helps") : absent(said.thing, "who helps", "with"),
  };
}

/** No more than so many have room to pull at once. */
const pulling = (count: number, most: Interval): number =>
  Math.max(1, Math.min(count, Math.floor(most.nominal)));

type Handed = { push: Interval; count: number; most: Interval };

export const helperAll = derived({
  name: "helper.all",
  dimension: "force",
  says: "what each helper has to pull if the client gives nothing",
  formula: "push.peak / number of helpers who pull",
  source: "a force shared evenly",
  inputs: (s, of) => helped(s, of, () => ({})),
  compute: (i: Handed): Outcome => ({ value: sharedBy(i.push, pulling(i.count, i.most)) }),
});

/** The part of the effort that a level of assistance leaves to the helpers, at its upper end. */
function effort(s: Scene, of: Of): Computed {
  const level = choiceOf(s.client, "assistance");
  switch (level) {
    case "independent":
    case "setup":
    case "supervision":
      return of.default("effort-none");
    case "moderate":
    case "maximal":
    case "dependent":
      return of.default(`effort-${level}`);
    default:
      return absent(
        s.client,
        "how much help the client needs for this kind of transfer (assistance)",
        "assistance",
      );
  }
}

export const helperExpected = derived({
  name: "helper.expected",
  dimension: "force",
  says: "what each helper has to be ready to pull at the client's level of assistance, at the upper end of that level",
  formula: "push.peak x part of the effort left to helpers / number of helpers who pull",
  source: "a force shared evenly; the part from the rule set",
  inputs: (s, of) => helped(s, of, () => ({ effort: effort(s, of) })),
  compute: (i: Handed & { effort: Interval }): Outcome => ({
    value: sharedBy(multiply(i.push, i.effort), pulling(i.count, i.most)),
  }),
});

export const helperExpectedOfTwo = derived({
  name: "helper.expected-of-two",
  dimension: "force",
  says: "what each of two helpers would have to be ready to pull at the client's level of assistance",
  formula: "push.peak x part of the effort left to helpers / 2",
  source: "a force shared evenly; the part from the rule set",
  inputs: (s, of) => helped(s, of, () => ({ effort: effort(s, of) })),
  compute: (i: Handed & { effort: Interval }): Outcome => ({
    value: sharedBy(multiply(i.push, i.effort), 2),
  }),
});

/** Pulls of all who help, weakest first, so that of several no more is counted on than of the weakest. */
const pulls = (s: Scene, of: Of): Record<string, Computed> =>
  Object.fromEntries(
    s.helpers.map((h) => [`pull ${h.name}`, of.written(h, "safe-pull", `what ${h.name} may pull`)]),
  );

export const clientMustGive = derived({
  name: "client.must-give",
  dimension: "ratio",
  says: "the part of the greatest push that the client has to give, every helper pulling what each may",
  formula: "1 - sum of the helpers' pulls / push.peak; none where the pulls suffice",
  source: "balance of forces along the board",
  inputs: (s, of) => helped(s, of, () => pulls(s, of)),
  compute: (i: Handed & { readonly [pull: `pull ${string}`]: Interval }): Outcome => {
    const all = Object.entries(i)
      .filter(([name]) => name.startsWith("pull "))
      .map(([, x]) => x as Interval)
      .sort((a, b) => a.nominal - b.nominal);
    const sum = all.slice(0, pulling(i.count, i.most)).reduce((a, b) => add(a, b), exactly(0));
    return { value: beyond(i.push, sum) };
  },
});
