/** The client's weight: what a mass presses with, shown in the unit of force that goes with the unit of the mass. */
import { scale } from "../../language/quantity/interval.js";
import type { Of } from "../quantity.js";
import type { Scene } from "../scene.js";
import type { Computed } from "../types.js";
import { absent } from "./inputs.js";

/** Standard gravity, m/s2. */
export const gravity = 9.80665;

export const clientMass = (s: Scene, of: Of): Computed =>
  s.client
    ? of.written(s.client, "mass", "the client's mass")
    : absent(undefined, "the client's mass", "mass");

const weights = new WeakMap<Computed, Computed>();

/** One weight per mass, so that what is worked out from it stays good while the mass does. */
export function clientWeight(s: Scene, of: Of): Computed {
  const mass = clientMass(s, of);
  if (!mass.value) return mass;
  let found = weights.get(mass);
  if (!found) {
    const value = scale(mass.value, gravity);
    const unit = { unit: mass.unit.unit === "kg" ? "N" : "lbf" };
    const from = mass.trace[0]!;
    found = {
      ...mass,
      name: "the client's weight",
      dimension: "force",
      value,
      unit,
      trace: [
        {
          label: "the client's weight",
          value,
          dimension: "force",
          unit,
          // Read when it is shown: lines may have moved although the mass is the same.
          get place() {
            return from.place;
          },
        } as Computed["trace"][number],
      ],
    };
    weights.set(mass, found);
  }
  return found;
}
