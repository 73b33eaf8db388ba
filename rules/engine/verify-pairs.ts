/** Rules against each other: what can never apply, what contradicts, what is said twice. */
import { showValue } from "../../language/quantity/show.js";
import { bandFaults, holding, inOrder } from "./bands.js";
import { rangeInWords } from "./band-words.js";
import { phrase } from "./phrase.js";
import { problemAt } from "./read.js";
import type { Rule, RulePlace, SetProblem } from "./types.js";

type Report = (p: SetProblem) => void;
type ByBands = Rule["judged"] & { readonly is: "bands" };

/** Two conditions that ask different words of the same fact can never both be met. */
export function unreachable(rule: Rule): { at: RulePlace; message: string } | undefined {
  const asked = new Map<string, readonly string[]>();
  for (const w of rule.when)
    for (const part of w.expr.op === "and" ? w.expr.of : [w.expr]) {
      if (part.op !== "is" || part.not || part.of.op !== "name") continue;
      const words = part.words.map((x) => x.word);
      const before = asked.get(part.of.name);
      if (before && !before.some((x) => words.includes(x)))
        return {
          at: w.at,
          message: `This rule can never apply: ${part.of.name} cannot be both ${before.join(" or ")} and ${words.join(" or ")}.`,
        };
      asked.set(part.of.name, before ? before.filter((x) => words.includes(x)) : words);
    }
  return undefined;
}

/** Rules that judge the same value on the same things must leave some value that holds for both, and may not say the same twice. */
export function contradictions(rules: readonly Rule[], report: Report): void {
  const groups = new Map<string, Rule[]>();
  for (const r of rules) {
    // Bands with faults of their own have been reported; what they would contradict is not known.
    if (
      r.judged.is !== "bands" ||
      r.judged.bands.length === 0 ||
      bandFaults(r.judged.bands, () => "").length > 0
    )
      continue;
    const key = `${JSON.stringify(r.scope)} ${phrase(r.judged.expr, (n) => n)}`;
    const group = groups.get(key);
    if (group) group.push(r);
    else groups.set(key, [r]);
  }
  for (const group of groups.values())
    for (const [i, a] of group.entries())
      for (const b of group.slice(i + 1)) {
        if (exclusive(a, b)) continue;
        const x = a.judged as ByBands;
        const y = b.judged as ByBands;
        const common = holding(x.bands).some((p) =>
          holding(y.bands).some(
            (q) => Math.max(p.low.value, q.low.value) <= Math.min(p.high.value, q.high.value) + 1e-9,
          ),
        );
        if (!common) {
          const say = (r: ByBands): string =>
            holding(r.bands)
              .map((h) => rangeInWords(h, r.signed))
              .join(", ");
          report(
            problemAt(
              b.at,
              "rules/contradiction",
              `No value satisfies both rules: ${a.id} asks for ${say(x)}, ${b.id} for ${say(y)}.`,
            ),
          );
        } else if (sameText(a.when, b.when) && sameBands(x, y))
          report(problemAt(b.at, "rules/shadowed", `This rule says the same of the same value as ${a.id}.`));
      }
}

const text = (when: Rule["when"]): string[] => when.map((w) => phrase(w.expr, (n) => n)).sort();
const sameText = (a: Rule["when"], b: Rule["when"]): boolean => text(a).join("\n") === text(b).join("\n");
const sameBands = (a: ByBands, b: ByBands): boolean => {
  const say = (j: ByBands): string =>
    inOrder(j.bands)
      .map((x) => `${showValue(x.low.value, x.low.dimension, { unit: "1" })} ${x.high.value} ${x.grade}`)
      .join("\n");
  return say(a) === say(b);
};
/** Whether their conditions ask different words of the same fact. */
const exclusive = (a: Rule, b: Rule): boolean =>
  unreachable({ ...a, when: [...a.when, ...b.when] }) !== undefined;
