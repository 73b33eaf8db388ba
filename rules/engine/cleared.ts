/**
 * Whether a transfer is cleared: no stop fails (an accepted one included), no caution fails that is not accepted, every stop
 * and caution rule is settled, a good trial of that direction is recorded, and every line of the plan can be read.
 */
import type { Household } from "../../language/model/household.js";
import { rank } from "./bands.js";
import type { Judged } from "./accept.js";
import type { Scene } from "../scene.js";
import type { TransferResult } from "../types.js";
import type { Subject } from "./subjects.js";

/** Whether a subject has a part in a transfer: the transfer itself, its steps and end, a thing used in it, or the whole setup. */
function takesPart(subject: Subject, scene: Scene): boolean {
  if (subject.scene) return subject.scene.name === scene.name;
  if (subject.is === "setup") return true;
  const thing = subject.thing;
  return [
    scene.from,
    scene.to,
    scene.board,
    scene.belt,
    scene.lift,
    scene.client,
    scene.room,
    scene.base,
    scene.transfer,
    ...scene.helpers,
    ...scene.placed.map((p) => p.thing),
  ].includes(thing);
}

export function transferResult(
  scene: Scene,
  household: Household,
  judged: readonly Judged[],
  trial: string | undefined,
  titles: ReadonlyMap<string, string>,
): TransferResult {
  const left: string[] = [];
  const add = (line: string): void => {
    if (!left.includes(line)) left.push(line);
  };
  const caution = rank("caution");
  const missing = new Map<string, string[]>();
  for (const { finding: f, subject, plain } of judged) {
    if (rank(f.levels.worst) < caution || !takesPart(subject, scene)) continue;
    const title = titles.get(f.rule) ?? f.rule;
    if (f.verdict === "fails") {
      if (f.levels.worst === "stop")
        add(
          `Do not attempt it like this: ${plain}${f.accepted ? " (Accepted, but a stop stays a stop.)" : ""}`,
        );
      else if (!f.accepted) add(`Change this, or accept it with a reason: ${plain}`);
    } else if (f.verdict === "unsettled") add(`Settle this: ${plain}`);
    else if (f.verdict === "unknown") {
      if (f.missing.length === 0) add(`Find out: ${title}.`);
      for (const m of f.missing) missing.set(m.what, [...(missing.get(m.what) ?? []), title]);
    }
  }
  for (const [what, why] of missing) {
    const rules = [...new Set(why)];
    add(
      `Find out ${what}. Needed for: ${rules.slice(0, 3).join("; ")}${rules.length > 3 ? `; and ${rules.length - 3} more` : ""}.`,
    );
  }
  if (trial !== "done")
    add(
      trial === undefined
        ? `Try ${scene.name} with the therapist, and record how it went.`
        : `The last trial of ${scene.name} ended as ${trial}. Find out why, and try again with the therapist.`,
    );
  const unread = household.problems.filter((p) => p.level === "caution" && p.path === household.path).length;
  if (unread > 0)
    add(
      unread === 1 ? "Mend the line that cannot be read." : `Mend the ${unread} lines that cannot be read.`,
    );
  return { name: scene.name, cleared: left.length === 0, left };
}
