/** Facts of steps on the other surface: its kind, arms, water, rim and car, and on clothing. */
import { bySide, fact, type StepFact } from "./fact.js";
import { hasRim, isCar, mayHaveArms, otherSide, surfaceSideOf, type Side, type StepSetup } from "./setup.js";
import type { State } from "./state.js";

/** An arm that nobody wrote about may not be there: unknown until it was taken away. */
const arm = (s: State, setup: StepSetup, side: Side): string | undefined => {
  const kind = setup.surfaceArms?.[side];
  if (kind === "none" || (kind === undefined && !mayHaveArms(setup))) return "none";
  const is = side === "left" ? s.surfaceArmLeft : s.surfaceArmRight;
  return is === "away" || kind !== undefined ? is : undefined;
};
const farSide = (setup: StepSetup): Side | undefined => {
  const near = surfaceSideOf(setup);
  return near && otherSide(near);
};
const legs = (s: State): string => (s.legLeft === s.legRight ? s.legLeft : "astride");
const ifCar = (name: string, field: "door" | "carSeat" | "backrest", says: string): StepFact => {
  const { choices, read } = fact(name, field, says);
  return {
    name,
    choices: ["none", ...choices!],
    says,
    read: (s, setup, step) => (isCar(setup) ? read(s, setup, step) : "none"),
  };
};
/** Nobody said whether it is wet: unknown until it was dried. */
const wet = (name: string, field: "surfaceWet" | "skin", says: string): StepFact => ({
  ...fact(name, field, says),
  read: (s, setup) => (s[field] === "wet" && setup.wet === undefined ? undefined : s[field]),
});

export const surfaceFacts: readonly StepFact[] = [
  {
    name: "step.surface-kind",
    choices: [
      "bed",
      "toilet",
      "commode",
      "shower-seat",
      "tub",
      "tub-bench",
      "armchair",
      "car-seat",
      "floor-place",
    ],
    says: "the kind of the other surface",
    read: (_, setup) => setup.surface.kind,
  },
  {
    name: "step.surface-arm-near",
    choices: ["none", "in-place", "away"],
    says: "the arm of the other surface on the side of the chair",
    read: (s, setup) => bySide(surfaceSideOf(setup), (side) => arm(s, setup, side)),
  },
  {
    name: "step.surface-arm-far",
    choices: ["none", "in-place", "away"],
    says: "the arm of the other surface on the other side",
    read: (s, setup) => bySide(farSide(setup), (side) => arm(s, setup, side)),
  },
  wet("step.surface-wet", "surfaceWet", "whether the other surface is wet"),
  wet("step.skin", "skin", "whether the skin is wet"),
  fact("step.clothing", "clothing", "clothing up or down; `down` leaves skin bare where the client sits"),
  fact("step.cover", "cover", "whether a towel or cloth covers the board"),
  {
    name: "step.rim",
    choices: ["yes", "no"],
    says: "whether the legs are lifted over a rim or sill at the other surface",
    read: (_, setup) => (hasRim(setup) ? "yes" : "no"),
  },
  {
    name: "step.legs",
    choices: ["out", "astride", "in"],
    says: "the legs and the rim of the tub or the sill of the car; `astride` is one in and one out",
    read: (s) => legs(s),
  },
  fact("step.along", "along", "on which part of a bench over the rim the client sits"),
  ifCar("step.door", "door", "the car door; `none` where there is no car"),
  ifCar("step.car-seat", "carSeat", "whether the car seat was pushed back; `none` where there is no car"),
  ifCar("step.backrest", "backrest", "the backrest of the car seat; `none` where there is no car"),
  fact("step.head", "head", "whether the head is brought down under the roof of the car"),
  fact("step.chair-castors", "chairCastors", "whether the castors of the chair point forward"),
];
