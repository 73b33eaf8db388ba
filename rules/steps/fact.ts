/** What a fact of steps is, and how most of them are read. */
import type { Step } from "../../language/vocabulary/verbs.js";
import type { Side, StepSetup } from "./setup.js";
import { stateChoices, type State } from "./state.js";

type Read = (state: State, setup: StepSetup, step: Step | undefined) => string | undefined;

export interface StepFact {
  readonly name: string;
  /** Every answer it can give; undefined where it is a text. An unknown fact gives undefined instead of an answer. */
  readonly choices: readonly string[] | undefined;
  readonly says: string;
  readonly read: Read;
}

const known = (choice: string): string | undefined => (choice === "unknown" ? undefined : choice);

/** A fact that is one part of the state. */
export function fact(name: string, field: keyof State, says: string): StepFact {
  const choices = stateChoices[field].filter((c: string) => c !== "unknown");
  return { name, choices, says, read: (s) => known(s[field]) };
}

/** Both sides alike answer the question even where nobody said on which side the other surface lies. */
export const bySide = <T extends string | undefined>(
  side: Side | undefined,
  of: (side: Side) => T,
): T | undefined => (side ? of(side) : of("left") === of("right") ? of("left") : undefined);
