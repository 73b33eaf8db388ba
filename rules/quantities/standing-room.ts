/** `helper.standing`: room for the helper where the steps put somebody. */
import type { Interval } from "../../language/quantity/interval.js";
import { standingPlace, type Place } from "../plan/standing-place.js";
import type { Of, Outcome } from "../quantity.js";
import type { Scene } from "../scene.js";
import { chairInRoom, chairInRoomInputs, type ChairInRoom } from "./chair-in-room.js";
import { absent, beyondSquare, derived, without } from "./inputs.js";
import { noRoom, roomInputs, roomOf, type Inputs, type RoomHanded } from "./standing.js";

const places: readonly Place[] = ["in-front", "behind", "at-side"];
const words: Readonly<Record<Place, string>> = {
  "in-front": "in front of the chair",
  behind: "behind the chair",
  "at-side": "beside the chair",
};

/** Where the steps put a helper, each place once, in the order of `places`. */
function placesOf(s: Scene): readonly Place[] {
  const verbs = new Set((s.steps ?? []).map((line) => String(line.step.verb)));
  return places.filter((p) => verbs.has(`helper ${p}`) || verbs.has(`helper-two ${p}`));
}

export const helperStanding = derived({
  name: "helper.standing",
  dimension: "length",
  says: "across the largest clear circle on the floor where the steps put a helper, within reach of who sits in the parked chair; of several places the smallest",
  formula: "greatest least distance to walls, things and the parked chair, doubled",
  source: "plane geometry; a circle, because a helper turns with the client",
  inputs: (s: Scene, of: Of): Inputs => {
    if (s.helpers.length === 0)
      return {
        none: Array.isArray(s.value("with").value)
          ? without("nobody helps")
          : absent(s.transfer, "who helps (with)", "with"),
      };
    const where = placesOf(s);
    if (where.length === 0)
      return {
        none: absent(s.transfer, "where the helper stands (a step such as helper in-front)", "steps"),
      };
    const chair = chairInRoomInputs(s, of);
    if ("none" in chair) return chair;
    return { ...roomInputs(s, of), ...chair, where: where.join(" "), reach: of.default("helper-reach") };
  },
  compute: (i: ChairInRoom & RoomHanded & { readonly where: string; readonly reach: Interval }): Outcome => {
    const room = roomOf(i);
    if (room.fault) return noRoom;
    const chair = chairInRoom(i, room);
    if (!chair) return beyondSquare;
    let worst: { value: Interval; place: Place } | undefined;
    for (const place of i.where.split(" ") as Place[]) {
      const found = standingPlace(room, chair.footprint, place, chair.hip.nominal, i.reach.nominal);
      const value = found?.across ?? { low: 0, nominal: 0, high: 0 };
      if (!worst || value.nominal < worst.value.nominal) worst = { value, place };
    }
    if (!worst) return noRoom;
    return {
      value: worst.value,
      choice: words[worst.place],
      assumed: i.bag.assumed(chair.uses),
      terms: i.bag.terms(chair.uses),
    };
  },
});
