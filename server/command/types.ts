/** What a command gets from its surroundings, so that tests can give it others. */
import type { Command } from "commander";
import type { Terminal } from "./terminal.js";

export interface Surroundings {
  readonly cwd: string;
  readonly env: NodeJS.ProcessEnv;
  readonly terminal: Terminal;
  /** ISO 8601; the clock's day. */
  today(): string;
  out(text: string): void;
  /** What stops the command from being useful, for people. */
  say(text: string): void;
  exitCode(code: number): void;
}

/** One command: declares itself on the program. */
export type DeclareCommand = (program: Command, around: Surroundings) => void;
