import { describe, expect, test } from "vitest";
import { chairInRoom, type ChairInRoom } from "../../../rules/quantities/chair-in-room.js";
import { roomOf, type RoomHanded } from "../../../rules/quantities/standing.js";
import { standingPlace } from "../../../rules/plan/standing-place.js";
import type { Outline, Point } from "../../../rules/plan/room.js";
import { draws } from "../plan/sampling.js";
import { Drawing } from "./drawing.js";
import { households } from "./everything-home.js";
import { climb } from "./extremes.js";

type Handed = ChairInRoom & RoomHanded & { readonly reach: { readonly nominal: number } };

/** From a point to the nearest side of an outline. */
function toSides(p: Point, o: Outline): number {
  let least = Infinity;
  o.forEach((a, n) => {
    const b = o[(n + 1) % o.length]!;
    const square = (b.x - a.x) ** 2 + (b.y - a.y) ** 2;
    const along = square === 0 ? 0 : ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / square;
    const u = Math.min(1, Math.max(0, along));
    least = Math.min(least, Math.hypot(p.x - a.x - u * (b.x - a.x), p.y - a.y - u * (b.y - a.y)));
  });
  return least;
}

/** An end is found once so much of the way to the computed bound was come. */
const near = 0.9;

describe.each([
  ["everything", "in-front", 1000],
  ["everything", "behind", 300],
  ["everything", "at-side", 300],
  ["unloaded", "in-front", 300],
  ["fine", "in-front", 300],
  ["swung", "in-front", 1000],
  ["away", "at-side", 300],
  ["in place", "behind", 300],
  ["taped", "in-front", 300],
] as const)(
  "room for a helper who stands where the plan puts one: household %s, %s",
  (title, place, count) => {
    const text = households[title]!.replace("helper in-front", `helper ${place}`);
    const drawing = new Drawing(text, "into-bed", title !== "taped");
    const written = drawing.handed("helper.standing") as Handed;
    const room = roomOf(written);
    const chair = chairInRoom(written, room)!;
    const { middle } = standingPlace(room, chair.footprint, place, chair.hip.nominal, written.reach.nominal)!;
    const { value } = drawing.computed("helper.standing");
    const { low, nominal, high } = value!;

    /** Twice the way to the chair, and to whatever else is nearest. */
    const across = (values: readonly number[]): { readonly chair: number; readonly others: number } => {
      const handed = drawing.handed("helper.standing", values) as Handed;
      const truly = roomOf(handed);
      const others = [
        truly.walls,
        ...truly.things.map(({ sides: { west: w, east: e, south: s, north: n } }) => [
          { x: w.nominal, y: s.nominal },
          { x: e.nominal, y: s.nominal },
          { x: e.nominal, y: n.nominal },
          { x: w.nominal, y: n.nominal },
        ]),
      ];
      const least = (all: readonly Outline[]): number => 2 * Math.min(...all.map((o) => toSides(middle, o)));
      return { chair: least(chairInRoom(handed, truly)!.footprint.nominal), others: least(others) };
    };
    const clear = (values: readonly number[]): number => {
      const found = across(values);
      return Math.min(found.chair, found.others);
    };

    test(`${count} draws of walls, things and chair lie inside`, { timeout: 60_000 }, () => {
      const random = draws(81);
      for (let k = 0; k < count; k++) {
        const found = clear(drawing.pick(random, k % 2 === 0));
        expect(found).toBeGreaterThanOrEqual(low - 1e-9);
        // The circle's middle is searched to a millimetre.
        expect(found).toBeLessThanOrEqual(high + 0.002);
      }
    });

    test("it is at most a quarter wider than what its inputs reach", { timeout: 60_000 }, () => {
      const random = draws(82);
      const { leaves } = drawing;
      const starts = [
        leaves.map((l) => l.nominal),
        ...Array.from({ length: 3 }, () => drawing.pick(random, false)),
      ];
      /** The greatest of a value that corners reach from any start. */
      const reached = (
        value: (values: readonly number[]) => number,
        enough: (best: number) => boolean,
      ): number => {
        let best = -Infinity;
        for (const corner of starts)
          if (!enough(best))
            best = Math.max(best, climb(leaves, { corner, best: value(corner) }, value, enough).best);
        return best;
      };
      const most = reached(clear, (best) => best - nominal >= near * (high - nominal));
      // What is nearest hides all else from a climb, of which another may come nearer still: so each is climbed by itself.
      const small = (best: number): boolean => nominal + best >= near * (nominal - low);
      const others = reached((values) => -across(values).others, small);
      const least = -(small(others)
        ? others
        : Math.max(
            others,
            reached((values) => -across(values).chair, small),
          ));
      expect((high - low) / (most - least)).toBeLessThanOrEqual(1.25);
    });
  },
);
