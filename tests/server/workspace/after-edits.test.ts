/**
 * After any walk of edits the workspace says what a fresh one says of the same text: what is kept from one keystroke to the next
 * is never older than the text. Everything that is shown is compared, the lines a finding rests on and its remedies included.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import type { Place } from "../../../language/text/types.js";
import { Workspace } from "../../../server/workspace/snapshot.js";
import { patience, runs, seed } from "../../language/fuzz/texts.js";
import { draws } from "../../rules/plan/sampling.js";

const root = path.resolve(import.meta.dirname, "../../..");
const today = (): string => "2026-03-02";

/** The same walk in every test run; another one for each seed of `npm run fuzz`. */
const firstDraw = seed ?? 7;

/** Everything that is shown of a plan, as plain data. */
function shown(workspace: Workspace, file: string): object[] {
  const { household, reported } = workspace.snapshot(file);
  return reported.map(({ finding, problem, ...r }) => ({
    ...r,
    problem: problem?.message,
    because: finding?.because,
    margin: finding?.margin,
    cautions: finding?.cautions,
    missing: finding?.missing.map((m) => ({ what: m.what, key: m.key, at: at(m.place) })),
    related: finding?.related.map((l) => ({ says: l.message, at: at(l.place) })),
    remedies: finding?.remedies.map((m) => JSON.stringify(m, (k, v: unknown) => (k === "place" ? 0 : v))),
  }));
  function at(place: Place | undefined) {
    const spot = place && household.locate(place.entry);
    return spot && { path: spot.path, line: spot.line + place.line, start: place.start, end: place.end };
  }
}
/** One small edit, as somebody makes it who tries things out. */
function edited(text: string, random: () => number): string {
  const lines = text.split("\n");
  const n = Math.floor(random() * lines.length);
  const line = lines[n]!;
  const kind = random();
  if (kind < 0.5) {
    const numbers = [...line.matchAll(/\d+/g)];
    const m = numbers[Math.floor(random() * numbers.length)];
    if (m)
      lines[n] =
        line.slice(0, m.index) + String(Math.floor(random() * 40)) + line.slice(m.index + m[0].length);
  } else if (kind < 0.65) lines.splice(n, 1);
  else if (kind < 0.8) lines.splice(n, 0, line);
  else if (kind < 0.9) lines.splice(n, 0, "# looked at again");
  else
    lines[n] = line
      .replace(/\b(left|right)\b/, (w) => (w === "left" ? "right" : "left"))
      .replace(/\b(yes|no)\b/, (w) => (w === "yes" ? "no" : "yes"));
  return lines.join("\n");
}

describe("after a walk of edits a plan is judged as by a fresh start", () => {
  it.each(
    ["first-week", "bathroom", "car", "two-helpers", "ramp-route"].map((name, i) => [name, i] as const),
  )("%s", { timeout: 3 * patience }, (name, i) => {
    const file = path.join(root, "samples", name, "home.span");
    const options = { roots: [path.join(root, "samples")], today, haste: true };
    const workspace = new Workspace(options);
    const random = draws(firstDraw + i);
    const first = readFileSync(file, "utf8");
    let text = first;
    for (let k = 0; k < runs(8); k++) {
      // Now and then everything is taken back, so that not all of it ends up broken.
      text = random() < 0.2 ? first : edited(text, random);
      workspace.edit(file, text);
      const fresh = new Workspace(options);
      fresh.edit(file, text);
      expect(shown(workspace, file), text).toEqual(shown(fresh, file));
    }
  });
});
