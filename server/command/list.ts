/** Every command, once, in the order in which help lists them. */
import { book } from "./book.js";
import { check } from "./check.js";
import { compare } from "./compare.js";
import { exportCommand } from "./export.js";
import { format } from "./format.js";
import { lock } from "./lock.js";
import { reason } from "./reason.js";
import { rules } from "./rules.js";
import { serve } from "./serve.js";
import type { DeclareCommand } from "./types.js";

export const commands: readonly DeclareCommand[] = [
  check,
  reason,
  rules,
  compare,
  book,
  lock,
  format,
  exportCommand,
  serve,
];
