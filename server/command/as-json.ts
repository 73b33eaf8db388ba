/** The result of `check` for programs. SI units; null stands for an unbounded end; fields may be added, none is taken away. */
import { siUnits } from "../../language/model/export-values.js";
import type { Dimension } from "../../language/quantity/types.js";
import type { Interval } from "../../language/quantity/interval.js";
import type { MeasureNext } from "../../rules/engine/measure-next.js";
import type { Finding } from "../../rules/types.js";
import { located, type Range, type Reported } from "../workspace/reported.js";
import { measureNextOf } from "../workspace/measuring.js";
import type { Checked, CheckedFile } from "./checked.js";
import { overlaysJson } from "./policy.js";

export interface JsonInterval {
  readonly low: number | null;
  readonly nominal: number | null;
  readonly high: number | null;
  readonly unit: string;
}

/** Twelve digits: more than any tape gives, few enough that every machine prints the same. */
const rounded = (x: number, times: number): number | null =>
  Number.isFinite(x) ? Number((x * times).toPrecision(12)) : null;

export function interval(i: Interval, dimension: Dimension): JsonInterval {
  const { unit, times } = siUnits[dimension];
  return {
    low: rounded(i.low, times),
    nominal: rounded(i.nominal, times),
    high: rounded(i.high, times),
    unit,
  };
}

export function asJson(checked: Checked): string {
  return `${JSON.stringify({ format: 1, on: checked.on, files: checked.files.map((f) => fileJson(f, checked)) }, undefined, 2)}\n`;
}

function fileJson({ shown, snapshot }: CheckedFile, checked: Checked): object {
  const { ruleSet, result } = snapshot;
  return {
    path: shown,
    ruleSet: ruleSet?.set
      ? {
          name: ruleSet.name,
          version: ruleSet.version,
          hash: ruleSet.hash,
          overlays: overlaysJson(ruleSet),
          newer: checked.newerThan(ruleSet) ?? null,
        }
      : null,
    findings: snapshot.reported.map((r) => findingJson(r, checked, snapshot)),
    verdicts: (result?.verdicts ?? [])
      .filter((v) => v.verdict !== "not-applicable")
      .map((v) => ({ rule: v.rule, subject: v.subject, verdict: v.verdict, levels: v.levels })),
    transfers: (result?.transfers ?? []).map((t) => ({ name: t.name, cleared: t.cleared, left: t.left })),
    quantities: (result?.quantities ?? []).flatMap(({ subject, quantity: q }) =>
      q.value
        ? [
            {
              name: q.name,
              subject,
              ...interval(q.value, q.dimension),
              ...(q.choice !== undefined && { choice: q.choice }),
            },
          ]
        : [],
    ),
    measureNext: measureNextOf(snapshot).map((m) => measureJson(m, checked, snapshot)),
  };
}

function measureJson(m: MeasureNext, checked: Checked, { household, path }: CheckedFile["snapshot"]): object {
  const at = m.place && located(household, m.place);
  return {
    what: m.what,
    state: m.state,
    kind: m.kind ?? null,
    thing: m.thing ?? null,
    block: m.block ?? null,
    key: m.key ?? null,
    how: m.how ?? null,
    ...(at && at.path !== path && { path: checked.shownPath(at.path) }),
    range: at?.range ?? null,
    settles: m.settles,
    settlesAtMost: m.settlesAtMost,
    rules: m.rules,
  };
}

function findingJson(r: Reported, checked: Checked, snapshot: CheckedFile["snapshot"]): object {
  const f = r.finding;
  return {
    rule: r.rule,
    level: r.level,
    verdict: r.verdict,
    levels: r.levels,
    subject: r.subject,
    ...(r.path !== snapshot.path && { path: checked.shownPath(r.path) }),
    range: r.range,
    message: r.message,
    value: f?.value ? interval(f.value, f.value.dimension) : null,
    limit: f?.limit ? { name: f.limit.name, ...interval(f.limit, f.limit.dimension) } : null,
    because: f?.because ?? null,
    basis: [...new Set((f?.bases ?? []).map((b) => b.basis))],
    sources: sourcesOf(f),
    related: relatedOf(r, checked, snapshot),
    missing: (f?.missing ?? []).map((m) => m.what),
    remedies: [...(f?.remedies ?? []), ...(r.problem?.fixes ?? [])].map(({ title }) => ({ title })),
    cautions: f?.cautions ?? [],
    accepted: f?.accepted
      ? {
          because: f.accepted.because,
          until: f.accepted.until ?? null,
          approvedBy: f.accepted.approvedBy ?? null,
        }
      : null,
  };
}

const sourcesOf = (f: Finding | undefined): object[] =>
  (f?.bases ?? []).flatMap(({ citation: c }) =>
    c ? [{ id: c.id, at: c.at, says: c.says, takes: c.takes }] : [],
  );

/** Related places of a finding, with their files. */
export function relatedOf(
  r: Reported,
  checked: Checked,
  snapshot: CheckedFile["snapshot"],
): { path: string; range: Range; message: string }[] {
  return (r.finding?.related ?? []).map((p) => {
    const at = located(snapshot.household, p.place);
    return { path: checked.shownPath(at.path), range: at.range, message: p.message };
  });
}
