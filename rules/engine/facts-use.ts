/** Facts on what is used in a transfer, and who helps. */
import { isQuantity, type Thing } from "../../language/model/types.js";
import type { Interval } from "../../language/quantity/interval.js";
import type { Quantity } from "../../language/quantity/types.js";
import type { Scene } from "../scene.js";
import { perSide } from "../scenes.js";
import type { Reading } from "./logic.js";
import { onTransfer, word, yes, yesNo, type SpecialFact } from "./special-fact.js";
import { choiceReading, missingReading, numberReading, withoutReading } from "./written.js";

/** A value that a setup says in a part of a statement, with the bounds that were written. */
export const quantityReading = (
  name: string,
  { dimension, unit }: Quantity,
  value: Interval,
  at: { readonly thing: Thing; readonly key: string },
): Reading => ({
  name,
  dimension,
  value,
  missing: [],
  assumed: [],
  trace: [
    {
      label: name,
      value,
      dimension,
      unit,
      get place() {
        return at.thing.placeOf(at.key);
      },
    },
  ],
  unit,
  given: true,
});

/** Something that `with` names or not; where `with` is not written nobody has said what is used. */
export function used(
  name: string,
  says: string,
  what: string,
  of: (s: Scene) => Thing | readonly Thing[] | undefined,
): SpecialFact {
  const present = (s: Scene): boolean => {
    const found = of(s);
    return Array.isArray(found) ? found.length > 0 : found !== undefined;
  };
  return onTransfer(
    name,
    says,
    yesNo,
    (s) => [s.transfer, s.base, of(s)],
    (s, n) => {
      const said = s.value("with");
      if (present(s)) return choiceReading(n, "yes", { thing: said.thing, key: "with" });
      return Array.isArray(said.value)
        ? choiceReading(n, "no", { thing: said.thing, key: "with" })
        : missingReading(n, `whether ${what} (with)`, { thing: said.thing, key: "with" });
    },
  );
}

export const boardUsed = onTransfer(
  "board.used",
  "whether a sliding board is used; unknown until a board or no-board is written",
  yesNo,
  (s) => [s.transfer, s.base, s.board],
  (s, n) => {
    if (s.board) return choiceReading(n, "yes", { thing: s.value("with").thing, key: "with" });
    const none = s.value("no-board");
    if (none.value === true) return choiceReading(n, "no", { thing: none.thing, key: "no-board" });
    return missingReading(n, "whether a board is used (with, or no-board)", {
      thing: s.transfer,
      key: "with",
    });
  },
);

export const helpersCount = onTransfer(
  "helpers.count",
  "how many people help",
  { dimension: "number" },
  (s) => [s.transfer, s.base, s.helpers],
  (s, n) => {
    const said = s.value("with");
    if (s.helpers.length === 0 && !Array.isArray(said.value))
      return missingReading(n, "who helps (with)", { thing: said.thing, key: "with" });
    return numberReading(n, s.helpers.length);
  },
);

/** The floor lift: named in `with`, or as the other way in `if-not`. */
export function liftOf(s: Scene, things: ReadonlyMap<string, Thing>): Thing | undefined {
  if (s.lift) return s.lift;
  const other = things.get(word(ifNot(s)?.values["otherwise"]) ?? "");
  return other?.kind === "lift" ? other : undefined;
}
export const ifNot = (s: Scene): Thing | undefined =>
  s.transfer.inner["if-not"]?.[0] ?? s.base?.inner["if-not"]?.[0];

export const liftUsed = onTransfer(
  "lift.used",
  "whether a floor lift is used, or is the other way if it does not go well",
  yesNo,
  (s, { household }) => [s.transfer, s.base, liftOf(s, household.things)],
  (s, n, { household }) => {
    const lift = liftOf(s, household.things);
    const said = s.value("with");
    if (lift)
      return choiceReading(
        n,
        "yes",
        s.lift ? { thing: said.thing, key: "with" } : { thing: ifNot(s)!, key: "otherwise" },
      );
    return Array.isArray(said.value)
      ? choiceReading(n, "no", { thing: said.thing, key: "with" })
      : missingReading(n, "whether a lift is used (with)", { thing: said.thing, key: "with" });
  },
  true,
);

/** A transfer that names a lift and no board is made in the lift's sling; a lift that only `if-not` names carries nobody here. */
export const liftCarries = onTransfer(
  "lift.carries",
  "whether the client crosses in the sling of a lift: the transfer names a lift and no board",
  yesNo,
  (s) => [s.transfer, s.base, s.lift, s.board],
  (s, n) =>
    choiceReading(n, s.lift && !s.board ? "yes" : "no", { thing: s.value("with").thing, key: "with" }),
);

/** The masses for which a sling is made; one that is sold by length says nothing of masses. */
const slingFits = (name: string, says: string, end: "low" | "high"): SpecialFact =>
  onTransfer(
    name,
    says,
    { dimension: "mass" },
    (s) => [s.transfer, s.base, s.sling],
    (s, n) => {
      if (!s.sling) return withoutReading(n, "No sling is named");
      const at = { thing: s.sling, key: "fits" };
      const fits = s.sling.values["fits"];
      if (!isQuantity(fits)) return missingReading(n, `for whom ${s.sling.name} is made (fits)`, at);
      if (fits.dimension !== "mass") return withoutReading(n, `${s.sling.name} is chosen by length`);
      return quantityReading(n, fits, { low: fits[end], nominal: fits[end], high: fits[end] }, at);
    },
  );
export const slingFacts: readonly SpecialFact[] = [
  used("sling.used", "whether a sling is named", "a sling is used", (s) => s.sling),
  slingFits("sling.fits-least", "the lightest person for whom the sling is made", "low"),
  slingFits("sling.fits-most", "the heaviest person for whom the sling is made", "high"),
  onTransfer(
    "sling.label-legible",
    "whether the label of the sling can still be read",
    yesNo,
    (s) => [s.transfer, s.base, s.sling],
    (s, n) => {
      if (!s.sling) return withoutReading(n, "No sling is named");
      const at = { thing: s.sling, key: "label-legible" };
      const value = s.sling.values["label-legible"];
      return typeof value === "boolean"
        ? choiceReading(n, yes(value), at)
        : missingReading(n, `whether the label of ${s.sling.name} can be read (label-legible)`, at);
    },
  ),
];

/** `room none` is a decision: the transfer is made outdoors, and nothing of a room is asked. */
export const outdoors = (s: Scene): boolean => s.value("room").value === "none";
export const doneOutdoors = "This is done outdoors";
export const indoors = onTransfer(
  "transfer.indoors",
  "whether it is done in a room; no where `room none` is written",
  yesNo,
  (s) => [s.transfer, s.base, s.room],
  (s, n) => {
    const at = { thing: s.value("room").thing, key: "room" };
    if (outdoors(s)) return choiceReading(n, "no", at);
    return s.room
      ? choiceReading(n, "yes", at)
      : missingReading(n, "the room in which it is done (room)", { thing: s.transfer, key: "room" });
  },
);

/** The kind of leg rest or armrest on the side of the surface. */
export function near(
  name: string,
  one: "legrest" | "armrest",
  what: string,
  choices: readonly string[],
): SpecialFact {
  return onTransfer(
    name,
    `the kind of ${what} on the side of the other surface`,
    { choices },
    (s) => [s.chair, s.side, s.transfer, s.base, s.from, s.to, s.surface],
    (s, n) => {
      if (!s.chair && s.from && s.to) return withoutReading(n, "No wheelchair takes part");
      if (!s.chair)
        return missingReading(n, "which wheelchair is used (from)", {
          thing: s.base ?? s.transfer,
          key: "from",
        });
      const kinds = perSide(s.chair, one);
      const key = s.chair.values[one] !== undefined ? one : `${one}s`;
      if (!s.side && kinds.left !== kinds.right)
        return missingReading(
          n,
          `on which side of the chair ${s.surface?.name ?? "the other surface"} lies (${s.surface && s.surface.kind !== "bed" ? "side" : "bed-side"} and facing)`,
          {
            thing: s.transfer,
            key: s.surface && s.surface.kind !== "bed" ? "side" : "bed-side",
          },
        );
      const kind = kinds[s.side ?? "left"];
      return kind === undefined
        ? missingReading(n, `the kind of the ${what} of ${s.chair.name} on that side (${one}s)`, {
            thing: s.chair,
            key,
          })
        : choiceReading(n, kind, { thing: s.chair, key }, `${what} of ${s.chair.name}`);
    },
  );
}
