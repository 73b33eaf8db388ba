/** Policies in what the commands print: everything that a policy changes is listed wherever its verdicts are. */
import type { OverlayChange } from "../../rules/engine/overlay-types.js";
import type { LoadedSet } from "../workspace/rule-sets.js";
import { entry, type Terminal } from "./terminal.js";

/** For programs; empty where no policy is in force. */
export const overlaysJson = ({ policy, set }: LoadedSet): object[] =>
  policy && set
    ? [
        {
          name: policy.name,
          title: policy.title,
          path: policy.path,
          hash: policy.hash,
          by: policy.by ?? null,
          changes: policy.changes.map((c) => ({
            is: c.is,
            name: c.name,
            rules: c.rules,
            text: c.text,
            loosens: c.loosens,
            because: c.because ?? null,
            approvedBy: c.approvedBy ?? null,
            until: c.until ?? null,
          })),
        },
      ]
    : [];

/** For people. */
export function policyText({ policy }: LoadedSet, t: Terminal): string[] {
  if (!policy) return [];
  const by = policy.by === undefined ? "" : `, by the ${policy.by}`;
  return [
    entry(t, "policy", `${policy.name}: ${policy.title}${by} (${policy.path}, content ${policy.hash}).`),
    ...policy.changes.map((c, i) => entry(t, i === 0 ? "changes" : "", changeInWords(c))),
  ];
}

/** What a change says, whether it asks for less, and why. */
export function changeInWords(c: OverlayChange): string {
  const parts = [
    c.text,
    c.loosens ? "This asks for less than the released rules, or could." : "",
    c.because === undefined ? "" : `Because: ${/[.!?]$/.test(c.because) ? c.because : `${c.because}.`}`,
    c.approvedBy === undefined ? "" : `Approved by the ${c.approvedBy}.`,
    c.until === undefined ? "" : `Until ${c.until}.`,
  ];
  return parts.filter((p) => p !== "").join(" ");
}

/** The change that switched a rule off; undefined where none did. */
export const switchedOff = ({ policy }: LoadedSet, rule: string): OverlayChange | undefined =>
  policy?.changes.find((c) => c.is === "off" && c.name === rule);
