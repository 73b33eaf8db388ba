/** A rule set under a policy: changed as the policy says, verified like any other, or refused with every reason at its line. */
import { showValue } from "../../language/quantity/show.js";
import { nearest } from "../../language/text/nearest.js";
import type { BasisNote, Grade } from "../types.js";
import { resolveBands } from "./read-bands.js";
import { problemAt } from "./read.js";
import { looserBy, milderChoice, milderSomewhere } from "./overlay-compare.js";
import { isPolicy, readPolicy } from "./overlay-read.js";
import type {
  OverlaidSet,
  Overlay,
  OverlayChange,
  Policy,
  PolicyLimit,
  PolicyRule,
  Reasons,
} from "./overlay-types.js";
import { bandsUnder, levelled, usesLimit } from "./overlay-rules.js";
import type { LimitValue, Rule, RuleFile, RulePlace, RuleSet, SetProblem } from "./types.js";
import { verify, type Surroundings } from "./verify.js";

export { isPolicy };

/**
 * `base` must have been verified. `today` decides whether what the policy allows has ended. The policy is used whole or not at
 * all; `overlay` says what it would change as far as it could be read.
 */
export function overlaid(base: RuleSet, file: RuleFile, today: string, around: Surroundings): OverlaidSet {
  return new Overlaying(base, readPolicy(file), today, around).result(file);
}

class Overlaying {
  private readonly problems: SetProblem[];
  private readonly changes: OverlayChange[] = [];
  private readonly limits: Map<string, LimitValue>;
  private readonly rules: Map<string, Rule>;
  private readonly off = new Set<string>();

  constructor(
    private readonly base: RuleSet,
    private readonly policy: Policy,
    private readonly today: string,
    private readonly around: Surroundings,
  ) {
    this.problems = [...policy.problems];
    this.limits = new Map(base.limits);
    this.rules = new Map(base.rules.map((r) => [r.id, r]));
  }

  result(file: RuleFile): OverlaidSet {
    const { head, limits, rules } = this.policy;
    const { name, version } = this.base;
    if (!head) this.problems.push(...(this.problems.length > 0 ? [] : [noHead(file.path)]));
    else if (!head.for.some((s) => s.name === name && s.version === version))
      this.say(
        head.at,
        "rules/policy-for-another",
        `This policy is for ${head.for.map((s) => `${s.name} ${s.version}`).join(", ")}, not for ${name} ${version}.`,
      );
    for (const l of limits) this.limit(l);
    for (const r of rules) this.rule(r);
    const overlay = head && this.overlay(head, file.path);
    // What the policy says is only worth verifying where it could be read.
    const problems = this.problems.length > 0 ? this.problems : this.verified(file.path);
    const sorted = [...problems].sort((a, b) => a.line - b.line || a.start - b.start);
    if (sorted.length > 0 || !overlay) return { set: undefined, overlay, problems: sorted };
    return { set: this.combined(overlay), overlay, problems: [] };
  }

  private say(at: RulePlace, rule: string, message: string): void {
    this.problems.push(problemAt(at, rule, message));
  }

  private limit(l: PolicyLimit): void {
    const old = this.base.limits.get(l.name);
    if (!old) {
      this.unknown(l.at, "limit", l.name, this.base.limits.keys());
      return;
    }
    const bare = l.dimension === "number" && old.dimension === "ratio";
    if (l.dimension !== old.dimension && !bare) {
      this.say(
        l.at,
        "rules/dimension",
        `The limit ${l.name} is ${shown(old)}: this is another kind of quantity.`,
      );
      return;
    }
    const now: LimitValue = { ...old, interval: l.interval, unit: bare ? old.unit : l.unit };
    if (now.interval.nominal === old.interval.nominal) {
      this.say(
        l.at,
        "rules/policy-without-effect",
        `The limit ${l.name} is ${shown(old)} already: this changes nothing.`,
      );
      return;
    }
    const way = now.interval.nominal > old.interval.nominal ? "up" : "down";
    const using = this.base.rules.filter((r) => usesLimit(r, l.name));
    const limits = new Map([[l.name, now]]);
    const loosens = using.some((r) => {
      const bands = r.judged.is === "bands" ? r.judged.bands : [];
      return looserBy(r, l.name, way) || milderSomewhere(bands, bandsUnder(bands, this.base.limits, limits));
    });
    const text = `The limit ${l.name} (${lower(old.title)}) is ${shown(now)} in place of ${shown(old)}.`;
    const note = this.note(l, text);
    this.limits.set(l.name, { ...now, bases: [note, ...old.bases] });
    for (const r of using) this.change(r.id, (rule) => ({ ...rule, bases: [note, ...rule.bases] }));
    this.keep(l, { is: "limit", name: l.name, text, loosens, rules: using.map((r) => r.id) });
  }

  private rule(p: PolicyRule): void {
    const old = this.base.rules.find((r) => r.id === p.id);
    if (!old) {
      this.unknown(
        p.at,
        "rule",
        p.id,
        this.base.rules.map((r) => r.id),
      );
      return;
    }
    const rules = [p.id];
    if (p.off) {
      this.off.add(p.id);
      const text = `The rule ${p.id} (${lower(old.title)}) is switched off.`;
      this.keep(p, { is: "off", name: p.id, text, loosens: true, rules });
    }
    if (p.bands) this.bands(p, old, p.bands);
    for (const { from, to, at } of p.levels) {
      const now = levelled(this.rules.get(p.id)!, from, to);
      if (!now || from === to) {
        this.say(
          at,
          "rules/policy-without-effect",
          `The rule ${p.id} never says ${from}${from === to ? ` otherwise than ${to}` : ""}: this changes nothing.`,
        );
        continue;
      }
      const text = `The rule ${p.id} (${lower(old.title)}) says ${to} where it said ${from}.`;
      const note = this.note(p, text);
      this.rules.set(p.id, { ...now, bases: [note, ...now.bases] });
      this.keep(p, { is: "levels", name: p.id, text, loosens: below(to, from), rules });
    }
    const { examples } = p;
    if (examples) this.change(p.id, (rule) => ({ ...rule, examples }));
  }

  private bands(p: PolicyRule, old: Rule, bands: NonNullable<PolicyRule["bands"]>): void {
    const { judged } = old;
    if (judged.is !== "bands" || judged.choices.length > 0 !== bands.choices.length > 0) {
      this.say(
        bands.at,
        "rules/band",
        `The rule ${p.id} has no bands of this kind: it cannot be given these.`,
      );
      return;
    }
    const made = resolveBands(
      bands.bands,
      (name) => {
        const l = this.limits.get(name);
        return l && { value: l.interval.nominal, dimension: l.dimension, unit: l.unit };
      },
      (name, band) => this.unknown(band.at, "limit", name, this.base.limits.keys()),
    );
    const loosens = milderSomewhere(judged.bands, made) || milderChoice(judged.choices, bands.choices);
    const text = `The rule ${p.id} (${lower(old.title)}) has bands of this policy in place of its own.`;
    const note = this.note(p, text);
    this.change(p.id, (rule) => ({
      ...rule,
      bases: [note, ...rule.bases],
      judged: { ...judged, bands: made, choices: bands.choices, signed: judged.signed },
    }));
    this.keep(p, { is: "bands", name: p.id, text, loosens, rules: [p.id] });
  }

  private change(id: string, make: (rule: Rule) => Rule): void {
    this.rules.set(id, make(this.rules.get(id)!));
  }

  private note(reasons: Reasons, text: string): BasisNote {
    const { because, approvedBy, until } = reasons;
    const name = this.policy.head?.name ?? "";
    const more = [
      because && `Because: ${sentence(because)}`,
      approvedBy && `Approved by the ${approvedBy}.`,
      until && `Until ${until}.`,
    ].filter(Boolean);
    return { basis: "project-choice", text: [`The policy ${name} decides: ${text}`, ...more].join(" ") };
  }

  /** Takes a change up, and demands reasons where it asks for less. */
  private keep(p: PolicyLimit | PolicyRule, change: Omit<OverlayChange, keyof Reasons | "at">): void {
    const { because, approvedBy, until, at } = p;
    this.changes.push({
      ...change,
      ...(because !== undefined && { because }),
      ...(approvedBy !== undefined && { approvedBy }),
      ...(until !== undefined && { until }),
      at,
    });
    const lacking = [
      because === undefined && 'why (because "...")',
      approvedBy === undefined && 'the role of who answers for it (approved-by "...")',
      until === undefined && "until when (until and a date)",
    ].filter((x) => x !== false);
    if (change.loosens && lacking.length > 0)
      this.say(
        at,
        "rules/policy-loosens",
        `${change.text} That asks for less, or could. Add ${lacking.join(", ")}.`,
      );
    if (until !== undefined && until < this.today)
      this.say(at, "rules/policy-expired", `This ended on ${until}. Decide it anew, or take it out.`);
  }

  private unknown(at: RulePlace, what: string, name: string, known: Iterable<string>): void {
    const near = nearest(name, known);
    const { name: set, version } = this.base;
    this.say(
      at,
      "rules/unknown-name",
      `${set} ${version} has no ${what} called "${name}".${near ? ` Is "${near}" meant?` : ""}`,
    );
  }

  private rulesNow(): Rule[] {
    return this.base.rules.map((r) => {
      const now = this.rules.get(r.id)!;
      if (now.judged.is !== "bands") return now;
      return {
        ...now,
        judged: { ...now.judged, bands: bandsUnder(now.judged.bands, this.base.limits, this.limits) },
      };
    });
  }

  /** The set as changed, against every demand on a rule set; each reason is given at the line of the policy that brought it about. */
  private verified(path: string): SetProblem[] {
    const rules = this.rulesNow();
    const found = verify({ ...this.base, limits: this.limits, rules }, rules[0]?.at, this.around);
    return found.flatMap((p) => {
      if (p.path === path) return [p];
      // A limit that new bands no longer name is not a fault of the policy.
      if (p.rule === "rules/unused") return [];
      const rule = rules
        .filter((r) => r.at.path === p.path && r.at.line <= p.line)
        .reduce<Rule | undefined>((a, r) => (!a || r.at.line > a.at.line ? r : a), undefined);
      const cause = this.changes.find((c) => rule && c.rules.includes(rule.id)) ?? this.changes[0];
      if (!cause) return [p];
      const ofExample = p.rule.startsWith("rules/example");
      const quoted = rule?.examples.find(
        (e) => e.at.line + e.at.place.line === p.line && e.at.place.start === p.start,
      )?.text;
      const message = `${rule?.id ?? "The set"} under this policy: ${quoted === undefined ? "" : `${quoted}. `}${p.message}${
        ofExample && rule
          ? ` Show what the policy means by examples of its own: rule ${rule.id} { examples { ... } }.`
          : ""
      }`;
      return [problemAt(cause.at, p.rule, message)];
    });
  }

  private overlay(head: NonNullable<Policy["head"]>, path: string): Overlay {
    return {
      name: head.name,
      title: head.title,
      path,
      ...(head.by !== undefined && { by: head.by }),
      ...(head.issued !== undefined && { issued: head.issued }),
      changes: this.changes,
    };
  }

  private combined(overlay: Overlay): RuleSet {
    return {
      ...this.base,
      limits: this.limits,
      rules: this.rulesNow().filter((r) => !this.off.has(r.id)),
      overlays: [...(this.base.overlays ?? []), overlay],
    };
  }
}

const noHead = (path: string): SetProblem => ({
  path,
  line: 0,
  start: 0,
  end: 0,
  rule: "rules/missing",
  message: "This policy has no head: policy NAME { title ...; for home-transfer 2026.1 }.",
});

const order: readonly Grade[] = ["holds", "advice", "caution", "stop"];
const below = (a: Grade, b: Grade): boolean => order.indexOf(a) < order.indexOf(b);
const shown = (l: LimitValue): string => showValue(l.interval.nominal, l.dimension, l.unit);
const lower = (title: string): string => title.charAt(0).toLowerCase() + title.slice(1);
const sentence = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`);
