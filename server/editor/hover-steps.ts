/** A step: what it needs, what it changes, how things stand before it, and whether it can be done. */
import { spell, phraseOf } from "../../language/vocabulary/verbs.js";
import type { State } from "../../rules/steps/state.js";
import type { Page } from "./page.js";
import { plain } from "./show.js";
import type { Hit } from "./where.js";

export function stepSection(page: Page, hit: Hit): string | undefined {
  const scene = page.scenes.find((s) => s.transfer.entry === hit.entry);
  const node = hit.nodes[hit.nodes.length - 1]!;
  const index = scene?.steps?.findIndex((s) => s.node === node) ?? -1;
  const step = scene?.steps?.[index]?.step;
  if (!scene?.run || !step) return undefined;
  const phrase = phraseOf(step.verb);
  const possible = scene.run.possible[index]!;
  const lines = [
    `**${spell(step)}** — ${plain(phrase.help)}`,
    `Needs: ${plain(phrase.needs)}.`,
    `Afterwards: ${plain(phrase.changes)}.`,
  ];
  if (!possible.ok) lines.push(`**It cannot be done here**: ${plain(possible.because ?? "")}.`);
  else if (!scene.run.changes[index]) lines.push("It changes nothing here: this was so already.");
  lines.push(`Before step ${index + 1}: ${stateInWords(scene.run.before[index]!)}.`);
  return lines.join("\n\n");
}

const where = {
  "on-from": "where the transfer starts",
  "on-board": "on the board",
  "in-sling": "in the sling",
  "on-to": "where the transfer ends",
} as const;

/** How things stand, in the order in which a helper would look at them. */
export function stateInWords(s: State): string {
  const legrest = (side: string, state: State["legrestLeft"]): string =>
    `${side} leg rest ${state.replaceAll("-", " ")}`;
  const parts = [
    `client ${s.posture === "lying" ? "lying" : "sitting"} ${where[s.client]}`,
    s.lean === "upright" ? "upright" : `leaning ${s.lean}`,
    s.scooted === "yes" ? "hips forward" : "hips back",
    `feet ${s.feet === "plates" ? "on the plates" : s.feet === "floor" ? "on the floor" : s.feet}`,
    `chair ${s.chair === "at" ? "at the surface" : "away"}`,
    `brakes ${s.brakes}${s.brakesChecked === "yes" ? " and checked" : ""}`,
    legrest("left", s.legrestLeft),
    legrest("right", s.legrestRight),
    `left armrest ${s.armrestLeft.replaceAll("-", " ")}`,
    `right armrest ${s.armrestRight.replaceAll("-", " ")}`,
    `footplates ${s.footplates}`,
    `board ${s.board === "placed" ? `placed${s.bearingChecked === "yes" ? ", bearing checked" : ""}` : "put away"}`,
    `belt ${s.belt}`,
  ];
  if (s.helper !== "none") parts.push(`helper ${s.helper.replaceAll("-", " ")}`);
  if (s.castors !== "none") parts.push(`castors ${s.castors === "unknown" ? "not known" : s.castors}`);
  return parts.join("; ");
}
