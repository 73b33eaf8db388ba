/** What the tests over all quantities need to know of some of them, each with its reason. */
import { quantities } from "../../../rules/quantities/index.js";

/**
 * What rests on the room alone. Nothing of it is chosen at nominal values and held, but places in a room are taken as so far off
 * each way, so a draw has its nominal value where it is.
 */
const ofRoom = /^(room\..*|park\.room-clearance|lift\.approach|door\.past-wall)$/;
export const held = (name: string): boolean => !ofRoom.test(name);

/** Drawn in files of their own, because a search takes long or because what they tell is no number with bounds. */
export const apart: Readonly<Record<string, string>> = {
  "reach.tightest":
    "reach-drawn.test.ts: the search takes a tenth of a second; everything within its tolerances is drawn there",
  "reach.place": "the same number as reach.tightest; the name is tested in ../plan/way/reach.test.ts",
  "reach.turns": "a count on the way found at nominal values",
  "room.turning-circle": "../plan/around-chair.test.ts, against another library's circle",
  "helper.standing": "standing-drawn.test.ts: the middle of the circle is chosen at nominal values and held",
  "room.misclosure-wall":
    "names a wall; walls that are exact never miss in one direction alone, room.test.ts",
};

export const drawn: readonly string[] = quantities.map((q) => q.name).filter((name) => !(name in apart));
/** Those that rest on chair, board, client and way, and those that rest on the room. */
export const drawnHeld = drawn.filter(held);
export const drawnOfRoom = drawn.filter((name) => !held(name));
