/** The way to the room: its narrowest part, and its turns. */
import type { Interval } from "../../language/quantity/interval.js";
import { cornerLeft } from "../plan/turn.js";
import type { Of, Outcome } from "../quantity.js";
import type { Scene } from "../scene.js";
import { absent, derived, isWritten, without } from "./inputs.js";
import { itemsOf, type Inputs } from "./standing.js";
import { blocksOf, item, leastOf, list, listed, noRoute, routesOf } from "./way-parts.js";

type Handed = Readonly<Record<string, unknown>>;
const noTurn = without("no turn is on a route to the room");

export const routeClearWidth = derived({
  name: "route.clear-width",
  dimension: "length",
  says: "clear width of the narrowest corridor, turn or other place but a door on the way to the room and through it",
  formula: "least of the widths of the routes' corridors and turns, and of the room's narrowest places",
  source: "plane geometry",
  inputs: (s: Scene, of: Of): Inputs => {
    const routes = routesOf(s);
    const narrow = s.room ? itemsOf(s.room, "narrowest") : [];
    const room = s.room;
    const all = [
      ...blocksOf(routes, "corridor").map((c) =>
        item(of, c, "width", "corridor", "the clear width of the corridor"),
      ),
      ...blocksOf(routes, "turn").flatMap((t) =>
        (["from-width", "to-width"] as const)
          .filter((key) => key === "from-width" || isWritten(t, key))
          .map((key) =>
            item(of, t, key, "turn", `the clear width ${key === "from-width" ? "before" : "after"} the turn`),
          ),
      ),
      ...narrow.flatMap((n) => {
        const where = n?.values["where"];
        return n && room
          ? [
              item(
                of,
                n,
                "width",
                typeof where === "string" ? where : `narrowest place in ${room.name}`,
                "the narrowest place",
              ),
            ]
          : [];
      }),
    ];
    if (all.length === 0)
      return {
        none:
          routes.length === 0
            ? noRoute
            : absent(routes[0], "the clear width of the corridor (corridor)", "corridor"),
      };
    return list("width", all);
  },
  compute: (i: Handed): Outcome => {
    const worst = leastOf(listed(i, "width"))!;
    return { value: worst.value, choice: worst.name };
  },
});

export const routeTurnWidth = derived({
  name: "route.turn-width",
  dimension: "length",
  says: "clear width of the narrower corridor at the narrowest turn from one corridor into another on the way to the room",
  formula: "least of the widths before and after the turns, those into a door left out",
  source: "plane geometry",
  inputs: (s: Scene, of: Of): Inputs => {
    const turns = blocksOf(routesOf(s), "turn").filter((t) => !isWritten(t, "door-clear"));
    if (turns.length === 0) return { none: noTurn };
    return list(
      "width",
      turns.flatMap((t) =>
        (["from-width", "to-width"] as const).map((key) =>
          item(of, t, key, "turn", `the clear width ${key === "from-width" ? "before" : "after"} the turn`),
        ),
      ),
    );
  },
  compute: (i: Handed): Outcome => {
    const worst = leastOf(listed(i, "width"))!;
    return { value: worst.value, choice: worst.name };
  },
});

/** Into a door in a thin wall there is more room than into a corridor as wide, and never more than straight through it. */
function intoDoor(before: Interval, door: Interval, length: Interval, width: Interval): Interval {
  const corridor = cornerLeft(before, door, length, width);
  const straight = (door.high - width.low) / 2;
  return { low: corridor.low, nominal: corridor.nominal, high: Math.max(corridor.high, straight) };
}

export const routeTurn = derived({
  name: "route.turn",
  dimension: "length",
  says: "what is left on each side of the chair at the tightest turn on the way to the room; below zero it does not get round",
  formula:
    "least over t of (a sin t + b cos t - l sin t cos t - w) / (1 + sin t + cos t), a and b the widths before and after, l and w the chair's; into a door at most (door - w) / 2",
  source: "plane geometry: a rectangle that turns a corner at a right angle",
  inputs: (s: Scene, of: Of): Inputs => {
    const turns = blocksOf(routesOf(s), "turn");
    if (turns.length === 0) return { none: noTurn };
    if (!s.chair)
      return {
        none:
          s.from && s.to ? without("no wheelchair takes part") : absent(s.transfer, "the wheelchair", "from"),
      };
    return {
      chairLength: of.written(s.chair, "overall-length", "the chair's length with its leg rests"),
      chairWidth: of.written(s.chair, "overall-width", "the chair's width over the hand rims"),
      ...list(
        "before",
        turns.map((t) => item(of, t, "from-width", "turn", "the clear width before the turn")),
      ),
      ...list(
        "after",
        turns.map((t) =>
          isWritten(t, "door-clear")
            ? item(
                of,
                t,
                "door-clear",
                "turn into the door",
                "the clear width of the door into which it turns",
              )
            : item(of, t, "to-width", "turn", "the clear width after the turn"),
        ),
      ),
    };
  },
  compute: (i: Handed): Outcome => {
    const length = i["chairLength"] as Interval;
    const width = i["chairWidth"] as Interval;
    const after = listed(i, "after");
    const worst = leastOf(
      listed(i, "before").map(({ value }, n) => {
        const { name, value: to } = after[n]!;
        const door = name === "turn into the door";
        return { name, value: (door ? intoDoor : cornerLeft)(value, to, length, width) };
      }),
    )!;
    return { value: worst.value, choice: worst.name };
  },
});
