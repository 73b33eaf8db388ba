/** Walls called by their number on the walk must be on it. */
import { says } from "../text/messages.js";
import type { LocatedProblem } from "./notes.js";
import type { Thing } from "./types.js";

/** Doors and places of a room that name a wall which the walk does not have. Without a walk, nothing is said. */
export function wallProblems(room: Thing): LocatedProblem[] {
  const walk = room.values["walk"];
  if (!Array.isArray(walk)) return [];
  const inside = [...(room.inner["door"] ?? []), ...(room.inner["place"] ?? [])];
  return inside.flatMap((thing) => {
    const wall = thing.values["wall"];
    if (typeof wall !== "string" || !/^\d+$/.test(wall) || Number(wall) <= walk.length) return [];
    const { line, start, end } = thing.placeOf("wall");
    const message = says["form/no-such-wall"]({ wall, where: room.name, walls: walk.length });
    return [{ rule: "form/no-such-wall", message, line, start, end }];
  });
}
