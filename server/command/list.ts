/** Every command, once, in the order in which help lists them. */
import { check } from "./check.js";
import { exportCommand } from "./export.js";
import { format } from "./format.js";
import { reason } from "./reason.js";
import { rules } from "./rules.js";
import { serve } from "./serve.js";
import type { DeclareCommand } from "./types.js";

export const commands: readonly DeclareCommand[] = [check, reason, rules, format, exportCommand, serve];
