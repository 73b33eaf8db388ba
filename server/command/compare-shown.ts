/** The result of `compare`, for people and for programs. */
import type { SetChange } from "../../rules/engine/compare.js";
import type { Outcome } from "../../rules/engine/compare-verdicts.js";
import type { LoadedSet } from "../workspace/rule-sets.js";
import type { Compared, ComparedPlan } from "./compared.js";
import { capital } from "../../language/text/capital.js";
import { counted, entry, heading, type Terminal } from "./terminal.js";

export function comparedJson({ on, before, after, changes, plans }: Compared): string {
  const set = ({ name, version, hash }: LoadedSet): object => ({ name, version, hash });
  const body = {
    format: 1,
    on,
    before: set(before),
    after: set(after),
    changes: changes.map((c) => ({
      what: c.what,
      name: c.name,
      title: c.title,
      is: c.is,
      reasons: c.reasons,
      parts: c.parts.map((p) => ({ part: p.part, before: p.before ?? null, after: p.after ?? null })),
    })),
    plans: plans.map((p) => ({
      path: p.shown,
      same: p.same,
      why: p.why ?? null,
      verdicts: p.verdicts.map((v) => ({ ...v, before: v.before ?? null, after: v.after ?? null })),
      transfers: p.transfers.map((t) => ({ ...t, before: t.before ?? null, after: t.after ?? null })),
      said: p.said,
    })),
  };
  return `${JSON.stringify(body, undefined, 2)}\n`;
}

export function comparedText(c: Compared, t: Terminal): string {
  const called = (s: LoadedSet): string => `${s.name} ${s.version}`;
  const parts = [heading(t, `${called(c.before)} beside ${called(c.after)}`)];
  if (c.changes.length === 0) parts.push("The two say the same.");
  else
    for (const what of ["rule", "limit", "default", "source"] as const) {
      const of = c.changes.filter((x) => x.what === what);
      if (of.length > 0)
        parts.push([t.strong(`${capital(what)}s`), ...of.map((x) => changeText(x, t))].join("\n"));
    }
  if (c.plans.length > 0) {
    const others = c.plans.filter((p) => !p.same).length;
    const outcome =
      others === 0
        ? `${capital(counted(c.plans.length, "plan"))}: every one gets the same verdicts by both.`
        : `${others} of ${counted(c.plans.length, "plan")} ${others === 1 ? "gets" : "get"} other verdicts, or cannot be judged by both.`;
    parts.push([t.strong("Plans"), outcome].join("\n"));
    for (const p of c.plans) if (!p.same) parts.push(planText(p, t));
  }
  return `${parts.join("\n\n")}\n`;
}

function changeText(c: SetChange, t: Terminal): string {
  const lines = [entry(t, c.is, `${c.name}: ${c.title}`, t.strong)];
  for (const r of c.reasons) lines.push(entry(t, "reason", r));
  for (const p of c.parts) {
    const [part] = p.part.split(": ");
    if (p.before !== undefined) lines.push(entry(t, "was", `${labelled(part!, p.part)}${p.before}`));
    if (p.after !== undefined) lines.push(entry(t, "is", `${labelled(part!, p.part)}${p.after}`));
  }
  return lines.join("\n");
}

const labelled = (part: string, whole: string): string =>
  whole.startsWith("band ") ? `${whole.slice(5)}: ` : `${part}: `;

function planText(p: ComparedPlan, t: Terminal): string {
  const lines = [t.strong(p.shown)];
  if (p.why !== undefined) lines.push(entry(t, "", `It cannot be judged by both. ${p.why}`));
  for (const v of p.verdicts)
    lines.push(
      entry(t, "verdict", `${v.rule}, ${v.subject}: ${outcomeText(v.before)}, then ${outcomeText(v.after)}.`),
    );
  for (const x of p.transfers)
    lines.push(entry(t, "transfer", `${x.name}: ${clearedText(x.before)}, then ${clearedText(x.after)}.`));
  for (const m of p.said.before) lines.push(entry(t, "no longer", m));
  for (const m of p.said.after) lines.push(entry(t, "new", m));
  return lines.join("\n");
}

function outcomeText(o: Outcome): string {
  if (!o) return "not judged";
  const { best, worst } = o.levels;
  const levels = best === worst ? worst : `${best} to ${worst}`;
  return {
    holds: "holds",
    fails: levels,
    unsettled: `not settled (${levels})`,
    unknown: `not known (${levels})`,
    "not-applicable": "does not apply",
  }[o.verdict];
}

const clearedText = (c: boolean | undefined): string =>
  c === undefined ? "not there" : c ? "cleared" : "not cleared";
