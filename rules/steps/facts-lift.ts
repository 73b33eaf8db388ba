/** Facts of steps on lift, sling, slide sheet and second helper. */
import { fact, type StepFact } from "./fact.js";

export const liftFacts: readonly StepFact[] = [
  fact("step.sling", "sling", "the sling; `attached` to the lift, `checked` once every loop was looked at"),
  fact("step.lift", "lift", "where the lift stands"),
  fact("step.base", "liftBase", "the legs of the lift"),
  fact("step.lift-castors", "liftCastors", "the castors of the lift"),
  fact(
    "step.lifted-checked",
    "liftedChecked",
    "whether the client was looked at again just clear of the surface",
  ),
  {
    name: "step.sheet",
    choices: ["none", "out", "in"],
    says: "the slide sheet; `none` where none is written",
    read: (s, setup) => (setup.sheet ? s.sheet : "none"),
  },
  fact("step.helper-two", "helperTwo", "where the second helper is"),
];
