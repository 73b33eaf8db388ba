/**
 * What a setup says about findings: which are knowingly accepted, and which verdicts are expected.
 *
 * An acceptance counts for a failed finding only; it needs where, until when and why, and for a `stop` by whom it was approved.
 * One that does not count, or is no longer needed, is a finding of its own.
 */
import type { Household, Said } from "../../language/model/household.js";
import type { Value } from "../../language/model/types.js";
import type { Finding, Level, Verdict } from "../types.js";
import { withAccepted } from "./findings.js";
import type { Subject } from "./subjects.js";
import type { RuleSet } from "./types.js";

export interface Judged {
  readonly finding: Finding;
  readonly subject: Subject;
  /** The message without what is said of doubts and assumptions. */
  readonly plain: string;
  /** The place of its rule among the rules of the set. */
  readonly order: number;
}

type Parts = { readonly [part: string]: Value | undefined };
const parts = (said: Said): Parts =>
  typeof said.value === "object" && said.value !== null && !Array.isArray(said.value)
    ? (said.value as Parts)
    : {};
const text = (v: Value | undefined): string | undefined =>
  typeof v === "string" && v.trim() !== "" ? v : undefined;

/** Whether `name` is the subject, its transfer, or a thing that plays a part in it. */
function standsAt(subject: Subject, name: string): boolean {
  if (subject.name.toLowerCase() === name || subject.thing?.name === name) return true;
  return ["room", "from", "to", "board", "belt", "helper", "lift", "client"].some(
    (role) => subject.facts.role(role)?.name === name,
  );
}

/** A finding about what the setup says of findings. */
export function formFinding(
  rule: string,
  level: Level,
  subject: string,
  said: Pick<Said, "place">,
  message: string,
  because: string,
): Finding {
  return {
    rule,
    subject,
    verdict: "fails",
    levels: { best: level, worst: level },
    place: said.place,
    message,
    because,
    value: undefined,
    limit: undefined,
    bases: [{ basis: "project-choice", text: because }],
    related: [],
    remedies: [],
    cautions: [],
    missing: [],
    accepted: undefined,
  };
}

const why =
  "An acceptance that does not count, or that nobody needs any more, must not stand there as if it did.";

/** Why there is no such rule: a policy switched it off, or nobody ever wrote it. */
function withoutRule(rule: string, set: RuleSet): string {
  const by = set.overlays?.find((o) => o.changes.some((c) => c.is === "off" && c.name === rule));
  return by ? `The policy ${by.name} switched ${rule} off.` : `There is no rule called ${rule}.`;
}

/**
 * The findings with what is accepted of them, and the findings on the acceptances themselves. `complete`: nothing was left out of
 * the check; else what is not known yet says nothing against an acceptance.
 */
export function applyAcceptances(
  household: Household,
  judged: readonly Judged[],
  set: RuleSet,
  today: string,
  complete = true,
): { readonly judged: readonly Judged[]; readonly own: readonly Finding[] } {
  if (household.accepts.length === 0) return { judged, own: [] };
  const accepted = new Map<Judged, NonNullable<Finding["accepted"]>>();
  const own: Finding[] = [];
  for (const said of household.accepts) {
    const p = parts(said);
    const rule = text(p["rule"])?.toLowerCase();
    if (rule === undefined) continue;
    const say = (id: string, level: Level, message: string): void => {
      own.push(formFinding(`form/acceptance-${id}`, level, text(p["at"]) ?? "setup", said, message, why));
    };
    const at = text(p["at"])?.toLowerCase();
    const until = text(p["until"]);
    const because = text(p["because"]);
    const approvedBy = text(p["approved"]);
    const there = judged.filter(
      (j) => j.finding.rule === rule && (at === undefined || standsAt(j.subject, at)),
    );
    const met = there.filter((j) => j.finding.verdict === "fails");
    const where = at === undefined ? "" : ` at ${at}`;
    if (!set.rules.some((r) => r.id === rule))
      say("of-unknown-rule", "caution", `${withoutRule(rule, set)} This accepts nothing.`);
    else if (until !== undefined && until < today)
      say(
        "expired",
        "caution",
        `This acceptance of ${rule} ended on ${until}. Look at it again: mend it, or accept it anew with a reason.`,
      );
    else if (met.length === 0 && there.length > 0) {
      if (complete)
        say(
          "of-doubt",
          "caution",
          `${rule} is not known or not settled${where}. Only what was found can be accepted: measure first.`,
        );
    } else if (met.length === 0)
      say(
        "unused",
        "advice",
        `Nothing is found by ${rule}${where} that could be accepted. Take this line out.`,
      );
    else if (at === undefined)
      say(
        "too-broad",
        "caution",
        `This accepts ${rule} wherever it may fail. Say where: at ${met[0]!.subject.scene?.name ?? met[0]!.subject.name}.`,
      );
    else if (until === undefined)
      say("without-end", "caution", `Until when is ${rule} accepted? Add until and a date.`);
    else if (because === undefined)
      say("without-reason", "caution", `Why is ${rule} accepted? Add because and the reason, in quotes.`);
    else {
      const refused = met.filter((j) => j.finding.levels.worst === "stop" && approvedBy === undefined);
      if (refused.length > 0)
        say(
          "not-approved",
          "caution",
          `${rule} says stop. To accept it, somebody must answer for it: add approved-by and the role, in quotes.`,
        );
      const anew = met.filter((j) => !refused.includes(j) && !accepted.has(j));
      if (anew.length === 0 && refused.length === 0)
        say(
          "given-twice",
          "advice",
          `What this accepts is accepted by a line before it, which counts. Keep the one that is right.`,
        );
      for (const j of anew)
        accepted.set(j, { until, because, ...(approvedBy !== undefined && { approvedBy }) });
    }
  }
  return {
    judged: judged.map((j) => {
      const a = accepted.get(j);
      return a ? { ...j, finding: withAccepted(j.finding, a) } : j;
    }),
    own,
  };
}

const order = ["fails", "unknown", "unsettled", "holds", "not-applicable"];

/** Findings for expected verdicts that are not so. What a check in haste (not `complete`) does not know yet is not held against it. */
export function checkExpectations(
  household: Household,
  verdicts: readonly Verdict[],
  set: RuleSet,
  complete = true,
): readonly Finding[] {
  const found: Finding[] = [];
  for (const said of household.expects) {
    const p = parts(said);
    const rule = text(p["rule"])?.toLowerCase();
    const expected = text(p["verdict"]);
    if (rule === undefined || expected === undefined) continue;
    const at = text(p["for"])?.toLowerCase();
    const because = "An expected verdict is a test of the setup: where it differs, one of the two is wrong.";
    const say = (id: string, message: string): void => {
      found.push(formFinding(`form/expectation-${id}`, "caution", at ?? "setup", said, message, because));
    };
    if (!set.rules.some((r) => r.id === rule)) {
      say("of-unknown-rule", withoutRule(rule, set));
      continue;
    }
    const met = verdicts.filter(
      (v) => v.rule === rule && (at === undefined || v.subject === at || v.subject.startsWith(`${at} step `)),
    );
    const given = met.map((v) => v.verdict).sort((a, b) => order.indexOf(a) - order.indexOf(b))[0];
    if (given === undefined)
      say("without-subject", `${rule} judges nothing${at === undefined ? "" : ` called ${at}`} here.`);
    else if (given !== expected && (complete || given !== "unknown"))
      say(
        "not-met",
        `${rule} was expected to be ${expected}${at === undefined ? "" : ` for ${at}`}; it is ${given}.`,
      );
  }
  return found;
}
