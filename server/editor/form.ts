/** A block as a form to fill in: what is required and wanted, with `unknown` where nothing is said, so that nothing is guessed. */
import type { BlockSpec, KeySpec, Shape } from "../../language/vocabulary/types.js";

/** Snippet of the Language Server Protocol; the last stop is behind the block. `indent`: of the inside. */
export function formOf(kind: string, spec: BlockSpec): string {
  const stops = new Stops();
  const lines: string[] = [];
  const head = [kind === "may-change" ? "may change" : kind];
  if (spec.name !== "none") head.push(stops.text(spec.name === "required" ? "name" : ""));
  for (const p of spec.head ?? []) head.push(...(p.lead ? [p.lead] : []), stops.text(""));
  for (const [key, k] of Object.entries(spec.keys))
    if (k.need === "required") lines.push(`  ${key}${value(k, stops)}`);
  for (const [key, k] of Object.entries(spec.keys))
    if (k.need === "wanted") lines.push(`  ${key}${value(k, stops)}`);
  const steps = Object.entries(spec.blocks ?? {}).find(([, b]) => b.steps);
  if (steps) lines.push(`  ${steps[0]} {`, `    ${stops.text("")}`, "  }");
  if (lines.length === 0) lines.push(`  ${stops.text("")}`);
  return `${head.join(" ")} {\n${lines.join("\n")}\n}$0`;
}

class Stops {
  private next = 1;
  text(placeholder: string): string {
    const n = this.next++;
    return placeholder === "" ? `$${n}` : `\${${n}:${placeholder}}`;
  }
  choice(choices: readonly string[]): string {
    return `\${${this.next++}|${choices.join(",")}|}`;
  }
}

const value = (k: KeySpec, stops: Stops): string => {
  const v = ofShape(k.shape, stops);
  return v === "" ? "" : ` ${v}`;
};

function ofShape(shape: Shape, stops: Stops): string {
  switch (shape.is) {
    case "choice":
      return stops.choice(["unknown", ...shape.choices]);
    case "flag":
      return stops.choice(["unknown", "yes", "no"]);
    case "text":
      return `"${stops.text("")}"`;
    case "code":
    case "date":
      return stops.text("");
    case "parts": {
      const needed = shape.parts.filter((p) => !p.optional);
      if (!needed.every((p) => p.shape.is === "name")) return stops.text("unknown");
      return needed.map((p) => (p.lead ? `${p.lead} ` : "") + stops.text("")).join(" ");
    }
    case "mention":
      return "";
    default:
      return stops.text("unknown");
  }
}
