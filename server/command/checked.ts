/** What `check` found, before it is printed in one form or another. */
import path from "node:path";
import type { Level } from "../../rules/types.js";
import { findPlans, repositoryOf } from "../workspace/files.js";
import { atLeast, type Reported } from "../workspace/reported.js";
import { byVersion, type LoadedSet } from "../workspace/rule-sets.js";
import { Workspace, type Snapshot } from "../workspace/snapshot.js";
import { Stop } from "./stop.js";

export interface CheckedFile {
  /** Relative to the folder of the call, with slashes. */
  readonly shown: string;
  readonly snapshot: Snapshot;
}

export interface Checked {
  /** ISO 8601. */
  readonly on: string;
  readonly files: readonly CheckedFile[];
  /** As findings of other files are shown. */
  shownPath(file: string): string;
  /** The newest version of a rule set, where there is a newer one than it. */
  newerThan(set: LoadedSet): string | undefined;
}

export interface CheckCall {
  readonly paths: readonly string[];
  readonly cwd: string;
  readonly on: string;
}

/** Finds, reads and judges the plans that the paths name. Throws `Stop` where there is nothing to check. */
export function checkPlans({ paths, cwd, on }: CheckCall): Checked {
  const given = paths.length > 0 ? paths : ["."];
  const { files, missing } = findPlans(given, cwd);
  if (missing.length > 0)
    throw new Stop(
      `There is no file or folder ${missing.map((m) => `"${m}"`).join(", ")}. Nothing was checked.`,
    );
  if (files.length === 0)
    throw new Stop(
      `There is no plan (a file ending in .span) in ${given.map((g) => `"${g}"`).join(", ")}. Nothing was checked.`,
    );
  const workspace = workspaceAt(cwd, on);
  const shownPath = (file: string): string => slashed(path.relative(cwd, file));
  return {
    on,
    files: files.map((f) => ({ shown: shownPath(f), snapshot: workspace.snapshot(f) })),
    shownPath,
    newerThan: ({ name, version }) => {
      const newest = workspace.ruleSets.newest(name, workspace.rootOf(path.join(cwd, "any")))?.version;
      return newest !== undefined && byVersion(newest, version) > 0 ? newest : undefined;
    },
  };
}

/** The workspace of a call: the repository of plans in which it was made, or the folder. */
export const workspaceAt = (cwd: string, on: string): Workspace =>
  new Workspace({ roots: [repositoryOf(cwd) ?? cwd], today: () => on });

const slashed = (p: string): string => (path.sep === "/" ? p : p.replaceAll(path.sep, "/"));

/** Whether a rule set was applied to something that was written. An empty file is no plan. */
export const wasChecked = ({ result, tree }: Snapshot): boolean =>
  result !== undefined && tree.entries.length > 0;

/** An accepted finding is settled by whoever accepted it, except a stop: that is never settled by a signature. */
export const stands = (r: Reported): boolean => !r.finding?.accepted || r.levels.worst === "stop";

/** 0: nothing at or above the level and every transfer cleared; 1: not so; 2: nothing could be checked. */
export function exitCodeOf(checked: Checked, level: Level): 0 | 1 | 2 {
  const { files } = checked;
  if (!files.some((f) => wasChecked(f.snapshot))) return 2;
  const good = files.every(
    ({ snapshot }) =>
      wasChecked(snapshot) &&
      snapshot.result!.transfers.every((t) => t.cleared) &&
      // An expected verdict is a test of the plan: whatever level counts, one that is not met has failed.
      !snapshot.reported.some((r) => r.rule.startsWith("form/expectation-")) &&
      !snapshot.reported.some((r) => atLeast(r.level, level) && stands(r)),
  );
  return good ? 0 : 1;
}
