import { describe, expect, test } from "vitest";
import { chairInRoom, type ChairInRoom } from "../../../rules/quantities/chair-in-room.js";
import { roomOf, type RoomHanded } from "../../../rules/quantities/standing.js";
import { standingPlace } from "../../../rules/plan/standing-place.js";
import type { Outline, Point } from "../../../rules/plan/room.js";
import { draws } from "../plan/sampling.js";
import { Drawing } from "./drawing.js";
import { everything, households } from "./everything-home.js";

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

describe.each(Object.entries({ everything, unloaded: households["unloaded"]!, fine: households["fine"]! }))(
  "room for a helper who stands where the plan puts one, in the household %s",
  (_title, text) => {
    const drawing = new Drawing(text, "into-bed");
    const written = drawing.handed("helper.standing") as Handed;
    const room = roomOf(written);
    const chair = chairInRoom(written, room)!;
    const { middle } = standingPlace(
      room,
      chair.footprint,
      "in-front",
      chair.hip.nominal,
      written.reach.nominal,
    )!;
    const { value } = drawing.computed("helper.standing");

    test("1,000 draws of walls, things and chair lie inside, and reach most of it", () => {
      const random = draws(81);
      let [low, high] = [Infinity, -Infinity];
      for (let k = 0; k < 1000; k++) {
        const handed = drawing.handed("helper.standing", drawing.pick(random, k % 2 === 0)) as Handed;
        const truly = roomOf(handed);
        const outlines = [
          truly.walls,
          ...truly.things.map(({ sides: { west: w, east: e, south: s, north: n } }) => [
            { x: w.nominal, y: s.nominal },
            { x: e.nominal, y: s.nominal },
            { x: e.nominal, y: n.nominal },
            { x: w.nominal, y: n.nominal },
          ]),
          ...chairInRoom(handed, truly)!.footprint.nominal,
        ];
        const across = 2 * Math.min(...outlines.map((o) => toSides(middle, o)));
        // The circle's middle is searched to a millimetre.
        expect(across).toBeGreaterThanOrEqual(value!.low - 1e-9);
        expect(across).toBeLessThanOrEqual(value!.high + 0.002);
        low = Math.min(low, across);
        high = Math.max(high, across);
      }
      // The chair's place is bounded by a box and its turn by an arc, both taken from where the helper stands at their worst together;
      // a thousand draws of a hundred inputs do not meet that corner.
      expect((value!.high - value!.low) / (high - low)).toBeLessThanOrEqual(2.5);
    });
  },
);
