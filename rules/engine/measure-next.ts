/**
 * What to measure next: of everything that is missing, assumed or not known exactly enough, which one measurement would settle most
 * judgements. Each is tried on the household: the plan is judged again with the values that it may come to.
 */
import type { Household } from "../../language/model/household.js";
import { measuringRows } from "../../language/vocabulary/exports/measuring-rows.js";
import type { Place } from "../../language/text/types.js";
import type { QuantityRule } from "../quantity.js";
import type { Finding, Missing } from "../types.js";
import { createChecker, type CheckResult } from "./check.js";
import type { FactTable } from "./fact-table.js";
import { measurableAt, measuredAs, readWithCare, triesFor, type Measurable } from "./measure-next-tries.js";
import type { RuleSet } from "./types.js";

export interface MeasureNext {
  /** In words: `seat loaded of chair`. */
  readonly what: string;
  /** `missing`: nothing is written, or `unknown`; `assumed`: the rule set's value stands in; `inexact`: the doubt is too wide. */
  readonly state: "missing" | "assumed" | "inexact";
  /** Kind and name of the thing, the block inside it, and the key, where it is one of the vocabulary. */
  readonly kind?: string;
  readonly thing?: string;
  readonly block?: string;
  readonly key?: string;
  /** How to measure it in a home; for what is no measurement, what it is. */
  readonly how?: string;
  /** Where it is or would be written. */
  readonly place?: Place;
  /** Judgements that would be settled whichever of the tried values came out. */
  readonly settles: number;
  /** Judgements that would be settled by the luckiest of the tried values. */
  readonly settlesAtMost: number;
  /** The rules that wait for it, or would be settled, each once. */
  readonly rules: readonly string[];
}

export interface Measuring {
  readonly household: Household;
  readonly set: RuleSet;
  readonly quantities: readonly QuantityRule[];
  readonly table: FactTable;
  readonly today: string;
  /** The check of this household; what is open in it is what measuring may settle. */
  readonly result: CheckResult;
}

/** So many are tried, those first that most judgements wait for; a plan of which nothing is known yet has hundreds. */
const mostTried = 12;

interface Candidate {
  readonly what: string;
  readonly state: MeasureNext["state"];
  readonly at?: Measurable;
  readonly place?: Place;
  /** Findings that wait for it. */
  readonly waiting: Set<Finding>;
}

/**
 * What was never measured before what was: nearly every judgement rests on the heights and widths that are written, and reading
 * those again would leave no try for the one measurement that a judgement waits for.
 */
const firstToTry = (a: Candidate, b: Candidate): number =>
  Number(a.state === "inexact") - Number(b.state === "inexact") || b.waiting.size - a.waiting.size;

const keyOf = (v: { readonly rule: string; readonly subject: string }): string => `${v.rule}\n${v.subject}`;

/** The most useful first. Empty where nothing is open. */
export function measureNext(measuring: Measuring): readonly MeasureNext[] {
  const open = measuring.result.findings.filter((f) => f.verdict === "unknown" || f.verdict === "unsettled");
  if (open.length === 0) return [];
  const candidates = [...candidatesFor(open, measuring)].sort(firstToTry);
  const trial = new Trial(measuring, open);
  return (
    candidates
      .map((c, i) => (i < mostTried ? trial.of(c) : untried(c)))
      // Reading again what is known already is only worth it where that settles something.
      .filter((m) => m.state === "missing" || m.settlesAtMost > 0)
      .map((m, i) => ({ m, i }))
      .sort(
        (a, b) =>
          b.m.settles - a.m.settles ||
          b.m.settlesAtMost - a.m.settlesAtMost ||
          b.m.rules.length - a.m.rules.length ||
          a.i - b.i,
      )
      .map(({ m }) => m)
  );
}

/** Everything that open findings wait for, each once. */
function candidatesFor(open: readonly Finding[], { household, result, set }: Measuring): Iterable<Candidate> {
  const found = new Map<string, Candidate>();
  const add = (key: string, finding: Finding, make: () => Omit<Candidate, "waiting">): void => {
    let c = found.get(key);
    if (!c) found.set(key, (c = { ...make(), waiting: new Set() }));
    c.waiting.add(finding);
  };
  const standing = standIns(household);
  const assumed = assumedBy(result, set);
  const addMissing = (m: Missing, finding: Finding): void => {
    const at = m.place && m.key !== undefined ? measurableAt(household, m.place, m.key) : undefined;
    const { what, place } = m;
    add(at ? idOf(at) : what, finding, () => ({
      what: at ? inWords(at) : what,
      state: "missing",
      ...(at && { at }),
      ...(place && { place }),
    }));
  };
  for (const f of open) {
    for (const m of f.missing) addMissing(m, f);
    if (f.verdict !== "unsettled") continue;
    for (const name of assumed(f))
      for (const at of standing.get(name) ?? [])
        add(idOf(at), f, () => ({
          what: inWords(at),
          state: "assumed",
          at,
          place: at.holder.placeOf(at.key),
        }));
    for (const place of [f.place, ...f.related.map((r) => r.place)]) {
      const at = measurableAt(household, place);
      if (at && readWithCare(at.holder.values[at.key]))
        add(idOf(at), f, () => ({ what: inWords(at), state: "inexact", at, place }));
    }
  }
  return found.values();
}

/** The keys for which the rule set's values stand in, by the name of the default. */
function standIns(household: Household): ReadonlyMap<string, readonly Measurable[]> {
  const found = new Map<string, Measurable[]>();
  for (const row of measuringRows(household)) {
    if (row.default === undefined) continue;
    const at = measurableAt(household, row.place, row.key);
    if (at) found.set(row.default, [...(found.get(row.default) ?? []), at]);
  }
  return found;
}

/** Which defaults that a tape can settle a finding rests on. */
function assumedBy(result: CheckResult, set: RuleSet): (f: Finding) => ReadonlySet<string> {
  const rules = new Map(set.rules.map((r) => [r.id, JSON.stringify([r.when, r.judged])]));
  return (f) => {
    const text = rules.get(f.rule) ?? "";
    const transfer = f.subject.split(" ")[0];
    const read = result.quantities.filter(
      ({ subject, quantity: q }) => subject === transfer && text.includes(`"name":"${q.name}"`),
    );
    return new Set(read.flatMap(({ quantity: q }) => q.assumed.flatMap((a) => (a.tapeable ? [a.name] : []))));
  };
}

const idOf = (m: Measurable): string =>
  `${m.owner.kind} ${m.owner.name} ${m.holder === m.owner ? "" : `${m.holder.kind} ${m.holder.name}`} ${m.key}`;

function inWords({ owner, holder, key }: Measurable): string {
  const words = (s: string): string => s.replaceAll("-", " ");
  if (holder === owner) return `${words(key)} of ${owner.name}`;
  const named = holder.name === holder.kind || holder.name === "" ? "" : ` ${holder.name}`;
  return `${words(key)} of the ${words(holder.kind)}${named} of ${owner.name}`;
}

function untried(c: Candidate): MeasureNext {
  const { at } = c;
  return {
    what: c.what,
    state: c.state,
    ...(at && {
      kind: at.owner.kind,
      thing: at.owner.name,
      key: at.key,
      ...(at.holder !== at.owner && { block: at.holder.kind }),
      how: at.spec.measure ?? at.spec.help,
    }),
    ...(c.place && { place: c.place }),
    settles: 0,
    settlesAtMost: 0,
    rules: [...new Set([...c.waiting].map((f) => f.rule))],
  };
}

/** Judges the household again and again; what a try does not touch is not worked out anew. */
class Trial {
  private readonly checker;
  private readonly open: ReadonlySet<string>;

  constructor(
    private readonly measuring: Measuring,
    open: readonly Finding[],
  ) {
    const { set, quantities, table } = measuring;
    const asked = new Set(open.map((f) => f.rule));
    // Rules of which nothing is open cannot be settled; nothing is worked out for them.
    const rules = set.rules.filter((r) => asked.has(r.id));
    this.checker = createChecker({ ...set, rules }, quantities, table);
    this.open = new Set(open.map(keyOf));
  }

  of(c: Candidate): MeasureNext {
    const base = untried(c);
    const { at } = c;
    if (!at) return base;
    const care = c.state === "inexact" ? readWithCare(at.holder.values[at.key]) : undefined;
    const values = c.state === "inexact" ? (care ? [care] : []) : triesFor(at, this.measuring.set);
    if (values.length === 0) return base;
    const settled = values.map((v) => this.settledBy(measuredAs(this.measuring.household, at, v)));
    const counts = settled.map((s) => s.length);
    const rules = new Set([...base.rules, ...settled.flatMap((s) => s.map((k) => k.split("\n")[0]!))]);
    return { ...base, settles: Math.min(...counts), settlesAtMost: Math.max(...counts), rules: [...rules] };
  }

  /** Open judgements that are settled in this household. What is slow is left out, so that it counts as open still. */
  private settledBy(household: Household): readonly string[] {
    const verdicts = this.checker.verdicts(household, this.measuring.today);
    const settled = new Set(
      verdicts.filter((v) => v.verdict !== "unknown" && v.verdict !== "unsettled").map(keyOf),
    );
    return [...this.open].filter((k) => settled.has(k));
  }
}
