/** How values, names and codes are offered: what may stand next, as something to choose. */
import { CompletionItemKind } from "vscode-languageserver-protocol";
import { unitOf } from "../../language/quantity/units.js";
import type { Next } from "./expect.js";
import type { Page } from "./page.js";
import type { Spot } from "./where.js";

/** An item before it has a range and an order. */
export interface Proposal {
  readonly label: string;
  /** What is written; the label if it is left out. */
  readonly text?: string;
  /** A form with stops, for editors that have them. */
  readonly snippet?: string;
  readonly kind: CompletionItemKind;
  readonly detail?: string;
  readonly help?: string;
  /** Columns that are replaced, where they differ from the word being typed. */
  readonly from?: number;
}

/** How something that could stand next is offered. */
export function proposal(page: Page, spot: Spot, next: Next, key: string): readonly Proposal[] {
  switch (next.is) {
    case "word": {
      const more =
        next.then !== undefined ? { text: `${next.word} by ""`, snippet: next.word + next.then } : {};
      return [
        {
          label: next.word,
          kind: CompletionItemKind.EnumMember,
          ...(next.help !== undefined && { detail: next.help }),
          ...more,
        },
      ];
    }
    case "unit": {
      const last = spot.before[spot.before.length - 1]!;
      const gap = spot.typed === "" && last.end === spot.start ? " " : "";
      const { spellings, symbol } = unitOf(next.unit);
      return [
        {
          label: symbol,
          text: gap + symbol,
          kind: CompletionItemKind.Unit,
          detail: spellings.find((s) => s.length > 2) ?? symbol,
        },
      ];
    }
    case "name":
      return names(page, next.of, spot);
    case "text":
      return [
        {
          label: '""',
          text: '""',
          snippet: '"$1"',
          kind: CompletionItemKind.Text,
          detail: "a text in quotes",
        },
      ];
    case "code":
      return codes(page, spot, next.part, key);
    case "date":
      return page.household.visited !== undefined && key !== "visited"
        ? [{ label: page.household.visited, kind: CompletionItemKind.Value, detail: "the day of the visit" }]
        : [];
    case "number":
      return [];
  }
}

/** Declared things of the kinds that fit, without those that this list holds already. */
export function names(page: Page, kinds: readonly string[], spot: Spot): readonly Proposal[] {
  const taken = new Set(spot.before.flatMap((a) => (a.type === "word" ? [a.word] : [])));
  return [...page.household.things.values()]
    .filter((t) => kinds.includes(t.kind) && !taken.has(t.name))
    .map((t) => ({ label: t.name, kind: CompletionItemKind.Reference, detail: t.kind }));
}

/** Words that are neither vocabulary nor checked names: rules, their subjects, and what another file declares. */
function codes(page: Page, spot: Spot, part: string | undefined, key: string): readonly Proposal[] {
  if (key === "from" && part === "use") {
    const path = spot.before.find((a) => a.type === "text");
    const taken = new Set(spot.before.flatMap((a) => (a.type === "word" ? [a.word] : [])));
    const declared = path?.type === "text" ? page.declaredIn(path.value) : [];
    return declared
      .filter((d) => !taken.has(d.name))
      .map((d) => ({ label: d.name, kind: CompletionItemKind.Reference, detail: d.kind }));
  }
  if (part === "rule") {
    const here = new Set(page.reported.filter((n) => n.finding).map((n) => n.rule));
    const rules = page.set?.rules ?? [];
    const first = key === "accept" ? rules.filter((r) => here.has(r.id)) : rules;
    return [...first, ...rules.filter((r) => !first.includes(r))].map((r) => ({
      label: r.id,
      kind: CompletionItemKind.Value,
      detail: r.title,
    }));
  }
  if (part === "at" || part === "for") {
    const rule = spot.before.find((a) => a.type === "word" && a.word.includes("/"));
    const subjects = new Set(
      page.reported.flatMap((n) =>
        n.finding && rule?.type === "word" && n.rule === rule.word ? [n.finding.subject.split(" ")[0]!] : [],
      ),
    );
    for (const s of page.scenes) subjects.add(s.name);
    return [...subjects].map((label) => ({ label, kind: CompletionItemKind.Reference }));
  }
  return [];
}

/** In `may change`: things, their sizes, and what may happen to them. */
export function freely(page: Page, spot: Spot): readonly Proposal[] {
  const things = [...page.household.things.values()];
  const [first, second] = spot.before;
  if (!first)
    return things.flatMap((t) => [
      { label: t.name, kind: CompletionItemKind.Reference, detail: t.kind },
      ...Object.entries(t.values)
        .filter(
          ([, v]) => typeof v === "object" && v !== null && (v as { type?: unknown }).type === "quantity",
        )
        .map(([key]) => ({
          label: `${t.name}.${key}`,
          kind: CompletionItemKind.Property,
          detail: `${key} of ${t.kind} ${t.name}`,
        })),
    ]);
  const word = (label: string): Proposal => ({ label, kind: CompletionItemKind.Keyword });
  if (first.type !== "word") return [];
  if (!second) return first.word.includes(".") ? [] : [word("instead-of"), word("moved")];
  if (second.type !== "word" || second.word !== "instead-of" || spot.before.length > 2) return [];
  const kind = page.household.things.get(first.word)?.kind;
  return things
    .filter((t) => t.kind === kind && t.name !== first.word)
    .map((t) => ({ label: t.name, kind: CompletionItemKind.Reference, detail: t.kind }));
}
