/** The numbers of a transfer, and how each came about. */
import { namesIn } from "../../rules/engine/expression.js";
import type { Rule } from "../../rules/engine/types.js";
import type { Scene } from "../../rules/scene.js";
import type { Computed } from "../../rules/types.js";
import type { Page } from "./page.js";
import { computedLine, plain, termLine } from "./show.js";

/** All numbers of a transfer in a table: shown on the word `transfer`. */
export function numbers(page: Page, scene: Scene): string[] {
  const all = page.quantities(scene).filter((c) => c.without === undefined);
  if (all.length === 0) return [];
  const rows = all.map((c) => `| ${c.name} | ${plain(computedLine(c))} |`);
  return [
    [
      `**From ${plain(scene.from?.name ?? "unknown")} to ${plain(scene.to?.name ?? "unknown")}**`,
      "",
      "| worked out | |",
      "|---|---|",
      ...rows,
    ].join("\n"),
  ];
}

/** All numbers of a transfer step by step: shown on its name. */
export function arithmetic(page: Page, scene: Scene): string[] {
  const worked = page.quantities(scene).filter((c) => c.value && c.trace.length > 1);
  return worked.length === 0
    ? []
    : [`**Step by step: ${plain(scene.name)}**\n\n${worked.map(steps).join("\n\n")}`];
}

/** The arithmetic behind what a rule judges; `deep`: down to what was written, each quantity once, before what rests on it. */
export function arithmeticOf(page: Page, scene: Scene, rule: Rule, deep: boolean): string {
  const all = new Map(page.quantities(scene).map((c) => [c.name, c]));
  const found = new Map<string, Computed>();
  const add = (name: string): void => {
    const c = all.get(name);
    if (!c || found.has(name)) return;
    if (deep) for (const t of c.trace) if (t.quantity !== undefined && t.quantity !== name) add(t.quantity);
    if (c.value && c.trace.length > 1) found.set(name, c);
  };
  for (const name of namesIn(rule.judged.expr)) add(name);
  return [...found.values()].map(steps).join("\n\n");
}

/** One quantity: its terms in order, then what it makes of them, then what it takes for granted. */
export function steps(c: Computed): string {
  const lines = c.trace.map(
    (t) => `- ${plain(termLine(t, c.unit)).replaceAll("\\*\\*", "**").replaceAll("\\`", "`")}`,
  );
  const tapeable = c.assumed.filter((a) => a.tapeable).map((a) => `\`${a.name}\``);
  if (tapeable.length > 0)
    lines.push(`- Not measured here, taken from the rule set: ${tapeable.join(", ")}. A tape can settle it.`);
  return [c.name, ...lines].join("\n");
}
