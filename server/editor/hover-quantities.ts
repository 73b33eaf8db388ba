/** The numbers of a transfer, and how each came about. */
import type { Scene } from "../../rules/scene.js";
import type { Computed } from "../../rules/types.js";
import type { Page } from "./page.js";
import { computedLine, plain, termLine } from "./show.js";

export function arithmetic(page: Page, scene: Scene): string[] {
  const all = page.quantities(scene).filter((c) => c.without === undefined);
  if (all.length === 0) return [];
  const rows = all.map((c) => `| ${c.name} | ${plain(computedLine(c))} |`);
  const table = [`**${plain(scene.name)}** — from ${plain(scene.from?.name ?? "unknown")} to ${plain(scene.to?.name ?? "unknown")}`, "", "| | |", "|---|---|", ...rows].join("\n");
  const worked = all.filter((c) => c.value && c.trace.length > 1).map(steps);
  return worked.length > 0 ? [table, `**Step by step**\n\n${worked.join("\n\n")}`] : [table];
}

/** One quantity: its terms in order, then what it makes of them, then what it takes for granted. */
export function steps(c: Computed): string {
  const lines = c.trace.map((t) => `- ${termLine({ ...t, label: plain(t.label), ...(t.formula !== undefined && { formula: plain(t.formula) }), ...(t.place && { place: t.place }) }, c.unit)}`);
  const tapeable = c.assumed.filter((a) => a.tapeable).map((a) => `\`${a.name}\``);
  if (tapeable.length > 0) lines.push(`- Not measured here, taken from the rule set: ${tapeable.join(", ")}. A tape can settle it.`);
  return [`${c.name}`, ...lines].join("\n");
}
