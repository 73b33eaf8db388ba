/** Values of options that several commands share, read strictly. */
import { InvalidArgumentError, Option } from "commander";
import type { Surroundings } from "./types.js";

export function day(text: string): string {
  const date = /^\d{4}-\d{2}-\d{2}$/.test(text) ? new Date(`${text}T00:00:00Z`) : undefined;
  if (!date || Number.isNaN(date.getTime()) || date.toISOString().slice(0, 10) !== text)
    throw new InvalidArgumentError("It must be a day, written year-month-day, such as 2026-03-02.");
  return text;
}

export const onOption = (around: Surroundings): Option =>
  new Option("--on <date>", "judge as of this day (year-month-day)")
    .argParser(day)
    .default(undefined, around.today());
