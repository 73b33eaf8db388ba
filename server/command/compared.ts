/** What `compare` found, before it is printed in one form or another. */
import path from "node:path";
import { compareSets, type SetChange } from "../../rules/engine/compare.js";
import {
  transferChanges,
  verdictChanges,
  type TransferChange,
  type VerdictChange,
} from "../../rules/engine/compare-verdicts.js";
import type { CheckResult } from "../../rules/engine/check.js";
import { findPlans } from "../workspace/files.js";
import { usualSet, type LoadedSet } from "../workspace/rule-sets.js";
import type { Workspace } from "../workspace/snapshot.js";
import { workspaceAt } from "./checked.js";
import { Stop } from "./stop.js";

export interface ComparedPlan {
  /** Relative to the folder of the call, with slashes. */
  readonly shown: string;
  readonly verdicts: readonly VerdictChange[];
  readonly transfers: readonly TransferChange[];
  /** What the two say otherwise of the acceptances and expected verdicts of the plan. */
  readonly said: { readonly before: readonly string[]; readonly after: readonly string[] };
  /** Why one of the two could not judge it. */
  readonly why?: string;
  readonly same: boolean;
}

export interface Compared {
  readonly on: string;
  readonly before: LoadedSet;
  readonly after: LoadedSet;
  readonly changes: readonly SetChange[];
  readonly plans: readonly ComparedPlan[];
}

export interface CompareCall {
  readonly before: string;
  readonly after: string;
  readonly paths: readonly string[];
  readonly cwd: string;
  readonly on: string;
}

/** Throws `Stop` where there is nothing to compare. */
export function comparison({ before, after, paths, cwd, on }: CompareCall): Compared {
  const workspace = workspaceAt(cwd, on);
  const [a, b] = [setCalled(before, workspace, cwd), setCalled(after, workspace, cwd)];
  const { files, missing } = findPlans(paths, cwd);
  if (missing.length > 0)
    throw new Stop(
      `There is no file or folder ${missing.map((m) => `"${m}"`).join(", ")}. Nothing was compared.`,
    );
  if (paths.length > 0 && files.length === 0)
    throw new Stop(
      `There is no plan (a file ending in .span) in ${paths.map((p) => `"${p}"`).join(", ")}. Nothing was compared.`,
    );
  return {
    on,
    before: a,
    after: b,
    changes: compareSets(a.set!, b.set!),
    plans: files.map((f) => planCompared(f, a, b, workspace, cwd)),
  };
}

/** `home-transfer/2026.1`, or the version alone. */
function setCalled(called: string, workspace: Workspace, cwd: string): LoadedSet {
  const root = workspace.rootOf(path.join(cwd, "any"));
  const [name, version] =
    called.includes("/") || called.includes(" ") ? called.split(/[/ ]/) : [usualSet, called];
  const loaded = workspace.ruleSets.get(name ?? "", version ?? "", root);
  if (!loaded) {
    const known = workspace.ruleSets.list(root).map((s) => `${s.name}/${s.version}`);
    throw new Stop(`There is no rule set "${called}". There is: ${known.join(", ") || "none"}.`);
  }
  if (!loaded.set)
    throw new Stop(
      `The rule set ${loaded.name} ${loaded.version} cannot be used; spanwise rules says why. Nothing was compared.`,
    );
  return loaded;
}

function planCompared(
  file: string,
  a: LoadedSet,
  b: LoadedSet,
  workspace: Workspace,
  cwd: string,
): ComparedPlan {
  const shown = path.relative(cwd, file).split(path.sep).join("/");
  const nothing = { verdicts: [], transfers: [], said: { before: [], after: [] } };
  const [before, after] = [a, b].map((s) => ({ set: s, by: workspace.judgedBy(file, s.name, s.version) }));
  for (const { set, by } of [before!, after!])
    if (!by.result)
      return {
        shown,
        ...nothing,
        same: false,
        why: `${set.name} ${set.version}: ${by.why ?? "it was not judged"}`,
      };
  const [old, now] = [before!.by.result!, after!.by.result!];
  const [saidBefore, saidAfter] = [ofForm(old), ofForm(now)];
  const verdicts = verdictChanges(old, now);
  const transfers = transferChanges(old, now);
  const said = {
    before: saidBefore.filter((m) => !saidAfter.includes(m)),
    after: saidAfter.filter((m) => !saidBefore.includes(m)),
  };
  const same = verdicts.length + transfers.length + said.before.length + said.after.length === 0;
  return { shown, verdicts, transfers, said, same };
}

const ofForm = (r: CheckResult): string[] =>
  r.findings.flatMap((f) => (f.rule.startsWith("form/") ? [f.message] : []));
