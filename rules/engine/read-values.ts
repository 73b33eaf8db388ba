/** Reads the head of a rule set, its sources, limits, defaults and changes. */
import { between, exactly, plusMinus, type Interval } from "../../language/quantity/interval.js";
import type { Dimension, ShownUnit } from "../../language/quantity/types.js";
import type { Atom, Node } from "../../language/text/types.js";
import type { BasisNote } from "../types.js";
import { atomText } from "../../language/text/atom.js";
import { basisKeys, isBasisKey, readBasis, sourceKinds, type Page } from "./statements.js";
import type { Change, DefaultValue, Extent, LimitValue, Source, SourceKind } from "./types.js";

export interface Head {
  readonly name: string;
  readonly version: string;
  readonly title: string;
  readonly issued?: string;
  readonly cautions: readonly string[];
}

/** The name that follows the kind: `source NAME {`. */
export function nameOf(page: Page, node: Node, what: string): string | undefined {
  const name = node.statement.atoms[1];
  if (name?.type === "word") return name.word;
  page.problem(
    "rules/name-expected",
    node,
    `This ${what} has no name: a name follows the word ${what}.`,
    name ?? node.statement,
  );
  return undefined;
}

export function readHead(page: Page, node: Node): Head | undefined {
  const name = nameOf(page, node, "ruleset");
  const version = node.statement.atoms[2];
  const issue = version?.type === "number" ? version.raw : version?.type === "word" ? version.raw : undefined;
  if (issue === undefined)
    page.problem("rules/name-expected", node, "A version such as 2026.1 follows the name of the rule set.");
  let title = "";
  let issued: string | undefined;
  const cautions: string[] = [];
  for (const s of node.children ?? []) {
    const key = page.key(s);
    if (key === "title") title = page.text(s) ?? title;
    else if (key === "issued") issued = page.date(s);
    else if (key === "caution") put(cautions, page.text(s));
    else if (key !== undefined) page.unknownKey(s, key, "A rule set", ["title", "issued", "caution"]);
  }
  if (!title) page.problem("rules/missing", node, "This rule set has no title.");
  return name && issue !== undefined
    ? { name, version: issue, title, ...(issued && { issued }), cautions }
    : undefined;
}

const sourceWords = ["kind", "title", "by", "published-in", "year", "address", "read", "extent"];

export function readSource(page: Page, node: Node): Source | undefined {
  const name = nameOf(page, node, "source");
  leftOver(page, node, 2);
  const found: {
    kind?: SourceKind;
    title?: string;
    by?: string;
    publishedIn?: string;
    year?: number;
    address?: string;
    read?: string;
    extent?: Extent;
  } = {};
  for (const s of node.children ?? []) {
    const key = page.key(s);
    switch (key) {
      case "kind":
        found.kind = page.word(s, sourceKinds);
        break;
      case "title":
        found.title = page.text(s);
        break;
      case "by":
        found.by = page.text(s);
        break;
      case "published-in":
        found.publishedIn = page.text(s);
        break;
      case "address":
        found.address = page.text(s);
        break;
      case "read":
        found.read = page.date(s);
        break;
      case "extent":
        found.extent = page.word(s, ["whole", "part", "abstract", "through-another"]);
        break;
      case "year": {
        const year = s.statement.atoms[1];
        if (year?.type === "number" && Number.isInteger(year.value) && year.value > 1500 && year.value < 2200)
          found.year = year.value;
        else page.problem("rules/statement", s, "year takes a year, such as 2013.", year ?? s.statement);
        break;
      }
      case undefined:
        break;
      default:
        page.unknownKey(s, key, "A source", sourceWords);
    }
  }
  const { kind, title, by, read, extent } = found;
  const lacking = Object.entries({ kind, title, by, read, extent }).flatMap(([k, v]) =>
    v === undefined ? [k] : [],
  );
  // A statement that is there but wrong has been reported at its own line.
  const absent = lacking.filter(
    (k) =>
      !(node.children ?? []).some(
        (s) => s.statement.atoms[0]?.type === "word" && s.statement.atoms[0].word === k,
      ),
  );
  if (absent.length > 0)
    page.problem("rules/missing", node, `This source does not say ${absent.join(", ")}.`);
  if (!name || !kind || !title || !by || !read || !extent) return undefined;
  return {
    name,
    kind,
    title,
    by,
    read,
    extent,
    ...(found.publishedIn !== undefined && { publishedIn: found.publishedIn }),
    ...(found.year !== undefined && { year: found.year }),
    ...(found.address !== undefined && { address: found.address }),
    at: page.place(node),
  };
}

/** A written value: `3 in`, `1 in to 2 in`, `30 deg ± 3 deg`, `down 2 in`, `0.47`. A number without unit has the dimension `bare`. */
export function readInterval(
  atoms: readonly Atom[],
  bare: Dimension,
):
  | {
      readonly interval: Interval;
      readonly dimension: Dimension;
      readonly unit: ShownUnit;
      readonly bare: boolean;
    }
  | string {
  let i = 0;
  /** `up` and `down` stand for both ends until the other is said; a minus belongs to its own end. */
  let way = 1;
  const one = (): { value: number; dimension: Dimension; unit: ShownUnit; bare: boolean } | string => {
    let a = atoms[i];
    let sign = way;
    if (a?.type === "word" && (a.word === "up" || a.word === "down")) {
      sign = way = a.word === "up" ? 1 : -1;
      a = atoms[++i];
    } else if (a?.type === "mark" && a.mark === "-") {
      sign = -1;
      a = atoms[++i];
    }
    i++;
    // Zero has no sign.
    if (a?.type === "measure")
      return { value: sign * a.value + 0, dimension: a.dimension, unit: a.unit, bare: false };
    if (a?.type === "number")
      return { value: sign * a.value + 0, dimension: bare, unit: { unit: "1" }, bare: true };
    return a ? `A value is expected here, not "${atomText(a)}".` : "A value is missing here.";
  };
  const first = one();
  if (typeof first === "string") return first;
  const next = atoms[i];
  let interval = exactly(first.value);
  if (next?.type === "word" && next.word === "to") {
    i++;
    const second = one();
    if (typeof second === "string") return second;
    if (second.dimension !== first.dimension)
      return "The two ends of this range are not the same kind of quantity.";
    interval = between(first.value, second.value);
  } else if (next?.type === "mark" && next.mark === "±") {
    i++;
    way = 1;
    const second = one();
    if (typeof second === "string") return second;
    if (second.dimension !== first.dimension)
      return "The tolerance is not the same kind of quantity as the value.";
    interval = plusMinus(first.value, second.value);
  }
  const rest = atoms[i];
  if (rest) return `"${atomText(rest)}" is left over here.`;
  return { interval, dimension: first.dimension, unit: first.unit, bare: first.bare };
}

const limitWords = ["title", ...basisKeys, "covers", "not-covered"];

export function readLimit(page: Page, node: Node): LimitValue | undefined {
  return readValue(page, node, "limit")?.value;
}
export function readDefault(page: Page, node: Node): DefaultValue | undefined {
  const found = readValue(page, node, "default");
  return found && { ...found.value, tapeable: found.tapeable };
}

function readValue(
  page: Page,
  node: Node,
  what: "limit" | "default",
): { value: LimitValue; tapeable: boolean } | undefined {
  const name = nameOf(page, node, what);
  const read = readInterval(node.statement.atoms.slice(2), what === "limit" ? "number" : "ratio");
  if (typeof read === "string") page.problem("rules/value-expected", node, `${what} ${name ?? ""}: ${read}`);
  else if (what === "limit" && read.interval.low !== read.interval.high)
    page.problem("rules/value-expected", node, "A limit is one value, not a range.");
  let title = "";
  let tapeable = false;
  const notes: BasisNote[] = [];
  const covers: string[] = [];
  const notCovered: string[] = [];
  for (const s of node.children ?? []) {
    const key = page.key(s);
    if (key === undefined) continue;
    if (isBasisKey(key)) put(notes, readBasis(page, s, key));
    else if (key === "title") title = page.text(s) ?? title;
    else if (key === "covers") put(covers, page.text(s));
    else if (key === "not-covered") put(notCovered, page.text(s));
    else if (key === "tape" && what === "default") tapeable = page.word(s, ["yes", "no"]) !== "no";
    else page.unknownKey(s, key, `A ${what}`, what === "limit" ? limitWords : [...limitWords, "tape"]);
  }
  if (!title) page.problem("rules/missing", node, `This ${what} has no title.`);
  if (notes.length === 0)
    page.problem(
      "rules/no-basis",
      node,
      `This ${what} says nowhere where its value comes from: published, derived, common-practice, from-memory or project-choice.`,
    );
  if (!name || typeof read === "string") return undefined;
  return {
    value: {
      name,
      interval: read.interval,
      dimension: read.dimension,
      unit: read.unit,
      title,
      bases: notes,
      covers,
      notCovered,
      at: page.place(node),
    },
    tapeable,
  };
}

/** `changes { height/rise "what changed, and why" }`. */
export function readChanges(page: Page, node: Node): readonly Change[] {
  return (node.children ?? []).flatMap((s) => {
    const rule = page.key(s);
    const text = rule === undefined ? undefined : page.text(s);
    return rule !== undefined && text !== undefined ? [{ rule, text }] : [];
  });
}

function leftOver(page: Page, node: Node, from: number): void {
  const more = node.statement.atoms[from];
  if (more) page.problem("rules/left-over", node, `"${atomText(more)}" is left over here.`, more);
}

/** Adds what could be read. */
export function put<T>(to: T[], x: T | undefined): void {
  if (x !== undefined) to.push(x);
}
