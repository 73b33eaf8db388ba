/** `threshold.height`: the highest edge that the chair has to be rolled over on the way into the room. */
import type { Thing } from "../../language/model/types.js";
import type { Of, Outcome } from "../quantity.js";
import type { Scene } from "../scene.js";
import { absent, derived, isWritten } from "./inputs.js";
import { itemsOf, type Inputs } from "./standing.js";
import { blocksOf, doorsIn, greatestOf, item, list, listed, routesOf } from "./way-parts.js";

const atOf = (t: Thing): string => {
  const at = t.values["at"];
  return typeof at === "string" ? `threshold, ${at},` : "threshold on the way";
};

export const thresholdHeight = derived({
  name: "threshold.height",
  dimension: "length",
  says: "height of the highest threshold, kerb or step on the way into the room that the chair has to be rolled over",
  formula: "greatest of the thresholds of the doors, and of the thresholds and kerbs of the routes",
  source: "difference of heights",
  inputs: (s: Scene, of: Of): Inputs => {
    const { doors } = doorsIn(s);
    const routes = routesOf(s);
    const all = [
      ...doors
        .filter((d) => isWritten(d, "threshold"))
        .map((d) =>
          item(of, d, "threshold", `threshold of the door ${d.name}`, `the threshold of the door ${d.name}`),
        ),
      ...blocksOf(routes, "threshold").map((t) =>
        item(of, t, "height", atOf(t), "the height of the threshold on the way"),
      ),
      ...routes.flatMap((r) =>
        itemsOf(r, "kerb").flatMap((k) =>
          k ? [item(of, k, "height", `kerb on the way ${r.name}`, `the kerb on the way ${r.name}`)] : [],
        ),
      ),
    ];
    if (all.length === 0) {
      const holder = doors[0] ?? s.room ?? s.transfer;
      return { none: absent(holder, "the height of the threshold on the way in (threshold)", "threshold") };
    }
    return list("edge", all);
  },
  compute: (i: Readonly<Record<string, unknown>>): Outcome => {
    const worst = greatestOf(listed(i, "edge"))!;
    return { value: worst.value, choice: worst.name };
  },
});

export const thresholdUnbevelled = derived({
  name: "threshold.unbevelled",
  dimension: "length",
  says: "height of the highest threshold on a route to the room whose edges are said not to be bevelled",
  formula: "greatest of the heights of the routes' thresholds with `bevelled no`",
  source: "difference of heights",
  inputs: (s: Scene, of: Of): Inputs => {
    const square = blocksOf(routesOf(s), "threshold").filter((t) => isNo(t));
    if (square.length === 0) return { all: "none" };
    return list(
      "edge",
      square.map((t) => item(of, t, "height", atOf(t), "the height of the threshold on the way")),
    );
  },
  compute: (i: Readonly<Record<string, unknown>>): Outcome => {
    const worst = greatestOf(listed(i, "edge"));
    if (!worst) return { without: "no threshold is said to be without a bevel" };
    return { value: worst.value, choice: worst.name };
  },
});

const isNo = (t: Thing): boolean => t.values["bevelled"] === false || t.values["bevelled"] === "no";
