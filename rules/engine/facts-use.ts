/** Facts on what is used in a transfer, and who helps. */
import type { Thing } from "../../language/model/types.js";
import type { Scene } from "../scene.js";
import { perSide } from "../scenes.js";
import { onTransfer, word, yesNo, type SpecialFact } from "./special-fact.js";
import { choiceReading, missingReading, numberReading } from "./written.js";

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
    (s) => [s.chair, s.side, s.transfer],
    (s, n) => {
      if (!s.chair)
        return missingReading(n, "which wheelchair is used (from)", {
          thing: s.base ?? s.transfer,
          key: "from",
        });
      const kinds = perSide(s.chair, one);
      const key = s.chair.values[one] !== undefined ? one : `${one}s`;
      if (!s.side && kinds.left !== kinds.right)
        return missingReading(n, "on which side of the chair the bed lies (bed-side and facing)", {
          thing: s.transfer,
          key: "bed-side",
        });
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
