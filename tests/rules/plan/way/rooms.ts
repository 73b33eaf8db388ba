/** Rooms for the tests and measurements of the way through a room; all invented. Metres, radians. */
import { rectangle, type Outline } from "../../../../rules/plan/room.js";
import type { ChairPose, Solid, WayProblem } from "../../../../rules/plan/way/problem.js";

export const foot = 0.3048;
export const inch = 0.0254;
export const north = Math.PI / 2;

/** Wheels and frame `wide` by 600 mm about the axle; feet `ahead` of it, 440 mm wide. */
export const chairOf = (wide = 0.635, ahead = 0.86): readonly Outline[] => [
  rectangle(-0.3, -wide / 2, 0.6, wide),
  rectangle(0.2, -0.22, ahead - 0.2, 0.44),
];

/** A single rectangle from `behind` the axle to `ahead` of it. */
export const plainChair = (behind: number, ahead: number, wide: number): readonly Outline[] => [
  rectangle(-behind, -wide / 2, behind + ahead, wide),
];

const thick = 0.12;
/** Walls about a room of `wide` by `deep` whose south-west corner is at the origin, with a door in the south wall. */
export function wallsOf(wide: number, deep: number, door: readonly [from: number, to: number]): Solid[] {
  const wall = (name: string, x: number, y: number, w: number, d: number): Solid => ({
    name,
    outline: rectangle(x, y, w, d),
  });
  return [
    wall("west wall", -thick, -thick, thick, deep + 2 * thick),
    wall("east wall", wide, -thick, thick, deep + 2 * thick),
    wall("north wall", -thick, deep, wide + 2 * thick, thick),
    wall("south wall, west of the door", -thick, -thick, thick + door[0], thick),
    wall("south wall, east of the door", door[1], -thick, wide - door[1] + thick, thick),
  ];
}

/** A bedroom of 12 by 10 feet with six pieces of furniture; the chair ends beside the bed. */
export function bedroom(): WayProblem {
  const [wide, deep] = [12 * foot, 10 * foot];
  const door = [18 * inch, 49.5 * inch] as const;
  const thing = (name: string, x: number, y: number, w: number, d: number): Solid => ({
    name,
    outline: rectangle(x * inch, y * inch, w * inch, d * inch),
  });
  return {
    solids: [
      ...wallsOf(wide, deep, door),
      thing("bed", 54, 40, 39, 80),
      thing("nightstand", 94, 100, 20, 20),
      thing("dresser", 0, 60, 18, 48),
      thing("armchair", 52, 0, 20, 18),
      thing("hamper", 132, 0, 12, 12),
      thing("shelf", 134, 55, 10, 30),
    ],
    chair: chairOf(),
    start: { x: (door[0] + door[1]) / 2, y: -1.2, heading: north },
    goal: { x: 115 * inch, y: 45 * inch, heading: 1.7 },
  };
}

/** A room with `things` boxes, some at the walls and some about the room; neither start nor goal stands in anything. */
export function randomRoom(random: () => number, things = 6): WayProblem {
  const range = (low: number, high: number): number => low + random() * (high - low);
  const wide = range(3, 4.6);
  const deep = range(2.6, 4);
  const chair = chairOf(range(0.58, 0.7), range(0.5, 0.9));
  const at = range(0.1, wide - 1.1);
  const door = [at, at + range(0.75, 0.95)] as const;
  const start: ChairPose = { x: (door[0] + door[1]) / 2, y: -1.2, heading: north };
  const goal: ChairPose = {
    x: range(0.5, wide - 0.5),
    y: range(1.2, deep - 0.5),
    heading: range(0, 2 * Math.PI),
  };
  const solids = wallsOf(wide, deep, door);
  for (let n = 0; n < things; n++) {
    const [w, d] = [range(0.25, 1), range(0.25, 1)];
    const side = Math.floor(random() * 5);
    const x = side === 0 ? 0 : side === 1 ? wide - w : range(0, wide - w);
    const y = side === 2 ? deep - d : range(0.3, deep - d);
    if (Math.hypot(x + w / 2 - goal.x, y + d / 2 - goal.y) < 0.5 + Math.max(w, d) / 2) continue;
    solids.push({ name: `thing ${n + 1}`, outline: rectangle(x, y, w, d) });
  }
  return { solids, chair, start, goal };
}
